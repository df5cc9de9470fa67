"""Cases that cannot be made: each slip gets one message with its place and a remedy."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import check
from tests.kit.cases import cased
from tests.kit.shelves import refused

SHELF = """\
shelf: The Salt Office
stocks:
  laid: {caliper: 75 um, glue: 15 um, grain: long}
  cloth: {caliper: 160 um, film: 50 um, grain: long}
  leather: {caliper: 120 um}
  slip: {caliper: 100 um, sheet: 55 x 60 mm, grain: long}
  board: {caliper: 1 mm}
  plank: {caliper: 3 mm}
books:
  - title: Tide Tables
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: laid, pages: 48}
    cover: {kind: case, stock: cloth, boards: board}
"""

SLIPS = {
    "joint: 9 mm": "61: a joint of 9 mm is wider than the board, which keeps 6.4 mm; "
    "write a joint of 7.7 mm or less, or a wider book",
    "joint: 0 mm": "61: Tide Tables: cover.joint: 0 mm is out of range; write a joint of up to 20 boards or 50 mm",
    "joint: two boards": "61: Tide Tables: cover.joint: 'two boards' is not a number of boards; "
    "write so many boards, such as 1.5 boards, or a length such as 2 mm",
    "joint: 30 boards": "61: Tide Tables: cover.joint: 30 boards is out of range; "
    "write a joint of up to 20 boards or 50 mm",
    "joint: 1.5": "61: Tide Tables: cover.joint: 1.5 has no unit; "
    "write so many boards, such as 1.5 boards, or a length such as 2 mm",
    "square: 0.3 mm": "62: boards of 1 mm are too thick for a square of 0.3 mm: at most 3 times the square "
    "(common practice); choose boards of 0.9 mm or less, or write square: 0.4 mm or more",
    "square: 0 mm": "62: boards of 1 mm are too thick for a square of 0 mm: at most 3 times the square "
    "(common practice); write square: 0.4 mm or more",
    "turn_in: 2 mm": "63: a turn-in of 2 mm does not hold around a board of 1 mm; write 3 mm to 12.1 mm",
    "turn_in: 13 mm": "63: a turn-in of 13 mm meets the other or crosses the board of 13.9 mm × 21.8 mm; "
    "write 3 mm to 12.1 mm",
    "stiffener: wide": "65: Tide Tables: cover.stiffener: 'wide' is not known; "
    "write one of sections and boards, sections, none",
    "binding: thirds": "63: Tide Tables: cover.binding: 'thirds' is not known; write one of full, quarter, half",
    "binding: quarter": "12: a quarter binding has no stock for its spine; add spine_stock: a name from stocks",
    "binding: half, spine_stock: lether": "82: there is no stock 'lether'; did you mean 'leather'?",
    "endpapers: vellum": "65: there is no stock 'vellum'; write one of laid, cloth, leather, slip, board, plank",
    "binding: quarter, spine_stock: leather, spine_reach: 14 mm": "107: the spine piece reaches 14 mm onto a board "
    "of 13.9 mm, and the sides lap 1 mm over it; write spine_reach: 1.1 mm to 12.8 mm, or a smaller lap",
    "binding: quarter, spine_stock: leather, lap: 0.2 mm": "99: sides that lap 0.2 mm over the spine piece leave a gap "
    "at the first slip; write lap: 0.5 mm or more",
    "binding: half, spine_stock: leather, corner: 11 mm": "99: corners of 11 mm do not suit a side of "
    "10.43 mm × 21.8 mm; write corner: 1 mm to 8.9 mm",
    "binding: quarter, spine_stock: slip, spine_reach: 8 mm": "85: the spine piece with its bleed "
    "is 31.3 mm × 33.8 mm, but the 55 × 60 mm sheet of slip has room for 40.6 mm × 32.6 mm with its grain along the "
    "folds; give slip the sheet A5, or make it smaller",
}
"""What is added to the cover, and what is said of it, from the column on."""

THIN = ("pages: 48", "pages: 2")

BOOKS = {
    "stiffener": (
        [THIN, ("board}", "board, stiffener: sections}")],
        ["12: the stiffener is 0.34 mm wide, but board is 1 mm thick; name a thinner card as stiffener_stock, "
         "or write stiffener: none"],
    ),
    "sheet": (
        [("height: 21 mm, width: 15 mm", "height: 120 mm, width: 90 mm")],
        ["salt.yaml:11:11: the page is 120 mm high: at 1:12 the real book would be 1440 mm high; "
         "write life_size: {height: 120 mm, width: 90 mm} in place of size if these are the sides of the real book",
         "32: the covering with its bleed is 201.3 mm × 132.8 mm, but the A4 sheet of cloth has room for "
         "195.6 mm × 269.6 mm with its grain along the folds; "
         "give cloth the sheet letter, or make it smaller"],
    ),
    "all at once": (
        [THIN, ("board}", "plank, turn_in: 2 mm, binding: half, stiffener: sections}")],
        ["12: a half binding has no stock for its spine; add spine_stock: a name from stocks",
         "12: boards of 3 mm are too thick for a square of 0.4 mm: at most 3 times the square (common practice); "
         "choose boards of 1.2 mm or less, or write square: 1 mm or more",
         "12: the stiffener is 0.34 mm wide, but plank is 3 mm thick; name a thinner card as stiffener_stock, "
         "or write stiffener: none",
         "63: a turn-in of 2 mm does not hold around a board of 3 mm; write 4.4 mm to 14.1 mm"],
    ),
}  # fmt: skip

OFFERED = (
    "joint: 7.7 mm",
    "square: 0.4 mm",
    "turn_in: 3 mm",
    "turn_in: 12.1 mm",
    "binding: quarter, spine_stock: leather, spine_reach: 1.1 mm",
    "binding: quarter, spine_stock: leather, spine_reach: 12.8 mm",
    "binding: quarter, spine_stock: leather, lap: 0.5 mm",
    "binding: half, spine_stock: leather, corner: 1 mm",
    "binding: half, spine_stock: leather, corner: 8.9 mm",
)


def said(folder: Path, text: str) -> list[str]:
    """Why a shelf file is refused, without its name and line."""
    return [line.removeprefix("salt.yaml:13:") for line in refused(text, folder, "salt.yaml")]


def keyed(keys: str) -> str:
    return SHELF.replace("boards: board}", f"boards: board, {keys}}}")


@pytest.mark.parametrize("keys", SLIPS)
def test_a_slip_gets_one_message(tmp_path: Path, keys: str) -> None:
    assert said(tmp_path, keyed(keys)) == [SLIPS[keys]]


@pytest.mark.parametrize("case", BOOKS)
def test_what_does_not_go_together_is_said_at_once(tmp_path: Path, case: str) -> None:
    slips, messages = BOOKS[case]
    text = SHELF
    for right, wrong in slips:
        assert right in text
        text = text.replace(right, wrong)
    assert said(tmp_path, text) == messages


@pytest.mark.parametrize("keys", OFFERED)
def test_what_is_offered_can_be_made(tmp_path: Path, keys: str) -> None:
    (tmp_path / "salt.yaml").write_text(keyed(keys), encoding="utf-8")
    assert check(tmp_path / "salt.yaml").sound


def test_a_narrow_joint_is_a_note(tmp_path: Path) -> None:
    (tmp_path / "salt.yaml").write_text(keyed("joint: 1 board"), encoding="utf-8")
    (note,) = check(tmp_path / "salt.yaml").problems
    assert str(note) == (
        "salt.yaml:13:61: a joint of 1 mm is under 1.2 boards (common practice): the boards open freely only under "
        "thin cloth; write joint: 1.2 boards or more"
    )


@pytest.mark.parametrize("endpapers", [None, "laid"])
def test_a_block_without_blank_ends_asks_for_endpapers(endpapers: str | None) -> None:
    made = cased(pastedowns=False, endpapers=endpapers and "plain")
    assert [f"{note.severity}: {note}" for note in made.cover.notes] == ([] if endpapers else [
        "note: the block has no blank ends to glue to the boards; "
        "add endpapers: a name from stocks, or glue down its first and last leaf"
    ])  # fmt: skip


def test_a_solid_block_needs_no_endpapers(tmp_path: Path) -> None:
    """It is glued by its faces: nothing is missing."""
    dummy = SHELF.replace("kind: accordion, stock: laid, pages: 48", "kind: dummy, thickness: 5 mm")
    (tmp_path / "salt.yaml").write_text(dummy, encoding="utf-8")
    assert check(tmp_path / "salt.yaml").problems == ()
