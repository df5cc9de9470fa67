"""The maker's guide: a page or two for every book, with the numbers of that very book, and what the shelf takes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from ..ground.drawing import Art
from ..ground.geometry import Size
from ..shelf.plan import ShelfPlan
from ..shelf_file.book_names import called_in_list
from ..shelf_file.whereabouts import Whereabouts
from .book_chapter import book_chapter, box_chapter
from .cutting_list import cutting_list_pages
from .items import Item, figure_room
from .job import BookJob, BoxJob
from .pages import measure, page_size, paged
from .prints import Prints, SheetOfFile
from .shelf_chapter import shelf_chapter
from .steps import making_of_box, makings

__all__ = ["cutting_list_pages", "guide_pages", "page_size"]


def guide_pages(plan: ShelfPlan, sheets: Sequence[SheetOfFile], where: Sequence[Whereabouts]) -> Iterator[Art]:
    """All pages; `sheets` gives each sheet with its file and its page there, `where` the place of each book.

    The pages have the `page_size` of the printer's sheet. Books and slipcases of which nothing is printed are left out.
    """
    size = page_size(Size(*plan.spec.printer.sheet.size))
    width = measure(size)
    prints = Prints.by_owner(sheets)
    names = [book.entry.name for book in plan.books]
    jobs = [
        BookJob(
            book,
            plan.stocks,
            prints["books", book.number],
            figure_room(width),
            where[book.number],
            called_in_list([book.number], names),
        )
        for book in plan.books
        if ("books", book.number) in prints
    ]
    boxes = [
        BoxJob(
            box,
            tuple(plan.books[number] for number in box.books),
            plan.stocks,
            prints["slipcases", box.name],
            figure_room(width),
            called_in_list(box.books, names),
        )
        for box in plan.slipcases
        if ("slipcases", box.name) in prints
    ]
    made = [tuple(makings(job)) for job in jobs]
    boxed = [making_of_box(job) for job in boxes]
    chapters: list[Sequence[Item]] = [
        *(tuple(book_chapter(job, making, plan)) for job, making in zip(jobs, made, strict=True)),
        *(tuple(box_chapter(job, making)) for job, making in zip(boxes, boxed, strict=True)),
    ]
    chosen = replace(plan, books=tuple(job.book for job in jobs), slipcases=tuple(job.box for job in boxes))
    every = [*(making for each in made for making in each), *boxed]

    def front(starts: Sequence[int]) -> Sequence[Item]:
        return tuple(shelf_chapter(plan, chosen, sheets, every, width, starts))

    return paged(front, chapters, size, f"{plan.spec.shelf}, maker's guide")
