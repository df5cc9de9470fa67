"""The sheets of one stock as a PDF to print."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from enum import StrEnum
from pathlib import Path as FilePath

from ..ground.drawing import Art
from ..ground.geometry import Transform
from ..sheets.impressions import Impression
from .pdf import PdfFile
from .pdf.canvas import PdfCanvas

__all__ = ["Parts", "write_sheets"]


class Parts(StrEnum):
    """What of a sheet is written: the print alone, the lines and notes alone, or both."""

    ALL = "all"
    ART = "art"
    LINES = "lines"


def write_sheets(
    path: FilePath,
    title: str,
    impressions: Iterable[Impression],
    calibration: Transform,
    parts: Parts = Parts.ALL,
) -> None:
    """Write one page an impression, in layers; `calibration` undoes what the printer does to lengths."""
    with PdfFile(path, title=title) as pdf:
        for impression in impressions:
            to_page = impression.offset.then(calibration)
            trim, bleed = (to_page.apply_to(box) for box in (impression.trim, impression.bleed))
            with pdf.page(impression.size, trim=trim, bleed=bleed) as canvas, canvas.placed(to_page):
                _draw_layers(canvas, impression, parts)


def _draw_layers(canvas: PdfCanvas, impression: Impression, parts: Parts) -> None:
    """The print below, and the lines and notes above it, each in a layer of its own.

    Marks on the pieces are needed to bind the book, and crosses to cut it, whatever else is left out.
    """
    around = impression.furniture
    if parts is not Parts.LINES:
        with canvas.layer("art"):
            for printed in impression.printed:
                with canvas.placed(printed.to_page, clip=printed.clip):
                    printed.art.draw(canvas)
    if parts is not Parts.ART:
        _draw_layer(canvas, "cuts", around.casings)
    _draw_layer(canvas, "marks", around.marks)
    _draw_layer(canvas, "crosses", around.crosses)
    if parts is not Parts.ART:
        _draw_layer(canvas, "cuts", around.cuts)
        _draw_layer(canvas, "folds", around.folds)
        _draw_layer(canvas, "notes", around.notes)


def _draw_layer(canvas: PdfCanvas, title: str, marks: Sequence[Art]) -> None:
    if marks:
        with canvas.layer(title):
            for mark in marks:
                mark.draw(canvas)
