"""The maker's guide: a page or two for every book, with the numbers of that very book, and what the shelf takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from ..ground.drawing import Art
from ..ground.geometry import Size
from ..shelf.plan import ShelfPlan
from ..shelf_file.whereabouts import Whereabouts
from ..things.book.plan import BookPlan
from ..things.slipcase.plan import SlipcasePlan
from .book_chapter import book_chapter, box_chapter
from .cutting_list import cutting_list_pages
from .items import Item, figure_room
from .job import BookJob, BoxJob
from .pages import measure, page_size, paged
from .prints import Prints, SheetOfFile
from .shelf_chapter import shelf_chapter
from .steps import making_of_box, makings

__all__ = ["cutting_list_pages", "guide_pages", "page_size"]


def guide_pages(plan: ShelfPlan, sheets: Sequence[SheetOfFile], where: Mapping[str, Whereabouts]) -> Iterator[Art]:
    """All pages; `sheets` gives each sheet with its file and its page there, `where` the place of each thing.

    The pages have the `page_size` of the printer's sheet. Things of which nothing is printed are left out.
    """
    size = page_size(Size(*plan.spec.printer.sheet.size))
    width = measure(size)
    prints = Prints.by_owner(sheets)
    room, stocks = figure_room(width), plan.stocks
    jobs = [
        BookJob(one, stocks, prints[id], room, where[id], plan.called([id]))
        for id, one in plan.plans.items()
        if id in prints and isinstance(one, BookPlan)
    ]
    boxes = [
        BoxJob(one, tuple(map(plan.printed, one.held)), stocks, prints[id], room, plan.called(one.held))
        for id, one in plan.plans.items()
        if id in prints and isinstance(one, SlipcasePlan)
    ]
    made = [tuple(makings(job)) for job in jobs]
    boxed = [making_of_box(job) for job in boxes]
    chapters: list[Sequence[Item]] = [
        *(tuple(book_chapter(job, making, plan)) for job, making in zip(jobs, made, strict=True)),
        *(tuple(box_chapter(job, making)) for job, making in zip(boxes, boxed, strict=True)),
    ]
    chosen = replace(plan, plans={id: one for id, one in plan.plans.items() if id in prints})
    every = [*(making for each in made for making in each), *boxed]

    def front(starts: Sequence[int]) -> Sequence[Item]:
        return tuple(shelf_chapter(plan, chosen, sheets, every, width, starts))

    return paged(front, chapters, size, f"{plan.spec.shelf}, maker's guide")
