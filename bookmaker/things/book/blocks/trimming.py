"""Where the finished block is trimmed, and lines that run on from one cell of a flat to the next."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from ....ground.geometry import Point, Rect, Size
from ....ground.problems import Problem
from ....ground.told import rounded_down
from ....ground.units import print_mm
from ....sheets.flat import Stroke

MEETING = 1e-6
"""Points closer together than this, in mm, are one."""

__all__ = ["join_strokes", "trim_lines", "wasteful_trim"]

LARGEST_SHARE = 1 / 4
"""More than this share of the page's shorter side is not a trim but a smaller book (common practice)."""


def wasteful_trim(trim: float, page: Size) -> tuple[Problem, ...]:
    """What is wrong with a trim of so many mm at each edge, if anything."""
    most = min(page) * LARGEST_SHARE
    if trim <= most + 1e-9:
        return ()
    return (
        Problem(
            f"a trim of {print_mm(trim)} at each edge leaves too little of a page of "
            f"{print_mm(page.width)} × {print_mm(page.height)}",
            f"write at most a quarter of its shorter side, {print_mm(rounded_down(most, 2), 2)}",
            field=("block", "trim"),
            limit=print_mm(most),
        ),
    )


def trim_lines(shown: Rect, cell: Rect) -> Iterable[Stroke]:
    """The lines through a cell along those edges of what shows of it that are not edges of the cell."""
    for y in (shown.y, shown.top):
        if cell.y + MEETING < y < cell.top - MEETING:
            yield Stroke(Point(cell.x, y), Point(cell.right, y))
    for x in (shown.x, shown.right):
        if cell.x + MEETING < x < cell.right - MEETING:
            yield Stroke(Point(x, cell.y), Point(x, cell.top))


def join_strokes(strokes: Collection[Stroke]) -> tuple[Stroke, ...]:
    """The same lines, each in one stroke: upright and level strokes that meet end to end become one.

    >>> join_strokes([Stroke(Point(0, 1), Point(5, 1)), Stroke(Point(5, 1), Point(9, 1))])
    (Stroke(start=Point(x=0, y=1), end=Point(x=9, y=1)),)
    """
    done: list[Stroke] = []
    for upright in (True, False):
        along = [stroke for stroke in strokes if _upright(stroke) is upright]
        done += _run_together(along, upright)
    return tuple(done)


def _upright(stroke: Stroke) -> bool:
    return abs(stroke.start.x - stroke.end.x) < 1e-9


def _run_together(strokes: Iterable[Stroke], upright: bool) -> list[Stroke]:
    across, along = (0, 1) if upright else (1, 0)
    done: list[Stroke] = []
    for stroke in sorted(strokes, key=lambda stroke: (round(stroke.start[across], 6), stroke.start[along])):
        last = done[-1] if done else None
        on_one_line = last is not None and abs(last.end[across] - stroke.start[across]) < MEETING
        if last and on_one_line and stroke.start[along] <= last.end[along] + MEETING:
            done[-1] = Stroke(last.start, max(last.end, stroke.end, key=lambda point: point[along]))
        else:
            done.append(stroke)
    return done
