"""Copyfitting: how many pages a text fills, and which sizes of type so many pages hold."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from itertools import islice
from typing import NamedTuple

from .....ground.units import MM_PER_INCH, from_pt, to_pt
from .....paper.eyesight import FEWEST_DOTS
from .....typesetting.galleys.galley import Galley
from .....typesetting.galleys.makeup import MadePage, make_up
from .....typesetting.galleys.remarks import Remarks
from .....typesetting.galleys.setting import NARROWEST, Manner, Setting, reach
from .....typesetting.lines.fount import Fount
from .....typesetting.manuscripts.manuscript import Manuscript
from .....typesetting.page import PageFrame

__all__ = ["LARGEST_FIT", "MOST_PAGES", "Bounds", "Copy", "Proof", "Proofs", "is_largest", "largest_size"]

MOST_PAGES = 2000
"""No book here has more."""

STEPS_A_POINT = 20
"""Sizes are tried in twentieths of a point."""

LOOK_AHEAD = 3
"""So many steps over the size found are tried too: a line more or less may fall well in larger type."""

LARGEST_FIT = from_pt(24)
"""No text is set larger to fill its pages."""


class Bounds(NamedTuple):
    """Between which sizes, in mm, a text may be fitted, and what the upper one is to the maker."""

    smallest: float
    largest: float
    what: str

    def nearest(self, size: float) -> float:
        """The size between them that is nearest to some size."""
        return min(max(size, self.smallest), self.largest)


@dataclass(slots=True)
class Proof:
    """A text made up into pages, as far as anybody has asked for them, and what was remarkable so far."""

    source: Iterator[MadePage]
    remarks: Remarks
    pages: list[MadePage] = field(default_factory=list)

    def first(self, count: int) -> list[MadePage]:
        """The first pages, at most so many."""
        self.pages += islice(self.source, max(0, count - len(self.pages)))
        return self.pages[:count]

    def finished(self) -> Proof:
        """The whole proof, up to more pages than a book has, in a form that can go from process to process."""
        return Proof(iter(()), self.remarks, self.first(MOST_PAGES + 1))


@dataclass(slots=True)
class Proofs:
    """What was set of one text: done once, looked at as often as needed.

    `made` holds proofs by their setting and whether they begin on a left page, `fitted` sizes in mm by what was
    asked for, `extents` how many pages a setting takes.
    """

    made: dict[tuple[Setting, Manner, bool], Proof] = field(default_factory=dict)
    fitted: dict[tuple[object, ...], float] = field(default_factory=dict)
    extents: dict[tuple[Setting, Manner, bool], int] = field(default_factory=dict)

    def finished(self) -> Proofs:
        """All of it in a form that can go from process to process."""
        made = {key: proof.finished() for key, proof in self.made.items()}
        return Proofs(made, dict(self.fitted), dict(self.extents))

    def take(self, other: Proofs) -> None:
        """Add what was set elsewhere."""
        self.made |= other.made
        self.fitted |= other.fitted
        self.extents |= other.extents


@dataclass(frozen=True, slots=True)
class Copy:
    """A text to fit into pages: `leading` is a multiple of the size, which is still open."""

    manuscript: Manuscript
    fount: Fount
    leading: float
    frame: PageFrame
    manner: Manner
    proofs: Proofs

    @property
    def has_room(self) -> bool:
        """Whether the margins leave anything between them."""
        return min(self.frame.type_area(1).size) > 0

    def setting(self, size: float) -> Setting:
        """The text in type of a size in mm."""
        return Setting.of(self.fount.roman, size, self.leading, self.frame)

    def proof(self, setting: Setting) -> Proof:
        """The text made up in a setting; kept, for it is asked for more than once."""
        key = (setting, self.manner, self.begins_left)
        if key not in self.proofs.made:
            self.proofs.made[key] = self._made_up(setting)
        return self.proofs.made[key]

    @property
    def begins_left(self) -> bool:
        """Whether the first page faces the second one: whether its number is even."""
        return self.frame.first % 2 == 0

    def _made_up(self, setting: Setting) -> Proof:
        galley = Galley(self.fount, setting, self.manner)
        pages = make_up(galley.matter(self.manuscript.passages), setting.lines_per_page, self.frame.first)
        return Proof(pages, galley.remarks)

    @property
    def largest_settable(self) -> float:
        """The largest size, in mm, at which a page holds one line and a line holds any one letter."""
        area, (above, below) = self.frame.type_area(1), reach(self.fount.roman)
        widest = max(map(self.fount.width, self.manuscript.letters), default=1.0)
        return min(area.height / (above + below), area.width / max(widest, 1e-6))

    @property
    def smallest_legible(self) -> float:
        """The size, in mm, whose x-height is `FEWEST_DOTS` printer dots."""
        return FEWEST_DOTS * MM_PER_INCH / self.frame.resolution_dpi / self.fount.roman.x_height

    @property
    def largest_filled(self) -> float:
        """The largest size, in mm, at which lines have the letters they need to be filled.

        In larger type a page is a column of a few letters: whoever has pages to spare has a shorter book.
        """
        return self.frame.type_area(1).width / NARROWEST

    def pages_for(self, setting: Setting) -> int:
        """How many pages, an even number, hold the whole text; 0 if no book has so many."""
        pages = len(self.proof(setting).first(MOST_PAGES + 1))
        return 0 if pages > MOST_PAGES else max(2, pages + pages % 2)

    def size_for(self, pages: int, largest: float, smallest: float) -> float:
        """The largest size, in mm and a whole number of twentieths of a point, at which so many pages hold the text.

        It is at most `largest` and at least `smallest`; 0 if the text fits at none of these. A little over it
        no size fits either.
        """

        def fits(size: float) -> bool:
            return len(self._made_up(self.setting(size)).first(pages + 1)) <= pages

        asked = (pages, largest, smallest, self.leading, self.manner, self.begins_left, self.frame.type_area(1))
        if asked not in self.proofs.fitted:
            self.proofs.fitted[asked] = largest_size(fits, min(largest, self.largest_settable), smallest)
        return self.proofs.fitted[asked]

    def extent(self, size: float) -> int:
        """How many pages the text takes at a size in mm, at most one more than any book has.

        Only their number is kept, for it is asked for at many sizes when several texts are fitted together.
        """
        setting = self.setting(size)
        key = (setting, self.manner, self.begins_left)
        if key not in self.proofs.extents:
            proof = self.proofs.made.get(key) or self._made_up(setting)
            self.proofs.extents[key] = len(proof.first(MOST_PAGES + 1))
        return self.proofs.extents[key]


def largest_size(fits: Callable[[float], bool], largest: float, smallest: float) -> float:
    """The largest size, in mm and a whole number of twentieths of a point, that fits; 0 if none does."""
    low = math.ceil(_steps(smallest) - 1e-6)
    found = _largest(lambda step: fits(_size(step)), low, _whole_steps(largest))
    return _size(found) if found >= low else 0.0


def is_largest(size: float, largest: float) -> bool:
    """Whether a size that was fitted is the largest step up to a bound.

    >>> is_largest(from_pt(2.15), from_pt(2.19)), is_largest(from_pt(2.15), from_pt(2.2))
    (True, False)
    """
    return round(_steps(size)) >= _whole_steps(largest)


def _size(step: int) -> float:
    return from_pt(step / STEPS_A_POINT)


def _steps(size: float) -> float:
    return to_pt(size) * STEPS_A_POINT


def _whole_steps(size: float) -> int:
    return math.floor(_steps(size) + 1e-6)


def _largest(fits: Callable[[int], bool], low: int, high: int) -> int:
    """The largest step from low to high that fits; low − 1 if none does.

    Smaller type as a rule needs fewer pages; whatever comes out has been tried, and so have a few steps over it.
    """
    fitting, too_large = low - 1, high + 1
    while too_large - fitting > 1:
        middle = (fitting + too_large) // 2
        if fits(middle):
            fitting = middle
        else:
            too_large = middle
    # the step after it has been tried
    further = next((step for step in range(min(high, fitting + LOOK_AHEAD), fitting + 1, -1) if fits(step)), fitting)
    return fitting if further == fitting else _largest(fits, further, high)
