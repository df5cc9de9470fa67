"""A piece: a flat part with its art, ready to be placed on a sheet."""

from __future__ import annotations

from dataclasses import dataclass

from ..ground.art import NOTHING
from ..ground.drawing import Art
from ..ground.problems import FieldPath
from ..ground.typefaces import Typeface
from .flat import Flat

__all__ = ["Piece"]


@dataclass(frozen=True, slots=True)
class Piece:
    """What one cut out of a sheet will be.

    `id` is unique on the shelf, `book` is the number of its book in the shelf file (from 0), or None for a part
    of a `slipcase`, which goes by its name. `label`, printed beside the piece, has two parts: the book or box,
    which may be shortened, and the part of it, which may not.
    `face` is a typeface of the maker's for its label, if no other has the letters.
    `art` is drawn in the coordinates of the flat, up to its bleed; `reverse` is drawn in those of the flat
    turned over about its upright axis, so that its left edge is the right edge of the front.
    """

    id: str
    book: int | None
    label: tuple[str, str]
    flat: Flat
    art: Art = NOTHING
    reverse: Art = NOTHING
    slipcase: str | None = None
    face: Typeface | None = None

    @property
    def owner(self) -> FieldPath:
        """The part of the shelf file it belongs to."""
        return ("slipcases", self.slipcase or "") if self.book is None else ("books", self.book)

    @property
    def two_sided(self) -> bool:
        """Whether anything is printed on its reverse."""
        return self.reverse is not NOTHING
