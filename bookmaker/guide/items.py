"""What a page of the guide is made of: headings, paragraphs, steps to tick, drawings.

Every item knows how high it is in a given width, and how to draw itself below a point. All lengths are mm.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from ..ground.art import Group, Tagged, Written
from ..ground.drawing import BLACK, Art, Colour, Pen, Role, Tag
from ..ground.geometry import Point, Rect, Transform
from ..ground.typefaces import TextLine
from ..things.making import Figure
from ..things.views.ink import GREY, HAIRLINE, box, line
from .wrapping import wrapped

__all__ = [
    "Beside",
    "Caution",
    "Gap",
    "Heading",
    "Item",
    "Paragraph",
    "Space",
    "Tick",
    "figure_room",
    "lines_below",
    "tick_box",
]

BODY, LEADING = 3.2, 4.15
"""The em of the text, 9 pt, and the distance of its lines."""

SMALL, SMALL_LEADING = 2.7, 3.6
"""The same for captions and rows of tables."""

BOX, BOX_ROOM = 2.8, 5.5
"""A box to tick, and the room it takes beside its step."""

AFTER = 0.8
"""Between one item and the next."""

BETWEEN, WIDE_ENOUGH = 6.0, 150.0
"""Between drawings side by side, and the width of a page that holds two of them."""

BOX_PEN = Pen(0.18)

ROLES = {1: Role.TITLE, 2: Role.HEADING}
"""What headings are by their level; those below are small ones."""


class Item(Protocol):
    """A part of a page; one that `leads` is not left alone at the foot of a page."""

    @property
    def leads(self) -> bool:
        """Whether it belongs to what follows."""

    def height(self, width: float) -> float:
        """How high it is, with the space below it."""

    def below(self, corner: Point, width: float) -> Art:
        """Its art, with its upper left corner at a point."""


def lines_below(corner: Point, lines: Sequence[TextLine], leading: float, colour: Colour = BLACK) -> Group:
    """Lines of text below a point."""
    down = ((line, number * leading - 0.36 * line.size) for number, line in enumerate(lines, start=1))
    return Group(tuple(Written(line, corner.plus(0, -drop), colour) for line, drop in down))


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; `level` 1 is the largest."""

    text: str
    level: int = 2
    leads: bool = True

    @property
    def _size(self) -> float:
        return {1: 6.2, 2: 4.0}.get(self.level, 3.2)

    @property
    def _above(self) -> float:
        return 0.0 if self.level == 1 else self._size * 0.4

    def height(self, width: float) -> float:
        """Its lines, with space above and below."""
        return self._above + len(self._lines(width)) * self._size * 1.25 + self._size * 0.3

    def below(self, corner: Point, width: float) -> Art:
        """Its lines, some space down."""
        lines = lines_below(corner.plus(0, -self._above), self._lines(width), self._size * 1.25)
        return Tagged(lines, Tag(ROLES.get(self.level, Role.SMALL_HEADING), self.text))

    def _lines(self, width: float) -> Sequence[TextLine]:
        return wrapped(self.text, "sans bold", self._size, width)


@dataclass(frozen=True, slots=True)
class Gap:
    """White between two chapters, with a line across it."""

    space: float
    leads: bool = True

    def height(self, width: float) -> float:  # noqa: ARG002 - as high in any width
        """The white."""
        return self.space

    def below(self, corner: Point, width: float) -> Art:
        """The line, in the middle of the white."""
        y = corner.y - self.space / 2
        return line(Point(corner.x, y), Point(corner.x + width, y), HAIRLINE)


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Running text."""

    text: str
    quiet: bool = False
    leads: bool = False
    strong: bool = False

    def height(self, width: float) -> float:
        """Its lines and the space below."""
        return len(self._lines(width)) * LEADING + AFTER

    def below(self, corner: Point, width: float) -> Art:
        """Its lines; if `strong`, measures stand out."""
        return Tagged(lines_below(corner, self._lines(width), LEADING, GREY if self.quiet else BLACK), Tag(Role.TEXT))

    def _lines(self, width: float) -> Sequence[TextLine]:
        return wrapped(self.text, "sans", BODY, width, "sans bold" if self.strong else "")


@dataclass(frozen=True, slots=True)
class Caution:
    """A warning of the step below it: it is read and not ticked, and its first word stands out."""

    text: str
    leads: bool = True

    def height(self, width: float) -> float:
        """Its lines and the space below."""
        return len(self._lines(width)) * LEADING + AFTER

    def below(self, corner: Point, width: float) -> Art:
        """Its lines, in line with those of the steps."""
        return Tagged(lines_below(corner.plus(BOX_ROOM, 0), self._lines(width), LEADING), Tag(Role.TEXT))

    def _lines(self, width: float) -> Sequence[TextLine]:
        return wrapped(self.text, "sans", BODY, width - BOX_ROOM, "sans bold")


@dataclass(frozen=True, slots=True)
class Tick:
    """A step, with a box to tick when it is done; its measures stand out."""

    text: str
    leads: bool = False

    def height(self, width: float) -> float:
        """Its lines and the space below."""
        return len(self._lines(width)) * LEADING + AFTER

    def below(self, corner: Point, width: float) -> Art:
        """The box, and the lines beside it."""
        beside = lines_below(corner.plus(BOX_ROOM, 0), self._lines(width), LEADING)
        return Group((tick_box(corner.plus(0, (LEADING - BOX) / 2 - LEADING)), Tagged(beside, Tag(Role.TEXT))))

    def _lines(self, width: float) -> Sequence[TextLine]:
        return wrapped(self.text, "sans", BODY, width - BOX_ROOM, "sans bold")


def tick_box(corner: Point) -> Art:
    """A box to tick, its lower left corner at a point."""
    return box(Rect(*corner, BOX, BOX), pen=BOX_PEN)


@dataclass(frozen=True, slots=True)
class Space:
    """Nothing, so many mm high."""

    high: float
    leads: bool = False

    def height(self, width: float) -> float:  # noqa: ARG002 (as high in any width)
        """As high as it is."""
        return self.high

    def below(self, corner: Point, width: float) -> Art:  # noqa: ARG002 (nothing has no place)
        """Nothing."""
        return Group()


@dataclass(frozen=True, slots=True)
class Illustration:
    """A drawing with its caption below."""

    figure: Figure
    leads: bool = False

    def height(self, width: float) -> float:
        """The drawing, its caption, some space above and below."""
        return self.figure.size.height + len(self._lines(width)) * SMALL_LEADING + 3 * AFTER

    def below(self, corner: Point, width: float) -> Art:
        """The drawing with its caption."""
        at = corner.plus(0, -self.figure.size.height - AFTER)
        drawn = Group((self.figure.art,), Transform.move(*at))
        if not self.figure.caption:
            return drawn
        caption = lines_below(at.plus(0, -AFTER * 0.5), self._lines(width), SMALL_LEADING, GREY)
        return Group((drawn, Tagged(caption, Tag(Role.TEXT))))

    def _lines(self, width: float) -> Sequence[TextLine]:
        return wrapped(self.figure.caption, "sans", SMALL, width) if self.figure.caption else ()


@dataclass(frozen=True, slots=True)
class Beside:
    """Items side by side where the page is wide enough for that, else one below the other."""

    items: tuple[Item, ...]
    leads: bool = False

    def height(self, width: float) -> float:
        """The highest of them, or all."""
        heights = [item.height(figure_room(width)) for item in self.items]
        return max(heights) if _side_by_side(width) else sum(heights)

    def below(self, corner: Point, width: float) -> Art:
        """All of them."""
        room = figure_room(width)
        parts: list[Art] = []
        at = corner
        for item in self.items:
            parts.append(item.below(at, room))
            at = at.plus(room + BETWEEN, 0) if _side_by_side(width) else at.plus(0, -item.height(room))
        return Group(tuple(parts))


def figure_room(width: float) -> float:
    """How wide a drawing may be on a page of this width: half of a wide one.

    >>> figure_room(180.0), figure_room(118.0)
    (87.0, 118.0)
    """
    return (width - BETWEEN) / 2 if _side_by_side(width) else width


def _side_by_side(width: float) -> bool:
    return width >= WIDE_ENOUGH
