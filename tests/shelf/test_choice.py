"""Choosing what to make: books, one book once more, papers; and names that are not there."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from bookmaker import make
from bookmaker.cli.after_making import gone_lines, off_cut_lines
from bookmaker.ground.problems import CommandError
from bookmaker.shelf.choice import Choice
from bookmaker.workshop import Wishes
from tests.kit.command_line import bookmaker

SHELF = """\
shelf: Chosen
printer: {sheet_order: by book}
stocks:
  page paper: {caliper: 75 um, glue: 15 um, grain: long}
  cover paper: {caliper: 160 um, grain: long}
  box card: {caliper: 300 um, grain: long}
defaults:
  size: {height: 21 mm, width: 15 mm}
  block: {kind: accordion, stock: page paper, pages: 48}
  cover: {kind: wrap, stock: cover paper}
books:
  - title: Salt and Rope
  - title: Fog Signals
  - title: Tide Tables
    block: {kind: dummy, thickness: 6 mm, material: lime wood}
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
    ids = {1: "salt-and-rope", 2: "fog-signals", 3: "tide-tables"}
    of_book = {n: {name for name in everything if name.startswith(id)} for n, id in ids.items()}
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
    assert pieces(both) == {"salt-and-rope-wrap-1"}


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
            "--only and --again cannot be used together; use --again for one book after a slip",
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


NOTED = (
    SHELF.replace("lime wood}", "lime wood}\n    inside: {kind: ruled}")
    + """\
measured_rows:
  - {books: [Fog Signals, Tide Tables], thickness: 11.5 mm}
"""
)


def test_problems_of_what_was_not_chosen_are_counted(shelf: Path) -> None:
    """The box and the third book have a note each; the row, which is nobody's, is told every time."""
    shelf.write_text(NOTED, encoding="utf-8")

    def told(*only: str) -> tuple[list[object], int]:
        done = make(shelf, shelf.parent / "out", wishes=Wishes(choice=Choice(only)))
        assert len(done.about) + done.others == len(done.checked.problems)
        return [problem.field[:2] for problem in done.about], done.others

    row, box, book = ("measured_rows", 0), ("slipcases", "the pair"), ("books", 2)
    assert told() == ([book, box, row], 0)
    assert told("Salt and Rope") == ([row], 2)
    assert told("Tide Tables") == ([book, row], 1)
    assert told("the pair") == ([box, row], 1)


def test_files_that_a_choice_clears_away_are_counted(shelf: Path) -> None:
    whole = make(shelf, shelf.parent / "out")
    assert whole.gone == ()
    part = make(shelf, shelf.parent / "out", wishes=Wishes(choice=Choice(("Tide Tables",))))
    assert part.gone == ("box-card.pdf", "page-paper.pdf")
    assert make(shelf, shelf.parent / "out").gone == ()


def test_off_cuts_that_are_used_up_are_told(shelf: Path) -> None:
    off_cuts = "cover paper: {off_cuts: [70 x 60 mm, 70 x 60 mm, 50 x 60 mm], caliper"
    shelf.write_text(SHELF.replace("cover paper: {caliper", off_cuts), encoding="utf-8")
    done = make(shelf, shelf.parent / "out")
    sizes = [(off_cut.name, off_cut.sheet.name) for off_cut in done.off_cuts]
    assert sizes == [("cover paper", "70 × 60 mm")] * 2
    (line,) = off_cut_lines(done.off_cuts)
    assert line == (
        "cover paper: 2 off-cuts are used up, 2 of 70 × 60 mm; once they are printed, take them out of off_cuts, "
        "or the next run counts on them again"
    )
    assert list(off_cut_lines(())) == []


def test_what_is_gone_is_named() -> None:
    (one,) = gone_lines(["a.pdf"])
    assert one == "1 file made before is gone: a.pdf; another folder after --into keeps what is there"
    (many,) = gone_lines(["a", "b", "c", "d"])
    assert many.startswith("4 files made before are gone: a, b, c and more;")
    assert list(gone_lines([])) == []


def test_the_command_line_tells_what_a_choice_leaves_out(shelf: Path) -> None:
    shelf.write_text(NOTED, encoding="utf-8")
    out = shelf.parent / "out"
    whole = bookmaker("make", str(shelf), "--into", str(out))
    assert "made before" not in whole.out and "more about other books" not in whole.err
    part = bookmaker("make", str(shelf), "--into", str(out), "--only", "Salt and Rope")
    assert f"2 more about other books: bookmaker check {shelf} shows them" in part.err.splitlines()
    assert "will not be seen" not in part.err
    (gone,) = [line for line in part.out.splitlines() if "made before" in line]
    assert gone.startswith("2 files made before are gone: box-card.pdf, cutting-list.pdf;")
