"""The contact sheet: the spines of the shelf side by side, at true size and at 400 %, as PDF and as pictures."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby
from pathlib import Path as FilePath

import pypdfium2

from ..drawing import Canvas, Colour
from ..flat import Role
from ..geometry import Path, Point, Rect, Size, Transform
from ..piece import Piece
from ..stand_ins import face_with
from ..typefaces import set_line
from ..units import MM_PER_INCH, to_pt
from .pdf import PdfFile

__all__ = ["CONTACT_SHEET", "StandingSpine", "spine_of", "write_contact_sheet"]

CONTACT_SHEET = "spines.pdf"

SCALES = ((1.0, "at true size", 300.0), (4.0, "at 400 %", 150.0))
"""How much larger, what to call it, and the dots per inch of its picture."""

MARGIN, HEADING, LABEL = 12.0, 8.0, 5.0
BETWEEN_BOOKS = 0.15
"""Books on a shelf stand so close, in mm."""

RECESS, BOARD, INK = Colour.from_hex("#4b4038"), Colour.from_hex("#a98a62"), Colour.from_hex("#33302c")


@dataclass(frozen=True, slots=True)
class StandingSpine:
    """The spine of a book: the piece it is printed on, where it lies there, and the space the book stands in."""

    piece: Piece
    rect: Rect
    space: str


@dataclass(frozen=True, slots=True)
class Row:
    """Spines in a line: `spines` come with their left edges; `label` is the space they stand in; all in mm."""

    label: str
    spines: tuple[tuple[float, StandingSpine], ...]
    scale: float

    @property
    def height(self) -> float:
        """From the board to the head of the tallest spine."""
        return max(spine.rect.height for _, spine in self.spines) * self.scale


def spine_of(pieces: Sequence[Piece], space: str | None) -> StandingSpine | None:
    """The spine of a book among its pieces, that of its jacket if it wears one; None if none of them has one."""
    for piece in reversed(pieces):
        for panel in piece.flat.panels:
            if panel.role is Role.SPINE:
                return StandingSpine(piece, panel.rect, space or "")
    return None


def write_contact_sheet(folder: FilePath, shelf: str, spines: Sequence[StandingSpine], sheet: Size) -> list[str]:
    """Write the PDF and a PNG of each of its pages; returns their names."""
    page = Size(max(sheet), min(sheet))
    resolutions: list[float] = []
    with PdfFile(folder / CONTACT_SHEET, title=f"{shelf}: spines") as pdf:
        for scale, called, dpi in SCALES:
            for rows in _pages(list(_rows(spines, page.width - 2 * MARGIN, scale)), page.height):
                size = Size(page.width, max(page.height, _height(rows)))
                with pdf.page(size) as canvas:
                    _draw(canvas, f"{shelf}: spines {called}", rows, size)
                resolutions.append(dpi)
    return [CONTACT_SHEET, *_pictures(folder, resolutions)]


def _rows(spines: Sequence[StandingSpine], width: float, scale: float) -> Iterator[Row]:
    """Each space begins a row of its own; a row that is full is followed by another."""
    for space, books in groupby(spines, key=lambda spine: spine.space):
        row: list[tuple[float, StandingSpine]] = []
        x = 0.0
        for spine in books:
            wide = spine.rect.width * scale
            if row and x + wide > width:
                yield Row(space, tuple(row), scale)
                row, x = [], 0.0
            row.append((x, spine))
            x += wide + BETWEEN_BOOKS * scale
        yield Row(space, tuple(row), scale)


def _pages(rows: Sequence[Row], height: float) -> Iterator[list[Row]]:
    page: list[Row] = []
    for row in rows:
        if page and _height([*page, row]) > height:
            yield page
            page = []
        page.append(row)
    if page:
        yield page


def _height(rows: Sequence[Row]) -> float:
    """What rows need, with their labels and boards, heading and margins."""
    return 2 * MARGIN + HEADING + sum(row.height + LABEL + 4.0 for row in rows)


def _draw(canvas: Canvas, heading: str, rows: Sequence[Row], size: Size) -> None:
    top = size.height - MARGIN
    canvas.text(set_line(face_with(heading, "sans bold"), 4.0, heading), Point(MARGIN, top - 4.0), INK)
    y = top - HEADING
    for row in rows:
        y -= LABEL
        if row.label:
            canvas.text(set_line(face_with(row.label, "sans"), 3.0, row.label), Point(MARGIN, y + 1.2), INK)
        y -= row.height
        _draw_row(canvas, row, y)
        y -= 4.0


def _draw_row(canvas: Canvas, row: Row, y: float) -> None:
    """The books of a row on their board."""
    x, last = row.spines[-1]
    width = x + last.rect.width * row.scale
    canvas.fill(Path.rectangle(Rect(MARGIN, y, width, row.height)), RECESS)
    canvas.fill(Path.rectangle(Rect(MARGIN, y - 1.6, width, 1.6)), BOARD)
    for x, spine in row.spines:
        rect = spine.rect
        to_page = Transform.move(-rect.x, -rect.y).then(Transform.stretch(row.scale, row.scale)).moved(MARGIN + x, y)
        with canvas.placed(to_page, clip=Path.rectangle(rect)):
            spine.piece.art.draw(canvas)


def _pictures(folder: FilePath, resolutions: Sequence[float]) -> Iterator[str]:
    """Every page as a PNG, rendered from the PDF itself."""
    pdf = pypdfium2.PdfDocument(folder / CONTACT_SHEET)
    try:
        for number, dpi in enumerate(resolutions):
            name = f"{CONTACT_SHEET.removesuffix('.pdf')}-{number + 1}.png"
            pdf[number].render(scale=dpi / to_pt(MM_PER_INCH)).to_pil().save(folder / name)
            yield name
    finally:
        pdf.close()
