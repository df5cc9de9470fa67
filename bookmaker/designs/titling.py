"""Titling: a text set as large as a panel allows, on as many lines as serve it best.

Sizes are settled by the ink: the highest and lowest ink of the lines and the widest line stay inside the
box, whatever marks and accents the text has.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from ..drawing import Canvas, Colour
from ..geometry import Point, Rect, Size, Transform
from ..typefaces import TextLine, Typeface, set_line
from .wording import grace, units

__all__ = ["Placed", "TextBlock", "fit_text", "place_centred"]

LEADING = 1.16
"""Baseline to baseline, in ems."""

MOST_LINES = 6


@dataclass(frozen=True, slots=True)
class TextBlock:
    """Lines of one size, centred on one another; baselines step down from the first by `leading` mm.

    `above` and `below` are how far ink reaches over the first and under the last baseline, in mm.
    """

    lines: tuple[TextLine, ...]
    size: float
    leading: float
    above: float
    below: float

    @property
    def width(self) -> float:
        """The widest line in mm."""
        return max((line.width for line in self.lines), default=0.0)

    @property
    def height(self) -> float:
        """From the highest to the lowest ink in mm."""
        return self.above + self.below + self.leading * (len(self.lines) - 1) if self.lines else 0.0


@dataclass(frozen=True, slots=True)
class Placed:
    """A block of text in a panel: the art that draws it."""

    block: TextBlock
    centre: Point
    colour: Colour
    turned_deg: float = 0.0

    def draw(self, canvas: Canvas) -> None:
        """Draw the lines about their common centre."""
        with canvas.placed(Transform.turn(self.turned_deg).moved(*self.centre)):
            baseline = self.block.height / 2 - self.block.above
            for line in self.block.lines:
                canvas.text(line, Point(-line.width / 2, baseline), self.colour)
                baseline -= self.block.leading


def fit_text(
    typeface: Typeface, text: str, box: Size, largest: float, most_lines: int = MOST_LINES, gain: float = 1.0
) -> TextBlock:
    """Set a text as large as the box and `largest` (the em, in mm) allow.

    Of all ways to break it at its spaces into at most `most_lines` lines the one with the largest size
    wins, with as few lines as that size needs; a little size is given for lines that break well. A line more
    must make the text more than `gain` times larger.
    """
    words = units(text)
    best: tuple[float, float, tuple[str, ...]] = (0.0, 0.0, ())
    for count in range(1, min(most_lines, len(words)) + 1):
        lines = _balanced(typeface, tuple(words), count)
        size = min(largest, _largest_size(typeface, lines, box))
        worth = size * grace(lines)
        if worth > best[0] * gain * 1.0001:
            best = (worth, size, lines)
    return _set(typeface, best[2], best[1])


def _set(typeface: Typeface, lines: Sequence[str], size: float) -> TextBlock:
    if not lines:
        return TextBlock((), size, size * LEADING, 0.0, 0.0)
    return TextBlock(
        lines=tuple(set_line(typeface, size, line) for line in lines),
        size=size,
        leading=size * LEADING,
        above=size * _above(typeface, lines[0]),
        below=size * _below(typeface, lines[-1]),
    )


def _largest_size(typeface: Typeface, lines: Sequence[str], box: Size) -> float:
    """The em in mm at which the lines just fill the box one way."""
    widest = max(typeface.shape(line).width for line in lines)
    tall = _above(typeface, lines[0]) + _below(typeface, lines[-1]) + LEADING * (len(lines) - 1)
    return min(box.width / max(widest, 1e-6), box.height / max(tall, 1e-6))


def _above(typeface: Typeface, line: str) -> float:
    """How far a line reaches over its baseline, in ems: at least a capital's height."""
    return max(typeface.cap_height, typeface.shape(line).top)


def _below(typeface: Typeface, line: str) -> float:
    """How far a line reaches under its baseline, in ems; the same for all Latin lines, so that rows align."""
    return max(-typeface.shape("gpqy").bottom, -typeface.shape(line).bottom)


@lru_cache(maxsize=4096)
def _balanced(typeface: Typeface, words: tuple[str, ...], count: int) -> tuple[str, ...]:
    """The words on exactly `count` lines with the widest line as narrow as can be."""
    widths = [typeface.shape(word).width for word in words]
    space = typeface.shape(" ").width
    reach = [0.0]
    for width in widths:
        reach.append(reach[-1] + width + space)

    def line_width(start: int, end: int) -> float:
        return reach[end] - reach[start] - space

    best = [[float("inf")] * (len(words) + 1) for _ in range(count + 1)]
    cut = [[0] * (len(words) + 1) for _ in range(count + 1)]
    best[0][0] = 0.0
    for row in range(1, count + 1):
        for end in range(row, len(words) + 1):
            for start in range(row - 1, end):
                ends_well = grace((" ".join(words[start:end]), "")) if end < len(words) else 1.0
                widest = max(best[row - 1][start], line_width(start, end) / ends_well)
                if widest < best[row][end]:
                    best[row][end], cut[row][end] = widest, start
    return _lines_by_cuts(words, cut, count)


def _lines_by_cuts(words: tuple[str, ...], cut: list[list[int]], count: int) -> tuple[str, ...]:
    lines: list[str] = []
    end = len(words)
    for row in range(count, 0, -1):
        start = cut[row][end]
        lines.append(" ".join(words[start:end]))
        end = start
    return tuple(reversed(lines))


def place_centred(block: TextBlock, box: Rect, colour: Colour, turned_deg: float = 0.0) -> Placed:
    """The block in the middle of a box."""
    return Placed(block, box.centre, colour, turned_deg)
