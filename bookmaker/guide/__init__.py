"""The maker's guide: a page or two for everything that is made, with its own numbers, and what the shelf takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from ..ground.drawing import Art
from ..ground.geometry import Size
from ..shelf.plan import ShelfPlan
from ..shelf_file.whereabouts import Whereabouts
from ..things.making import Bench
from ..things.prints import Prints, SheetOfFile
from .chapter import chapter_items
from .cutting_list import cutting_list_pages
from .elevations import elevation_pages
from .items import Item, figure_room
from .pages import lay_out_pages, page_size, text_width
from .shared import shared_items, shared_makings
from .shelf_chapter import shelf_chapter

__all__ = ["cutting_list_pages", "elevation_pages", "guide_pages", "page_size"]


def guide_pages(plan: ShelfPlan, sheets: Sequence[SheetOfFile], where: Mapping[str, Whereabouts]) -> Iterator[Art]:
    """All pages; `sheets` gives each sheet with its file and its page there, `where` the place of each thing.

    The pages have the `page_size` of the printer's sheet. Things of which nothing is printed are left out.
    """
    size = page_size(Size(*plan.spec.printer.sheet.size))
    width = text_width(size)
    prints = Prints.by_owner(sheets)
    room = figure_room(width)
    chosen = {id: one for id, one in plan.plans.items() if id in prints}
    told = {
        id: one.family.chapter(one, Bench(plan.stocks, prints[id], room, where[id]), plan) for id, one in chosen.items()
    }
    shared = shared_makings(told.values())
    chapters = [tuple(chapter_items(told[id], prints[id], one, shared)) for id, one in chosen.items()]
    makings = [making for chapter in told.values() for making in chapter.makings]

    def front(starts: Sequence[int]) -> Sequence[Item]:
        return tuple(shelf_chapter(plan, replace(plan, plans=chosen), sheets, makings, width, starts))

    return lay_out_pages(front, tuple(shared_items(shared)), chapters, size, f"{plan.spec.shelf}, maker's guide")
