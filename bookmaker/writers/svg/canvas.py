"""Art as SVG elements, in thousandths of a millimetre, y up; what lies outside the window is left out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager, nullcontext
from xml.sax.saxutils import quoteattr

from ...ground.drawing import BLACK, Art, Colour, Pen, Tag
from ...ground.geometry import Path, Point, Rect, Transform
from ...ground.imported import ImportedPage
from ...ground.pictures import Picture
from ...ground.typefaces import Run, TextLine, Typeface
from .definitions import Definitions
from .images import seen_part
from .paths import MICROMETRES, path_data

__all__ = ["SvgCanvas"]

MITRE = 5.0
"""A bend reaches at most so many widths of its line beyond its corner: what is sharper is cut off."""

TALL = 2.0
"""No ink of a line of text lies further from its baseline, in ems."""


class SvgCanvas:
    """A drawing surface that gathers elements; `window` is what is seen of it, in the coordinates of what is drawn.

    Glyphs, clips, pictures and art that repeats go into `definitions`, which several canvases share.
    """

    def __init__(self, definitions: Definitions, window: Rect, to_paper: Transform | None = None) -> None:
        self._definitions = definitions
        self._window: Rect | None = window
        self._to_paper = to_paper or Transform()
        self._elements: list[str] = []

    def content(self) -> str:
        """All elements so far."""
        return "".join(self._elements)

    def fill(self, path: Path, colour: Colour) -> None:
        """Fill an outline (non-zero winding)."""
        self._fill(path, _filled(colour))

    def veil(self, path: Path, colour: Colour, cover: float) -> None:
        """Fill an outline with ink that hides what is under it by a share from 0 to 1."""
        self._fill(path, f'{_filled(colour)} fill-opacity="{_short(cover)}"')

    def _fill(self, path: Path, ink: str) -> None:
        data = path_data(path, self._window) if self._window else ""
        if data:
            self._elements.append(f'<path{ink} d="{data}"/>')

    def stroke(self, path: Path, pen: Pen) -> None:
        """Draw along a path."""
        data = path_data(path, self._window, pen.width * MITRE) if self._window else ""
        if data:
            dash = " ".join(_short(length * MICROMETRES) for length in pen.dash)
            dashed = f' stroke-dasharray="{dash}"' if dash else ""
            width = _short(pen.width * MICROMETRES)
            attributes = f'fill="none" stroke="{_colour(pen.colour)}" stroke-width="{width}"{dashed}'
            self._elements.append(f'<path {attributes} d="{data}"/>')

    def text(self, line: TextLine, at: Point, colour: Colour) -> None:
        """Set one line of shaped text with its left end on the baseline at a point."""
        if not self._shows(line, at):
            return
        face: Typeface | None = None
        runs: list[tuple[float, Run]] = []
        for x, run in line.runs:
            if run.typeface is not face:
                self._set(face, runs, line, at, colour)
                face, runs = run.typeface, []
            runs.append((x, run))
        self._set(face, runs, line, at, colour)

    def _shows(self, line: TextLine, at: Point) -> bool:
        """Whether any of a line can lie in the window."""
        window, reach = self._window, TALL * line.size
        if window is None or not window.y - reach <= at.y <= window.top + reach or at.x > window.right + reach:
            return False
        return at.x >= window.x or at.x + line.width + reach >= window.x

    def _set(
        self, face: Typeface | None, runs: Sequence[tuple[float, Run]], line: TextLine, at: Point, colour: Colour
    ) -> None:
        """Set runs of one typeface, in its units."""
        if face is None:
            return
        em = face.units_per_em
        per_mm, tracked = em / line.size, em * line.tracking / line.size
        glyph = self._definitions.glyphs(face)
        uses: list[str] = []
        for start, run in runs:
            x = start * per_mm
            for gid, advance, dx, dy, _ in run.glyphs:
                name = glyph(gid)
                if name:
                    across, up = round(x + dx * em), round(dy * em)
                    uses.append(f'<use href="#{name}"{_at(across, up)}/>')
                x += advance * em + tracked
        if uses:
            matrix = _matrix(Transform.stretch(1 / per_mm, 1 / per_mm).moved(*at), MICROMETRES)
            self._elements.append(f"<g{_filled(colour)}{matrix}>{''.join(uses)}</g>")

    def picture(self, picture: Picture, into: Rect) -> None:
        """Place a picture, stretched to fill a rectangle, or what is seen of it if that is less than half."""
        seen = _common(into, self._window) if self._window else None
        if seen:
            part, shown = seen_part(picture, into, seen)
            name = self._definitions.picture(picture, part, self._on_paper(shown))
            self._elements.append(f'<use href="#{name}"{_upright(shown)}/>')

    def imported(self, page: ImportedPage, into: Rect) -> None:
        """Place a page of a PDF file, upright as viewers show it, stretched to fill a rectangle."""
        if self._window and into.overlaps(self._window):
            name = self._definitions.imported(page, self._on_paper(into))
            self._elements.append(f'<use href="#{name}"{_upright(into)}/>')

    def _on_paper(self, into: Rect) -> tuple[float, float]:
        """Width and height in mm at which a rectangle stands on the paper."""
        a, b, c, d, *_ = self._to_paper
        return into.width * (a * a + b * b) ** 0.5, into.height * (c * c + d * d) ** 0.5

    def repeat(self, art: Art, bounds: Rect, places: Sequence[Point]) -> None:
        """Draw the same art at several places: once among the definitions, which is then used at each."""
        window = self._window
        seen = [place for place in places if window and bounds.moved(*place).overlaps(window)]
        if not seen:
            return
        inner = SvgCanvas(self._definitions, bounds, self._to_paper)
        art.draw(inner)
        name = self._definitions.repeated(inner.content())
        units = ((round(x * MICROMETRES), round(y * MICROMETRES)) for x, y in seen)
        self._elements += [f'<use href="#{name}"{_at(*at)}/>' for at in units]

    @contextmanager
    def placed(self, transform: Transform, clip: Path | None = None) -> Iterator[None]:
        """Within the block, coordinates go through `transform`; `clip`, seen from inside, bounds the ink."""
        outer = self._elements, self._window, self._to_paper
        self._elements, self._to_paper = [], transform.then(self._to_paper)
        flattened = transform.a * transform.d == transform.b * transform.c
        self._window = None if flattened or not self._window else transform.inverse.apply_to(self._window)
        if clip is not None and self._window:
            bounds = clip.bounds if clip.commands else Rect(0, 0, 0, 0)
            if bounds.contains(self._window) and _is_rectangle(clip):
                clip = None  # it takes nothing off that is seen
            else:
                self._window = _common(self._window, bounds)
        try:
            yield
        finally:
            inner = self.content()
            self._elements, self._window, self._to_paper = outer
            if inner:
                clipped = f' clip-path="url(#{self._definitions.clip(path_data(clip))})"' if clip else ""
                attributes = _matrix(transform, 1) + clipped
                self._elements.append(f"<g{attributes}>{inner}</g>" if attributes else inner)

    @contextmanager
    def layer(self, title: str) -> Iterator[None]:
        """Within the block, all that is drawn is of a class, which a page may hide."""
        outer, self._elements = self._elements, []
        try:
            yield
        finally:
            inner, self._elements = self.content(), outer
            if inner:
                self._elements.append(f"<g class={quoteattr(title)}>{inner}</g>")

    def tagged(self, tag: Tag) -> AbstractContextManager[None]:  # noqa: ARG002 (letters are outlines here)
        """Nothing is said of text: it is drawn."""
        return nullcontext()


def _is_rectangle(path: Path) -> bool:
    """Whether an outline is that of an upright rectangle."""
    kinds, points = [command[0] for command in path.commands], set(path.points())
    sides = {point.x for point in points}, {point.y for point in points}
    return kinds == ["M", "L", "L", "L", "Z"] and len(points) == 4 and all(len(side) == 2 for side in sides)


def _common(one: Rect, other: Rect) -> Rect | None:
    """What two rectangles share; None if they lie apart."""
    x, y = max(one.x, other.x), max(one.y, other.y)
    width, height = min(one.right, other.right) - x, min(one.top, other.top) - y
    return Rect(x, y, width, height) if width > 0 and height > 0 else None


def _at(x: int, y: int) -> str:
    """Where a use stands, in units."""
    return (f' x="{x}"' if x else "") + (f' y="{y}"' if y else "")


def _upright(into: Rect) -> str:
    """What puts a picture of one unit each way, which has its head up where y goes down, into a rectangle."""
    sides = (round(side * MICROMETRES) for side in (into.width, -into.height, into.x, into.top))
    return ' transform="matrix({} 0 0 {} {} {})"'.format(*sides)


def _matrix(transform: Transform, scale: float) -> str:
    """The attribute for a transform, its factors enlarged by a scale; nothing for one that changes nothing."""
    factors = [_short(factor * scale) for factor in transform[:4]]
    x, y = round(transform.e * MICROMETRES), round(transform.f * MICROMETRES)
    if factors != ["1", "0", "0", "1"]:
        return f' transform="matrix({" ".join(factors)} {x} {y})"'
    return f' transform="translate({x} {y})"' if x or y else ""


def _short(number: float) -> str:
    """Six digits, which are true to a thousandth of a millimetre on a sheet a metre wide."""
    return f"{number:.6g}"


def _filled(colour: Colour) -> str:
    """The attribute for a fill; black needs none."""
    return "" if colour == BLACK else f' fill="{_colour(colour)}"'


def _colour(colour: Colour) -> str:
    """A colour in the shortest way: three digits where each stands for two alike."""
    digits = bytes(round(part * 255) for part in colour).hex()
    return f"#{digits[::2]}" if digits[::2] == digits[1::2] else f"#{digits}"
