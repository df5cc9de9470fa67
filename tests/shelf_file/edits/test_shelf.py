"""Edits of a shelf as it was read: each reaches the place where its book is written, whatever file has it."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker.ground.problems import Problem
from bookmaker.shelf.reading import proofread
from bookmaker.shelf_file.edits.edit import Copy, Edit, Insert, Move, Remove, Reorder, SetValue
from bookmaker.shelf_file.edits.files import undo
from bookmaker.shelf_file.edits.manner import AS_IT_COMES
from bookmaker.shelf_file.edits.origins import placed
from bookmaker.shelf_file.edits.shelf import edit_shelf, shelf_refusal
from bookmaker.shelf_file.edits.written import read_written
from bookmaker.shelf_file.fields.keys import dotted_keys
from bookmaker.shelf_file.yaml_tree import Plain
from bookmaker.things.book.entry import BookEntry

KEYS = dotted_keys(BookEntry)

SHELF = """\
shelf: Mixed
stocks:
  page: {caliper: 80 um}
  card: {caliper: 160 um}
defaults:
  size: {height: 20 mm, width: 14 mm}
  block: {kind: accordion, stock: page, pages: 40}
  cover: {kind: wrap, stock: card}
books:
  # the first
  - title: One
    block: {pages: 16}
  - from more.csv
  - title: Two
    volumes: 2
  - block: {kind: dummy, thickness: 5 mm, material: lime wood}
    row:
      - Three
      - {title: Four, thickness: 7 mm}   # thick
      - {title: Five}
  - title: Six
"""
TABLE = "title;author;pages\nA;;8\nB;;\n"
TITLES = ["One", "A", "B", "Two", "Two", "Three", "Four", "Five", "Six"]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "shelf.yaml").write_bytes(SHELF.encode())
    (tmp_path / "more.csv").write_bytes(TABLE.encode())
    return tmp_path


def books(folder: Path) -> list[dict[str, Plain]]:
    plain = proofread(folder / "shelf.yaml").tree.plain()
    assert isinstance(plain, dict)
    listed = plain["books"]
    assert isinstance(listed, list)
    return [book for book in listed if isinstance(book, dict)]


def titles(folder: Path) -> list[Plain]:
    return [book["title"] for book in books(folder)]


def made(folder: Path, *edits: Edit) -> str:
    """What the edits make of the shelf file and the table."""
    done = edit_shelf(proofread(folder / "shelf.yaml"), edits, KEYS, AS_IT_COMES)
    assert not isinstance(done, Problem), done
    return (folder / "shelf.yaml").read_text(encoding="utf-8") + (folder / "more.csv").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("edit", "old", "new"),
    [
        (SetValue(("books", 0, "block", "pages"), "20"), "pages: 16", "pages: 20"),
        (SetValue(("books", 0, "size", "height"), "1 mm"), "pages: 16}\n", "pages: 16}\n    size: {height: 1 mm}\n"),
        (SetValue(("books", 1, "block", "pages"), "9"), "A;;8", "A;;9"),
        (SetValue(("books", 2, "author"), "Z"), "B;;", "B;Z;"),
        (SetValue(("books", 5, "title"), "3"), "- Three", "- 3"),
        (SetValue(("books", 5, "author"), "X"), "- Three", "- {title: Three, author: X}"),
        (SetValue(("books", 6, "block", "thickness"), "6 mm"), "thickness: 7 mm", "thickness: 6 mm"),
        (SetValue(("books", 7, "block", "thickness"), "6 mm"), "{title: Five}",
         "{title: Five, block: {thickness: 6 mm}}"),
        (SetValue(("books", 8, "block", "pages"), "9"), "title: Six\n", "title: Six\n    block: {pages: 9}\n"),
        (Remove(("books", 0, "block", "pages"), whole_groups=True), "    block: {pages: 16}\n", ""),
        (Remove(("books", 1)), "A;;8\n", ""),
        (Remove(("books", 6)), "      - {title: Four, thickness: 7 mm}   # thick\n", ""),
        (Insert(("books", 0), {"title": "New"}), "  # the first\n", "  - title: New\n  # the first\n"),
        (Insert(("books", 2), {"title": "New"}), "A;;8\n", "A;;8\nNew;;\n"),
        (Insert(("books", 3), {"title": "New"}), "  - from more.csv\n", "  - from more.csv\n  - title: New\n"),
        (Insert(("books", 9), {"title": "New"}), "title: Six\n", "title: Six\n  - title: New\n"),
        (Insert(("books", 7), {"title": "New"}), "# thick\n", "# thick\n      - {title: New}\n"),
        (SetValue(("stocks", "page", "caliper"), "90 um"), "80 um", "90 um"),
        (SetValue(("defaults", "block", "pages"), "44"), "pages: 40", "pages: 44"),
    ],
)  # fmt: skip
def test_an_edit_reaches_the_place_of_its_book(folder: Path, edit: Edit, old: str, new: str) -> None:
    assert (SHELF + TABLE).count(old) == 1
    assert made(folder, edit) == (SHELF + TABLE).replace(old, new)


@pytest.mark.parametrize(
    ("edit", "message"),
    [
        (SetValue(("books", 3, "author"), "X"), "this volume is written only as one of its set"),
        (Remove(("books", 4)), "this volume is written only as one of its set"),
        (Move(("books", 6), ("books", 0)), "this book would have to leave the list, row or table it is written in"),
        (Move(("books", 1), ("books", 0)), "this book would have to leave the list, row or table it is written in"),
        (Move(("books", 0), ("books", 3)), "this book would have to leave the list, row or table it is written in"),
        (Insert(("books", 4), {"title": "New"}), "volumes of a set stand together"),
        (SetValue(("books", 9, "author"), "X"), "there is no book number 9"),
        (SetValue(("books", 1, "inside"), [{"kind": "blank"}]), "A: inside is a list, and a cell holds one value"),
        (Remove(("books", 0, "block", "stock")), "One: block.stock is not written here"),
        (Reorder(("books",), (1, 0, 2, 3, 4, 5, 6, 7, 8)),
         "books that share an entry, a row or a table stay together, as they are"),
    ],
)  # fmt: skip
def test_what_has_no_place_of_its_own_says_so(folder: Path, edit: Edit, message: str) -> None:
    refused = edit_shelf(proofread(folder / "shelf.yaml"), [edit], KEYS, AS_IT_COMES)
    assert isinstance(refused, Problem)
    assert refused.message == message
    assert refused.remedy
    assert (folder / "shelf.yaml").read_text(encoding="utf-8") == SHELF
    assert (folder / "more.csv").read_text(encoding="utf-8") == TABLE


@settings(max_examples=60)
@given(at=st.integers(0, 8), to=st.integers(0, 8), sort=st.sampled_from((Move, Copy, Remove, Insert, SetValue)))
def test_what_is_told_beforehand_holds(
    tmp_path_factory: pytest.TempPathFactory, at: int, to: int, sort: type[Edit]
) -> None:
    folder = tmp_path_factory.mktemp("shelf")
    (folder / "shelf.yaml").write_bytes(SHELF.encode())
    (folder / "more.csv").write_bytes(TABLE.encode())
    shelf = proofread(folder / "shelf.yaml")
    there, where = ("books", at), ("books", to)
    edit: Edit = SetValue((*there, "title"), "New")
    edit = Move(there, where) if sort is Move else Copy(there, where) if sort is Copy else edit
    edit = Remove(there) if sort is Remove else Insert(where, {"title": "New"}) if sort is Insert else edit
    told = shelf_refusal(shelf.tree, read_written(SHELF, "shelf.yaml"), edit, KEYS)
    done = edit_shelf(shelf, [edit], KEYS, AS_IT_COMES)
    assert (told is None) == (not isinstance(done, Problem)), (told, done)
    wanted: list[Plain] = list(TITLES)
    if told is None:
        taken = wanted.pop(at) if sort in (Move, Remove) else "New" if sort is Insert else wanted[at]
        if sort is SetValue:
            wanted[at] = "New"
        elif sort is not Remove:
            wanted.insert(to, taken)
    assert titles(folder) == wanted


def test_order_of_entries_that_stand_for_several_books(folder: Path) -> None:
    made(folder, Reorder(("books",), (8, 5, 6, 7, 3, 4, 1, 2, 0)))
    assert titles(folder) == [TITLES[number] for number in (8, 5, 6, 7, 3, 4, 1, 2, 0)]


def test_what_a_profile_says_is_changed_in_the_profile_or_said_otherwise_in_the_shelf(tmp_path: Path) -> None:
    (tmp_path / "laser.yaml").write_text("name: Laser\nsheet: A4\nresolution: 600 dpi\n", encoding="utf-8")
    text = SHELF.replace("stocks:", "printer: {profile: laser.yaml}\nstocks:", 1).replace("  - from more.csv\n", "")
    (tmp_path / "shelf.yaml").write_text(text, encoding="utf-8")
    shelf = proofread(tmp_path / "shelf.yaml")
    path = ("printer", "resolution")
    told = shelf_refusal(shelf.tree, read_written(text, "shelf.yaml"), Remove(path), KEYS)
    assert told is not None
    assert told.message == "printer.resolution stands in laser.yaml"
    assert not isinstance(edit_shelf(shelf, [SetValue(path, "300 dpi")], KEYS, AS_IT_COMES), Problem)
    made = (tmp_path / "shelf.yaml").read_text(encoding="utf-8")
    assert made == text.replace("laser.yaml}", "laser.yaml, resolution: 300 dpi}")


def test_a_table_that_is_all_of_the_books(folder: Path) -> None:
    start = SHELF.index("books:")
    (folder / "shelf.yaml").write_text(SHELF[:start] + "books: from more.csv\n", encoding="utf-8")
    made(folder, Insert(("books", 2), {"title": "C"}))
    made(folder, Reorder(("books",), (2, 0, 1)))
    assert (folder / "more.csv").read_text(encoding="utf-8") == "title;author;pages\nC;;\nA;;8\nB;;\n"


def test_all_files_or_none_and_undone_again(folder: Path) -> None:
    shelf = proofread(folder / "shelf.yaml")
    good = SetValue(("books", 0, "title"), "New")
    refused = edit_shelf(shelf, [good, SetValue(("books", 1, "title"), None)], KEYS, AS_IT_COMES)
    assert isinstance(refused, Problem)
    assert (folder / "shelf.yaml").read_text(encoding="utf-8") == SHELF
    done = edit_shelf(shelf, [good, SetValue(("books", 1, "title"), "Neu")], KEYS, AS_IT_COMES)
    assert not isinstance(done, Problem)
    assert titles(folder)[:2] == ["New", "Neu"]
    for edited in done:
        assert not isinstance(undo(edited), Problem)
    assert (folder / "shelf.yaml").read_text(encoding="utf-8") == SHELF
    assert (folder / "more.csv").read_text(encoding="utf-8") == TABLE


def test_every_book_of_the_demo_has_its_origin() -> None:
    path = Path(__file__).parents[3] / "demo" / "shelf.yaml"
    shelf = proofread(path)
    written = read_written(path.read_text(encoding="utf-8"), "shelf.yaml")
    listed = shelf.tree.child("books")
    assert listed is not None
    assert isinstance(listed.value, list)
    for number, book in enumerate(listed.value):
        edit = SetValue(("books", number, "title"), "x")
        title = book.child("title")
        assert title is not None
        if shelf_refusal(shelf.tree, written, edit, KEYS):
            assert title.value == "The Patient Lamps"
            continue
        _, there = placed(shelf.tree, written, edit)
        found = written.tree.below(there.path)
        assert found is not None
        assert found.value == title.value
