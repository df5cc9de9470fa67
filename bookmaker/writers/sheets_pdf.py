"""The sheets of one stock as a PDF to print."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path as FilePath

from ..geometry import Transform
from ..impressions import Impression
from .pdf import PdfFile

__all__ = ["write_sheets"]


def write_sheets(path: FilePath, title: str, impressions: Iterable[Impression], calibration: Transform) -> None:
    """Write one page an impression; `calibration` undoes what the printer does to lengths."""
    with PdfFile(path, title=title) as pdf:
        for impression in impressions:
            to_page = impression.offset.then(calibration)
            trim, bleed = (to_page.apply_to(box) for box in (impression.trim, impression.bleed))
            with pdf.page(impression.size, trim=trim, bleed=bleed) as canvas, canvas.placed(to_page):
                for printed in impression.printed:
                    with canvas.placed(printed.to_page, clip=printed.clip):
                        printed.art.draw(canvas)
                around = impression.furniture
                for mark in (*around.casings, *around.marks, *around.cuts, *around.folds, *around.notes):
                    mark.draw(canvas)
