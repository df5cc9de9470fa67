"""A proposal written into the file: which space a book stands in, and the order of the list of books."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from ...shelf_file.edits.edit import Edit, Reorder, SetValue
from ...shelf_file.edits.origins import origins_of
from ...shelf_file.edits.written import read_written
from ...shelf_file.reading import ShelfFile
from ...shelf_file.source_text import source_text
from ..entries import ShelfSpec
from ..plan import ShelfPlan
from .proposal import Proposal

__all__ = ["arranging_edits", "entries_of"]

BOOKS = "books"


def entries_of(shelf: ShelfFile[ShelfSpec], plan: ShelfPlan) -> Mapping[str, int]:
    """The entry of the file that each book comes from, by the id of the book: those of one entry stay together.

    Where all stand in one table, each line is an entry of its own.
    """
    origins = origins_of(shelf.tree, read_written(source_text(shelf.path), shelf.path.name))
    in_one_table = len({one.file for one in origins}) == 1 and all(one.alone and not one.around for one in origins)
    numbers = {
        id: int(field[1]) for id, field in plan.register.fields.items() if field[:1] == (BOOKS,) and id in plan.plans
    }
    return {id: number if in_one_table else origins[number].entry for id, number in numbers.items()}


def arranging_edits(plan: ShelfPlan, entries: Mapping[str, int], proposal: Proposal) -> Iterator[Edit]:
    """The edits that make a proposal so, smallest first; an edit that numbers books anew stands last."""
    fields = plan.register.fields
    for id, space in proposal.moved.items():
        yield SetValue((*fields[id], "space"), space)
    number = {id: int(fields[id][1]) for id in entries}
    now = sorted(entries, key=number.__getitem__)
    order = _in_slots(now, proposal)
    if not _together(order, entries):
        order = _by_space(now, proposal)
    if order != now:
        yield Reorder((BOOKS,), tuple(number[id] for id in order))


def _in_slots(now: Sequence[str], proposal: Proposal) -> list[str]:
    """The list with the books of each space in the places that books of that space have, where none came or went."""
    if proposal.moved:
        return _by_space(now, proposal)
    order = list(now)
    for one in proposal.spaces:
        places = sorted(now.index(id) for id in one.books)
        for place, id in zip(places, one.books, strict=True):
            order[place] = id
    return order


def _by_space(now: Sequence[str], proposal: Proposal) -> list[str]:
    """The list space after space, what stands in none at its end."""
    placed = [id for one in proposal.spaces for id in one.books]
    return [*placed, *(id for id in now if id not in set(placed))]


def _together(order: Sequence[str], entries: Mapping[str, int]) -> bool:
    """Whether what one entry stands for is side by side."""
    seen: list[int] = []
    for id in order:
        if not seen or seen[-1] != entries[id]:
            seen.append(entries[id])
    return len(seen) == len(set(seen))
