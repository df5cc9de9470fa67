"""The shelf from the front: everything stands where it fits, and rows cut it without losing anything."""

from __future__ import annotations

from itertools import pairwise

import pytest

from bookmaker import check
from bookmaker.ground.geometry import Rect
from bookmaker.writers.shelf_front import Front, fronts, rows_of

SHELF = """\
shelf: Front
stocks:
  page: {caliper: 80 um}
  card: {caliper: 300 um}
spaces:
  low: {width: 90 mm, height: 30 mm, depth: 25 mm}
  high: {width: 30 mm, height: 30 mm, depth: 25 mm}
defaults:
  size: {height: 20 mm, width: 14 mm}
  block: {kind: accordion, stock: page, pages: 40}
  cover: {kind: wrap, stock: card}
books:
  - {title: Tides, space: high}
  - {title: Ropes, space: low, stack: pile}
  - {title: Winds, space: low, stack: pile, block: {pages: 60}}
  - {title: Annals, volumes: 3, space: low}
  - {title: Stray}
slipcases:
  box: {books: [Annals], stock: card, clearance: 0.6 mm, space: low}
"""


@pytest.fixture(scope="module")
def seen(tmp_path_factory: pytest.TempPathFactory) -> list[Front]:
    path = tmp_path_factory.mktemp("front") / "shelf.yaml"
    path.write_text(SHELF, encoding="utf-8")
    checked = check(path)
    return list(fronts(checked.plan, checked.drafts))


def spines_in(front: Front) -> list[tuple[str, Rect, bool]]:
    shown = [one for place in front.places for one in place]
    return [(one.spine[0].owner, one.rect, one.lies) for one in shown if one.spine]


def test_every_book_is_seen_once_in_its_space(seen: list[Front]) -> None:
    assert [front.name for front in seen] == ["low", "high", ""]
    assert [[book for book, _, _ in spines_in(front)] for front in seen] == [
        ["ropes", "winds", "annals-i", "annals-ii", "annals-iii"],
        ["tides"],
        ["stray"],
    ]
    assert [(front.width, front.height) for front in seen[:2]] == [(90, 30), (30, 30)]


def test_a_stack_lies_the_first_on_top(seen: list[Front]) -> None:
    (_, first, first_lies), (_, second, second_lies), *boxed = spines_in(seen[0])
    assert first_lies
    assert second_lies
    assert (second.y, first.y) == pytest.approx((0, second.height))
    assert first.width == pytest.approx(20)
    assert not any(lies for _, _, lies in boxed)


def test_books_in_a_box_stand_within_its_card(seen: list[Front]) -> None:
    card = [one.rect for place in seen[0].places for one in place if one.spine is None]
    box = Rect.around([corner for rect in card for corner in rect.corners])
    books = [rect for _, rect, lies in spines_in(seen[0]) if not lies]
    for rect in books:
        assert box.contains(rect)
        assert not any(rect.overlaps(edge, 1e-6) for edge in card)
    assert all(one.right <= other.x for one, other in pairwise(books))
    # inside, the books have their thickness and the clearance of 0.6 mm; the card is 0.3 mm on both sides
    assert box.width == pytest.approx(sum(rect.width for rect in books) + 0.6 + 2 * 0.3)


@pytest.mark.parametrize("room", [200.0, 40.0, 21.0, 5.0])
def test_rows_lose_nothing_and_keep_to_their_room(seen: list[Front], room: float) -> None:
    for front in seen:
        rows = list(rows_of(front, room))
        assert [one for row in rows for one in row.shown] == [one for place in front.places for one in place]
        assert [row.begins for row in rows] == [True] + [False] * (len(rows) - 1)
        assert not any(row.ends for row in rows[:-1])
        for row in rows:
            assert all(row.left - 1e-9 <= one.rect.x for one in row.shown)
            assert all(one.rect.right <= row.left + row.width + 1e-9 for one in row.shown)
            assert row.width <= max(room, 20) + 1e-9  # the stack is 20 mm wide, and stays together


def test_a_space_that_fits_is_shown_to_its_end(seen: list[Front]) -> None:
    (row,) = rows_of(seen[0], 200)
    assert (row.left, row.width, row.begins, row.ends) == (0, 90, True, True)
    *_, cut = rows_of(seen[0], 40)
    assert not cut.ends or cut.left + cut.width == pytest.approx(90)
