"""A space as it looks: every spine in its place, the whole front no more than its places together."""

from __future__ import annotations

import numpy as np
import pytest

from bookmaker import check
from bookmaker.ground.geometry import Point, Rect
from bookmaker.writers.shelf_art import TIMBER, facsimile_of_front, facsimile_of_shown, row_art
from bookmaker.writers.shelf_front import Front, fronts, rows_of
from bookmaker.writers.svg import svg_picture
from tests.kit.pixels import apart, svg_pixels
from tests.kit.recording import record

SHELF = """\
shelf: Art
stocks:
  page: {caliper: 80 um}
  card: {caliper: 300 um}
spaces:
  plank: {width: 60 mm, height: 24 mm, depth: 25 mm}
defaults:
  space: plank
  size: {height: 20 mm, width: 14 mm}
  block: {kind: accordion, stock: page, pages: 40}
  cover: {kind: wrap, stock: card}
  design: {style: cloth, wear: none}
books:
  - {title: Tides}
  - {title: Ropes, stack: pile}
  - {title: Winds, stack: pile, block: {pages: 60}}
"""


@pytest.fixture(scope="module")
def front(tmp_path_factory: pytest.TempPathFactory) -> Front:
    path = tmp_path_factory.mktemp("art") / "shelf.yaml"
    path.write_text(SHELF, encoding="utf-8")
    checked = check(path)
    (found,) = fronts(checked.plan, checked.drafts)
    return found


def test_the_front_has_its_space_with_board_and_uprights(front: Front) -> None:
    assert facsimile_of_front(front).box == pytest.approx(Rect(-TIMBER, -TIMBER, 60 + 2 * TIMBER, 24 + 2 * TIMBER))


def test_the_front_is_the_same_picture_as_svg_and_as_pdf(front: Front) -> None:
    seen = facsimile_of_front(front)
    assert apart(seen.art, seen.box, 1016.0, 2.0).max() <= 40


def test_every_place_looks_alone_as_it_looks_on_the_shelf(front: Front) -> None:
    whole = facsimile_of_front(front)
    for place in front.places:
        for shown in place:
            alone = facsimile_of_shown(shown)
            assert alone.box.size == pytest.approx(shown.rect.size)
            own = svg_pixels(svg_picture(alone.art, alone.box), 508.0, 20.0, alone.box)
            there = svg_pixels(svg_picture(whole.art, shown.rect), 508.0, 20.0, shown.rect)
            # the same part of the same picture: threads and bars of shade, finer than the pixels, fall alike
            assert np.abs(own - there).mean() < 6


def test_behind_the_heads_of_what_stands_are_its_leaves_and_behind_what_lies_are_none(front: Front) -> None:
    whole, (tides, *pile) = facsimile_of_front(front), [shown for place in front.places for shown in place]
    over = Rect(tides.rect.centre.x - 0.3, tides.rect.top + 0.1, 0.6, 0.15)
    beside = over.moved(30.0, 0.0)
    leaves, recess = (svg_pixels(svg_picture(whole.art, seen), 508.0, 20.0, seen).mean() for seen in (over, beside))
    assert leaves > recess + 60
    assert tides.head
    assert not any(shown.head for shown in pile)


def test_a_row_that_goes_on_elsewhere_is_torn_off_and_ends_straight_where_it_ends(front: Front) -> None:
    (whole,), (first, second) = rows_of(front, 60.0), rows_of(front, 20.0)
    for row, torn_left, torn_right in ((whole, False, False), (first, False, True), (second, True, True)):
        boards, *_ = record(row_art(row, 1.0, Point(0, 0))).fills
        points = list(boards.path.points())
        left = [-point.x for point in points if point.x < row.width / 2]
        right = [point.x - row.width for point in points if point.x > row.width / 2]
        for torn, beyond in ((torn_left, left), (torn_right, right)):
            assert min(beyond) >= 0  # nothing of the row is torn away
            assert len(set(beyond)) > 5 if torn else max(beyond) == min(beyond) == pytest.approx(TIMBER)
