"""One entry that stands for many books: the same every time, no title twice, each to be frozen as its own."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.shelf_file.invented.titles import titles
from bookmaker.shelf_file.invented.words import GIVEN, PATTERNS, SUBJECTS, SURNAMES, THINGS
from tests.kit.by_kind import books_of
from tests.kit.command_line import bookmaker

SHELF = """\
shelf: Wall
stocks:
  card: {caliper: 160 um}
  grey board: {caliper: 1 mm, tolerance: 3 %}
  tissue: {caliper: 60 um}
spaces:
  left: {width: 80 mm, height: 30 mm, depth: 22 mm}
defaults:
  cover: {kind: wrap, stock: card}
books:
  - title: Salt Roads   # my own
    space: left
    size: {height: 21 mm, width: 15 mm}
    block: {kind: dummy, thickness: 4 mm}
  - space: left         # the rest of it
    block: {kind: dummy, thickness: layers of grey board and tissue}
    invented: {WISH}
"""

LAYERS = "layers of grey board and tissue"

WISH = "count: 13, languages: [en, de, fr, es], styles: {cloth: 3, leather: 1}, palettes: [attic, harbour]"


def shelf(folder: Path, wish: str = WISH) -> Path:
    path = folder / "shelf.yaml"
    path.write_text(SHELF.replace("WISH", wish), encoding="utf-8")
    return path


@given(
    st.lists(st.sampled_from(SUBJECTS), min_size=1, unique=True),
    st.lists(st.sampled_from(list(PATTERNS)), min_size=1, unique=True),
    st.text(max_size=5),
)
@settings(max_examples=20, deadline=None)
def test_titles_are_unlike_and_the_first_ones_stay(subjects: list[str], languages: list[str], seed: str) -> None:
    found = list(titles(subjects, languages, seed))
    assert len(found) >= 28
    assert len({one.title.casefold() for one in found}) == len(found)
    assert found == list(titles(subjects, languages, seed))
    used = {one.title.casefold() for one in found[:4]}
    assert not used & {one.title.casefold() for one in titles(subjects, languages, seed, used)}


def test_every_language_has_all_it_needs() -> None:
    assert PATTERNS.keys() == THINGS.keys() == GIVEN.keys() == SURNAMES.keys()
    for language, patterns in PATTERNS.items():
        assert all(pattern.count("{}") == 1 for pattern in patterns)
        assert THINGS[language].keys() == set(SUBJECTS)
        assert len({*patterns}) == len(patterns)


def test_one_entry_fills_the_rest_of_a_space(tmp_path: Path) -> None:
    found = check(shelf(tmp_path))
    books = books_of(found.plan)
    assert len(books) == 14
    assert len({book.entry.title for book in books}) == 14
    assert len({round(book.block.thickness.value, 3) for book in books}) == 14, "no two alike"
    assert {book.entry.language for book in books[1:]} == {"en", "de", "fr", "es"}
    assert {book.entry.design.style for book in books[1:]} == {"cloth", "leather"}
    assert all(17 <= book.page.height <= 23 for book in books[1:])
    assert len({book.page.height for book in books}) > 6
    (space,) = found.plan.spaces
    assert 0 <= space.room_left - space.reserve < 0.2
    assert [book.id for book in books] == [book.id for book in books_of(check(shelf(tmp_path)).plan)]


def test_as_many_as_it_takes(tmp_path: Path) -> None:
    """80 mm less what is there: about fifteen of 4 mm and their covers; frozen, they are as many."""
    for wish in ("count: as many as it takes", "subjects: sea"):
        path = shelf(tmp_path, wish)
        found = check(path)
        books = books_of(found.plan)
        assert 13 <= len(books) <= 19
        thick = [book.block.thickness.value for book in books[1:]]
        assert 3.2 < sum(thick) / len(thick) < 5
        assert 0 <= found.plan.spaces[0].room_left - found.plan.spaces[0].reserve < 0.2
    assert f"{len(books) - 1} invented books written" in bookmaker("freeze", str(path)).out
    assert [book.id for book in books_of(check(path).plan)] == [book.id for book in books]


def test_as_many_as_it_takes_needs_a_space(tmp_path: Path) -> None:
    path = shelf(tmp_path, "subjects: sea")
    text = path.read_text(encoding="utf-8")
    text = text.replace("  - space: left         # the rest of it\n    block", "  - block").replace(LAYERS, "4 mm")
    path.write_text(text, encoding="utf-8")
    refused = bookmaker("check", str(path))
    assert refused.code == 2
    assert "stand in no space" in refused.err


def test_more_of_them_leave_the_first_as_they_are(tmp_path: Path) -> None:
    few = books_of(check(shelf(tmp_path)).plan)
    more = books_of(check(shelf(tmp_path, WISH.replace("13", "16"))).plan)
    assert [book.entry.title for book in more[:14]] == [book.entry.title for book in few]
    assert [book.page for book in more[:14]] == [book.page for book in few]
    assert [book.coat.design for book in more[:14]] == [book.coat.design for book in few]


def test_own_titles_and_authors_come_first(tmp_path: Path) -> None:
    wish = "count: 4, titles: [Salt Roads, Twine, Hemp], authors: [A. Fell, B. Holm], subjects: sea"
    books = books_of(check(shelf(tmp_path, wish)).plan)
    assert [book.entry.title for book in books[:3]] == ["Salt Roads", "Twine", "Hemp"], "no title twice"
    assert [book.entry.author for book in books[1:]] == ["A. Fell", "B. Holm", "A. Fell", "B. Holm"]


def test_frozen_books_are_the_same(tmp_path: Path) -> None:
    path = shelf(tmp_path)
    before = books_of(check(path).plan)
    said = bookmaker("freeze", str(path))
    assert "13 invented books written" in said.out
    text = path.read_text(encoding="utf-8")
    assert "invented" not in text
    assert "# my own" in text
    assert "# the rest of it" in text
    assert [(book.id, book.entry, book.coat) for book in books_of(check(path).plan)] == [
        (book.id, book.entry, book.coat) for book in before
    ]
    assert "nothing was changed" in bookmaker("freeze", str(path)).out
    assert "14 looks written" in bookmaker("keep", str(path)).out


def test_what_is_invented_keeps_its_look_unwritten(tmp_path: Path) -> None:
    assert "1 look written" in bookmaker("keep", str(shelf(tmp_path))).out


@pytest.mark.parametrize(
    ("wish", "said"),
    [
        ("count: 12, titles: [Fog, Rain]", "lists 2 titles for 12 books; write 10 more"),
        ("count: 0", "out of range"),
        ("count: 900", "write at most 300"),
        ("count: 3, subjects: [astronomy]", "astronomy"),
        ("count: 3, languages: tlh", "tlh"),
        ("count: 3, heights: [23 mm, 17 mm]", "not a lowest and a highest"),
        ("count: 3, styles: [corduroy]", "corduroy"),
        ("count: 3, colour: red", "colour"),
    ],
)
def test_what_cannot_be_invented_is_refused(tmp_path: Path, wish: str, said: str) -> None:
    refused = bookmaker("check", str(shelf(tmp_path, wish)))
    assert refused.code == 2
    assert said in refused.err


def test_books_are_invented_only_where_a_list_stands(tmp_path: Path) -> None:
    path = shelf(tmp_path)
    text = path.read_text(encoding="utf-8").replace("defaults:\n", "defaults:\n  invented: {count: 2}\n")
    path.write_text(text, encoding="utf-8")
    refused = bookmaker("check", str(path))
    assert refused.code == 2
    assert "has invented where it is not allowed" in refused.err
