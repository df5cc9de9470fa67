"""Slipcases that cannot be: everything that is wrong with one is said at once, with its place and a remedy."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from bookmaker.ground.problems import ShelfFileError
from tests.kit.salt_office import shelf
from tests.kit.shelves import checked

B = "books: [Tide Tables, 2, 3]"
NUMBERS = "write a title, or a number from 1 to 4"


def in_box(written: str) -> tuple[str, str]:
    return B, written


BAD = [
    (in_box("books: [Tide Table]"), ["23:18: there is no book 'Tide Table'; did you mean 'Tide Tables'?"]),
    (
        in_box("books: [Vinegar, 9, 0]"),
        [
            f"23:18: there is no book 'Vinegar'; {NUMBERS}",
            f"23:27: there is no book '9'; {NUMBERS}",
            f"23:30: there is no book '0'; {NUMBERS}",
        ],
    ),
    (in_box("books: [brine]"), ["23:18: 2 books are called 'brine'; write its number instead: 2 or 3"]),
    (
        in_box("books: [Tide Tables, tide  tables, 1]"),
        [
            "23:31: Tide Tables is listed twice; list each book once",
            "23:45: Tide Tables is listed twice; list each book once",
        ],
    ),
    (
        in_box("books: []"),
        [
            "23:17: slipcases.salt.books lists no book; "
            "write the titles of the books that stand in the box, each after a -"
        ],
    ),
    (
        in_box("books: {Tide Tables: 1}"),
        ["23:17: slipcases.salt.books is not a list of books; write their titles, each after a -"],
    ),
    (
        in_box("books: [Tide Tables, Pans and Rakes]"),
        [
            "23:9: what stands in the slipcase salt names different spaces: upper, lower; "
            "write where the slipcase stands, such as space: upper"
        ],
    ),
    (
        in_box("books: [1], title: Hello"),
        ["23:22: slipcases.salt has an unknown key 'title'; write faces: {title: Hello}"],
    ),
    (
        in_box("books: [1], faces: {left: art/sun.png}"),
        ["23:36: slipcases.salt.faces.left is not a group of keys; write left: {picture: art/sun.png}"],
    ),
    (
        in_box('books: [1], faces: {left: "#3b4a3f"}'),
        ['23:36: slipcases.salt.faces.left is not a group of keys; write left: {colour: "#3b4a3f"}'],
    ),
    (in_box("books: [1], space: uper"), ["23:29: there is no space 'uper'; did you mean 'upper'?"]),
    (in_box("books: [1], space: attic"), ["23:29: there is no space 'attic'; write one of upper, lower"]),
    (("3], stock: card", "3], stock: cord"), ["23:45: there is no stock 'cord'; did you mean 'card'?"]),
    (
        ("  salt:", "  pepper: {books: [2, Tide Tables], stock: card}\n  salt:"),
        [
            "24:18: Tide Tables stands in the slipcase pepper and in the slipcase salt; take it out of one of them",
            "24:31: Brine stands in the slipcase pepper and in the slipcase salt; take it out of one of them",
        ],
    ),
    (
        ("title: Tide Tables\n", "title: Tide Tables\n    stack: flat\n"),
        [
            "24:18: Tide Tables lies in the stack flat and stands in the slipcase salt; "
            "take its stack away, or take it out of the slipcase"
        ],
    ),
    (
        in_box("books: [1], tab: 2 mm"),
        ["23:27: slipcases.salt.tab: 2 mm is out of range; write a length from 3 mm to 20 mm"],
    ),
    (
        in_box("books: [1], tab: 5 mm"),
        [
            "23:27: tabs of 5 mm are wider than the room inside, which is 4.84 mm; "
            "write 3 mm to 4.8 mm, or leave tab out"
        ],
    ),
    (
        in_box("books: [1, 3], tab: 9 mm"),
        [
            "23:30: in a room 15.5 mm deep, tabs of 9 mm taper to nothing that holds; write a narrower tab",
        ],
    ),
    (
        ("height: 21 mm, width: 15 mm}", "height: 5 mm, width: 4 mm}"),
        ["23:9: in a room 4.8 mm deep, tabs of 5 mm taper to nothing that holds; write a narrower tab"],
    ),
    (
        in_box("books: [1], clearance: 0 mm, faces: {colour: red, left: {pictur: a}}"),
        [
            "23:55: slipcases.salt.faces.colour: red is not a colour; "
            'write "#a8262b" for it, in quotes; bookmaker manual colours lists more',
            "23:67: slipcases.salt.faces.left has an unknown key 'pictur'; did you mean picture?",
        ],
    ),
    (
        in_box("books: [1], faces: {left: {picture: a.png}, top: {picture: b.png}}"),
        [
            f"23:{column}: there is no picture {name}; write its path as seen from the folder of the shelf file"
            for column, name in ((46, "a.png"), (69, "b.png"))
        ],
    ),
]


@pytest.mark.parametrize(("change", "said"), BAD)
def test_everything_wrong_with_a_slipcase_is_said_at_once(
    tmp_path: Path, change: tuple[str, str], said: list[str]
) -> None:
    assert change[0] in shelf()
    with pytest.raises(ShelfFileError) as refusal:
        checked(shelf().replace(*change), tmp_path)
    assert str(refusal.value).splitlines() == [f"shelf.yaml:{line}" for line in said]


@pytest.mark.parametrize(("page", "sheet"), [("160 mm, width: 90", "tabloid"), ("12 mm, width: 90", "letter")])
def test_a_net_larger_than_its_sheet_says_what_sheet_would_do(tmp_path: Path, page: str, sheet: str) -> None:
    text = shelf().replace("height: 21 mm, width: 15", f"height: {page}").replace("jacket: {stock: laid}", "author: A")
    with pytest.raises(ShelfFileError) as refusal:
        checked(text, tmp_path / "0")
    (problem,) = refusal.value.problems
    assert problem.field == ("slipcases", "salt", "stock")
    assert re.fullmatch(
        r"the net with its bleed is [\d.]+ mm × [\d.]+ mm, but the A4 sheet of card has room for 195.6 mm × 269.6 mm "
        r"with its grain along the folds",
        problem.message,
    )
    assert problem.remedy == f"give card the sheet {sheet}, or make it smaller"
    checked(text.replace("card: {caliper", f"card: {{sheet: {sheet}, caliper"), tmp_path / "1")
