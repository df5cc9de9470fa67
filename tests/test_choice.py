"""Choosing what to make: books, one book once more, papers; and names that are not there."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from bookmaker.choice import Choice
from bookmaker.errors import CommandError
from bookmaker.pipeline import Wishes, make

SHELF = """\
shelf: Chosen
printer: {sheet_order: by book}
stocks:
  page paper: {caliper: 75 um, glue: 15 um, grain: long}
  cover paper: {caliper: 160 um, grain: long}
  box card: {caliper: 300 um, grain: long}
defaults:
  size: {height: 21 mm, width: 15 mm}
  block: {kind: concertina, stock: page paper, pages: 48}
  cover: {kind: wrap, stock: cover paper}
books:
  - title: Salt and Rope
  - title: Fog Signals
  - title: Tide Tables
    block: {kind: solid, thickness: 6 mm, material: lime wood}
slipcases:
  the pair: {books: [Salt and Rope, Fog Signals], stock: box card}
"""


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    path = tmp_path / "chosen.yaml"
    path.write_text(SHELF, encoding="utf-8")
    return path


def made(shelf: Path, *only: str, again: str | None = None, stocks: tuple[str, ...] = ()) -> dict[str, Any]:
    out = shelf.parent / "out"
    make(shelf, out, wishes=Wishes(choice=Choice(only, again, stocks)))
    plan: dict[str, Any] = json.loads((out / "plan.json").read_text(encoding="utf-8"))
    return plan


def pieces(plan: dict[str, Any]) -> set[str]:
    return {piece["id"] for sheet in plan["sheets"] for piece in sheet["pieces"]}


def test_only_makes_the_books_named_by_title_or_number(shelf: Path) -> None:
    everything = pieces(made(shelf))
    of_book = {n: {name for name in everything if name.startswith(f"book-{n}-")} for n in (1, 2, 3)}
    assert all(of_book.values())
    assert pieces(made(shelf, "Fog Signals")) == of_book[2]
    assert pieces(made(shelf, "1", "fog signals")) == of_book[1] | of_book[2]
    assert pieces(made(shelf, "the pair")) == everything - of_book[1] - of_book[2] - of_book[3]


def test_all_books_are_worked_out_whatever_is_made(shelf: Path) -> None:
    assert [book["title"] for book in made(shelf, "2")["books"]] == ["Salt and Rope", "Fog Signals", "Tide Tables"]


def test_a_stock_makes_its_parts_only(shelf: Path) -> None:
    plan = made(shelf, stocks=("cover paper",))
    assert {sheet["stock"] for sheet in plan["sheets"]} == {"cover paper"}
    assert [name for name in plan["files"] if name.endswith(".pdf")] == ["cover-paper.pdf", "guide.pdf"]
    both = made(shelf, "1", stocks=("cover paper",))
    assert pieces(both) == {"book-1-wrap-1"}


def test_what_is_cut_by_hand_follows_the_choice(shelf: Path) -> None:
    assert "cutting-list.pdf" in made(shelf)["files"]
    assert "cutting-list.pdf" in made(shelf, "Tide Tables")["files"]
    assert "cutting-list.pdf" not in made(shelf, "Fog Signals")["files"]
    assert "cutting-list.pdf" not in made(shelf, stocks=("cover paper",))["files"]


def test_again_takes_off_cuts_first(shelf: Path) -> None:
    """The strips of one book lie on what was left over, though books have sheets of their own otherwise."""
    shelf.write_text(
        SHELF.replace("cover paper: {caliper", "cover paper: {off_cuts: 210 x 99 mm, caliper"), encoding="utf-8"
    )
    plan = made(shelf, again="Salt and Rope", stocks=("cover paper",))
    assert [(sheet["off_cut"], len(sheet["pieces"])) for sheet in plan["sheets"]] == [(True, 1)]
    assert plan["paper"][0]["sheets"] == 0


WRITE = "write a title, or a number from 1 to 3: bookmaker check lists them"


@pytest.mark.parametrize(
    ("only", "again", "stocks", "told"),
    [
        (("Fog Signal",), None, (), "--only: there is no book 'Fog Signal'; did you mean 'Fog Signals'?"),
        (("9",), None, (), f"--only: there is no book '9'; {WRITE}"),
        ((), "Index", (), f"--again: there is no book 'Index'; {WRITE}"),
        (("the pear",), None, (), "--only: there is no book or slipcase 'the pear'; did you mean 'the pair'?"),
        ((), "Salt & Rope", (), "--again: there is no book 'Salt & Rope'; did you mean 'Salt and Rope'?"),
        ((), None, ("page papr",), "--stock: there is no stock 'page papr'; did you mean 'page paper'?"),
        (
            (),
            None,
            ("vellum",),
            "--stock: there is no stock 'vellum'; write one of page paper, cover paper, box card",
        ),
        (
            ("1",),
            "2",
            (),
            "--only and --again exclude each other; use --again for one book after a slip",
        ),
        (("1",), None, ("box card",), "nothing is printed for this choice; choose another book or stock"),
    ],
)
def test_what_is_not_there_is_said_and_nothing_is_written(
    shelf: Path, only: tuple[str, ...], again: str | None, stocks: tuple[str, ...], told: str
) -> None:
    with pytest.raises(CommandError) as refusal:
        made(shelf, *only, again=again, stocks=stocks)
    assert str(refusal.value) == told
    assert not (shelf.parent / "out").exists()


def test_all_wrong_names_are_told_at_once(shelf: Path) -> None:
    with pytest.raises(CommandError) as refusal:
        made(shelf, "Fog", "Tide Table", stocks=("card",))
    assert [str(problem).split(":")[0] for problem in refusal.value.problems] == ["--only", "--only", "--stock"]
