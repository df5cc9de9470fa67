"""Verse: lines as their author ended them; what is too wide is turned over, further in."""

from __future__ import annotations

from typing import NamedTuple

from ..lines.boxes import Boxes
from ..lines.paragraphs import Lines, Measures
from ..manuscripts.passage import INDENT_SIGN
from .matter import SetLine
from .setting import Setting

__all__ = ["Stanza", "stanza"]

WIDEST_INDENT = 1 / 3
"""No line of verse is set in further, as a share of the measure."""


class Stanza(NamedTuple):
    """The lines of a stanza, which of them are turned over, and how many rows its first verse takes."""

    lines: tuple[SetLine, ...]
    turned: frozenset[int]
    first: int


def stanza(text: str, left: float, lines: Lines, boxes: Boxes, setting: Setting) -> Stanza:
    """A stanza that begins `left` mm from the left; signs of indentation set a line in by half an em each."""
    found: list[SetLine] = []
    turned: set[int] = set()
    remarks, first = lines.remarks.verses, 0
    for verse in text.split("\n"):
        words = verse.lstrip(INDENT_SIGN)
        within = min((len(verse) - len(words)) * setting.size / 2, setting.measure * WIDEST_INDENT)
        begins, further = len(found), left + within + setting.indent
        measures = Measures(further, (setting.measure + 1e-9 - further,), -setting.indent)
        found += lines.paragraph(words, measures, boxes, setting.size, justified=False)
        turned.update(range(begins + 1, len(found)))
        first = first or len(found)
        remarks.count += 1
        if len(found) > begins + 1:
            remarks.turned += 1
            wide = lines.width(words) + left / setting.size
            # in a wider measure it would stand in further, up to a third of that
            wide = min(wide + (len(verse) - len(words)) / 2, wide / (1 - WIDEST_INDENT))
            remarks.widest = max(remarks.widest, wide)
    return Stanza(tuple(found), frozenset(turned), first)
