"""The cutting list: what is cut by hand, by material, with a box to tick for every part."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path as FilePath

from ..cutting import CutPart
from ..drawing import BLACK, Art, Canvas, Colour, Pen
from ..geometry import Path, Point, Rect, Size
from ..stand_ins import face_with
from ..typefaces import set_line
from .pdf import PdfFile

__all__ = ["CUTTING_LIST", "write_cutting_list"]

CUTTING_LIST = "cutting list"
"""The name under which the list is written."""

EDGE = 15.0
ROW, HEADING = 6.0, 11.0
TYPE, HEADING_TYPE = 3.0, 4.2
BOX = 2.8
"""Lengths on the page in mm."""

GREY = Colour(0.55, 0.55, 0.55)
HAIRLINE = Pen(0.1, GREY)
BOX_PEN = Pen(0.15)

NOTES = (
    "All lengths are millimetres. The height runs along the spine, and so does the grain of board and card.",
    "Fresh blade, steel rule, cutting mat; cut away from your hand, in several light strokes. Saw and sand wood with",
    "eyes and lungs protected as its supplier and your local rules ask. Small parts are not for small children.",
)

COLUMNS = (("book", 0.05), ("part", 0.46), ("pieces", 0.69), ("height", 0.80), ("width", 0.90), ("thick", 1.0))
"""Each column with its place as a share of the width; numbers end there, words begin there."""


@dataclass(frozen=True, slots=True)
class Words:
    """Text that begins at a point, or ends there."""

    text: str
    at: Point
    face: str
    size: float
    ends: bool = False
    room: float = 1e9

    def draw(self, canvas: Canvas) -> None:
        """Set it, smaller if it is longer than its room."""
        face = face_with(self.text, self.face)
        line = set_line(face, self.size, self.text)
        if line.width > self.room:
            line = set_line(face, self.size * self.room / line.width, self.text)
        canvas.text(line, self.at.plus(-line.width if self.ends else 0, 0), BLACK)


@dataclass(frozen=True, slots=True)
class Ruled:
    """A path drawn with a pen."""

    path: Path
    pen: Pen

    def draw(self, canvas: Canvas) -> None:
        """Draw it."""
        canvas.stroke(self.path, self.pen)


def write_cutting_list(path: FilePath, shelf: str, parts: Sequence[tuple[str, CutPart]], sheet: Size) -> None:
    """Write the list; `parts` gives each part with the book it is for, `sheet` is the page in mm."""
    area = Rect(0, 0, *sheet).grown(-EDGE)
    with PdfFile(path, title=f"{shelf}: {CUTTING_LIST}") as pdf:
        for number, rows in enumerate(_paged(_rows(parts), area), start=1):
            with pdf.page(sheet) as canvas:
                for art in _page(shelf, number, rows, area):
                    art.draw(canvas)


Row = str | tuple[str, CutPart]
"""A heading, or a part with its book."""


def _rows(parts: Sequence[tuple[str, CutPart]]) -> Iterator[Row]:
    """By material in alphabetical order, the thickest first."""

    def material(item: tuple[str, CutPart]) -> tuple[str, float]:
        return item[1].material, -item[1].thickness

    for (name, thickness), group in groupby(sorted(parts, key=material), key=material):
        yield f"{name}, {-thickness:.2f} thick"
        yield from group


def _paged(rows: Iterator[Row], area: Rect) -> list[list[Row]]:
    """Rows for each page; a heading is not left alone at the foot."""
    room = area.height - 2 * HEADING - len(NOTES) * ROW
    pages: list[list[Row]] = [[]]
    left = room
    for row in rows:
        height = HEADING if isinstance(row, str) else ROW
        if left < height + (ROW if isinstance(row, str) else 0):
            pages.append([])
            left = room
        pages[-1].append(row)
        left -= height
    return pages


def _page(shelf: str, number: int, rows: Sequence[Row], area: Rect) -> Iterator[Art]:
    bold, sans = "sans bold", "sans"
    title = f"Cutting list · {shelf}" + (f" · page {number}" if number > 1 else "")
    yield Words(title, Point(area.x, area.top - HEADING_TYPE), bold, HEADING_TYPE * 1.2, room=area.width)
    y = area.top - HEADING_TYPE - HEADING * 0.8
    for name, share in COLUMNS:
        yield Words(name, Point(area.x + area.width * share, y), sans, TYPE * 0.85, ends=share > 0.5)
    for row in rows:
        if isinstance(row, str):
            y -= HEADING
            yield Words(row, Point(area.x, y), bold, HEADING_TYPE, room=area.width)
        else:
            y -= ROW
            yield from _part(row, area, y)
    for line, words in enumerate(reversed(NOTES)):
        yield Words(words, Point(area.x, area.y + line * TYPE * 1.4), sans, TYPE * 0.85, room=area.width)


def _part(row: tuple[str, CutPart], area: Rect, y: float) -> Iterator[Art]:
    book, part = row
    yield Ruled(Path.rectangle(Rect(area.x, y - 0.4, BOX, BOX)), BOX_PEN)
    texts = (
        book,
        part.what,
        str(part.count),
        f"{part.height:.2f}",
        f"{part.width:.2f}",
        f"{part.thickness:.2f}",
    )
    for (_, share), text in zip(COLUMNS, texts, strict=True):
        room = area.width * 0.4 if share < 0.1 else area.width * 0.18
        yield Words(text, Point(area.x + area.width * share, y), "sans", TYPE, ends=share > 0.5, room=room)
    yield Ruled(Path.line(Point(area.x, y - 1.6), Point(area.right, y - 1.6)), HAIRLINE)
