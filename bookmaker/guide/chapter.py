"""The pages of one thing: what it tells of itself, its parts, its steps, what to measure."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from ..ground.quantities import counted
from ..ground.told import figure, unit
from ..sheets.facsimiles import Facsimile
from ..things.common_steps import BEFORE
from ..things.making import Chapter, Making, Measure
from ..things.prints import Prints
from ..things.thing import Plan
from ..things.wording import sides, thick
from .cautions import IN_SHORT
from .items import Beside, Caution, Heading, Illustration, Item, Paragraph, Tick
from .materials import supplies_needed
from .shared import Shared, own_making, step_item
from .supply_words import amount_of
from .tables import Column, columns, table
from .titled import Titled

__all__ = ["chapter_items", "measure_rows", "part_lines", "supply_line"]

SIZES = columns(0.0, 0.2, 0.34, 0.5, 0.66, 0.82, 1.0, texts=1)
MEASURES = (Column(0.0, 0.24), Column(0.24, 0.4, ends=True), Column(0.4, 0.56, ends=True), Column(0.58, 1.0))
BLANK = "________"


def chapter_items(
    chapter: Chapter, prints: Prints, plan: Plan, shared: Mapping[str, Shared], seen: Facsimile | None
) -> Iterator[Item]:
    """Everything about one thing, with what is printed for it and cut by hand; what is `shared` is only named."""
    yield Titled(chapter.title, chapter.about, seen)
    if chapter.sizes:
        head, row = zip(*chapter.sizes, strict=True)
        yield from table(SIZES[: len(head)], head, [row])
    if "measured" not in plan.thing.done and (rows := list(measure_rows(chapter))):
        yield from table(
            MEASURES, ("to measure", "computed", "measured", "write it into the shelf file as"), rows, together=True
        )
    yield Heading("Parts, height × width")
    yield from map(Tick, part_lines(prints, plan))
    yield from _made(chapter.makings, prints, shared)


def part_lines(prints: Prints, plan: Plan) -> Iterator[str]:
    """What is printed for a thing, sheet by sheet, parts of one size together, and what is cut and sawn by hand."""
    for where, pieces in prints.by_sheet():
        for _, of_kind in groupby(pieces, key=lambda piece: piece.flat.kind):
            alike: dict[str, list[str]] = {}
            for piece in of_kind:
                alike.setdefault(sides(piece.flat.size), []).append(piece.label[1])
            named = [f"{'; '.join(labels)} ({size})" for size, labels in alike.items()]
            yield f"{where}: {'; '.join(named)}"
    for part in plan.cut_list if "cut" not in plan.thing.done else ():
        size = f"{figure(part.height)} × {figure(part.width)} {unit()}, {thick(part.thickness)} thick"
        yield (f"cut by hand: {counted(part.count, part.what)} of {part.material} ({size})")
    for stick in plan.sticks:
        section = f"strip {figure(stick.width)} × {figure(stick.thickness)} {unit()}, ends {stick.ends}"
        what = f"{counted(stick.count, stick.what)} of {stick.material}"
        yield (f"saw by hand: {what}, {thick(stick.length)} over all ({section})")


def _made(makings: Sequence[Making], prints: Prints, shared: Mapping[str, Shared]) -> Iterator[Item]:
    if supplies := supply_line(makings):
        yield Paragraph(supplies)
    tools = dict.fromkeys(tool for making in makings if making.heading not in shared for tool in making.tools)
    if tools:
        yield Paragraph("Tools: " + "; ".join(tools) + ".")
    yield Caution(IN_SHORT, leads=False)
    for making in makings:
        figures, steps = own_making(making, shared)
        if not steps:
            continue
        yield Heading(making.heading)
        for at in range(0, len(figures), 2):
            yield Beside(tuple(map(Illustration, figures[at : at + 2])))
        if making.takes and not prints.where(*making.takes):
            yield Tick(f"Take these parts from {BEFORE}.")
        yield from map(step_item, steps)


def supply_line(makings: Sequence[Making]) -> str:
    """What is used up besides paper and board."""
    supplies = supplies_needed(supply for making in makings for supply in making.supplies)
    return "Besides: " + "; ".join(f"{one.what}, {amount_of(one)}" for one in supplies) + "." if supplies else ""


def measure_rows(chapter: Chapter) -> Iterator[tuple[str, str, str, str]]:
    """What to measure as the work goes on, with a blank to fill in."""
    for measure in (measure for making in chapter.makings for measure in making.measures):
        measured = f"{BLANK} {unit()}" if measure.measured is None else thick(measure.measured)
        yield measure.what, thick(measure.computed), measured, _written(measure)


def _written(measure: Measure) -> str:
    return measure.written if measure.measured is None else f"{measure.written} (it is there)"
