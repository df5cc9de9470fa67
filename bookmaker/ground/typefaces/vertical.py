"""Typefaces for lines that run down the page: the same letters, turned so that they stand upright there.

Such a line is set like any other, from left to right, and the whole page is then turned clockwise by a quarter. So
signs that are to stand upright lie in it turned back by a quarter, in the forms that the font file has for them
(HarfBuzz shapes them downwards, with the OpenType feature vert); all others are as they are, and lie on their side.
They stand on one axis: the middle of the square of a sign, which reaches from 0.12 ems under the baseline to 0.88 over
it (OpenType, baseline tags, ideographic em-box).
"""

from __future__ import annotations

import hashlib
import io
from collections.abc import Callable, Iterator
from functools import cached_property, lru_cache
from typing import Any

from fontTools.ttLib import TTFont

from ..scripts import stretches
from .contours import Commands
from .orientation import Stance, stances
from .typeface import Glyph, Run, Typeface

__all__ = ["Vertical", "across", "is_dotted", "vertical_of"]

TOP, AXIS = 0.88, 0.38
"""The upper edge of a square and its middle, in ems over the baseline."""

TURNED, FIGURES, DOTTED = 1 << 16, 1 << 17, 1 << 18
"""Added to the numbers of glyphs that are turned back, that stand for figures (which follow a 1), that have a dot."""

RAISED = frozenset({"sups", "smcp"})
"""Features of small letters, which stay together on their side."""

DOT = (
    ("M", -0.1, -0.08),
    ("Q", -0.08, 0.06, 0.05, 0.09),
    ("Q", 0.12, 0.09, 0.11, 0.03),
    ("Q", 0.09, -0.03, -0.1, -0.08),
)
"""A sesame dot about its middle as it lies in the line, in ems."""

FROM_EDGE = 0.13
"""Ems from the square of a sign to the middle of its dot."""


class Vertical(Typeface):
    """A typeface as it is set in lines that run down; `dotted`, each upright letter has a sesame dot at its right.

    That is how stress is marked there (JLREQ, 3.3.9).
    """

    redrawn = True

    def __init__(self, plain: Typeface, *, dotted: bool = False) -> None:
        self.plain, self.dotted = plain, dotted
        self.thicker, self.wider = plain.thicker, plain.wider
        self._forms: dict[str, bool] = {}
        self._inks: dict[int, tuple[tuple[float, float], tuple[float, float]]] = {}
        tables = TTFont(io.BytesIO(plain.data), lazy=True)
        super().__init__(plain.path, plain.data, tables)
        self._has_heights = "vmtx" in tables
        self.x_height, self.cap_height = plain.x_height, TOP

    def __reduce__(self) -> tuple[Callable[..., Vertical], tuple[Typeface, bool]]:
        return vertical_of, (self.plain, self.dotted)

    @cached_property
    def digest(self) -> str:
        """What tells it from all others."""
        return hashlib.sha256(f"vertical {self.plain.digest} {self.dotted}".encode()).hexdigest()

    def advance(self, gid: int) -> float:
        """How far a glyph reaches along the line, in the units of the typeface."""
        gid &= ~DOTTED
        if gid >= FIGURES:
            return self.units_per_em
        return self._taken(gid - TURNED) if gid >= TURNED else self.plain.advance(gid)

    def extent(self, gid: int) -> tuple[float, float]:
        """The lowest and the highest ink of a glyph as it lies in the line, in ems."""
        return self._ink(gid)[1] if gid >= TURNED else self.plain.extent(gid)

    def breadth(self, gid: int) -> tuple[float, float]:
        """Where the ink of a glyph begins and ends in the line, in ems."""
        return self._ink(gid)[0] if gid >= TURNED else self.plain.breadth(gid)

    def outline(self, gid: int) -> Commands:
        """The outline of a glyph as it lies in the line."""
        letter, em = self._letter(gid & ~DOTTED), self.units_per_em
        if not (gid & DOTTED and letter):
            return letter
        middle, above = self.advance(gid) / 2, (TOP + FROM_EDGE) * em
        dot: Commands = [
            (kind, *(at * em + (above if place % 2 else middle) for place, at in enumerate(numbers)))
            for kind, *numbers in DOT
        ]
        return [*letter, *dot, ("Z",)]

    def _letter(self, gid: int) -> Commands:
        """The outline of a glyph without its dot."""
        if gid < TURNED:
            return self.plain.outline(gid)
        if gid >= FIGURES:
            return [*self._figures(str(gid - FIGURES)[1:])]
        right, top = self._origin(gid - TURNED)
        axis = AXIS * self.units_per_em - right
        return [*_turned(self.plain.outline(gid - TURNED), top, axis)]

    def _figures(self, figures: str) -> Iterator[tuple[str | float, ...]]:
        """Figures side by side in one square, made narrower if they are wider than that."""
        em, glyphs = self.units_per_em, self.plain.shape(figures).glyphs
        width = sum(glyph.advance for glyph in glyphs)
        narrower = min(1.0, 1 / width)
        middle = (0.5 + sum(self.plain.extent(glyphs[0].gid)) / 2) * em
        x = AXIS - width * narrower / 2
        for glyph in glyphs:
            outline = self.plain.outline(glyph.gid)
            yield from _turned(outline, middle, (x + glyph.dx * narrower) * em, narrower)
            x += glyph.advance * narrower

    def _origin(self, gid: int) -> tuple[float, float]:
        """The middle of the upper edge of a glyph's square, in the units of the typeface and its own coordinates."""
        right, top = self._font.get_glyph_v_origin(gid)
        right += self.thicker * self.units_per_em
        return right, top if self._has_heights else TOP * self.units_per_em

    def _taken(self, gid: int) -> float:
        """How much of the line an upright glyph takes."""
        return -self._font.get_glyph_v_advance(gid) if self._has_heights else self.units_per_em

    def _ink(self, gid: int) -> tuple[tuple[float, float], tuple[float, float]]:
        """Where the ink of a turned glyph begins and ends along the line, and across it, in ems."""
        known = self._inks.get(gid)
        if known is None:
            ends = [
                [float(at) / self.units_per_em for at in numbers[-2:]] for _, *numbers in self.outline(gid) if numbers
            ]
            along, across = zip(*(ends or [[0.0, 0.0]]), strict=True)
            known = self._inks[gid] = (min(along), max(along)), (min(across), max(across))
        return known

    def _shaped(self, text: str, features: tuple[str, ...], language: str, right_to_left: bool) -> Run:  # noqa: ARG002 (such lines are read downwards)
        glyphs = tuple(self._dotted(glyph) for glyph in self._laid(text, features, language))
        return Run(self, text, glyphs, sum(glyph.advance for glyph in glyphs))

    def _laid(self, text: str, features: tuple[str, ...], language: str) -> Iterator[Glyph]:
        """The glyphs of a text one after the other."""
        for stance, signs in stances(text, self._has_own_form):
            if stance is Stance.UPRIGHT:
                for start, end, script, _ in stretches(signs):
                    yield from self._shape_part(signs[start:end], script, "ttb", language, {})
            elif stance is Stance.FIGURES and RAISED.isdisjoint(features):
                yield Glyph(FIGURES + int(f"1{signs}"), 1.0, 0.0, 0.0, signs)
            else:
                yield from self.plain.shape(signs, features=features, language=language).glyphs

    def _dotted(self, glyph: Glyph) -> Glyph:
        if not (self.dotted and any(sign.isalnum() for sign in glyph.text)):
            return glyph
        return glyph._replace(gid=glyph.gid + DOTTED)

    def _has_own_form(self, sign: str) -> bool:
        """Whether the font file has another glyph for a sign where lines run down."""
        found = self._forms.get(sign)
        if found is None:
            downwards = self._shape_part(sign, stretches(sign)[0].script, "ttb", "", {})
            usual = self._font.get_nominal_glyph(ord(sign))
            found = self._forms[sign] = [glyph.gid - TURNED for glyph in downwards] != [usual]
        return found

    def _placed(self, gid: int, place: Any, said: str) -> Glyph:
        """A glyph that HarfBuzz placed downwards; what it is shifted by besides its usual place."""
        em, (right, top) = self.units_per_em, self._font.get_glyph_v_origin(gid)
        along, across = -(place.y_offset + top) / em, (place.x_offset + right) / em
        return Glyph(gid + TURNED, self._taken(gid) / em, along, across, said)


def _turned(outline: Commands, top: float, right: float, narrower: float = 1.0) -> Iterator[tuple[str | float, ...]]:
    """An outline turned a quarter counter-clockwise: what is `top` high comes to 0, what is at the left to `right`."""
    for kind, *numbers in outline:
        ends = [float(at) for at in numbers]
        pairs = zip(ends[::2], ends[1::2], strict=True)
        yield kind, *(at for x, y in pairs for at in (top - y, right + narrower * x))


@lru_cache(maxsize=64)
def vertical_of(typeface: Typeface, dotted: bool = False) -> Vertical:
    """A typeface for lines that run down.

    >>> from .files import bundled
    >>> [round(vertical_of(bundled("text")).shape(text).width, 2) for text in ("12", "123")]
    [1.0, 1.68]
    """
    return Vertical(typeface, dotted=dotted)


def across(typeface: Typeface) -> Typeface:
    """The same letters for lines that run across the page."""
    return typeface.plain if isinstance(typeface, Vertical) else typeface


def is_dotted(typeface: Typeface) -> bool:
    """Whether its letters have dots beside them, for stress."""
    return isinstance(typeface, Vertical) and typeface.dotted
