"""Drop capitals: the first letter of a chapter, some lines deep, with the text around it."""

from __future__ import annotations

import re
from typing import NamedTuple

from .boxes import Boxes
from .fount import Style
from .lines import Lines, Measures
from .matter import Initial, SetLine
from .setting import Setting

__all__ = ["Opening", "opening"]

FIRST_WORD = re.compile(r"([\x00-\x06]?)([\u2018\u201c\u00ab\u2039\u201e\u201a\"']*\u202f?)([^\W\d_])(.*)")
"""Its style, quotation marks, first letter, and the rest of it."""

LETTERS = re.compile(r"[^\W\d_]+(?:\u2019[^\W\d_]+)*")

GAP = 0.12
"""Between the capital and the text beside it, in ems of the text."""

WIDEST = 0.5
"""A capital that takes a greater share of the measure is none."""


class Opening(NamedTuple):
    """The lines of a paragraph with a drop capital, and what stands before them."""

    lines: tuple[SetLine, ...]
    initials: tuple[Initial, ...]


def opening(
    text: str, depth: int, lines: Lines, boxes: Boxes, setting: Setting, *, justified: bool
) -> Opening | None:
    """A paragraph with its first letter `depth` lines deep; None if it is too short for that, or has no letter.

    Quotation marks before the letter keep the size of the text: they hang into the margin, or stand before the
    capital where nothing hangs.
    """
    first, _, rest = text.partition(" ")
    parts = FIRST_WORD.fullmatch(first)
    if not rest or not parts:
        return None
    style, quote, letter, ending = parts.groups()
    face = lines.fount.roman
    drop = (depth - 1) * setting.leading
    size = setting.size + drop / face.cap_height
    before = lines.fount.width(quote) * setting.size if quote else 0.0
    start = 0.0 if boxes.hanging else before
    width = start + lines.fount.width(style + letter) * size + GAP * setting.size
    if width > setting.measure * WIDEST:
        return None
    done = lines.done
    lines.done += not ending
    measure = setting.measure + 1e-9
    measures = Measures(0.0, (*(measure - width,) * depth, measure))
    beside = f"{_beside(style, ending, small='smcp' in face.features)} {rest}" if ending else rest
    found = lines.paragraph(beside, measures, boxes, setting.size, justified=justified)
    if len(found) < depth:
        lines.done = done
        return None
    shifted = tuple(
        line._replace(x=line.x + width) if number < depth else line for number, line in enumerate(found)
    )
    capital = Initial(style + letter, start, size, drop)
    return Opening(shifted, (Initial(quote, start - before, setting.size), capital) if quote else (capital,))


def _beside(style: str, ending: str, *, small: bool) -> str:
    """The rest of the first word: its letters in small capitals, if there are some in its style."""
    letters = LETTERS.match(ending)
    if style or not small or not letters:
        return style + ending
    after = ending[letters.end() :]
    return Style.SMALL_CAPITALS + letters[0] + (Style.ROMAN + after if after and after[0] not in set(Style) else after)
