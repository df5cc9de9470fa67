"""A long row improved: moves that gain, until none is left; then a kick, and again, by counted steps.

Iterated local search as is usual for paths (H. R. Lourenço, O. C. Martin and T. Stützle, "Iterated local search", 2003,
from memory). A move turns a stretch round, or sets two neighbouring stretches the other way about, one of them turned
round or not, so that a thing comes to stand beside one that suits it. What it joins and what it parts bound what it can
gain, and so nearly all moves need not be tried.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from math import exp
from random import Random

from .costs import Costs, cost_of

__all__ = ["Improver"]

NEAR, FEW = 6, 3
"""A thing is tried beside so many that suit it best, with up to so many that stand beside it."""

KICKED = 30
"""A kick stays within so many places."""

HEAT = 0.006
"""At first a row may stay that costs about so much more, as a share of what it costs."""

TRIED = 6
"""Trying a move is as much work as ruling out so many."""

Move = tuple[int, int, int, bool, bool]
"""The stretch from the second place to before the third comes before that from the first to before the second; whether
the one, and the other, is turned round."""


class Improver:
    """A row that is improved, in which places may be held: what stands there stays.

    Costs are read from flat tables: `sums` has what the row costs up to each place, `patterns` what stairs and teeth
    cost that end there.
    """

    __slots__ = ("costs", "free", "near", "patterns", "place", "row", "sums", "table", "whole", "work")

    def __init__(self, costs: Costs, start: Sequence[int], held: frozenset[int]) -> None:
        self.costs, self.table, self.row = costs, _Tables(costs), [*start]
        count = len(self.row)
        self.free = [place for place in range(count) if place not in held]
        self.whole = self.free == [*range(self.free[0], self.free[-1] + 1)]
        self.near = [
            sorted((other for other in range(count) if other != one), key=costs.beside[one].__getitem__)[:NEAR]
            for one in range(count)
        ]
        self.place = [0] * count
        self.sums, self.patterns = [0.0] * (count + 1), [0.0] * (count + 4)
        self.work = 0
        self._changed(0, count)

    def improve(self, chance: Random, work: int, progress: Callable[[int, int], None]) -> tuple[int, ...]:
        """The best row that was found with so much work."""
        self._settle([self.row[place] for place in self.free])
        cost = least = self.sums[-1]
        best = tuple(self.row)
        heat = HEAT * cost
        while self.work < work:
            progress(self.work, work)
            before = [*self.row]
            self._settle(self._kick(chance))
            worse = self.sums[-1] - cost
            if worse > 1e-9 and chance.random() >= exp(-worse / max(heat * (1 - self.work / work), 1e-9)):
                self.row[:] = before
                self._changed(0, len(before))
                continue
            cost += worse
            if cost < least - 1e-9:
                best, least = tuple(self.row), cost
        return min(best, tuple(self.row), key=lambda row: cost_of(self.costs, row))

    def _kick(self, chance: Random) -> list[int]:
        """Two stretches side by side exchanged; what stands where they meet."""
        wide = min(KICKED, len(self.free))
        first = int(chance.random() * (len(self.free) - wide + 1))
        low, middle, high = sorted(chance.sample(range(first, first + wide + 1), 3))
        self._put((low, middle, high, False, False))
        joined = {low - 1, low, low + high - middle - 1, low + high - middle, high - 1, high}
        self.work += TRIED
        return [self.row[self.free[at]] for at in sorted(joined) if 0 <= at < len(self.free)]

    def _settle(self, things: list[int]) -> None:
        """Moves that gain are made, as long as there are any with some things, and with those around what was moved."""
        waiting = set(things)
        while things:
            thing = things.pop()
            waiting.discard(thing)
            while (move := self._gaining(thing)) is not None:
                self._put(move)
                at = self.free.index(self.place[thing]) if not self.whole else self.place[thing] - self.free[0]
                for near in (move[0] - 1, move[0], move[2] - 1, move[2], at - 1, at + 1):
                    if 0 <= near < len(self.free) and (other := self.row[self.free[near]]) not in waiting:
                        things.append(other)
                        waiting.add(other)

    def _gaining(self, thing: int) -> Move | None:
        """The first move found that gains."""
        for move in self._moves(thing):
            self.work += 1
            if self.whole and self._bound(move) <= 1e-9:
                continue
            self.work += TRIED
            if self._gain(move) > 1e-9:
                return move
        return None

    def _moves(self, thing: int) -> Iterator[Move]:
        """Moves that bring a thing to an end of the row, or beside one that suits it; places count those not held."""
        count, at = len(self.free), self._at(thing)
        if at < 0:
            return
        if at > 0:
            yield 0, 0, at + 1, True, False
        if at < count - 1:
            yield at, at, count, True, False
        for other in self.near[thing]:
            beside = self._at(other)
            if beside > at:
                yield from _to_the_right(at, beside)
            elif beside >= 0:
                yield from _to_the_left(at, beside, count)

    def _at(self, thing: int) -> int:
        """Which of the places that are not held a thing has; -1 if its place is held."""
        place = self.place[thing]
        if self.whole:
            at = place - self.free[0]
            return at if 0 <= at < len(self.free) else -1
        return self.free.index(place) if place in self.free else -1

    def _bound(self, move: Move) -> float:
        """More than this a move cannot gain: what the parted neighbours cost, less what those that are joined do."""
        low, middle, high, turned, other_turned = move
        first = self.free[0]
        low, middle, high = low + first, middle + first, high + first
        row, sums, patterns, count = self.row, self.sums, self.patterns, len(self.row)
        beside = self.costs.beside
        start, end = (row[high - 1], row[middle]) if turned else (row[middle], row[high - 1])
        gain = sums[low + 1] - sums[low] + patterns[low + 1] + patterns[low + 2]
        if high < count:
            gain += sums[high + 1] - sums[high] + patterns[high + 1] + patterns[high + 2]
        if low:
            gain -= beside[row[low - 1]][start]
        if middle > low:
            gain += sums[middle + 1] - sums[middle] + patterns[middle + 1] + patterns[middle + 2]
            head, tail = (row[middle - 1], row[low]) if other_turned else (row[low], row[middle - 1])
            gain -= beside[end][head]
            end = tail
        return gain - beside[end][row[high]] if high < count else gain

    def _gain(self, move: Move) -> float:
        """What a row costs less once a move is made."""
        low, high = self.free[move[0]], self.free[move[2] - 1] + 1
        end = min(high + 3, len(self.row))
        new = self.table.cost(self.row, low, [*self._stretch(move), *self.row[high:end]])
        return self.sums[end] - self.sums[low] - new

    def _stretch(self, move: Move) -> list[int]:
        """What stands between the outer places of a move once it is made."""
        low, middle, high, turned, other_turned = move
        places = self.free[low:high]
        things = [self.row[place] for place in places]
        one, other = things[middle - low :], things[: middle - low]
        moved = (one[::-1] if turned else one) + (other[::-1] if other_turned else other)
        if self.whole:
            return moved
        stretch = self.row[places[0] : places[-1] + 1]
        for place, thing in zip(places, moved, strict=True):
            stretch[place - places[0]] = thing
        return stretch

    def _put(self, move: Move) -> None:
        low, high = self.free[move[0]], self.free[move[2] - 1] + 1
        self.row[low:high] = self._stretch(move)
        self._changed(low, high)

    def _changed(self, low: int, high: int) -> None:
        """Note where things stand, and what the row costs from a place on."""
        for place in range(low, high):
            self.place[self.row[place]] = place
        self.table.sum_up(self.row, low, self.sums, self.patterns)


def _to_the_right(at: int, beside: int) -> Iterator[Move]:
    """Moves that bring a thing, alone or with a few beside it, to one that stands further right."""
    if beside > at + 1:
        yield at + 1, at + 1, beside + 1, True, False
        yield at, at, beside, True, False
    for few in range(1, FEW + 1):
        low = at - few + 1
        if low >= 0:
            if beside > at + 1:
                yield low, at + 1, beside, False, False
            yield low, at + 1, beside + 1, False, True
        if few > 1 and at + few <= beside:
            if at + few < beside:
                yield at, at + few, beside, False, True
            yield at, at + few, beside + 1, False, False


def _to_the_left(at: int, beside: int, count: int) -> Iterator[Move]:
    if at > beside + 1:
        yield beside, beside, at, True, False
        yield beside + 1, beside + 1, at + 1, True, False
    for few in range(1, FEW + 1):
        if at + few <= count:
            if at > beside + 1:
                yield beside + 1, at, at + few, False, False
            yield beside, at, at + few, True, False
        if few > 1 and at - few >= beside:
            low = at - few + 1
            if low > beside + 1:
                yield beside + 1, low, at + 1, True, False
            yield beside, low, at + 1, False, False


class _Tables:
    """Costs of neighbours, and of three steps after one another, as flat lists; a step is 0, 1 or 2: down, none, up."""

    __slots__ = ("beside", "count", "patterns", "steps")

    def __init__(self, costs: Costs) -> None:
        self.count = len(costs.beside)
        self.beside = [cost for row in costs.beside for cost in row]
        steps = costs.steps or tuple((0,) * self.count for _ in range(self.count))
        self.steps = [step + 1 for row in steps for step in row]
        self.patterns = [costs.pattern(a - 1, b - 1, c - 1) for a in range(3) for b in range(3) for c in range(3)]

    def _before(self, row: Sequence[int], low: int) -> int:
        """The two steps up to before a place, as one number."""
        last = self.steps[row[low - 2] * self.count + row[low - 1]] if low > 1 else 1
        return (self.steps[row[low - 3] * self.count + row[low - 2]] if low > 2 else 1) * 3 + last

    def cost(self, row: Sequence[int], low: int, things: Sequence[int]) -> float:
        """What things cost that follow what stands before a place."""
        beside, steps, patterns, count = self.beside, self.steps, self.patterns, self.count
        before, before_them = (row[low - 1], self._before(row, low)) if low else (-1, 4)
        cost = 0.0
        for thing in things:
            if before >= 0:
                pair = before * count + thing
                three = before_them * 3 + steps[pair]
                cost += beside[pair] + patterns[three]
                before_them = three % 9
            before = thing
        return cost

    def sum_up(self, row: Sequence[int], low: int, sums: list[float], patterns: list[float]) -> None:
        """Note what a row costs up to each place, from a place on."""
        before_them = self._before(row, low) if low else 4
        cost = sums[low]
        for place in range(low, len(row)):
            pattern = 0.0
            if place:
                pair = row[place - 1] * self.count + row[place]
                three = before_them * 3 + self.steps[pair]
                pattern = self.patterns[three]
                cost += self.beside[pair] + pattern
                before_them = three % 9
            patterns[place] = pattern
            sums[place + 1] = cost
