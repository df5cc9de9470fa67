"""Pins and weights as keys: what is pinned stays, what contradicts is told, the heavy stand low."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest

from bookmaker import check
from tests.kit.arranged_rows import HEAD, ROW, book, proposal_of, write
from tests.kit.shelves import refused, written


def pinned(**pins: str) -> str:
    """The row with pins of its books, by number."""
    text = ROW
    for name, pin in pins.items():
        title = f"title: Book {name[1:]},"
        assert title in text
        text = text.replace(title, f"{title} pinned: {pin},")
    return text


def low(text: str, folder: Path) -> tuple[str, ...]:
    return proposal_of(written(text, folder)).spaces[0].things


def test_what_is_pinned_stays(tmp_path: Path) -> None:
    seen = low(pinned(b5="first", b1="last", b2="here", b3="in its space"), tmp_path)
    assert (seen[0], seen[-1], seen[2]) == ("book-5", "book-1", "book-2")
    assert sorted(seen) == [f"book-{number}" for number in range(8)]


@pytest.mark.parametrize("rule", [None, "height", "author"])
def test_pins_hold_in_any_order(tmp_path: Path, rule: str | None) -> None:
    text = pinned(b5="first", b0="beside Book 6", b7="[beside Book 6, in its space]")
    text += f"arrange: {{by: {rule}}}\n" if rule else ""
    seen = low(text, tmp_path)
    assert seen[0] == "book-5"
    at = [seen.index(f"book-{number}") for number in (0, 6, 7)]
    assert at in ([at[0], at[0] + 1, at[0] + 2], [at[0], at[0] - 1, at[0] - 2])


def test_a_pinned_order_is_written_and_stays(tmp_path: Path) -> None:
    path = written(pinned(b4="first", b6="beside Book 1"), tmp_path)
    proposal = proposal_of(path)
    write(path, proposal)
    assert next(fit for fit in check(path).plan.spaces if fit.name == "low").things == proposal.spaces[0].things
    again = proposal_of(path)
    assert again.spaces[0].things == proposal.spaces[0].things


@pytest.mark.parametrize(
    ("pins", "said"),
    [
        ({"b1": "[first, last]"}, "is pinned both first and last; write one of the two"),
        (
            {"b1": "top"},
            "top is not a place to pin a book to; write first, last, here, in its space, or beside",
        ),
        ({"b1": "first", "b2": "first"}, "Book 1 and Book 2 are both pinned first in low; leave that to one of them"),
        ({"b1": "beside Book 1"}, "Book 1 is pinned beside itself; write another title"),
        ({"b1": "beside Buck 2"}, "did you mean 'Book 2'?"),
        (
            {"b1": "beside Book 2", "b3": "beside Book 2", "b4": "beside Book 2"},
            "Book 2 is to stand beside 3 others: Book 1, Book 3, Book 4; only two can stand beside a book",
        ),
        (
            {"b1": "[first, beside Book 2]", "b3": "beside Book 1"},
            "Book 1 is pinned first, and two others are to stand beside it; take one of these pins away",
        ),
        (
            {"b1": "beside Book 2", "b2": "beside Book 3", "b3": "beside Book 1"},
            "Book 1, Book 2, Book 3 are pinned beside one another all around: a row has two ends",
        ),
    ],
)
def test_pins_that_contradict_each_other_are_told(tmp_path: Path, pins: dict[str, str], said: str) -> None:
    assert said in "\n".join(refused(pinned(**pins), tmp_path))


def test_what_is_pinned_across_spaces_is_told(tmp_path: Path) -> None:
    text = pinned(b1="beside Far").replace("  # about Book 0", book("Far", 18, 3, space="high") + "  # about Book 0")
    assert "Book 1 is pinned beside Far, which stands in high; write the same space for both" in "\n".join(
        refused(text, tmp_path)
    )
    nowhere = book("Alone", 18, 3, space=None).replace("title: Alone,", "title: Alone, pinned: here,")
    assert "Alone is pinned here, but stands in no space" in "\n".join(refused(HEAD + nowhere, tmp_path))


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ("colour: 101", "101 is not a weight; write a number from 0 to 100"),
        ("style: much", "much is not a weight"),
        ("by: hight", "'hight'"),
        ("colours: together", "'together'"),
    ],
)
def test_what_cannot_be_weighed_is_told(tmp_path: Path, keys: str, said: str) -> None:
    assert said in "\n".join(refused(f"{ROW}arrange: {{{keys}}}\n", tmp_path))


def test_weights_in_the_file_are_those_of_the_order(tmp_path: Path) -> None:
    """Only heights count: so many stairs and saw-teeth, at 3 each."""
    path = written(f"{ROW}arrange: {{colour: 0, thickness: 0, style: 0, rhythm: 3}}\n", tmp_path)
    (row, _) = proposal_of(path).spaces
    assert row.before
    assert row.before % 3 == row.after % 3 == 0
    assert row.after < row.before


def test_a_gradient_is_the_shortest_way_through_the_colours(tmp_path: Path) -> None:
    shades = ("#000000", "#ffffff", "#333333", "#cccccc", "#666666", "#999999")
    books = "".join(book(f"Grey {number}", 20, 3, shade) for number, shade in enumerate(shades))
    path = written(f"{HEAD}{books}arrange: {{colours: gradient, rhythm: 0}}\n", tmp_path)
    seen = [int(shades[int(id[-1])][1:3], 16) for id in proposal_of(path).spaces[0].things]
    assert seen in (sorted(seen), sorted(seen, reverse=True))


def test_authors_go_by_their_surnames(tmp_path: Path) -> None:
    authors = ("Ida Marrow", "J. van der Alm", "The Lamp Committee", "Zoe Bell")
    books = "".join(
        book(f"Book {number}", 20, 3).replace(f"title: Book {number},", f"title: Book {number}, author: {author},")
        for number, author in enumerate(authors)
    )
    path = written(HEAD + books + book("No One", 20, 3) + "arrange: {by: author}\n", tmp_path)
    seen = [check(path).plan.plans[id].filed_under for id in proposal_of(path).spaces[0].things]
    assert seen == [
        "Bell Zoe Bell",
        "Marrow Ida Marrow",
        "The Lamp Committee The Lamp Committee",
        "van der Alm J. van der Alm",
        "",
    ]


def test_the_heavy_stand_low_and_sets_together(tmp_path: Path) -> None:
    """Two spaces alike: the upper is listed first; each takes four."""
    head = HEAD.replace("60 mm, height: 30", "19 mm, height: 30").replace("40 mm, height: 20", "19 mm, height: 30")
    books = "".join(book(f"Book {number}", 16 + number, 4, space=None) for number in range(4))
    sets = "".join(
        book(f"Set {number}", 26, 4, space=None).replace(f"title: Set {number},", f"title: Set {number}, series: Pair,")
        for number in range(2)
    )
    proposal = proposal_of(written(head + books + sets + book("Thin", 15, 4, space=None), tmp_path))
    assert not proposal.left_over
    plans = check(tmp_path / "shelf.yaml").plan.plans
    upper, lower = ([plans[id].name for id in one.things] for one in proposal.spaces)
    assert any(pair in (("Set 0", "Set 1"), ("Set 1", "Set 0")) for pair in pairwise(lower))
    assert "Thin" in upper


def test_what_leans_stays_with_what_it_leans_on_and_slipcases_with_their_books(tmp_path: Path) -> None:
    text = ROW.replace("title: Book 4,", "title: Book 4, pinned: beside Book 7, stands: {lean: 15 degrees},")
    text = text.replace("width: 60 mm", "width: 90 mm")
    text += "slipcases:\n  pair: {books: [Book 1, Book 6], stock: card}\n"
    path = written(text, tmp_path)
    proposal = proposal_of(path)
    seen = proposal.spaces[0].things
    assert seen[seen.index("book-4") - 1] == "book-3"
    assert "book-7" in (seen[seen.index("book-4") + 1], seen[seen.index("book-3") - 1])
    assert "slipcase-pair" in seen
    assert "book-1" not in seen
    write(path, proposal)
    assert next(fit for fit in check(path).plan.spaces if fit.name == "low").things == seen
