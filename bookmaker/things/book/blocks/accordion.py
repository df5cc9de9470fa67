"""The accordion: strips printed on one side, folded back and forth, their backs glued together.

Panel 0 and the last panel are pastedowns; with f flyleaf panels at each end, page i is panel f + i. The
fold after panel i is a valley when i is even (the pages face each other at the spine) and a mountain when
i is odd (the fore-edge).

Strips end at mountains, so two strip ends are glued back to back like any two panels and no tab is needed.
The other joint is a hinge tab: strips end at valleys, and a tab beyond the last valley is glued behind the
first panel of the next strip.
"""

from __future__ import annotations

from collections.abc import Mapping
from itertools import accumulate, pairwise
from typing import TYPE_CHECKING, Literal, Self

from pydantic import Field

from ....ground.geometry import Axis, Point, Rect, Size
from ....ground.problems import ShelfFileError
from ....paper.glue import glue_films
from ....paper.stock import Stock
from ....paper.thickness import Layer, Thickness
from ....sheets.flat import Flat, Fold, FoldKind, Panel, Role
from ....sheets.sheet_room import part_too_large
from ....shelf_file.fields.counts import Flyleaves, StripPanels
from ....shelf_file.fields.measures import SmallLength, TabWidth
from ....shelf_file.fields.words import Flag, StockName
from .block import PagedEntry
from .block_plan import BlockPlan
from .stiffness import stiff_folds

if TYPE_CHECKING:
    from ...making import Making
    from ..steps.job import BookJob

__all__ = ["Accordion", "balance", "fold_after", "panel_count"]


MOST_PAGES = 2000
"""No book here has more."""


class Accordion(PagedEntry):
    """A folded strip of pages."""

    kind: Literal["accordion"] = "accordion"
    stock: StockName = Field(description="name of the paper, as under stocks")
    fill_strips: Flag = Field(False, description="yes: so many pages more that no strip could take another leaf")
    longest_strip: StripPanels | None = Field(None, description="panels of the longest strip, even")
    flyleaves: Flyleaves = Field(0, description="blank panels before the first and after the last page, even")
    joint: Literal["back to back", "hinge tab"] = Field("back to back", description="how strips are joined")
    tab: TabWidth = Field(3.0, description="width of the hinge tab")
    spring: SmallLength = Field(0.0, description="what the folds add because they will not close, in all")
    scored: Flag = Field(False, description="whether folds are scored: stiff paper must be")

    def plan(self, page: Size, stocks: Mapping[str, Stock], *, right_to_left: bool) -> BlockPlan:
        """Work out the block.

        Raises:
            ShelfFileError: two pages side by side are wider than the stock's sheet, or a page is taller; stiff
                paper is not scored.
        """
        stock = stocks[self.stock]
        problems = [*stiff_folds(stock, scored=self.scored)]
        try:
            pages = _pages(self, page, stock)
            panels = panel_count(pages, self.flyleaves)
            spans = _spans(self, panels, page, stock)
        except ShelfFileError as refusal:
            problems += refusal.problems
        if problems:
            raise ShelfFileError(problems)
        return BlockPlan(
            kind=self.kind,
            pages=pages,
            panels=panels,
            bare=_thickness(self, panels, len(spans), stock).as_measured(self.measured_thickness),
            thickness_of_a_page=stock.caliper + stock.glue / 2,
            pastedowns=True,
            pasted=(glue_films("glue films under the pastedowns", 2, stock.glue),),
            flats=tuple(
                _strip(self, pages, page, span, f"strip {number} of {len(spans)}", right_to_left)
                for number, span in enumerate(spans, start=1)
            ),
        )

    def making(self, job: BookJob) -> Making:
        """Strips scored, cut, folded, joined, and glued back to back."""
        from ..steps.accordion import accordion_making

        return accordion_making(job, self.flyleaves)

    def in_strips(self, stock: str, longest: int) -> Self | None:
        """The same with its longest strip as long as that, if it is of that stock."""
        return self.model_copy(update={"longest_strip": longest}) if self.stock == stock else None


def panel_count(pages: int, flyleaves: int = 0) -> int:
    """All panels of the block: the pages, two pastedowns and the flyleaves at both ends.

    >>> panel_count(48)
    50
    """
    return pages + 2 + 2 * flyleaves


def fold_after(panel: int) -> FoldKind:
    """The fold between a panel and the next one, seen from the printed face.

    >>> fold_after(0), fold_after(1)
    (<FoldKind.VALLEY: 'valley'>, <FoldKind.MOUNTAIN: 'mountain'>)
    """
    return FoldKind.MOUNTAIN if panel % 2 else FoldKind.VALLEY


def balance(panels: int, capacity: int) -> tuple[int, ...]:
    """Panels of each strip: all even, as few strips as the capacity allows, as equal as they can be.

    >>> balance(34, 12)
    (12, 12, 10)
    """
    leaves, most = panels // 2, capacity // 2
    strips = -(-leaves // most)
    share, longer = divmod(leaves, strips)
    return tuple(2 * (share + (strip < longer)) for strip in range(strips))


def _pages(entry: Accordion, page: Size, stock: Stock) -> int:
    """The pages of the block; with `fill_strips`, as many as the same number of strips can hold."""

    def strips(pages: int) -> int:
        return len(_spans(entry, panel_count(pages, entry.flyleaves), page, stock))

    pages = entry.printed_pages
    while entry.fill_strips and pages + 2 <= MOST_PAGES and strips(pages + 2) == strips(entry.printed_pages):
        pages += 2
    return pages


def _spans(entry: Accordion, panels: int, page: Size, stock: Stock) -> list[range]:
    """The panels of each strip: strips end after odd panels, or after even ones that a hinge tab follows."""
    longest = entry.longest_strip or panels
    starts = [0, *accumulate(balance(panels, min(longest, _capacity(page, stock, 0.0))))]
    if entry.joint == "hinge tab" and len(starts) > 2:
        # one panel moves to the strip before, and the tab needs room beside it
        capacity = min(longest - 2, _capacity(page, stock, entry.tab + page.width))
        inner = list(accumulate(balance(panels, capacity)))[:-1]
        starts = [0, *(start + 1 for start in inner), panels]
    return [range(start, end) for start, end in pairwise(starts)]


def _thickness(entry: Accordion, panels: int, strips: int, stock: Stock) -> Thickness:
    """P·t + (P/2 + 1)·a + spring: 50 · 0.075 + 26 · 0.015 = 4.14 mm; each hinge tab lies at the spine besides."""
    layers = [
        Layer("panels", panels, stock.caliper, stock.name),
        glue_films("glue films between backs", panels // 2 - 1, stock.glue),
    ]
    if entry.joint == "hinge tab" and strips > 1:
        layers += [
            Layer("hinge tabs", strips - 1, stock.caliper, stock.name),
            glue_films("glue films of the hinge tabs", strips - 1, stock.glue),
        ]
    if entry.spring:
        layers.append(Layer("spring of the folds", 1, entry.spring))
    return Thickness(tuple(layers))


def _capacity(page: Size, stock: Stock, besides: float) -> int:
    """Panels that fit side by side on one sheet with `besides` mm more, an even number."""
    openings = stock.openings(Axis.Y)
    counts = [
        2 * int((opening.width - besides + 1e-6) / (2 * page.width))
        for opening in openings
        if page.height <= opening.height
    ]
    capacity = max(counts, default=0)
    if capacity < 2:
        two_pages = Size(2 * page.width + besides, page.height)
        raise ShelfFileError(
            tuple(part_too_large("a strip of two pages", two_pages, stock, Axis.Y, ("block", "stock")))
        )
    return capacity


def _strip(entry: Accordion, pages: int, page: Size, span: range, name: str, right_to_left: bool) -> Flat:
    """One strip as it lies printed face up: page order runs to the right, or to the left for such books."""
    last = panel_count(pages, entry.flyleaves) - 1
    tab = entry.tab if span[-1] % 2 == 0 and span[-1] != last else 0.0
    length = len(span) * page.width + tab

    def along(distance: float, width: float = 0.0) -> float:
        """Where something begins that lies `distance` mm from the strip's first edge."""
        return length - distance - width if right_to_left else distance

    def fold(panel: int) -> Fold:
        x = along((panel - span.start + 1) * page.width)
        return Fold(fold_after(panel), Point(x, 0), Point(x, page.height))

    places = [Rect(along((panel - span.start) * page.width, page.width), 0, *page) for panel in span]
    panels = [_panel(entry, pages, panel, place) for panel, place in zip(span, places, strict=True)]
    if tab:
        panels.append(Panel(Role.TAB, Rect(along(length - tab, tab), 0, tab, page.height)))
    return Flat(
        kind="strip",
        name=name,
        stock=entry.stock,
        outline=Rect(0, 0, length, page.height).corners,
        folds=tuple(fold(panel) for panel in (span if tab else span[:-1])),
        panels=tuple(panels),
        grain=Axis.Y,
    )


def _panel(entry: Accordion, pages: int, panel: int, rect: Rect) -> Panel:
    page = panel - entry.flyleaves
    if 1 <= page <= pages:
        return Panel(Role.PAGE, rect, page)
    last = panel_count(pages, entry.flyleaves) - 1
    return Panel(Role.PASTEDOWN if panel in (0, last) else Role.FLYLEAF, rect)
