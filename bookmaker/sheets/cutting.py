"""What is cut from material that does not go through the printer: blocks of wood, boards, stiffeners, sticks."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, radians, tan

from ..ground.told import MM_PER_INCH, Units, units_told

__all__ = ["CutPart", "Stick"]

SOLD = (1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0)
SOLD_IN_INCHES = tuple(MM_PER_INCH * part for part in (1 / 32, 1 / 16, 3 / 32, 1 / 8, 3 / 16, 1 / 4, 3 / 8, 1 / 2))
"""Thicknesses in mm in which shops have thin wood (common practice)."""

NEAR = 1e-6

NO_WOOD = ("paper", "card", "board")
"""What blocks are made of that is piled up and not sanded down goes by one of these words."""


@dataclass(frozen=True, slots=True)
class CutPart:
    """A part to cut by hand: so many of this height, width and thickness in mm, from that material.

    `height` runs along the spine of the book, and so does the grain of board and card.
    """

    what: str
    material: str
    height: float
    width: float
    thickness: float
    count: int = 1

    @property
    def as_sold(self) -> tuple[int, float] | None:
        """The fewest layers and their thickness in mm from which a block of wood is sanded down; None without wood.

        >>> CutPart("block", "wood", 21, 14, 3.7).as_sold, CutPart("block", "wood", 21, 14, 11.0).as_sold
        ((1, 4.0), (2, 6.0))
        """
        if self.what != "block" or any(word in self.material.casefold() for word in NO_WOOD):
            return None
        sold = SOLD_IN_INCHES if units_told() is Units.INCHES else SOLD
        layers = ceil(self.thickness / sold[-1] - NEAR)
        return layers, next(one for one in sold if one >= self.thickness / layers - NEAR)


@dataclass(frozen=True, slots=True)
class Stick:
    """A length of strip to saw off by hand: so many of this length over all in mm, from strip of one section.

    `width` is the side that is seen, across which the ends are bevelled; `bevels` are the angles of both ends in
    degrees from a square cut: 0 is square, 45 a mitre. A bevel above 0 shortens the one side of the stick, one below
    0 the other: a rail of a frame has two of the same sign. `sold` is the length of strip that the shop has, if it is
    known.
    """

    what: str
    material: str
    length: float
    width: float
    thickness: float
    bevels: tuple[float, float] = (0.0, 0.0)
    count: int = 1
    sold: float | None = None

    @property
    def shorter_side(self) -> float:
        """How long its shorter side is, in mm: a rail of 30 mm mitred at both ends from strip 4 mm wide has 22 mm.

        >>> round(Stick("rail", "basswood", 30.0, 4.0, 2.0, (45.0, 45.0)).shorter_side, 6)
        22.0
        """
        cut_off = [self.width * tan(radians(bevel)) for bevel in self.bevels]
        return self.length - max(sum(max(0.0, way * cut) for cut in cut_off) for way in (1, -1))

    @property
    def ends(self) -> str:
        """Both ends in words.

        >>> Stick("rail", "basswood", 30.0, 4.0, 2.0, (45.0, 45.0)).ends, Stick("post", "oak", 9.0, 2.0, 2.0).ends
        ('both 45°', 'square')
        """
        first, last = self.bevels
        if not first and not last:
            return "square"
        if first == last:
            return f"both {first:g}°"
        if first == -last:
            return f"both {abs(first):g}°, slanting the same way"
        return " and ".join(f"{bevel:g}°" if bevel else "square" for bevel in self.bevels)
