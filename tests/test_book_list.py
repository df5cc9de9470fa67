"""Books listed in a table: read as if they stood in the shelf file, and every error led back to its cell."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker.book_list import MOST_BOOKS, SHORT_NAMES
from bookmaker.errors import ShelfFileError
from bookmaker.pipeline import check
from bookmaker.reading import read_shelf
from bookmaker.schema import shelf_schema
from bookmaker.shelf_spec import BookEntry

SHELF = """\
shelf: Listed
stocks:
  page: {caliper: 80 um}
  card: {caliper: 160 um}
spaces:
  upper: {width: 90 mm, height: 27 mm, depth: 22 mm}
defaults:
  size: {height: 20 mm, width: 14 mm}
  block: {kind: concertina, stock: page, pages: 40}
  cover: {kind: wrap, stock: card}
books: from titles.csv
"""


def shelf(folder: Path, table: str | bytes, text: str = SHELF) -> Path:
    (folder / "titles.csv").write_bytes(table.encode() if isinstance(table, str) else table)
    (folder / "shelf.yaml").write_text(text, encoding="utf-8")
    return folder / "shelf.yaml"


def refusal(folder: Path, table: str | bytes) -> list[str]:
    with pytest.raises(ShelfFileError) as refused:
        read_shelf(shelf(folder, table))
    return [str(problem) for problem in refused.value.problems]


def test_a_table_is_the_same_as_the_list_it_stands_for(tmp_path: Path) -> None:
    table = (
        "title,author,pages,height,width,style,colour,space,design.device\n"
        'Tides,A. Fell,48,21 mm,15 mm,cloth,#123456,upper,lamp\n\n"Salt, Rope and Tar",,,,,,,,\n'
    )
    listed = """books:
  - title: Tides
    author: A. Fell
    block: {pages: 48}
    size: {height: 21 mm, width: 15 mm}
    design: {style: cloth, colour: "#123456", device: lamp}
    space: upper
  - title: Salt, Rope and Tar
"""
    (tmp_path / "one").mkdir()
    (tmp_path / "two").mkdir()
    one = read_shelf(shelf(tmp_path / "one", table)).spec
    two = read_shelf(shelf(tmp_path / "two", "", SHELF.replace("books: from titles.csv\n", listed))).spec
    assert one == two


@pytest.mark.parametrize("separator", [",", ";", "\t"])
@pytest.mark.parametrize("line_end", ["\n", "\r\n"])
def test_any_spreadsheet_s_separator_line_end_and_mark(separator: str, line_end: str, tmp_path: Path) -> None:
    table = line_end.join(separator.join(row) for row in (("title", "author"), ("Tides", "Ö. Fell"), ("Ropes", "")))
    books = read_shelf(shelf(tmp_path, b"\xef\xbb\xbf" + table.encode())).spec.books
    assert [(book.title, book.author) for book in books] == [("Tides", "Ö. Fell"), ("Ropes", None)]


def test_a_table_may_stand_between_other_books(tmp_path: Path) -> None:
    mixed = SHELF.replace("books: from titles.csv", "books:\n  - title: First\n  - from titles.csv\n  - title: Last")
    books = read_shelf(shelf(tmp_path, "title\nTides\nRopes\n", mixed)).spec.books
    assert [book.title for book in books] == ["First", "Tides", "Ropes", "Last"]


BAD = {
    "missing column": (
        "name,author\nTides,A. Fell\n",
        ["titles.csv:1:1: there is no column 'title' among name, author; "
         "name the columns in the first line, one of them title"],
    ),
    "ragged": (
        "title,author\nTides,A. Fell,1907\nRopes\n",
        ["titles.csv:2:2: this line has 3 cells, but there are 2 columns; "
         "put text that holds the separator in quotes, and leave cells without a value empty",
         "titles.csv:3:1: this line has 1 cell, but there are 2 columns; "
         "put text that holds the separator in quotes, and leave cells without a value empty"],
    ),
    "formula": (
        "title,pages\nTides,=B1*2\n",
        ["titles.csv:2:2: pages is a formula: =B1*2; save the list with values instead of formulas"],
    ),
    "twice": ("title,title\nTides,Tides\n", ["titles.csv:1:2: column 'title' stands there twice; delete one of them"]),
    "nameless": ("title,\nTides,4\n", ["titles.csv:1:2: column 2 has no name; name it, or delete it"]),
    "wrong value": ("title,pages\nTides,40\nRopes,47\n", [
        "titles.csv:3:2: books[2].block.pages: 47 is odd, but a leaf has two pages; write 46 or 48"]),
    "unknown key": ("title,desing.colour\nTides,#123456\n", [
        "titles.csv:2:2: books[1] has an unknown key 'desing'; did you mean design?"]),
    "unknown style": ("title,style\nTides,clot\n", [
        "titles.csv:2:2: books[1].design.style: 'clot' is not known; did you mean cloth?"]),
    "unknown palette": ("title,style,palette\nTides,cloth,habour\n", [
        "titles.csv:2:3: books[1].design.palette: 'habour' is not known; did you mean harbour?"]),
    "empty": ("", ["shelf.yaml:11:8: titles.csv is empty; write a line of column names, and a line for each book"]),
    "encoding": ("title\nTides\nÖl\n".encode("latin-1"), [
        "titles.csv:3:1: this line holds a letter (byte 0xD6) that is not UTF-8 text; "
        "save the list as CSV with the encoding UTF-8"]),
    "10000 rows": ("title\n" + "Tides\n" * 10_000, [
        "shelf.yaml:11:8: titles.csv lists 10000 books, more than 5000; part them into several shelves"]),
}  # fmt: skip


@pytest.mark.parametrize("name", BAD)
def test_what_is_wrong_is_told_with_row_and_column(name: str, tmp_path: Path) -> None:
    table, told = BAD[name]
    assert refusal(tmp_path, table) == told


def test_a_missing_table_is_told_where_it_is_named(tmp_path: Path) -> None:
    (tmp_path / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    with pytest.raises(ShelfFileError) as refused:
        read_shelf(tmp_path / "shelf.yaml")
    assert str(refused.value) == (
        "shelf.yaml:11:8: titles.csv cannot be read (no such file or directory); "
        "write its path as seen from the shelf file's folder"
    )


def test_what_is_said_later_leads_to_the_cell_too(tmp_path: Path) -> None:
    checked = check(shelf(tmp_path, "title,height,space\nTides,40 mm,upper\n"))
    assert [(problem.place.file, problem.place.line) for problem in checked.problems if problem.place] == [
        ("titles.csv", 2)
    ]


def test_short_names_are_keys_and_the_schema_knows_the_list() -> None:
    assert MOST_BOOKS == 5000
    assert {path.split(".")[0] for path in SHORT_NAMES.values()} <= set(BookEntry.model_fields)
    books = shelf_schema()["properties"]["books"]
    assert {"type": "string", "pattern": "^from .+"} in books["anyOf"]
