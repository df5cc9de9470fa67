"""Art as the operators of a PDF page: one call, one operator or few; nothing is worked out here."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from math import nan

from ...ground.drawing import Art, Colour, Pen, Tag
from ...ground.geometry import Path, Point, Rect, Transform
from ...ground.imported import ImportedPage
from ...ground.pictures import Picture
from ...ground.typefaces import TextLine, Typeface
from ...ground.units import to_pt
from ...typesetting.word_line import WordLine
from .fonts import EmbeddedFont
from .numbers import matrix, number, point, points
from .tags import marked, text_string

__all__ = ["PageResources", "PdfCanvas"]

PATH_OPERATORS = {"M": b"m", "L": b"l", "C": b"c", "Z": b"h"}


@dataclass(frozen=True, slots=True)
class PageResources:
    """What a page may ask of its document, each answered with the name the page is to use.

    A picture is asked for with the size in mm at which it will stand on the paper, a form (art that is drawn
    several times) with its drawing and the rectangle that bounds it. `language` is that of the document.
    """

    font: Callable[[Typeface], tuple[str, EmbeddedFont]]
    picture: Callable[[Picture, float, float], str]
    form: Callable[[PdfCanvas, Rect], str]
    imported: Callable[[ImportedPage], str]
    layer: Callable[[str], str]
    cover: Callable[[float], str]
    language: str


@dataclass(slots=True)
class _State:
    """What the graphics state holds at the moment, so that nothing is said twice."""

    to_paper: Transform = field(default_factory=Transform)
    ink: Colour | None = None
    pen: Pen | None = None
    font: tuple[str, float] | None = None
    tracking: float = 0.0


class PdfCanvas:
    """A drawing surface that gathers a page's operators (ISO 32000-1, Annex A); lengths in mm, y up."""

    def __init__(self, resources: PageResources) -> None:
        self.fonts: dict[Typeface, tuple[str, EmbeddedFont]] = {}
        self.placed_objects: set[str] = set()
        self.layers: list[str] = []
        self.covers: list[str] = []
        self.tags: list[Tag] | None = []  # None where art is drawn that pages repeat, which has no place in a reading
        self._resources = resources
        self._operators: list[bytes] = []
        self._state = _State()

    def content(self) -> bytes:
        """All operators so far."""
        return b"\n".join(self._operators)

    def fill(self, path: Path, colour: Colour) -> None:
        """Fill an outline (non-zero winding)."""
        self._operators += [*self._ink(colour), _outline(path), b"f"]

    def veil(self, path: Path, colour: Colour, cover: float) -> None:
        """Fill an outline with ink that hides what is under it by a share from 0 to 1 (ISO 32000-1, 11.6.4.4)."""
        name = self._resources.cover(cover)
        if name not in self.covers:
            self.covers.append(name)
        with self.placed(Transform()):
            self._operators.append(b"/%b gs" % name.encode())
            self.fill(path, colour)

    def stroke(self, path: Path, pen: Pen) -> None:
        """Draw along a path."""
        self._operators += [*self._take(pen), _outline(path), b"S"]

    def text(self, line: TextLine, at: Point, colour: Colour) -> None:
        """Set one line of shaped text with its left end on the baseline at a point."""
        if isinstance(line, WordLine) and self._words(line, at, colour):
            return
        if not line.runs:
            return
        x, size = line.runs[0][0], line.size
        out = [*self._ink(colour), b"BT ", *self._tracked(line.tracking)]
        out += [points(at.x + x), b" ", points(at.y), b" Td "]
        face: Typeface | None = None
        rise = 0.0
        per_mm = -1000 / size
        reached = x
        for x, run in line.runs:
            if run.typeface is not face:
                out.append(b"]TJ " if face else b"")
                face = run.typeface
                name, font = self._font(face)
                out += [*self._select(name, size), b"["]
            gap = x - reached
            if not -1e-6 < gap < 1e-6:
                out.append(b"%.2f " % (gap * per_mm))
            for said, pieces in font.set_text(run):
                out.append(b"]TJ/Span<</ActualText<%b>>>BDC[" % text_string(said) if said else b"")
                for raised, shown in pieces:
                    if raised != rise:
                        rise = raised
                        out.append(b"]TJ %b Ts[" % points(raised * size))
                    out.append(shown)
                out.append(b"]TJ EMC[" if said else b"")
            reached = x + run.width * size + line.tracking * len(run.glyphs)
        out.append(b"]TJ 0 Ts ET" if rise else b"]TJ ET")
        self._operators.append(b"".join(out))

    def _words(self, line: WordLine, at: Point, colour: Colour) -> bool:
        """Set a line of words at once, if none of them has raised glyphs."""
        name, font = self._font(line.space.typeface)
        moved = b"%.2f " % (-1000 * line.gap / line.size) if not -1e-6 < line.gap < 1e-6 else b""
        words = font.level_text(line.words, line.space, moved)
        if words is None:
            return False
        shown = [*self._ink(colour), b"BT ", *self._tracked(line.tracking)]
        shown += [points(at.x), b" ", points(at.y), b" Td ", *self._select(name, line.size), b"[", words, b"]TJ ET"]
        self._operators.append(b"".join(shown))
        return True

    def picture(self, picture: Picture, into: Rect) -> None:
        """Place a picture, stretched to fill a rectangle."""
        a, b, c, d, *_ = self._state.to_paper
        width, height = into.width * (a * a + b * b) ** 0.5, into.height * (c * c + d * d) ** 0.5
        name = self._resources.picture(picture, width, height)
        self.placed_objects.add(name)
        sides = b" ".join((points(into.width), b"0 0", points(into.height), points(into.x), points(into.y)))
        self._operators.append(b"q %b cm /%b Do Q" % (sides, name.encode()))

    def repeat(self, art: Art, bounds: Rect, places: Sequence[Point]) -> None:
        """Draw the same art at several places: once into a form (ISO 32000-1, 8.10), which is then shown at each."""
        inner = PdfCanvas(self._resources)
        inner.tags = None
        # a form begins with what the page holds where it is shown, which may be tracked letters
        inner._state = _State(to_paper=self._state.to_paper, tracking=nan)
        art.draw(inner)
        name = self._resources.form(inner, bounds)
        self.placed_objects.add(name)
        shown = b" cm /%b Do Q" % name.encode()
        self._operators += [b"q 1 0 0 1 " + point(place) + shown for place in places]

    def imported(self, page: ImportedPage, into: Rect) -> None:
        """Place a page of a PDF file, upright as viewers show it, stretched to fill a rectangle."""
        name = self._resources.imported(page)
        self.placed_objects.add(name)
        self._operators.append(b"q %b cm /%b Do Q" % (matrix(page.onto(into)), name.encode()))

    @contextmanager
    def placed(self, transform: Transform, clip: Path | None = None) -> Iterator[None]:
        """Within the block, coordinates go through `transform`; `clip`, seen from inside, bounds the ink."""
        outer = self._state
        self._state = replace(outer, to_paper=transform.then(outer.to_paper))
        self._operators.append(b"q " + matrix(transform) + b" cm")
        if clip is not None:
            self._operators += [_outline(clip), b"W n"]
        try:
            yield
        finally:
            self._operators.append(b"Q")
            self._state = outer

    @contextmanager
    def tagged(self, tag: Tag) -> Iterator[None]:
        """Within the block, text has a role, if the page can say so, or a language other than the file's."""
        if tag.role and self.tags is not None:
            self._operators.append(marked(tag.role, len(self.tags)))
            self.tags.append(tag)
        elif tag.language and tag.language != self._resources.language:
            self._operators.append(b"/Span<</Lang<%b>>>BDC" % text_string(tag.language))
        else:
            yield
            return
        yield
        self._operators.append(b"EMC")

    @contextmanager
    def layer(self, title: str) -> Iterator[None]:
        """Within the block, all that is drawn belongs to a layer, which viewers show or hide (ISO 32000-1, 8.11)."""
        name = self._resources.layer(title)
        if name not in self.layers:
            self.layers.append(name)
        self._operators.append(b"/OC /%b BDC" % name.encode())
        with self.placed(Transform()):
            yield
        self._operators.append(b"EMC")

    def _font(self, typeface: Typeface) -> tuple[str, EmbeddedFont]:
        known = self.fonts.get(typeface)
        if known is None:
            known = self.fonts[typeface] = self._resources.font(typeface)
        return known

    def _select(self, name: str, size: float) -> list[bytes]:
        if self._state.font == (name, size):
            return []
        self._state.font = (name, size)
        # Six decimals: at the end of a long line of tiny type four would be off by 0.01 mm.
        return [b"/%b %b Tf " % (name.encode(), number(to_pt(size), 6))]

    def _tracked(self, tracking: float) -> list[bytes]:
        """What follows each glyph besides its advance (ISO 32000-1, 9.3.2)."""
        if self._state.tracking == tracking:
            return []
        self._state.tracking = tracking
        return [number(to_pt(tracking), 6) + b" Tc "]

    def _ink(self, colour: Colour) -> list[bytes]:
        if self._state.ink == colour:
            return []
        self._state.ink = colour
        return [_colour(colour, b"g", b"rg") + b" "]

    def _take(self, pen: Pen) -> list[bytes]:
        if self._state.pen == pen:
            return []
        self._state.pen = pen
        dash = b" ".join(points(length) for length in pen.dash)
        return [b"%b %b w [%b] 0 d" % (_colour(pen.colour, b"G", b"RG"), points(pen.width), dash)]


def _colour(colour: Colour, grey: bytes, rgb: bytes) -> bytes:
    """A colour and its operator; pure greys print with black ink alone."""
    if colour.red == colour.green == colour.blue:
        return number(colour.red) + b" " + grey
    return b" ".join((*(number(part) for part in colour), rgb))


def _outline(path: Path) -> bytes:
    # command[0] is a letter, all after it are numbers; a sheet has a million of them
    return b"\n".join(
        [b" ".join([*map(points, command[1:]), PATH_OPERATORS[command[0]]]) for command in path.commands]  # type: ignore[arg-type,index]
    )
