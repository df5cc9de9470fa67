"""The pages of one thing: what it tells of itself, its parts, its steps, what to measure."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby

from ..ground.quantities import counted
from ..ground.told import figure, unit
from ..sheets.facsimiles import Facsimile
from ..things.common_steps import BEFORE
from ..things.making import CAUTION, Chapter, Making, Measure
from ..things.prints import Prints
from ..things.thing import Plan
from ..things.wording import numbers, sides, thick
from .cautions import IN_SHORT
from .items import Beside, Caution, Heading, Illustration, Item, Paragraph, Tick
from .materials import supplies_needed
from .member import Member
from .shared import Shared, own_making, step_item
from .supply_words import amount_of
from .tables import Column, columns, table
from .titled import Titled

__all__ = ["chapter_items", "measure_rows", "part_lines", "supply_line", "warning_text"]

SIZES = columns(0.0, 0.2, 0.34, 0.5, 0.66, 0.82, 1.0, texts=1)
MEASURES = (Column(0.0, 0.24), Column(0.24, 0.4, ends=True), Column(0.4, 0.56, ends=True), Column(0.58, 1.0))
BLANK = "________"

NUMBER = re.compile(r"(?<= )(\d+)")
"""A number in a label."""


def chapter_items(one: Member, shared: Mapping[str, Shared], seen: Facsimile | None) -> Iterator[Item]:
    """Everything about one thing, with what is printed for it and cut by hand; what is `shared` is only named."""
    chapter, prints, plan = one.chapter, one.prints, one.plan
    yield Titled(chapter.title, chapter.about, seen)
    yield from (Caution(warning_text(warned)) for warned in one.warned)
    if chapter.sizes:
        head, row = zip(*chapter.sizes, strict=True)
        yield from table(SIZES[: len(head)], head, [row], together=True)
    if "measured" not in plan.thing.done and (rows := list(measure_rows(chapter))):
        yield from table(
            MEASURES, ("to measure", "computed", "measured", "write it into the shelf file as"), rows, together=True
        )
    yield Heading("Parts, width × height")
    yield from map(Tick, part_lines(prints, plan))
    yield from _made(chapter.makings, prints, shared)


def warning_text(warned: str) -> str:
    """What spoils a thing, to be read before it is printed.

    >>> warning_text("it does not stand; write another space")
    'Caution: before you print this: it does not stand; write another space.'
    """
    return f"{CAUTION}before you print this: {warned}."


def part_lines(prints: Prints, plan: Plan) -> Iterator[str]:
    """What is printed for a thing, sheet by sheet, parts of one size together, and what is cut and sawn by hand."""
    for where, pieces in prints.by_sheet():
        for _, of_kind in groupby(pieces, key=lambda piece: piece.flat.kind):
            alike: dict[str, list[str]] = {}
            for piece in of_kind:
                alike.setdefault(sides(piece.flat.size), []).append(piece.label[1])
            named = [f"{'; '.join(_in_runs(labels))} ({size})" for size, labels in alike.items()]
            yield f"{where}: {'; '.join(named)}"
    for part in plan.cut_list if "cut" not in plan.thing.done else ():
        size = f"{figure(part.width)} × {figure(part.height)} {unit()}, {thick(part.thickness)} thick"
        yield (f"cut by hand: {counted(part.count, part.what)} of {part.material} ({size})")
    for stick in plan.sticks:
        section = f"strip {figure(stick.width)} × {figure(stick.thickness)} {unit()}, ends {stick.ends}"
        what = f"{counted(stick.count, stick.what)} of {stick.material}"
        yield (f"saw by hand: {what}, {thick(stick.length)} over all ({section})")


def _in_runs(labels: Sequence[str]) -> Iterator[str]:
    """Labels; those side by side that differ in one number are told together.

    >>> list(_in_runs(["section 1 of 2, sheet 1", "section 2 of 2, sheet 1", "cover"]))
    ['sections 1 and 2 of 2, sheet 1', 'cover']
    """
    run: list[list[str]] = []
    for parts in (NUMBER.split(label) for label in labels):
        if run and _differing([*run, parts]) is None:
            yield _run_told(run)
            run = []
        run.append(parts)
    if run:
        yield _run_told(run)


def _differing(run: Sequence[Sequence[str]]) -> int | None:
    """At which number labels differ that were cut at their numbers, if they are alike but for that."""
    if len({len(parts) for parts in run}) > 1:
        return None
    places = [at for at, told in enumerate(zip(*run, strict=True)) if len(set(told)) > 1]
    return places[0] if len(places) == 1 and places[0] % 2 else None


def _run_told(run: Sequence[Sequence[str]]) -> str:
    at = _differing(run)
    if at is None:
        return "".join(run[0])
    before, after = "".join(run[0][:at]), "".join(run[0][at + 1 :])
    return f"{before.rstrip()}s {numbers(int(parts[at]) for parts in run)}{after}"


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
