"""Verse: lines as their author ended them; what is too wide is turned over, further in."""

from __future__ import annotations

from typing import NamedTuple

from ..lines.boxes import Boxes
from ..lines.paragraphs import Lines, Measures
from ..lines.set_lines import SetLines, joined
from ..manuscripts.passage import INDENT_SIGN
from .setting import Setting

__all__ = ["Stanza", "stanza"]

WIDEST_INDENT = 1 / 3
"""No line of verse is set in further, as a share of the measure."""


class Stanza(NamedTuple):
    """The lines of a stanza, which of them are turned over, how many its first verse takes, and how wide verses are.

    That is in ems, and 0 for those that are not turned over.
    """

    text: SetLines
    turned: frozenset[int]
    first: int
    widths: tuple[float, ...]


def stanza(text: str, left: float, lines: Lines, boxes: Boxes, setting: Setting) -> Stanza:
    """A stanza that begins `left` mm from the left; signs of indentation set a line in by half an em each."""
    found: list[SetLines] = []
    turned: set[int] = set()
    widths, begins = list[float](), 0
    for verse in text.split("\n"):
        words = verse.lstrip(INDENT_SIGN)
        within = min((len(verse) - len(words)) * setting.size / 2, setting.measure * WIDEST_INDENT)
        further = left + within + setting.indent
        measures = Measures(further, (setting.measure + 1e-9 - further,), -setting.indent)
        found.append(lines.paragraph(words, measures, boxes, setting.size, justified=False))
        count = len(found[-1].lines)
        turned.update(range(begins + 1, begins + count))
        begins += count
        widths.append(0.0)
        if count > 1:
            width = lines.width(words) + left / setting.size
            # in a wider measure it would stand in further, up to a third of that
            widths[-1] = min(width + (len(verse) - len(words)) / 2, width / (1 - WIDEST_INDENT))
    return Stanza(joined(found), frozenset(turned), len(found[0].lines), tuple(widths))
