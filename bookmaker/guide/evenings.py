"""The work in evenings: a few books at a time, in the order of work, and what is done while glue dries."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import zip_longest

from ..ground.told import print_mm
from ..shelf.plan import ShelfPlan
from ..things.making import Making
from ..things.wording import as_list, numbered, numbers
from .items import Heading, Item, Paragraph, Tick
from .member import Member

__all__ = ["OFF", "evening_items"]

BATCH = 8
"""So many books are on the table at a time (common practice)."""

OFF = 0.1
"""A block that is so many mm thicker or thinner than computed has its cover made anew (common practice)."""

Sheet = tuple[str, int]
"""A file and the number of a sheet in it."""

Batch = Sequence[Member]
Work = Iterable[tuple[Member, Making]]

DRYING = (
    "PVA and paste hold after an hour and are dry after a night under the weight; spray adhesive holds at once "
    "(common practice; what the label says goes first)."
)


def evening_items(members: Sequence[Member], plan: ShelfPlan) -> Iterator[Item]:
    """What to do on each evening, in the order of work; nothing for a shelf that is made in one."""
    books = [member for member in members if plan.number_of(member.id) is not None]
    if len(books) <= BATCH:
        return
    others = _inmost_first([member for member in members if plan.number_of(member.id) is None])
    yield Heading("Evening by evening")
    yield Paragraph(DRYING)
    evenings = [*_of_books(books, plan), *(f"Make {_named(batch, plan)}." for batch in _batches(others))]
    yield from (Tick(f"Evening {number}. {told}") for number, told in enumerate(evenings, start=1))


def _of_books(books: Batch, plan: ShelfPlan) -> Iterator[str]:
    """All blocks, those that fill their space last of them; then the covers, those of the filling blocks last."""
    filling = [member for member in books if member.plan.stretch]
    standing = [member for member in books if not member.plan.stretch]
    printed: set[Sheet] = set()
    dries: Batch = ()
    for batch in _batches(standing):
        told = [*_measure(dries, plan), *_print(_blocks(batch), printed)]
        yield " ".join([*told, f"Cut, fold and glue the blocks of {_named(batch, plan)}. Press them overnight."])
        dries = batch
    early = frozenset(printed)
    for fill, covered in zip_longest(_batches(filling), _batches(standing), fillvalue=()):
        told = [*_measure(dries, plan, again=True)]
        if fill:
            told += [
                *_print(_blocks(fill), printed, early),
                f"Make the blocks of {_named(fill, plan)}: they fill the rest.",
            ]
        yield " ".join([*told, *_cover(covered, plan, printed, early)])
        dries = fill
    early = frozenset(printed)
    for covered in _batches(filling):
        yield " ".join([*_measure(dries, plan, again=True), *_cover(covered, plan, printed, early)])
        dries = ()


def _batches(members: Batch) -> list[Batch]:
    return [members[at : at + BATCH] for at in range(0, len(members), BATCH)]


def _inmost_first(members: Batch) -> list[Member]:
    """What goes into something else before what holds it."""
    found: list[Member] = []
    while waiting := [member for member in members if member not in found]:
        names = {member.id for member in waiting}
        found += [member for member in waiting if names.isdisjoint(member.plan.held)]
    return found


def _blocks(members: Batch) -> Work:
    return [(member, member.chapter.makings[0]) for member in members]


def _measure(members: Batch, plan: ShelfPlan, *, again: bool = False) -> Iterator[str]:
    """The blocks that are dry now; `again` if covers or blocks that fill are made for them next."""
    if members:
        yield f"Measure the blocks of {_named(members, plan)}, which are dry now."
        run = ", and run make --changed" if again else ""
        yield f"Write what is more than {print_mm(OFF, 1)} off into the shelf file{run}."


def _cover(members: Batch, plan: ShelfPlan, printed: set[Sheet], early: frozenset[Sheet]) -> Iterator[str]:
    if members:
        covers = [(member, making) for member in members for making in member.chapter.makings[1:]]
        yield from _print(covers, printed, early)
        yield f"Make the covers of {_named(members, plan)}, and leave them under the weight."


def _named(members: Batch, plan: ShelfPlan) -> str:
    """Books by their numbers, other things by their names."""
    counted = [number for member in members if (number := plan.number_of(member.id))]
    return numbers(counted) if counted else as_list([plan.printed(member.id) for member in members])


def _print(work: Work, printed: set[Sheet], early: frozenset[Sheet] = frozenset()) -> Iterator[str]:
    """The sheets that some work begins with and that are not `printed` yet, to which they are added.

    What lies on a sheet that was printed `early`, before a block was measured, may have changed since.
    """
    sheets: dict[Sheet, None] = {}
    for member, making in work:
        parts = member.prints.parts
        sheets |= dict.fromkeys((file, sheet.number) for file, sheet, piece in parts if piece.flat.kind in making.takes)
    fresh: dict[str, list[int]] = {}
    for file, number in sheets:
        if (file, number) not in printed:
            fresh.setdefault(file, []).append(number)
    printed.update(sheets)
    if fresh:
        yield f"Print {as_list([_sheets(*one) for one in fresh.items()])}."
    if not early.isdisjoint(sheets):
        which = "Other parts were" if fresh else "The parts were"
        yield f"{which} printed before: what has changed since, make --changed prints anew."
    elif sheets and not fresh:
        yield "Their sheets are printed."


def _sheets(file: str, found: Sequence[int]) -> str:
    return f"{file}, {numbered('sheet', found)}"
