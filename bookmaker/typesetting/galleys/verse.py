"""Verse: lines as their author ended them; what is too wide is turned over, further in."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from itertools import groupby
from typing import NamedTuple

from ..lines.boxes import Boxes
from ..lines.paragraphs import Lines, Measures
from ..lines.set_lines import SetLines, joined
from ..manuscripts.passage import INDENT_SIGN, Passage, Role
from .remarks import Verse
from .setting import Setting

__all__ = ["Stanza", "stanza", "verse_places"]

LINED_UP = "\u00a0" * 2
"""Blanks that were typed to bring things into line: such lines are no poem."""

WIDEST_INDENT = 1 / 3
"""No line of verse is set in further, as a share of the measure."""


def verse_places(passages: Sequence[Passage], width: Callable[[str], float], setting: Setting) -> Mapping[int, float]:
    """How far in mm the stanzas of each poem are set in, by their places among the passages: the poem stands in the
    middle as its longest line does (common practice of book typography). One with lines that are turned over does not.
    """
    places: dict[int, float] = {}
    for poem, found in groupby(enumerate(passages), key=lambda one: one[1].role is Role.VERSE and not one[1].inset):
        stanzas = [place for place, _ in found]
        if not poem:
            continue
        verses = [verse for place in stanzas for verse in passages[place].text.split("\n")]
        longest = max(_width_of(verse, width, setting) for verse in verses)
        if longest <= setting.measure and not any(LINED_UP in verse for verse in verses):
            places |= dict.fromkeys(stanzas, (setting.measure - longest) / 2)
    return places


def _width_of(verse: str, width: Callable[[str], float], setting: Setting) -> float:
    """How wide a verse is, with what it is set in, in mm."""
    words = verse.lstrip(INDENT_SIGN)
    return (
        min((len(verse) - len(words)) * setting.size / 2, setting.measure * WIDEST_INDENT) + width(words) * setting.size
    )


class Stanza(NamedTuple):
    """The lines of a stanza, which of them are turned over, how many its first verse takes, and how wide verses are.

    Those that are not turned over are None among the widths.
    """

    text: SetLines
    turned: frozenset[int]
    first: int
    widths: tuple[Verse | None, ...]


def stanza(text: str, left: float, lines: Lines, boxes: Boxes, setting: Setting) -> Stanza:
    """A stanza that begins `left` mm from the left; signs of indentation set a line in by half an em each."""
    found: list[SetLines] = []
    turned: set[int] = set()
    widths, begins = list[Verse | None](), 0
    for verse in text.split("\n"):
        words = verse.lstrip(INDENT_SIGN)
        within = min((len(verse) - len(words)) * setting.size / 2, setting.measure * WIDEST_INDENT)
        further = left + within + setting.indent
        measures = Measures(further, (setting.measure + 1e-9 - further,), -setting.indent)
        found.append(lines.paragraph(words, measures, boxes, setting.size, justified=False))
        count = len(found[-1].lines)
        turned.update(range(begins + 1, begins + count))
        begins += count
        widths.append(None)
        if count > 1:
            width = lines.width(words) + left / setting.size
            # in a wider measure it would stand in further, up to a third of that
            within_ems = min(width + (len(verse) - len(words)) / 2, width / (1 - WIDEST_INDENT))
            widths[-1] = Verse(within_ems, len(words))
    return Stanza(joined(found), frozenset(turned), len(found[0].lines), tuple(widths))
