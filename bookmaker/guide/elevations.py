"""Drawings to mark walls and desks by: each surface to scale, with the measures of all that is on it.

All measures run from one corner, so that errors do not add up from one to the next (superimposed running dimensions,
ISO 129-1).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from ..ground.art import Group, Stroked
from ..ground.drawing import Art, Pen
from ..ground.geometry import Path, Point, Rect, Size, Transform
from ..ground.told import figure, unit_named
from ..shelf.plan import ShelfPlan
from ..shelf.room.room_plan import OnSurface, SurfacePlan
from ..things.making import Figure
from ..things.views.flat_view import scale_for, scale_in_words
from ..things.views.ink import HAIRLINE, PAPER, box, line, word
from ..things.wording import sides
from .items import Heading, Illustration, Item, Paragraph
from .pages import lay_out_pages, page_size, text_width
from .tables import columns, table

__all__ = ["elevation_pages"]

HIGHEST = 120.0
"""How high a surface is drawn at most, in mm."""

BELOW, ASIDE = 13.0, 16.0
"""Room for the measures under a surface and on its left, in mm."""

FIGURE = 2.2
"""Size of the figures in mm; they stand no closer than this."""

SMALLEST = 1.5
"""A name that would be set smaller than this, in mm, is left to the table."""

OUTLINE = Pen(0.5)

WALL = ("", "on this wall", "from left", "above floor", "wide", "high", "hook from left", "hook above floor")
LEVEL = ("", "lies or stands here", "from left", "from front", "wide", "deep", "", "")
COLUMNS = columns(0.0, 0.05, 0.36, 0.47, 0.58, 0.67, 0.75, 0.87, 1.0, texts=2)


def elevation_pages(plan: ShelfPlan) -> Iterator[Art]:
    """A chapter a surface, on pages of the guide's size."""
    size = page_size(Size(*plan.spec.printer.sheet.size))
    chapters = [tuple(_chapter(surface, text_width(size))) for surface in plan.room]
    return lay_out_pages(lambda _: (), (), chapters, size, f"{plan.spec.shelf}, walls and desks")


def _chapter(surface: SurfacePlan, room: float) -> Iterator[Item]:
    upright, size = surface.entry.upright, surface.entry.size
    yield Heading(surface.name, level=1)
    yield Paragraph(
        f"{sides(size)} wide and high. Measure from the left end and from the floor: all hooks on one tape, then all "
        "heights. A mark of soft pencil or of tape that comes off again is enough."
        if upright
        else f"{sides(size)} wide and deep. Measure from the left end and from the front edge.",
        quiet=True,
        leads=True,
    )
    yield Illustration(_figure(surface, room))
    head = WALL if upright else LEVEL
    yield from table(COLUMNS, head, [_row(number, one) for number, one in enumerate(surface.things, start=1)])


def _row(number: int, one: OnSurface) -> tuple[str, ...]:
    corner_and_size = (figure(length, 1) for length in one.rect)
    hook = ("", "") if one.hook is None else (figure(one.hook.x, 1), figure(one.hook.y, 1))
    return (str(number), one.name, *corner_and_size, *hook)


def _figure(surface: SurfacePlan, room: float) -> Figure:
    size = surface.entry.size
    scale = scale_for(size, Size(room - ASIDE, HIGHEST))
    art: list[Art] = [box(Rect(0, 0, size.width * scale, size.height * scale), pen=OUTLINE)]
    for number, one in enumerate(surface.things, start=1):
        art += _drawn(number, one, scale)
    marks = [one.hook or Point(one.rect.x, one.rect.y) for one in surface.things]
    art += _along({figure(mark.x, 1): mark.x for mark in marks}, scale)
    art += _up({figure(mark.y, 1): mark.y for mark in marks}, scale)
    drawn = Size(size.width * scale + ASIDE, size.height * scale + BELOW)
    what = "the left front corners"
    if surface.entry.upright:
        shelves = any(one.hook is None for one in surface.things)
        what = "the hooks, and of the lower left corners of shelves" if shelves else "the hooks"
    caption = f"{surface.name}, {scale_in_words(scale)}; the measures are those of {what}, in {unit_named()}."
    return Figure(Group(tuple(art), Transform.move(ASIDE, BELOW)), drawn, caption)


def _drawn(number: int, one: OnSurface, scale: float) -> Iterator[Art]:
    rect = Rect(*(side * scale for side in one.rect))
    yield box(rect, PAPER if one.thing else None)
    upright = rect.height > rect.width * 1.4
    across, room = (rect.width, rect.height) if upright else (rect.height, rect.width)
    size = min(2.6, across * 0.6)
    name = word(f"{number} {one.name}", rect.centre, size, room=room * 0.9, upright=upright)
    if name.line.size < SMALLEST:
        name = word(str(number), rect.centre.plus(0, -1.0 if one.hook else 0), min(size, rect.width * 0.8))
    yield name
    if one.hook:
        yield Stroked(Path.circle(Point(one.hook.x * scale, one.hook.y * scale), 0.6), HAIRLINE)


def _along(marks: Mapping[str, float], scale: float) -> Iterator[Art]:
    """The measures from the left below a surface, each with a line to where it is."""
    at = sorted(marks.items(), key=lambda mark: mark[1])
    places = spread([mark * scale for _, mark in at], FIGURE * 1.3)
    for (told, mark), shown in zip(at, places, strict=True):
        yield line(Point(mark * scale, 0), Point(mark * scale, -1.5), HAIRLINE)
        yield line(Point(mark * scale, -1.5), Point(shown, -4), HAIRLINE)
        yield word(told, Point(shown, -8.5), FIGURE, upright=True)


def _up(marks: Mapping[str, float], scale: float) -> Iterator[Art]:
    """The measures from the foot on the left of a surface."""
    at = sorted(marks.items(), key=lambda mark: mark[1])
    places = spread([mark * scale for _, mark in at], FIGURE * 1.3)
    for (told, mark), shown in zip(at, places, strict=True):
        yield line(Point(0, mark * scale), Point(-1.5, mark * scale), HAIRLINE)
        yield line(Point(-1.5, mark * scale), Point(-4, shown), HAIRLINE)
        yield word(told, Point(-8.5, shown), FIGURE)


def spread(places: Sequence[float], apart: float) -> list[float]:
    """Places in order moved so that none is nearer to the next than that, and all together as little as may be.

    Those that come too close form a run around their mean (pool adjacent violators, after Ayer and others, 1955).

    >>> spread([0.0, 10.0, 10.5], 3)
    [0.0, 8.75, 11.75]
    """
    runs: list[tuple[float, int]] = []
    for number, place in enumerate(places):
        mean, size = place - number * apart, 1
        while runs and runs[-1][0] > mean:
            before, many = runs.pop()
            mean, size = (before * many + mean * size) / (many + size), many + size
        runs.append((mean, size))
    means = [mean for mean, size in runs for _ in range(size)]
    return [mean + number * apart for number, mean in enumerate(means)]
