"""Each pass of a sheet through the printer: its front, and its reverse if anything is printed there.

The reverse is worked out on the front, as if seen through the paper, and then mirrored as the sheet is turned.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from ..ground.drawing import Art
from ..ground.geometry import Path, Rect, Size, Transform
from ..paper.printer_entry import PaperPath
from ..paper.reverse import correction, to_reverse
from .flat import Face
from .layout import Placement, Sheet
from .marks import Furniture, furnish, furnish_reverse

__all__ = ["Impression", "Printed", "impressions"]


@dataclass(frozen=True, slots=True)
class Printed:
    """Art with the way to its place on the page; `clip`, in its own coordinates, bounds the ink."""

    art: Art
    to_page: Transform
    clip: Path


@dataclass(frozen=True, slots=True)
class Impression:
    """One printed page: its size in mm, the art of its pieces, and what stands around them.

    `trim` is the box around all that is cut out, `bleed` the one around all that is inked for that; both, like
    everything here, before the printer's calibration. `offset` moves and turns the print to make up for a
    printer that misses the front with the reverse. `names` are those on the labels of its pieces.
    """

    face: Face
    size: Size
    printed: tuple[Printed, ...]
    furniture: Furniture
    trim: Rect
    bleed: Rect
    offset: Transform
    names: tuple[str, ...] = ()


def impressions(sheet: Sheet, shelf_name: str, printer: PaperPath) -> tuple[Impression, ...]:
    """The pages to print for a sheet, one or two."""
    front = _front(sheet, furnish(sheet, shelf_name))
    if not sheet.two_sided:
        return (front,)
    return front, _reverse(sheet, front, printer)


def _front(sheet: Sheet, furniture: Furniture) -> Impression:
    printed = tuple(
        Printed(placement.piece.art, placement.to_sheet, placement.piece.flat.inked()) for placement in sheet.placements
    )
    trim = _around(Rect.around(placement.outline) for placement in sheet.placements)
    bleed = _around(placement.to_sheet.apply_to(_inked(placement)) for placement in sheet.placements)
    names = tuple(dict.fromkeys(placement.piece.label[0] for placement in sheet.placements))
    return Impression(Face.FRONT, sheet.size, printed, furniture, trim, bleed, Transform(), names)


def _reverse(sheet: Sheet, front: Impression, printer: PaperPath) -> Impression:
    mirror = to_reverse(sheet.size, printer.turn)
    printed = tuple(
        Printed(placement.piece.reverse, _turned_over(placement).then(mirror), placement.piece.flat.inked(Face.REVERSE))
        for placement in sheet.placements
        if placement.piece.two_sided
    )
    return Impression(
        face=Face.REVERSE,
        size=sheet.size,
        printed=printed,
        furniture=furnish_reverse(sheet, mirror, printer.turn),
        trim=mirror.apply_to(front.trim),
        bleed=mirror.apply_to(front.bleed),
        offset=correction(printer, sheet.size),
    )


def _turned_over(placement: Placement) -> Transform:
    """From the reverse of a piece, as it is drawn, to the sheet as its front is seen: a mirror."""
    return Transform(a=-1.0, e=placement.piece.flat.size.width).then(placement.to_sheet)


def _inked(placement: Placement) -> Rect:
    flat = placement.piece.flat
    return Rect(0, 0, *flat.size).grown(flat.bleed)


def _around(rects: Iterable[Rect]) -> Rect:
    return Rect.around([corner for rect in rects for corner in rect.corners])
