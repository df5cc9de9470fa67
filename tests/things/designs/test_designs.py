"""The plain design: its ink reaches the bleed, its words stay in their panels, its contrast is enough."""

from __future__ import annotations

from pathlib import Path as FilePath

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from bookmaker.ground.drawing import Colour, contrast
from bookmaker.ground.geometry import Rect, Size
from bookmaker.ground.problems import Severity, ShelfFileError
from bookmaker.ground.typefaces import bundled
from bookmaker.sheets.flat import Flat, Role
from bookmaker.things.book.designs.design import Words
from bookmaker.things.book.designs.letters.titling import fit_text
from bookmaker.things.book.designs.styles.plain import Plain
from bookmaker.things.book.legibility import lettering_problems
from tests.kit.flats import flat_of, panel
from tests.kit.recording import RecordingCanvas, ink_box, record
from tests.kit.styles import NO_FILES
from tests.kit.titles import TITLES


def drawn(entry: Plain, flat: Flat, title: str = "Tide Tables", author: str = "I. Marlow") -> RecordingCanvas:
    return record(entry.dress(entry.load(NO_FILES), flat, Words(title, author)).art)


@pytest.mark.parametrize("way", ["down", "up", "across"])
@given(title=TITLES, author=TITLES | st.just(""), thickness=st.floats(0.8, 30), height=st.floats(8, 40))
@settings(max_examples=60, deadline=None)
def test_words_never_leave_their_panel(way: str, title: str, author: str, thickness: float, height: float) -> None:
    flat = flat_of(thickness, height * 0.7, height)
    for text in drawn(Plain(spine_title=way), flat, title, author).texts:
        box = ink_box(text)
        assert any(panel(flat, role).contains(box, 1e-6) for role in (Role.SPINE, Role.FRONT)), text.text


@given(title=TITLES, width=st.floats(2, 40), height=st.floats(1, 40))
@settings(max_examples=100, deadline=None)
def test_a_fitted_text_keeps_all_its_words_in_order(title: str, width: float, height: float) -> None:
    block = fit_text(bundled("sans"), title, Size(width, height), 5.0)
    assert " ".join(line.text for line in block.lines).split() == title.split()
    assert block.width <= width + 1e-6
    assert block.height <= height + 1e-6


def test_a_spine_title_stays_on_one_line_unless_two_are_much_larger() -> None:
    flat = flat_of(4.0)
    spine = panel(flat, Role.SPINE)
    title = [t for t in drawn(Plain(), flat, "The Cartographer's Attic", "").texts if spine.contains(ink_box(t))]
    assert [text.text for text in title] == ["The Cartographer's Attic"]


@pytest.mark.parametrize("turns", [{}, {"turn_in": "5 mm"}, {"turn_in": "5 mm", "head_turn_in": "4 mm"}])
def test_the_ground_reaches_the_bleed_everywhere(turns: dict[str, str]) -> None:
    flat = flat_of(**turns)
    ground = drawn(Plain(), flat).marks[0]
    assert Rect.around(ground.path.points()) == pytest.approx(Rect(0, 0, *flat.size).grown(flat.bleed))


def test_down_and_up_turn_opposite_ways() -> None:
    for way, sign in (("down", -1), ("up", 1)):
        flat = flat_of()
        spine = panel(flat, Role.SPINE)
        title = next(text for text in drawn(Plain(spine_title=way), flat).texts if spine.contains(ink_box(text)))
        assert (title.end.y - title.at.y) * sign > 0
        assert title.end.x == pytest.approx(title.at.x)


def test_volume_and_date_stand_on_the_spine() -> None:
    flat = flat_of()
    words = Words("Tides", "A. Fell", "IX", "1907")
    canvas = record(Plain().dress(Plain().load(NO_FILES), flat, words).art)
    spine = panel(flat, Role.SPINE)
    assert {text.text for text in canvas.texts if spine.contains(ink_box(text))} == {"Tides", "A. Fell", "IX", "1907"}


def test_no_spine_title_leaves_the_spine_plain() -> None:
    flat = flat_of()
    spine = panel(flat, Role.SPINE)
    assert not [text for text in drawn(Plain(spine_title="none"), flat).texts if spine.contains(ink_box(text))]


@given(st.integers(0, 0xFFFFFF))
def test_titling_stands_out_from_any_ground(ground: int) -> None:
    colour = Colour.from_hex(f"#{ground:06x}")
    ink = drawn(Plain(colour=colour), flat_of()).texts[0].colour
    assert contrast(ink, colour) >= 3


def test_type_too_small_to_print_is_a_warning() -> None:
    flat = flat_of(0.4)
    dress = Plain().dress(Plain().load(NO_FILES), flat, Words("A Very Long Title for a Thin Book", ""))
    problems = list(lettering_problems(dress.lettering, 600))
    assert [problem.severity for problem in problems] == [Severity.WARNING]
    assert problems[0].field == ("spine_title",)


def test_a_front_picture_covers_front_and_bleed_and_hides_the_title(tmp_path: FilePath) -> None:
    Image.new("RGB", (700, 1000), "#204060").save(tmp_path / "front.png")
    entry = Plain(front_picture="front.png")
    flat = flat_of()
    dress = entry.dress(entry.load(tmp_path), flat, Words("Tide Tables", "I. Marlow"))
    canvas = record(dress.art)
    picture = next(mark for mark in canvas.marks if type(mark).__name__ == "Placed")
    front = panel(flat, Role.FRONT)
    assert picture.bounds.contains(front.grown(0, 2, 2, 2))
    assert not [text for text in canvas.texts if front.contains(ink_box(text))]
    assert dress.problems == ()


def test_a_coarse_picture_is_a_warning_with_the_pixels_it_needs(tmp_path: FilePath) -> None:
    Image.new("RGB", (70, 100)).save(tmp_path / "back.png")
    entry = Plain(back_picture="back.png")
    dress = entry.dress(entry.load(tmp_path), flat_of(), Words("Tide Tables"))
    assert [str(problem) for problem in dress.problems] == [
        # 100 pixels on 21 mm and twice the bleed of 2 mm; 25 mm at 300 dots per inch are 295.3
        "back.png prints at only 102 dots per inch; use a picture of at least 207 × 296 pixels"
    ]


def test_every_missing_picture_is_named(tmp_path: FilePath) -> None:
    with pytest.raises(ShelfFileError) as refusal:
        Plain(front_picture="a.png", back_picture="b.png").load(tmp_path)
    assert [problem.field for problem in refusal.value.problems] == [("front_picture",), ("back_picture",)]
