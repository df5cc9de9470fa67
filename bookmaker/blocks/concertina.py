"""The concertina: strips printed on one side, folded back and forth, their backs glued together.

Panel 0 and the last panel are pastedowns; with f flyleaf panels at each end, page i is panel f + i. The
fold after panel i is a valley when i is even (the pages face each other at the spine) and a mountain when
i is odd (the fore-edge). Strips end at mountains, so two strip ends are glued back to back like any two
panels and no tab is needed.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from pydantic import Field

from ..errors import Problem, ShelfFileError
from ..flat import Axis, Flat, Fold, FoldKind, Panel, Role
from ..geometry import Point, Rect, Size
from ..spec.measures import Ease, Flyleaves, PageCount
from ..stock import Stock
from ..thickness import Layer, Thickness
from ..units import print_mm
from .block import BlockEntry, BlockPlan

__all__ = ["Concertina", "balance", "fold_after", "panel_count", "plan"]


class Concertina(BlockEntry):
    """A folded strip of pages."""

    kind: Literal["concertina"] = "concertina"
    pages: PageCount = Field(description="printed pages, an even number")
    flyleaves: Flyleaves = Field(0, description="blank panels before the first and after the last page, even")
    spring: Ease = Field(0.0, description="what the folds add because they will not close, in all")


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


def plan(entry: Concertina, page: Size, stocks: Mapping[str, Stock], *, right_to_left: bool) -> BlockPlan:
    """Work out the block.

    Raises:
        ShelfFileError: two pages side by side are wider than the stock's sheet, or a page is taller.
    """
    stock = stocks[entry.stock]
    panels = panel_count(entry.pages, entry.flyleaves)
    strips = balance(panels, _capacity(page, stock))
    starts = [sum(strips[:index]) for index in range(len(strips))]
    return BlockPlan(
        kind=entry.kind,
        pages=entry.pages,
        panels=panels,
        thickness=_thickness(entry, panels, stock).as_measured(entry.measured_thickness),
        thickness_of_a_page=stock.caliper + stock.glue / 2,
        flats=tuple(
            _strip(
                entry,
                page,
                stock,
                range(start, start + count),
                f"strip {number} of {len(strips)}",
                right_to_left,
            )
            for number, (start, count) in enumerate(zip(starts, strips, strict=True), start=1)
        ),
    )


def _thickness(entry: Concertina, panels: int, stock: Stock) -> Thickness:
    """P·t + (P/2 + 1)·a + spring: 50 · 0.075 + 26 · 0.015 = 4.14 mm."""
    layers = [
        Layer("panels", panels, stock.caliper, stock.name),
        Layer("glue films between backs", panels // 2 - 1, stock.glue),
        Layer("glue films under the pastedowns", 2, stock.glue),
    ]
    if entry.spring:
        layers.append(Layer("spring of the folds", 1, entry.spring))
    return Thickness(tuple(layers))


def _capacity(page: Size, stock: Stock) -> int:
    """Panels that fit side by side on one sheet, an even number."""
    openings = stock.openings(Axis.Y)
    counts = [
        2 * int((opening.width + 1e-6) / (2 * page.width)) for opening in openings if page.height <= opening.height
    ]
    capacity = max(counts, default=0)
    if capacity < 2:
        widest = openings[0]
        raise ShelfFileError(
            (
                Problem(
                    f"two pages of {print_mm(page.width)} × {print_mm(page.height)} side by side do not fit "
                    f"on the {stock.sheet.name} sheet of {stock.name}, which has room for "
                    f"{print_mm(widest.width)} × {print_mm(widest.height)} across the grain",
                    "write a smaller book, a larger sheet, or the other grain",
                    field=("block", "stock"),
                ),
            )
        )
    return capacity


def _strip(entry: Concertina, page: Size, stock: Stock, span: range, name: str, right_to_left: bool) -> Flat:
    """One strip as it lies printed face up: page order runs to the right, or to the left for such books."""

    def left_edge(panel: int) -> float:
        place = len(span) - 1 - (panel - span.start) if right_to_left else panel - span.start
        return place * page.width

    def fold(panel: int) -> Fold:
        x = left_edge(panel) + (0 if right_to_left else page.width)
        return Fold(fold_after(panel), Point(x, 0), Point(x, page.height))

    return Flat(
        kind="strip",
        name=name,
        stock=stock.name,
        outline=Rect(0, 0, len(span) * page.width, page.height).corners,
        folds=tuple(fold(panel) for panel in span[:-1]),
        panels=tuple(_panel(entry, panel, Rect(left_edge(panel), 0, *page)) for panel in span),
        grain=Axis.Y,
    )


def _panel(entry: Concertina, panel: int, rect: Rect) -> Panel:
    page = panel - entry.flyleaves
    if 1 <= page <= entry.pages:
        return Panel(Role.PAGE, rect, page)
    last = panel_count(entry.pages, entry.flyleaves) - 1
    return Panel(Role.PASTEDOWN if panel in (0, last) else Role.FLYLEAF, rect)
