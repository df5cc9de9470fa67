"""A sheet in plan.json: what lies where on it, and how a point comes to its place on the pages of the PDF."""

from __future__ import annotations

from typing import Any

from ..ground.geometry import Point, Rect, Transform
from ..ground.units import rounded
from ..paper.reverse import correction, to_reverse
from ..paper.stock import calibration
from ..sheets.flat import Fold, Stroke
from ..sheets.layout import Placement, Sheet
from ..shelf.checked import Checked

__all__ = ["sheet_report"]


def sheet_report(file: str, page: int, sheet: Sheet, checked: Checked) -> dict[str, Any]:
    """A sheet that is on a page of a file."""
    return {
        "file": file,
        "page": page,
        "reverse_page": page + 1 if sheet.two_sided else None,
        "stock": sheet.stock.name,
        "printer": sheet.stock.printed_on or None,
        "size_mm": [rounded(side) for side in sheet.size],
        "off_cut": sheet.stock.off_cut,
        **_maps(sheet),
        "pieces": [_piece(placement, checked) for placement in sheet.placements],
        "knife_cuts": [_stroke(cut) for cut in sheet.cuts],
        "crosses": [_stroke(arm) for arm in sheet.crosses],
    }


def _maps(sheet: Sheet) -> dict[str, Any]:
    """How a point of the plan comes to its place on the pages of the PDF."""
    printer = sheet.stock.printer
    both = sheet.two_sided
    return {
        "margins_mm": {side: rounded(white) for side, white in printer.margins.model_dump().items()},
        "area_mm": _rect(sheet.area),
        "turn": str(printer.turn),
        "calibration": _map(calibration(printer, sheet.stock.sheet)),
        "to_reverse": _map(to_reverse(sheet.size, printer.turn)) if both else None,
        "reverse_correction": _map(correction(printer, sheet.size)) if both else None,
    }


def _map(transform: Transform) -> list[float]:
    """Finer than lengths: its entries are multiplied by them."""
    return [round(entry, 9) + 0.0 for entry in transform]


def _piece(placement: Placement, checked: Checked) -> dict[str, Any]:
    register = checked.plan.register
    piece, flat = placement.piece, placement.piece.flat
    own = register.things[piece.owner].family
    sections = (family for family in register.families if family.section)
    return {
        "id": piece.id,
        "owner": piece.owner,
        "place": 1 + [one.id for one in checked.drafts[piece.owner].pieces].index(piece.id),
        **{family.noun: register.reference(piece.owner) if family is own else None for family in sections},
        "kind": flat.kind,
        "name": flat.name,
        "turned_deg": 90 if placement.turned else 0,
        "outline_mm": [_point(point) for point in placement.outline],
        "holes_mm": [[_point(point) for point in hole] for hole in placement.holes],
        "bleed_mm": rounded(flat.bleed),
        "folds": [_fold(fold) for fold in placement.folds],
        "cuts": [_stroke(cut) for cut in placement.on_sheet(flat.cuts)],
        "trims": [_stroke(trim) for trim in placement.on_sheet(flat.trims)],
        "scores": [_stroke(score) for score in placement.on_sheet(flat.scores)],
        "perforations": [_stroke(line) for line in placement.on_sheet(flat.perforations)],
        "panels": [
            {
                "role": str(panel.role),
                "page": panel.page,
                "rect_mm": _rect(placement.to_sheet.apply_to(panel.rect)),
                "face": str(panel.face),
                "head_down": panel.head_down,
                "creep_mm": rounded(panel.creep),
            }
            for panel in flat.panels
        ],
        "marks": [
            {"kind": str(mark.kind), "rect_mm": _rect(placement.to_sheet.apply_to(mark.rect))} for mark in flat.marks
        ],
    }


def _fold(fold: Fold) -> dict[str, Any]:
    return {"kind": str(fold.kind), "from_mm": _point(fold.start), "to_mm": _point(fold.end)}


def _stroke(stroke: Stroke) -> dict[str, Any]:
    return {"from_mm": _point(stroke.start), "to_mm": _point(stroke.end)}


def _point(point: Point) -> list[float]:
    return [rounded(point.x), rounded(point.y)]


def _rect(rect: Rect) -> list[float]:
    return [rounded(value) for value in rect]
