"""The sheets of one stock as a PDF to print."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from pathlib import Path as FilePath

from ..drawing import Art
from ..geometry import Path, Rect, Transform
from ..marks import Furniture
from ..sheets import Placement, Sheet
from .pdf import PdfFile
from .pdf_canvas import PdfCanvas

__all__ = ["Parts", "write_sheets"]


class Parts(StrEnum):
    """What of a sheet is written: the print alone, the lines and notes alone, or both."""

    ALL = "all"
    ART = "art"
    LINES = "lines"


def write_sheets(
    path: FilePath,
    title: str,
    sheets: Sequence[Sheet],
    furniture: Sequence[Furniture],
    calibration: Transform,
    parts: Parts = Parts.ALL,
) -> None:
    """Write one page a sheet, in layers; `calibration` undoes what the printer does to lengths."""
    with PdfFile(path, title=title) as pdf:
        for sheet, around in zip(sheets, furniture, strict=True):
            trim, bleed = (calibration.apply_to(box) for box in _boxes(sheet))
            with pdf.page(sheet.size, trim=trim, bleed=bleed) as canvas, canvas.placed(calibration):
                _draw_layers(canvas, sheet.placements, around, parts)


def _draw_layers(canvas: PdfCanvas, placements: Sequence[Placement], around: Furniture, parts: Parts) -> None:
    """The print below, and the lines and notes above it, each in a layer of its own."""
    if parts is not Parts.LINES:
        with canvas.layer("art"):
            for placement in placements:
                _draw_piece(canvas, placement)
    if parts is not Parts.ART:
        lines: tuple[tuple[str, Sequence[Art]], ...]
        lines = (("cuts", around.cuts), ("folds", around.folds), ("notes", around.notes))
        for title, marks in lines:
            with canvas.layer(title):
                for mark in marks:
                    mark.draw(canvas)


def _draw_piece(canvas: PdfCanvas, placement: Placement) -> None:
    flat = placement.piece.flat
    inked = Rect(0, 0, *flat.size).grown(flat.bleed)
    with canvas.placed(placement.to_sheet, clip=Path.rectangle(inked)):
        placement.piece.art.draw(canvas)


def _boxes(sheet: Sheet) -> tuple[Rect, Rect]:
    """The box around all that is cut out, and the box around all that is inked for it."""
    outlines = [Rect.around(placement.outline) for placement in sheet.placements]
    inked = [Rect.around(placement.outline).grown(placement.piece.flat.bleed) for placement in sheet.placements]
    return _around(outlines), _around(inked)


def _around(rects: Sequence[Rect]) -> Rect:
    return Rect.around([corner for rect in rects for corner in rect.corners])
