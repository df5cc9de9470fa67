"""Ids outlive insertion, removal and reordering: what was not touched keeps its id and its pieces."""

from __future__ import annotations

from pathlib import Path
from random import Random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bookmaker import check
from tests.kit.recording import record

HEAD = """\
shelf: The Weigh House
stocks:
  page: {caliper: 90 um, grain: long}
  cover: {caliper: 160 um, grain: long}
spaces:
  wall: {width: 200 mm, height: 30 mm, depth: 20 mm}
books:
"""


def book(title: str, height: int = 20, author: str = "", pages: int = 16) -> str:
    """A book on one line of the list."""
    by = f", author: {author}" if author else ""
    return (
        f"  - {{title: {title}{by}, size: {{height: {height} mm, width: 12 mm}}, space: wall, "
        f"block: {{kind: accordion, stock: page, pages: {pages}}}, cover: {{kind: wrap, stock: cover}}, "
        f"design: {{colour: '#446644'}}}}\n"
    )


BOOKS = [
    book("Sacks"),
    book("Barrels", author="O. Quay"),
    book("Barrels", author="P. Steel"),
    book("Ropes", pages=24),
    book("Ropes", pages=32),
    book("Nails", height=18),
]


def shelved(folder: Path, books: list[str]) -> dict[str, list[tuple[str, object]]]:
    """The pieces of each thing by its id: their ids, and what is printed on them."""
    path = folder / "shelf.yaml"
    path.write_text(HEAD + "".join(books), encoding="utf-8")
    return {
        id: [(piece.id, record(piece.art).marks) for piece in draft.pieces] for id, draft in check(path).drafts.items()
    }


@given(st.permutations(range(len(BOOKS))), st.integers(0, 10**6))
@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_what_was_not_touched_keeps_its_id_and_its_pieces(
    tmp_path_factory: pytest.TempPathFactory, order: list[int], seed: int
) -> None:
    folder, chance = tmp_path_factory.mktemp("ids"), Random(seed)
    before = shelved(folder, BOOKS)
    books = [BOOKS[number] for number in order]
    for number in range(chance.randint(1, 3)):
        books.insert(chance.randrange(len(books) + 1), book(f"Weights {number}", height=chance.choice([17, 22])))
    after = shelved(folder, books)
    assert {id: after[id] for id in before} == before
    assert len(after) == len(books)


def test_of_two_books_with_one_title_the_right_one_is_blamed(tmp_path: Path) -> None:
    path = tmp_path / "shelf.yaml"
    path.write_text(HEAD + book("Sacks", height=10) + book("Sacks", height=40), encoding="utf-8")
    (told,) = [problem for problem in check(path).problems if "too tall" in str(problem) or "high" in str(problem)]
    assert told.place is not None
    assert told.place.line == 9, "the second of the two stands out"
    path.write_text(HEAD + book("Sacks", height=40) + book("Sacks", height=10), encoding="utf-8")
    (told,) = [problem for problem in check(path).problems if "too tall" in str(problem) or "high" in str(problem)]
    assert told.place is not None
    assert told.place.line == 8, "now it is the first"


def test_an_id_may_be_written(tmp_path: Path) -> None:
    named = BOOKS[0].replace("title: Sacks", "title: Sacks, id: my-sacks")
    before, after = shelved(tmp_path, [named]), shelved(tmp_path, [named.replace("title: Sacks", "title: Bags")])
    assert [*before] == [*after] == ["my-sacks"]
