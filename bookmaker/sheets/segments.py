"""Straight strokes without doubles: what lies on one line is joined, and what another stroke covers is taken away."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import hypot

from ..ground.geometry import Point
from .flat import Stroke

__all__ = ["merged", "without"]

SAME = 1e-3
"""Lines closer together than this, in mm, are one line to any tool."""

Span = tuple[float, float]


def merged(strokes: Iterable[Stroke]) -> tuple[Stroke, ...]:
    """The same lines, each part of them once: strokes that touch or overlap on one line become one.

    >>> merged([Stroke(Point(0, 0), Point(5, 0)), Stroke(Point(8, 0), Point(3, 0))])
    (Stroke(start=Point(x=0.0, y=0.0), end=Point(x=8.0, y=0.0)),)
    """
    lines: list[tuple[_Line, list[Span]]] = []
    for stroke in strokes:
        line = _Line(stroke)
        spans = next((spans for other, spans in lines if other.carries(stroke)), None)
        if spans is None:
            spans = []
            lines.append((line, spans))
        else:
            line = next(other for other, held in lines if held is spans)
        spans.append(line.span(stroke))
    return tuple(line.stroke(span) for line, spans in lines for span in _united(spans))


def without(strokes: Iterable[Stroke], covers: Sequence[Stroke]) -> tuple[Stroke, ...]:
    """What is left of each stroke where no cover lies on it.

    >>> without([Stroke(Point(0, 0), Point(5, 0))], [Stroke(Point(0, 0), Point(2, 0))])
    (Stroke(start=Point(x=2.0, y=0.0), end=Point(x=5.0, y=0.0)),)
    """
    left: list[Stroke] = []
    for stroke in strokes:
        line = _Line(stroke)
        spans = [line.span(stroke)]
        for cover in covers:
            if line.carries(cover):
                spans = [rest for span in spans for rest in _less(span, line.span(cover))]
        left += [line.stroke(span) for span in spans]
    return tuple(left)


class _Line:
    """The endless line through a stroke; places on it are lengths from the foot of the origin."""

    def __init__(self, stroke: Stroke) -> None:
        (x0, y0), (x1, y1) = stroke
        length = hypot(x1 - x0, y1 - y0)
        dx, dy = (x1 - x0) / length, (y1 - y0) / length
        # both ways along a line are the same line
        self.dx, self.dy = (dx, dy) if (dx, dy) > (0.0, 0.0) or dx > SAME else (-dx, -dy)
        self.off = self._off(stroke.start)

    def _off(self, point: Point) -> float:
        return self.dx * point.y - self.dy * point.x

    def carries(self, stroke: Stroke) -> bool:
        """Whether a stroke lies on this line."""
        return all(abs(self._off(point) - self.off) < SAME for point in stroke)

    def span(self, stroke: Stroke) -> Span:
        """From where to where a stroke reaches on the line."""
        low, high = sorted(self.dx * x + self.dy * y for x, y in stroke)
        return low, high

    def stroke(self, span: Span) -> Stroke:
        """The stroke of a span."""
        low, high = (
            Point(self.dx * along - self.dy * self.off, self.dy * along + self.dx * self.off) for along in span
        )
        return Stroke(low, high)


def _united(spans: Iterable[Span]) -> list[Span]:
    united: list[Span] = []
    for low, high in sorted(spans):
        if united and low <= united[-1][1] + SAME:
            united[-1] = (united[-1][0], max(united[-1][1], high))
        else:
            united.append((low, high))
    return united


def _less(span: Span, cover: Span) -> list[Span]:
    """The one or two parts of a span outside a cover; crumbs are left out."""
    parts = [(span[0], min(span[1], cover[0])), (max(span[0], cover[1]), span[1])]
    return [(low, high) for low, high in parts if high - low > SAME]
