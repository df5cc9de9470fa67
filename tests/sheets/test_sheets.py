"""Laws of the sheets, and their numbers read back from the PDF."""

from __future__ import annotations

import tempfile
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from tests.kit.shelves import made, on_two_papers
from tests.kit.strokes import POINT, Stroke, apart, strokes_of

BOOK = """\
  - title: Volume {number}
    size: {{height: {height} mm, width: {width} mm}}
    block: {{kind: accordion, stock: page, pages: {pages}}}
    cover: {{kind: wrap, stock: cover, turn_in: {turn_in} mm, head_turn_in: {head} mm}}
    design: {{colour: "#223344"}}
    inside: {{kind: ruled}}
"""

VARIED = [(21, 15, 48, 0, 0), (24.5, 16.3, 24, 4, 0), (19, 13.2, 30, 4, 3.5), (18, 12, 20, 0, 4)]
STRETCHED = "rules: {across: 149.4 mm, up: 150.3 mm}"
EXACT = "gap_between_pieces: 2 mm"

Book = tuple[float, float, int, float, float]
XY = tuple[float, float]


def shelf_of(books: list[Book], grain: str = "long", rules: str = EXACT) -> str:
    listed = (
        BOOK.format(number=number, height=height, width=width, pages=pages, turn_in=turn_in, head=head)
        for number, (height, width, pages, turn_in, head) in enumerate(books, start=1)
    )
    return on_two_papers("".join(listed), printer=rules, grain=grain)


def box(piece: dict[str, Any], grown: float = 0.0) -> list[float]:
    xs, ys = zip(*piece["outline_mm"], strict=True)
    return [min(xs) - grown, min(ys) - grown, max(xs) + grown, max(ys) + grown]


def inside(point: XY, outline: list[XY]) -> bool:
    """Even-odd rule."""
    x, y = point
    hit = False
    for (ax, ay), (bx, by) in zip(outline, [*outline[1:], outline[0]], strict=True):
        if (ay > y) != (by > y) and x < ax + (y - ay) / (by - ay) * (bx - ax):
            hit = not hit
    return hit


@given(
    books=st.lists(
        st.tuples(
            st.floats(14, 30).map(lambda value: round(value, 2)),
            st.floats(10, 24).map(lambda value: round(value, 2)),
            st.integers(2, 40).map(lambda leaves: 2 * leaves),
            st.sampled_from([0.0, 4.0]),
            st.sampled_from([0.0, 4.0]),
        ),
        min_size=1,
        max_size=6,
    ),
    grain=st.sampled_from(["long", "short", "unknown"]),
)
@settings(max_examples=25, deadline=None)
def test_every_piece_lies_once_inside_the_printable_area_apart_and_with_its_grain(
    books: list[Book], grain: str
) -> None:
    with tempfile.TemporaryDirectory() as name:
        plan, _ = made(shelf_of(books, grain), Path(name))
    pieces = [piece for sheet in plan["sheets"] for piece in sheet["pieces"]]
    wanted = {f"volume-{n}-wrap-1" for n in range(1, len(books) + 1)} | {
        f"volume-{n}-strip-{k}" for n, book in enumerate(plan["books"], start=1) for k in range(1, book["strips"] + 1)
    }
    assert sorted(piece["id"] for piece in pieces) == sorted(wanted)
    for sheet in plan["sheets"]:
        width, height = sheet["size_mm"]
        boxes = [box(piece, piece["bleed_mm"]) for piece in sheet["pieces"]]
        for left, bottom, right, top in boxes:
            # 12 mm at the foot belong to the notes; 2 mm around each piece to its marks
            assert left >= 7 and bottom >= 5 + 12 + 2 and right <= width - 7 and top <= height - 7
        roomy = [[a - 1, b - 1, c + 1, d + 1] for a, b, c, d in boxes]  # half of 2 mm of gap between pieces each
        assert all(apart(one, other) for n, one in enumerate(roomy) for other in roomy[:n])
        for piece in sheet["pieces"]:
            if grain == "unknown":
                continue
            spine = piece["folds"][0]  # of a strip any fold, of a wrap the first at the spine
            upright = abs(spine["from_mm"][0] - spine["to_mm"][0]) < 1e-6
            assert upright == (grain == "long")  # A4 upright: fibres along the long side run up


@pytest.mark.parametrize("room", [6, 9])
def test_gap_between_pieces_beyond_what_marks_need_is_kept(tmp_path: Path, room: float) -> None:
    plan, _ = made(shelf_of(VARIED, rules=f"gap_between_pieces: {room} mm"), tmp_path)
    for sheet in plan["sheets"]:
        roomy = [box(piece, piece["bleed_mm"] + room / 2) for piece in sheet["pieces"]]
        assert all(apart(one, other) for n, one in enumerate(roomy) for other in roomy[:n])


def test_ten_strips_of_the_worked_case_lie_on_one_sheet(tmp_path: Path) -> None:
    plan, _ = made(shelf_of([(21, 15, 48, 0, 0)] * 2), tmp_path)
    per_sheet = [len(sheet["pieces"]) for sheet in plan["sheets"] if sheet["stock"] == "page"]
    assert per_sheet == [10]


def calibrated(point: XY, size: XY, factors: XY) -> XY:
    """A nominal point as it must stand in the PDF: stretched about the middle of the sheet."""
    (x, y), (w, h), (fx, fy) = point, size, factors
    return w / 2 + (x - w / 2) * fx, h / 2 + (y - h / 2) * fy


def off_line(point: XY, a: XY, b: XY) -> float:
    """Distance in mm of a point from the line through a and b."""
    dx, dy = b[0] - a[0], b[1] - a[1]
    return abs((point[0] - a[0]) * dy - (point[1] - a[1]) * dx) / float((dx * dx + dy * dy) ** 0.5)


def near(stroke: Stroke, area: list[float], reach: float) -> bool:
    return all(
        area[0] - reach <= x <= area[2] + reach and area[1] - reach <= y <= area[3] + reach
        for x, y in (stroke.start, stroke.end)
    )


def drawn_along(strokes: list[Stroke], a: XY, b: XY) -> list[Stroke]:
    return [s for s in strokes if off_line(s.start, a, b) < 0.01 and off_line(s.end, a, b) < 0.01]


@pytest.mark.parametrize(("rules", "factors"), [(EXACT, (1.0, 1.0)), (STRETCHED, (150 / 149.4, 150 / 150.3))])
@pytest.mark.parametrize("grain", ["long", "short"])
def test_drawn_marks_agree_with_the_plan(tmp_path: Path, rules: str, factors: XY, grain: str) -> None:
    plan, out = made(shelf_of(VARIED, grain, rules), tmp_path)
    for sheet in plan["sheets"]:
        size = tuple(sheet["size_mm"])
        strokes = strokes_of(out / sheet["file"], sheet["page"])
        for piece in sheet["pieces"]:
            outline = [calibrated(tuple(point), size, factors) for point in piece["outline_mm"]]
            area = box({"outline_mm": outline})
            around = [s for s in strokes if near(s, area, piece["bleed_mm"] + 2.3)]
            for fold in piece["folds"]:
                a, b = (calibrated(tuple(fold[key]), size, factors) for key in ("from_mm", "to_mm"))
                marks = [s for s in drawn_along(around, a, b) if s.dashed]
                assert len(marks) == 2, (piece["id"], fold)
                # one beyond each end
                assert len({s.start[0] + s.start[1] > (a[0] + a[1] + b[0] + b[1]) / 2 for s in marks}) == 2
            for a, b in zip(outline, [*outline[1:], outline[0]], strict=True):
                assert [s for s in drawn_along(around, a, b) if not s.dashed], (piece["id"], a, b)
            for x, y in ((area[0], 0), (area[2], 0)):
                assert len(drawn_along([s for s in around if not s.dashed], (x, y), (x, y + 1))) >= 2
            for x, y in ((0, area[1]), (0, area[3])):
                assert len(drawn_along([s for s in around if not s.dashed], (x, y), (x + 1, y))) >= 2


@pytest.mark.parametrize("rules", [EXACT, STRETCHED])
def test_marks_never_lie_on_what_is_cut_out(tmp_path: Path, rules: str) -> None:
    books = [BOOK.replace("ruled", "blank")]  # ruled pages draw lines of their own
    listed = "".join(
        books[0].format(number=n, height=h, width=w, pages=p, turn_in=t, head=e)
        for n, (h, w, p, t, e) in enumerate(VARIED, start=1)
    )
    plan, out = made(on_two_papers(listed, printer=rules), tmp_path)
    factors = (150 / 149.4, 150 / 150.3) if rules == STRETCHED else (1.0, 1.0)
    for sheet in plan["sheets"]:
        size = tuple(sheet["size_mm"])
        strokes = strokes_of(out / sheet["file"], sheet["page"])
        assert strokes
        for piece in sheet["pieces"]:
            outline = [calibrated(tuple(point), size, factors) for point in piece["outline_mm"]]
            edges = list(zip(outline, [*outline[1:], outline[0]], strict=True))
            for stroke in strokes:
                for part in range(21):
                    x, y = (stroke.start[axis] + (stroke.end[axis] - stroke.start[axis]) * part / 20 for axis in (0, 1))
                    on_edge = any(off_line((x, y), a, b) < 0.01 for a, b in edges)  # a cut line may lie on the cut
                    assert on_edge or not inside((x, y), outline), (piece["id"], stroke)


@pytest.mark.parametrize(("rules", "factors"), [(EXACT, (1.0, 1.0)), (STRETCHED, (150 / 149.4, 150 / 150.3))])
def test_page_boxes_are_nested_and_right(tmp_path: Path, rules: str, factors: XY) -> None:
    plan, out = made(shelf_of(VARIED, "long", rules), tmp_path)
    for sheet in plan["sheets"]:
        page = PdfReader(out / sheet["file"]).pages[sheet["page"] - 1]
        size = tuple(sheet["size_mm"])
        media, bleed, trim = (
            [float(value) * POINT for value in page[key]] for key in ("/MediaBox", "/BleedBox", "/TrimBox")
        )
        assert media == pytest.approx([0, 0, *size], abs=0.01)
        for found, extra in ((trim, False), (bleed, True)):
            boxes = [box(piece, piece["bleed_mm"] if extra else 0.0) for piece in sheet["pieces"]]
            low = calibrated((min(b[0] for b in boxes), min(b[1] for b in boxes)), size, factors)
            high = calibrated((max(b[2] for b in boxes), max(b[3] for b in boxes)), size, factors)
            assert found == pytest.approx([*low, *high], abs=0.01)
        for outer, inner in ((media, bleed), (bleed, trim)):
            assert outer[0] <= inner[0] and outer[1] <= inner[1] and outer[2] >= inner[2] and outer[3] >= inner[3]


def test_two_runs_in_different_folders_write_the_same_bytes(tmp_path: Path) -> None:
    _, first = made(shelf_of(VARIED), tmp_path / "one")
    _, second = made(shelf_of(VARIED), tmp_path / "quite another")
    names = sorted(path.name for path in first.iterdir())
    assert "plan.json" in names and any(name.endswith(".pdf") for name in names)
    assert names == sorted(path.name for path in second.iterdir())
    for name in names:
        assert (first / name).read_bytes() == (second / name).read_bytes(), name
