"""The sheets of one stock as a PDF to print."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path as FilePath

from ..ground.art import Group, Layer
from ..ground.drawing import Art
from ..ground.geometry import Transform
from ..sheets.impressions import Impression
from ..sheets.layers import Layers
from .pdf import PdfFile

__all__ = ["sheet_art", "write_sheets"]


def write_sheets(
    path: FilePath,
    title: str,
    impressions: Iterable[Impression],
    calibration: Transform,
    wanted: Layers = Layers.ALL,
) -> None:
    """Write one page an impression, in layers; `calibration` undoes what the printer does to lengths.

    The outline leads to the first page with something of each book.
    """
    told = {""}
    with PdfFile(path, title=title) as pdf:
        for impression in impressions:
            to_page = impression.offset.then(calibration)
            trim, bleed = (to_page.apply_to(box) for box in (impression.trim, impression.bleed))
            new = [name for name in map(str, impression.names) if name not in told]
            told.update(new)
            with pdf.page(impression.size, trim, bleed, entries=new) as canvas, canvas.placed(to_page):
                sheet_art(impression, wanted).draw(canvas)


def sheet_art(impression: Impression, wanted: Layers = Layers.ALL) -> Art:
    """All that is printed on one side of a sheet: the print below, the lines and notes above it, in layers.

    Marks on the pieces are needed to bind the book, and crosses to cut it, whatever else is left out.
    """
    around = impression.furniture
    printed = tuple(Group((printed.art,), printed.to_page, printed.clip) for printed in impression.printed)
    layers: list[tuple[str, Sequence[Art]]] = []
    if wanted is not Layers.LINES:
        layers += [("art", printed)]
    if wanted is not Layers.ART:
        layers += [("cuts", around.casings)]
    layers += [("marks", around.marks), ("crosses", around.crosses)]
    if wanted is not Layers.ART:
        layers += [("cuts", around.cuts), ("folds", (*around.folds, *around.beads)), ("notes", around.notes)]
    return Group(tuple(Layer(title, tuple(art)) for title, art in layers if art))
