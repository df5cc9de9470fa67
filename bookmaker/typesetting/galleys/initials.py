"""Drop capitals: the first letter of a chapter, some lines deep, with the text around it.

Its place is found by its ink, not by what the typeface says of its capitals: no part of it touches a line of text.
Where its foot goes far to the right, as that of an L does, the lines over it follow its contour.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import accumulate
from typing import NamedTuple

from ...ground.typefaces import Run
from ..lines.boxes import Boxes
from ..lines.fount import Style
from ..lines.paragraphs import Lines, Measures
from ..lines.set_lines import SetLine, SetLines
from .contours import right_of_ink
from .matter import Initial
from .remarks import Hindrance
from .setting import Setting, reach

__all__ = ["Dropped", "Opening", "dropped", "opening"]

FIRST_WORD = re.compile(
    r"[\x00-\x06]?([\u2018\u2019\u201c\u00ab\u2039\u201e\u201a\u00bb\u203a\"'(\u00a1\u00bf]*\u202f?)([\x00-\x06]?)"
    r"([^\W\d_][\u0300-\u036f]*)(.*)"
)
"""Quotation marks, its style, first letter, and the rest of it."""

LETTERS = re.compile(r"[\u2019']?[^\W\d_]+(?:[\u2019'-]{1,2}[^\W\d_]+)*")
"""What may follow the capital in small capitals: the rest of a word, its parts too that a hyphen joins."""

GAP = 0.2
"""Between the capital and the text beside it, in ems of the text."""

HANGING_GAP = 0.42
"""The same where quotation marks at the beginning of those lines stand out to the left."""

WIDEST = 0.5
"""A capital that takes a greater share of the measure is none."""

OVERSHOOT = 0.12
"""Ems of the text by which the ink of a capital may go below its baseline, as that of round letters does."""


CONTOURED = 0.4
"""Where lines beside a capital may begin so much further to the left, in ems of the text, they follow its contour.

That is so beside an A, an L, and tails that go far to the right; beside what is as wide above as below it, a straight
edge is calmer (common practice).
"""


class Opening(NamedTuple):
    """The lines of a paragraph with a drop capital, and what stands before them."""

    text: SetLines
    initials: tuple[Initial, ...]


class Dropped(NamedTuple):
    """A capital in its place, in mm: the em, its baseline below that of the first line, where its ink begins and ends.

    `left` and `right` are counted from its own left, and `rights` too, where its ink ends beside each of its lines.
    """

    size: float
    drop: float
    left: float
    right: float
    rights: tuple[float, ...] = ()


def opening(
    text: str, depth: int, lines: Lines, boxes: Boxes, setting: Setting, *, justified: bool, headroom: float = 0.0
) -> Opening | Hindrance:
    """A paragraph with its first letter `depth` lines deep, or why it has none.

    Quotation marks before the letter keep the size of the text: they hang into the margin, or stand before the
    capital where nothing hangs. The rest of the first word is in small capitals, if it is not emphasized. There are
    `headroom` mm over the first line, for accents.
    """
    first, _, rest = text.partition(" ")
    parts = FIRST_WORD.fullmatch(first)
    if not parts or parts[3][0].islower():
        return Hindrance.NO_LETTER
    quote, _, letter, ending = parts.groups()
    style = _style(first, quote)
    capital = dropped(lines.fount.runs(style + letter)[0], setting, depth, headroom)
    before = lines.fount.width(quote) * setting.size if quote else 0.0
    start = 0.0 if boxes.hanging else before
    taken = [start + right - capital.left for right in capital.rights]
    if not rest or max(taken) > setting.measure * WIDEST:
        return Hindrance.NO_ROOM if rest else Hindrance.SHORT
    beside = f"{_beside(style, ending, small='smcp' in lines.fount.roman.features)} {rest}" if ending else rest
    for gap in (GAP, HANGING_GAP):
        lefts = [right + gap * setting.size for right in taken]
        if not ending:  # a word of its own, such as A
            lefts[0] = min(lefts[0] + lines.fount.word_space * setting.size, lefts[-1])
        found = _around(beside, lefts, lines, boxes, setting, justified=justified)
        if all(line.x >= left - 1e-9 for line, left in zip(found.lines, lefts, strict=False)):
            break
    hindrance = Hindrance.SHORT if len(found.lines) < depth else _crowded(found.lines[:depth], lines, setting)
    if hindrance:
        return hindrance
    told = (quote + letter + words if words == found.lines[0].words else words for words in found.short)
    placed = found.lines if ending else (line._replace(done=line.done + 1) for line in found.lines)
    found = found._replace(lines=tuple(placed), short=tuple(told))
    initial = Initial(style + letter, start - capital.left, capital.size, capital.drop)
    return Opening(found, (Initial(quote, start - before, setting.size), initial) if quote else (initial,))


def _around(
    text: str, lefts: Sequence[float], lines: Lines, boxes: Boxes, setting: Setting, *, justified: bool
) -> SetLines:
    """The lines of a text, the first of them beside a capital: each begins so many mm from the left."""
    measure = setting.measure + 1e-9
    measures = Measures(0.0, (*(measure - left for left in lefts), measure))
    found = lines.paragraph(text, measures, boxes, setting.size, justified=justified)
    beside = (line._replace(x=line.x + left) for line, left in zip(found.lines, lefts, strict=False))
    return found._replace(lines=(*beside, *found.lines[len(lefts) :]))


def _crowded(beside: tuple[SetLine, ...], lines: Lines, setting: Setting) -> Hindrance | None:
    """Whether a word is too wide for its place beside the capital."""
    for line in beside:
        width = lines.width(line.words) * setting.size + line.gap * line.words.count(" ")
        hanging = setting.size / 2
        if line.x + width > setting.measure + hanging:
            return Hindrance.NO_ROOM
    return None


def dropped(letter: Run, setting: Setting, depth: int, headroom: float) -> Dropped:
    """A capital that reaches from the top of the first line to the baseline of the last of `depth` lines.

    What goes below that baseline, as the tails of J and Q do in many typefaces, would touch the next line: such
    a letter is made smaller and lifted, so that its ink keeps to its lines. Accents may stand out over the first
    line by `headroom` mm.
    """
    face, size = setting.typeface, setting.size
    drop, above = (depth - 1) * setting.leading, face.cap_height * size
    full = size + drop / face.cap_height
    top, bottom = letter.top, letter.bottom
    below = max(0.0, min(OVERSHOOT * size, (setting.leading - reach(face)[0] * size) / 2))
    fits_above, fits_below = top * full <= drop + above + max(headroom, OVERSHOOT * size), -bottom * full <= below
    if fits_above and fits_below:
        placed = Dropped(full, drop, letter.left * full, letter.right * full)
    else:
        # a tail ends on the baseline itself, a round letter may go below it
        foot = below if fits_below else 0.0
        scaled = min(full, (drop + above + foot) / (top - bottom))
        placed = Dropped(scaled, drop + foot + bottom * scaled, letter.left * scaled, letter.right * scaled)
    return placed._replace(rights=_rights(letter, placed, setting, depth))


def _rights(letter: Run, placed: Dropped, setting: Setting, depth: int) -> tuple[float, ...]:
    """Where the ink of a capital ends beside each of its lines, in mm from its left; none begins left of one over it.

    All end as the widest does where that leaves no hole.
    """
    above, below = (ems * setting.size for ems in reach(setting.typeface))
    baselines = (placed.drop - line * setting.leading for line in range(depth - 1))
    inks = (
        right_of_ink(letter, (baseline - below) / placed.size, (baseline + above) / placed.size) * placed.size
        for baseline in baselines
    )
    # what stands out over the first line or hangs under the last one counts for the last
    rights = [*accumulate(inks, max), placed.right]
    return tuple(rights) if placed.right - rights[0] >= CONTOURED * setting.size else (placed.right,) * depth


def _style(first: str, quote: str) -> str:
    """How the letters of the first word are set."""
    signs = [sign for sign in first[: len(quote) + 2] if sign in set(Style)]
    return signs[-1] if signs else ""


def _beside(style: str, ending: str, *, small: bool) -> str:
    """The rest of the first word: its letters in small capitals, if there are some in its style."""
    if ending[0] == Style.ROMAN:  # the letter alone is emphasized
        style, ending = "", ending[1:]
    letters = LETTERS.match(ending)
    if style or not small or not letters:
        return style + ending
    after = ending[letters.end() :]
    return Style.SMALL_CAPITALS + letters[0] + (Style.ROMAN + after if after and after[0] not in set(Style) else after)
