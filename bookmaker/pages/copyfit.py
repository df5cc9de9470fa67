"""Copyfitting: how many pages a text fills, and which sizes of type so many pages hold."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from itertools import islice

from ..eyesight import FEWEST_DOTS
from ..units import MM_PER_INCH, from_pt, to_pt
from .fount import Fount
from .galley import Galley, chapter_level
from .makeup import MadePage, make_up
from .manuscript import Manuscript
from .page import PageFrame
from .setting import Manner, Setting, reach

__all__ = ["MOST_PAGES", "Copy", "Proof", "Proofs"]

MOST_PAGES = 2000
"""No book here has more."""

STEPS_A_POINT = 20
"""Sizes are tried in twentieths of a point."""


@dataclass(slots=True)
class Proof:
    """A text made up into pages, as far as anybody has asked for them."""

    galley: Galley
    source: Iterator[MadePage]
    pages: list[MadePage] = field(default_factory=list)

    def first(self, count: int) -> list[MadePage]:
        """The first pages, at most so many."""
        self.pages += islice(self.source, max(0, count - len(self.pages)))
        return self.pages[:count]


class Proofs(dict[tuple[Setting, Manner], Proof]):
    """The proofs of one text that are kept: set once, looked at as often as needed."""


@dataclass(frozen=True, slots=True)
class Copy:
    """A text to fit into pages: `leading` is a multiple of the size, which is still open."""

    manuscript: Manuscript
    fount: Fount
    leading: float
    frame: PageFrame
    manner: Manner
    proofs: Proofs

    def setting(self, size: float) -> Setting:
        """The text in type of a size in mm."""
        return Setting.of(self.fount.roman, size, self.leading, self.frame)

    def proof(self, setting: Setting) -> Proof:
        """The text made up in a setting; kept, for it is asked for more than once."""
        key = (setting, self.manner)
        if key not in self.proofs:
            self.proofs[key] = self._made_up(setting)
        return self.proofs[key]

    def _made_up(self, setting: Setting) -> Proof:
        passages = self.manuscript.passages
        galley = Galley(self.fount, setting, self.manner, chapter_level(passages))
        return Proof(galley, make_up(galley.matter(passages), setting.lines_per_page))

    @property
    def largest_settable(self) -> float:
        """The largest size, in mm, at which a page holds one line and a line holds any one letter."""
        area, (above, below) = self.frame.type_area(1), reach(self.fount.roman)
        widest = max(map(self.fount.width, set(self.manuscript.text) - {"\n"}), default=1.0)
        return min(area.height / (above + below), area.width / max(widest, 1e-6))

    @property
    def smallest_legible(self) -> float:
        """The size, in mm, whose x-height is `FEWEST_DOTS` printer dots."""
        return FEWEST_DOTS * MM_PER_INCH / self.frame.resolution_dpi / self.fount.roman.x_height

    def pages_for(self, setting: Setting) -> int:
        """How many pages, an even number, hold the whole text; 0 if no book has so many."""
        pages = len(self.proof(setting).first(MOST_PAGES + 1))
        return 0 if pages > MOST_PAGES else max(2, pages + pages % 2)

    def size_for(self, pages: int, largest: float, smallest: float) -> float:
        """The largest size, in mm and a whole number of twentieths of a point, at which so many pages hold the text.

        It is at most `largest` and at least `smallest`; 0 if the text fits at none of these.
        """

        def fits(step: int) -> bool:
            return len(self._made_up(self.setting(_size(step))).first(pages + 1)) <= pages

        low = math.ceil(to_pt(smallest) * STEPS_A_POINT - 1e-6)
        high = math.floor(to_pt(min(largest, self.largest_settable)) * STEPS_A_POINT + 1e-6)
        found = _largest(fits, low, high)
        return _size(found) if found >= low else 0.0


def _size(step: int) -> float:
    return from_pt(step / STEPS_A_POINT)


def _largest(fits: Callable[[int], bool], low: int, high: int) -> int:
    """The largest step from low to high that fits; low − 1 if none does.

    Smaller type as a rule needs fewer pages; whatever comes out has been tried.
    """
    fitting, too_large = low - 1, high + 1
    while too_large - fitting > 1:
        middle = (fitting + too_large) // 2
        if fits(middle):
            fitting = middle
        else:
            too_large = middle
    return fitting
