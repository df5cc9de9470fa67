"""Copyfitting: which sizes of type and how many pages hold a text."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice

from ..typefaces import Typeface
from ..units import MM_PER_INCH, from_pt, to_pt
from .manuscript import Manuscript
from .page import PageFrame
from .setting import Setting, reach
from .wrapping import Line, Widths

__all__ = ["FEWEST_DOTS", "Copy"]

MOST_PAGES = 2000
"""No book here has more."""

FEWEST_DOTS = 4
"""Letters whose x-height is fewer printer dots run together into a grey line."""


@dataclass(frozen=True, slots=True)
class Copy:
    """A text to fit into pages: `leading` is a multiple of the size, which is still open."""

    manuscript: Manuscript
    typeface: Typeface
    leading: float
    frame: PageFrame

    def setting(self, size: float) -> Setting:
        """The text in type of a size in mm."""
        return Setting.of(self.typeface, size, self.leading, self.frame)

    def lines(self, setting: Setting) -> Iterator[Line]:
        """The whole text in lines, one at a time."""
        return setting.lines(self.manuscript.text)

    @property
    def largest_settable(self) -> float:
        """The largest size, in mm, at which a page holds one line and a line holds any one letter."""
        area, (above, below) = self.frame.type_area(1), reach(self.typeface)
        widths = Widths(self.typeface)
        widest = max(map(widths.__getitem__, set(self.manuscript.text) - {"\n"}))
        return min(area.height / (above + below), area.width / max(widest, 1e-6))

    @property
    def smallest_legible(self) -> float:
        """The size, in mm, whose x-height is `FEWEST_DOTS` printer dots."""
        return FEWEST_DOTS * MM_PER_INCH / self.frame.resolution_dpi / self.typeface.x_height

    def fits(self, setting: Setting) -> bool:
        """Whether the pages hold the whole text."""
        room = setting.lines_per_page * self.frame.pages
        return sum(1 for _ in islice(self.lines(setting), room + 1)) <= room

    def pages_for(self, setting: Setting) -> int:
        """How many pages, an even number, hold the whole text; 0 if no book has so many."""
        most = MOST_PAGES * setting.lines_per_page
        lines = sum(1 for _ in islice(self.lines(setting), most + 1))
        pages = math.ceil(lines / setting.lines_per_page)
        return 0 if lines > most else pages + pages % 2

    def points_for(self, size: float) -> float:
        """The largest size below `size` (mm), in whole tenths of a point, at which the pages hold the text.

        0 if the text fits at no size that can be read.
        """
        too_small = math.ceil(to_pt(self.smallest_legible) * 10 - 1e-6) - 1
        fitting, too_large = too_small, math.ceil(to_pt(size) * 10 - 1e-6)
        # smaller type as a rule needs fewer pages; whatever comes out has been tried
        while too_large - fitting > 1:
            middle = (fitting + too_large) // 2
            if self.fits(self.setting(from_pt(middle / 10))):
                fitting = middle
            else:
                too_large = middle
        return fitting / 10 if fitting > too_small else 0.0
