"""Drawings for a cutting machine: SVG, DXF and PDF read back by three parsers, and the order of the work."""

from __future__ import annotations

import itertools
import xml.etree.ElementTree as ET
from collections.abc import Sequence
from math import dist, hypot
from pathlib import Path
from typing import Any

import ezdxf
import pikepdf
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.art import NOTHING
from bookmaker.ground.geometry import Point, Rect
from bookmaker.paper.printer_entry import PrinterEntry
from bookmaker.paper.stock import make_stock
from bookmaker.paper.stock_entry import StockEntry
from bookmaker.sheets.flat import Flat, Fold, FoldKind, Stroke
from bookmaker.sheets.layout import Placement, Sheet
from bookmaker.sheets.piece import Piece
from bookmaker.sheets.segments import merged, without
from bookmaker.sheets.toolpaths import ToolPath, ToolSheet, tool_sheet
from tests.kit.shelves import made
from tests.kit.strokes import POINT, strokes_of

SHELF = """\
shelf: By machine
printer: {margins: 5 mm, cutting_machine: yes, rules: {across: 149.4 mm, up: 150.3 mm}}
stocks:
  page: {caliper: 75 um, glue: 15 um, grain: long}
  cover: {caliper: 160 um, film: 50 um, grain: short}
defaults:
  block: {kind: accordion, stock: page, pages: 40}
books:
  - title: Flush
    size: {height: 21 mm, width: 15 mm}
    cover: {kind: wrap, stock: cover}
  - title: Turned in
    size: {height: 24.35 mm, width: 16.3 mm}
    cover: {kind: wrap, stock: cover, turn_in: 4 mm, head_turn_in: 3.5 mm}
  - title: At the fore-edge
    size: {height: 19 mm, width: 13.27 mm}
    cover: {kind: wrap, stock: cover, turn_in: 4 mm}
"""

Segment = tuple[tuple[float, float], tuple[float, float]]
Drawing = dict[str, list[tuple[list[tuple[float, float]], bool]]]
"""For each layer its paths: points in mm, y up, and whether the path is closed."""

TOOLS = ["Crosses", "Creasing", "Cutting"]


@pytest.fixture(scope="module")
def shelf(tmp_path_factory: pytest.TempPathFactory) -> tuple[dict[str, Any], Path]:
    return made(SHELF, tmp_path_factory.mktemp("machine"))


def read_svg(path: Path) -> tuple[Drawing, tuple[float, float]]:
    """By the XML parser of Python's library."""
    root = ET.parse(path).getroot()
    width, height = (float(root.attrib[side].removesuffix("mm")) for side in ("width", "height"))
    assert [float(value) for value in root.attrib["viewBox"].split()] == [0, 0, width, height]
    space = "{http://www.w3.org/2000/svg}"
    found: Drawing = {}
    for group in root.findall(f"{space}g"):
        paths = found.setdefault(group.attrib["id"], [])
        for one in group.findall(f"{space}path"):
            words = one.attrib["d"].replace("M", "").replace("L", "").split()
            closed = words[-1] == "Z"
            values = [float(word) for word in (words[:-1] if closed else words)]
            paths.append(([(x, height - y) for x, y in zip(values[::2], values[1::2], strict=True)], closed))
    return found, (width, height)


def read_dxf(path: Path) -> Drawing:
    """By ezdxf."""
    drawing = ezdxf.readfile(path)
    assert drawing.units == ezdxf.units.MM
    found_wrong = drawing.audit()
    assert (found_wrong.errors, found_wrong.fixes) == ([], [])
    found: Drawing = {str(layer.dxf.name): [] for layer in drawing.layers if layer.dxf.name in TOOLS}
    for line in drawing.modelspace():
        assert line.dxftype() == "LWPOLYLINE"
        found[line.dxf.layer].append(([(x, y) for x, y, *_ in line.get_points()], bool(line.closed)))
    return found


def read_pdf(path: Path, page: int) -> Drawing:
    """By qpdf."""
    found: Drawing = {}
    with pikepdf.open(path) as pdf:
        shown = pdf.pages[page]
        names = {key: str(group.Name) for key, group in shown.Resources.Properties.items()}
        paths: list[tuple[list[tuple[float, float]], bool]] = []
        for operands, operator in pikepdf.parse_content_stream(shown):
            match str(operator):
                case "BDC":
                    paths = found.setdefault(names[str(operands[1])], [])
                case "m":
                    points = [(float(operands[0]) * POINT, float(operands[1]) * POINT)]
                    paths.append((points, False))
                case "l":
                    paths[-1][0].append((float(operands[0]) * POINT, float(operands[1]) * POINT))
                case "h":
                    paths[-1] = (paths[-1][0], True)
                case "cm":
                    assert [float(value) for value in operands] == [1, 0, 0, 1, 0, 0]
    return found


def segments(paths: Sequence[tuple[list[tuple[float, float]], bool]]) -> list[Segment]:
    found = []
    for points, closed in paths:
        around = [*points, points[0]] if closed else points
        found += list(itertools.pairwise(around))
    return found


def alike(one: Segment, other: Segment) -> bool:
    return any(dist(one[0], other[n]) < 0.01 and dist(one[1], other[1 - n]) < 0.01 for n in (0, 1))


def same_sets(ones: Sequence[Segment], others: Sequence[Segment]) -> bool:
    """Whether each segment has just one partner within 0.01 mm."""
    return len(ones) == len(others) and all(sum(alike(one, other) for other in others) == 1 for one in ones)


def drawings(shelf: tuple[dict[str, Any], Path]) -> list[tuple[dict[str, Any], str, int, Path]]:
    """Each sheet of the plan, with the stem and the number of its drawings, and their folder."""
    plan, out = shelf
    numbers = itertools.count()
    found = []
    for _, sheets in itertools.groupby(plan["sheets"], key=lambda sheet: sheet["file"]):
        numbers = itertools.count(1)
        found += [(sheet, sheet["file"].removesuffix(".pdf"), next(numbers), out / "machine") for sheet in sheets]
    return found


def test_a_dxf_names_everything_once_and_says_to_whom_it_belongs(shelf: tuple[dict[str, Any], Path]) -> None:
    """AutoCAD 2000 DXF Reference: no two handles are alike, and all are below the one to be given next."""
    for _, stem, number, folder in drawings(shelf):
        lines = (folder / f"{stem}-{number}.dxf").read_text(encoding="utf-8").split("\n")
        groups = list(zip(map(int, lines[:-1:2]), lines[1::2], strict=True))
        seed = groups.index((9, "$HANDSEED")) + 1
        handles = [int(value, 16) for place, (code, value) in enumerate(groups) if code in (5, 105) and place != seed]
        owners = {int(value, 16) for code, value in groups if code in (330, 350)}
        assert len(set(handles)) == len(handles) > len(owners)
        assert owners <= {0, *handles}
        assert max(handles) < int(groups[seed][1], 16)
        assert groups[-1] == (0, "EOF")


def test_svg_dxf_and_pdf_agree_with_each_other_and_with_the_plan(shelf: tuple[dict[str, Any], Path]) -> None:
    checked = 0
    for sheet, stem, number, folder in drawings(shelf):
        svg, size = read_svg(folder / f"{stem}-{number}.svg")
        dxf, pdf = read_dxf(folder / f"{stem}-{number}.dxf"), read_pdf(folder / f"{stem}.pdf", number - 1)
        assert list(svg) == list(dxf) == list(pdf) == TOOLS
        assert list(size) == sheet["size_mm"]
        for tool in TOOLS:
            assert same_sets(segments(svg[tool]), segments(dxf[tool]))
            assert same_sets(segments(svg[tool]), segments(pdf[tool]))
            assert [closed for _, closed in svg[tool]] == [closed for _, closed in dxf[tool]]
            assert [closed for _, closed in svg[tool]] == [closed for _, closed in pdf[tool]]
        outlines = [([tuple(point) for point in piece["outline_mm"]], True) for piece in sheet["pieces"]]
        assert same_sets(segments(svg["Cutting"]), segments(outlines))
        assert all(closed for _, closed in svg["Cutting"])
        folds = {(*fold["from_mm"], *fold["to_mm"]) for piece in sheet["pieces"] for fold in piece["folds"]}
        length = sum(dist(*segment) for segment in segments(svg["Creasing"]))
        assert length <= sum(hypot(x1 - x0, y1 - y0) for x0, y0, x1, y1 in folds) + 0.01
        assert length > 0
        assert same_sets(segments(svg["Crosses"]), [(arm["from_mm"], arm["to_mm"]) for arm in sheet["crosses"]])
        checked += 1
    assert checked >= 2


def overlap(one: Segment, other: Segment) -> float:
    """How much of two segments lies on one another, in mm."""
    (x0, y0), (x1, y1) = one
    length = dist(*one)
    dx, dy = (x1 - x0) / length, (y1 - y0) / length
    if any(abs(dx * (y - y0) - dy * (x - x0)) > 0.01 for x, y in other):
        return 0.0
    low, high = sorted(dx * (x - x0) + dy * (y - y0) for x, y in other)
    return min(high, length) - max(low, 0.0)


def test_no_line_is_made_twice(shelf: tuple[dict[str, Any], Path]) -> None:
    for _, stem, number, folder in drawings(shelf):
        svg, _ = read_svg(folder / f"{stem}-{number}.svg")
        lines = [segment for tool in TOOLS for segment in segments(svg[tool])]
        assert all(overlap(one, other) < 0.01 for one, other in itertools.combinations(lines, 2))


def test_crosses_are_printed_where_the_drawings_have_them(shelf: tuple[dict[str, Any], Path]) -> None:
    """Read from the printed sheet, the printer's own stretch put in; 3 mm inside the printable area, three of them."""
    _, out = shelf
    for sheet, *_ in drawings(shelf):
        width, height = sheet["size_mm"]
        across, up = 149.4 / 150, 150.3 / 150
        printed = [
            tuple(
                (width / 2 + (x - width / 2) * across, height / 2 + (y - height / 2) * up)
                for x, y in (stroke.start, stroke.end)
            )
            for stroke in strokes_of(out / sheet["file"], sheet["page"])
        ]
        for arm in sheet["crosses"]:
            assert sum(alike((tuple(arm["from_mm"]), tuple(arm["to_mm"])), line) for line in printed) == 1
        ends = [(*arm["from_mm"], *arm["to_mm"]) for arm in sheet["crosses"]]
        centres = {(round((x0 + x1) / 2, 3), round((y0 + y1) / 2, 3)) for x0, y0, x1, y1 in ends}
        assert len(centres) == 3
        # the printer stretches, so the printable area is a little other than 5 mm inside the sheet
        for centre, corner in zip(sorted(centres), [(8, 8), (8, height - 8), (width - 8, 8)], strict=True):
            assert centre == pytest.approx(corner, abs=0.6)


def test_pieces_keep_clear_of_the_crosses(shelf: tuple[dict[str, Any], Path]) -> None:
    for sheet, *_ in drawings(shelf):
        for arm in sheet["crosses"]:
            cross = Rect.around([Point(*arm["from_mm"]), Point(*arm["to_mm"])]).grown(0.5)
            for piece in sheet["pieces"]:
                outline = Rect.around([Point(*point) for point in piece["outline_mm"]])
                assert not outline.grown(piece["bleed_mm"] + 2).overlaps(cross)


def test_two_runs_write_the_same_drawings(tmp_path: Path, shelf: tuple[dict[str, Any], Path]) -> None:
    _, again = made(SHELF, tmp_path)
    names = sorted(path.name for path in (shelf[1] / "machine").iterdir())
    assert len(names) >= 6
    for name in names:
        assert (shelf[1] / "machine" / name).read_bytes() == (again / "machine" / name).read_bytes()


# The order of the work


STOCK = make_stock("page", StockEntry.model_validate({"caliper": "75 um"}), PrinterEntry.model_validate({}))


def placed(*pieces: tuple[float, float, float, float], cuts: tuple[Stroke, ...] = (), fold: bool = False) -> Sheet:
    """Pieces of sizes (x, y, width, height), each with these cuts and perhaps a fold in its middle."""
    placements = []
    for number, (x, y, width, height) in enumerate(pieces):
        middle = Fold(FoldKind.VALLEY, Point(width / 2, 0), Point(width / 2, height))
        outline = Rect(0, 0, width, height).corners
        flat = Flat("strip", str(number), "page", outline, (middle,) if fold else (), (), cuts=cuts)
        placements.append(Placement(Piece(str(number), 0, ("", ""), flat, NOTHING), Point(x, y), turned=False))
    return Sheet(STOCK, 1, 1, tuple(placements))


def test_cuts_within_a_piece_come_before_its_outline_and_are_not_made_twice() -> None:
    """A cut along the edge is left to the outline; two cuts that overlap are one; a fold under a cut is not scored."""
    cuts = (
        Stroke(Point(0, 0), Point(0, 10)),
        Stroke(Point(5, 10), Point(15, 10)),
        Stroke(Point(25, 10), Point(12, 10)),
        Stroke(Point(20, 4), Point(20, 0)),
    )
    found = tool_sheet(placed((20, 30, 40, 20), (100, 30, 40, 20), cuts=cuts, fold=True))
    assert [path.closed for path in found.cuts] == [False, False, True] * 2
    assert [len(path.points) for path in found.cuts] == [2, 2, 4] * 2
    lines = [stroke for path in found.cuts[:3] for stroke in path.strokes]
    assert sorted(sorted(line) for line in lines[:2]) == [[(25, 40), (45, 40)], [(40, 30), (40, 34)]]
    assert [sorted(path.points) for path in found.scores] == [[(40, 34), (40, 50)], [(120, 34), (120, 50)]]


def travel(paths: Sequence[ToolPath]) -> float:
    """How far the tool moves in the air."""
    places = [(0.0, 0.0), *((path.points[0], path.end) for path in paths)]
    total, at = 0.0, places[0]
    for path in paths:
        total += dist(at, path.points[0])
        at = path.end
    return total


def test_the_tool_travels_little() -> None:
    """On a grid of pieces listed at random: hardly more than the steps from neighbour to neighbour."""
    spots = [(10.0 + 30 * column, 10.0 + 25 * row, 26.0, 21.0) for row in range(8) for column in range(6)]
    listed = [spots[number * 29 % 48] for number in range(48)]
    found = tool_sheet(placed(*listed, fold=True))
    as_listed = [ToolPath(Rect(*spot).corners, closed=True) for spot in listed]
    assert travel(found.cuts) < travel(as_listed) / 4
    assert travel(found.cuts) < 48 * 30
    assert travel(found.scores) < 48 * 30


def test_paths_are_begun_where_the_tool_is() -> None:
    square = ToolPath(Rect(0, 0, 10, 10).corners, closed=True)
    assert square.begun_near(Point(11, 12)).points == ((10, 10), (0, 10), (0, 0), (10, 0))
    line = ToolPath((Point(0, 0), Point(5, 0)))
    assert line.begun_near(Point(6, 1)).points == ((5, 0), (0, 0))
    assert line.begun_near(Point(1, 1)).points == ((0, 0), (5, 0))


def test_layers_have_the_order_of_use() -> None:
    found: ToolSheet = tool_sheet(placed((20, 30, 40, 20), fold=True))
    assert [str(tool) for tool, _ in found.layers] == TOOLS
    assert found.pen == ()  # no crosses were asked for


# Strokes without doubles

level = st.tuples(st.integers(0, 3), st.integers(0, 12), st.integers(1, 8)).map(
    lambda n: Stroke(Point(n[1], n[0]), Point(n[1] + n[2], n[0]))
)
upright = level.map(lambda stroke: Stroke(Point(stroke.end.y, stroke.end.x), Point(stroke.start.y, stroke.start.x)))
grids = st.lists(st.one_of(level, upright), max_size=12)


def cells(strokes: Sequence[Stroke]) -> list[tuple[float, float, bool]]:
    """The unit steps that strokes on a grid cover, each as often as it is covered."""
    found = []
    for (x0, y0), (x1, y1) in strokes:
        if y0 == y1:
            found += [(x, y0, True) for x in range(round(min(x0, x1)), round(max(x0, x1)))]
        else:
            found += [(x0, y, False) for y in range(round(min(y0, y1)), round(max(y0, y1)))]
    return found


@given(grids)
def test_merged_strokes_cover_the_same_once(strokes: list[Stroke]) -> None:
    found = cells(merged(strokes))
    assert sorted(found) == sorted(set(cells(strokes)))


@given(grids, grids)
def test_without_takes_away_just_what_is_covered(strokes: list[Stroke], covers: list[Stroke]) -> None:
    single = merged(strokes)
    assert sorted(cells(without(single, covers))) == sorted(set(cells(single)) - set(cells(covers)))


def test_slanting_strokes_on_one_line_are_joined_whichever_way_they_run() -> None:
    strokes = [((1, 1), (3, 4)), ((5, 7), (2, 2.5)), ((0, 1), (2, 4))]
    found = merged(Stroke(Point(*start), Point(*end)) for start, end in strokes)
    assert [[tuple(round(v, 6) for v in point) for point in stroke] for stroke in found] == [
        [(1, 1), (5, 7)],
        [(0, 1), (2, 4)],
    ]
