"""Tools for drawing pictures that look cut in lino: solid shapes, tapered gouge marks, few inks."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import cos, pi, sin
from pathlib import Path
from random import Random

from PIL import Image, ImageDraw, ImageFont

__all__ = ["Block", "Ink", "Spot", "blob", "egg", "ring"]

Spot = tuple[float, float]
Ink = tuple[int, int, int]

FINE = 3
"""Everything is drawn so many times larger and then reduced, for smooth edges."""


def blob(points: Sequence[Spot], *, closed: bool = True, steps: int = 10) -> list[Spot]:
    """A smooth line through the points (Catmull-Rom)."""
    count = len(points)
    ends = range(count if closed else count - 1)

    def at(index: int) -> Spot:
        return points[index % count] if closed else points[max(0, min(count - 1, index))]

    line: list[Spot] = []
    for start in ends:
        p, q, r, s = (at(start + step) for step in (-1, 0, 1, 2))
        for step in range(steps):
            t = step / steps
            line.append(tuple(_between(a, b, c, d, t) for a, b, c, d in zip(p, q, r, s, strict=True)))  # type: ignore[arg-type]
    return line if closed else [*line, points[-1]]


def _between(a: float, b: float, c: float, d: float, t: float) -> float:
    return 0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t * t + (3 * b - a - 3 * c + d) * t**3)


def ring(centre: Spot, radius: float, flat: float = 1.0, count: int = 60) -> list[Spot]:
    """An ellipse as a polygon; `flat` is its height as a share of its width."""
    x, y = centre
    turns = [2 * pi * step / count for step in range(count)]
    return [(x + radius * cos(turn), y + radius * flat * sin(turn)) for turn in turns]


def egg(centre: Spot, radius: float, pointed: float = 0.16, lean: float = 0.0) -> list[Spot]:
    """An egg standing on its blunt end, leaning by `lean` radians."""
    shape = []
    for step in range(90):
        turn = 2 * pi * step / 90
        y = -1.32 * radius * cos(turn)
        x = radius * sin(turn) * (1 + pointed * y / radius)
        shape.append((centre[0] + x * cos(lean) - y * sin(lean), centre[1] + x * sin(lean) + y * cos(lean)))
    return shape


class Block:
    """A picture in the making, `width` × `height` pixels, printed on paper of one colour."""

    def __init__(self, width: int, height: int, paper: Ink, seed: int) -> None:
        self.width, self.height = width, height
        self.chance = Random(seed)
        self.image = Image.new("RGB", (width * FINE, height * FINE), paper)
        self.pen = ImageDraw.Draw(self.image)
        self.inks = [paper]

    def shape(self, points: Iterable[Spot], ink: Ink) -> None:
        """A solid shape."""
        self._use(ink)
        self.pen.polygon([(x * FINE, y * FINE) for x, y in points], fill=ink)

    def line(self, points: Sequence[Spot], ink: Ink, width: float) -> None:
        """A line of even width with round ends."""
        self._use(ink)
        scaled = [(x * FINE, y * FINE) for x, y in points]
        self.pen.line(scaled, fill=ink, width=max(1, round(width * FINE)), joint="curve")
        for x, y in (scaled[0], scaled[-1]):
            r = width * FINE / 2
            self.pen.ellipse((x - r, y - r, x + r, y + r), fill=ink)

    def write(self, at: Spot, text: str, face: ImageFont.FreeTypeFont, ink: Ink) -> None:
        """Words centred on a point."""
        self._use(ink)
        self.pen.text((at[0] * FINE, at[1] * FINE), text, fill=ink, font=face, anchor="mm")

    def gouge(self, start: Spot, end: Spot, ink: Ink, width: float) -> None:
        """One cut of the gouge: thick where it starts, running out to a point."""
        (ax, ay), (bx, by) = start, end
        length = ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5 or 1.0
        nx, ny = -(by - ay) / length * width / 2, (bx - ax) / length * width / 2
        mx, my = ax + (bx - ax) * 0.35, ay + (by - ay) * 0.35
        self.shape([(ax, ay), (mx + nx, my + ny), (bx, by), (mx - nx, my - ny)], ink)

    def chatter(self, area: tuple[float, float, float, float], ink: Ink, count: int, lean: float = 0.1) -> None:
        """Stray cuts that the roller picked up, lying mostly level."""
        left, top, right, bottom = area
        for _ in range(count):
            x, y = self.chance.uniform(left, right), self.chance.uniform(top, bottom)
            long, turn = self.chance.uniform(10, 34), self.chance.gauss(0, lean)
            self.gouge((x, y), (x + long * cos(turn), y + long * sin(turn)), ink, self.chance.uniform(1.6, 3.4))

    def ragged(self, area: tuple[float, float, float, float], ink: Ink, rough: float = 2.5) -> None:
        """The inked face of the block, with edges as a hand cuts them."""
        left, top, right, bottom = area
        corners = [(left, top), (right, top), (right, bottom), (left, bottom)]
        edge: list[Spot] = []
        for (ax, ay), (bx, by) in zip(corners, [*corners[1:], corners[0]], strict=True):
            for step in range(24):
                wobble = self.chance.uniform(-rough, rough)
                x, y = ax + (bx - ax) * step / 24, ay + (by - ay) * step / 24
                edge.append((x + wobble * (ax == bx), y + wobble * (ay == by)))
        self.shape(edge, ink)

    def finished(self) -> Image.Image:
        """The picture at its own size."""
        return self.image.resize((self.width, self.height), Image.Resampling.LANCZOS)

    def save(self, path: Path) -> None:
        """Write it as a PNG of its own inks and the blends between the commonest of them."""
        flat = self.finished().quantize(palette=self._palette(), dither=Image.Dither.NONE)
        flat.save(path, optimize=True)

    def _use(self, ink: Ink) -> None:
        if ink not in self.inks:
            self.inks.append(ink)

    def _palette(self) -> Image.Image:
        blends = [_blend(a, b) for i, a in enumerate(self.inks[:4]) for b in self.inks[:i]]
        colours = [*self.inks, *blends][:16]
        palette = Image.new("P", (1, 1))
        palette.putpalette([part for colour in colours for part in colour])
        return palette


def _blend(one: Ink, other: Ink) -> Ink:
    return ((one[0] + other[0]) // 2, (one[1] + other[1]) // 2, (one[2] + other[2]) // 2)
