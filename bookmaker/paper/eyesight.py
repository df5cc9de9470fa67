"""How small letters can be: what an eye sees at a distance, and what a printer prints.

A letter that sharp eyes (20/20) just read is 5 minutes of arc high: 8.87 mm at 20 ft (H. Snellen's chart),
0.436 mm at 300 mm.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import atan, degrees

from ..ground.units import MM_PER_INCH

__all__ = ["FEWEST_DOTS", "READABLE_MINUTES", "READING_DISTANCE", "Legibility", "Sight"]

READABLE_MINUTES = 5.0
"""Minutes of arc that sharp eyes need for a letter (Snellen)."""

READING_DISTANCE = 300.0
"""From the eye to the page, in mm (common practice)."""

FEWEST_DOTS = 4.0
"""Letters whose x-height is fewer printer dots run together into a grey line (common practice)."""


class Sight(StrEnum):
    """What letters are good for: to be read, to be read through a lens, or to look like print."""

    READABLE = "readable"
    WITH_A_LENS = "with a lens"
    TEXTURE = "texture only"


@dataclass(frozen=True, slots=True)
class Legibility:
    """Letters whose x-height is so many mm, seen from a distance in mm, printed so many dots to the inch."""

    x_height: float
    resolution_dpi: float
    distance: float = READING_DISTANCE

    @property
    def minutes(self) -> float:
        """The angle under which an x is seen, in minutes of arc.

        >>> round(Legibility(0.436, 600).minutes, 2)
        5.0
        """
        return degrees(atan(self.x_height / self.distance)) * 60

    @property
    def dots(self) -> float:
        """How many printer dots an x is high.

        >>> round(Legibility(0.436, 600).dots, 1)
        10.3
        """
        return self.x_height / MM_PER_INCH * self.resolution_dpi

    @property
    def sight(self) -> Sight:
        """What the letters are good for."""
        if self.dots < FEWEST_DOTS - 1e-9:
            return Sight.TEXTURE
        return Sight.READABLE if self.minutes >= READABLE_MINUTES else Sight.WITH_A_LENS
