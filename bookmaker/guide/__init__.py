"""The maker's guide: a page or two for every book, with the numbers of that very book, and what the shelf takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from ..ground.drawing import Art
from ..ground.geometry import Size
from ..shelf.plan import ShelfPlan
from ..shelf_file.whereabouts import Whereabouts
from ..things.book.makings import book_makings
from ..things.book.plan import BookPlan
from ..things.making import Bench, Making
from ..things.prints import Prints, SheetOfFile
from ..things.slipcase.plan import SlipcasePlan
from ..things.slipcase.steps import slipcase_making
from .book_chapter import book_chapter, box_chapter
from .cutting_list import cutting_list_pages
from .items import Item, figure_room
from .pages import measure, page_size, paged
from .shelf_chapter import shelf_chapter

__all__ = ["cutting_list_pages", "guide_pages", "page_size"]


def guide_pages(plan: ShelfPlan, sheets: Sequence[SheetOfFile], where: Mapping[str, Whereabouts]) -> Iterator[Art]:
    """All pages; `sheets` gives each sheet with its file and its page there, `where` the place of each thing.

    The pages have the `page_size` of the printer's sheet. Things of which nothing is printed are left out.
    """
    size = page_size(Size(*plan.spec.printer.sheet.size))
    width = measure(size)
    prints = Prints.by_owner(sheets)
    room = figure_room(width)

    def bench(owner: str, things: Sequence[str]) -> Bench:
        return Bench(plan.stocks, prints[owner], room, plan.called(things))

    every: list[Making] = []
    chapters: list[Sequence[Item]] = []
    for id, one in plan.plans.items():
        if id in prints and isinstance(one, BookPlan):
            makings = tuple(book_makings(one, bench(id, [id]), where[id]))
            chapters.append(tuple(book_chapter(one, prints[id], makings, plan)))
            every += makings
        if id in prints and isinstance(one, SlipcasePlan):
            titles = tuple(map(plan.printed, one.held))
            making = slipcase_making(one, titles, bench(id, one.held))
            chapters.append(tuple(box_chapter(one, titles, prints[id], making)))
            every.append(making)
    chosen = replace(plan, plans={id: one for id, one in plan.plans.items() if id in prints})

    def front(starts: Sequence[int]) -> Sequence[Item]:
        return tuple(shelf_chapter(plan, chosen, sheets, every, width, starts))

    return paged(front, chapters, size, f"{plan.spec.shelf}, maker's guide")
