"""Recasting: paragraphs set again, a line longer or shorter or without a hyphen, for the sake of their page.

Compositors call it saving or gaining a line. It is tried where a spread is short of lines, and where a word would be
parted over the turn of a leaf.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..lines.boxes import Boxes
from ..lines.paragraphs import Change, Lines, Measures
from ..lines.set_lines import SetLine
from .matter import Matter

__all__ = ["Recasting"]

LESS, MORE = 0.7, 0.6
"""Of what spaces have gained, how much they may lose on an average if a paragraph is set again, and what they may have
gained then, as a share of themselves: more hardly ever comes out.
"""


class _Cast(NamedTuple):
    """What a paragraph was set from."""

    text: str
    measures: Measures
    boxes: Boxes


class Recasting:
    """The justified paragraphs of a galley, by how many words stand before each: they may be set again."""

    def __init__(self, lines: Lines, size: float) -> None:
        self._lines = lines
        self._size = size
        self._casts: dict[int, _Cast] = {}

    def remember(self, reached: int, text: str, measures: Measures, boxes: Boxes) -> None:
        """Take in what a paragraph is set from."""
        self._casts[reached] = _Cast(text, measures, boxes)

    def others(self, matter: Matter, foot: int) -> Iterator[Matter]:
        """Some matter a line shorter and a line longer; or, with a `foot`, without the hyphen of the line before it."""
        cast = self._casts.get(matter.reached)
        if cast is None:
            return
        lines = matter.lines
        whole = lines[foot - 1].done if foot else None
        for count in (len(lines), None) if foot else self._likely(lines, cast):
            found = self._lines.recast(*cast, self._size, Change(count, whole))
            if found:
                yield matter._replace(lines=found.lines, rows=len(found.lines))

    def _likely(self, lines: Sequence[SetLine], cast: _Cast) -> Iterator[int]:
        """How many lines a paragraph may have instead of those it has, by what its spaces could lose and gain."""
        space = self._lines.fount.word_space * self._size
        spaces = [line.words.count(" ") for line in lines[:-1]]
        loose = sum(count * line.gap for count, line in zip(spaces, lines, strict=False))
        last = self._lines.width(lines[-1].words) * self._size
        if last <= loose * LESS:
            yield len(lines) - 1
        if cast.measures.widths[-1] - last <= sum(spaces) * space * MORE - loose:
            yield len(lines) + 1
