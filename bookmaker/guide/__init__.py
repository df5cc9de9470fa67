"""The maker's guide: a page or two for every book, with the numbers of that very book, and what the shelf takes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from ..ground.drawing import Art
from ..ground.geometry import Size
from ..ground.problems import FieldPath
from ..shelf.plan import ShelfPlan
from ..shelf_file.book_names import called_in_list
from ..shelf_file.whereabouts import Whereabouts
from ..things.book.makings import book_makings
from ..things.making import Bench, Making
from ..things.prints import Prints, SheetOfFile
from ..things.slipcase.steps import slipcase_making
from .book_chapter import book_chapter, box_chapter
from .cutting_list import cutting_list_pages
from .items import Item, figure_room
from .pages import measure, page_size, paged
from .shelf_chapter import shelf_chapter

__all__ = ["cutting_list_pages", "guide_pages", "page_size"]


def guide_pages(plan: ShelfPlan, sheets: Sequence[SheetOfFile], where: Sequence[Whereabouts]) -> Iterator[Art]:
    """All pages; `sheets` gives each sheet with its file and its page there, `where` the place of each book.

    The pages have the `page_size` of the printer's sheet. Books and slipcases of which nothing is printed are left out.
    """
    size = page_size(Size(*plan.spec.printer.sheet.size))
    width = measure(size)
    prints = Prints.by_owner(sheets)
    room = figure_room(width)
    names = [book.entry.name for book in plan.books]

    def bench(owner: FieldPath, books: Sequence[int]) -> Bench:
        return Bench(plan.stocks, prints[owner], room, called_in_list(books, names))

    books = [book for book in plan.books if ("books", book.number) in prints]
    boxes = [box for box in plan.slipcases if ("slipcases", box.name) in prints]
    every: list[Making] = []
    chapters: list[Sequence[Item]] = []
    for book in books:
        owner = ("books", book.number)
        makings = tuple(book_makings(book, bench(owner, [book.number]), where[book.number]))
        chapters.append(tuple(book_chapter(book, prints[owner], makings, plan)))
        every += makings
    for box in boxes:
        of_box = ("slipcases", box.name)
        held = [plan.books[number] for number in box.books]
        titles, row = [book.printed for book in held], sum(book.thickness.value for book in held)
        making = slipcase_making(box, titles, row, bench(of_box, box.books))
        chapters.append(tuple(box_chapter(box, titles, prints[of_box], making)))
        every.append(making)
    chosen = replace(plan, books=tuple(books), slipcases=tuple(boxes))

    def front(starts: Sequence[int]) -> Sequence[Item]:
        return tuple(shelf_chapter(plan, chosen, sheets, every, width, starts))

    return paged(front, chapters, size, f"{plan.spec.shelf}, maker's guide")
