"""Mottoes: words of somebody else under the head of a chapter, of a part or of the whole text.

They are set like an epigraph: a block of ragged lines in the middle, in italic, with who said it at its right.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import takewhile

from ..lines.boxes import Boxes
from ..lines.fount import Style, as_read
from ..lines.paragraphs import Lines, Measures
from ..lines.set_lines import SetLines, joined
from ..manuscripts.passage import INDENT_SIGN, Passage, Role
from ..manuscripts.ranks import Rank
from .setting import Setting

__all__ = ["motto_lines", "under_next_head", "with_mottoes"]

MOST_WORDS = 60
"""A longer quotation under the head of a chapter is one of its paragraphs."""

WIDEST = 0.85
"""No motto is wider, as a share of the measure."""

SOURCE = ("\u2014", "\u2013", "\u2015", "-")
"""What stands before the name of who said it."""

TURNED = {Style.ROMAN: Style.ITALIC, Style.ITALIC: Style.ROMAN, Style.BOLD: Style.BOLD_ITALIC,
          Style.BOLD_ITALIC: Style.BOLD}  # fmt: skip
"""How the styles of a text in roman look in one that is in italic."""

TURNING = str.maketrans({str(style): str(other) for style, other in TURNED.items()})


def with_mottoes(passages: Sequence[Passage]) -> list[Passage]:
    """The passages with each quotation that stands right under a head as one motto, line by line."""
    found: list[Passage] = []
    place = 0
    while place < len(passages):
        quoted = list(takewhile(_is_quoted, passages[place:])) if found and _is_head(found[-1]) else []
        long = sum(passage.words for passage in quoted) > MOST_WORDS and found[-1].level == Rank.CHAPTER
        if quoted and not long:
            text = "\n".join(passage.text for passage in quoted)
            found.append(Passage(text, Role.MOTTO, inset=1))
        else:
            found += [*quoted, *passages[place + len(quoted) : place + 1]]
        place += max(1, len(quoted))
    return found


def under_next_head(passages: Sequence[Passage]) -> tuple[Passage, ...]:
    """Passages that lost the title before them: a motto of its goes under the head that follows it."""
    if len(passages) > 1 and passages[0].role is Role.MOTTO and _is_head(passages[1]):
        return (passages[1], passages[0], *passages[2:])
    return tuple(passages)


def motto_lines(text: str, lines: Lines, boxes_in: Callable[[float], Boxes], setting: Setting) -> SetLines:
    """The lines of a motto, those of its source at the right of the block; `boxes_in` are those for a room in mm."""
    room = setting.measure * WIDEST
    parts, sources = list[SetLines](), list[bool]()
    for line in text.split("\n"):
        words = line.lstrip(INDENT_SIGN)
        within = min((len(line) - len(words)) * setting.size / 2, room / 3)
        source = bool(parts) and as_read(words).startswith(SOURCE)
        if lines.fount.slanted and not source:
            words = " ".join(map(_in_italic, words.split(" ")))
        boxes, measures = boxes_in(room - within), Measures(within, (room - within,))
        parts.append(lines.paragraph(words, measures, boxes, setting.size, justified=False))
        sources += [source] * len(parts[-1].lines)
    found = joined(parts)
    rights = [line.x + lines.width(line.words) * setting.size for line in found.lines]
    width = max(rights)
    left = (setting.measure - width) / 2
    placed = (
        line._replace(x=left + line.x + (width - right if source else 0.0))
        for line, right, source in zip(found.lines, rights, sources, strict=True)
    )
    return found._replace(lines=tuple(placed))


def _in_italic(word: str) -> str:
    """A word of a roman text in italic, and what is emphasized in it in roman.

    >>> _in_italic("fog\\x01bell\\x00,")
    '\\x01fog\\x00bell\\x01,'
    """
    turned = word.translate(TURNING)
    return turned if word[:1] in set(Style) else Style.ITALIC + turned


def _is_head(passage: Passage) -> bool:
    return passage.role is Role.HEADING and passage.level <= Rank.CHAPTER and not passage.inset


def _is_quoted(passage: Passage) -> bool:
    return passage.inset > 0 and passage.role in {Role.BODY, Role.VERSE} and not passage.mark
