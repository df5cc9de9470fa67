"""Some looks of one book to choose from: spine and front of each, larger than they are, with its number below."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import BinaryIO

from ..ground.art import Group, Written
from ..ground.drawing import Art, Colour
from ..ground.geometry import Point, Rect, Size, Transform
from ..ground.typefaces import set_line
from ..sheets.facsimiles import Facsimile
from ..typesetting.stand_ins import face_with
from .pdf import PdfFile

__all__ = ["write_looks"]

MARGIN, HEADING, LABEL, BETWEEN = 12.0, 10.0, 6.0, 6.0
LARGEST = 2.0
"""So many times as large as it is a book is shown, where the page has room for that."""

FEWEST_ACROSS = 3
INK = Colour.from_hex("#33302c")


def write_looks(to: BinaryIO, heading: str, looks: Sequence[tuple[str, Facsimile]], sheet: Size) -> None:
    """Write the pages as PDF: each look under what it is called, row by row."""
    page = Size(min(sheet), max(sheet))
    wide = page.width - 2 * MARGIN
    largest = Size(max(one.box.width for _, one in looks), max(one.box.height for _, one in looks))
    scale = min(LARGEST, (wide - BETWEEN * (FEWEST_ACROSS - 1)) / FEWEST_ACROSS / largest.width)
    cell = Size(largest.width * scale + BETWEEN, largest.height * scale + LABEL + BETWEEN)
    across = max(1, int((wide + BETWEEN) / cell.width))
    down = max(1, int((page.height - 2 * MARGIN - HEADING) / cell.height))
    with PdfFile(to, title=heading) as pdf:
        for start in range(0, len(looks), across * down):
            some = looks[start : start + across * down]
            with pdf.page(page) as canvas:
                for art in _parts(f"{heading}, {scale * 100:.0f} %", some, page, cell, across, scale):
                    art.draw(canvas)


def _parts(
    heading: str, looks: Sequence[tuple[str, Facsimile]], page: Size, cell: Size, across: int, scale: float
) -> Iterator[Art]:
    top = page.height - MARGIN
    yield Written(set_line(face_with(heading, "sans bold"), 4.0, heading), Point(MARGIN, top - 4.0), INK)
    for number, (name, seen) in enumerate(looks):
        row, column = divmod(number, across)
        corner = Point(MARGIN + column * cell.width, top - HEADING - (row + 1) * cell.height + BETWEEN)
        yield Written(set_line(face_with(name, "sans"), 3.2, name), corner.plus(0, 1.2), INK)
        yield _enlarged(seen, corner.plus(0, LABEL), scale)


def _enlarged(seen: Facsimile, at: Point, scale: float) -> Art:
    box: Rect = seen.box
    return Group((seen.art,), Transform(a=scale, d=scale).moved(at.x - box.x * scale, at.y - box.y * scale))
