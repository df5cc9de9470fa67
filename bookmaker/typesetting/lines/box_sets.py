"""Boxes for lines of every width and manner: made once for each, for passages of a text share them."""

from __future__ import annotations

from .boxes import Boxes
from .fount import Fount

__all__ = ["BoxSets"]

SHORTEST, RAGGED_HYPHEN = 1 / 3, 150.0
"""A ragged line that lacks less than this share of the measure is not filled by a hyphen; `breaking` has badness."""


class BoxSets:
    """Boxes of a fount for rooms in ems."""

    def __init__(self, fount: Fount, *, hanging: bool, loosening: float = 0.0) -> None:
        self._fount = fount
        self._hanging, self._loosening = hanging, loosening
        self._made: dict[tuple[float, bool, bool, float], Boxes] = {}

    def filled(self, room: float) -> Boxes:
        """For lines that end at the margin."""
        return self._boxes(room, self._hanging)

    def ragged(self, room: float) -> Boxes:
        """For lines that end as they come: hyphens are for those that would else be very short."""
        return self._boxes(room, self._hanging, hyphens=RAGGED_HYPHEN * (room * SHORTEST) ** 3)

    def sparing(self, room: float, *, hanging: bool) -> Boxes:
        """For words that are hyphenated only where the room is too narrow for them."""
        return self._boxes(room, hanging, sparing=True)

    def _boxes(self, room: float, hanging: bool, *, sparing: bool = False, hyphens: float = 0.0) -> Boxes:
        key = room, hanging, sparing, hyphens
        if key not in self._made:
            self._made[key] = Boxes(
                self._fount, room, hanging=hanging, sparing=sparing, hyphens=hyphens, loosening=self._loosening
            )
        return self._made[key]
