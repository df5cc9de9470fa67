"""Squared, ledger, music and map pages: lines where they belong, as wide as the printer's dots."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.art import NOTHING
from bookmaker.ground.drawing import Art, Colour
from bookmaker.ground.geometry import Point, Rect
from bookmaker.ground.problems import Severity
from bookmaker.things.book.pages.part import UnreadPart
from bookmaker.things.book.pages.patterns import map_grid
from bookmaker.things.book.pages.patterns.ledger_paper import LedgerPaper
from bookmaker.things.book.pages.patterns.map_grid import MapGrid
from bookmaker.things.book.pages.patterns.music import Music
from bookmaker.things.book.pages.patterns.squared import Squared
from bookmaker.typesetting.page import BookWords, PageFrame
from tests.kit.recording import Stroked, record

FRAME = PageFrame(15.0, 21.0, 4, book=BookWords("Soundings", "N. Grell"))
SIDES = st.floats(1, 400)
DOT = 25.4 / 600


def lines(stroke: Stroked) -> list[tuple[Point, Point]]:
    """The straight lines of a stroked path."""
    points = list(stroke.path.points())
    return list(zip(points[::2], points[1::2], strict=True))


def within(art: Art, page: Rect) -> bool:
    """Whether all that is stroked and filled lies on the page."""
    drawn = record(art)
    points = [point for mark in (*drawn.strokes, *drawn.fills) for point in mark.path.points()]
    return page.contains(Rect.around(points)) if points else True


# ---- squared


@given(spacing=st.floats(0.2, 50), width=SIDES, height=SIDES)
def test_squares_are_square_centred_and_reach_every_edge(spacing: float, width: float, height: float) -> None:
    frame = PageFrame(width, height, 2)
    [stroke] = record(Squared(spacing=spacing).compose(frame).pages[0]).strokes
    upright = sorted(a.x for a, b in lines(stroke) if a.x == b.x)
    level = sorted(a.y for a, b in lines(stroke) if a.y == b.y)
    for places, length in ((upright, width), (level, height)):
        assert all(b - a == pytest.approx(spacing) for a, b in pairwise(places))
        assert places[0] + places[-1] == pytest.approx(length)
        assert 0 < places[0] <= spacing + 1e-6
    assert {(a.y, b.y) for a, b in lines(stroke) if a.x == b.x} == {(0, height)}
    assert {(a.x, b.x) for a, b in lines(stroke) if a.y == b.y} == {(0, width)}


def test_every_fifth_line_is_two_dots_wide_and_the_others_one() -> None:
    entry = Squared(spacing="1 mm", strong_every="5", ink="#112233")
    fine, strong = record(entry.compose(FRAME).pages[1]).strokes
    assert (fine.pen.width, strong.pen.width) == pytest.approx((DOT, 2 * DOT))
    assert fine.pen.colour == strong.pen.colour == Colour.from_hex("#112233")
    # from the middle of 15 mm: 7.5 ± 5; of 21 mm: 10.5 ± 5, ± 10
    assert sorted(a.x for a, b in lines(strong) if a.x == b.x) == pytest.approx([2.5, 7.5, 12.5])
    assert sorted(a.y for a, b in lines(strong) if a.y == b.y) == pytest.approx([0.5, 5.5, 10.5, 15.5, 20.5])
    assert len(lines(fine)) + len(lines(strong)) == 15 + 21


@pytest.mark.parametrize(("dpi", "width"), [(1200, 0.04), (600, DOT), (300, 25.4 / 300)])
def test_a_fine_line_is_one_dot_wide_but_never_thinner_than_can_be_seen(dpi: float, width: float) -> None:
    frame = PageFrame(15, 21, 1, resolution_dpi=dpi)
    [stroke] = record(Squared().compose(frame).pages[0]).strokes
    assert stroke.pen.width == pytest.approx(width)


# ---- ledger


@given(columns=st.integers(0, 1000), width=SIDES, height=SIDES, spacing=st.floats(0.2, 50))
def test_ledger_lines_stay_on_the_page_with_room_to_write(
    columns: int, width: float, height: float, spacing: float
) -> None:
    entry = LedgerPaper(columns=str(columns), spacing=spacing)
    page = entry.compose(PageFrame(width, height, 2)).pages[0]
    assert within(page, Rect(0, 0, width, height).grown(0.1))
    ruled = record(page).strokes[-1]
    upright = sorted(a.x for a, b in lines(ruled) if a.x == b.x)
    assert len(upright) == 2 + (columns + 1 if columns else 0)
    # between the date and the first sum there is a quarter of the width to say what was bought
    assert (upright[2] if columns else width) - upright[1] >= width / 4


def test_a_ledger_has_a_double_rule_at_the_head_and_before_the_sums() -> None:
    level, columns = record(LedgerPaper(spacing="1 mm", columns="2").compose(FRAME).pages[0]).strokes
    assert [a.y for a, _ in lines(level)] == pytest.approx([16.5 - n for n in range(17)])
    head = sorted(a.y for a, b in lines(columns) if a.y == b.y)
    assert head == pytest.approx([17.5, 17.5 + 2 * DOT])
    # 15 mm: dates at 1.25 and 2.143; sums at 11.25, doubled, and 13.125
    upright = sorted(a.x for a, b in lines(columns) if a.x == b.x)
    assert upright == pytest.approx([1.25, 15 / 7, 11.25 - DOT, 11.25 + DOT, 13.125])
    assert columns.pen.colour != level.pen.colour


@pytest.mark.parametrize("right_to_left", [False, True])
def test_a_ledger_is_numbered_in_its_head_at_the_outer_edge(right_to_left: bool) -> None:
    frame = PageFrame(15, 21, 4, right_to_left)
    for number, page in enumerate(LedgerPaper(numbers="yes").compose(frame).pages, start=1):
        [text] = record(page).texts
        assert 17.5 + 2 * DOT < text.at.y < 20.5
        inner, outer = text.at.x, 15 - text.end.x
        if not frame.spine_on_left(number):
            inner, outer = outer, inner
        assert outer == pytest.approx(15 / 18)
        assert inner > 12


# ---- music


@given(spacing=st.floats(0.1, 10), gap=st.floats(0, 20), system=st.integers(0, 4), height=SIDES)
def test_staves_have_five_even_lines_inside_the_type_area(
    spacing: float, gap: float, system: int, height: float
) -> None:
    frame = PageFrame(15, height, 2)
    entry = Music(spacing=spacing, gap=gap, system=str(system))
    inside = entry.compose(frame)
    if inside.pages[0] is NOTHING:
        assert [problem.severity for problem in inside.problems] == [Severity.WARNING]
        return
    assert within(inside.pages[0], frame.type_area(1))
    [stroke] = record(inside.pages[0]).strokes
    heights = [a.y for a, b in lines(stroke) if a.y == b.y]
    staves = [heights[i : i + 5] for i in range(0, len(heights), 5)]
    steps = [upper - lower for staff in staves for upper, lower in pairwise(staff)]
    assert len(staves) % max(1, system) == 0
    assert all(step == pytest.approx(steps[0]) for step in steps)
    assert steps[0] / DOT == pytest.approx(round(steps[0] / DOT))
    assert abs(steps[0] - spacing) <= DOT / 2 + 1e-9
    assert all(one[-1] - other[0] >= gap - 1e-6 for one, other in pairwise(staves))


def test_a_system_is_joined_at_the_left_and_its_bar_lines_go_through() -> None:
    entry = Music(system="2", bars="2", gap="1 mm")
    page = entry.compose(FRAME).pages[0]
    [stroke] = record(page).strokes
    upright = [(a, b) for a, b in lines(stroke) if a.x == b.x]
    heights = sorted({a.y for a, b in lines(stroke) if a.y == b.y}, reverse=True)
    area = FRAME.type_area(1)
    # each system: the line at the left, a bar line in the middle, one at the end
    assert len(upright) == 3 * len(heights) / 10
    assert {round(a.x, 6) for a, _ in upright} == {round(x, 6) for x in (area.x, area.x + area.width / 2, area.right)}
    assert (upright[0][0].y, upright[0][1].y) == (heights[0], heights[9])


def test_a_page_too_low_for_a_system_is_a_warning() -> None:
    inside = Music(spacing="1 mm", system="3").compose(PageFrame(15, 21, 2))
    assert [str(problem) for problem in inside.problems] == [
        "a system of 3 staves is 14.19 mm high, the type area has 14 mm: the pages stay empty; "
        "write a smaller spacing, gap or system"
    ]


# ---- map grid


def labels(page: Art) -> list[str]:
    return [written.text for written in record(page).texts]


def minutes(label: str) -> int:
    found = re.fullmatch(r"(\d+)°(?:(\d\d)')?([NSEW]?)", label)
    assert found, label
    size = int(found[1]) * 60 + int(found[2] or 0)
    return -size if found[3] in ("S", "W") else size


@given(title=st.text(max_size=8), spacing=st.floats(0.3, 20), right_to_left=st.booleans())
def test_meridians_and_parallels_are_even_possible_and_go_on_from_page_to_page(
    title: str, spacing: float, right_to_left: bool
) -> None:
    frame = PageFrame(16, 21, 3, right_to_left, book=BookWords(title))
    one, other, _ = MapGrid(spacing=spacing).compose(frame).pages
    assert isinstance(one, map_grid.MapPage)
    assert isinstance(other, map_grid.MapPage)
    here, there = ([minutes(label) for label in page.meridians()] for page in (one, other))
    assert {(b - a) % 21600 for a, b in pairwise(here)} == {one.chart.step}
    assert ((here[0], there[-1]) if right_to_left else (here[-1], there[0])) in {(x, x) for x in (*here, *there)}
    assert all(-180 * 60 <= place < 180 * 60 for place in here)
    up = [minutes(label) for label in one.parallels()]
    assert {b - a for a, b in pairwise(up)} == {one.chart.step}
    assert all(-80 * 60 < place < 80 * 60 for place in up)
    assert list(other.parallels()) == list(one.parallels())


def test_a_map_lies_on_the_page_with_its_figures_and_another_book_lies_elsewhere() -> None:
    [page, *_] = MapGrid().compose(FRAME).pages
    assert within(page, FRAME.page())
    drawn = record(page)
    for text in drawn.texts:
        size = text.line.size
        assert FRAME.page().contains(Rect.around([text.at, text.end]).grown(0.2 * size))
    assert labels(page)
    elsewhere = PageFrame(15, 21, 4, book=BookWords("Other Soundings"))
    assert labels(MapGrid().compose(elsewhere).pages[0]) != labels(page)
    assert record(MapGrid(labels="no").compose(FRAME).pages[0]).texts == []


def test_figures_stand_at_their_lines() -> None:
    [page, *_] = MapGrid(spacing="5 mm").compose(FRAME).pages
    assert isinstance(page, map_grid.MapPage)
    neat, (columns, _) = page.neat_line(), page.counts()
    shown = [text for text in record(page).texts if text.at.y == text.end.y]
    for text in shown:
        place = list(page.meridians()).index(text.text)
        assert (text.at.x + text.end.x) / 2 == pytest.approx(neat.x + neat.width * place / columns)
        assert text.at.y > neat.top


@given(width=SIDES, height=SIDES, spacing=st.floats(0.2, 50))
def test_a_map_of_any_size_lies_on_its_page(width: float, height: float, spacing: float) -> None:
    if spacing * 300 < max(width, height):
        spacing = max(width, height) / 300
    page = MapGrid(spacing=min(spacing, 50)).compose(PageFrame(width, height, 1)).pages[0]
    assert within(page, Rect(0, 0, width, height))


# ---- all


@pytest.mark.parametrize("entry", [Squared, LedgerPaper, Music, MapGrid])
def test_numbers_are_printed_if_asked_and_go_on_from_the_part_before(entry: type[UnreadPart]) -> None:
    frame = PageFrame(15, 21, 2, first=7)
    pages = entry.model_validate({"numbers": "yes"}).compose(frame).pages
    assert [record(page).texts[-1].text for page in pages] == ["7", "8"]
