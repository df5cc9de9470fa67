"""The page: margins, page numbers, and the kinds that need no source: blank and ruled."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path as FilePath

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from bookmaker.ground.art import NOTHING
from bookmaker.ground.drawing import Colour
from bookmaker.ground.geometry import Rect
from bookmaker.things.book.pages.inside import load_inside
from bookmaker.things.book.pages.kinds import BLANK, AnyInside
from bookmaker.things.book.pages.patterns.blank import Blank
from bookmaker.things.book.pages.patterns.ruled import Ruled
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.page import PageFrame
from tests.kit.recording import record

FRAME = PageFrame(15.0, 21.0, 48)
SIDES = st.floats(1, 400)


def compose(entry: Blank | Ruled, frame: PageFrame) -> tuple[object, ...]:
    inside = load_inside(entry, FilePath()).compose(frame)
    assert inside.problems == ()
    return inside.pages


# ---- margins


@given(width=SIDES, height=SIDES, number=st.integers(1, 2000), right_to_left=st.booleans())
def test_margins_are_ninths_and_mirrored_on_spreads(
    width: float, height: float, number: int, right_to_left: bool
) -> None:
    frame = PageFrame(width, height, 2000, right_to_left)
    area, facing = frame.type_area(number), frame.type_area(number + 1)
    assert area.size == pytest.approx((width * 6 / 9, height * 6 / 9))
    assert (area.y, height - area.top) == pytest.approx((height * 2 / 9, height / 9))
    left, right = area.x, width - area.right
    inner, outer = (left, right) if frame.spine_on_left(number) else (right, left)
    assert (inner, outer) == pytest.approx((width / 9, width * 2 / 9))
    assert area.x == pytest.approx(width - facing.right)
    assert frame.spine_on_left(number) is not frame.spine_on_left(number + 1)


def test_odd_pages_lie_right_of_the_spine_or_left_of_it_when_read_from_the_right() -> None:
    assert PageFrame(15, 21, 2).spine_on_left(1)
    assert not PageFrame(15, 21, 2, right_to_left=True).spine_on_left(1)


# ---- numbers


@given(width=SIDES, height=SIDES, number=st.integers(1, 2000), right_to_left=st.booleans())
def test_a_page_number_stands_in_the_foot_margin_centred_under_the_text(
    width: float, height: float, number: int, right_to_left: bool
) -> None:
    frame = PageFrame(width, height, number, right_to_left)
    [written] = record(Blank(numbers=True).compose(frame).pages[-1]).texts
    area = frame.type_area(number)
    assert written.text == str(number)
    assert (written.at.x + written.end.x) / 2 == pytest.approx(area.centre.x)
    assert area.x <= written.at.x
    assert written.end.x <= area.right
    cap_height = written.line.runs[0][1].typeface.cap_height * written.line.size
    assert written.at.y > 0
    assert written.at.y + cap_height < area.y


def test_a_page_of_21_mm_has_numbers_of_less_than_a_millimetre() -> None:
    [written] = record(Blank(numbers=True).compose(FRAME).pages[47]).texts
    assert written.line.size == pytest.approx(0.7)


# ---- blank


def test_blank_pages_show_nothing() -> None:
    assert compose(BLANK, FRAME) == (NOTHING,) * 48


def test_blank_pages_carry_numbers_if_asked() -> None:
    numbers = [record(page).texts[0].text for page in Blank(numbers=True).compose(FRAME).pages]
    assert numbers == [str(number) for number in range(1, 49)]


# ---- ruled


def test_ruled_lines_run_from_edge_to_edge_between_the_head_and_foot_margins() -> None:
    pages = Ruled(spacing="2 mm", ink="#336699").compose(FRAME).pages
    assert len(pages) == 48
    strokes = record(pages[0]).strokes
    # type area 14 mm high from 18.667 mm down: lines at 18.667, 16.667 … 4.667
    assert [stroke.path.points()[0].y for stroke in strokes] == pytest.approx([56 / 3 - 2 * i for i in range(8)])
    for stroke in strokes:
        start, end = stroke.path.points()
        assert (start.x, end.x) == (0, 15)
        assert start.y == end.y
        assert stroke.pen.colour == Colour.from_hex("#336699")
        assert stroke.pen.dash == ()


@given(spacing=st.floats(0.2, 50), width=SIDES, height=SIDES, number=st.integers(1, 4))
def test_ruled_lines_stay_on_the_type_area_and_fill_it(
    spacing: float, width: float, height: float, number: int
) -> None:
    frame = PageFrame(width, height, 4)
    strokes = record(Ruled(spacing=spacing).compose(frame).pages[number - 1]).strokes
    heights = [stroke.path.points()[0].y for stroke in strokes]
    area = frame.type_area(number)
    assert heights[0] == area.top
    assert area.y - 1e-6 <= heights[-1] < area.y + spacing
    assert all(upper - lower == pytest.approx(spacing) for upper, lower in pairwise(heights))


@pytest.mark.parametrize(("dpi", "width"), [(1200, 0.06), (600, 0.06), (300, 25.4 / 300)])
def test_ruled_lines_are_at_least_one_dot_wide(dpi: float, width: float) -> None:
    frame = PageFrame(15, 21, 2, resolution_dpi=dpi)
    [page, _] = Ruled().compose(frame).pages
    assert {stroke.pen.width for stroke in record(page).strokes} == {width}


def test_the_margin_line_runs_down_the_outer_margin() -> None:
    entry = Ruled(margin_line="yes", margin_ink="#aa0000")
    for frame, number, x in (
        (FRAME, 1, 15 * 7 / 9),
        (FRAME, 2, 15 * 2 / 9),
        (PageFrame(15, 21, 2, right_to_left=True), 1, 15 * 2 / 9),
    ):
        last = record(entry.compose(frame).pages[number - 1]).strokes[-1]
        start, end = last.path.points()
        assert (*start, *end) == pytest.approx((x, 0, x, 21))
        assert last.pen.colour == Colour.from_hex("#aa0000")
    assert len({s.pen.colour for s in record(Ruled().compose(FRAME).pages[0]).strokes}) == 1


def test_ruled_pages_carry_numbers_only_if_asked() -> None:
    with_numbers = Ruled(numbers="yes").compose(FRAME).pages
    assert [written.text for written in record(with_numbers[4]).texts] == ["5"]
    assert len(record(with_numbers[4]).strokes) > 1
    assert record(Ruled().compose(FRAME).pages[4]).texts == []


# ---- the table


@pytest.mark.parametrize(
    ("written", "kind"),
    [
        ({"kind": "blank"}, "Blank"),
        ({"kind": "ruled", "spacing": "1/16 in"}, "Ruled"),
        ({"kind": "text", "file": "log.txt"}, "TextInside"),
        ({"kind": "pictures", "folder": "plates", "bleed": "yes"}, "PicturesInside"),
    ],
)
def test_an_inside_is_known_by_its_kind(written: dict[str, str], kind: str) -> None:
    assert type(TypeAdapter(AnyInside).validate_python(written)).__name__ == kind


def test_pages_are_numbered_by_default_where_there_is_text_only() -> None:
    assert TextInside(file="x").numbers
    assert not BLANK.numbers
    assert not Ruled().numbers


@pytest.mark.parametrize(
    ("leading", "message"),
    [
        ("1.25 mm", "1.25 mm"),
        ("0.5", "0.5 is out of range"),
        ("9", "9 is out of range"),
        ("nan", "nan"),
        ("", "empty"),
    ],
)
def test_a_leading_that_cannot_be_meant_is_refused(leading: str, message: str) -> None:
    with pytest.raises(ValidationError) as caught:
        TextInside(file="x", leading=leading)
    [error] = caught.value.errors()
    assert error["type"] == "maker"
    assert message in error["ctx"]["message"]
    assert error["ctx"]["remedy"]


def test_leading_is_a_plain_number() -> None:
    assert TextInside(file="x", leading="1,3").leading == 1.3
    assert TextInside(file="x").leading == 1.25


def test_the_page_itself_is_a_rectangle_at_the_origin() -> None:
    assert FRAME.page() == Rect(0, 0, 15, 21)
