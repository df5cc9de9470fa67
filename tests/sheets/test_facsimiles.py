"""Facsimiles of pieces: what is printed on them, upright, and nothing besides."""

from __future__ import annotations

import pytest

from bookmaker.ground.art import NOTHING, Filled
from bookmaker.ground.drawing import BLACK, WHITE, Art
from bookmaker.ground.geometry import Point, Rect, Size
from bookmaker.sheets.facsimiles import (
    facsimile_of_page,
    facsimile_of_panel,
    facsimile_of_piece,
    openings,
    side_by_side,
)
from bookmaker.sheets.flat import Face, Flat, Panel, Role
from bookmaker.sheets.piece import Piece
from tests.kit.recording import Filled as Inked
from tests.kit.recording import record

LEFT, RIGHT = Rect(0, 1, 10, 18), Rect(10, 1, 12, 18)
CORNER = Filled.box(Rect(10, 1, 3, 2))
"""A mark in the lower left corner of the right panel."""

FLAT = Flat(
    kind="leaf",
    name="leaf",
    stock="page",
    outline=(Point(0, 0), Point(22, 0), Point(22, 15), Point(17, 20), Point(0, 20)),
    folds=(),
    panels=(
        Panel(Role.PAGE, LEFT, 1),
        Panel(Role.PAGE, RIGHT, 2, head_down=True),
        Panel(Role.PAGE, LEFT, 3, face=Face.REVERSE),
    ),
    bleed=2.0,
)
PIECE = Piece("leaf-1", 0, ("Leaf", "leaf"), FLAT, CORNER, Filled.box(Rect(12, 1, 1, 1)))


def black(art: Art) -> list[Rect]:
    marks = [mark for mark in record(art).marks if isinstance(mark, Inked)]
    return [Rect.around(mark.path.points()) for mark in marks if mark.colour == BLACK]


def test_a_piece_is_as_large_as_it_is_cut_or_as_it_is_printed() -> None:
    assert facsimile_of_piece(PIECE).box == Rect(0, 0, 22, 20)
    assert facsimile_of_piece(PIECE, bleed=True).box == Rect(-2, -2, 26, 24)


def test_a_piece_lies_on_white_paper_of_its_own_outline_and_ends_there() -> None:
    paper, ink = record(facsimile_of_piece(PIECE).art).fills
    assert (paper.colour, ink.colour) == (WHITE, BLACK)
    assert paper.path.points() == FLAT.outline
    assert ink.clips == (paper.path,)


def test_the_reverse_is_seen_turned_over() -> None:
    """The corner cut off at the upper right is at the upper left then."""
    paper, _ = record(facsimile_of_piece(PIECE, Face.REVERSE).art).fills
    assert sorted(paper.path.points()) == [(0, 0), (0, 15), (5, 20), (22, 0), (22, 20)]


def test_a_panel_stands_upright_at_the_origin() -> None:
    """The mark is at the foot of the second panel, which stands on its head: it comes to its upper right corner."""
    second = facsimile_of_panel(PIECE, FLAT.panels[1])
    assert second.box == Rect(0, 0, 12, 18)
    assert black(second.art) == [Rect(9, 16, 3, 2)]


def test_a_panel_of_the_reverse_is_found_behind_its_place() -> None:
    """Behind the left panel, ten wide, is the right end of the reverse: from 12 to 22."""
    third = facsimile_of_panel(PIECE, FLAT.panels[2])
    assert third.box == Rect(0, 0, 10, 18)
    assert black(third.art) == [Rect(0, 0, 1, 1)]


OPENINGS = [[], [[1]], [[1], [2]], [[1], [2, 3]], [[1], [2, 3], [4]], [[1], [2, 3], [4, 5]]]


@pytest.mark.parametrize("right_to_left", [False, True])
@pytest.mark.parametrize(("count", "expected"), list(enumerate(OPENINGS)))
def test_a_book_opens_at_its_first_page_and_then_at_two_and_two(
    count: int, expected: list[list[int]], right_to_left: bool
) -> None:
    """Page n, 12 mm wide, has a mark n mm from its left edge."""
    pages = [facsimile_of_page(Filled.box(Rect(n, 1, 2, 2)), Size(12, 18)) for n in range(1, count + 1)]
    found = list(openings(pages, right_to_left=right_to_left))
    assert [[round(box.x) % 12 for box in black(one.art)] for one in found] == [
        pair[::-1] if right_to_left else pair for pair in expected
    ]
    assert [one.box for one in found] == [Rect(0, 0, 12 * len(pair), 18) for pair in expected]


def test_two_pages_face_each_other() -> None:
    size = Size(12, 18)
    verso, recto = (facsimile_of_page(page, size) for page in (NOTHING, Filled.box(Rect(1, 2, 3, 4))))
    spread = side_by_side([verso, recto])
    assert spread.box == Rect(0, 0, 24, 18)
    assert black(spread.art) == [Rect(13, 2, 3, 4)]
