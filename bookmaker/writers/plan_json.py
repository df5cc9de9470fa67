"""The plan as JSON: every sheet and every book, so that anything can be checked or drawn again from it."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from ..ground.geometry import Point, Rect
from ..ground.problems import Problem, show_field
from ..paper.eyesight import Legibility
from ..sheets.cutting import CutPart
from ..sheets.flat import Fold, Stroke
from ..sheets.layout import Placement, Sheet, Tally
from ..shelf.feedback import CaliperEstimate, Comparison, caliper_estimates, comparisons
from ..shelf.fit import SpaceFit
from ..shelf.plan import BookPlan, ShelfPlan
from ..things.book.designs.design import Lettering
from ..things.slipcase.plan import SlipcasePlan

__all__ = ["check_report", "dump", "plan_report"]


def dump(report: Mapping[str, Any]) -> str:
    """A report as JSON text that is the same for the same report."""
    return json.dumps(report, ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def check_report(
    plan: ShelfPlan,
    problems: Iterable[Problem],
    legibility: Sequence[Legibility | None],
    lettering: Sequence[Sequence[Lettering]] = (),
) -> dict[str, Any]:
    """What `check` finds: books, spaces and problems; `legibility` is of each book's text, `lettering` of its cover."""
    return {
        "shelf": plan.spec.shelf,
        "books": [
            _book(book, plan, lettering) | {"legibility": _legibility(letters)}
            for book, letters in zip(plan.books, legibility, strict=True)
        ],
        "spaces": [_space(space) for space in plan.spaces],
        "slipcases": [_slipcase(box, plan) for box in plan.slipcases],
        "measured": [_comparison(one) for one in comparisons(plan)],
        "caliper_estimates": [_estimate(estimate) for estimate in caliper_estimates(plan)],
        "problems": [_problem(problem) for problem in problems],
    }


def plan_report(
    plan: ShelfPlan,
    sheets: Sequence[tuple[str, int, Sheet]],
    tallies: Iterable[Tally],
    files: Mapping[str, str],
    problems: Iterable[Problem],
    legibility: Sequence[Legibility | None],
    lettering: Sequence[Sequence[Lettering]],
) -> dict[str, Any]:
    """The whole plan: `sheets` gives each sheet's file and its page there; `files` is all that was written.

    Each file comes with the digest of what it holds.
    """
    return {
        "made_by": "bookmaker",
        "files": list(files),
        "digests": dict(files),
        "sheets": [_sheet(file, page, sheet) for file, page, sheet in sheets],
        "paper": [_tally(tally) for tally in tallies],
        **check_report(plan, problems, legibility, lettering),
    }


def _book(book: BookPlan, plan: ShelfPlan, lettering: Sequence[Sequence[Lettering]]) -> dict[str, Any]:
    cover = book.cover
    worst_case, likely = book.standing.uncertainty.spread(plan.tolerances)
    return {
        "title": book.entry.title,
        "space": book.entry.space,
        "slipcase": next((box.name for box in plan.slipcases if book.number in box.books), None),
        "pages": book.block.pages,
        "panels": book.block.panels,
        "strips": len(book.block.flats),
        "block_thickness_mm": _mm(book.block.thickness.value),
        "block_computed_mm": _mm(book.block.thickness.computed),
        "spine_mm": _mm(cover.spine),
        "overall_mm": {
            "thickness": _mm(book.thickness.value),
            "height": _mm(book.height),
            "depth": _mm(book.depth),
        },
        "tolerance_mm": _mm(likely),
        "worst_case_mm": _mm(worst_case),
        "cut_list": [_cut_part(part) for part in book.cut_list],
        "spine_title": _spine_title(book, lettering[book.number], plan) if lettering else None,
    }


def _spine_title(book: BookPlan, lettering: Sequence[Lettering], plan: ShelfPlan) -> dict[str, Any] | None:
    """How the title on a spine came out; None if there is none."""
    line = next((line for line in lettering if line.what == "title" and line.on == "spine"), None)
    if line is None:
        return None
    letters = plan.letters(line.x_height, book.lettered_on)
    return {
        "way": line.way,
        "x_height_mm": _mm(line.x_height),
        "arc_minutes": round(letters.minutes, 2),
        "dots": round(letters.dots, 1),
        "contrast": round(line.contrast, 2),
        "seen": str(letters.sight),
    }


def _cut_part(part: CutPart) -> dict[str, Any]:
    return {
        "what": part.what,
        "material": part.material,
        "count": part.count,
        "height_mm": _mm(part.height),
        "width_mm": _mm(part.width),
        "thickness_mm": _mm(part.thickness),
    }


def _slipcase(box: SlipcasePlan, plan: ShelfPlan) -> dict[str, Any]:
    worst_case, likely = box.uncertainty.spread(plan.tolerances)
    return {
        "name": box.name,
        "space": box.space,
        "books": list(box.books),
        "inside_mm": {side: _mm(value) for side, value in box.inside._asdict().items()},
        "outside_mm": {side: _mm(value) for side, value in box.outside._asdict().items()},
        "tolerance_mm": _mm(likely),
        "worst_case_mm": _mm(worst_case),
    }


def _legibility(letters: Legibility | None) -> dict[str, Any] | None:
    if letters is None:
        return None
    return {
        "x_height_mm": _mm(letters.x_height),
        "arc_minutes": round(letters.minutes, 2),
        "dots": round(letters.dots, 1),
        "verdict": str(letters.sight),
    }


def _space(space: SpaceFit) -> dict[str, Any]:
    return {
        "name": space.name,
        "width_mm": _mm(space.width),
        "used_mm": _mm(space.used),
        "ease_mm": _mm(space.ease),
        "slack_mm": _mm(space.slack),
        "verdict": str(space.verdict),
        "worst_case_mm": _mm(space.worst_case),
        "tolerance_mm": _mm(space.likely),
        "probability": round(space.probability, 4),
    }


def _comparison(one: Comparison) -> dict[str, Any]:
    return {
        "what": one.what,
        "computed_mm": _mm(one.computed),
        "measured_mm": _mm(one.measured),
        "difference_mm": _mm(one.difference),
    }


def _estimate(estimate: CaliperEstimate) -> dict[str, Any]:
    return {
        "stock": estimate.stock,
        "blocks": estimate.blocks,
        "caliper_um": round(estimate.caliper * 1000, 2),
        "tolerance_um": round(estimate.tolerance * 1000, 2),
    }


def _problem(problem: Problem) -> dict[str, Any]:
    place = problem.place
    return {
        "severity": str(problem.severity),
        "file": place.file if place else None,
        "line": place.line if place else None,
        "column": place.column if place else None,
        "field": show_field(problem.field) or None,
        "message": problem.message,
        "remedy": problem.remedy or None,
    }


def _sheet(file: str, page: int, sheet: Sheet) -> dict[str, Any]:
    return {
        "file": file,
        "page": page,
        "reverse_page": page + 1 if sheet.two_sided else None,
        "stock": sheet.stock.name,
        "printer": sheet.stock.printed_on or None,
        "size_mm": [_mm(side) for side in sheet.size],
        "off_cut": sheet.stock.off_cut,
        "pieces": [_piece(placement) for placement in sheet.placements],
        "knife_cuts": [_stroke(cut) for cut in sheet.cuts],
        "crosses": [_stroke(arm) for arm in sheet.crosses],
    }


def _tally(tally: Tally) -> dict[str, Any]:
    return {
        "stock": tally.stock,
        "sheets": tally.sheets,
        "off_cuts": tally.off_cuts,
        "least_sheets": tally.least,
        "sheets_saved": tally.saved,
        "used": round(tally.used, 4),
        "left_over_mm": [_mm(side) for side in tally.rest] if tally.rest else None,
    }


def _piece(placement: Placement) -> dict[str, Any]:
    flat = placement.piece.flat
    return {
        "id": placement.piece.id,
        "book": placement.piece.book,
        "slipcase": placement.piece.slipcase,
        "kind": flat.kind,
        "name": flat.name,
        "turned_deg": 90 if placement.turned else 0,
        "outline_mm": [_point(point) for point in placement.outline],
        "bleed_mm": _mm(flat.bleed),
        "folds": [_fold(fold) for fold in placement.folds],
        "cuts": [_stroke(cut) for cut in placement.on_sheet(flat.cuts)],
        "trims": [_stroke(trim) for trim in placement.on_sheet(flat.trims)],
        "panels": [
            {
                "role": str(panel.role),
                "page": panel.page,
                "rect_mm": _rect(placement.to_sheet.apply_to(panel.rect)),
                "face": str(panel.face),
                "head_down": panel.head_down,
                "creep_mm": _mm(panel.creep),
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
    return [_mm(point.x), _mm(point.y)]


def _rect(rect: Rect) -> list[float]:
    return [_mm(value) for value in rect]


def _mm(value: float) -> float:
    """Rounded for reading: a ten-thousandth of a millimetre is far below what paper knows."""
    return round(value, 4) + 0.0
