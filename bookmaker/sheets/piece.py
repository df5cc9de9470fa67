"""A piece: a flat part with its art, ready to be placed on a sheet."""

from __future__ import annotations

from dataclasses import dataclass

from ..ground.art import NOTHING
from ..ground.drawing import Art
from ..ground.typefaces import Typeface
from .flat import Flat

__all__ = ["Piece"]


@dataclass(frozen=True, slots=True)
class Piece:
    """What one cut out of a sheet will be.

    `id` is unique on the shelf, `owner` is the id of the thing it is a part of. `label`, printed beside the piece, has
    two parts: what it belongs to, which may be shortened, and the part of it, which may not.
    `face` is a typeface of the maker's for its label, if no other has the letters.
    `art` is drawn in the coordinates of the flat, up to its bleed; `reverse` is drawn in those of the flat
    turned over about its upright axis, so that its left edge is the right edge of the front.
    """

    id: str
    owner: str
    label: tuple[str, str]
    flat: Flat
    art: Art = NOTHING
    reverse: Art = NOTHING
    face: Typeface | None = None

    @property
    def two_sided(self) -> bool:
        """Whether anything is printed on its reverse."""
        return self.reverse is not NOTHING
