"""Breaking a paragraph into lines by total fit: the best set of breaks for the paragraph as a whole.

The method is that of D. E. Knuth and M. F. Plass, "Breaking Paragraphs into Lines", Software: Practice and
Experience 11 (1981), with a paragraph in the form that prose has: its boxes are words, the glue between any
two of them is the same, and penalties stand inside words, where they may be parted. Widths are in ems, or
in any one unit.

Each line has a ratio r, by how much of its stretch or shrink its spaces change, a badness 100 |r|³ and
demerits (1 + badness + penalty)². Two flagged breaks on end, and lines of very different tightness one after
the other, cost more. The sum over all lines is least.

What the spaces cannot do at a ratio of 1, the letters may help with: they are tracked a little, which is
spread over so many that nobody sees it. Only what is left after that makes the spaces wider still.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

__all__ = [
    "FINAL",
    "FITNESS",
    "FLAGS",
    "FORBIDDEN",
    "TOLERANCES",
    "TRACKED",
    "Glue",
    "Line",
    "Stop",
    "Word",
    "break_paragraph",
]

TOLERANCES = (6.0,)
"""The loosest ratio of each pass; the last pass, after these, takes any and counts on the glue's `spread`.

One pass before the last is the fastest in the narrow measures of small books: tighter ones fail too often.
"""

FLAGS = 3000.0
"""Demerits for two flagged breaks on end (the value of the 1981 paper, from memory)."""

FINAL = 1e9
"""Demerits for a last line that holds nothing but the end of a parted word: more than the loosest line has."""

FITNESS = 100.0
"""Demerits for neighbours more than one class of tightness apart (the value of the 1981 paper, from memory)."""

TRACKED = 0.5
"""What letters tracked as far as they may add to the ratio of a line."""

FORBIDDEN = 1e6
"""A penalty that outweighs any badness; the ends of words that have it are stops in the last pass only."""

MANY = 64
"""More starts than this are looked through within words too, not only at their ends."""


class Stop(NamedTuple):
    """A place where a word may end a line, the last one being its own end.

    `before` is how far the line then reaches from the left of the word, `after` where the rest of it begins,
    both with what hangs into the margins taken off. `penalty` and `flagged` as in the 1981 paper.
    """

    before: float
    after: float
    penalty: float = 0.0
    flagged: bool = False


class Word(NamedTuple):
    """A box: its width, how far its first sign hangs into the left margin, and its stops from left to right."""

    width: float
    hang: float
    stops: tuple[Stop, ...]


class Glue(NamedTuple):
    """The space between two words, what it may gain or lose at a ratio of 1, and the `spread` of the last pass.

    `spread` is stretch that every line of the last pass is thought to have besides, to tell bad from worse.
    `loosening` and `tightening` are what all letters of a line together may be tracked apart and closer.
    """

    space: float
    stretch: float
    shrink: float
    spread: float
    loosening: float = 0.0
    tightening: float = 0.0


class Line(NamedTuple):
    """A line from a stop to a stop: `first` and `last` are words, `opened` and `closed` stops of theirs.

    `opened` is None where the line begins with a whole word; `closed` is the last stop where it ends with one.
    `short` is what its spaces and letters must gain in all to fill the measure; the last line only ever loses.
    """

    first: int
    opened: int | None
    last: int
    closed: int
    short: float


class _Node(NamedTuple):
    """The best way to end a line at a stop: where the next one starts, and what it cost to come here."""

    start: float
    first: int
    opened: int | None
    number: int
    fitness: int
    flagged: bool
    cost: float
    way: _Way | None = None
    last: int = 0
    closed: int = 0


class _Way(NamedTuple):
    """A line from a node to the stop at hand."""

    cost: float
    fitness: int
    short: float
    node: _Node


@dataclass(frozen=True, slots=True)
class _Pass:
    """One attempt: the glue and the widths, the loosest ratio let through, the stretch that lines are lent."""

    glue: Glue
    measures: Sequence[float]
    loosest: float
    spread: float = 0.0


def break_paragraph(words: Sequence[Word], glue: Glue, measures: Sequence[float], indent: float = 0.0) -> list[Line]:
    """The lines of a paragraph of least demerits.

    `measures` are the widths of its lines, the last one that of all that follow. The first line is indented,
    or with a negative `indent` stands out. A box wider than the measure stands out by itself.
    """
    for loosest in TOLERANCES:
        end = _fit(words, indent, _Pass(glue, measures, loosest))
        if end:
            return _traced(end)
    end = _fit(words, indent, _Pass(glue, measures, math.inf, glue.spread))
    assert end is not None  # the last pass lets everything through
    return _traced(end)


def _fit(words: Sequence[Word], indent: float, trial: _Pass) -> _Node | None:
    """Go through all stops, keeping the best ways to each; None if some line would be too loose."""
    hang = 0.0 if indent else words[0].hang
    active = [_Node(hang - indent, 0, None, 0, 1, flagged=False, cost=0.0)]
    left, final, space = 0.0, len(words) - 1, trial.glue.space
    for place, (width, _, stops) in enumerate(words):
        for number, stop in enumerate(stops[:-1]):
            ways = _ways(active, left + stop.before, place, stop, trial)
            for way in ways:
                active.append(_follower(way, left + stop.after, place, place, number, stop, trial))
            if len(active) > MANY:
                # a hyphen may reach further than the next stop: what is just too long yet may not stay so
                _retire(active, left + stop.before - 4 * space, place, trial, forced=ways)
        number, stop = len(stops) - 1, stops[-1]
        end = left + stop.before
        kept = stop.penalty >= FORBIDDEN and not math.isinf(trial.loosest)
        ways = [] if kept else _ways(active, end, place, stop, trial, closing=place == final)
        _retire(active, end, place, trial, forced=ways)
        left += width + space
        start = left + words[place + 1].hang if place < final else left
        for way in ways:
            active.append(_follower(way, start, place + 1, place, number, stop, trial))
        if not active:
            return None
    return min((node for node in active if node.first > final), key=lambda node: node.cost, default=None)


def _ways(
    active: Sequence[_Node], end: float, place: int, stop: Stop, trial: _Pass, *, closing: bool = False
) -> list[_Way]:
    """The lines that may end at a stop, the best for each class of tightness and number of lines before."""
    (_, stretch, shrink, _, loosening, tightening), measures, spread = trial.glue, trial.measures, trial.spread
    loosest = trial.loosest - TRACKED if loosening else trial.loosest
    ways: list[_Way] = []
    for node in active:
        short = measures[node.number] - end + node.start
        count = place - node.first
        if short < 0.0:
            room = shrink * count
            if short < -room - tightening:
                continue
            ratio = short / room if short >= -room else -1.0 + (short + room) / tightening
        elif closing:
            ratio = short = 0.0
        else:
            room = stretch * count + spread
            over = short - room
            if over <= 0.0:
                ratio = short / room if room else 0.0
            elif over <= loosening:
                ratio = 1.0 + TRACKED * over / loosening
            elif short > loosest * room + loosening:
                break  # those that start later are looser still
            else:
                ratio = (short - loosening) / room + (TRACKED if loosening else 0.0) if room else 0.0
        fitness = 1 if -0.5 <= ratio <= 0.5 else 0 if ratio < 0.0 else 2 if ratio <= 1.0 else 3
        cost = node.cost + (1.0 + 100.0 * abs(ratio) ** 3 + stop.penalty) ** 2
        if not -1 <= fitness - node.fitness <= 1:
            cost += FITNESS
        if node.flagged:
            cost += FLAGS if stop.flagged else FINAL if closing and not count else 0.0
        ways.append(_Way(cost, fitness, short, node))
    return ways if len(ways) < 2 else _best(ways)


def _best(ways: Sequence[_Way]) -> list[_Way]:
    """The best way for each class of tightness and number of lines.

    Another class can save no more than `FITNESS` in the line that follows, so few are worth keeping.
    """
    best: dict[int, dict[int, _Way]] = {}
    for way in ways:
        classes = best.setdefault(way.node.number, {})
        if way.fitness not in classes or way.cost < classes[way.fitness].cost:
            classes[way.fitness] = way
    kept: list[_Way] = []
    for classes in best.values():
        least = min(way.cost for way in classes.values())
        kept += [way for way in classes.values() if way.cost < least + FITNESS]
    return kept


def _retire(active: list[_Node], end: float, place: int, trial: _Pass, *, forced: list[_Way]) -> None:
    """Forget the starts from which no line can reach beyond this word.

    In the last pass the youngest of them is given a line that sticks out, if there is no other way.
    """
    shrink, tightening, measures = trial.glue.shrink, trial.glue.tightening, trial.measures
    gone = 0
    for node in active:
        short = measures[node.number] - end + node.start
        if short >= -shrink * (place - node.first) - tightening:
            break
        gone += 1
    if gone == len(active) and not forced and math.isinf(trial.loosest):
        node = active[-1]
        forced.append(_Way(node.cost, 0, -shrink * (place - node.first) - tightening, node))
    del active[:gone]


def _follower(way: _Way, start: float, first: int, place: int, number: int, stop: Stop, trial: _Pass) -> _Node:
    """The node that a way leads to."""
    opened = number if first == place else None
    following = min(way.node.number + 1, len(trial.measures) - 1)
    return _Node(start, first, opened, following, way.fitness, stop.flagged, way.cost, way, place, number)


def _traced(end: _Node) -> list[Line]:
    lines: list[Line] = []
    node = end
    while node.way:
        way = node.way
        lines.append(Line(way.node.first, way.node.opened, node.last, node.closed, way.short))
        node = way.node
    return lines[::-1]
