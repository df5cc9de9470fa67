"""What is cut from material that does not go through the printer: blocks of wood, boards, stiffeners."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["CutPart"]


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
