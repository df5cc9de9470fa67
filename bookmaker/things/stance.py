"""How a finished thing is put on its shelf: upright as a rule, or leaning, lying, with its face to the room, open."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from ..ground.told import print_mm

__all__ = ["UPRIGHT", "Opened", "Stance", "Way"]


class Way(StrEnum):
    """What of a thing is turned to the room."""

    SPINE = "spine"
    FRONT = "front"
    BACK = "back"
    LYING = "lying"
    OPEN = "open"


@dataclass(frozen=True, slots=True)
class Opened:
    """A book that lies open at a page, its tail to the room: how high its halves are at the left and right, in mm.

    `cover` is what of that is the cover under them.
    """

    page: int
    left: float
    right: float
    cover: float


@dataclass(frozen=True, slots=True)
class Stance:
    """How a thing is put there.

    `lean` is in degrees from upright, with its head to the left; less than 0 to the right. What `falls` leans as far
    as its neighbours leave room, to the left with 1, to the right with -1. `pulled_out` is how far it stands before the
    others, in mm.
    """

    way: Way = Way.SPINE
    lean: float = 0.0
    falls: int = 0
    upside_down: bool = False
    pulled_out: float = 0.0
    opened: Opened | None = None

    def fallen(self, degrees: float) -> Stance:
        """The same once it leans so far as there is room, if it falls."""
        return replace(self, lean=self.falls * degrees, falls=0) if self.falls else self

    def in_words(self) -> str:
        """What is to be known of it to put it there; empty if it stands as others do.

        >>> Stance(lean=-12.0, pulled_out=2.0).in_words()
        'leans 12° to the right, is pulled out 2 mm'
        """
        said = {Way.FRONT: "shows its front", Way.BACK: "shows its back", Way.LYING: "lies by itself"}
        parts = [said[self.way]] if self.way in said else []
        parts += [f"lies open at page {self.opened.page}"] if self.opened else []
        parts += [f"leans {abs(self.lean):.0f}° to the {'left' if self.lean > 0 else 'right'}"] if self.lean else []
        parts += ["is upside down"] if self.upside_down else []
        parts += [f"is pulled out {print_mm(self.pulled_out)}"] if self.pulled_out else []
        return ", ".join(parts)


UPRIGHT = Stance()
"""As books stand."""
