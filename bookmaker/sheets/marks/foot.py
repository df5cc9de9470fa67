"""What stands at the foot of a sheet: the test line, the legend, and which sheet it is."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...ground.art import Stroked
from ...ground.drawing import Art, Pen
from ...ground.geometry import Point, Rect
from ...ground.told import MM_PER_INCH, Units, print_mm, units_told
from ...ground.typefaces import Typeface, bundled, set_line
from ...typesetting.stand_ins import face_with
from ..flat import FoldKind
from ..layout import Sheet
from .ink import CUT, FOLD_PENS, PERFORATION, SCORE, TRIM, bead, note

__all__ = ["footer", "rule_lines"]

RULE_PEN = Pen(0.15)
LENGTHS, INCHES = (100.0, 50.0, 20.0), (4 * MM_PER_INCH, 2 * MM_PER_INCH, MM_PER_INCH)
"""The test line is the longest of these that leaves room for the legend, in mm."""
TICKS, OF_INCHES = 10.0, MM_PER_INCH / 4
"""From tick to tick, in mm."""

GAP, LEGEND = 5.0, 46.0
"""Between rule and legend, and the width that the legend needs to be read, in mm; narrower ones have fewer words."""


def footer(sheet: Sheet, shelf_name: str) -> Iterator[Art]:
    """All that stands there."""
    area = sheet.foot
    length = _rule_length(area)
    sans = bundled("sans")
    yield from rule_lines(area)
    words = f"{print_mm(length)} from end to end: measure it before you cut"
    if length == _lengths()[-1]:
        words = f"{print_mm(length)}: measure it"
    yield note(set_line(sans, 2.0, words, length - 2.4), Point(area.x + 2, area.y + 6.8))
    room = Rect(area.x + length + GAP, area.y + 4, area.width - length - GAP, area.height - 4)
    yield from _legend(room, _meanings(sheet), sans)
    film = "" if not sheet.stock.film else "film this sheet" if sheet.filmed else "no film on this sheet"
    turn = f"front: print on both sides, flip on the {sheet.stock.printer.turn}" if sheet.two_sided else ""
    number = f"sheet {sheet.number} of {sheet.count}"
    which = (shelf_name, sheet.stock.title, sheet.stock.printed_on, film, number, turn)
    text = " · ".join((*filter(None, which), "print at 100 %, no scaling"))
    yield note(set_line(face_with(text, "sans"), 2.3, text, area.width), Point(area.x, area.y + 0.8))


def _rule_length(area: Rect) -> float:
    return next((length for length in _lengths() if length + GAP + LEGEND <= area.width), _lengths()[-1])


def _lengths() -> tuple[float, ...]:
    return INCHES if units_told() is Units.INCHES else LENGTHS


def rule_lines(area: Rect) -> Iterator[Stroked]:
    """A rule with a tick every 10 mm, or every quarter of an inch; its end ticks are what to measure between."""
    y, length = area.y + 4.6, _rule_length(area)
    yield Stroked.line(Point(area.x, y), Point(area.x + length, y), RULE_PEN)
    apart = OF_INCHES if units_told() is Units.INCHES else TICKS
    last = round(length / apart)
    for step in range(last + 1):
        tall = 3.0 if step in (0, last) else 1.2
        # The end ticks lie wholly inside, so that their outer edges are the length apart.
        x = area.x + step * apart + RULE_PEN.width / 2 * ((step == 0) - (step == last))
        yield Stroked.line(Point(x, y), Point(x, y + tall), RULE_PEN)


def _meanings(sheet: Sheet) -> list[tuple[Pen, str]]:
    """The lines of a sheet and what they mean; on a sheet printed on both sides "the printed face" says nothing."""
    turns_away, meets = (
        ("mountain fold: this face comes outside", "valley fold: this face comes inside")
        if sheet.two_sided
        else ("mountain fold: the printed faces turn away from each other", "valley fold: the printed faces meet")
    )
    kinds = {fold.kind for placement in sheet.placements for fold in placement.piece.flat.folds}
    folds = ((FoldKind.MOUNTAIN, turns_away), (FoldKind.VALLEY, meets))
    meanings = [(CUT, "cut"), *((FOLD_PENS[kind], words) for kind, words in folds if kind in kinds)]
    flats = [placement.piece.flat for placement in sheet.placements]
    others = (
        (TRIM, "trim the bound block here", any(flat.trims for flat in flats)),
        (SCORE, "score: crease it, and leave it flat", any(flat.scores for flat in flats)),
        (PERFORATION, "perforate: it is torn here", any(flat.perforations for flat in flats)),
    )
    return [*meanings, *((pen, words) for pen, words, there in others if there)]


def _legend(room: Rect, rows: Sequence[tuple[Pen, str]], sans: Typeface) -> Iterator[Art]:
    """One sample of each line with its meaning."""
    if room.width < LEGEND:
        rows = [(pen, words.split(":")[0]) for pen, words in rows]
    step = min(2.5, (room.height - 0.4) / len(rows))
    size = min(2.0, step * 0.92, max(1.0, (room.width - 10) / max(sans.shape(words).width for _, words in rows)))
    for row, (pen, words) in enumerate(rows):
        y = room.top - 1.6 - row * step
        sample = Stroked.line(Point(room.x, y), Point(room.x + 8, y), pen)
        yield sample
        yield from filter(None, [bead(sample)])
        yield note(set_line(sans, size, words), Point(room.x + 9.5, y - size * 0.33))
