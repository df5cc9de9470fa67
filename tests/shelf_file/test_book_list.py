"""Books listed in a table: read as if they stood in the shelf file, and every error led back to its cell."""

from __future__ import annotations

import csv
import io
import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.ground.problems import ShelfFileError
from bookmaker.shelf.reading import read_shelf
from bookmaker.shelf.schema import shelf_schema
from bookmaker.shelf_file.book_list import MOST_BOOKS, SHORT_NAMES
from bookmaker.shelf_file.book_list.cells import SEPARATORS, find_separator, split_rows
from bookmaker.shelf_file.book_list.columns import known_names
from bookmaker.shelf_file.fields.keys import dotted_keys
from bookmaker.things.book.entry import BookEntry
from tests.kit.manual import CHAPTERS
from tests.kit.shelves import refused

SHELF = """\
shelf: Listed
stocks:
  page: {caliper: 80 um}
  card: {caliper: 160 um}
spaces:
  upper: {width: 90 mm, height: 27 mm, depth: 22 mm}
defaults:
  size: {height: 20 mm, width: 14 mm}
  block: {kind: accordion, stock: page, pages: 40}
  cover: {kind: wrap, stock: card}
books: from titles.csv
"""


def shelf(folder: Path, table: str | bytes, text: str = SHELF) -> Path:
    (folder / "titles.csv").write_bytes(table.encode() if isinstance(table, str) else table)
    (folder / "shelf.yaml").write_text(text, encoding="utf-8")
    return folder / "shelf.yaml"


def refusal(folder: Path, table: str | bytes) -> list[str]:
    with pytest.raises(ShelfFileError) as caught:
        read_shelf(shelf(folder, table))
    return [str(problem) for problem in caught.value.problems]


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


BAD: dict[str, tuple[str | bytes, list[str]]] = {
    "missing column": (
        "name,author\nTides,A. Fell\n",
        ["titles.csv:1:1: no column is called 'name'; "
         "name it after a key of a book, such as author, pages, space or design.device, or delete it",
         "titles.csv:1:1: there is no column 'title' among name, author; "
         "name the columns in the first line, one of them title"],
    ),
    "misspelt columns, once each, and nothing that follows from them": (
        "title,palges,sytle,palette\nTides,40,cloth,harbour\nRopes,40\n",
        ["titles.csv:1:2: no column is called 'palges'; did you mean pages?",
         "titles.csv:1:3: no column is called 'sytle'; did you mean style?"],
    ),
    "misspelt title": ("tilte,pages\nTides,40\n", ["titles.csv:1:1: no column is called 'tilte'; did you mean title?"]),
    "no names": (
        "Tides,40,cloth,harbour\n\"Salt, Rope\",40,cloth,harbour\n",
        ["titles.csv:1:1: this line names no column that is known here: Tides, 40, cloth; "
         "begin the table with a line of names, one of them title"],
    ),
    "groups": (
        "title,size,row\nTides,21 mm,\n",
        ["titles.csv:1:2: no column is called 'size'; size is a group of keys: "
         "name the one you mean, such as height or width",
         "titles.csv:1:3: no column is called 'row'; leave it out: each line is a book of its own, "
         "and one with volumes is a set of so many"],
    ),
    "ragged": (
        "title,author\nTides,A. Fell,1907\n",
        ["titles.csv:2:2: this line has 3 cells, but there are 2 columns; "
         'put text that holds a comma in quotes, "18,5 mm" too'],
    ),
    "a title left off at the end": (
        "pages,title\n48,Tides\n64\n",
        ["titles.csv:3:2: this book has no title; write one, or delete the whole line"],
    ),
    "ragged, with semicolons": (
        "title;height\nSalt; Rope;18,5 mm\n",
        ["titles.csv:2:2: this line has 3 cells, but there are 2 columns; put text that holds a semicolon in quotes"],
    ),
    "another separator": (
        "title|pages\nTides|48\n",
        ["titles.csv:1:1: a | does not separate cells here; "
         "save the table with one of comma, semicolon, tab between cells"],
    ),
    "formula": (
        "title,pages\nTides,=B1*2\n",
        ["titles.csv:2:2: pages is a formula: =B1*2; "
         "copy the cell and paste it as a value in its place, then save the table again"],
    ),
    "formula that failed": (
        "title,pages\nTides,#REF!\n",
        ["titles.csv:2:2: pages is #REF!, a formula that came to nothing; write the value itself, or leave it empty"],
    ),
    "hidden": (
        "title,space\nTides,up\x1b[31mper\n",
        ["titles.csv:2:2: space holds the control character U+001B; write visible letters only"],
    ),
    "no title": ("title,pages\n,48\n", ["titles.csv:2:1: this book has no title; write one, or delete the whole line"]),
    "twice": (
        "title,title\nTides,Tides\n",
        ["titles.csv:1:2: column 2 says the same as column 1: title; delete one of them"],
    ),
    "twice, by two names": (
        "title,pages,Block.Pages\nTides,4,4\n",
        ["titles.csv:1:3: column 3 says the same as column 2: pages; delete one of them"],
    ),
    "nameless": (
        "title,\nRopes,\nTides,4\n",
        ["titles.csv:1:2: column 2 has no name, but line 3 has '4' in it; name it, or delete it"],
    ),
    "open quote": (
        'title,pages\nTides,48\n"Ropes,48\nKnots,48\n',
        ['titles.csv:3:1: a quotation mark opens here and is not closed; '
         'put one at the end of the text, and write "" for a mark that belongs to it'],
    ),
    "open quote that meets another": (
        'title,pages\n"Tides,48\nRopes,48\n"Salt, Rope and Tar",48\n',
        ["titles.csv:2:1: the quotation mark that opens here is closed only on line 4, with more text behind it; "
         'put one at the end of the text, and write "" for a mark that belongs to it'],
    ),
    "quotes within": (
        'title,pages\n"Tall" Tales,48\n',
        ["titles.csv:2:1: the text goes on behind the quotation mark that closes it; "
         'put marks around the whole text, and write "" for a mark that belongs to it'],
    ),
    "wrong value": ("title,pages\nTides,40\nRopes,47\n", [
        "titles.csv:3:2: Ropes: pages: 47 is odd, but a leaf has two pages; write 46 or 48"]),
    "changed by the spreadsheet": (
        "title;height;width;pages\nTides;01.Feb;1,5E+02;\nRopes;2026-02-01;18,5 mm;Feb 26\nKnots;21;15 mm;48,5\n",
        ["titles.csv:2:2: Tides: height: 'Feb' is not a unit of length; spreadsheets take 1/2 for a date, and large "
         "numbers for powers: set the column to text, and write it in mm, cm, m, um, in, ft, mil, pt",
         "titles.csv:2:3: Tides: width: 1,5E+02 has an exponent; spreadsheets take 1/2 for a date, and large "
         "numbers for powers: set the column to text, and write the number out in full",
         "titles.csv:3:2: Ropes: height: 2026-02-01 is not one number; spreadsheets take 1/2 for a date, and "
         "large numbers for powers: set the column to text, and write one number such as 21, 2.5, 7/8 or 1 1/8",
         "titles.csv:3:4: Ropes: pages: 'Feb 26' is not a whole number; spreadsheets take 1/2 for a date, and "
         "large numbers for powers: set the column to text, and write one in digits, such as 48",
         "titles.csv:4:2: Knots: height: 21 has no unit; write 21 mm",
         "titles.csv:4:4: Knots: pages: '48,5' is not a whole number; write one in digits, such as 48"],
    ),
    "unknown key": ("title,desing.device\nTides,lamp\n", [
        "titles.csv:1:2: no column is called 'desing.device'; did you mean design.device?"]),
    "unknown style": ("title,style\nTides,clot\n", [
        "titles.csv:2:2: Tides: style: 'clot' is not known; did you mean cloth?"]),
    "unknown palette": ("title,style,palette\nTides,cloth,habour\n", [
        "titles.csv:2:3: Tides: palette: 'habour' is not known; did you mean harbour?"]),
    "neither yes nor no": ("title,style,design.steps\nTides,cloth,x\nRopes,cloth,yes\nKnots,cloth,TRUE\n", [
        "titles.csv:2:3: Tides: design.steps: x is neither yes nor no; write yes or no"]),
    "a key of another kind": ("title,cover.boards\nTides,card\n", [
        "titles.csv:2:2: Tides: cover has an unknown key 'boards'; write kind: case, or leave boards out"]),
    "something left out": ("title,cover.stock,cover.kind\n\nTides,card,case\n", [
        "titles.csv:3:2: Tides: cover has no boards; "
        "add boards: name of the board, as under stocks, in a column of the table or under defaults"]),
    "empty": ("", ["shelf.yaml:11:8: titles.csv is empty; write a line of column names, and a line for each book"]),
    "names alone": ("title,pages\n,\n", [
        "shelf.yaml:11:8: titles.csv lists no book; write a line for each book below the names of the columns"]),
    "encoding of nothing": (b"title\nTides\n\x81l\n", [
        "titles.csv:3:1: this line holds a letter that is not UTF-8 text (byte 0x81); "
        "save the table again as CSV and choose UTF-8 as its encoding"]),
    "UTF-16 that breaks off": ("title\nTides\n".encode("utf-16")[:-1], [
        "shelf.yaml:11:8: titles.csv is UTF-16 text that breaks off or is damaged; "
        "save the table again as CSV and choose UTF-8 as its encoding"]),
    "half a spreadsheet": (b"PK\x03\x04\x14\x00", [
        "shelf.yaml:11:8: titles.csv is a spreadsheet that is damaged; "
        "save the table again as CSV and choose UTF-8 as its encoding"]),
    "10000 rows": ("title\n" + "Tides\n" * 10_000, [
        "shelf.yaml:11:8: titles.csv lists 10000 books, more than 5000; part them into several shelves"]),
}  # fmt: skip


@pytest.mark.parametrize("name", BAD)
def test_what_is_wrong_is_told_with_row_and_column(name: str, tmp_path: Path) -> None:
    table, told = BAD[name]
    assert refusal(tmp_path, table) == told


def test_what_every_book_of_a_table_lacks_is_told_once(tmp_path: Path) -> None:
    """What only some lack is told of each."""
    text = SHELF.replace("{height: 20 mm, width: 14 mm}", "{height: 20 mm}")
    shelf(tmp_path, "title,pages\nTides,40\nRopes,40\nSalt,48\n")
    [said] = refused(text, tmp_path)
    assert said.startswith("titles.csv:2:1: every book of this table: size has no width; add width:")
    shelf(tmp_path, "title,width\nTides,\nRopes,14 mm\nSalt,\n")
    assert ["every book" in one for one in refused(text, tmp_path)] == [False, False]


def titles(folder: Path, table: str | bytes, text: str = SHELF) -> list[str]:
    return [book.title for book in read_shelf(shelf(folder, table, text)).spec.books]


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_what_spreadsheets_leave_around_a_table_is_no_matter(separator: str, tmp_path: Path) -> None:
    """Empty lines and columns, names that the spreadsheet began with a capital, notes, text parted over lines."""
    rows = (
        ("", "", "", "", ""), ("Title", "Author", "", "PAGES", ""), ("", "", "", "", ""),
        ("# Lower shelf", "", "", "", ""), ('"Tides\nand Ropes"', "A. Fell", "", "48", ""),
        ("Knots", "", "", "48", "", ""),
    )  # fmt: skip
    table = "\r\n".join(separator.join(row) for row in rows)
    assert titles(tmp_path, table) == ["Tides and Ropes", "Knots"]


def test_the_sign_that_finds_most_names_parts_the_cells() -> None:
    assert find_separator("\n# a, b\nTitle;Notes, odds, ends, bits\n", {"title"}) == ";"


@pytest.mark.parametrize("table", ["title\nTides", "sep=;\ntitle;pages\nTides;48\n", "title\rTides\r"])
def test_short_tables_are_read(table: str, tmp_path: Path) -> None:
    assert titles(tmp_path, table) == ["Tides"]


def test_text_that_a_spreadsheet_saved_as_utf_16_is_read(tmp_path: Path) -> None:
    assert titles(tmp_path, "title\tpages\nÖl\t48\n".encode("utf-16")) == ["Öl"]


def test_decimal_commas_are_read_where_semicolons_part_the_cells(tmp_path: Path) -> None:
    table = "title;height;width\nTides, and Ropes;18,5 mm;1 1/8 in\n"
    (book,) = read_shelf(shelf(tmp_path, table)).spec.books
    assert book.size is not None
    assert (book.title, book.size.height, book.size.width) == ("Tides, and Ropes", 18.5, 28.575)


def test_quotation_marks_hold_what_rfc_4180_says_they_hold(tmp_path: Path) -> None:
    """RFC 4180, section 2: separators and line ends in quotes belong to the text, and two marks stand for one."""
    assert titles(tmp_path, 'title\n"A ""Tall"" Tale"\n"Salt, Rope"\nThe 5" Gun\n') == [
        'A "Tall" Tale',
        "Salt, Rope",
        'The 5" Gun',
    ]


CELL = st.text(st.characters(exclude_characters="\r", exclude_categories=["Cs"]), max_size=8)


@given(st.lists(st.lists(CELL, min_size=1, max_size=4), max_size=6), st.sampled_from(list(SEPARATORS)))
def test_what_the_standard_library_writes_is_read_back(rows: list[list[str]], separator: str) -> None:
    written = io.StringIO(newline="")
    csv.writer(written, delimiter=separator, lineterminator="\n").writerows(rows)
    assert [list(row.cells) for row in split_rows(written.getvalue(), separator)] == [
        [cell.strip() for cell in row] for row in rows
    ]


def test_a_line_may_be_a_set_of_volumes(tmp_path: Path) -> None:
    books = read_shelf(shelf(tmp_path, "title,volumes,series\nTides,3,Sea\nRopes,,\n")).spec.books
    assert [(book.title, book.volume, book.series) for book in books] == [
        ("Tides", "I", "Sea"),
        ("Tides", "II", "Sea"),
        ("Tides", "III", "Sea"),
        ("Ropes", None, None),
    ]


def test_what_is_wrong_with_a_set_is_told_once_of_its_line(tmp_path: Path) -> None:
    assert refusal(tmp_path, "title,volumes,pages\nRopes,,40\nTides,3,47\n") == [
        "titles.csv:3:3: Tides: pages: 47 is odd, but a leaf has two pages; write 46 or 48"
    ]


TWO_TABLES = SHELF.replace(
    "books: from titles.csv",
    "books:\n  - title: First\n  - from titles.csv\n  - {title: Between, block: {pages: 7}}\n  - from more.csv",
)


def test_several_tables_are_told_apart(tmp_path: Path) -> None:
    path = shelf(tmp_path, "title,pages\nTides,9\n", TWO_TABLES)
    (tmp_path / "more.csv").write_text("title,pages\nRopes,11\n", encoding="utf-8")
    with pytest.raises(ShelfFileError) as caught:
        read_shelf(path)
    assert [str(problem).partition(" is odd")[0] for problem in caught.value.problems] == [
        "titles.csv:2:2: Tides: pages: 9",
        "shelf.yaml:14:37: Between: block.pages: 7",
        "more.csv:2:2: Ropes: pages: 11",
    ]


def test_the_mistakes_of_all_tables_are_told_at_once(tmp_path: Path) -> None:
    path = shelf(tmp_path, "title,pags\nTides,9\n", TWO_TABLES)
    (tmp_path / "more.csv").write_text('title\n"Ropes\n', encoding="utf-8")
    with pytest.raises(ShelfFileError) as caught:
        read_shelf(path)
    assert [str(problem.place) for problem in caught.value.problems] == [
        "shelf.yaml:14:37",  # a book of the shelf file itself, between the tables
        "titles.csv:1:2",
        "more.csv:2:1",
    ]


def test_thickness_is_that_of_a_solid_block_as_in_a_row(tmp_path: Path) -> None:
    dummy = SHELF.replace("{kind: accordion, stock: page, pages: 40}", "{kind: dummy, thickness: fill}")
    spec = read_shelf(shelf(tmp_path, "title,thickness\nTides,4 mm\nRopes,\n", dummy)).spec
    assert [book.block.thickness for book in spec.books] == [4.0, "fill"]
    shelf(tmp_path, "title,thickness\nTides,4 mm\n")
    assert refused(SHELF, tmp_path) == [
        "titles.csv:2:2: Tides: block has an unknown key 'thickness'; "
        "write kind: dummy, or measured_thickness, if that is what you mean"
    ]


def test_a_table_in_a_folder_is_named_as_the_shelf_names_it(tmp_path: Path) -> None:
    (tmp_path / "lists").mkdir()
    (tmp_path / "lists" / "sea.csv").write_text("title,pages\nTides,9\n", encoding="utf-8")
    with pytest.raises(ShelfFileError) as caught:
        read_shelf(shelf(tmp_path, "", SHELF.replace("titles.csv", "lists/sea.csv")))
    assert str(caught.value.problems[0].place) == "lists/sea.csv:2:2"


def test_a_missing_table_is_told_where_it_is_named(tmp_path: Path) -> None:
    (tmp_path / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    with pytest.raises(ShelfFileError) as caught:
        read_shelf(tmp_path / "shelf.yaml")
    assert str(caught.value) == (
        "shelf.yaml:11:8: there is no table titles.csv; write its path as seen from the folder of the shelf file"
    )


def test_what_is_said_later_leads_to_the_cell_too(tmp_path: Path) -> None:
    checked = check(shelf(tmp_path, "title,height,space\nRopes,,\nTides,40 mm,upper\n"))
    assert [str(problem.place) for problem in checked.problems] == ["titles.csv:3:3"]
    shelf(tmp_path, "title,space\nTides,uper\n")
    assert refused(SHELF, tmp_path) == ["titles.csv:2:2: there is no space 'uper'; did you mean 'upper'?"]


def test_every_key_of_a_book_that_is_no_group_names_a_column() -> None:
    keys = dotted_keys(BookEntry)
    names = set(known_names(keys))
    assert {"title", "space", "block.at_least", "cover.boards", "jacket.design.wear", "inside.margins.top"} <= names
    assert not {"size", "block", "design", "jacket.design", "row"} & names
    assert set(SHORT_NAMES.values()) <= set(keys)


def test_short_names_are_keys_and_the_schema_knows_the_list() -> None:
    assert MOST_BOOKS == 5000
    assert {path.split(".")[0] for path in SHORT_NAMES.values()} <= set(BookEntry.model_fields)
    books = shelf_schema()["properties"]["books"]
    assert {"title": "books from a list", "type": "string", "pattern": "^from .+"} in books["anyOf"]


def test_the_table_of_the_manual_is_read(tmp_path: Path) -> None:
    (table,) = re.findall(r"```csv\n(.*?)```", CHAPTERS["books.md"], re.DOTALL)
    books = read_shelf(shelf(tmp_path, table)).spec.books
    assert [(book.title, book.size and book.size.height) for book in books] == [
        ("Tide Tables", 21.0),
        ("Salt, Rope and Tar", 18.5),
    ]


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_cells_left_off_at_the_end_of_a_line_are_empty(separator: str, tmp_path: Path) -> None:
    whole = "title,author,date,series\nTides,,,\nRopes,A. Fell,,\nPans,A. Fell,1907,Salt\n".replace(",", separator)
    short = "\n".join(line.rstrip(separator) for line in whole.splitlines()) + "\n"
    assert short != whole
    read = [read_shelf(shelf(tmp_path, table)).spec for table in (whole, short)]
    assert read[0] == read[1]
    assert [book.author for book in read[1].books] == [None, "A. Fell", "A. Fell"]


@pytest.mark.parametrize("name", ["titles.csv", "TITLES.TSV"])
def test_a_table_in_place_of_a_shelf_file_is_told(name: str, tmp_path: Path) -> None:
    (tmp_path / name).write_text("title,author\nTides: a History,A. Fell\n", encoding="utf-8")
    with pytest.raises(ShelfFileError) as caught:
        read_shelf(tmp_path / name)
    told = f"{name}: this is a table of books; give the shelf file that names it, with a line books: from …"
    assert str(caught.value) == told


@pytest.mark.parametrize(
    ("encoding", "said"),
    [("cp1252", "the Windows encoding, cp1252"), ("utf-16-le", "UTF-16"), ("utf-16", "UTF-16"), ("utf-8-sig", "")],
)
def test_a_list_in_another_encoding_is_read_and_that_is_said(encoding: str, said: str, tmp_path: Path) -> None:
    path = shelf(tmp_path, "title\tauthor\nÖl\tFähre\n".encode(encoding))
    found = read_shelf(path)
    assert [(book.title, book.author) for book in found.spec.books] == [("Öl", "Fähre")]
    told = [str(problem) for problem in found.remarks]
    note = f"titles.csv was read as text in {said}; save it again in UTF-8 if a letter in it looks wrong"
    assert told == ([f"shelf.yaml:11:8: {note}"] if said else [])
    assert [problem.message for problem in check(path).problems if "was read as" in problem.message] == [
        problem.message for problem in found.remarks
    ]


@pytest.mark.parametrize(
    ("header", "remedies"),
    [
        ("title;Seiten;Höhe;Breite", ["did you mean pages?", "did you mean height?", "did you mean width?"]),
        ("Titel;auteur;altura", ["did you mean title?", "did you mean author?", "did you mean height?"]),
        ("title;Verlag;Regal;Bemerkung", 3 * ["name it after a key of a book, such as author, pages, space or "
                                             "design.device, or delete it"]),
    ],
)  # fmt: skip
def test_columns_in_another_language_are_translated_or_no_guess_is_made(
    header: str, remedies: list[str], tmp_path: Path
) -> None:
    with pytest.raises(ShelfFileError) as refused:
        read_shelf(shelf(tmp_path, f"{header}\nTides;1;2;3\n"))
    assert [problem.remedy for problem in refused.value.problems] == remedies
