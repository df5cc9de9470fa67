"""Sticks laid out on the lengths in which strip is sold, on as few of these as can be.

The one-dimensional cutting problem. Of n sticks from one length L, with a saw kerf k between two, the sum of all
lengths and of n − 1 kerfs is at most L. Few sticks are parted exactly, by trying all ways to fill a length that no
other way betters; of many, fillings are chosen by prices that rise for what is hard to place.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from math import ceil

__all__ = ["fewest_lengths", "laid_on_lengths"]

Filling = tuple[float, ...]
"""The sticks of one length, the longest first, in mm."""

NOISE = 1e-6
"""Floats that differ by less are alike, in mm."""

MOST_FILLINGS, MOST_STEPS, MOST_ROUNDS = 4_000, 40_000, 60
"""So many fillings are looked at, so many steps are searched, so often are prices corrected."""


def fewest_lengths(sticks: Sequence[float], sold: float, kerf: float = 0.0) -> int:
    """No layout takes fewer lengths than this: all sticks with their kerfs, over a length with one.

    >>> fewest_lengths([300, 300, 300], 600, 1)
    2
    """
    return ceil(sum(stick + kerf for stick in sticks) / (sold + kerf) - NOISE)


def laid_on_lengths(sticks: Iterable[float], sold: float, kerf: float = 0.0) -> tuple[Filling, ...]:
    """The sticks of each length that is used, all in mm; the fullest first.

    >>> laid_on_lengths([400, 300, 200, 299], 600, 1)
    ((300, 299), (400,), (200,))
    >>> laid_on_lengths([398, 299, 200, 300], 600, 1)
    ((300, 299), (398, 200))

    Raises:
        ValueError: a stick is longer than what is sold.
    """
    ordered = sorted(sticks, reverse=True)
    if ordered and ordered[0] > sold + NOISE:
        raise ValueError(f"{ordered[0]:g} mm is longer than the {sold:g} mm that are sold")
    room, wanted = sold + kerf, Counter(ordered)
    best: Sequence[Filling] = _first_fit(ordered, room, kerf)
    least = fewest_lengths(ordered, sold, kerf)
    if len(best) > least:
        best = min(best, _by_prices(wanted, room, kerf, least), key=len)
    if len(best) > least:
        best = _searched(wanted, room, kerf, least, best)
    return tuple(sorted(best, key=lambda filling: (-sum(filling), filling)))


def _first_fit(ordered: Sequence[float], room: float, kerf: float) -> list[Filling]:
    """Each stick, the longest first, on the first length that has room for it."""
    found: list[list[float]] = []
    left: list[float] = []
    for stick in ordered:
        takes = stick + kerf
        at = next((at for at, free in enumerate(left) if takes <= free + NOISE), len(found))
        if at == len(found):
            found.append([])
            left.append(room)
        found[at].append(stick)
        left[at] -= takes
    return [tuple(filling) for filling in found]


def _fillings(wanted: Mapping[float, int], room: float, kerf: float) -> Iterator[Filling]:
    """All ways to fill a length to which nothing can be added that is wanted."""
    sizes = sorted((size for size, count in wanted.items() if count), reverse=True)

    def filled(at: int, free: float, taken: Filling) -> Iterator[Filling]:
        if at == len(sizes):
            used = Counter(taken)
            if taken and all(used[size] == wanted[size] or size + kerf > free + NOISE for size in sizes):
                yield taken
            return
        takes = sizes[at] + kerf
        for count in range(min(wanted[sizes[at]], int((free + NOISE) // takes)), -1, -1):
            yield from filled(at + 1, free - count * takes, (*taken, *(sizes[at],) * count))

    yield from filled(0, room, ())


def _by_prices(wanted: Counter[float], room: float, kerf: float, least: int) -> list[Filling]:
    """The best of some layouts, each made by filling lengths with what is worth most.

    After each, the price of a stick goes towards its length and its share of what was wasted beside it, so that what
    was left for the end is placed sooner the next time (sequential value correction, Belov and Scheithauer 2007).
    """
    every = _few(_fillings(wanted, room, kerf), MOST_FILLINGS)
    prices = {size: size + kerf for size in wanted}
    best: list[Filling] = []
    for _ in range(MOST_ROUNDS):
        left, made = wanted.copy(), list[Filling]()
        while left.total():
            usable = [one for one in every if all(left[size] >= count for size, count in Counter(one).items())]
            usable = usable or _few(_fillings(left, room, kerf), MOST_FILLINGS)
            choice = max(usable, key=lambda one: (sum(prices[size] for size in one), one))
            often = max(1, min(left[size] // count for size, count in Counter(choice).items()) // 2)
            for size in choice:
                left[size] -= often
            made += [choice] * often
            used = sum(size + kerf for size in choice)
            for size in set(choice):
                prices[size] = (prices[size] + (size + kerf) * room / used * (1 + 0.02 * len(made) / least)) / 2
        if not best or len(made) < len(best):
            best = made
        if len(best) <= least:
            break
    return best


def _few(fillings: Iterator[Filling], most: int) -> list[Filling]:
    return [filling for filling, _ in zip(fillings, range(most), strict=False)]


def _searched(
    wanted: Counter[float], room: float, kerf: float, least: int, known: Sequence[Filling]
) -> Sequence[Filling]:
    """A layout on fewer lengths than a known one, if the search finds one before its steps are used up."""
    steps = MOST_STEPS
    best = list(known)

    def search(left: Counter[float], made: list[Filling]) -> None:
        nonlocal steps, best
        steps -= 1
        if not left.total():
            if len(made) < len(best):
                best = list(made)
            return
        still = ceil(sum((size + kerf) * count for size, count in left.items()) / room - NOISE)
        if steps < 0 or len(best) <= least or len(made) + still >= len(best):
            return
        longest = max(size for size, count in left.items() if count)
        ways = [one for one in _few(_fillings(left, room, kerf), MOST_FILLINGS) if one[0] == longest]
        for filling in sorted(ways, key=sum, reverse=True):
            search(left - Counter(filling), [*made, filling])

    search(wanted.copy(), [])
    return best
