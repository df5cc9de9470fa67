"""Rows: one entry, many books, in order; what is wrong is shown where it was written, once."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.shelf.reading import read_shelf
from bookmaker.shelf.schema import shelf_schema
from bookmaker.shelf_file.defaults import with_defaults
from bookmaker.shelf_file.rows import with_rows
from bookmaker.shelf_file.yaml_tree import Plain, parse_tree
from tests.kit import by_kind
from tests.kit.schema_shape import astray
from tests.kit.shelves import changed, told


def books_of(text: str) -> Plain:
    """The books of a shelf when its rows and defaults are written out."""
    rows, _ = with_rows(parse_tree(text, "t.yaml"))
    tree = with_defaults(rows).plain()
    assert isinstance(tree, dict)
    return tree["books"]


@pytest.mark.parametrize(
    ("entry", "books"),
    [
        ("{author: A, row: [One, Two]}", [{"title": "One", "author": "A"}, {"title": "Two", "author": "A"}]),
        ("{author: A, row: [{title: One, author: B}]}", [{"title": "One", "author": "B"}]),
        ("{title: T, row: [{author: A}, {author: B}]}", [{"title": "T", "author": a} for a in "AB"]),
        ("{row: [{title: One, thickness: 4 mm}]}", [{"title": "One", "block": {"thickness": "4 mm"}}]),
        (
            "{block: {kind: dummy, thickness: fill}, row: [{title: One, thickness: 4 mm}, Two]}",
            [
                {"title": "One", "block": {"kind": "dummy", "thickness": "4 mm"}},
                {"title": "Two", "block": {"kind": "dummy", "thickness": "fill"}},
            ],
        ),
        (
            "{block: {kind: dummy}, row: [{title: One, thickness: 4 mm, block: {edges: gilt}}]}",
            [{"title": "One", "block": {"kind": "dummy", "thickness": "4 mm", "edges": "gilt"}}],
        ),
        # a block of another kind takes nothing from that of the row
        (
            "{block: {kind: dummy, thickness: fill}, row: [{title: One, block: {kind: leaves, pages: 8}}]}",
            [{"title": "One", "block": {"kind": "leaves", "pages": "8"}}],
        ),
        (
            "{size: {height: 1}, row: [{title: A, life_size: {height: 2}}]}",
            [{"title": "A", "life_size": {"height": "2"}}],
        ),
        # what says the thickness twice, or has no shape, is left to be refused
        (
            "{row: [{title: A, thickness: 4 mm, block: {thickness: 5 mm}}]}",
            [{"title": "A", "thickness": "4 mm", "block": {"thickness": "5 mm"}}],
        ),
        ("{author: A, row: [[One], ~, Two]}", [["One"], None, {"title": "Two", "author": "A"}]),
        ("{author: A, row: []}", [{"author": "A", "row": []}]),
        ("{author: A, row: One}", [{"author": "A", "row": "One"}]),
    ],
)
def test_what_an_entry_becomes(entry: str, books: Plain) -> None:
    assert books_of(f"books: [{entry}]\n") == books


def test_an_item_goes_before_its_entry_and_the_entry_before_the_defaults() -> None:
    text = (
        "defaults: {author: D, space: d, block: {kind: dummy, thickness: 9 mm, material: oak, edges: lines}}\n"
        "books: [{space: e, block: {thickness: fill, edges: gilt}, row: [{title: A, thickness: 4 mm}, B]}]\n"
    )
    shared = {"author": "D", "space": "e"}
    block = {"kind": "dummy", "material": "oak", "edges": "gilt"}
    assert books_of(text) == [
        {"title": "A", **shared, "block": {**block, "thickness": "4 mm"}},
        {"title": "B", **shared, "block": {**block, "thickness": "fill"}},
    ]


ROW = st.lists(st.integers(0, 99).map(str), min_size=1, max_size=6)


@given(st.lists(st.integers(0, 99).map(str) | ROW, max_size=6))
def test_order_and_places_are_kept(entries: list[str | list[str]]) -> None:
    """Every book stands where its title was written, one after the other."""
    lines = ["books:"]
    for entry in entries:
        if isinstance(entry, str):
            lines.append(f"  - title: {entry}")
        else:
            lines += ["  - author: A", "    row:", *(f"      - {title}" for title in entry)]
    tree, _ = with_rows(parse_tree("\n".join(lines) + "\n", "t.yaml"))
    books = tree.child("books")
    assert books is not None
    titles = [title for entry in entries for title in ([entry] if isinstance(entry, str) else entry)]
    found = [book.child("title") for book in books.value] if isinstance(books.value, list) else []
    assert [title.plain() for title in found if title] == titles
    places = [title.place for title in found if title]
    assert [lines[place.line - 1][place.column - 1 :] for place in places] == titles
    assert [place.line for place in places] == sorted({place.line for place in places})


@pytest.mark.parametrize("text", ["[a]", "books: 3", "shelf: x", "books: [a, {title: T}]"])
def test_a_shelf_without_rows_is_as_it_was(text: str) -> None:
    tree = parse_tree(text, "t.yaml")
    assert with_rows(tree) == (tree, {})


SHELF = """\
shelf: The Long Row
stocks:
  laid: {caliper: 100 um, glue: 30 um, grain: long}
  card: {caliper: 160 um, film: 50 um, grain: long}
spaces:
  upper: {width: 60 mm, height: 27 mm, depth: 22 mm}
books:
  - title: First
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: laid, pages: 48}
    cover: {kind: wrap, stock: card}
  - size: {height: 20 mm, width: 14 mm}
    block: {kind: dummy, edges: lines, edge_stock: laid, thickness: fill}
    cover: {kind: wrap, stock: card}
    space: upper
    row:
      - Second
      - {title: Third, thickness: 4 mm}
      - {title: Fourth, author: F. Orth}
"""


def said(folder: Path, *slips: tuple[str, str]) -> list[str]:
    return [line.removeprefix("shelf.yaml:") for line in told(changed(*slips, text=SHELF), folder)]


def test_a_row_is_books_like_any_others(tmp_path: Path) -> None:
    assert said(tmp_path) == [
        "17:9: the thickest of the 2 blocks that fill upper becomes 32.19 mm thick, like a book of 386 mm; "
        "add 4 more to share the space, or write at_most: 12 mm and leave the rest empty"
    ]
    plan = check(tmp_path / "shelf.yaml").plan
    assert [book.entry.title for book in by_kind.books_of(plan)] == ["First", "Second", "Third", "Fourth"]
    thick = [book.block.thickness.value for book in by_kind.books_of(plan)[1:]]
    assert thick[0] != thick[2]
    assert min(thick) == thick[1] == 4.0


@pytest.mark.parametrize(
    ("slips", "messages"),
    [
        # in an item: there
        (
            [("thickness: 4 mm", "thickness: 4")],
            ["18:35: Third: block.thickness: 4 has no unit; write 4 mm"],
        ),
        ([("author: F. Orth", "auhtor: F.")], ["19:25: Fourth has an unknown key 'auhtor'; did you mean author?"]),
        (
            [("title: Third, ", "")],
            ["18:9: book 3 has no title; add title: title, as it shall stand on spine and front"],
        ),
        (
            [("- Second", "- [Second]")],
            ["17:9: book 2 is not a group of keys; write keys and values under it, or between { and }"],
        ),
        (
            [("- Second", "-")],
            ["17:8: book 2 is empty; write keys and values under it, or between { and }"],
        ),
        (
            [("title: Third, thickness: 4 mm", "title: Third, thickness: 4 mm, block: {thickness: 5 mm}")],
            ["18:24: Third has an unknown key 'thickness'; write block: {thickness: 4 mm}"],
        ),
        (
            [("dummy, edges: lines, edge_stock: laid, thickness: fill", "accordion, stock: laid, pages: 8")],
            [
                "18:24: Third: block has an unknown key 'thickness'; "
                "write kind: dummy, or measured_thickness, if that is what you mean"
            ],
        ),
        # in what they share: once, and of the first
        (
            [("height: 20 mm", "height: 20")],
            ["12:20: Second: size.height: 20 has no unit; write 20 mm"],
        ),
        (
            [("thickness: fill", "thickness: full")],
            [
                "13:69: Second: block.thickness: 'full' is neither a length nor fill; write it like 4 mm, about 4 mm, "
                "layers of and the name of a stock, or fill"
            ],
        ),
        ([("edge_stock: laid", "edge_stock: lead")], ["13:52: there is no stock 'lead'; did you mean 'laid'?"]),
        (
            [(", edge_stock: laid", "")],
            ["13:12: Second: block has lines edges, but no edge_stock; add edge_stock: with a name from stocks"],
        ),
        (
            [("    space: upper", "    spcae: upper")],
            ["15:5: Second has an unknown key 'spcae'; did you mean space?"],
        ),
        # of one book, by what it shares: at its item
        (
            [("    space: upper\n", "")],
            [
                f"{place}: the block is to fill its space, but the book stands in none; "
                "add space: with a name from spaces, or write a thickness such as 4 mm"
                for place in ("16:9", "18:9")
            ],
        ),
        # the row itself
        (
            [("    row:", "    rwo:")],
            [
                "12:5: book 2 has no title; add title: title, as it shall stand on spine and front",
                "16:5: book 2 has an unknown key 'rwo'; did you mean row?",
            ],
        ),
    ],
    ids=lambda part: str(part)[:60],
)
def test_what_is_wrong_is_shown_where_it_is_written(
    tmp_path: Path, slips: list[tuple[str, str]], messages: list[str]
) -> None:
    assert said(tmp_path, *slips) == messages


NO_TITLE = "12:5: book 2 has no title; add title: title, as it shall stand on spine and front"
ITEMS = SHELF.partition("    row:")[2]


@pytest.mark.parametrize(
    ("row", "message"),
    [
        (" []\n", "16:10: book 2: row lists 0 books; write from 1 to 5000"),
        ("\n", "16:9: book 2: row is empty; write titles or groups of keys, each after a -"),
        (" Second\n", "16:10: book 2: row is not a list; write titles or groups of keys, each after a -"),
        (" [" + "x, " * 5001 + "]\n", "16:10: book 2: row lists 5001 books; write from 1 to 5000"),
    ],
)
def test_a_row_that_is_none(tmp_path: Path, row: str, message: str) -> None:
    assert said(tmp_path, (ITEMS, row)) == [NO_TITLE, message]


def test_a_row_has_its_place(tmp_path: Path) -> None:
    no_place = "stands where no row is allowed; write row in a book of its own, not in defaults or another row"
    assert said(tmp_path, ("books:", "defaults: {row: [A, B]}\nbooks:")) == [f"7:17: defaults.row {no_place}"]
    assert said(tmp_path, ("- Second", "- {title: Second, row: [A]}")) == [f"17:30: Second: row {no_place}"]


def test_more_books_than_any_shelf_has(tmp_path: Path) -> None:
    many = "      - x\n" * 4997
    assert said(tmp_path, ("    row:\n", f"    row:\n{many}")) == ["8:3: books lists 5001 books; write from 1 to 5000"]


def test_the_schema_knows_rows() -> None:
    schema = shelf_schema()
    assert astray(SHELF, schema) == []
    slips = [("author: F. Orth", "auhtor: F."), ("row:", "rwo:"), ("- Second", "- [Second]"), ("    row:" + ITEMS, "")]
    for right, wrong in slips:
        assert right in SHELF
        assert astray(SHELF.replace(right, wrong), schema)


def test_the_spec_has_no_rows(tmp_path: Path) -> None:
    (tmp_path / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    assert [book.row for book in read_shelf(tmp_path / "shelf.yaml").spec.books] == [None] * 4
