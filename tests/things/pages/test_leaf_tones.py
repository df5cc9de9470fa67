"""Ends that are printed, and leaves that have browned."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.ground.art import NOTHING, Group
from bookmaker.ground.drawing import Art, Colour, luminance
from bookmaker.ground.geometry import Rect, Size
from bookmaker.sheets.flat import Face, Role
from bookmaker.things.book.covers.case.bare_parts import endpapers
from bookmaker.things.book.drafting import draft_book
from bookmaker.things.book.leaf_tones import AS_PAPER, Browned, LeafTones, browned_pages, ends_art
from bookmaker.things.draft import Draft
from tests.kit.by_kind import books_of
from tests.kit.recording import Filled, record
from tests.kit.shelves import checked

PAGE = Rect(0.0, 0.0, 15.0, 21.0)

SHELF = """
shelf: Ends
printer: {sheet: A4}
stocks:
  paper: {caliper: 0.08 mm}
  cover paper: {caliper: 0.12 mm}
  cloth: {caliper: 0.15 mm}
  board: {caliper: 0.8 mm}
books:
  - title: Salt
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: paper, pages: 8, flyleaves: 2}
    cover: COVER
    inside: {kind: blank}
    TONES
"""
WRAP = "{kind: wrap, stock: cover paper}"


def ends(kind: str, **keys: str) -> list[Filled]:
    """What is filled on the first endpaper of a case."""
    flat = next(iter(endpapers(Size(15, 21), "paper", right_to_left=False)))
    art = ends_art(LeafTones.model_validate({"ends": kind, **keys}), flat, Face.FRONT, "library", 7)
    return [mark for mark in record(art).marks if isinstance(mark, Filled)]


@pytest.mark.parametrize("kind", ["toned", "printed", "marbled"])
def test_ends_cover_pastedown_and_flyleaf_in_one(kind: str) -> None:
    ground, *over = ends(kind)
    assert Rect.around(ground.path.points()) == Rect(0, 0, 30.0, 21.0)
    assert bool(over) is (kind != "toned")
    assert all(mark.clips for mark in over)


def test_ends_have_the_colour_that_was_named() -> None:
    assert ends("toned", ends_colour="#336699")[0].colour == pytest.approx((0.2, 0.4, 0.6))


def test_leaves_as_the_paper_is_are_not_touched() -> None:
    flat = next(iter(endpapers(Size(15, 21), "paper", right_to_left=False)))
    assert ends_art(AS_PAPER, flat, Face.FRONT, "library", 7) is NOTHING
    pages = (NOTHING, Group((NOTHING,)))
    assert browned_pages(AS_PAPER.browning(1900), pages, PAGE, 0.0, "x") == pages


@pytest.mark.parametrize("browned", ["light", "heavy"])
@pytest.mark.parametrize("right_to_left", [False, True])
@pytest.mark.parametrize("number", [1, 2])
def test_leaves_are_darkest_at_head_tail_and_fore_edge(browned: Browned, right_to_left: bool, number: int) -> None:
    """Every step lies within the one before, touches the spine, and is paler; a trimmed leaf is inked beyond."""
    art = browned_pages(browned, (NOTHING, NOTHING), PAGE, 2.0, "x", right_to_left=right_to_left)[number - 1]
    steps = [mark for mark in record(art).marks if isinstance(mark, Filled)][:12]
    boxes = [Rect.around(mark.path.points()) for mark in steps]
    spine_on_left = (number == 1) is not right_to_left
    for outer, inner in pairwise(boxes):
        assert outer.contains(inner)
        assert inner.height < outer.height
    assert {box.x if spine_on_left else box.right for box in boxes} == {0.0 if spine_on_left else 15.0}
    assert boxes[0].height == 25.0
    tones_of = [luminance(mark.colour) for mark in steps]
    assert tones_of == sorted(tones_of)
    assert tones_of[0] > 0.45  # ink on the darkest has still ten times its luminance


@pytest.mark.parametrize(
    ("cover", "printed"),
    [
        (WRAP, {"strip"}),
        ("{kind: case, stock: cloth, boards: board, endpapers: paper}", {"strip", "endpaper"}),
    ],
)
def test_a_book_has_the_ends_it_asks_for_wherever_it_has_pastedowns(
    cover: str, printed: set[str], tmp_path: Path
) -> None:
    shelf = tmp_path / "shelf.yaml"
    shelf.write_text(SHELF.replace("COVER", cover).replace("TONES", "leaf_tones: {ends: toned}"), encoding="utf-8")
    made = check(shelf)
    (book,) = books_of(made.plan)
    draft = draft_book(book)
    toned = {
        piece.flat.kind
        for piece in draft.pieces
        if any(panel.role is Role.PASTEDOWN for panel in piece.flat.panels) and piece.art is not NOTHING
    }
    assert toned == printed


@pytest.mark.parametrize(("date", "as_if"), [("", "none"), ("1832", "light"), ("May 1907", "heavy"), ("2004", "none")])
def test_leaves_brown_by_the_date_of_the_book(tmp_path: Path, date: str, as_if: str) -> None:
    """A book without a date, and one on paper made to last, are white."""
    by_age = draft_with(tmp_path, f'date: "{date}"\n    leaf_tones: {{browned: by age}}')
    asked = draft_with(tmp_path, f"leaf_tones: {{browned: {as_if}}}")
    assert [grounds(page.art) for page in by_age.pages] == [grounds(page.art) for page in asked.pages]
    assert by_age.head and asked.head
    assert by_age.head.leaves == asked.head.leaves


def draft_with(folder: Path, keys: str) -> Draft:
    text = SHELF.replace("COVER", WRAP).replace("TONES", keys.removeprefix('date: ""\n    '))
    (draft,) = checked(text, folder).drafts.values()
    return draft


def grounds(page: Art) -> list[Colour]:
    return [fill.colour for fill in record(page).fills if len([*fill.path.points()]) == 4]
