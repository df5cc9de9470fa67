"""Cuts of a typeface: the same letters with other figures, heavier strokes or more room, as a typeface of its own.

Whoever sets, measures and prints text asks a typeface for its glyphs and knows nothing of cuts.
"""

from __future__ import annotations

import hashlib
import io
from collections.abc import Callable
from functools import cached_property, lru_cache

import uharfbuzz as hb
from fontTools.ttLib import TTFont

from .contours import Commands
from .thickening import thickened
from .typeface import Run, Typeface
from .vertical import Vertical, vertical_of

__all__ = ["cut_of"]


class _Cut(Typeface):
    """A typeface with OpenType features that are always on, edges that lie further out and letters set wider, in ems.

    A heavier letter takes as much more room as it is wider, so the white between letters stays as it was drawn, letters
    that are joined stay joined, and marks keep their place.
    """

    def __init__(self, plain: Typeface, features: tuple[str, ...], thicker: float, spaced: float) -> None:
        self.made_of = plain, features, thicker, spaced
        self.thicker, self.wider, self.redrawn = thicker, 2 * thicker + spaced, thicker > 0
        super().__init__(plain.path, plain.data, TTFont(io.BytesIO(plain.data), lazy=True))
        self._font = hb.Font(hb.Face(hb.Blob(plain.data)))
        self._font.synthetic_bold = (self.wider, 0.0, False)

    def __reduce__(self) -> tuple[Callable[..., Typeface], tuple[Typeface, tuple[str, ...], float, float]]:
        return cut_of, self.made_of

    @cached_property
    def digest(self) -> str:
        """What tells it from all others."""
        plain, *how = self.made_of
        return hashlib.sha256(repr((plain.digest, how)).encode()).hexdigest()

    def shape(
        self, text: str, *, features: tuple[str, ...] = (), language: str = "", right_to_left: bool = False
    ) -> Run:
        """Set a text as its plain typeface does, with the features of the cut before those asked for."""
        features = (*self.made_of[1], *features)
        return super().shape(text, features=features, language=language, right_to_left=right_to_left)

    def advance(self, gid: int) -> float:
        """The usual advance of a glyph, in the units of the typeface; a mark has none."""
        advance = self.made_of[0].advance(gid)
        return advance + self.wider * self.units_per_em if advance else 0.0

    def extent(self, gid: int) -> tuple[float, float]:
        """The lowest and the highest ink of a glyph, in ems; equal for a blank."""
        bottom, top = self.made_of[0].extent(gid)
        return (bottom - self.thicker, top + self.thicker) if top > bottom else (bottom, top)

    def breadth(self, gid: int) -> tuple[float, float]:
        """Where the ink of a glyph begins and ends, in ems from its left; equal for a blank."""
        left, right = self.made_of[0].breadth(gid)
        return (left, right + 2 * self.thicker) if right > left else (left, right)

    def outline(self, gid: int) -> Commands:
        """The outline of a glyph with its edges moved out, and all of it to the right by as much."""
        plain = self.made_of[0].outline(gid)
        by = self.thicker * self.units_per_em
        return _moved_right(thickened(plain, by), by) if by else plain


def _moved_right(outline: Commands, by: float) -> Commands:
    """Only numbers at even places after the letter are counted to the right."""
    return [
        (kind, *(float(number) + (0.0 if place % 2 else by) for place, number in enumerate(numbers)))
        for kind, *numbers in outline
    ]


def cut_of(typeface: Typeface, features: tuple[str, ...] = (), thicker: float = 0.0, spaced: float = 0.0) -> Typeface:
    """A typeface with OpenType features always on, edges `thicker` ems further out, and `spaced` ems after each letter.

    It is the typeface itself if there is none of that.

    >>> from .files import bundled
    >>> heavier = cut_of(bundled("text"), thicker=0.01, spaced=0.005)
    >>> round(heavier.shape("in").width - bundled("text").shape("in").width, 6)
    0.05
    """
    if isinstance(typeface, Vertical):
        return vertical_of(cut_of(typeface.plain, features, thicker, spaced), typeface.dotted)
    if isinstance(typeface, _Cut):
        typeface, before, heavier, wider = typeface.made_of
        features, thicker, spaced = (*before, *features), heavier + thicker, wider + spaced
    return _cut(typeface, features, thicker, spaced) if features or thicker or spaced else typeface


@lru_cache(maxsize=64)
def _cut(typeface: Typeface, features: tuple[str, ...], thicker: float, spaced: float) -> Typeface:
    return _Cut(typeface, features, thicker, spaced)
