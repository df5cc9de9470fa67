"""Time grows as what is read and edited does: twice as much takes about twice as long, not four times."""

from __future__ import annotations

import difflib
import time
from collections.abc import Callable, Sequence
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.ids import slug
from bookmaker.ground.problems import ShelfFileError, near_match
from bookmaker.shelf.entries import ShelfSpec
from bookmaker.shelf.reading import proofread
from bookmaker.shelf_file.book_names import BookName, BookNames, UnknownBook, find_books
from bookmaker.shelf_file.edits.edit import Edit, Insert, Move, Reorder, SetValue
from bookmaker.shelf_file.edits.table_text import edit_table
from bookmaker.shelf_file.edits.yaml_text import edit_yaml
from bookmaker.shelf_file.yaml_tree import parse_tree

AT_MOST = 3
"""So many times longer for twice as much: what is linear takes 2, what grows with the square 4."""

TICK = 0.01
"""Seconds below which nothing is compared: the clock and what was kept from before would decide."""

HEAD = """\
shelf: Long
stocks: {page: {caliper: 80 um}, card: {caliper: 160 um}}
defaults:
  size: {height: 20 mm, width: 14 mm}
  block: {kind: accordion, stock: page, pages: 40}
  cover: {kind: wrap, stock: card}
"""


TRIES, ROUNDS = 2, 4
"""What works beside a test only slows it: the least of some tries counts, and the best of some rounds."""


def seconds(work: Callable[[], object]) -> float:
    """The processor's time for some work: the least of some tries, for others work beside it."""
    least = float("inf")
    for _ in range(TRIES):
        start = time.process_time()
        work()
        least = min(least, time.process_time() - start)
    return least


def assert_linear(work: Callable[[int], Callable[[], object]], count: int) -> None:
    measured = []
    for _ in range(ROUNDS):
        once, twice = seconds(work(count)), seconds(work(2 * count))
        measured.append((once, twice))
        if twice <= AT_MOST * max(once, TICK):
            return
    raise AssertionError(measured)


TABLES: dict[str, Callable[[int], bytes]] = {
    "ordinary": lambda n: ("title,author,pages\n" + "".join(f"Book {at},A,40\n" for at in range(n))).encode(),
    "UTF-16": lambda n: ("title\tpages\n" + "".join(f"Book {at}\t40\n" for at in range(n))).encode("utf-16"),
    "line ends in quotes": lambda n: ("title,pages\n" + "".join(f'"Book\n{at}",40\n' for at in range(n))).encode(),
    "one cell of many lines": lambda n: ('title,author\nFog,"' + "a\n" * 20 * n + '"\n').encode(),
    "a fault in each line": lambda n: ("title,pages\n" + "".join(f"Book {at},forty\n" for at in range(n))).encode(),
    "many columns": lambda n: (",".join(f"col{at}" for at in range(n)) + ",title\n" + "x," * n + "Fog\n").encode(),
}


@pytest.mark.parametrize("sort", TABLES)
def test_tables_are_read(sort: str, tmp_path: Path) -> None:
    def work(count: int) -> Callable[[], object]:
        folder = tmp_path / str(count)
        folder.mkdir(exist_ok=True)  # each round makes it anew
        (folder / "books.csv").write_bytes(TABLES[sort](count))
        (folder / "shelf.yaml").write_text(HEAD + "books: from books.csv\n", encoding="utf-8")
        return lambda: proofread(folder / "shelf.yaml")

    assert_linear(work, 800)


def test_a_table_of_five_thousand_books_is_ordinary_work(tmp_path: Path) -> None:
    (tmp_path / "books.csv").write_bytes(TABLES["ordinary"](5000))
    (tmp_path / "shelf.yaml").write_text(HEAD + "books: from books.csv\n", encoding="utf-8")
    start = time.process_time()
    assert len(proofread(tmp_path / "shelf.yaml").spec.books) == 5000
    assert time.process_time() - start < 10


TEXTS: dict[str, Callable[[int], str]] = {
    "books on lines": lambda n: "books:\n" + "".join(f"- title: Book {at}\n  size: {{height: 1}}\n" for at in range(n)),
    "books on one line": lambda n: "books: [" + ", ".join(f"{{title: Book {at}}}" for at in range(n)) + "]\n",
    "lines of notes": lambda n: "# # #\n" * 20 * n + "a: b\n",
    "a line of notes": lambda n: "a: b " + "# " * 100 * n + "\n",
    "a note in each line": lambda n: "".join(f"k{at}: v  # # #\n# # #\n" for at in range(n)),
    "braces that do not close": lambda n: "a: {b: c,\n" + "# # #\n" * 20 * n,
    "keys twice": lambda n: "".join(f"a: {at}\n" for at in range(n)),
    "a long word": lambda n: "a: " + "x" * 1000 * n + "\n",
    "several lines": lambda n: "a: |\n" + "  x\n\n" * 10 * n + "b: c\n",
}


@pytest.mark.parametrize("sort", TEXTS)
def test_yaml_is_read(sort: str) -> None:
    def work(count: int) -> Callable[[], object]:
        text = TEXTS[sort](count)

        def read() -> None:
            try:
                parse_tree(text, "long.yaml")
            except ShelfFileError:
                assert sort in {"keys twice", "braces that do not close"}

        return read

    assert_linear(work, 300)


@pytest.mark.parametrize("where", ["in the shelf", "in a book"])
def test_unknown_keys_are_told(where: str, tmp_path: Path) -> None:
    def work(count: int) -> Callable[[], object]:
        indent = "" if where == "in the shelf" else "    "
        keys = "".join(f"{indent}kye{at}: 1\n" for at in range(count))
        books = "books:\n  - title: Fog\n"
        path = tmp_path / f"{count}.yaml"
        path.write_text(HEAD + books + keys, encoding="utf-8")
        return lambda: proofread(path)

    assert_linear(work, 800)


def test_many_slips_are_compared_with_many_names() -> None:
    def work(count: int) -> Callable[[], object]:
        known = [f"room {at}" for at in range(count)]
        return lambda: [near_match(f"roam {at}", known) for at in range(count)]

    assert near_match("roam 612", [f"room {at}" for at in range(1000)]) == "room 612"
    assert_linear(work, 1000)


WORDS = st.text("aeklnpst_ ", max_size=12)


@given(WORDS, st.lists(WORDS, min_size=1, max_size=30), st.sampled_from([0.65, 0.8]))
def test_a_near_match_is_the_one_found_among_all(written: str, known: list[str], near: float) -> None:
    folded = {name.replace(" ", "_"): name for name in known}
    found = difflib.get_close_matches(written.replace(" ", "_"), folded, n=1, cutoff=near)
    assert near_match(written, known, near) == (folded[found[0]] if found else "")


def test_slips_are_compared_with_no_names_that_lack_their_letters(monkeypatch: pytest.MonkeyPatch) -> None:
    compared: list[str] = []

    def matches(word: str, names: Sequence[str], n: int, cutoff: float) -> list[str]:
        compared.extend(names)
        return difflib_matches(word, names, n=n, cutoff=cutoff)

    difflib_matches = difflib.get_close_matches
    monkeypatch.setattr(difflib, "get_close_matches", matches)
    known = tuple(ShelfSpec.model_fields)
    assert [near_match(f"{at}5829", known) for at in range(1000)] == [""] * 1000
    assert compared == []
    assert near_match("spces", known) == "spaces"
    assert "spaces" in compared
    assert len(compared) < len(known)


def test_many_measured_books_are_found_by_their_names() -> None:
    def work(count: int) -> Callable[[], object]:
        books = [BookName(f"Book {at}", series=f"Set {at % 7}") for at in range(count)]

        def find() -> None:
            names = BookNames(books)
            assert [find_books(f"book {at}", names) for at in range(count)] == [(at,) for at in range(count)]
            for at in range(count):
                with pytest.raises(UnknownBook):
                    find_books(f"bok {at}", names)

        return find

    assert_linear(work, 800)


def test_piles_of_marks_are_put_in_order() -> None:
    def work(count: int) -> Callable[[], object]:
        title = "a" + "\u0301\u0323" * count
        return lambda: slug(title)

    assert_linear(work, 10_000)


EDITS: dict[str, Callable[[int], list[Edit]]] = {
    "one value": lambda n: [SetValue(("books", n // 2, "title"), "New")],
    "a book at the top": lambda _: [Insert(("books", 0), {"title": "New"})],
    "a book moved to the end": lambda n: [Move(("books", 0), ("books", n - 1))],
    "all in another order": lambda n: [Reorder(("books",), tuple(reversed(range(n))))],
    "a value of every book": lambda n: [SetValue(("books", at, "size", "width"), "2") for at in range(n)],
}


@pytest.mark.parametrize("sort", EDITS)
def test_yaml_is_edited(sort: str) -> None:
    def work(count: int) -> Callable[[], object]:
        text, edits = TEXTS["books on lines"](count), EDITS[sort](count)

        def edit() -> None:
            assert isinstance(edit_yaml(text, edits), str)

        return edit

    assert_linear(work, 200)


TABLE_EDITS: dict[str, Callable[[int], list[Edit]]] = {
    "one cell": lambda n: [SetValue((n // 2, "author"), "New")],
    "a row moved to the end": lambda n: [Move((0,), (n - 1,))],
    "a column": lambda n: [SetValue((n // 2, "space"), "upper")],
    "all in another order": lambda n: [Reorder((), tuple(reversed(range(n))))],
}


@pytest.mark.parametrize("sort", TABLE_EDITS)
def test_tables_are_edited(sort: str) -> None:
    keys = {"title": False, "author": False, "space": False, "block.pages": False}

    def work(count: int) -> Callable[[], object]:
        text, edits = TABLES["ordinary"](count).decode(), TABLE_EDITS[sort](count)

        def edit() -> None:
            assert isinstance(edit_table(text, edits, keys), str)

        return edit

    assert_linear(work, 1000)
