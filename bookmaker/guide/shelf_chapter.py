"""The first pages of the guide: the order of work, the rows on their spaces, the shopping list, the cutting list."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..ground.quantities import counted
from ..ground.thin import caliper_unit, figure_caliper
from ..ground.told import figure, print_area, print_grammage, print_mm, unit, unit_named
from ..sheets.flat import FoldKind
from ..shelf.findings import how_many
from ..shelf.plan import ShelfPlan
from ..things.making import Making
from ..things.prints import SheetOfFile
from ..things.views.key import key_of_signs
from ..things.wording import as_list, long, thick
from ..typesetting.stand_ins import printable
from .cautions import cautions
from .evenings import OFF
from .items import Beside, Heading, Illustration, Item, Paragraph, Tick
from .materials import boards_needed, papers_needed, strips_needed, supplies_needed
from .printing import printing_items
from .shelf_views import space_figure
from .supply_words import bought
from .tables import Column, columns, table

__all__ = ["shelf_chapter"]

BOOKS = (Column(0.0, 0.05, ends=True), *columns(0.07, 0.42, 0.63, 0.73, 0.83, 0.93, 1.0, texts=2))
THINGS = columns(0.0, 0.42, 0.63, 0.73, 0.83, 0.93, 1.0, texts=2)
PARTS = columns(0.0, 0.2, 0.55, 0.68, 0.76, 0.88, 1.0, texts=3)
STICKS = columns(0.0, 0.18, 0.44, 0.56, 0.74, 0.81, 0.9, 1.0, texts=4)

FILL_LAST = "Cut blocks that fill their space last, when the others are measured: they take what these leave."

ORDER = (
    "Make all blocks first: print their sheets, fold and glue.",
    "Measure each dry block and note it on its page. Write what is more than {off} off into the shelf file, and "
    "run make --changed: covers, jackets and slipcases are then made for the real blocks, and only what differs is "
    "printed.",
    "Make the covers then, and jackets and slipcases around the finished books.",
    "Measure the finished books side by side, and see that they go into their space before you wax, varnish or "
    "glue anything.",
)

ORDER_OF_THINGS = (
    "Try everything in its place first, as outlines on plain paper: make --mock-up prints them.",
    "Print all sheets, and let them dry.",
    "Make what goes into something else before what holds it: a letter before its envelope, cards before their box.",
)
"""The order of work where there are no books."""


def shelf_chapter(
    plan: ShelfPlan,
    chosen: ShelfPlan,
    sheets: Sequence[SheetOfFile],
    makings: Sequence[Making],
    room: float,
    starts: Sequence[int],
    evenings: Sequence[Item],
) -> Iterator[Item]:
    """Everything about the whole shelf.

    `chosen` has those things of it that are to be made, `starts` are the pages on which they begin.
    """
    yield Heading(f"{plan.spec.shelf}: maker's guide", level=1)
    each = "book" if _has_books(chosen) else "thing"
    yield Paragraph(
        f"{as_list(how_many(list(chosen.plans.values())))} at 1:{plan.spec.scale:g}. First what the whole shelf takes, "
        f"then each {each} with its parts and its steps. Tick what is done. The sizes are those of this very shelf "
        "file, always width × height: after a change print the guide again."
    )
    for fit in plan.spaces:
        yield Illustration(space_figure(fit, plan, room))
    yield from _books(chosen, starts)
    yield Heading("Order of work")
    yield from (Tick(step) for step in _order(chosen))
    yield from evenings
    yield from printing_items(sheets, plan)
    yield from _shopping(chosen, sheets, makings)
    yield from _tools(makings)
    yield from _cutting(chosen)
    yield from _folds(chosen, room)
    yield Heading("Cautions")
    yield from (Paragraph(caution) for caution in cautions())


def _has_books(plan: ShelfPlan) -> bool:
    """Whether anything is made that goes by its number in a list, as books do."""
    return any(plan.number_of(id) is not None for id in plan.plans)


def _order(plan: ShelfPlan) -> Iterator[str]:
    """The order of work; blocks that fill are cut after all whose thickness they depend on."""
    if not _has_books(plan):
        yield from ORDER_OF_THINGS
        return
    blocks, measuring, *rest = ORDER
    yield blocks
    yield measuring.format(off=print_mm(OFF, 1))
    if any(one.stretch for one in plan.plans.values()):
        yield FILL_LAST
    yield from rest


def _books(plan: ShelfPlan, starts: Sequence[int]) -> Iterator[Item]:
    head = ("no.", "title", "made as", "thick", "high", "deep", "page")
    counted_by = _has_books(plan)
    rows = []
    for (id, one), start in zip(plan.plans.items(), starts, strict=True):
        number, stands = plan.number_of(id), one.standing
        size = (figure(stands.thickness), figure(stands.height, 1), figure(stands.depth, 1)) if stands else ("", "", "")
        called = one.name if printable(one.name) else plan.printed(id)
        rows.append((str(number or ""), called, one.made_as, *size, str(start)))
    yield Heading(f"{'The books' if counted_by else 'What is made'}, in {unit_named()}")
    if counted_by:
        yield from table(BOOKS, head, rows)
    else:
        yield from table(THINGS, head[1:], [row[1:] for row in rows])


def _shopping(plan: ShelfPlan, sheets: Sequence[SheetOfFile], makings: Sequence[Making]) -> Iterator[Item]:
    """One line for everything to buy or to find."""
    yield Heading("Shopping list")
    for need in papers_needed(sheets):
        stock = need.stock
        grain = "" if stock.grain.value == "unknown" else f", grain {stock.grain.value}"
        weight = f", {stock.sold_as or print_grammage(stock.grammage)}" if stock.grammage else ""
        yield Tick(
            f"{stock.name}: {counted(need.sheets, 'sheet')} of {stock.sheet.name}, {figure_caliper(stock.caliper)} "
            f"{caliper_unit()} thick{weight}{grain}. Have a few more for slips."
        )
        if need.film:
            film = f"{figure_caliper(stock.film)} {caliper_unit()} in all, {print_area(need.film)}"
            yield Tick(f"clear film for {stock.name}: {film}")
    yield from _boards(plan)
    for strip in strips_needed(stick for one in plan.plans.values() for stick in one.sticks):
        yield Tick(
            f"{strip.material} strip, {figure(strip.width)} × {figure(strip.thickness)} {unit()}: "
            f"{counted(strip.sticks, 'stick')}, {print_mm(strip.length, 0)} in all with a saw cut for "
            f"each, the longest {long(strip.longest)}"
        )
        if strip.layout:
            sawn = "; ".join(", ".join(map(figure, one)) for one in strip.layout)
            yield Tick(
                f"buy {counted(len(strip.layout), 'length')} of {print_mm(strip.sold)}, and saw from each: {sawn}"
            )
    for supply in supplies_needed(supply for making in makings for supply in making.supplies):
        yield Tick(f"{supply.what}: {bought(supply)}")


def _boards(plan: ShelfPlan) -> Iterator[Item]:
    """What is cut from board, card, wood and other material that is not printed."""
    for board in boards_needed((part for one in plan.plans.values() for part in one.cut_list), plan.stocks):
        sheet = plan.stocks[board.material].sheet.name if board.sheets is not None else ""
        buy = f": {counted(board.sheets, 'sheet')} of {sheet}" if board.sheets is not None else ""
        if board.sanded:
            buy = f"; for blocks of {as_list([figure(one) for one in board.sanded])} {unit()}"
        yield Tick(
            f"{board.material}, {thick(board.thickness)} thick: {counted(board.parts, 'part')} of "
            f"{print_area(board.area)} in all; with a third more for the cuts {print_area(board.area * 4 / 3)}{buy}"
        )


def _tools(makings: Sequence[Making]) -> Iterator[Item]:
    yield Heading("Tools")
    tools = [Tick(tool) for tool in dict.fromkeys(tool for making in makings for tool in making.tools)]
    yield from (Beside(tuple(tools[at : at + 2])) for at in range(0, len(tools), 2))


def _cutting(plan: ShelfPlan) -> Iterator[Item]:
    """What is cut by hand, all in one list."""
    listed_parts = [(id, part) for id, one in plan.plans.items() for part in one.cut_list]
    listed_parts.sort(key=lambda item: (item[1].material, -item[1].thickness))
    rows = [
        (
            part.material,
            plan.printed(id),
            part.what,
            str(part.count),
            f"{figure(part.width)} × {figure(part.height)}",
            figure(part.thickness),
        )
        for id, part in listed_parts
    ]
    if rows:
        yield Heading(f"Cutting list, in {unit_named()}: width × height; the grain runs along the height")
        yield from table(PARTS, ("material", "for", "part", "pieces", "wide × high", "thick"), rows)
    sticks = [
        (
            stick.material,
            plan.printed(id),
            stick.what,
            stick.ends,
            str(stick.count),
            figure(stick.length),
            f"{figure(stick.width)} × {figure(stick.thickness)}",
        )
        for id, one in plan.plans.items()
        for stick in one.sticks
    ]
    if sticks:
        yield Heading(f"Sticks to saw, in {unit_named()}: length over all; bevels across the first side of the strip")
        yield from table(STICKS, ("material", "for", "part", "ends", "pieces", "length", "strip"), sorted(sticks))


def _folds(plan: ShelfPlan, room: float) -> Iterator[Item]:
    """The marks of folds, and how many there are to do."""
    flats = [flat for one in plan.plans.values() for flat in one.flats]
    kinds = [fold.kind for flat in flats for fold in flat.folds]
    yield Heading("Folds, and the signs in the drawings")
    yield Illustration(key_of_signs(room))
    counts = [counted(kinds.count(kind), kind.value) for kind in (FoldKind.VALLEY, FoldKind.MOUNTAIN) if kind in kinds]
    yield Paragraph(
        f"There are {as_list(counts or ['no folds'])} to fold. On the sheets and in the drawings dash and dot is a "
        "mountain, the printed faces turn away from each other; short dashes are a valley, the printed faces meet. "
        "The marks on the sheets are short: those of mountains end in a thick dot, those of valleys do not. "
        "Fold with the grain: bend the paper both ways, the softer bend is "
        "around the grain."
    )
