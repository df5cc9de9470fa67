"""The contact sheet: the shelf from the front, at true size and at 400 %, as PDF and as pictures."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path as FilePath

from ..ground.art import Group, Written
from ..ground.drawing import Art, Colour
from ..ground.geometry import Point, Size
from ..ground.typefaces import set_line
from ..typesetting.stand_ins import face_with
from .pdf import PdfFile
from .pdf_pixels import rendered_page
from .shelf_art import TIMBER, row_art
from .shelf_front import Front, Row, rows_of

__all__ = ["CONTACT_SHEET", "write_contact_sheet"]

CONTACT_SHEET = "spines.pdf"

SCALES = ((1.0, "at true size", 300.0), (4.0, "at 400 %", 150.0))
"""How much larger, what to call it, and the dots per inch of its picture."""

MARGIN, HEADING, LABEL = 12.0, 8.0, 5.0
BELOW = 3.0
"""What is left white under a row, in mm."""

INK = Colour.from_hex("#33302c")


@dataclass(frozen=True, slots=True)
class Scaled:
    """A row and how much larger than life it is drawn."""

    row: Row
    scale: float

    @property
    def height(self) -> float:
        """What it needs on the page, with its label and its boards, in mm."""
        return LABEL + self.row.height * self.scale + 2 * TIMBER + BELOW


def write_contact_sheet(folder: FilePath, shelf: str, seen: Sequence[Front], sheet: Size) -> list[str]:
    """Write the PDF and a PNG of each of its pages; returns their names."""
    page = Size(max(sheet), min(sheet))
    resolutions: list[float] = []
    with PdfFile(folder / CONTACT_SHEET, title=f"{shelf}: spines") as pdf:
        for scale, called, dpi in SCALES:
            room = (page.width - 2 * MARGIN - 2 * TIMBER) / scale
            rows = [Scaled(row, scale) for front in seen for row in rows_of(front, room)]
            for some in _pages(rows, page.height):
                size = Size(page.width, max(page.height, _height(some)))
                with pdf.page(size) as canvas:
                    Group(tuple(_parts(f"{shelf}: spines {called}", some, size))).draw(canvas)
                resolutions.append(dpi)
    return [CONTACT_SHEET, *_pictures(folder, resolutions)]


def _pages(rows: Sequence[Scaled], height: float) -> Iterator[list[Scaled]]:
    page: list[Scaled] = []
    for row in rows:
        if page and _height([*page, row]) > height:
            yield page
            page = []
        page.append(row)
    if page:
        yield page


def _height(rows: Sequence[Scaled]) -> float:
    """What rows need, with heading and margins."""
    return 2 * MARGIN + HEADING + sum(row.height for row in rows)


def _parts(heading: str, rows: Sequence[Scaled], size: Size) -> Iterator[Art]:
    """The heading of a page, and its rows below, each under its name."""
    top = size.height - MARGIN
    yield Written(set_line(face_with(heading, "sans bold"), 4.0, heading), Point(MARGIN, top - 4.0), INK)
    y = top - HEADING
    for row in rows:
        if row.row.name:
            name = set_line(face_with(row.row.name, "sans"), 3.0, row.row.name)
            yield Written(name, Point(MARGIN, y - LABEL + 1.2), INK)
        y -= row.height
        yield row_art(row.row, row.scale, Point(MARGIN + TIMBER, y + BELOW + TIMBER))


def _pictures(folder: FilePath, resolutions: Sequence[float]) -> Iterator[str]:
    """Every page as a PNG, rendered from the PDF itself."""
    for number, dpi in enumerate(resolutions):
        name = f"{CONTACT_SHEET.removesuffix('.pdf')}-{number + 1}.png"
        rendered_page(folder / CONTACT_SHEET, number, dpi).save(folder / name)
        yield name
