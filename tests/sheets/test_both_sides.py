"""Printing both sides: what is drawn for the reverse lies behind its panel when the sheet has been turned."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.art import NOTHING, Group
from bookmaker.ground.drawing import BLACK, Canvas
from bookmaker.ground.geometry import Path, Point, Rect, Size, Transform
from bookmaker.paper.papers import FORMATS, SheetFormat
from bookmaker.paper.printer_entry import PrinterEntry, Turn
from bookmaker.paper.stock import Stock
from bookmaker.paper.stock_entry import Grain
from bookmaker.sheets.flat import Face, Flat, Panel, Role
from bookmaker.sheets.impressions import Impression, Printed, impressions
from bookmaker.sheets.layout import Placement, Sheet
from bookmaker.sheets.piece import Piece
from tests.kit.recording import Filled, Stroked, record

LYING = SheetFormat("lying", "mm", Decimal(297), Decimal(210), FORMATS["A4"].source)


@dataclass(frozen=True)
class Corner:
    """A page that is a small square in its lower left corner, as its reader sees it."""

    def draw(self, canvas: Canvas) -> None:
        canvas.fill(Path.rectangle(Rect(0, 0, 1, 2)), BLACK)


def stock(sheet: SheetFormat) -> Stock:
    width, height = sheet.size
    return Stock("page", 0.1, 0.0, 0.01, 0.03, Grain.LONG, sheet, Rect(5, 5, width - 10, height - 10))


def sheet_of(at: Point, turned: bool, sheet: SheetFormat = FORMATS["A4"]) -> Sheet:
    """A leaf of 12 × 18 mm with a foot of 3 mm: its recto on the front, its verso behind that."""
    rect = Rect(0, 3, 12, 18)
    panels = (Panel(Role.PAGE, rect, 1), Panel(Role.PAGE, rect, 2, Face.REVERSE))
    flat = Flat("leaf", "leaf", "page", Rect(0, 0, 20, 25).corners, (), panels)
    behind = flat.seen_from(Face.REVERSE)[0].rect
    reverse = Group((Corner(),), Transform.move(behind.x, behind.y))
    piece = Piece("leaf", 0, ("Leaf", "leaf"), flat, Group((Corner(),), Transform.move(rect.x, rect.y)), reverse)
    return Sheet(stock(sheet), 1, 1, (Placement(piece, at, turned),))


def through_the_paper(point: Point, size: Size, turn: Turn) -> Point:
    """Where a point of the reverse lies as the front is seen: about an upright axis left and right change places."""
    sideways = (turn is Turn.LONG_EDGE) == (size.height >= size.width)
    return Point(size.width - point.x, point.y) if sideways else Point(point.x, size.height - point.y)


@given(
    at=st.tuples(st.floats(10, 150), st.floats(30, 150)),
    turned=st.booleans(),
    turn=st.sampled_from(Turn),
    sheet=st.sampled_from([FORMATS["A4"], LYING]),
)
def test_the_verso_lies_behind_its_recto(at: tuple[float, float], turned: bool, turn: Turn, sheet: SheetFormat) -> None:
    laid = sheet_of(Point(*at), turned, sheet)
    front, reverse = impressions(laid, "Shelf", PrinterEntry(turn=turn))
    recto = corners_of(front.printed[0])
    behind = [through_the_paper(point, laid.size, turn) for point in corners_of(reverse.printed[0])]
    panel = laid.placements[0].to_sheet.apply_to(Rect(0, 3, 12, 18))
    assert panel.contains(Rect.around(recto)) and panel.contains(Rect.around(behind))
    # the first corner of each page: at the spine of the recto, at the fore-edge of the verso
    at_the_spine, at_the_fore_edge = map(laid.placements[0].to_sheet.apply, (Point(0, 3), Point(12, 3)))
    assert recto[0] == pytest.approx(at_the_spine)
    assert behind[0] == pytest.approx(at_the_fore_edge)


@given(turn=st.sampled_from(Turn), right=st.floats(-2, 2), up=st.floats(-2, 2))
def test_a_printer_that_misses_is_made_to_hit(turn: Turn, right: float, up: float) -> None:
    laid = sheet_of(Point(40, 50), turned=False)
    exact = PrinterEntry(turn=turn)
    missing = PrinterEntry.model_validate({"turn": turn, "reverse_offset": {"right": right, "up": up}})
    wanted = corners_of(impressions(laid, "Shelf", exact)[1].printed[0])
    moved = impressions(laid, "Shelf", missing)[1]
    printed = [moved.offset.apply(point).plus(right, up) for point in corners_of(moved.printed[0])]
    assert printed == [pytest.approx(point) for point in wanted]


@pytest.mark.parametrize("turn", Turn)
def test_the_test_line_of_the_reverse_lies_behind_that_of_the_front(turn: Turn) -> None:
    laid = sheet_of(Point(40, 50), turned=False)
    front, reverse = impressions(laid, "Shelf", PrinterEntry(turn=turn))
    on_front, on_reverse = ({mark.path.points() for mark in strokes(side)} for side in (front, reverse))
    seen = {tuple(through_the_paper(point, laid.size, turn) for point in line) for line in on_reverse}
    assert len(seen) == 12  # the rule, its ten centimetres and the end
    assert {rounded(line) for line in seen} <= {rounded(line) for line in on_front}


def test_a_sheet_without_reverse_has_one_page() -> None:
    laid = sheet_of(Point(40, 50), turned=False)
    (placement,) = laid.placements
    one_sided = replace(laid, placements=(replace(placement, piece=replace(placement.piece, reverse=NOTHING)),))
    assert [side.face for side in impressions(laid, "Shelf", PrinterEntry())] == [Face.FRONT, Face.REVERSE]
    assert [side.face for side in impressions(one_sided, "Shelf", PrinterEntry())] == [Face.FRONT]


def corners_of(printed: Printed) -> list[Point]:
    (mark,) = record(Group((printed.art,), printed.to_page)).marks
    assert isinstance(mark, Filled)
    return list(mark.path.points())


def strokes(side: Impression) -> list[Stroked]:
    return [mark for art in side.furniture.notes for mark in record(art).marks if isinstance(mark, Stroked)]


def rounded(line: tuple[Point, ...]) -> frozenset[tuple[float, float]]:
    return frozenset((round(x, 6), round(y, 6)) for x, y in line)
