"""Copyfitting: how many pages a text fills, and which sizes of type so many pages hold."""

from __future__ import annotations

import math
from collections.abc import Callable, Hashable, Iterator
from dataclasses import dataclass
from functools import cache
from typing import NamedTuple

from .....ground.typefaces.strokes import strokes_of
from .....ground.units import MM_PER_INCH, from_pt, to_pt
from .....paper.eyesight import FEWEST_DOTS
from .....typesetting.galleys.galley import Galley
from .....typesetting.galleys.made_pages import MadePage
from .....typesetting.galleys.makeup import make_up
from .....typesetting.galleys.remarks import Remarks, together
from .....typesetting.galleys.setting import NARROWEST, Manner, Setting, reach
from .....typesetting.lines.fount import Fount
from .....typesetting.manuscripts.manuscript import Manuscript
from .....typesetting.manuscripts.passage import Role
from .....typesetting.manuscripts.ranks import Rank
from .....typesetting.page import PageFrame
from .....typesetting.standing_type import standing_type
from .weight import Weight

__all__ = ["LARGEST_FIT", "MOST_PAGES", "Bounds", "Copy", "Proof", "is_largest", "largest_size"]

MOST_PAGES = 2000
"""No book here has more."""

STEPS_A_POINT = 20
"""Sizes are tried in twentieths of a point."""

SAMPLED = 100
"""So many paragraphs tell how wide letters are."""

LOOK_AHEAD = 3
"""So many steps over the size found are tried too: a line more or less may fall well in larger type."""

LARGEST_FIT = from_pt(24)
"""No text is set larger to fill its pages."""

SMALLEST_FIT = from_pt(1.2)
"""No text is set smaller, unless its maker says so: a lens that shows more letters of it shows too few lines."""


class Bounds(NamedTuple):
    """Between which sizes, in mm, a text may be fitted, and what the upper one is to the maker."""

    smallest: float
    largest: float
    what: str

    def nearest(self, size: float) -> float:
        """The size between them that is nearest to some size."""
        return min(max(size, self.smallest), self.largest)


class Proof(NamedTuple):
    """A text made up into pages: all of it, if it is `whole`, or as many pages as there was room for."""

    setting: Setting
    pages: tuple[MadePage, ...]
    whole: bool

    @property
    def remarks(self) -> Remarks:
        """What is remarkable about what begins on these pages."""
        return together(
            slot.matter.remarks for page in self.pages for slot in (*page.slots, *page.notes) if slot.start == 0
        )


@dataclass(frozen=True, slots=True)
class Copy:
    """A text to fit into pages: `leading` is a multiple of the size, which is still open.

    `fount` is its type as it is drawn; how heavy that is made, if there is a `weight`, hangs on the size.
    """

    manuscript: Manuscript
    fount: Fount
    leading: float
    frame: PageFrame
    manner: Manner
    weight: Weight | None = None

    def fount_at(self, size: float) -> Fount:
        """What the text is set in at a size in mm."""
        return self.weight.of(self.fount, size) if self.weight else self.fount

    @property
    def has_room(self) -> bool:
        """Whether the margins leave anything between them."""
        return min(self.frame.type_area(1).size) > 0

    def setting(self, size: float) -> Setting:
        """The text in type of a size in mm."""
        return Setting.of(self.fount_at(size).roman, size, self.leading, self.frame)

    def proof(self, setting: Setting, most: int) -> Proof:
        """The text made up in a setting, on at most so many pages."""
        with standing_type().text(self._key("text", setting.size), self.manuscript.words):
            pages = self._pages(setting, most + 1)
        return Proof(setting, pages[:most], len(pages) <= most)

    def _pages(self, setting: Setting, most: int) -> tuple[MadePage, ...]:
        """The first pages in a setting, at most so many."""

        def made_up() -> Iterator[MadePage]:
            galley = Galley(self.fount_at(setting.size), setting, self.manner)
            matter, others = galley.matter(self.manuscript.passages), galley.recasting.others
            return make_up(matter, setting.lines_per_page, self.frame.first, others)

        return standing_type().pages(self._key("text", setting.size), most, made_up)

    def _key(self, what: str, *asked: float) -> Hashable:
        """What stands for all that the answer depends on if the text is asked for something."""
        on_left, area = self.frame.first % 2 == 0, self.frame.type_area(1)
        weight = self.weight and (self.weight.hairline, self.weight.opening)
        type_ = self.fount.key, self.leading, self.manner, weight
        return what, self.manuscript.key, *type_, on_left, area.size, *asked

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
    def smallest_printed(self) -> float:
        """The smallest size, in mm, to which a text is fitted unbidden: letters are seen, and their counters are open.

        No face is set smaller than `SMALLEST_FIT`.
        """
        strokes = strokes_of(self.fount.roman)
        narrowest = min(strokes.counters.values(), default=math.inf) if strokes else math.inf
        opened = self.frame.dot + 2 * self.frame.ink_spread
        return max(SMALLEST_FIT, self.smallest_legible, opened / narrowest)

    @property
    def largest_filled(self) -> float:
        """The largest size, in mm, at which lines have the letters they need to be filled.

        In larger type a page is a column of a few letters: whoever has pages to spare has a shorter book.
        """
        return self.frame.type_area(1).width / NARROWEST

    def size_for(self, pages: int, largest: float, smallest: float) -> float:
        """The largest size, in mm and a whole number of twentieths of a point, at which so many pages hold the text.

        It is at most `largest` and at least `smallest`; 0 if the text fits at none of these. A little over it
        no size fits either.
        """

        def fits(size: float) -> bool:
            setting = self.setting(size)
            held = pages * setting.lines_per_page
            return self.manuscript.rows <= held and len(self._pages(setting, pages + 1)) <= pages

        def found() -> float:
            return largest_size(fits, min(largest, self.largest_settable), smallest, self._cast_off(pages))

        return standing_type().number(self._key("size", pages, largest, smallest), self.manuscript.words, found)

    def _cast_off(self, pages: int) -> Callable[[float], bool]:
        """Whether so many pages are likely to hold the text at a size in mm, by its letters alone.

        So compositors cast off a copy. Paragraphs end in the middle of a line, pages lack half a line, and chapters
        that open a page take half of one besides, on an average; how wide letters are tells the beginning of the text.
        """
        passages = self.manuscript.passages
        words = [word for passage in passages[:SAMPLED] for word in passage.text.split()]
        width = sum(map(self.fount.width, words)) + self.fount.space.width * len(words)
        ems = sum(len(passage.text) for passage in passages) * width / max(1, sum(map(len, words)) + len(words))

        chapters = sum(passage.role is Role.HEADING and passage.level <= Rank.CHAPTER for passage in passages)
        filled = pages - chapters / 2 if self.manner.new_pages else pages

        def likely(size: float) -> bool:
            setting = self.setting(size)
            return ems * size / setting.measure + len(passages) / 2 <= filled * (setting.lines_per_page - 0.5)

        return likely

    def extent(self, size: float) -> int:
        """How many pages the text takes at a size in mm, at most one more than any book has."""

        def counted() -> int:
            return len(self._pages(self.setting(size), MOST_PAGES + 1))

        return int(standing_type().number(self._key("extent", size), self.manuscript.words, counted))


def largest_size(
    fits: Callable[[float], bool], largest: float, smallest: float, likely: Callable[[float], bool] | None = None
) -> float:
    """The largest size, in mm and a whole number of twentieths of a point, that fits; 0 if none does.

    `likely` tells at once of any size whether it may fit: where that ends is looked at first.
    """
    low, high = math.ceil(_steps(smallest) - 1e-6), _whole_steps(largest)
    first = _largest(lambda step: likely(_size(step)), low, high) if likely else None
    found = _largest(cache(lambda step: fits(_size(step))), low, high, first)
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


def _largest(fits: Callable[[int], bool], low: int, high: int, first: int | None = None) -> int:
    """The largest step from low to high that fits; low − 1 if none does.

    Smaller type as a rule needs fewer pages; whatever comes out has been tried, and so have a few steps over it.
    What lies in the middle is tried, or the `first` step and then ever further from it, until it is passed.
    """
    fitting, too_large, stride = low - 1, high + 1, 1
    while too_large - fitting > 1:
        step = (fitting + too_large) // 2
        if first is not None and fitting < low and too_large > high:
            step = min(max(first, low), high)
        elif first is not None and (fitting < low or too_large > high):
            step = max(too_large - stride, low) if fitting < low else min(fitting + stride, high)
            stride *= 2
        if fits(step):
            fitting = step
        else:
            too_large = step
    # the step after it has been tried
    further = next((step for step in range(min(high, fitting + LOOK_AHEAD), fitting + 1, -1) if fits(step)), fitting)
    return fitting if further == fitting else _largest(fits, further, high)
