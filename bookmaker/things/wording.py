"""Numbers and lists in words, as the steps of the guide say them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby

from ..ground.geometry import Size
from ..ground.told import figure, unit

__all__ = ["as_list", "in_words", "long", "measured_in_parts", "numbered", "numbers", "sides", "thick", "with_article"]

WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


def long(length: float) -> str:
    """A length to a tenth of a millimetre.

    >>> long(21), long(4.305)
    ('21.0 mm', '4.3 mm')
    """
    return f"{figure(length, 1)} {unit()}"


def thick(length: float) -> str:
    """A thickness to a hundredth of a millimetre, as `check` shows it.

    >>> thick(4.14)
    '4.14 mm'
    """
    return f"{figure(length)} {unit()}"


def sides(size: Size) -> str:
    """Two sides to a tenth of a millimetre: width × height, as sheets of paper are named.

    >>> sides(Size(15, 21))
    '15.0 × 21.0 mm'
    """
    return f"{figure(size.width, 1)} × {figure(size.height, 1)} {unit()}"


def with_article(noun: str) -> str:
    """A noun with the article that it takes, as it is spoken.

    >>> with_article("tray"), with_article("envelope")
    ('a tray', 'an envelope')
    """
    return f"{'an' if noun[:1].casefold() in tuple('aeio') else 'a'} {noun}"


def in_words(number: int) -> str:
    """Small numbers in words.

    >>> in_words(2), in_words(48)
    ('two', '48')
    """
    return WORDS[number] if 0 <= number < len(WORDS) else str(number)


def as_list(parts: Sequence[str]) -> str:
    """Several things in a row.

    >>> as_list(["a"]), as_list(["a", "b"]), as_list(["a", "b", "c"])
    ('a', 'a and b', 'a, b and c')
    """
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"


def numbers(values: Iterable[int]) -> str:
    """Numbers in order, runs of three and more shortened.

    >>> numbers([1, 2, 3, 5, 6, 8])
    '1 to 3, 5, 6 and 8'
    """
    runs: list[list[int]] = []
    for _, group in groupby(enumerate(sorted(set(values))), key=lambda item: item[1] - item[0]):
        run = [value for _, value in group]
        runs += [run] if len(run) > 2 else [[value] for value in run]
    return as_list([f"{run[0]} to {run[-1]}" if len(run) > 1 else str(run[0]) for run in runs])


def numbered(what: str, values: Iterable[int]) -> str:
    """Things that go by numbers.

    >>> numbered("sheet", [2]), numbered("sheet", [1, 2])
    ('sheet 2', 'sheets 1 and 2')
    """
    some = set(values)
    return f"{what}{'s' if len(some) > 1 else ''} {numbers(some)}"


def measured_in_parts(lengths: Sequence[float]) -> str:
    """How long several parts are, equal ones together.

    >>> measured_in_parts([150, 150, 120]), measured_in_parts([90, 90])
    ('150.0 mm (2 of them) and 120.0 mm', '90.0 mm')
    """
    counts: dict[str, int] = {}
    for length in lengths:
        counts[long(length)] = counts.get(long(length), 0) + 1
    if len(counts) == 1:
        return long(lengths[0])
    return as_list([f"{length} ({count} of them)" if count > 1 else length for length, count in counts.items()])
