"""The sheets of one stock as a PDF to print."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path as FilePath

from ..drawing import Canvas
from ..geometry import Path, Rect, Transform
from ..marks import Furniture
from ..sheets import Placement, Sheet
from .pdf import PdfFile

__all__ = ["write_sheets"]


def write_sheets(
    path: FilePath,
    title: str,
    sheets: Sequence[Sheet],
    furniture: Sequence[Furniture],
    calibration: Transform,
) -> None:
    """Write one page a sheet; `calibration` undoes what the printer does to lengths."""
    with PdfFile(path, title=title) as pdf:
        for sheet, around in zip(sheets, furniture, strict=True):
            trim, bleed = (calibration.apply_to(box) for box in _boxes(sheet))
            with pdf.page(sheet.size, trim=trim, bleed=bleed) as canvas, canvas.placed(calibration):
                for placement in sheet.placements:
                    _draw_piece(canvas, placement)
                for mark in (*around.cuts, *around.folds, *around.notes):
                    mark.draw(canvas)


def _draw_piece(canvas: Canvas, placement: Placement) -> None:
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
