"""Balanced lines: what stands in the middle of a page, on lines about equally long that end where the sense allows."""

from __future__ import annotations

from collections.abc import Sequence

__all__ = ["balanced", "leans"]

LONGEST_LEANING = 3
"""Articles, prepositions and the like have so few letters that go with the word after them."""

LEANING_COST = 0.2
"""What a line costs that ends in such a word, as a share of the square of the measure."""


def leans(word: str, *, first: bool) -> bool:
    """Whether a word goes with the one after it: a short one in small letters, or at the beginning.

    >>> leans("of", first=False), leans("The", first=True), leans("Salt", first=True), leans("it,", first=False)
    (True, True, False, False)
    """
    return len(word) <= LONGEST_LEANING and word.isalpha() and (first or word.islower())


def balanced(widths: Sequence[float], space: float, measure: float, leaning: Sequence[bool]) -> list[int]:
    """Words on as few lines as the measure allows: for each line, the place after its last word.

    The sum of the squares of the lines is least, which makes them equal; a word that leans is better not the last.

    >>> balanced([1, 4, 2, 3, 4, 5], 1, 17, [True, False, True, True, False, False])
    [2, 6]
    """
    count = len(widths)
    best: list[tuple[int, float, int]] = [(0, 0.0, 0)]
    for end in range(1, count + 1):
        ways: list[tuple[int, float, int]] = []
        for start in range(end - 1, -1, -1):
            width = sum(widths[start:end]) + space * (end - start - 1)
            if width > measure and ways:
                break
            lines, cost, _ = best[start]
            leaning_cost = LEANING_COST * measure**2 if leaning[end - 1] and end < count else 0.0
            ways.append((lines + 1, cost + width**2 + leaning_cost, start))
        best.append(min(ways))
    ends, end = [], count
    while end:
        ends.append(end)
        end = best[end][2]
    return ends[::-1]
