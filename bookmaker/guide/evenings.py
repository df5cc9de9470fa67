"""The work in evenings: a few books at a time, and what is done while the glue of others dries."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from ..shelf.plan import ShelfPlan
from ..things.making import Making
from ..things.wording import as_list, numbered, numbers
from .items import Heading, Item, Paragraph, Tick
from .together import Member

__all__ = ["evening_items"]

BATCH = 8
"""So many books are on the table at a time (common practice)."""

Sheet = tuple[str, int]
"""A file and the number of a sheet in it."""

DRYING = (
    "PVA and paste hold after an hour and are dry after a night under the weight; spray adhesive holds at once "
    "(common practice; what the label says goes first)."
)


def evening_items(members: Sequence[Member], plan: ShelfPlan) -> Iterator[Item]:
    """What to do on each evening; nothing for a shelf that is made in one."""
    books = [member for member in members if len(member.chapter.makings) > 1]
    others = [member for member in members if len(member.chapter.makings) == 1]
    if len(books) <= BATCH:
        return
    batches = [books[at : at + BATCH] for at in range(0, len(books), BATCH)]
    yield Heading("Evening by evening")
    yield Paragraph(DRYING)
    printed: set[Sheet] = set()
    for number, (before, now) in enumerate(zip([[], *batches], [*batches, []], strict=True), start=1):
        yield Tick(f"Evening {number}. {' '.join(_evening(before, now, plan, printed))}")
    if others:
        named = as_list([plan.printed(member.id) for member in others])
        yield Tick(f"Evening {len(batches) + 2}. Make {named}.")


def _evening(before: Sequence[Member], now: Sequence[Member], plan: ShelfPlan, printed: set[Sheet]) -> Iterator[str]:
    """The covers of what has dried, then the blocks of what comes next; `printed` grows by what is printed for them."""
    if before:
        yield f"Measure the blocks of {_called(before, plan)}, which are dry now, and run make --changed if needed."
        yield _print([(member, making) for member in before for making in member.chapter.makings[1:]], printed)
        yield "Make their covers, and leave them under the weight."
    if now:
        if before:
            yield "While they dry, go on."
        yield _print([(member, member.chapter.makings[0]) for member in now], printed)
        yield f"Cut, fold and glue the blocks of {_called(now, plan)}. Press them overnight."


def _called(members: Sequence[Member], plan: ShelfPlan) -> str:
    found = [plan.number_of(member.id) for member in members]
    return (
        numbers([number for number in found if number]) if all(found) else as_list([one.plan.name for one in members])
    )


def _print(work: Iterable[tuple[Member, Making]], printed: set[Sheet]) -> str:
    """The sheets that some work begins with and that are not printed yet."""
    sheets: dict[Sheet, None] = {}
    for member, making in work:
        parts = member.prints.parts
        sheets |= dict.fromkeys((file, sheet.number) for file, sheet, piece in parts if piece.flat.kind in making.takes)
    fresh: dict[str, list[int]] = {}
    for file, number in sheets:
        if (file, number) not in printed:
            fresh.setdefault(file, []).append(number)
    printed.update(sheets)
    named_sheets = [f"{file}, {numbered('sheet', found)}" for file, found in fresh.items()]
    return f"Print {as_list(named_sheets)}." if named_sheets else "Their sheets are printed."
