"""A canvas that writes down what is drawn on it, in the coordinates of the whole sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager, nullcontext
from dataclasses import dataclass, field
from functools import cached_property

from bookmaker.ground.drawing import Art, Colour, Pen, Tag
from bookmaker.ground.geometry import Path, Point, Rect, Transform
from bookmaker.ground.imported import ImportedPage
from bookmaker.ground.pictures import Picture
from bookmaker.ground.typefaces import TextLine

__all__ = ["Filled", "Imported", "Placed", "RecordingCanvas", "Stroked", "Written", "ink_box", "record"]


@dataclass(frozen=True)
class Filled:
    """An outline filled with a colour, as it was drawn, and the whole map it was drawn through; how much ink hides."""

    drawn: Path
    transform: Transform
    colour: Colour
    clips: tuple[Path, ...]
    cover: float = 1.0

    @cached_property
    def path(self) -> Path:
        """The outline where it lies; worked out only for those who ask, since art repeats itself thousandfold."""
        return self.drawn.transformed(self.transform)


@dataclass(frozen=True)
class Stroked:
    """A line drawn along a path; the pen's lengths are as they were given."""

    drawn: Path
    transform: Transform
    pen: Pen
    clips: tuple[Path, ...]

    @cached_property
    def path(self) -> Path:
        """The line where it lies."""
        return self.drawn.transformed(self.transform)


@dataclass(frozen=True)
class Written:
    """A line of text: its left end on the baseline, its right end, and the whole map it was drawn through."""

    line: TextLine
    at: Point
    end: Point
    colour: Colour
    transform: Transform
    clips: tuple[Path, ...]

    @property
    def text(self) -> str:
        """What it says."""
        return self.line.text


@dataclass(frozen=True)
class Placed:
    """A picture: the map that takes the unit square to where it lies."""

    picture: Picture
    transform: Transform
    clips: tuple[Path, ...]

    @property
    def bounds(self) -> Rect:
        """The upright rectangle around it."""
        return self.transform.apply_to(Rect(0, 0, 1, 1))


@dataclass(frozen=True)
class Imported:
    """A page of a PDF file: the map from its own coordinates in mm to where it lies."""

    page: ImportedPage
    transform: Transform
    clips: tuple[Path, ...]

    @property
    def bounds(self) -> Rect:
        """The upright rectangle around it."""
        return self.transform.apply_to(self.page.box)


Mark = Filled | Stroked | Written | Placed | Imported


@dataclass
class RecordingCanvas:
    """Implements `bookmaker.drawing.Canvas`; `marks` holds everything in the order it was drawn."""

    marks: list[Mark] = field(default_factory=list)
    transform: Transform = field(default_factory=Transform)
    clips: tuple[Path, ...] = ()

    def fill(self, path: Path, colour: Colour) -> None:
        """Record a filled outline."""
        self.marks.append(Filled(path, self.transform, colour, self.clips))

    def veil(self, path: Path, colour: Colour, cover: float) -> None:
        """Record an outline filled with thin ink."""
        self.marks.append(Filled(path, self.transform, colour, self.clips, cover))

    def stroke(self, path: Path, pen: Pen) -> None:
        """Record a line."""
        self.marks.append(Stroked(path, self.transform, pen, self.clips))

    def text(self, line: TextLine, at: Point, colour: Colour) -> None:
        """Record a line of text."""
        start, end = self.transform.apply(at), self.transform.apply(at.plus(line.width, 0))
        self.marks.append(Written(line, start, end, colour, self.transform, self.clips))

    def picture(self, picture: Picture, into: Rect) -> None:
        """Record a picture."""
        unit = Transform(a=into.width, d=into.height, e=into.x, f=into.y)
        self.marks.append(Placed(picture, unit.then(self.transform), self.clips))

    def repeat(self, art: Art, bounds: Rect, places: Sequence[Point]) -> None:
        """Record every repetition; ink outside the bounds would be lost."""
        alone = RecordingCanvas()
        art.draw(alone)
        for path in (*(fill.path for fill in alone.fills), *(stroke.path for stroke in alone.strokes)):
            assert bounds.contains(Rect.around(path.points()))
        for place in places:
            with self.placed(Transform.move(*place)):
                art.draw(self)

    def imported(self, page: ImportedPage, into: Rect) -> None:
        """Record a page of a PDF file."""
        self.marks.append(Imported(page, page.onto(into).then(self.transform), self.clips))

    @contextmanager
    def placed(self, transform: Transform, clip: Path | None = None) -> Iterator[None]:
        """Go through a map, and cut off what lies outside a path, for a while."""
        kept = self.transform, self.clips
        self.transform = transform.then(self.transform)
        if clip is not None:
            self.clips = (*self.clips, clip.transformed(self.transform))
        try:
            yield
        finally:
            self.transform, self.clips = kept

    def layer(self, title: str) -> AbstractContextManager[None]:  # noqa: ARG002 (what is drawn is the same)
        """Nothing is recorded of layers."""
        return nullcontext()

    def tagged(self, tag: Tag) -> AbstractContextManager[None]:  # noqa: ARG002 (what is drawn is the same)
        """Nothing is recorded of tags."""
        return nullcontext()

    @property
    def fills(self) -> list[Filled]:
        """The filled outlines."""
        return [mark for mark in self.marks if isinstance(mark, Filled)]

    @property
    def strokes(self) -> list[Stroked]:
        """The lines drawn."""
        return [mark for mark in self.marks if isinstance(mark, Stroked)]

    @property
    def texts(self) -> list[Written]:
        """The lines of text."""
        return [mark for mark in self.marks if isinstance(mark, Written)]

    @property
    def pictures(self) -> list[Placed]:
        """The pictures."""
        return [mark for mark in self.marks if isinstance(mark, Placed)]

    @property
    def pages(self) -> list[Imported]:
        """The pages of PDF files."""
        return [mark for mark in self.marks if isinstance(mark, Imported)]


def record(art: Art) -> RecordingCanvas:
    """Draw some art and return what was drawn."""
    canvas = RecordingCanvas()
    art.draw(canvas)
    return canvas


def ink_box(text: Written) -> Rect:
    """The rectangle around the ink of a line, on the flat."""
    runs = [run for _, run in text.line.runs]
    top, bottom = (max(run.top for run in runs), min(run.bottom for run in runs))
    size, width = text.line.size, text.line.width
    corners = [Point(x, y) for x in (0.0, width) for y in (bottom * size, top * size)]
    start = text.transform.apply(Point(0, 0))
    moved = [text.transform.apply(corner) for corner in corners]
    return Rect.around([point.plus(text.at.x - start.x, text.at.y - start.y) for point in moved])
