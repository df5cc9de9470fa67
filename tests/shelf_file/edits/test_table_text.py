"""Edits of tables: read back with Python's own csv module, and all bytes of other cells as they were."""

from __future__ import annotations

import csv
import io
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.problems import Problem
from bookmaker.shelf_file.book_list.cells import SEPARATORS
from bookmaker.shelf_file.edits.edit import Copy, Edit, Insert, Move, Remove, Rename, Reorder, SetValue
from bookmaker.shelf_file.edits.outcome import outcome
from bookmaker.shelf_file.edits.table_text import edit_table
from bookmaker.shelf_file.fields.keys import dotted_keys
from bookmaker.shelf_file.yaml_tree import Plain
from bookmaker.things.book.entry import BookEntry

KEYS = dotted_keys(BookEntry)
COLUMNS = {
    "title": ("title",),
    "author": ("author",),
    "pages": ("block", "pages"),
    "design.device": ("design", "device"),
    "style": ("design", "style"),
}
CELLS = (
    "",
    "x",
    "Salt, Rope",
    "a;b",
    "tab\there",
    'say "x"',
    '"',
    "two\nlines",
    "it's",
    "#fff",
    "é",
    "1984",
    "=",
    "-y",
)
NEW = tuple(cell for cell in CELLS if cell != "=")


@st.composite
def tables(draw: st.DrawFn) -> tuple[str, str, list[list[str]]]:
    """A table as somebody saved it, its separator, and its rows as they were meant."""
    separator = draw(st.sampled_from(sorted(SEPARATORS)))
    end = draw(st.sampled_from(("\n", "\r\n", "\r")))
    names = ["title", *draw(st.lists(st.sampled_from(list(COLUMNS)[1:4]), unique=True))]
    cell = st.sampled_from([one for one in CELLS if one not in ("=", "#fff")])
    rows = [["x", *draw(st.lists(cell, min_size=len(names) - 1, max_size=len(names) - 1))]]
    rows += [["y", *draw(st.lists(cell, max_size=len(names) - 1))] for _ in range(draw(st.integers(0, 3)))]
    separator = separator if names[1:] else ","
    lines = [separator.join(draw(written(one, separator)) for one in row) for row in (names, *rows)]
    for at in range(len(lines), 0, -1):
        lines[at:at] = draw(st.sampled_from(([], [], [""], ["# a note"], ["", "# two", "# notes"], [separator])))
    text = end.join(lines) + draw(st.sampled_from((end, "")))
    return (f"sep={separator}{end}" if draw(st.booleans()) else "") + text, separator, [names, *rows]


@st.composite
def written(draw: st.DrawFn, cell: str, separator: str) -> str:
    needs = any(sign in cell for sign in (separator, '"', "\n"))
    quoted = f'"{cell.replace(chr(34), chr(34) * 2)}"' if needs or draw(st.booleans()) else cell
    blanks = st.sampled_from(("", "", "", " "))
    return f"{draw(blanks)}{quoted}{draw(blanks)}"


def books(rows: list[list[str]]) -> list[Plain]:
    """The books that rows stand for."""
    made: list[Plain] = []
    for row in rows[1:]:
        book: Plain = {}
        for name, cell in zip(rows[0], row, strict=False):
            assert isinstance(book, dict)
            *groups, key = COLUMNS[name]
            inner = book
            for group in groups if cell else ():
                inner = inner.setdefault(group, {})  # type: ignore[assignment]
            if cell:
                inner[key] = cell
        made.append(book)
    return made


def told(value: Plain) -> Plain:
    if isinstance(value, dict):
        return {key: told(item) for key, item in value.items() if told(item) not in (None, "", {})}
    return [told(item) for item in value] if isinstance(value, list) else value


def read_by_csv(text: str, separator: str) -> list[list[str]]:
    text = re.sub(r'\A"?sep=[^\r\n]*(?:\r\n|\r|\n)', "", text)
    rows = csv.reader(io.StringIO(text, newline=""), delimiter=separator, skipinitialspace=True, strict=False)
    stripped = [[re.sub(r"\r\n|\r", "\n", cell).strip() for cell in row] for row in rows]
    return [row for row in stripped if any(row) and not row[0].startswith("# ")]


@st.composite
def edits(draw: st.DrawFn, count: int) -> Edit:
    at = draw(st.integers(0, count - 1))
    path = draw(st.sampled_from([key for name, key in COLUMNS.items() if name not in ("title", "style")]))
    new = draw(st.sampled_from(NEW))
    to = draw(st.integers(0, count))
    return draw(
        st.sampled_from(
            [
                SetValue((at, *path), new or None),
                SetValue((at, "title"), new or "z"),
                SetValue((at, "design"), {"device": new, "style": "cloth"}),
                Insert((to,), {"title": "new", "block": {"pages": new}}),
                Move((at,), (min(to, count - 1),)),
                Copy((at,), (to,)),
                Reorder((), tuple(draw(st.permutations(range(count))))),
                *([Remove((at,))] if count > 1 else []),
            ]
        )
    )


@given(tables(), st.data())
def test_an_edited_table_reads_as_was_asked(table: tuple[str, str, list[list[str]]], data: st.DataObject) -> None:
    text, separator, rows = table
    assert read_by_csv(text, separator) == rows
    edit = data.draw(edits(len(rows) - 1))
    made = edit_table(text, [edit], KEYS)
    assert isinstance(made, str), (edit, made)
    new = read_by_csv(made, separator)
    wanted = told(outcome(books(rows), edit))
    found = [
        {".".join(COLUMNS[name]): cell for name, cell in zip(new[0], row, strict=False) if cell} for row in new[1:]
    ]
    assert found == [dict(leaves(book, "")) for book in wanted or ()]
    assert {*re.findall(r"\r\n|\r|\n", made)} <= {*re.findall(r"\r\n|\r|\n", text), "\n"}


def leaves(value: Plain, path: str) -> list[tuple[str, Plain]]:
    if isinstance(value, dict):
        return [leaf for key, item in value.items() for leaf in leaves(item, f"{path}.{key}".strip("."))]
    return [(path, value)]


@given(tables(), st.data())
def test_other_bytes_are_the_old_ones_and_rows_go_back(
    table: tuple[str, str, list[list[str]]], data: st.DataObject
) -> None:
    text, _, rows = table
    at = data.draw(st.integers(0, len(rows) - 2))
    made = edit_table(text, [SetValue((at, "title"), "changed")], KEYS)
    assert isinstance(made, str)
    place = made.index("changed")
    assert text.startswith(made[:place].rstrip(' "'))
    assert text.endswith(made[place + 7 :].lstrip(' "'))
    to = data.draw(st.integers(0, len(rows) - 1))
    new = edit_table(text, [Insert((to,), {"title": "new"})], KEYS)
    assert isinstance(new, str)
    assert edit_table(new, [Remove((to,))], KEYS) == text


TABLE = '# of the house\ntitle;author;pages\n# thick\nFog; A. Fell ;8\n\nSalt;"B; C";\nRope;;\n'


@pytest.mark.parametrize(
    ("edit", "old", "new"),
    [
        (SetValue((0, "author"), "O"), " A. Fell ", " O "),
        (SetValue((1, "author"), None), '"B; C"', ""),
        (SetValue((1, "block", "pages"), "9"), '"B; C";', '"B; C";9'),
        (SetValue((0, "title"), 'a "b"'), "Fog", '"a ""b"""'),
        (Remove((1,)), 'Salt;"B; C";\n', ""),
        (Remove((0,)), "# thick\nFog; A. Fell ;8\n", ""),
        (Remove((0, "author")), " A. Fell ", "  "),
        (Move((0,), (2,)), "", ""),
        (Copy((0,), (3,)), "Rope;;\n", "Rope;;\nFog; A. Fell ;8\n"),
        (Insert((1,), {"title": "New"}), ";8\n", ";8\nNew;;\n"),
    ],
)
def test_the_smallest_change(edit: Edit, old: str, new: str) -> None:
    made = edit_table(TABLE, [edit], KEYS)
    if isinstance(edit, Move):
        assert made == '# of the house\ntitle;author;pages\n\nSalt;"B; C";\nRope;;\n# thick\nFog; A. Fell ;8\n'
    else:
        assert made == TABLE.replace(old, new)


def test_a_column_is_added_for_a_key_that_has_none() -> None:
    made = edit_table(TABLE, [SetValue((2, "size", "height"), "21 mm"), SetValue((0, "design", "device"), "sun")], KEYS)
    assert made == (
        "# of the house\ntitle;author;pages;height;design.device\n# thick\nFog; A. Fell ;8;;sun\n\n"
        'Salt;"B; C";;;\nRope;;;21 mm;\n'
    )
    assert edit_table("title,pages\nFog\nSalt,8\n", [SetValue((0, "author"), "A")], KEYS) == (
        "title,pages,author\nFog,,A\nSalt,8\n"
    )


@pytest.mark.parametrize(
    ("edit", "message"),
    [
        (SetValue((0, "author"), " a "), "a cell cannot keep the blanks around its text"),
        (SetValue((0, "title"), "# x"), "a line of a table that begins with # is a note"),
        (SetValue((0, "title"), None), "this book has no title"),
        (SetValue((0, "author"), "=1+1"), "author is a formula: =1+1"),
        (SetValue((0, "inside"), [{"kind": "blank"}]), "Fog: inside is a list, and a cell holds one value"),
        (SetValue((0, "nothing"), "x"), "no column is called 'nothing'"),
        (SetValue((7, "title"), "x"), "book 8 is not written here"),
        (Rename((0, "title"), "name"), "a table has cells, not groups of keys"),
        (Move((0, "title"), (0, 1)), "a table has cells, not groups of keys"),
        (Insert((0,), {"author": "x"}), "this book has no title"),
    ],
)
def test_what_a_table_cannot_hold_says_so(edit: Edit, message: str) -> None:
    refused = edit_table(TABLE, [edit], KEYS)
    assert isinstance(refused, Problem)
    assert refused.message == message
    assert refused.remedy
