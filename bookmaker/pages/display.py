"""Lines that stand for themselves: titles, captions, imprints. Broken at their spaces, made smaller if they must."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from ..drawing import BLACK, Canvas, Colour
from ..geometry import Point
from ..typefaces import TextLine, Typeface
from .punctuation import with_apostrophes

__all__ = ["LEADING", "Displayed", "broken", "centred"]

LEADING = 1.22
"""From line to line, in ems."""

SHRINK = 0.94
"""Lines that do not fit are tried again so much smaller."""


EVENING_STEPS = 10
"""Halvings in the search for the narrowest measure: to a thousandth of the widest line."""


@dataclass(frozen=True, slots=True)
class Displayed:
    """Lines of type, each with the left end of its baseline."""

    lines: tuple[tuple[TextLine, Point], ...]
    colour: Colour = BLACK

    def draw(self, canvas: Canvas) -> None:
        """Set the lines."""
        for line, at in self.lines:
            canvas.text(line, at, self.colour)


def broken(
    typeface: Typeface,
    text: str,
    size: float,
    measure: float,
    most_lines: int,
    *,
    right_to_left: bool = False,
    even: bool = True,
) -> tuple[TextLine, ...]:
    """A text on as few lines of `measure` mm as `size` (the em in mm) needs: about equally long, or each full.

    If that takes more than `most_lines`, or a word is wider than the measure, the size is made smaller.
    """
    words = with_apostrophes(text, typeface.covers).split()
    if not words:
        return ()

    def width(line: str) -> float:
        return typeface.shape(line, right_to_left=right_to_left).width

    while True:
        lines = list(_filled(words, width, measure / size))
        if len(lines) <= most_lines and all(width(line) * size <= measure + 1e-9 for line in lines):
            break
        size *= SHRINK
    if even:
        lines = _evened(words, width, lines)
    return tuple(TextLine(size, ((0.0, typeface.shape(line, right_to_left=right_to_left)),)) for line in lines)


def centred(
    lines: tuple[TextLine, ...], middle: float, first_baseline: float, colour: Colour = BLACK
) -> Displayed:
    """Lines one below the other about an upright axis, in mm."""
    placed = (
        (line, Point(middle - line.width / 2, first_baseline - number * LEADING * line.size))
        for number, line in enumerate(lines)
    )
    return Displayed(tuple(placed), colour)


def _filled(words: Sequence[str], width: Callable[[str], float], measure: float) -> Iterator[str]:
    """Each line as full as it goes; a word wider than the measure has a line of its own."""
    line = words[0]
    for word in words[1:]:
        longer = f"{line} {word}"
        if width(longer) <= measure + 1e-9:
            line = longer
        else:
            yield line
            line = word
    yield line


def _evened(words: Sequence[str], width: Callable[[str], float], lines: list[str]) -> list[str]:
    """The same number of lines, filled to the narrowest measure that still gives so many."""
    narrow, wide = 0.0, max(map(width, lines))
    for _ in range(EVENING_STEPS if len(lines) > 1 else 0):
        middle = (narrow + wide) / 2
        tried = list(_filled(words, width, middle))
        if len(tried) <= len(lines) and max(map(width, tried)) <= middle + 1e-9:
            wide, lines = middle, tried
        else:
            narrow = middle
    return lines
