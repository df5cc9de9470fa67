"""The way of the thread along the spine: through sections one after the other, or through one alone; and of wire.

The folds of the sections are seen from outside, the head on the left. Thread that is seen is drawn in full, thread
inside a section in dashes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from ....ground.art import Group
from ....ground.drawing import WHITE, Art, Pen
from ....ground.geometry import Point, Rect, Size
from ...making import Figure, Manner
from ...views.ink import PAPER, box, line, word
from ...views.signs import INNER_THREAD, THREAD, arrow, hole, ring, thread_through
from ...views.stages import staged

__all__ = ["KETTLE", "Stitch", "kettle_stitch", "one_section", "several_sections", "stapled", "stitches"]

KETTLE = "the kettle stitch"

WIDE, ENDS = 72.0, 13.0
"""How wide a spine is drawn, and how far from its ends the outermost holes are, in mm."""

BAND, STEP = 3.6, 6.4
"""How high a section is drawn, and from one to the next, in mm."""

MOST_SHOWN = 7
"""So many holes are drawn at most; more go on in the same way."""

FOOT = 6.0
"""Room below the lowest section, in mm."""

BEHIND = Pen(1.3, WHITE)
"""What parts a thread from one that goes behind it."""


class Stitch(NamedTuple):
    """Thread from one hole to another, counted from 0, inside the section or outside it."""

    start: int
    end: int
    inside: bool


def stitches(holes: int) -> tuple[Stitch, ...]:
    """One section sewn alone, from the inside at its middle hole: out to one end and back, then to the other and back.

    Past the middle the thread goes on inside, and it ends where it began, inside: there it is tied to its tail over the
    stitch that passes. Three holes give the usual pamphlet stitch.

    >>> [(one.start, one.end, one.inside) for one in stitches(3)]
    [(1, 2, False), (2, 0, True), (0, 1, False)]
    >>> [(one.start, one.end, one.inside) for one in stitches(2)]
    [(1, 0, False), (0, 1, True)]
    """
    middle = holes // 2
    up, down = _there_and_back(middle, holes - 1), _there_and_back(middle, 0)
    if not up:
        return tuple(down)
    # the other way round: from the middle on inside, and back outside
    down = [Stitch(one.start, one.end, not one.inside) for one in down]
    joined = Stitch(up[-1].start, down[0].end, True)
    return (*up[:-1], joined, *down[1:])


def _there_and_back(start: int, end: int) -> list[Stitch]:
    """Running stitches from a hole to another, outside first, and back through the gaps that they left."""
    way = 1 if end > start else -1
    there = [Stitch(at, at + way, number % 2 == 1) for number, at in enumerate(range(start, end, way))]
    return [*there, *(Stitch(one.end, one.start, not one.inside) for one in reversed(there))]


def _xs(holes: int) -> list[float]:
    """Where the holes are drawn."""
    holes = min(holes, MOST_SHOWN)
    return [ENDS + (WIDE - 2 * ENDS) * number / (holes - 1) for number in range(holes)]


def _section(y: float, holes: Sequence[float], name: str) -> Iterator[Art]:
    """A fold as it is seen from outside, around the height of its holes."""
    yield box(Rect(ENDS - 4.5, y - BAND / 2, WIDE - 2 * ENDS + 9.0, BAND), PAPER)
    yield word(name, Point(4.2, y), 2.0, room=8.0)
    yield from (hole(Point(x, y)) for x in holes)


def one_section(holes: int) -> Manner:
    """A section by itself, each stitch with its number."""
    shown = min(holes, MOST_SHOWN)
    xs, y = _xs(holes), 9.0
    art: list[Art] = list(_section(y, xs, "outside"))
    art.append(word("inside", Point(4.2, 3.0), 2.0))
    sewn = stitches(shown)
    for number, one in enumerate(sewn, start=1):
        art += _numbered_stitch(one, number, xs, y)
    first = xs[sewn[0].start]
    art.append(word("begin and tie here, inside", Point(min(max(first, 20.0), WIDE - 20.0), 1.0), 1.9))
    caption = (
        f"One section sewn through {holes} holes, in the order of the numbers. Dashes are thread inside. It begins and "
        "ends inside at the same hole; there both ends are tied over the stitch that passes."
        if holes > 2
        else "One section sewn through 2 holes: out at the one, in at the other, and tied inside."
    )
    caption += _of_more(holes)
    name = f"one section sewn through {holes} holes"
    return Manner(name, Figure(Group(tuple(art)), Size(WIDE, 18.0), caption))


def _numbered_stitch(one: Stitch, number: int, xs: Sequence[float], y: float) -> Iterator[Art]:
    """A stitch in a shallow bow, above the fold where it is seen and below where it lies inside."""
    start, end = xs[one.start], xs[one.end]
    aside = -3.6 if one.inside else 3.6
    bend = 1.6 if start < end else -1.6
    points = [Point(start, y), Point(start + bend, y + aside), Point(end - bend, y + aside), Point(end, y)]
    yield thread_through(points, INNER_THREAD if one.inside else THREAD)
    yield ring(str(number), Point((start + end) / 2, y + aside))


def several_sections(holes: int, *, two_on: bool) -> Manner:
    """Three sections or more, from the first on."""
    xs = _xs(holes)
    drawn = _two_on(xs) if two_on else _all_along(xs)
    count = 2 if two_on else 3
    high = FOOT + STEP * (count - 1) + BAND / 2 + 4.5
    head = [word("head", Point(ENDS - 2.0, high - 1.4), 2.0), word("tail", Point(WIDE - ENDS + 2.0, high - 1.4), 2.0)]
    way = "two on" if two_on else "all along"
    caption = (
        "Sewn two on: by turns through the lower and the upper section, a stitch inside each. At both ends the thread "
        "is tied to the section below with a kettle stitch, and goes on to the next two."
        if two_on
        else "Sewn all along: inside from hole to hole. At each hole between the ends the thread comes out, goes round "
        "the stitch of the section below, and in again by the same hole; in section 1 it leaves a small loop for that. "
        "At both ends it goes up to the next section, and from section 3 on it makes a kettle stitch there."
    )
    caption += _of_more(holes)
    name = f"sewing {way} through {holes} holes"
    return Manner(name, Figure(Group((*drawn, *head)), Size(WIDE, high), caption))


def _of_more(holes: int) -> str:
    """That not all holes are drawn."""
    return f" Of {holes} holes {MOST_SHOWN} are drawn." if holes > MOST_SHOWN else ""


def _ys(count: int) -> list[float]:
    return [FOOT + STEP * number for number in range(count)]


def _all_along(xs: Sequence[float]) -> Iterator[Art]:
    ys = _ys(3)
    for number, y in enumerate(ys, start=1):
        yield from _section(y, (), f"section {number}")
    for number, y in enumerate(ys):
        yield line(Point(xs[0], y), Point(xs[-1], y), INNER_THREAD)
        yield from (_linked(x, y, STEP - 1.0 if number else 2.9) for x in xs[1:-1])
        yield from (hole(Point(x, y)) for x in xs)
        yield _towards(xs, y, back=number == 1)
    yield from _begun(xs[0], ys[0])
    yield line(Point(xs[-1], ys[0] + 0.45), Point(xs[-1], ys[1] - 0.45), THREAD)
    yield line(Point(xs[0], ys[1] + 0.45), Point(xs[0], ys[2] - 0.45), THREAD)
    yield _onward(xs[-1], ys[2])


def _two_on(xs: Sequence[float]) -> Iterator[Art]:
    ys = _ys(2)
    for number, y in enumerate(ys, start=1):
        yield from _section(y, (), f"section {number}")
    at = 0
    for number, (x, after) in enumerate(pairwise(xs)):
        at = number % 2
        yield line(Point(x, ys[at]), Point(after, ys[at]), INNER_THREAD)
        if number:
            yield line(Point(x, ys[0] + 0.45), Point(x, ys[1] - 0.45), THREAD)
    for y in ys:
        yield from (hole(Point(x, y)) for x in xs)
    yield from _begun(xs[0], ys[0])
    yield _onward(xs[-1], ys[at])


def _linked(x: float, y: float, down: float) -> Art:
    """Out of a hole, round what is below, and in again."""
    return thread_through([Point(x - 0.3, y), Point(x - 1.1, y - down), Point(x + 1.1, y - down), Point(x + 0.3, y)])


def _towards(xs: Sequence[float], y: float, *, back: bool) -> Art:
    """Which way a section is sewn, above it."""
    quarter, above = (xs[1] - xs[0]) / 4, y + BAND / 2 + 1.3
    ends = [Point(xs[0] + quarter, above), Point(xs[1] - quarter, above)]
    return arrow(*(reversed(ends) if back else ends))


def _begun(x: float, y: float) -> Iterator[Art]:
    """The end of the thread that hangs out to be tied."""
    yield thread_through([Point(x - 0.4, y), Point(x - 3.0, y - 2.2), Point(x - 7.0, y - 4.6)])
    yield word("end to tie", Point(x + 4.5, y - 4.6), 1.9)


def _onward(x: float, y: float) -> Art:
    """Up to the next section."""
    return arrow(Point(x, y + 0.5), Point(x, y + 5.2))


def kettle_stitch(room: float) -> Manner:
    """The stitch at both ends: behind the stitch between the two sections below, up through its own loop."""
    caption = (
        "The kettle stitch, at both ends of the spine. a: the thread comes out of the last hole and goes behind the "
        "stitch between the two sections below. b: it comes up through its own loop, is drawn tight along the fold, "
        "and goes into the next section."
    )
    return Manner(KETTLE, staged((_kettle(through=False), _kettle(through=True)), room, caption))


def _kettle(*, through: bool) -> Art:
    ys, x = (4.0, 10.0, 16.0, 22.0), 20.0
    art: list[Art] = []
    for number, y in enumerate(ys, start=1):
        if number < 4 or through:
            art.append(box(Rect(8.0, y - 1.7, 20.0, 3.4), PAPER))
            art.append(word(str(number), Point(5.5, y), 2.0))
            art.append(hole(Point(x, y)))
    art.append(line(Point(10.0, ys[2]), Point(x - 0.5, ys[2]), INNER_THREAD))
    below = thread_through([Point(x, ys[2]), Point(x - 4.0, 9.0), Point(x, 6.4), Point(x + 4.5, 8.5)])
    over = line(Point(x, ys[0] + 0.45), Point(x, ys[1] - 0.45), THREAD)
    art += [below, line(Point(x, 5.6), Point(x, 8.4), BEHIND), over]
    if not through:
        return Group((*art, arrow(Point(x + 4.5, 8.5), Point(x + 8.0, 10.6))))
    up = [Point(x + 4.5, 8.5), Point(x + 5.0, 12.0), Point(x - 2.4, 12.6), Point(x - 3.4, 15.0), Point(x - 0.4, ys[3])]
    return Group(
        (*art, thread_through(up), line(Point(x - 2.74, 11.2), Point(x - 1.49, 13.4), BEHIND), _own_loop(x, ys[2]))
    )


def _own_loop(x: float, y: float) -> Art:
    """The thread that comes down, over the one that comes up."""
    return thread_through([Point(x, y), Point(x - 4.0, 9.0)])


def stapled(room: float) -> Manner:
    """Wire through two holes, its ends turned over inside."""
    caption = (
        "A staple, the fold seen from the side. a: the wire goes through its two holes from outside. b: inside, its "
        "ends are turned over towards each other with the tweezers."
    )
    return Manner("a staple", staged((_wire(closed=False), _wire(closed=True)), room, caption))


def _wire(*, closed: bool) -> Art:
    left, right, y = 11.0, 25.0, 13.0
    fold = box(Rect(4.0, y - 1.2, 28.0, 2.4), PAPER)
    names = (word("outside", Point(6.4, y + 3.2), 2.0), word("inside", Point(6.4, y - 3.4), 2.0))
    if not closed:
        wire = [Point(left, y - 1.2), Point(left, y + 6.0), Point(right, y + 6.0), Point(right, y - 1.2)]
        return Group((fold, thread_through(wire), *names, arrow(Point(18.0, y + 11.0), Point(18.0, y + 6.8))))
    legs = [Point(left + 6.0, y - 2.2), Point(left, y - 2.2), Point(left, y + 1.7)]
    others = [Point(right, y + 1.7), Point(right, y - 2.2), Point(right - 6.0, y - 2.2)]
    return Group((fold, thread_through([*legs, *others]), *names))
