"""Papers folded in space, as thick as they are: panels land where they are promised, and nothing stands out."""

from __future__ import annotations

from math import isclose

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.ground.geometry import Axis, Point, Rect, Size
from bookmaker.sheets.flat import Face, FoldKind
from bookmaker.things.papers.chains import LETTER, ONE_PANEL, Chain, zigzag
from bookmaker.things.papers.fold_entry import FoldEntry
from bookmaker.things.papers.folding import Cell, FoldedSheet
from bookmaker.things.papers.net import net_of, packet_size, panel_name
from tests.kit.papers_folded import joined, poses_of, slabs_of
from tests.kit.slabs import deepest

WAYS = (
    FoldEntry(kind="half"),
    FoldEntry(kind="half", divides="width", prints="outside"),
    FoldEntry(kind="quarter"),
    FoldEntry(kind="letter"),
    FoldEntry(kind="letter", prints="outside"),
    FoldEntry(kind="zigzag", panels=4),
    FoldEntry(kind="gate", divides="width"),
    FoldEntry(kind="map", panels=5, rows=2),
    FoldEntry(kind="map", panels=4, rows=3, prints="outside"),
)
every_way = pytest.mark.parametrize("way", WAYS, ids=lambda way: f"{way.kind} {way.prints}")
sizes = st.builds(Size, st.floats(40, 90), st.floats(40, 90))
calipers = st.floats(0.05, 0.15)
CHAINS: list[Chain] = [ONE_PANEL, zigzag(2), zigzag(3), LETTER]
sheets = st.builds(
    FoldedSheet,
    sizes,
    calipers,
    st.sampled_from(CHAINS),
    st.sampled_from(CHAINS),
    st.sampled_from(Axis),
    st.booleans(),
    st.floats(0, 0.4),
)


@every_way
@settings(max_examples=4, deadline=None)
@given(size=sizes, caliper=calipers)
def test_no_panel_passes_through_another_in_any_step(way: FoldEntry, size: Size, caliper: float) -> None:
    sheet = way.folded(size, caliper)
    for step in net_of(sheet, "sheet").steps:
        found, which = deepest(slabs_of(sheet, step), joined(sheet, step))
        assert found < 1e-6, f"{which} after step {step}"


@settings(max_examples=25, deadline=None)
@given(sheet=sheets)
def test_every_panel_lies_at_its_level_and_no_two_at_one(sheet: FoldedSheet) -> None:
    poses = poses_of(sheet)
    way = -1 if sheet.outside else 1
    heights = {cell: poses[panel_name(cell)].of(sheet.rect(cell).centre).z for cell in sheet.cells}
    for cell, height in heights.items():
        assert height == pytest.approx(way * sheet.level(cell) * sheet.caliper, abs=1e-9)
    assert len({round(height / sheet.caliper) for height in heights.values()}) == len(sheet.cells) == sheet.layers
    assert sheet.thickness == pytest.approx(max(heights.values()) - min(heights.values()) + sheet.caliper, abs=1e-9)


@settings(max_examples=25, deadline=None)
@given(sheet=sheets)
def test_nothing_stands_out_of_the_outermost_panel(sheet: FoldedSheet) -> None:
    """From fold to fold the packet is as large as its largest panel and, at every end that is a fold, one caliper.

    A half of it is the paper that turns, a half the outermost layer's own.
    """
    packet = packet_size(sheet)
    box = np.vstack([slab.corners for name, slab in slabs_of(sheet).items() if name.startswith("panel")])
    wide, high = (float(side) for side in box.max(0)[:2] - box.min(0)[:2])
    longest = Size(*(max(sheet.rect(cell).size[axis] for cell in sheet.cells) for axis in (0, 1)))
    assert (wide, high) == pytest.approx(longest, abs=1e-6)
    ends = [min(2, len(chain.steps)) for chain in (sheet.columns, sheet.rows)]
    assert packet == pytest.approx(
        [side + end * sheet.caliper / 2 for side, end in zip(longest, ends, strict=True)], abs=1e-6
    )


@settings(max_examples=25, deadline=None)
@given(sheet=sheets)
def test_what_is_folded_in_is_shorter_by_the_allowance(sheet: FoldedSheet) -> None:
    for chain, axis in ((sheet.columns, 0), (sheet.rows, 1)):
        if chain is LETTER:
            lengths = [
                sheet.rect(cell).size[axis] for cell in sheet.cells[:: 1 if axis == 0 else len(sheet.columns.levels)]
            ]
            assert lengths[0] == pytest.approx(lengths[1])
            assert lengths[1] - lengths[2] == pytest.approx(sheet.allowance, abs=1e-9)


@settings(max_examples=25, deadline=None)
@given(sheet=sheets)
def test_unfolded_the_panels_are_the_sheet_in_reading_order(sheet: FoldedSheet) -> None:
    """From fold to fold and edge to edge they cover it once, row by row from the head."""
    wholes = [sheet.whole(cell) for cell in sheet.cells]
    assert sum(rect.width * rect.height for rect in wholes) == pytest.approx(sheet.size.width * sheet.size.height)
    assert Rect.around([corner for rect in wholes for corner in rect.corners]).size == pytest.approx(sheet.size)
    places = [(-round(rect.top, 6), round(rect.x, 6)) for rect in wholes]
    assert places == sorted(places)
    assert len(set(places)) == len(places)
    for cell, whole in zip(sheet.cells, wholes, strict=True):
        assert whole.contains(sheet.rect(cell))


@settings(max_examples=25, deadline=None)
@given(sheet=sheets)
def test_valleys_make_printed_faces_meet_and_mountains_backs(sheet: FoldedSheet) -> None:
    """Each fold runs between two panels whose faces look at one another in the packet, or away from one another."""
    poses = poses_of(sheet)
    seen = 0
    for fold in sheet.folds:
        # near its start: its middle may be where another fold crosses it
        at = Point(0.9 * fold.start.x + 0.1 * fold.end.x, 0.9 * fold.start.y + 0.1 * fold.end.y)
        beside = sorted(sheet.cells, key=lambda cell: away(sheet.whole(cell), at))[:2]
        low, high = (poses[panel_name(cell)] for cell in sorted(beside, key=lambda cell: height_of(sheet, cell)))
        assert (low.z.z > 0) is (fold.kind is FoldKind.VALLEY)
        assert (high.z.z < 0) is (fold.kind is FoldKind.VALLEY)
        seen += 1
    assert seen >= len(sheet.one.steps) + len(sheet.two.steps)


def height_of(sheet: FoldedSheet, cell: Cell) -> float:
    return poses_of(sheet)[panel_name(cell)].of(sheet.rect(cell).centre).z


def away(rect: Rect, point: Point) -> float:
    """How far a point is from a rectangle."""
    aside = max(rect.x - point.x, 0.0, point.x - rect.right)
    above = max(rect.y - point.y, 0.0, point.y - rect.top)
    return aside + above


@settings(max_examples=25, deadline=None)
@given(sheet=sheets)
def test_the_outer_panels_look_out_with_the_face_that_is_promised(sheet: FoldedSheet) -> None:
    poses = poses_of(sheet)
    for cell, face in sheet.outer:
        pose = poses[panel_name(cell)]
        heights = [poses[panel_name(other)].of(sheet.rect(other).centre).z for other in sheet.cells]
        mine = pose.of(sheet.rect(cell).centre).z
        if len(sheet.cells) > 1:
            outwards = 1 if isclose(mine, max(heights), abs_tol=1e-9) else -1
            assert isclose(mine, max(heights) if outwards > 0 else min(heights), abs_tol=1e-9)
            assert (pose.z.z * outwards > 0) is (face is Face.FRONT)


def test_a_letter_of_eleven_inches_is_folded_as_published() -> None:
    """ "C-folds", ThoughtCo: 11 in make 3 11/16, 3 11/16 and 3 5/8 in; the paper there has no thickness."""
    inch = 25.4
    sheet = FoldEntry(kind="letter", allowance=f"{inch / 16} mm").folded(Size(8.5 * inch, 11 * inch), 1e-9)
    heights = [sheet.rect(cell).height / inch for cell in sheet.cells]
    assert heights == pytest.approx([3 + 11 / 16, 3 + 11 / 16, 3 + 5 / 8], abs=1e-6)


def test_a_map_creeps_by_a_caliper_a_layer() -> None:
    """Derived: where two layers are folded, the outer strip climbs three levels, the inner one; a caliper each."""
    sheet = FoldEntry(kind="map", panels=4, rows=2).folded(Size(60, 40), 0.1)
    assert sheet.highest == [3, 3, 3]
    assert [sheet.climb(cell, fold) for cell in sheet.cells[::4] for fold in range(3)] == [3, 1, 3, 1, 3, 1]
    assert sheet.inside_by(sheet.cells[4], 0) == pytest.approx(0.1)
    # 60 mm less three strips of 0.3 mm
    assert [sheet.rect(cell).width for cell in sheet.cells] == pytest.approx([59.1 / 4] * 8)
