"""Titling: a text set as large as a panel allows, on as many lines as serve it best.

Sizes are settled by the ink: the highest and lowest ink of the lines and the widest line stay inside the
box, whatever marks and accents the text has. What is centred is the body of the letters, so that capitals,
small letters and accents keep one line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate

from .....ground.drawing import Canvas, Colour
from .....ground.geometry import Point, Rect, Size, Transform
from .....ground.typefaces import TextLine
from .....typesetting.lines.ideographs import has_ideographs
from .cut import Letters
from .lines import Lines, balanced
from .wording import units

__all__ = ["SUBTITLE", "Breaking", "Placed", "TextBlock", "breakings", "fewest_lines", "fit_text", "place_centred"]

LEADING = 1.16
"""Baseline to baseline, in ems."""

LEADING_OF_CAPITALS = 1.06
"""The same where no letter hangs under the line."""

SUBTITLE = 0.62
"""A subtitle is set in this share of the title's size."""

OVER_SUBTITLE = 0.12
"""A subtitle stands so many ems of the title further down than its own leading asks for."""

BELOW = 0.12
"""So many ems signs as wide as they are high reach under the line (OpenType, ideographic em-box)."""

MOST_LINES = 6


@dataclass(frozen=True, slots=True)
class TextBlock:
    """Lines centred on one another: the baseline of each lies `drops` mm under the first one's.

    `size` is the em of the largest; `above` and `below` are how far the block reaches over the first and under
    the last baseline, in mm.
    """

    lines: tuple[TextLine, ...]
    size: float
    drops: tuple[float, ...]
    above: float
    below: float

    @property
    def width(self) -> float:
        """The widest line in mm."""
        return max((line.width for line in self.lines), default=0.0)

    @property
    def height(self) -> float:
        """From the highest to the lowest that any ink reaches, as much over the letters as under them, in mm."""
        return self.above + self.below + self.drops[-1] if self.lines else 0.0


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
            first = self.block.height / 2 - self.block.above
            for line, drop in zip(self.block.lines, self.block.drops, strict=True):
                canvas.text(line, Point(-line.width / 2, first - drop), self.colour)


@dataclass(frozen=True, slots=True)
class Breaking:
    """A text on lines, before its size is settled: all measures are in ems.

    `shares` are the sizes of the lines; `wide` and `tall` is the box they fill, which reaches `above` the first
    and `below` the last baseline; `worth` tells from 1 down how well the lines break.
    """

    letters: Letters
    lines: tuple[str, ...]
    shares: tuple[float, ...]
    drops: tuple[float, ...]
    wide: float
    above: float
    below: float
    worth: float

    @property
    def tall(self) -> float:
        """From the highest to the lowest that any ink reaches."""
        return self.above + self.below + self.drops[-1]

    def at(self, size: float) -> TextBlock:
        """The lines with an em of so many mm."""
        return TextBlock(
            lines=tuple(
                TextLine(size * share, ((0.0, self.letters.shape(line)),))
                for line, share in zip(self.lines, self.shares, strict=True)
            ),
            size=size,
            drops=tuple(size * drop for drop in self.drops),
            above=size * self.above,
            below=size * self.below,
        )


def fit_text(
    letters: Letters,
    text: str,
    box: Size,
    largest: float,
    *,
    subtitle: str = "",
    gain: float = 1.0,
    small_lines: bool = False,
) -> TextBlock:
    """Set a text as large as the box and `largest` (the em, in mm) allow.

    Of all ways to break it at its spaces the one with the largest size wins, with as few lines as that size
    needs; a little size is given for lines that break well. A line more must make the text more than `gain`
    times larger. A subtitle stands under the text, smaller. `small_lines` are those of small words alone.
    """
    ways = breakings(letters, text, MOST_LINES, subtitle, small_lines=small_lines)
    if not ways:
        return TextBlock((), 0.0, (), 0.0, 0.0)
    sizes = [min(largest, box.width / max(way.wide, 1e-6), box.height / max(way.tall, 1e-6)) for way in ways]
    best = fewest_lines([size * way.worth for size, way in zip(sizes, ways, strict=True)], gain)
    return ways[best].at(sizes[best])


def fewest_lines(worths: Sequence[float], gain: float) -> int:
    """Which of several settings, those of fewer lines first, is best: a later one must be worth `gain` times more."""
    best = 0
    for number, worth in enumerate(worths):
        if worth > worths[best] * gain * 1.0001:
            best = number
    return best


@lru_cache(maxsize=4096)
def breakings(
    letters: Letters, text: str, most_lines: int = MOST_LINES, subtitle: str = "", *, small_lines: bool = False
) -> tuple[Breaking, ...]:
    """The best way to break a text into one line, into two, and so on; empty for an empty text.

    Small words may have lines of their own where `small_lines` says so.
    """
    found = []
    for lines in balanced(letters, units(text), most_lines, small_lines=small_lines):
        under = _under(letters, lines, subtitle) if subtitle else None
        found.append(_measured(letters, lines, under))
    return tuple(found)


def _under(letters: Letters, lines: Lines, subtitle: str) -> Lines:
    """A subtitle on as few lines as stay no wider than those of the title, or else on as many as it can have."""
    ways = balanced(letters, units(subtitle), 3)
    return next((way for way in ways if way.wide * SUBTITLE <= lines.wide), ways[-1])


def _measured(letters: Letters, lines: Lines, under: Lines | None) -> Breaking:
    every, shares = lines.texts, lines.shares
    if under:
        every, shares = (*every, *under.texts), (*shares, *(SUBTITLE for _ in under.texts))
    first_under = len(lines.texts)
    steps = (
        _step(letters, shares[number], every[number]) + (OVER_SUBTITLE if number == first_under else 0.0)
        for number in range(1, len(every))
    )
    drops = tuple(accumulate(steps, initial=0.0))
    above, below = letters.cap_height * shares[0], shares[-1] * _depth(letters, every[-1])
    set_lines = [(letters.shape(line), share, drop) for line, share, drop in zip(every, shares, drops, strict=True)]
    over = max(run.top * share - drop - above for run, share, drop in set_lines)
    under_it = max(drop - run.bottom * share - drops[-1] - below for run, share, drop in set_lines)
    beyond = max(0.0, over, under_it)
    return Breaking(
        letters=letters,
        lines=every,
        shares=shares,
        drops=drops,
        wide=max(run.width * share for run, share, _ in set_lines),
        above=above + beyond,
        below=below + beyond,
        worth=lines.worth * (under.worth if under else 1.0),
    )


def _step(letters: Letters, share: float, text: str) -> float:
    """From the baseline of the line before to that of a line of such a size, in ems of the title: what is free between
    the two is the same for lines of all sizes."""
    leading = LEADING_OF_CAPITALS if text.isupper() else LEADING
    return leading - letters.cap_height * (1.0 - share)


def _depth(letters: Letters, line: str) -> float:
    """How far letters hang under the line: the same for all lines that have small letters, so that rows align."""
    if has_ideographs(line):
        return BELOW
    return 0.0 if line.isupper() or line.isdigit() else -letters.shape("gpqy").bottom


def place_centred(block: TextBlock, box: Rect, colour: Colour, turned_deg: float = 0.0) -> Placed:
    """The block in the middle of a box."""
    return Placed(block, box.centre, colour, turned_deg)
