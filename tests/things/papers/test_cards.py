"""Cards, labels, packs, calendars, boards, envelopes: what is on them, and that backs lie behind their fronts."""

from __future__ import annotations

from calendar import monthrange
from collections.abc import Iterator
from datetime import date
from itertools import pairwise
from pathlib import Path as FilePath

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pypdf import PdfReader

from bookmaker import check, make
from bookmaker.ground.geometry import Path, Rect
from bookmaker.ground.outlines import area_within
from bookmaker.ground.problems import ShelfFileError
from bookmaker.sheets.flat import Flat
from bookmaker.sheets.piece import Piece
from bookmaker.things.papers.forms.calendar_sheet import weeks_of
from bookmaker.things.papers.forms.game_board import track
from bookmaker.things.papers.forms.pips import PLACES, RANKS
from tests.kit.pixels import pdf_pixels
from tests.kit.recording import Written, ink_box, record
from tests.kit.shelves import written

SHELF = """\
shelf: The Keeper's Drawer
stocks:
  card: {caliper: 180 um}
  paper: {caliper: 80 um}
things:
  - {id: pack, kind: playing cards, stock: card, jokers: 2}
  - id: tickets
    kind: cards
    stock: card
    width: 12 mm
    height: 6 mm
    count: 7
    first: 98
    tear: yes
    front: {text: "Ferry #"}
    back: {text: "Back #"}
  - {id: jam, kind: labels, stock: paper, width: 9 mm, height: 6 mm, each: [Damson, Quince], shape: oval, border: line}
  - {id: drawers, kind: labels, stock: paper, width: 9 mm, height: 4 mm, each: [Nails, Twine, Wicks]}
  - {id: march, kind: calendar, stock: paper, year: 1931, month: 3}
  - {id: year, kind: calendar, stock: paper, year: 1932, week: from Sunday}
  - {id: board, kind: game board, stock: card, width: 32 mm, height: 32 mm, fold: {kind: half}}
  - id: board-box
    kind: lidded box
    stock: paper
    inside: {length: 33 mm, width: 17 mm, height: 3 mm}
    contents: [board]
  - id: to-maud
    kind: envelope
    stock: paper
    inside: {length: 13 mm, width: 9 mm, height: 0.3 mm}
    post: {address: "Maud Sterrick\\nThe Ropewalk", stamp: {country: Harrowmere, value: 2d}, postmark: "Skerry, 4 Mar"}
"""


def pieces(folder: FilePath, thing: str, text: str = SHELF) -> tuple[Piece, ...]:
    return check(written(text, folder)).drafts[thing].pieces


def cells(flat: Flat) -> list[Rect]:
    """What a piece is parted into by its cuts and perforations."""
    lines = [*flat.cuts, *flat.perforations]
    xs = sorted({0.0, flat.size.width, *(a.x for a, b in lines if a.x == b.x)})
    ys = sorted({0.0, flat.size.height, *(a.y for a, b in lines if a.y == b.y)})
    return [Rect(x, y, right - x, top - y) for y, top in pairwise(ys) for x, right in pairwise(xs)]


def inside(cell: Rect, texts: list[Written], *, mirrored_in: float | None = None) -> list[str]:
    """The texts in a cell as the front is seen."""
    if mirrored_in is not None:
        cell = cell._replace(x=mirrored_in - cell.right)
    return [text.text for text in texts if cell.grown(1e-6).contains(ink_box(text))]


def parts_of(path: Path) -> Iterator[Rect]:
    """The rectangle around each outline of a path."""
    starts = [at for at, command in enumerate(path.commands) if command[0] == "M"]
    for start, end in pairwise((*starts, len(path.commands))):
        yield Path(path.commands[start:end]).bounds


def test_each_ticket_has_its_number_on_both_sides(tmp_path: FilePath) -> None:
    (piece,) = pieces(tmp_path, "tickets")
    assert not piece.flat.cuts
    fronts, backs = record(piece.art).texts, record(piece.reverse).texts
    found = []
    for cell in cells(piece.flat):
        front = " ".join(inside(cell, fronts))
        back = " ".join(inside(cell, backs, mirrored_in=piece.flat.size.width))
        if front:
            assert front.split()[-1] == back.split()[-1]
            found.append(front)
    assert sorted(found) == sorted(f"Ferry {number}" for number in range(98, 105))


def test_a_pack_has_every_card_once_and_its_back_behind_it(tmp_path: FilePath) -> None:
    (piece,) = pieces(tmp_path, "pack")
    parts = cells(piece.flat)
    assert len(parts) == 54
    texts = record(piece.art).texts
    indices = [sorted(inside(cell, texts)) for cell in parts]
    assert sorted(indices.count([rank, rank]) for rank in RANKS) == [4] * 13
    assert indices.count(["JOKER"]) == 2
    back = pdf_pixels(piece.reverse, 254, 10, Rect(0, 0, *piece.flat.size))
    high, wide = back.shape[:2]
    scale = wide / piece.flat.size.width
    for cell in parts:
        x = int((piece.flat.size.width - cell.right) * scale)
        y = int((piece.flat.size.height - cell.top) * scale)
        one = back[y : y + int(cell.height * scale), x : x + int(cell.width * scale)]
        assert tuple(one[1, 1]) == (255, 255, 255)  # a white border all round
        assert one[one.shape[0] // 2 - 20 : one.shape[0] // 2 + 20].mean() < 245
    assert high > 0


def test_the_figures_of_a_card_keep_clear_of_its_cut_and_of_its_signs(tmp_path: FilePath) -> None:
    (piece,) = pieces(tmp_path, "pack")
    drawn = record(piece.art)
    for cell in cells(piece.flat):
        inner = cell.grown(-0.4 + 1e-6)
        figures = [ink_box(text) for text in drawn.texts if text.text in RANKS and cell.contains(ink_box(text))]
        assert all(inner.contains(figure) for figure in figures)
        signs = [sign for shape in drawn.fills for sign in parts_of(shape.path) if cell.contains(sign)]
        assert not any(sign.overlaps(figure, 1e-6) for sign in signs for figure in figures)


def test_the_signs_of_a_card_are_as_many_as_it_says_and_look_both_ways() -> None:
    for rank, places in PLACES.items():
        assert len(places) == (1 if rank == "A" else int(rank))
        if rank not in ("A", "7"):  # the seven has one sign in its upper half alone (common practice)
            assert {(round(x, 6), round(y, 6)) for x, y in places} == {(round(-x, 6), round(-y, 6)) for x, y in places}


def test_labels_are_cut_as_they_are_shaped(tmp_path: FilePath) -> None:
    ovals = pieces(tmp_path, "jam")
    assert [[text.text for text in record(piece.art).texts] for piece in ovals] == [["Damson"], ["Quince"]]
    for piece in ovals:
        # π/4 of the rectangle
        assert area_within(piece.flat.outline) == pytest.approx(3.14159 / 4 * 9 * 6, rel=5e-3)
        (text,) = record(piece.art).texts
        assert Rect(0, 0, 9, 6).grown(-1).contains(ink_box(text))
    (strip,) = pieces(tmp_path, "drawers")
    assert len(cells(strip.flat)) == 3


@given(st.integers(1583, 2400), st.integers(1, 12), st.booleans())
def test_every_day_of_a_month_stands_under_its_weekday(year: int, month: int, sunday: bool) -> None:
    weeks = weeks_of(year, month, sunday_first=sunday)
    assert [day for week in weeks for day in week if day] == list(range(1, monthrange(year, month)[1] + 1))
    for week in weeks:
        for column, day in enumerate(week):
            if day:
                assert date(year, month, day).weekday() == (column - sunday) % 7


def test_the_first_of_march_1931_was_a_sunday(tmp_path: FilePath) -> None:
    (piece,) = pieces(tmp_path, "march")
    texts = {text.text: ink_box(text) for text in record(piece.art).texts}
    assert texts["1"].centre.x == pytest.approx(texts["Su"].centre.x, abs=0.2)
    assert {str(day) for day in range(1, 32)} <= texts.keys()
    (year,) = pieces(tmp_path, "year")
    assert [text.text for text in record(year.art).texts].count("29") == 12  # 1932 is a leap year


@pytest.mark.parametrize("squares", [4, 8, 11])
def test_a_race_goes_over_every_square_to_one_beside_it(squares: int) -> None:
    way = list(track(squares))
    assert len(set(way)) == len(way) == squares**2
    assert all(abs(a - c) + abs(b - d) == 1 for (a, b), (c, d) in pairwise(way))


def test_a_board_folds_in_half_and_goes_into_its_box(tmp_path: FilePath) -> None:
    plans = check(written(SHELF, tmp_path)).plan.plans
    bulk = plans["board"].bulk
    assert bulk
    assert bulk.length == pytest.approx(32)
    assert bulk.width == pytest.approx(16, abs=0.2)
    assert bulk.thickness == pytest.approx(2 * 0.18)
    assert plans["board-box"].held == ("board",)
    board = plans["board"].flats[0]
    pixel = tuple(pdf_pixels(pieces(tmp_path, "board")[0].art, 254, 10, Rect(28, 3, 0.6, 0.6))[2, 2])
    assert pixel == pytest.approx((0xE9, 0xCF, 0x9C), abs=3)  # the lower right square is light
    assert len(board.folds) == 1


def test_an_envelope_has_its_address_and_its_stamp_on_the_face(tmp_path: FilePath) -> None:
    (piece,) = pieces(tmp_path, "to-maud")
    face = next(panel.rect for panel in piece.flat.panels if panel.role == "front")
    texts = record(piece.art).texts
    assert {"Maud Sterrick", "The Ropewalk", "HARROWMERE", "2d", "Skerry", "4 Mar"} <= {text.text for text in texts}
    assert all(face.contains(ink_box(text)) for text in texts)
    stamp = next(ink_box(text) for text in texts if text.text == "2d")
    assert stamp.x > face.x + face.width * 0.8
    assert stamp.y > face.y + face.height * 0.6


@pytest.mark.parametrize(
    ("right", "wrong", "told"),
    [
        (
            "width: 12 mm\n    height: 6 mm",
            "width: 230 mm\n    height: 300 mm",
            "a card of 230 mm × 300 mm is too large for the sheet",
        ),
        ("    count: 7", "    count: 7\n    fold: {kind: half}", "cards cannot be folded; leave fold out"),
        ("month: 3", "month: 13", "13 is out of range"),
        ("year: 1931, month: 3", "month: 3", "march has no year"),
        ("contents: [board]", "contents: [bored]", "bored"),
        ("length: 33 mm", "length: 30 mm", "its contents are 32 mm"),
        ("stamp: {country: Harrowmere, value: 2d}", "stamp: {value: 2d}", "country"),
    ],
)
def test_what_cannot_be_made_is_said(tmp_path: FilePath, right: str, wrong: str, told: str) -> None:
    assert right in SHELF
    with pytest.raises(ShelfFileError) as caught:
        check(written(SHELF.replace(right, wrong), tmp_path))
    assert any(told in str(problem) for problem in caught.value.problems), [str(one) for one in caught.value.problems]
    assert all(problem.place and problem.place.line > 1 for problem in caught.value.problems)


def test_more_cards_than_a_sheet_takes_go_on_several_pieces_and_stay_registered(tmp_path: FilePath) -> None:
    text = SHELF.replace(
        "width: 12 mm\n    height: 6 mm\n    count: 7", "width: 60 mm\n    height: 60 mm\n    count: 14"
    )
    found = pieces(tmp_path, "tickets", text)
    assert len(found) == 2
    numbers = []
    for piece in found:
        fronts, backs = record(piece.art).texts, record(piece.reverse).texts
        for cell in cells(piece.flat):
            front = " ".join(inside(cell, fronts))
            if front:
                assert front.split()[-1] == " ".join(inside(cell, backs, mirrored_in=piece.flat.size.width)).split()[-1]
                numbers.append(int(front.split()[-1]))
    assert sorted(numbers) == list(range(98, 112))


def test_the_guide_tells_what_they_are_and_how_they_are_parted(tmp_path: FilePath) -> None:
    make(written(SHELF, tmp_path), tmp_path / "out")
    pages = PdfReader(tmp_path / "out" / "guide.pdf").pages
    guide = " ".join(" ".join(page.extract_text().split()) for page in pages)
    assert "54 playing cards." in guide
    assert "That makes 54, each 5.3 × 7.4 mm wide and high." in guide
    assert "That makes 7 to tear off." in guide
    assert "A calendar." in guide
