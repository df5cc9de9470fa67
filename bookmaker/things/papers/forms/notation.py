"""Music that nobody wrote: systems of two staves with clefs, bars and notes, for sheets that lie on a piano."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from random import Random

from ....ground.art import Filled, Stroked
from ....ground.drawing import BLACK, Art, Pen
from ....ground.geometry import Path, Point, Rect, Transform, polygon
from ...book.designs.ornament.shapes import gathered

__all__ = ["score"]

LINES, BETWEEN, APART = 5, 5.5, 6.5
"""Lines of a staff; white between the two of a system and between systems, in spaces of a staff."""

PATTERNS: tuple[tuple[float, ...], ...] = ((1, 1, 1), (2, 1), (1, 0.5, 0.5, 1), (1.5, 0.5, 1), (0.5,) * 6, (3,))
"""Bars of three beats: the lengths of their notes, in quarters."""

RHYTHM_OF_BASS: tuple[float, ...] = (1, 1, 1)

STEM = 3.2


@dataclass(slots=True)
class _Ink:
    """What is gathered while a score is drawn: shapes that are filled, lines by their width."""

    shapes: list[Path] = field(default_factory=list)
    open_heads: list[Path] = field(default_factory=list)
    stems: list[tuple[Point, Point]] = field(default_factory=list)


def score(area: Rect, space: float, chance: Random) -> Iterator[Art]:
    """As many systems as an area takes, with so many mm from line to line of a staff."""
    high = (2 * (LINES - 1) + BETWEEN) * space
    count = max(1, int((area.height + APART * space) / (high + APART * space)))
    pitch = (area.height - high) / (count - 1) if count > 1 else 0.0
    lines: list[tuple[Point, Point]] = []
    ink = _Ink()
    for number in range(count):
        top = area.top - number * pitch
        _system(Rect(area.x, top - high, area.width, high), space, chance, lines, ink)
    yield Stroked(Path.lines(lines), Pen(max(0.045, space * 0.09), BLACK))
    yield Stroked(Path.lines(ink.stems), Pen(max(0.05, space * 0.12), BLACK))
    yield Filled(gathered(ink.shapes), BLACK)
    if ink.open_heads:
        yield Stroked(gathered(ink.open_heads), Pen(max(0.05, space * 0.16), BLACK))


def _system(box: Rect, space: float, chance: Random, lines: list[tuple[Point, Point]], ink: _Ink) -> None:
    """Two staves joined at their left, and their bars."""
    tops = (box.top, box.y + (LINES - 1) * space)
    for top in tops:
        lines += [(Point(box.x, top - n * space), Point(box.right, top - n * space)) for n in range(LINES)]
    first = box.x + 4.2 * space
    bars = max(2, round((box.right - first) / (11 * space)))
    wide = (box.right - first) / bars
    uprights = [box.x, *(first + n * wide for n in range(1, bars + 1))]
    lines += [(Point(x, box.top), Point(x, box.y)) for x in uprights]
    ink.shapes += [_treble(Point(box.x + 1.8 * space, tops[0] - 3 * space), space),
                   *_bass(Point(box.x + 1.6 * space, tops[1] - space), space)]  # fmt: skip
    step = 4
    for bar in range(bars):
        x = first + bar * wide
        pattern = PATTERNS[int(chance.random() * len(PATTERNS))] if bar < bars - 1 else (3,)
        step = _bar(Point(x, tops[0]), wide, space, pattern, step, chance, ink)
        _bar(Point(x, tops[1]), wide, space, RHYTHM_OF_BASS, 2 + bar % 3, chance, ink)


def _bar(at: Point, wide: float, space: float, pattern: Sequence[float], step: int, chance: Random, ink: _Ink) -> int:
    """The notes of a bar under the top line of its staff; `step` is the place of the note before, from the foot line.

    Gives the place of its last one.
    """
    beat, x = (wide - 1.6 * space) / 3, at.x + 1.3 * space
    quick: list[tuple[float, int]] = []
    for length in pattern:
        step = min(9, max(-1, step + int(chance.random() * 5) - 2))
        y = at.y - (LINES - 1) * space + step * space / 2
        up = step < 4
        head = _head(Point(x, y), space)
        (ink.open_heads if length >= 2 else ink.shapes).append(head)
        if length == 0.5:
            quick.append((x, step))
        elif length < 3:
            ink.stems.append(_stem(Point(x, y), space, up=up))
        if length != 0.5 or len(quick) == 2:
            _beamed(quick, at, space, ink)
            quick = []
        x += beat * length
    _beamed(quick, at, space, ink)
    return step


def _beamed(notes: Sequence[tuple[float, int]], at: Point, space: float, ink: _Ink) -> None:
    """Quick notes under one beam, their stems up."""
    if not notes:
        return
    foot = at.y - (LINES - 1) * space
    ends = [(x + 0.5 * space, foot + step * space / 2) for x, step in notes]
    beam = max(y for _, y in ends) + STEM * space
    ink.stems += [(Point(x, y), Point(x, beam)) for x, y in ends]
    left, right = ends[0][0], ends[-1][0] if len(ends) > 1 else ends[0][0] + 0.9 * space
    ink.shapes.append(Path.rectangle(Rect(left, beam - 0.5 * space, right - left, 0.5 * space)))


def _head(at: Point, space: float) -> Path:
    """A slanting oval."""
    oval = Transform.stretch(0.6 * space, 0.42 * space).then(Transform.turn(22)).moved(*at)
    return Path.circle(Point(0, 0), 1.0).transformed(oval)


def _stem(at: Point, space: float, *, up: bool) -> tuple[Point, Point]:
    way = 1 if up else -1
    start = at.plus(way * 0.52 * space, 0)
    return start, start.plus(0, way * STEM * space)


def _treble(at: Point, space: float) -> Path:
    """A treble clef about the line that it marks, drawn with a broad pen: a curl, a loop above, a tail below."""
    curve = [(0.5, 0.0), (0.0, 0.55), (-0.55, 0.0), (0.0, -0.75), (0.85, -0.1), (0.55, 1.1), (-0.75, 2.2), (-0.5, 3.6),
             (0.1, 4.5), (0.5, 3.7), (0.2, 2.2), (0.1, 0.5), (0.35, -1.6), (0.0, -2.2), (-0.5, -1.9)]  # fmt: skip
    return _drawn([at.plus(u * space, v * space) for u, v in curve], 0.24 * space)


def _bass(at: Point, space: float) -> Iterator[Path]:
    """A bass clef: a dot, a hook, two points."""
    yield Path.circle(at.plus(-0.4 * space, -0.1 * space), 0.32 * space)
    curve = [(-0.55, 0.2), (0.1, 0.9), (0.75, 0.3), (0.5, -1.0), (-0.6, -2.2)]
    yield _drawn([at.plus(u * space, v * space) for u, v in curve], 0.24 * space)
    for v in (0.45, -0.45):
        yield Path.circle(at.plus(1.3 * space, v * space), 0.17 * space)


def _drawn(points: Sequence[Point], width: float) -> Path:
    """A line through points as broad as a pen, as quadrilaterals that overlap."""
    parts = []
    for start, end in pairwise(points):
        dx, dy = end.x - start.x, end.y - start.y
        length = (dx * dx + dy * dy) ** 0.5 or 1.0
        ax, ay = -dy / length * width / 2, dx / length * width / 2
        parts.append(polygon((start.plus(-ax, -ay), end.plus(-ax, -ay), end.plus(ax, ay), start.plus(ax, ay))))
        parts.append(Path.circle(end, width / 2))
    return gathered(parts)
