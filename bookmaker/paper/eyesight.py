"""How small letters can be: what an eye sees at a distance, and what a printer prints.

A printer prints whole dots: a stroke thinner than one breaks up, or is printed as thick as one. And ink spreads, so
white that is shut in closes: a counter is open as long as a dot of white is left of it.

A letter that sharp eyes (20/20) just read is 5 minutes of arc high: 8.87 mm at 20 ft (H. Snellen's chart),
0.436 mm at 300 mm.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import atan, degrees

from ..ground.typefaces.strokes import Strokes
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
    """Letters whose x-height is so many mm, seen from a distance in mm, printed so many dots to the inch.

    `strokes` are theirs in mm, if they are known; ink spreads by `ink_spread` mm at every edge.
    """

    x_height: float
    resolution_dpi: float
    distance: float = READING_DISTANCE
    strokes: Strokes | None = None
    ink_spread: float = 0.0

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
        return self._dots(self.x_height)

    def _dots(self, length: float) -> float:
        return length / MM_PER_INCH * self.resolution_dpi

    @property
    def stem(self) -> float | None:
        """How many printer dots a stem is thick, as it is drawn."""
        return self._dots(self.strokes.stem) if self.strokes else None

    @property
    def hairline(self) -> float | None:
        """How many printer dots a hairline is thick, as it is drawn.

        >>> from ..ground.units import from_pt
        >>> drawn = Strokes(stem=0.094, hairline=0.0437, counters={"e": 0.176, "o": 0.272}).times(from_pt(2.2))
        >>> letters = Legibility(0.416, 600, strokes=drawn, ink_spread=0.05)
        >>> round(letters.hairline, 1), round(letters.stem, 1), round(letters.counter, 1), letters.clogged
        (0.8, 1.7, 0.9, 'e')
        """
        return self._dots(self.strokes.hairline) if self.strokes else None

    @property
    def counter(self) -> float | None:
        """How many printer dots of white are left of the smallest counter, as it is printed; 0 for none."""
        smallest = min(self.strokes.counters.values(), default=None) if self.strokes else None
        return None if smallest is None else max(0.0, self._dots(self._open(smallest)))

    @property
    def clogged(self) -> str:
        """The letters whose counters clog: less than a dot of white is left of them."""
        counters = self.strokes.counters if self.strokes else {}
        return "".join(letter for letter, width in counters.items() if self._dots(self._open(width)) < 1 - 1e-9)

    def _open(self, counter: float) -> float:
        """How much of a counter is left where ink comes in from both sides, in mm."""
        return counter - 2 * self.ink_spread

    @property
    def sight(self) -> Sight:
        """What the letters are good for."""
        if self.dots < FEWEST_DOTS - 1e-9:
            return Sight.TEXTURE
        return Sight.READABLE if self.minutes >= READABLE_MINUTES else Sight.WITH_A_LENS
