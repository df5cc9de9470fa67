"""One of several lengths for each of many things, so that their sum comes as near to a limit as it can.

Which sums the things from a place on can have is a set of bits, one a unit, worked out from the end (R. Bellman's
dynamic programming of the subset sum, as in S. Martello and P. Toth, Knapsack Problems, 1990, ch. 4, from memory).
A walk from the beginning then never leaves what can still be completed; of what is left to it, it takes what lies
nearest to a wish, and nothing twice. So the sum is the best there is, unless the walk is cut short.
"""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import reduce
from math import gcd, inf

__all__ = ["Chosen", "best_choice"]

MOST_STEPS, MOST_TO_A_SUM = 150_000, 5000
"""So many steps all walks to unlike lengths may take, and one to a single sum; one that finds its way at once, as on a
filled shelf of 300 books, takes about as many as it has books."""

SHORTEST_RUN = 8
"""So many options in a row are shifted by doubling."""


@dataclass(frozen=True, slots=True)
class Chosen:
    """What was chosen for each; `proved`: no choice comes nearer, with no two alike unless `twins` could not be helped.

    `proved` is False only where the walk was cut short.
    """

    lengths: tuple[int, ...]
    twins: bool = False
    proved: bool = True


def best_choice(
    options: Sequence[Sequence[int]],
    limit: int,
    wishes: Sequence[float] = (),
    *,
    unlike: bool = True,
    taken: Sequence[int] = (),
    gap: int = 1,
) -> Chosen | None:
    """One option for each thing, their sum the largest that is no more than the limit; None if all are more.

    Among choices of that sum it takes one near the wishes. With `unlike` no two things get the same length, nor one
    that is `taken`, and they keep a `gap` where they can; where there is no such choice, twins are made.

    >>> best_choice([[0, 4], [0, 5], [0, 6], [0, 7], [0, 8]], 15, unlike=False).lengths
    (0, 0, 0, 7, 8)
    """
    unit = reduce(gcd, (length for own in options for length in own), 0) or 1
    small = [sorted({length // unit for length in own}) for own in options]
    order = sorted(range(len(small)), key=lambda number: len(small[number]))
    walk = _Walk([small[number] for number in order], limit // unit)
    if not walk.sums[0]:
        return None
    wanted = [(wishes[number] if wishes else max(options[number])) / unit for number in order]
    # lengths that are taken may lie between the units
    beside = [length / unit for length in taken]
    found = walk.unlike(wanted, beside, gap / unit) if unlike else None
    lengths = found or walk.nearest(wanted)
    back = dict(zip(order, lengths, strict=True))
    return Chosen(
        lengths=tuple(back[number] * unit for number in range(len(small))),
        twins=unlike and found is None,
        proved=not walk.cut_short,
    )


class _Walk:
    """What can still be completed, and the walks through it; all in units."""

    def __init__(self, options: Sequence[Sequence[int]], limit: int) -> None:
        self.options, self.limit, self.steps, self.cut_short = options, limit, 0, False
        mask = (1 << (limit + 1)) - 1 if limit >= 0 else 0
        sums = [1 & mask]
        for own in reversed(options):
            sums.append(_shifted(sums[-1], own) & mask)
        self.sums = sums[::-1]

    def nearest(self, wishes: Sequence[float]) -> list[int]:
        """The best sum, whether or not some are alike."""
        total = self.sums[0].bit_length() - 1
        found = next(self._through(total, wishes, [], 0.0, inf), None)
        assert found is not None  # the sum was reached without looking at likeness
        return found

    def unlike(self, wishes: Sequence[float], taken: Sequence[float], gap: float) -> list[int] | None:
        """The best sum of lengths of which no two are alike; None if there is none, or none was found in time."""
        sums = self.sums[0]
        while sums and self.steps <= MOST_STEPS:
            total = sums.bit_length() - 1
            until = self.steps + MOST_TO_A_SUM
            found = next(self._through(total, wishes, sorted(taken), gap, until), None)
            if found:
                return found
            self.cut_short |= self.steps > until
            sums ^= 1 << total
        self.cut_short |= bool(sums)
        return None

    def _through(
        self, total: int, wishes: Sequence[float], taken: list[float], gap: float, until: float
    ) -> Iterator[list[int]]:
        """The ways to a sum, depth first, without calls in calls, until so many steps were taken."""
        count, alike = len(self.options), gap == 0.0
        rest = [sum(wishes[number:]) for number in range(count + 1)]
        lengths: list[int] = []
        branches: list[Iterator[int]] = []
        left = total
        while True:
            number = len(lengths)
            if number == count:
                yield list(lengths)
            elif len(branches) == number:
                # what the wishes are off in all is shared by those that are left
                target = wishes[number] + (left - rest[number]) / (count - number)
                branches.append(self._ordered(number, target, left, [] if alike else taken, gap))
            following = next(branches[-1], None) if len(branches) > len(lengths) else None
            if following is None:
                if len(branches) > len(lengths):
                    branches.pop()
                if not lengths or self.steps > until:
                    return
                last = lengths.pop()
                left += last
                if not alike:
                    taken.remove(last)
                continue
            self.steps += 1
            lengths.append(following)
            left -= following
            if not alike:
                insort(taken, following)

    def _ordered(self, number: int, target: float, left: int, taken: Sequence[float], gap: float) -> Iterator[int]:
        """The options that can be completed, the nearest to a target first, those too near to others last."""
        held = tuple(taken)
        completed = self.sums[number + 1]
        close: list[int] = []
        for length in _from_the_nearest(self.options[number], target):
            if length > left or not completed >> (left - length) & 1:
                continue
            distance = _distance(length, held)
            if distance >= gap:
                yield length
            elif distance > 0:
                close.append(length)
        yield from close


def _from_the_nearest(lengths: Sequence[int], target: float) -> Iterator[int]:
    above = bisect_left(lengths, target)
    below = above - 1
    while below >= 0 or above < len(lengths):
        if above == len(lengths) or (below >= 0 and target - lengths[below] <= lengths[above] - target):
            yield lengths[below]
            below -= 1
        else:
            yield lengths[above]
            above += 1


def _distance(length: float, taken: Sequence[float]) -> float:
    """From the nearest of some lengths in their order."""
    at = bisect_left(taken, length)
    return min((abs(length - other) for other in taken[max(0, at - 1) : at + 1]), default=float("inf"))


def _shifted(sums: int, options: Sequence[int]) -> int:
    """All sums with each of the options added; options in a row by doubling."""
    found, start = 0, 0
    while start < len(options):
        end = start
        while end + 1 < len(options) and options[end + 1] == options[end] + 1:
            end += 1
        if end - start < SHORTEST_RUN:
            for length in options[start : end + 1]:
                found |= sums << length
        else:
            found |= _smeared(sums, end - start + 1) << options[start]
        start = end + 1
    return found


def _smeared(sums: int, count: int) -> int:
    """The sums with 0, 1 … up to count − 1 added."""
    done = 1
    while done < count:
        step = min(done, count - done)
        sums |= sums << step
        done += step
    return sums
