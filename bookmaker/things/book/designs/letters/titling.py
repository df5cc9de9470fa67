"""Titling: a text set as large as a panel allows, on as many lines as serve it best.

Sizes are settled by the ink: the highest and lowest ink of the lines and the widest line stay inside the
box, whatever marks and accents the text has. What is centred is the body of the letters, so that capitals,
small letters and accents keep one line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate, pairwise

from .....ground.drawing import Canvas, Colour
from .....ground.geometry import Point, Rect, Size, Transform
from .....ground.typefaces import TextLine
from .....typesetting.lines.ideographs import has_ideographs
from .cut import Letters
from .wording import ends_well, grace, units

__all__ = ["Breaking", "Placed", "TextBlock", "breakings", "fewest_lines", "fit_text", "place_centred"]

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
    letters: Letters, text: str, box: Size, largest: float, *, subtitle: str = "", gain: float = 1.0
) -> TextBlock:
    """Set a text as large as the box and `largest` (the em, in mm) allow.

    Of all ways to break it at its spaces the one with the largest size wins, with as few lines as that size
    needs; a little size is given for lines that break well. A line more must make the text more than `gain`
    times larger. A subtitle stands under the text, smaller.
    """
    ways = breakings(letters, text, MOST_LINES, subtitle)
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
def breakings(letters: Letters, text: str, most_lines: int = MOST_LINES, subtitle: str = "") -> tuple[Breaking, ...]:
    """The best way to break a text into one line, into two, and so on; empty for an empty text."""
    words = units(text)
    counts = range(1, min(most_lines, len(words)) + 1)
    found = []
    for lines in (_balanced(letters, words, count) for count in counts):
        under = _under(letters, lines, subtitle) if subtitle else ()
        found.append(_measured(letters, lines, under))
    return tuple(found)


def _under(letters: Letters, lines: tuple[str, ...], subtitle: str) -> tuple[str, ...]:
    """A subtitle on as few lines as stay no wider than those of the title, or else on as many as it can have."""
    room = max(letters.shape(line).width for line in lines) / SUBTITLE
    words = units(subtitle)
    ways = [_balanced(letters, words, count) for count in range(1, min(3, len(words)) + 1)]
    return next((way for way in ways if max(letters.shape(line).width for line in way) <= room), ways[-1])


def _measured(letters: Letters, lines: tuple[str, ...], under: tuple[str, ...]) -> Breaking:
    every, shares = (*lines, *under), (*(1.0 for _ in lines), *(SUBTITLE for _ in under))
    steps = (_step(upper, lower, every[number]) for number, (upper, lower) in enumerate(pairwise(shares)))
    drops = tuple(accumulate(steps, initial=0.0))
    above, below = letters.cap_height, shares[-1] * _depth(letters, every[-1])
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
        worth=grace(lines) * grace(under),
    )


def _step(upper: float, lower: float, text: str) -> float:
    """From the baseline of a line to that of the next, in ems of the title; both come with their sizes."""
    leading = LEADING_OF_CAPITALS if text.isupper() else LEADING
    return lower * leading + (OVER_SUBTITLE if lower < upper else 0.0)


def _depth(letters: Letters, line: str) -> float:
    """How far letters hang under the line: the same for all lines that have small letters, so that rows align."""
    if has_ideographs(line):
        return BELOW
    return 0.0 if line.isupper() or line.isdigit() else -letters.shape("gpqy").bottom


@dataclass(frozen=True, slots=True)
class Broken:
    """Words on lines so far: the widest line, how well they break, how uneven they are."""

    lines: tuple[str, ...] = ()
    wide: float = 0.0
    worth: float = 1.0
    uneven: float = 0.0

    def longer(self, line: str, wide: float, worth: float) -> Broken:
        """With one line more."""
        return Broken((*self.lines, line), max(self.wide, wide), self.worth * worth, self.uneven + wide * wide)

    @property
    def cost(self) -> tuple[float, float]:
        """The narrower it would be if it broke well, the better; then the more alike its lines are."""
        return self.wide / self.worth, self.uneven


@lru_cache(maxsize=4096)
def _balanced(letters: Letters, words: tuple[str, ...], count: int) -> tuple[str, ...]:
    """The words on exactly `count` lines: the widest as narrow as can be where lines break well, none much shorter."""
    reach = list(accumulate((letters.shape(word).width + letters.shape(" ").width for word in words), initial=0.0))
    so_far: list[list[Broken]] = [[Broken()], *([] for _ in words)]
    for row in range(count):
        longer: list[list[Broken]] = [[] for _ in so_far]
        for start in range(row, len(words)):
            for end in [len(words)] if row == count - 1 else range(start + 1, len(words)):
                line, wide = " ".join(words[start:end]), reach[end] - reach[start] - letters.shape(" ").width
                worth = ends_well(line) if end < len(words) else 1.0
                longer[end] += [broken.longer(line, wide, worth) for broken in so_far[start]]
        so_far = [_undominated(ways) for ways in longer]
    return min(so_far[-1], key=lambda broken: broken.cost).lines


def _undominated(ways: list[Broken]) -> list[Broken]:
    """Those ways that no other beats in both width and worth."""
    kept: list[Broken] = []
    for way in sorted(ways, key=lambda way: (way.wide, -way.worth, way.uneven)):
        if not kept or way.worth > kept[-1].worth:
            kept.append(way)
    return kept


def place_centred(block: TextBlock, box: Rect, colour: Colour, turned_deg: float = 0.0) -> Placed:
    """The block in the middle of a box."""
    return Placed(block, box.centre, colour, turned_deg)
