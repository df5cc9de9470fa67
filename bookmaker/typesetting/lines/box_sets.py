"""Boxes for lines of every width and manner: made once for each, for passages of a text share them."""

from __future__ import annotations

from dataclasses import dataclass, field

from .boxes import Boxes
from .fount import Fount

__all__ = ["BoxSets"]

SHORTEST, RAGGED_HYPHEN = 1 / 3, 150.0
"""A ragged line that lacks less than this share of the measure is not filled by a hyphen; `breaking` has badness."""


@dataclass(frozen=True, slots=True)
class BoxSets:
    """Boxes of a fount for rooms in ems; `wide` collects the words that had to be parted between letters."""

    fount: Fount
    hanging: bool
    wide: dict[str, None]
    made: dict[tuple[str, float, bool], Boxes] = field(default_factory=dict)

    def filled(self, room: float) -> Boxes:
        """For lines that end at the margin."""
        key = ("filled", room, self.hanging)
        if key not in self.made:
            self.made[key] = Boxes(self.fount, room, hanging=self.hanging, wide=self.wide)
        return self.made[key]

    def ragged(self, room: float) -> Boxes:
        """For lines that end as they come: hyphens are for those that would else be very short."""
        key = ("ragged", room, self.hanging)
        if key not in self.made:
            spared = RAGGED_HYPHEN * (room * SHORTEST) ** 3
            self.made[key] = Boxes(self.fount, room, hanging=self.hanging, hyphens=spared, wide=self.wide)
        return self.made[key]

    def sparing(self, room: float, *, hanging: bool) -> Boxes:
        """For words that are hyphenated only where the room is too narrow for them."""
        key = ("sparing", room, hanging)
        if key not in self.made:
            self.made[key] = Boxes(self.fount, room, hanging=hanging, sparing=True, wide=self.wide)
        return self.made[key]
