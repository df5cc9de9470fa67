"""What is cut from material that does not go through the printer: blocks of wood, boards, stiffeners, sticks."""

from __future__ import annotations

from dataclasses import dataclass
from math import radians, tan

__all__ = ["CutPart", "Stick"]


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
