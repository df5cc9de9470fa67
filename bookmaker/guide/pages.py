"""Items of the guide on pages: short chapters share one, headings stay with what follows them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from ..ground.art import Group
from ..ground.drawing import Art
from ..ground.geometry import Point, Rect, Size
from ..things.views.ink import GREY
from .items import Gap, Item, lines_below
from .wrapping import wrapped

__all__ = ["lay_out_pages", "page_size", "text_width"]

MARGIN = 12.0
FOOT = 6.0
"""The margin of a page, and what its last line takes, in mm."""

BETWEEN_CHAPTERS = 7.0
"""Between a chapter and the next one on the same page, in mm."""

ROOM_TO_BEGIN = 0.15
"""The share of a page that is enough to begin a chapter on, even if it ends on the next."""

A4 = Size(210.0, 297.0)
NARROWEST, WIDEST, LOWEST = 135.0, 260.0, 190.0
"""Narrower or wider paper makes lines that do not read well, lower paper holds no drawing with its steps, in mm."""


def page_size(sheet: Size) -> Size:
    """The page of the guide: the printer's sheet, upright, or A4 where that is too small or too large to read.

    >>> page_size(Size(148, 210)), page_size(Size(420, 297))
    (Size(width=148, height=210), Size(width=210.0, height=297.0))
    """
    upright = Size(min(sheet), max(sheet))
    fit = NARROWEST <= upright.width <= WIDEST and LOWEST <= upright.height <= 2 * upright.width
    return upright if fit else A4


def text_width(size: Size) -> float:
    """The width of the text on a page, in mm."""
    return size.width - 2 * MARGIN


def lay_out_pages(
    front: Callable[[Sequence[int]], Sequence[Item]],
    shared: Sequence[Item],
    chapters: Sequence[Sequence[Item]],
    size: Size,
    name: str,
) -> Iterator[Art]:
    """The art of every page; `name` stands at the foot with the number of the page.

    `front` makes the first chapter out of the numbers of the pages on which the others begin; `shared` follows it.
    """
    area = Rect(0, 0, *size).grown(-MARGIN, -MARGIN - FOOT, -MARGIN, -MARGIN)
    # How long the first chapter is does not depend on the numbers it names.
    _, begins = _filled([front([999] * len(chapters)), shared, *chapters], area)
    starts = [page + 1 for page in begins[2:]]
    pages, _ = _filled([front(starts), shared, *chapters], area)
    for number, page in enumerate(pages, start=1):
        yield _page(page, area, f"Page {number} of {len(pages)} · {name}")


def _filled(chapters: Sequence[Sequence[Item]], area: Rect) -> tuple[list[list[Item]], list[int]]:
    """Pages, and on which of them each chapter begins: below another one if there is room for it, or for its half."""
    pages: list[list[Item]] = []
    begins: list[int] = []
    left = 0.0
    for chapter in chapters:
        groups = [(group, sum(item.height(area.width) for item in group)) for group in _groups(chapter)]
        whole = sum(height for _, height in groups)
        room = left - BETWEEN_CHAPTERS
        if pages and groups and groups[0][1] <= room and (whole <= room or left >= ROOM_TO_BEGIN * area.height):
            pages[-1].append(Gap(BETWEEN_CHAPTERS))
            left = room
        elif groups:
            pages.append([])
            left = area.height
        begins.append(len(pages) - 1)
        for group, needed in groups:
            if pages[-1] and needed > left:
                pages.append([])
                left = area.height
            pages[-1] += group
            left -= needed
    return pages, begins


def _groups(chapter: Sequence[Item]) -> Iterator[list[Item]]:
    """Items that stay together: those that lead, and the one they lead to."""
    group: list[Item] = []
    for item in chapter:
        group.append(item)
        if not item.leads:
            yield group
            group = []
    if group:
        yield group


def _page(items: Sequence[Item], area: Rect, foot: str) -> Art:
    parts: list[Art] = []
    y = area.top
    for item in items:
        parts.append(item.below(Point(area.x, y), area.width))
        y -= item.height(area.width)
    last = wrapped(foot, "sans", 2.6, area.width)[:1]
    parts.append(lines_below(Point(area.x, area.y - FOOT + 4), last, 4.0, GREY))
    return Group(tuple(parts))
