"""Breaking a paragraph into lines by total fit: the best set of breaks for the paragraph as a whole.

The method is that of D. E. Knuth and M. F. Plass, "Breaking Paragraphs into Lines", Software: Practice and
Experience 11 (1981), with a paragraph in the form that prose has: its boxes are words, the glue between any
two of them is the same, and penalties stand inside words, where they may be parted. Widths are in ems, or
in any one unit.

Each line has a ratio r, by how much of its stretch or shrink its spaces change, a badness 100 |r|³ and
demerits (1 + badness + penalty)². Two flagged breaks on end, and lines of very different tightness one after
the other, cost more. The sum over all lines is least.

Letters share from the start what spaces gain or lose, each in proportion to what it may: they are tracked a little,
over so many that nobody sees it. At a ratio of 1 they have given all; only what is left makes the spaces wider still.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

__all__ = [
    "FINAL",
    "FITNESS",
    "FLAGS",
    "FORBIDDEN",
    "TOLERANCES",
    "Glue",
    "Line",
    "Stop",
    "Word",
    "break_paragraph",
]

TOLERANCES = (9.0,)
"""The loosest ratio of each pass; the last pass, after these, takes any and counts on the glue's `spread`.

Where spaces gain a third at a ratio of 1, they are then four times as wide as usual. One pass before the last is the
fastest in the narrow measures of small books: tighter ones fail too often, and would break what had better be tied.
"""

COUNTED = 4.5
"""The loosest ratio where a count of lines is asked for: spaces are two and a half times as wide as usual."""

FLAGS = 200_000.0
"""Demerits for two flagged breaks on end; narrow lines have so many more than those of the 1981 paper that its 3000
would count for nothing."""

FINAL = 5e9
"""Demerits, in the last pass, for a last line that holds nothing but the end of a parted word, which no other lets
through: more than a very loose line has.
"""

FITNESS = 100.0
"""Demerits for neighbours more than one class of tightness apart (the value of the 1981 paper, from memory)."""

FORBIDDEN = 1e6
"""A penalty that outweighs any badness; where it stands, lines end in the last pass only."""

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

    @property
    def whole(self) -> Word:
        """The same word, parted nowhere if that can be helped."""
        *inner, end = self.stops
        return self._replace(stops=(*(stop._replace(penalty=FORBIDDEN) for stop in inner), end))


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


_Start = tuple[float, int, int, int, bool, float, "int | None", "_Start | None", int, int, float]
"""The best way to end a line at a stop: where the next one starts, with which word; its number; how tight the line was
and whether its stop is flagged; what it cost to come here; the stop of its word at which the next one is opened; the
start of the line, its last word, its stop, and what it lacked. A plain tuple, for long texts have a million of them.
"""

_Way = tuple[float, int, float, _Start]
"""A line from a start to the stop at hand: what it cost to come here, how tight it is, what it lacks."""

_Limits = tuple[Sequence[float], float, float, float, float, float, float]
"""One attempt: the widths, stretch, shrink, loosening and tightening, the loosest ratio, the stretch lines are lent."""


def break_paragraph(
    words: Sequence[Word], glue: Glue, measures: Sequence[float], indent: float = 0.0, count: int | None = None
) -> list[Line]:
    """The lines of a paragraph of least demerits.

    `measures` are the widths of its lines, the last one that of all that follow. The first line is indented,
    or with a negative `indent` stands out. A box wider than the measure stands out by itself. If a `count` of lines is
    asked for, there are none at all where so many would be too loose or too tight.
    """
    _, stretch, shrink, spread, loosening, tightening = glue
    if count is not None:
        # ways with other counts of lines are kept apart as long as measures have numbers
        measures = (*measures, *[measures[-1]] * (count + 2 - len(measures)))
        end = _fit(words, indent, glue.space, (measures, *glue[1:3], *glue[4:], COUNTED, 0.0), count)
        return _traced(end) if end else []
    for loosest in TOLERANCES:
        limits = (measures, stretch, shrink, loosening, tightening, loosest, 0.0)
        end = _fit(words, indent, glue.space, limits)
        if end:
            return _traced(end)
    end = _fit(words, indent, glue.space, (measures, stretch, shrink, loosening, tightening, math.inf, spread))
    assert end is not None  # the last pass lets everything through
    return _traced(end)


def _fit(
    words: Sequence[Word], indent: float, space: float, limits: _Limits, count: int | None = None
) -> _Start | None:
    """Go through all stops, keeping the best ways to each; None if some line would be too loose."""
    measures, *_, loosest, _ = limits
    hang = 0.0 if indent else words[0].hang
    active: list[_Start] = [(hang - indent, 0, 0, 1, False, 0.0, None, None, 0, 0, 0.0)]
    left, final, last_pass, longest = 0.0, len(words) - 1, math.isinf(loosest), len(measures) - 1
    hangs = [*[word.hang for word in words[1:]], 0.0]
    for place, (width, _, stops) in enumerate(words):
        last = len(stops) - 1
        for number, stop in enumerate(stops):
            before, after, penalty, flagged = stop
            ends = number == last
            ways, gone = _ways(active, left + before, place, stop, limits, closing=ends and place == final)
            if penalty >= FORBIDDEN and not last_pass:
                ways = []
            if ends:
                if gone:
                    if gone == len(active) and last_pass and not ways:
                        ways = [_standing_out(active[-1], place, limits)]
                    del active[:gone]
                start, first, opened = left + (width + space) + hangs[place], place + 1, None
            else:
                start, first, opened = left + after, place, number
            for cost, fitness, short, node in ways:
                following = node[2] + 1 if node[2] < longest else longest
                active.append((start, first, following, fitness, flagged, cost, opened, node, place, number, short))
            if len(active) > MANY and not ends:
                # a hyphen may reach further than the next stop: what is just too long yet may not stay so
                del active[: _ways(active, left + before - 4 * space, place, stop, limits)[1]]
        if not active:
            return None
        left += width + space
    whole = (start for start in active if start[1] > final and count in {None, start[2]})
    return min(whole, key=lambda start: start[5], default=None)


def _ways(
    active: Sequence[_Start], end: float, place: int, stop: Stop, limits: _Limits, *, closing: bool = False
) -> tuple[list[_Way], int]:
    """The best lines that may end at a stop, and how many starts, from the first, lie too far back for any."""
    measures, stretch, shrink, loosening, tightening, loosest, spread = limits
    _, _, penalty, flagged = stop
    ways: list[_Way] = []
    gone, least = 0, (1.0 + penalty) * (1.0 + penalty)
    bounds = [math.inf] * len(measures)  # what costs so much is not worth keeping, by the number of the line
    for node in active:
        start, first, number, before, opened, cost, _, _, _, _, _ = node
        if cost + least >= bounds[number]:
            continue  # as good as the line may be
        short, count = measures[number] - end + start, place - first
        if short < 0.0:
            room = shrink * count + tightening
            if short < -room:
                gone += not ways
                continue
            ratio = short / room
        elif closing:
            ratio = short = 0.0
        else:
            spaces = stretch * count + spread
            room = spaces + loosening
            if short <= room:
                ratio = short / room if room else 0.0
            elif short > loosest * spaces + loosening:
                break  # those that start later are looser still
            else:
                ratio = (short - loosening) / spaces if spaces else 0.0
        fitness = 1 if -0.5 <= ratio <= 0.5 else 0 if ratio < 0.0 else 2 if ratio <= 1.0 else 3
        demerits = 1.0 + 100.0 * abs(ratio * ratio * ratio) + penalty
        cost += demerits * demerits + (0.0 if -1 <= fitness - before <= 1 else FITNESS)
        if opened:
            cost += FLAGS if flagged else 0.0
            if closing and not count:  # rather is the whole paragraph looser
                cost += FINAL if loosest == math.inf else math.inf
        if cost < bounds[number]:
            ways.append((cost, fitness, short, node))
            bound = cost + FITNESS
            bounds[number] = bound if bound < bounds[number] else bounds[number]
    return ways if len(ways) < 2 else _worth_keeping(ways, bounds), gone


def _worth_keeping(ways: Iterable[_Way], bounds: Sequence[float]) -> list[_Way]:
    """The best ways of each class: another class can save no more than `FITNESS` in the line that follows."""
    best: dict[tuple[int, int], _Way] = {}
    for way in ways:
        cost, fitness, _, node = way
        known = best.get((node[2], fitness))
        if cost < bounds[node[2]] and (known is None or cost < known[0]):
            best[node[2], fitness] = way
    return list(best.values())


def _standing_out(node: _Start, place: int, limits: _Limits) -> _Way:
    """A line that sticks out, where there is no other way."""
    _, _, shrink, _, tightening, _, _ = limits
    return node[5], 0, -shrink * (place - node[1]) - tightening, node


def _traced(end: _Start) -> list[Line]:
    lines: list[Line] = []
    node: _Start | None = end
    while node:
        _, _, _, _, _, _, _, before, last, closed, short = node
        if before:
            lines.append(Line(before[1], before[6], last, closed, short))
        node = before
    return lines[::-1]
