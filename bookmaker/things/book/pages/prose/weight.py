"""The weight of a text: type made heavier until its hairlines are as thick as asked, as far as counters stay open."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from .....ground.kept import digest
from .....ground.problems import Problem, Severity
from .....ground.typefaces import Typeface, cut_of
from .....ground.typefaces.strokes import strokes_of
from .....ground.units import print_pt
from .....typesetting.lines.fount import Fount, Style
from .....typesetting.page import PageFrame

__all__ = ["Weight", "weight_of"]

DECIMALS = 4
"""Edges are moved by whole ten-thousandths of an em, far less than a dot, so that few cuts are made."""


@dataclass(frozen=True, slots=True)
class Weight:
    """How thick hairlines are to be at least, and how much of each counter stays as it is drawn, both in mm."""

    hairline: float
    opening: float

    def of(self, fount: Fount, size: float) -> Fount:
        """A fount as heavy as this in type of a size in mm; a face that is heavy enough by itself stays as it is."""
        return _heavier(fount, self, size)

    def on(self, typeface: Typeface, size: float) -> Typeface:
        """A typeface as heavy as this; the white in its letters is left open."""
        strokes = strokes_of(typeface)
        if strokes is None:
            return typeface
        lacking = self.hairline / size - strokes.hairline
        spare = min(strokes.counters.values(), default=math.inf) - self.opening / size
        return cut_of(typeface, thicker=round(max(0.0, min(lacking, spare) / 2), DECIMALS))

    def lacking(self, typeface: Typeface, size: float, dot: float) -> Iterator[Problem]:
        """A note where counters would close before hairlines are as thick as asked; `typeface` is that which is set."""
        strokes = strokes_of(typeface)
        thick = strokes.hairline * size if strokes else self.hairline
        if thick < self.hairline - dot / 20:
            yield Problem(
                f"the hairlines of {typeface.name} in {print_pt(size)} type are made {thick / dot:.1f} dots thick, "
                f"not {self.hairline / dot:.2g}: more would close the white in its letters",
                "write a larger size, or choose a face with wider letters and sturdier hairlines, such as sans",
                Severity.NOTE,
                field=("weight",),
            )


def weight_of(dots: float | None, frame: PageFrame) -> Weight | None:
    """The weight of so many printer dots on the pages of a frame; None if type is to be as it is drawn."""
    return None if dots is None else Weight(dots * frame.dot, frame.dot + 2 * frame.ink_spread)


@lru_cache(maxsize=32)
def _heavier(fount: Fount, weight: Weight, size: float) -> Fount:
    return Fount(
        _HeavierFaces(fount.faces, weight, size),
        fount.language,
        fount.spoken,
        right_to_left=fount.right_to_left,
        stand_in=fount.stand_in and weight.on(fount.stand_in, size),
        known_as=digest(fount.key, weight.hairline, weight.opening, size),
    )


class _HeavierFaces(Mapping[Style, Typeface]):
    """The typefaces of a fount, each measured and made heavier when a word is set in it."""

    def __init__(self, plain: Mapping[Style, Typeface], weight: Weight, size: float) -> None:
        self._plain, self._weight, self._size = plain, weight, size
        self._made: dict[Style, Typeface] = {}

    def __getitem__(self, style: Style) -> Typeface:
        if style not in self._made:
            self._made[style] = self._weight.on(self._plain[style], self._size)
        return self._made[style]

    def __iter__(self) -> Iterator[Style]:
        return iter(self._plain)

    def __len__(self) -> int:
        return len(self._plain)
