"""The maker's guide: a page or two for everything that is made, with its own numbers, and what the shelf takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from ..ground.drawing import Art
from ..ground.geometry import Size
from ..ground.problems import Problem, Severity
from ..sheets.facsimiles import Facsimile
from ..shelf.plan import ShelfPlan
from ..shelf_file.whereabouts import Whereabouts
from ..things.making import Bench, Chapter
from ..things.prints import Prints, SheetOfFile
from .chapter import chapter_items
from .cutting_list import cutting_list_pages
from .drawings import numbered_drawings
from .elevations import elevation_pages
from .evenings import evening_items
from .items import Item, figure_room
from .member import Member
from .pages import lay_out_pages, page_size, text_width
from .shared import Shared, shared_items, shared_makings
from .shelf_chapter import shelf_chapter
from .together import together_items, told_alike

__all__ = ["cutting_list_pages", "elevation_pages", "guide_pages", "page_size"]


UNSEEN: Mapping[str, Facsimile] = {}


def guide_pages(
    plan: ShelfPlan,
    sheets: Sequence[SheetOfFile],
    where: Mapping[str, Whereabouts],
    seen: Mapping[str, Facsimile] = UNSEEN,
    problems: Sequence[Problem] = (),
) -> Iterator[Art]:
    """All pages; `sheets` gives each sheet with its file and its page there, `where` the place of each thing.

    What the `problems` warn of stands with the thing that it is about.
    `seen` is what things look like when they are finished, by their ids, for those that are to be shown so.
    The pages have the `page_size` of the printer's sheet. Things of which nothing is printed are left out.
    """
    size = page_size(Size(*plan.spec.printer.sheet.size))
    width = text_width(size)
    prints = Prints.by_owner(sheets)
    room = figure_room(width)
    chosen = {id: one for id, one in plan.plans.items() if id in prints}
    told: Mapping[str, Chapter] = {
        id: one.family.chapter(one, Bench(plan.stocks, prints[id], room, where[id]), plan) for id, one in chosen.items()
    }
    drawings = numbered_drawings(told)
    told = drawings.chapters
    shared = shared_makings(told.values())
    members = [Member(id, one, told[id], prints[id], _warnings(id, problems)) for id, one in chosen.items()]
    groups = [*told_alike(members, shared)]
    chapters = [tuple(_items(group, shared, seen)) for group in groups]
    makings = [making for chapter in told.values() for making in chapter.makings]

    def front(starts: Sequence[int]) -> Sequence[Item]:
        begins = {member.id: start for group, start in zip(groups, starts, strict=True) for member in group}
        pages = [begins[id] for id in chosen]
        evenings = tuple(evening_items(members, plan))
        return tuple(shelf_chapter(plan, replace(plan, plans=chosen), sheets, makings, width, pages, evenings))

    return lay_out_pages(
        front, tuple(shared_items(shared, drawings.shared)), chapters, size, f"{plan.spec.shelf}, maker's guide"
    )


def _items(group: Sequence[Member], shared: Mapping[str, Shared], seen: Mapping[str, Facsimile]) -> Iterator[Item]:
    """The chapter of one thing, or of several that are told together."""
    if len(group) > 1:
        return together_items(group, shared)
    one = group[0]
    return chapter_items(one, shared, seen.get(one.id))


def _warnings(id: str, problems: Sequence[Problem]) -> tuple[str, ...]:
    """What spoils a thing, and what would help; notes that only inform stay where they are."""
    mine = (one for one in problems if one.thing == id and one.severity is not Severity.NOTE)
    return tuple("; ".join(filter(None, (one.message, one.remedy))) for one in mine)
