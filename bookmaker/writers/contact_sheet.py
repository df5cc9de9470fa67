"""The contact sheet: the shelf from the front, at true size and at 400 %, as PDF and as pictures."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path as FilePath

import pypdfium2

from ..ground.drawing import Canvas, Colour
from ..ground.geometry import Path, Point, Rect, Size, Transform
from ..ground.typefaces import set_line
from ..ground.units import MM_PER_INCH, to_pt
from ..typesetting.stand_ins import face_with
from .pdf import PdfFile
from .shelf_front import Front, Row, Shown, rows_of

__all__ = ["CONTACT_SHEET", "write_contact_sheet"]

CONTACT_SHEET = "spines.pdf"

SCALES = ((1.0, "at true size", 300.0), (4.0, "at 400 %", 150.0))
"""How much larger, what to call it, and the dots per inch of its picture."""

MARGIN, HEADING, LABEL = 12.0, 8.0, 5.0
TIMBER = 1.6
"""How thick boards and uprights are drawn, in mm."""

BELOW = 3.0
"""What is left white under a row, in mm."""

RECESS, BOARD, INK = Colour.from_hex("#4b4038"), Colour.from_hex("#a98a62"), Colour.from_hex("#33302c")
CARD = Colour.from_hex("#d8cdb8")


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
                    _draw(canvas, f"{shelf}: spines {called}", some, size)
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


def _draw(canvas: Canvas, heading: str, rows: Sequence[Scaled], size: Size) -> None:
    top = size.height - MARGIN
    canvas.text(set_line(face_with(heading, "sans bold"), 4.0, heading), Point(MARGIN, top - 4.0), INK)
    y = top - HEADING
    for row in rows:
        if row.row.name:
            name = set_line(face_with(row.row.name, "sans"), 3.0, row.row.name)
            canvas.text(name, Point(MARGIN, y - LABEL + 1.2), INK)
        y -= row.height
        _draw_row(canvas, row, Point(MARGIN + TIMBER, y + BELOW + TIMBER))


def _draw_row(canvas: Canvas, drawn: Scaled, origin: Point) -> None:
    """What stands on a row, in its space; `origin` is where its board meets the left upright."""
    row, scale = drawn.row, drawn.scale
    room = Rect(*origin, row.width * scale, row.height * scale)
    uprights = (TIMBER * row.begins, TIMBER, TIMBER * row.ends, TIMBER)
    canvas.fill(Path.rectangle(room.grown(*uprights)), BOARD if row.name else RECESS)
    canvas.fill(Path.rectangle(room), RECESS)
    to_page = Transform.stretch(scale, scale).moved(origin.x - row.left * scale, origin.y)
    with canvas.placed(to_page):
        for shown in row.shown:
            _draw_shown(canvas, shown)


def _draw_shown(canvas: Canvas, shown: Shown) -> None:
    if shown.spine is None:
        canvas.fill(Path.rectangle(shown.rect), CARD)
        return
    piece, spine = shown.spine
    # A little of the sides is seen beside the spine, as far as the book is thicker than its spine is wide.
    thick = shown.rect.height if shown.lies else shown.rect.width
    seen = spine.grown((thick - spine.width) / 2, 0, (thick - spine.width) / 2, 0)
    if shown.lies:
        to_shelf = Transform.move(-seen.x, -seen.y).then(Transform.quarter_turn(1))
        to_shelf = to_shelf.moved(shown.rect.x + seen.height, shown.rect.y)
    else:
        to_shelf = Transform.move(shown.rect.x - seen.x, shown.rect.y - seen.y)
    with canvas.placed(to_shelf, clip=Path.rectangle(seen)):
        piece.art.draw(canvas)


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
