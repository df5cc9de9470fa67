"""What an envelope has on its face: an address, who sent it, a stamp of an issue that never was, its postmark."""

from __future__ import annotations

from collections.abc import Iterator

from pydantic import Field

from ....ground.art import Filled, Group, Stroked
from ....ground.drawing import WHITE, Art, Colour, Pen
from ....ground.geometry import Path, Point, Rect, Size, Transform
from ....shelf_file.fields.entry import Entry
from ....shelf_file.fields.words import Ink, Lines, Title
from ...book.designs.design import TypefaceName
from ...book.designs.ornament.devices import DEVICES, DeviceName
from ...book.designs.ornament.ornaments import stamp as stamped
from ...book.designs.ornament.shapes import gathered
from ...book.designs.tones import mixed
from ...lettering import line_of

__all__ = ["PostEntry", "StampEntry", "addressed"]

STAMP = Size(20 / 12, 24 / 12)
"""A stamp of 20 × 24 mm in life, at 1:12 (common practice); on a small envelope it is no more than a third as high."""

TEETH = 9
"""Perforations along the shorter side: fewer than in life, so that they are seen."""

SLANT_DEG = -9.0
"""No clerk ever struck a postmark straight."""

BLUE_BLACK = Colour.from_hex("#27324a")


class StampEntry(Entry):
    """A stamp of an invented issue."""

    country: Title = Field(description="who issued it: a country that does not exist")
    value: Title = Field("1d", description="what it cost")
    colour: Ink = Field(Colour.from_hex("#8f2d2a"), description="its colour")
    device: DeviceName = Field("lamp", description="what it shows")


class PostEntry(Entry):
    """What is written and stuck on the face of an envelope."""

    address: Lines | None = Field(None, description="to whom it goes, line by line")
    sender: Lines | None = Field(None, description="who sent it, small in the upper left corner")
    face: TypefaceName = Field("script", description="the hand of the address")
    ink: Ink = Field(BLUE_BLACK, description="its ink")
    stamp: StampEntry | None = Field(None, description="a stamp of invented issue")
    postmark: Title | None = Field(None, description="place and day on the postmark; none, if not given")


def addressed(post: PostEntry, size: Size) -> Iterator[Art]:
    """All of it on a face of a size in mm, its lower left corner at the origin."""
    if post.sender:
        yield from _lines(post, post.sender, Point(size.width * 0.05, size.height * 0.9), size.height * 0.07, size)
    if post.address:
        at = Point(size.width * 0.36, size.height * 0.56)
        yield from _lines(post, post.address, at, size.height * 0.115, size)
    high = min(STAMP.height, size.height / 3)
    wide = high * STAMP.width / STAMP.height
    corner = size.height * 0.07
    box = Rect(size.width - corner - wide, size.height - corner - high, wide, high)
    if post.stamp:
        yield from _stamp(post.stamp, box)
    if post.postmark:
        yield from _postmark(post.postmark, Point(box.x - high * 0.15, box.y + high * 0.3), high * 0.42, size)


def _lines(post: PostEntry, text: str, at: Point, em: float, size: Size) -> Iterator[Art]:
    lines = text.split("\n")
    room = size.width * 0.97 - at.x
    for number, line in enumerate(lines):
        step = em * min(1.25, at.y / (em * len(lines) + 1e-9))
        yield line_of(line, post.face, em, at.plus(0, -number * step), post.ink, room=room)


def _stamp(entry: StampEntry, box: Rect) -> Iterator[Art]:
    """White paper with teeth, the print inside a border."""
    tooth = box.width / TEETH / 2
    holes = [at for edge in _edges(box) for at in edge]
    shade = mixed(WHITE, Colour(0, 0, 0), 0.25)
    yield Filled.box(box.grown(tooth * 0.3), shade)
    yield Filled.box(box, WHITE)
    yield Filled(gathered(Path.circle(at, tooth * 0.55) for at in holes), shade)
    inner = box.grown(-box.width * 0.13)
    yield Filled.box(inner, entry.colour)
    window = inner.grown(-inner.width * 0.06, -inner.height * 0.24, -inner.width * 0.06, -inner.height * 0.19)
    yield Filled.box(window, mixed(entry.colour, WHITE, 0.86))
    if entry.device != "none":
        yield stamped(DEVICES[entry.device], window.grown(-window.width * 0.08), entry.colour)
    room = inner.width * 0.9
    above, below = inner.top - inner.height * 0.145, inner.y + inner.height * 0.065
    yield line_of(entry.country.upper(), "sans bold", inner.height * 0.14, Point(inner.centre.x, above), WHITE,
                  align="middle", room=room)  # fmt: skip
    yield line_of(entry.value, "clarendon bold", inner.height * 0.2, Point(inner.centre.x, below), WHITE,
                  align="middle", room=room)  # fmt: skip


def _edges(box: Rect) -> Iterator[list[Point]]:
    """Where the holes of the perforation stand."""
    for start, end in zip(box.corners, (*box.corners[1:], box.corners[0]), strict=True):
        length = abs(end.x - start.x) + abs(end.y - start.y)
        count = round(length / box.width * TEETH)
        steps = [(n + 0.5) / count for n in range(count)]
        yield [Point(start.x + (end.x - start.x) * s, start.y + (end.y - start.y) * s) for s in steps]


def _postmark(text: str, middle: Point, radius: float, size: Size) -> Iterator[Art]:
    """Two rings with place and day between, and waves over the stamp."""
    ink = Colour.from_hex("#3b3936")
    pen = Pen(max(0.05, radius * 0.07), ink)
    art: list[Art] = [Stroked(Path.circle(Point(0, 0), r), pen) for r in (radius, radius * 0.62)]
    place, _, day = text.partition(",")
    for words, y in ((place.strip(), 0.08), (day.strip(), -0.3)):
        if words:
            art.append(
                line_of(words, "sans bold", radius * 0.3, Point(0, y * radius), ink, align="middle", room=radius)
            )
    waves = [
        Path((("M", radius * 1.05, y), *_wave(radius * 1.05, y, min(radius * 3.2, size.width - middle.x), radius)))
        for y in (radius * step for step in (-0.45, -0.15, 0.15, 0.45))
    ]
    art += [Stroked(wave, pen) for wave in waves]
    yield Group(tuple(art), Transform.turn(SLANT_DEG).moved(*middle))


def _wave(x: float, y: float, end: float, radius: float) -> Iterator[tuple[str | float, ...]]:
    step, rise = radius * 0.45, radius * 0.12
    while x < end:
        yield ("C", x + step / 3, y + rise, x + 2 * step / 3, y - rise, x + step, y)
        x += step
