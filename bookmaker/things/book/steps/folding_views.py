"""How strips and sheets are folded: which half goes over which, in which order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import Enum
from itertools import pairwise

from ....ground.art import Filled, Group, Stroked
from ....ground.drawing import WHITE, Art
from ....ground.geometry import Point, Rect, Size, polygon
from ....sheets.flat import FoldKind
from ...making import Manner
from ...views.ink import EDGE, FOLDED, PAPER, box, line, word
from ...views.signs import bent_arrow, ring
from ...views.stages import in_cells, staged
from ...wording import with_article

__all__ = ["Over", "folded_sheet", "folded_strip"]

PANEL, PANELS, HIGH = 12.0, 5, 9.0
"""A strip as it is drawn lying: how wide a panel, how many of them, how high, in mm."""

DEEP = Point(2.5, 7.0)
"""How far the back edge of what stands is drawn from its front edge."""

CELL = Size(72.0, 23.0)
SHEET_CELL = Size(29.0, 24.0)


class Over(Enum):
    """Which half of what lies there is folded over the other."""

    LEFT = "left"
    RIGHT = "right"
    UPPER = "upper"


def folded_strip(room: float, *, right_to_left: bool) -> Manner:
    """Back and forth, from the end that is pasted into the cover."""
    hand = "right" if right_to_left else "left"
    caption = (
        "An accordion is folded back and forth, in the order of the numbers. a: the strip, print up, with its first "
        f"panel on the {hand}; an arrow shows where what lies before a fold goes, over the print at a valley (v), "
        "under it at a mountain (m). b: half closed. Valleys stand at the spine, mountains at the fore-edge."
    )
    stages = (_lying(right_to_left=right_to_left), _standing(right_to_left=right_to_left))
    name = "an accordion strip, from the right" if right_to_left else "an accordion strip"
    lettered = list(zip("ab", stages, strict=True))
    return Manner(name, in_cells(lettered, min(room, CELL.width), caption, CELL))


def _x(x: float, *, right_to_left: bool) -> float:
    return CELL.width - x if right_to_left else x


def _lying(*, right_to_left: bool) -> Art:
    """The strip, its folds, and which way each goes."""

    def at(x: float, y: float) -> Point:
        return Point(_x(7.0 + x, right_to_left=right_to_left), 6.5 + y)

    end = PANEL * PANELS
    corners = [at(0, 0), at(end, 0), at(end, HIGH), at(0, HIGH)]
    art: list[Art] = [Filled(polygon(corners), PAPER), Stroked(polygon(corners), EDGE)]
    for number in range(1, PANELS):
        x, valley = number * PANEL, number % 2 == 1
        art.append(line(at(x, 0), at(x, HIGH), FOLDED[FoldKind.VALLEY if valley else FoldKind.MOUNTAIN]))
        art.append(ring(str(number), at(x, HIGH / 2)))
        bulge = (1.0 if valley else -1.0) * (-1.0 if right_to_left else 1.0)
        y = HIGH + 0.8 if valley else -0.8
        art.append(bent_arrow(at(x - 5.0, y), at(x + 5.0, y), -2.6 * -bulge))
        art.append(word("v" if valley else "m", at(x, HIGH + 1.6 if valley else -1.4), 2.0))
    art.append(word("pasted in", at(PANEL / 2 - 1.0, HIGH / 2), 2.0, room=8.0))
    return Group(tuple(art))


def _standing(*, right_to_left: bool) -> Art:
    """The strip on its way, seen from the tail."""
    profile = [(8.0 + number * 9.5, 13.0 if number % 2 == 0 else 3.0) for number in range(PANELS + 1)]
    panels = list(pairwise(profile))
    art: list[Art] = []
    for (x0, y0), (x1, y1) in panels[::-1] if right_to_left else panels:
        front = [Point(_x(x0, right_to_left=right_to_left), y0), Point(_x(x1, right_to_left=right_to_left), y1)]
        corners = [*front, front[1].plus(*DEEP), front[0].plus(*DEEP)]
        art += [Filled(polygon(corners), PAPER), Stroked(polygon(corners), EDGE)]
    for number, (x, y) in enumerate(profile[1:-1], start=1):
        at = Point(_x(x, right_to_left=right_to_left), y)
        art.append(ring(str(number), at.plus(-2.3, 0.2) if y > 8 else at.plus(0, -1.6)))
    return Group(tuple(art))


def folded_sheet(name: str, folds: Sequence[Over], room: float) -> Manner:
    """A sheet folded in the middle, once or several times; its front lies down at the start."""
    size = Size(24.0, 15.0) if len(folds) == 1 else Size(20.0, 17.0) if len(folds) == 2 else Size(26.0, 17.0)
    stages: list[Art] = []
    for number, over in enumerate(folds, start=1):
        stages.append(_half_over(size, over, number))
        size = Size(size.width, size.height / 2) if over is Over.UPPER else Size(size.width / 2, size.height)
    stages.append(_done(size))
    halves = ", then ".join(_said(over) for over in folds)
    caption = (
        f"{with_article(name).capitalize()} sheet, its front down at the start: {halves}. What is folded is rubbed "
        "down before the next fold. At the end, turned over, its first page lies in front."
    )
    return Manner(f"{with_article(name)} sheet folded", staged(stages, room, caption, SHEET_CELL))


def _said(over: Over) -> str:
    match over:
        case Over.UPPER:
            return "the upper half down over the lower"
        case Over.LEFT:
            return "the left half over the right"
        case Over.RIGHT:
            return "the right half over the left"


def _lying_sheet(size: Size) -> Rect:
    return Rect((SHEET_CELL.width - size.width) / 2, 1.5, *size)


def _half_over(size: Size, over: Over, number: int) -> Art:
    """The packet, its next fold, and the half that goes over."""
    rect = _lying_sheet(size)
    middle = rect.centre
    if over is Over.UPPER:
        fold = line(Point(rect.x, middle.y), Point(rect.right, middle.y), FOLDED[FoldKind.VALLEY])
        quarter = rect.height / 4
        way = bent_arrow(Point(rect.right - 3, middle.y + quarter), Point(rect.right - 3, middle.y - quarter), 2.5)
    else:
        fold = line(Point(middle.x, rect.y), Point(middle.x, rect.top), FOLDED[FoldKind.VALLEY])
        quarter = rect.width / 4 * (1 if over is Over.LEFT else -1)
        bulge = 3.0 if over is Over.LEFT else -3.0
        way = bent_arrow(Point(middle.x - quarter, rect.top - 2), Point(middle.x + quarter, rect.top - 2), bulge)
    at = middle if over is Over.UPPER else middle.plus(0, -rect.height / 4)
    return Group((box(rect, WHITE), fold, way, ring(str(number), at)))


def _done(size: Size) -> Art:
    rect = _lying_sheet(size)
    edges = tuple(_layers(rect))
    return Group((*edges, box(rect, PAPER), word("first page", rect.centre, 2.0, room=rect.width * 0.9)))


def _layers(rect: Rect) -> Iterator[Art]:
    """The layers below, a little to be seen."""
    for number in (2, 1):
        yield box(rect.moved(0.5 * number, -0.4 * number), WHITE)
