"""What all art is made of: shapes, words, pictures, and groups of them; values that draw themselves."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property

from .drawing import BLACK, Art, Canvas, Colour, Pen, Tag
from .geometry import ORIGIN, Path, Point, Rect, Transform
from .imported import ImportedPage
from .pictures import Picture
from .typefaces import TextLine

__all__ = [
    "NOTHING",
    "Awaited",
    "Filled",
    "Group",
    "Imported",
    "Layer",
    "Pictured",
    "Repeated",
    "Stroked",
    "Tagged",
    "Veiled",
    "Written",
]


@dataclass(frozen=True, slots=True)
class Filled:
    """A filled outline."""

    path: Path
    colour: Colour = BLACK

    @classmethod
    def box(cls, rect: Rect, colour: Colour = BLACK) -> Filled:
        """A filled rectangle."""
        return cls(Path.rectangle(rect), colour)

    @property
    def bounds(self) -> Rect:
        """A rectangle that holds all ink."""
        return self.path.bounds

    def draw(self, canvas: Canvas) -> None:
        """Fill it."""
        canvas.fill(self.path, self.colour)


@dataclass(frozen=True, slots=True)
class Veiled:
    """An outline filled with ink that hides what is under it by a share from 0 to 1: light and shade in pictures."""

    path: Path
    colour: Colour
    cover: float

    def draw(self, canvas: Canvas) -> None:
        """Lay it over what is drawn already."""
        canvas.veil(self.path, self.colour, self.cover)


@dataclass(frozen=True, slots=True)
class Stroked:
    """A line drawn along a path."""

    path: Path
    pen: Pen

    @classmethod
    def line(cls, start: Point, end: Point, pen: Pen) -> Stroked:
        """One straight line."""
        return cls(Path.line(start, end), pen)

    @property
    def bounds(self) -> Rect:
        """A rectangle that holds all ink; a sharp bend may reach far out."""
        return self.path.bounds.grown(4 * self.pen.width)

    def draw(self, canvas: Canvas) -> None:
        """Draw along it."""
        canvas.stroke(self.path, self.pen)


@dataclass(frozen=True, slots=True)
class Written:
    """A line of text, its left end on the baseline at a point, turned counter-clockwise by so many quarters."""

    line: TextLine
    at: Point = ORIGIN
    colour: Colour = BLACK
    quarters: int = 0

    def draw(self, canvas: Canvas) -> None:
        """Set it."""
        if not self.quarters:
            canvas.text(self.line, self.at, self.colour)
            return
        with canvas.placed(Transform.quarter_turn(self.quarters).moved(*self.at)):
            canvas.text(self.line, ORIGIN, self.colour)


@dataclass(frozen=True, slots=True)
class Pictured:
    """A picture, stretched to fill a rectangle."""

    picture: Picture
    into: Rect

    def draw(self, canvas: Canvas) -> None:
        """Place it."""
        canvas.picture(self.picture, self.into)


@dataclass(frozen=True, slots=True)
class Imported:
    """A page of a PDF file, upright as viewers show it, stretched to fill a rectangle."""

    page: ImportedPage
    into: Rect

    def draw(self, canvas: Canvas) -> None:
        """Place it."""
        canvas.imported(self.page, self.into)


@dataclass(frozen=True, slots=True)
class Group:
    """Several pieces of art, one over the other; none at all is a blank.

    They go through `transform`, and nothing of them is seen outside `clip`, which is in their own coordinates.
    """

    layers: tuple[Art, ...] = ()
    transform: Transform | None = None
    clip: Path | None = None

    def draw(self, canvas: Canvas) -> None:
        """Draw the layers in order."""
        if self.transform is None and self.clip is None:
            for layer in self.layers:
                layer.draw(canvas)
            return
        with canvas.placed(self.transform or Transform(), self.clip):
            for layer in self.layers:
                layer.draw(canvas)


@dataclass(frozen=True, slots=True)
class Layer:
    """Art that can be hidden and shown together, under a title."""

    title: str
    parts: tuple[Art, ...]

    def draw(self, canvas: Canvas) -> None:
        """Draw the parts in order, in a layer of their own."""
        with canvas.layer(self.title):
            for part in self.parts:
                part.draw(canvas)


@dataclass(frozen=True, slots=True)
class Tagged:
    """Art whose text is told of by a tag."""

    art: Art
    tag: Tag

    def draw(self, canvas: Canvas) -> None:
        """Draw it, and say so."""
        with canvas.tagged(self.tag):
            self.art.draw(canvas)


@dataclass(frozen=True)
class Awaited:
    """Art that is long to make: it waits until it is drawn, which may never be, and is kept then."""

    make: Callable[[], Iterable[Art]]

    @cached_property
    def _layers(self) -> tuple[Art, ...]:
        return tuple(self.make())

    def draw(self, canvas: Canvas) -> None:
        """Draw it, made now or before."""
        for layer in self._layers:
            layer.draw(canvas)


NOTHING = Group()
"""A blank."""


@dataclass(frozen=True, slots=True)
class Repeated:
    """Shapes and lines, one over the other, that stand at each of several places."""

    layers: tuple[Filled | Stroked, ...]
    places: tuple[Point, ...]

    def draw(self, canvas: Canvas) -> None:
        """Draw them at every place."""
        bounds = Rect.around([corner for layer in self.layers for corner in layer.bounds.corners])
        canvas.repeat(Group(self.layers), bounds, self.places)
