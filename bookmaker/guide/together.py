"""Things that are made alike, such as a row of dummies, told once: what differs in their steps stands in a table."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from ..things.making import Making
from .chapter import measure_rows, part_lines, supply_line, warning_text
from .items import Beside, Caution, Heading, Illustration, Item, Paragraph, Tick
from .member import Member
from .shared import Shared, own_making, step_item
from .tables import Column, columns, table

__all__ = ["together_items", "told_alike"]

FEWEST = 3
"""So many things are worth a table."""

MOST_LETTERS = 8
"""So many numbers that differ stand side by side in a row."""

MOST_OTHERS = 2
"""So many steps of its own a thing may have besides those that all have."""

NUMBER = re.compile(r"(?<![\w.])\d+(?:\.\d+)?(?![\w.]*\.pdf)")
NAMED, WIDEST = 0.27, 0.12
"""The share of a table's width that the names take, and a number at the most."""

SIZES = columns(0.0, NAMED, 0.42, 0.54, 0.65, 0.76, 0.84, 1.0, texts=1)


def told_alike(members: Iterable[Member], shared: Mapping[str, Shared]) -> Iterator[tuple[Member, ...]]:
    """Members in groups, most of them alone: those together are kin, and most of their steps differ in numbers only."""
    groups: dict[object, list[Member]] = {}
    for member in members:
        headings = tuple(making.heading for making in member.chapter.makings)
        groups.setdefault((member.chapter.kin, headings) if member.chapter.kin else member.id, []).append(member)
    for group in groups.values():
        if len(group) >= FEWEST and all(map(_worth_a_table, _work_of(group, shared))):
            yield tuple(group)
        else:
            yield from ((member,) for member in group)


@dataclass(frozen=True, slots=True)
class _Work:
    """One part of the work of several things: the steps that all have, for each of them, and those that few have."""

    steps: tuple[tuple[str, ...], ...]
    others: tuple[tuple[str, ...], ...]


def _work_of(group: Sequence[Member], shared: Mapping[str, Shared]) -> list[_Work]:
    """Part by part."""
    return [_parted(steps) for steps in zip(*(member.own(shared) for member in group), strict=True)]


def _parted(steps: Sequence[tuple[str, ...]]) -> _Work:
    worded = [{_worded(step) for step in own} for own in steps]
    common = set.intersection(*worded)
    return _Work(
        tuple(tuple(step for step in own if _worded(step) in common) for own in steps),
        tuple(tuple(step for step in own if _worded(step) not in common) for own in steps),
    )


def _worded(step: str) -> str:
    """A step but for its numbers."""
    return NUMBER.sub("#", step)


def _worth_a_table(work: _Work) -> bool:
    """Whether little is left over, and the steps that all have go with one another."""
    worded = {tuple(map(_worded, own)) for own in work.steps}
    few = all(len(others) <= MOST_OTHERS for others in work.others)
    return few and len(worded) == 1 and len(_slots(work.steps)) <= MOST_LETTERS


def _slots(steps: Sequence[Sequence[str]]) -> list[tuple[int, int]]:
    """Where the steps of the members have numbers that differ: the step, and which number in it; alike ones once."""
    found: dict[tuple[str, ...], tuple[int, int]] = {}
    for number, alike in enumerate(zip(*steps, strict=True)):
        for place, values in enumerate(zip(*(NUMBER.findall(step) for step in alike), strict=True)):
            if len(set(values)) > 1:
                found.setdefault(values, (number, place))
    return list(found.values())


def together_items(group: Sequence[Member], shared: Mapping[str, Shared]) -> Iterator[Item]:
    """Everything about some things that are made alike."""
    first = group[0].chapter
    yield Heading(first.kin, level=1)
    yield Paragraph(
        f"These {len(group)} are made in the same way. A letter in a step stands for a number that differs: "
        "the table below the steps has it for each of them."
    )
    names = tuple(member.chapter.title for member in group)
    for name, member in zip(names, group, strict=True):
        yield from (Caution(warning_text(f"{name}: {warned}"), leads=False) for warned in member.warned)
    heads = tuple(what for what, _ in first.sizes)
    rows = [(name, *(size for _, size in member.chapter.sizes)) for name, member in zip(names, group, strict=True)]
    yield from table(SIZES[: len(heads) + 1], ("", *heads), rows)
    measures = [(name, *row) for name, member in zip(names, group, strict=True) for row in measure_rows(member.chapter)]
    if measures:
        yield Heading("Measure")
        yield from table(MEASURES, ("", "what", "computed", "measured", "write it into the shelf file as"), measures)
    yield Heading("Parts, width × height")
    for name, member in zip(names, group, strict=True):
        yield Tick(f"{name}: {'; '.join(part_lines(member.prints, member.plan))}")
    if supplies := supply_line([making for member in group for making in member.chapter.makings]):
        yield Paragraph(supplies)
    for making, work in zip(first.makings, _work_of(group, shared), strict=True):
        yield from _told(making, work, names, shared)


MEASURES = (
    *(Column(0.0, 0.22), Column(0.22, 0.35), Column(0.35, 0.46, ends=True), Column(0.46, 0.57, ends=True)),
    Column(0.585, 1.0),
)


def _columns(count: int) -> tuple[Column, ...]:
    """Names, and numbers not far from them."""
    step = min((1 - NAMED) / max(count, 1), WIDEST)
    return columns(0.0, *(NAMED + step * number for number in range(count + 1)), texts=1)


def _told(making: Making, work: _Work, names: Sequence[str], shared: Mapping[str, Shared]) -> Iterator[Item]:
    """One part of the work: its steps with letters, and what these stand for."""
    slots = _slots(work.steps)
    values = [[NUMBER.findall(own[number])[place] for number, place in slots] for own in work.steps]
    letters = {column: f"({chr(ord('a') + at)})" for at, column in enumerate(zip(*values, strict=True))}
    yield Heading(making.heading)
    if figures := own_making(making, shared)[0]:
        yield Beside(tuple(map(Illustration, figures)))
    for name, others in zip(names, work.others, strict=True):
        yield from (step_item(f"{name}: {step}") for step in others)
    yield from (step_item(_lettered(alike, letters)) for alike in zip(*work.steps, strict=True))
    if slots:
        rows = [(name, *own) for name, own in zip(names, values, strict=True)]
        yield from table(_columns(len(slots)), ("", *letters.values()), rows)


def _lettered(alike: Sequence[str], letters: Mapping[tuple[str, ...], str]) -> str:
    """A step of the first member, with letters for the numbers in which the others have others."""
    told = iter(list(zip(*(NUMBER.findall(step) for step in alike), strict=True)))
    return NUMBER.sub(lambda found: letters.get(next(told), found[0]), alike[0])
