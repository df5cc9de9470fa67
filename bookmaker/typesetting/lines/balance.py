"""Balanced lines: what stands in the middle of a page, on lines about equally long that end where the sense allows."""

from __future__ import annotations

from collections.abc import Sequence

__all__ = ["LEANING", "TIE", "balanced", "leans"]

LONGEST_LEANING = 3
"""Articles, prepositions and the like have so few letters that go with the word after them."""

LEANING, TIE = 0.2, 4.0
"""What a line costs that ends in such a word, or between words that go together; shares of the measure's square."""


def leans(word: str, *, first: bool) -> bool:
    """Whether a word goes with the one after it: a short one in small letters, or at the beginning.

    >>> leans("of", first=False), leans("The", first=True), leans("Salt", first=True), leans("it,", first=False)
    (True, True, False, False)
    """
    return len(word) <= LONGEST_LEANING and word.isalpha() and (first or word.islower())


def balanced(widths: Sequence[float], space: float, measure: float, leaning: Sequence[float]) -> list[int]:
    """Words on as few lines as the measure allows: for each line, the place after its last word.

    The sum of the squares of the lines is least, which makes them equal; a word that leans is better not the last.
    Rather than between words that go together, one line more is begun.

    >>> balanced([1, 4, 2, 3, 4, 5], 1, 17, [LEANING, 0, LEANING, LEANING, 0, 0])
    [2, 6]
    """
    count = len(widths)
    best: list[tuple[int, float, int]] = [(0, 0.0, 0)]
    for end in range(1, count + 1):
        ways: list[tuple[int, float, int]] = []
        width = -space
        for start in range(end - 1, -1, -1):
            width += space + widths[start]
            if width > measure and ways:
                break
            lines, cost, _ = best[start]
            own = leaning[end - 1] * measure**2 if end < count else 0.0
            ways.append((lines + 1 + (end < count and leaning[end - 1] >= TIE), cost + width**2 + own, start))
        best.append(min(ways))
    ends, end = [], count
    while end:
        ends.append(end)
        end = best[end][2]
    return ends[::-1]
