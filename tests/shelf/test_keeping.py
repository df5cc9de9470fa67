"""Looks that stay: written into the file, they change nothing, and from then on nothing changes them."""

from __future__ import annotations

from pathlib import Path

import pypdfium2
import pytest

from bookmaker import check
from bookmaker.ground.problems import Problem
from bookmaker.shelf.keeping import edited, looks_kept
from bookmaker.shelf_file.edits.edit import SetValue
from bookmaker.things.book.looks import LAST_LOOK, look_of
from bookmaker.workshop import Checked
from tests.kit.by_kind import books_of
from tests.kit.command_line import bookmaker
from tests.kit.recording import record

SHELF = """\
shelf: Kept
stocks: {page: {caliper: 80 um}, card: {caliper: 160 um}}
spaces: {left: {width: 200 mm, height: 40 mm, depth: 25 mm}}
defaults:  # for all
  size: {height: 22 mm, width: 15 mm}
  block: {kind: accordion, stock: page, pages: 16}
  cover: {kind: wrap, stock: card}
  design: {style: cloth}
  inside: {kind: text lines}
  space: left
books:
  - title: Salt Roads  # the first
    author: I. Holm
  - {title: Fog Signals, design: {style: leather}}
  - title: Annals of Ice
    volumes: 3
  - row: [Rope, {title: Twine, design: {style: atlas}}]
  - title: Bees
    series: The Small Animals
  - title: Moths
    series: The Small Animals
  - from list.csv
"""

LIST = "title,design.style\nRain,plain\nHail,half leather\n"


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    (tmp_path / "list.csv").write_text(LIST, encoding="utf-8")
    (tmp_path / "shelf.yaml").write_text(SHELF.replace("kind: text lines", "kind: dummy text"), encoding="utf-8")
    return tmp_path / "shelf.yaml"


def keep(checked: Checked, *, unlike: bool = False) -> None:
    assert not isinstance(edited(checked.shelf, list(looks_kept(checked.shelf, checked.plan, unlike=unlike))), Problem)


def drawn(checked: Checked) -> dict[str, object]:
    return {
        id: ([(piece.flat, piece.art) for piece in draft.pieces], [page.art for page in draft.pages])
        for id, draft in checked.drafts.items()
    }


def test_what_is_kept_is_what_was_seen(shelf: Path) -> None:
    before = check(shelf)
    keep(before)
    after = check(shelf)
    assert [book.coat.words.look for book in books_of(after.plan)] == [
        book.coat.words.look for book in books_of(before.plan)
    ]
    assert list(drawn(after).values()) == list(drawn(before).values())
    written = shelf.read_text(encoding="utf-8")
    assert "# the first" in written
    assert written.count("look:") == 7, "one for each entry, item of a row, and set of volumes"
    assert (shelf.parent / "list.csv").read_text(encoding="utf-8").startswith("title,design.style,look")
    assert list(looks_kept(after.shelf, after.plan)) == []


def test_a_corrected_title_changes_no_other_book_and_of_its_own_only_the_words(shelf: Path) -> None:
    keep(check(shelf))
    before = check(shelf)
    assert not isinstance(edited(before.shelf, [SetValue(("books", 0, "title"), "Salt Roads Again")]), Problem)
    after = check(shelf)
    (gone,), (new,) = before.drafts.keys() - after.drafts.keys(), after.drafts.keys() - before.drafts.keys()
    one, other = drawn(before), drawn(after)
    assert {id: other[id] for id in other if id != new} == {id: one[id] for id in one if id != gone}
    pages = [
        [record(page.art).marks for page in checked.drafts[id].pages] for checked, id in ((before, gone), (after, new))
    ]
    assert pages[0] == pages[1], "nothing is left to chance on its pages either"
    first, second = (checked.plan.plans[id].coat for checked, id in ((before, gone), (after, new)))  # type: ignore[attr-defined]
    assert first.design == second.design
    assert first.words.seed == second.words.seed


def test_an_id_holds_a_look_as_well_as_its_number_does(shelf: Path) -> None:
    text = shelf.read_text(encoding="utf-8").replace("  - title: Salt Roads", "  - id: salt\n    title: Salt Roads")
    shelf.write_text(text, encoding="utf-8")
    one = check(shelf)
    shelf.write_text(text.replace("Salt Roads", "Salt Ways"), encoding="utf-8")
    other = check(shelf)
    assert drawn(one).keys() == drawn(other).keys()
    assert one.plan.plans["salt"].coat.words.look == look_of("salt")  # type: ignore[attr-defined]
    assert one.plan.plans["salt"].coat.design == other.plan.plans["salt"].coat.design  # type: ignore[attr-defined]


def test_looks_of_unlike_numbers_within_a_set_are_told(shelf: Path) -> None:
    text = shelf.read_text(encoding="utf-8").replace("title: Bees", "title: Bees\n    look: 7")
    shelf.write_text(text.replace("title: Moths", "title: Moths\n    look: 9"), encoding="utf-8")
    (told,) = [problem for problem in check(shelf).problems if "that of its set" in problem.message]
    assert "Moths has look 7" in told.message
    assert "look: 7 for all" in told.remedy


@pytest.mark.parametrize("number", ["0", "100000", "-3", "seven"])
def test_a_look_that_is_none_is_refused_with_what_would_do(shelf: Path, number: str) -> None:
    text = shelf.read_text(encoding="utf-8").replace("author: I. Holm", f"look: {number}")
    shelf.write_text(text, encoding="utf-8")
    refused = bookmaker("check", str(shelf))
    assert refused.code == 2
    assert "look" in refused.err
    assert number in ("-3", "seven") or "from 1 to 99999" in refused.err


def test_looks_are_drawn_to_choose_from(shelf: Path) -> None:
    done = bookmaker("looks", "Salt Roads", str(shelf), "--from", "40", "--count", "5")
    assert done.code == 0, done.err
    page = pypdfium2.PdfDocument(shelf.parent / "looks-salt-roads-i-holm.pdf")[0]
    text = page.get_textpage().get_text_range()
    assert "now" in text
    assert [number for number in range(36, 50) if f"look: {number}" in text] == [40, 41, 42, 43, 44]
    assert bookmaker("looks", "Salt Roads", str(shelf), "--count", "5").code == 0, "its own file is replaced"


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (["Salz"], "no book 'Salz'"),
        (["Salt Roads", "--from", "0"], f"from 1 to {LAST_LOOK}"),
        (["Salt Roads", "--from", str(LAST_LOOK)], f"write from 1 to {LAST_LOOK - 10}"),
        (["Salt Roads", "--count", "0"], "write from 1 to 100"),
    ],
)
def test_looks_that_cannot_be_drawn_say_why(shelf: Path, options: list[str], said: str) -> None:
    refused = bookmaker("looks", options[0], str(shelf), *options[1:])
    assert refused.code == 2
    assert said in refused.err


def test_keep_says_what_it_wrote_and_writes_it_once(shelf: Path) -> None:
    assert "9 looks written into" in bookmaker("keep", str(shelf)).out
    assert "nothing was changed" in bookmaker("keep", str(shelf)).out
