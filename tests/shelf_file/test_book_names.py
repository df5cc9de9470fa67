"""How books and sets are named: on the shelf, in lists of the shelf file, on the command line."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.ground.problems import CommandError
from bookmaker.shelf.choice import Choice
from bookmaker.shelf.reading import read_shelf
from bookmaker.shelf_file.book_names import BookName, UnknownBook, called_in_list, find_book, find_books
from bookmaker.shelf_file.yaml_tree import parse_tree
from tests.kit.by_kind import books_of, drafts_of, slipcases_of

ANNALS = [BookName("Annals", figure, "Lights") for figure in ("I", "II", "III")]
BOOKS = [BookName("Fog"), *ANNALS, BookName("Index", "", "Lights"), BookName("Salt"), BookName("Salt"), BookName("12")]


@pytest.mark.parametrize(
    ("wanted", "found"),
    {
        "fog": (0,),
        "Annals II": (2,),
        "  annals  ii ": (2,),
        "annals": (1, 2, 3),
        "lights": (1, 2, 3, 4),
        "Index": (4,),
        "6": (5,),
        "12": (7,),
    }.items(),
)
def test_a_name_finds_a_book_or_a_whole_set(wanted: str, found: tuple[int, ...]) -> None:
    assert find_books(wanted, BOOKS) == found
    if len(found) == 1:
        assert find_book(wanted, BOOKS) == found[0]


@pytest.mark.parametrize(
    ("wanted", "said"),
    {
        "Annals": "3 books are called 'Annals'; write its name instead: Annals I or Annals II or Annals III",
        "Salt": "2 books are called 'Salt'; write its number instead: 6 or 7",
        "Anals II": "there is no book 'Anals II'; did you mean 'Annals II'?",
        "Lights": "there is no book 'Lights'; write a title, or a number from 1 to 8",
        "": "there is no book ''; write a title, or a number from 1 to 8",
    }.items(),
)
def test_one_book_is_wanted_and_the_name_is_not_of_one(wanted: str, said: str) -> None:
    with pytest.raises(UnknownBook) as unknown:
        find_book(wanted, BOOKS)
    assert f"{unknown.value.message}; {unknown.value.remedy}" == said


def test_a_title_without_a_number_is_that_book_and_no_set() -> None:
    assert find_books("Fog", [BookName("Fog", "II"), BookName("Fog"), BookName("Fog", "III")]) == (1,)


SHELF = """\
shelf: Sets
stocks:
  page: {caliper: 80 um}
  card: {caliper: 250 um}
defaults:
  size: {height: 22 mm, width: 15 mm}
  block: {kind: accordion, stock: page, pages: 40}
  cover: {kind: wrap, stock: card}
books:
  - {title: Fog}
  - {title: Annals, volumes: 3, series: Lights}
slipcases:
  box: {books: [Annals], stock: card}
measured_rows:
  - {books: [Lights], thickness: 12.6 mm}
"""


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    (tmp_path / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    return tmp_path / "shelf.yaml"


def test_sets_go_into_boxes_and_are_measured_by_their_name(shelf: Path) -> None:
    plan = check(shelf).plan
    assert slipcases_of(plan)[0].held == ("annals-i-lights", "annals-ii-lights", "annals-iii-lights")
    assert sum(books_of(plan)[number].thickness.value for number in (1, 2, 3)) == pytest.approx(12.6)


def test_volumes_are_told_apart_wherever_they_are_named(shelf: Path) -> None:
    checked = check(shelf)
    assert [book.name for book in books_of(checked.plan)] == ["Fog", "Annals I", "Annals II", "Annals III"]
    pieces = [piece for draft in drafts_of(checked) for piece in draft.pieces]
    labels = {checked.plan.labelled(piece).label[0] for piece in pieces}
    assert labels == {"1. Fog", "2. Annals I", "3. Annals II", "4. Annals III"}


def test_a_set_is_made_by_its_name_but_one_book_again(shelf: Path) -> None:
    plan = check(shelf).plan
    books = {"annals-i-lights", "annals-ii-lights", "annals-iii-lights"}
    assert Choice(only=("annals",)).of(plan).owners == books
    assert Choice(again="Annals II").of(plan).owners == {"annals-ii-lights"}
    assert Choice(only=("3",)).of(plan).owners == Choice(only=("annals-ii-lights",)).of(plan).owners
    with pytest.raises(CommandError):
        Choice(again="Annals").of(plan)


def test_a_set_twice_in_boxes_is_told(shelf: Path) -> None:
    twice = SHELF.replace("books: [Annals]", "books: [Annals, Annals II]")
    shelf.write_text(twice, encoding="utf-8")
    with pytest.raises(Exception, match="Annals II is listed twice"):
        check(shelf)
    assert read_shelf(shelf).spec.books[2].name == BookName("Annals", "II", "Lights")


@pytest.mark.parametrize(
    ("numbers", "called"),
    {
        (0,): "Fog",
        (1, 2, 3): "Annals",
        (3, 1, 2): "Annals",
        (1, 2): "Annals I, Annals II",
        (1, 2, 3, 4): "Lights",
        (0, 5, 6): "Fog, 6, 7",
        (7,): "12",
    }.items(),
)
def test_a_list_calls_books_so_that_they_are_found_again(numbers: tuple[int, ...], called: str) -> None:
    assert called_in_list(numbers, BOOKS) == called
    found = [number for name in called.split(", ") for number in find_books(name, BOOKS)]
    assert sorted(found) == sorted(numbers)


@pytest.mark.parametrize(
    "title", ["Salt, Rope", "Tides: a List", "[Sic]", "- Dash", "#1", 'The "Ark"', "null", "Back\\slash, and", "O'Fell"]
)
def test_a_title_in_a_list_stays_one_title(title: str) -> None:
    written = f"[{called_in_list([0], [BookName(title), BookName('Fog')])}]"
    assert parse_tree(written, "list.yaml").plain() == [title]
