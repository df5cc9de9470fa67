"""Newspapers and sheet music: pages imposed, sheets in one another and folded, their edges even, text in columns."""

from __future__ import annotations

from itertools import combinations, pairwise
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.ground.geometry import Size
from bookmaker.ground.problems import ShelfFileError
from bookmaker.sheets.flat import Face, Role
from bookmaker.things.papers.chains import ONE_PANEL, zigzag
from bookmaker.things.papers.folding import Cell, FoldedSheet
from bookmaker.things.papers.folio import folio_leaves, imposed
from bookmaker.things.papers.net import panel_name
from tests.kit.papers_folded import poses_of, slabs_of
from tests.kit.recording import ink_box, record
from tests.kit.shelves import written
from tests.kit.slabs import Slab, overlap

calipers = st.floats(0.05, 0.12)


def sheets_of(pages: int, caliper: float, *, again: bool) -> list[FoldedSheet]:
    leaves = folio_leaves("paper", Size(30, 40), pages, caliper, zigzag(2) if again else ONE_PANEL)
    return [leaf.folded for leaf in leaves if leaf.folded]


def packed(sheets: list[FoldedSheet]) -> list[tuple[int, str, Slab]]:
    """The panels of all sheets in one packet: each sheet a caliper inside the one around it, their right edges even."""
    found = []
    for number, sheet in enumerate(sheets):
        right = sheet.size.width
        for name, slab in slabs_of(sheet).items():
            found.append((number, name, slab.moved(-right, 0, -number * sheet.caliper)))
    return found


@settings(max_examples=6, deadline=None)
@given(caliper=calipers, pages=st.sampled_from([4, 8, 12]), again=st.booleans())
def test_sheets_lie_in_one_another_and_touch_nowhere(caliper: float, pages: int, again: bool) -> None:
    parts = packed(sheets_of(pages, caliper, again=again))
    panels = [(number, slab) for number, name, slab in parts if name.startswith("panel")]
    for (one, a), (other, b) in combinations(panels, 2):
        if one != other:
            assert overlap(a, b) < 1e-6


@settings(max_examples=6, deadline=None)
@given(caliper=calipers, pages=st.sampled_from([8, 12, 16]))
def test_the_edges_of_all_sheets_lie_even_and_the_outer_ones_are_wider(caliper: float, pages: int) -> None:
    sheets = sheets_of(pages, caliper, again=False)
    ends = [float(slab.corners[:, 0].max()) for _, name, slab in packed(sheets) if name.startswith("panel")]
    assert ends == pytest.approx([0.0] * len(ends), abs=1e-6)
    widths = [sheet.size.width for sheet in sheets]
    assert [one - other for one, other in pairwise(widths)] == pytest.approx([4 * caliper] * (len(widths) - 1))


@pytest.mark.parametrize("pages", [4, 8, 12, 16])
def test_folded_the_pages_are_read_in_order(pages: int) -> None:
    """From the outside of the front page inwards: 1, 2, 3 …, each panel with its two faces, down to the last page."""
    caliper = 0.1
    order = []
    for number, sheet in enumerate(sheets_of(pages, caliper, again=False)):
        poses = poses_of(sheet)
        for column in (1, 0):
            cell = Cell(0, column)
            pose = poses[panel_name(cell)]
            height = pose.of(sheet.rect(cell).centre).z - number * caliper
            front = imposed(number, pages, Face.FRONT)[column]
            behind = imposed(number, pages, Face.REVERSE)[1 - column]
            for face, page in ((1, front), (-1, behind)):
                order.append((-(height + face * float(np.sign(pose.z.z)) * caliper / 4), page))
    assert [page for _, page in sorted(order)] == list(range(1, pages + 1))


SHELF = """\
shelf: The Keeper's Table
stocks:
  news: {caliper: 60 um, grain: long}
things:
  - id: gazette
    kind: newspaper
    title: The Gazette
    stock: news
    pages: 8
    motto: Wind and weather
    dateline: No. 7; Tuesday; One penny
    headlines: [Lamp Holds, Boat Late, Oil Dear]
    front: {inside: {kind: text, file: story.txt, size: 1.6 pt}, columns: 4}
    rest: {columns: 5}
  - id: waltz
    kind: sheet music
    title: The Skerry Waltz
    stock: news
    front: {text: The Skerry Waltz}
"""
STORY = "The gale went round to the north and the lamp held through the night.\n\n" * 40


def shelf(folder: Path, text: str = SHELF) -> Path:
    path = written(text, folder)
    (folder / "story.txt").write_text(STORY, encoding="utf-8")
    return path


def texts_on(folder: Path, text: str = SHELF) -> list[tuple[list[tuple[float, str]], ...]]:
    """Every line of text on front and reverse of each sheet of the newspaper, with its x."""
    found = []
    for piece in check(shelf(folder, text)).drafts["gazette"].pieces:
        sides = [[(ink_box(text).x, text.text) for text in record(art).texts] for art in (piece.art, piece.reverse)]
        found.append(tuple(sides))
    return found


def test_the_text_goes_through_the_columns_of_the_front_page_and_no_further(tmp_path: Path) -> None:
    outer, inner = texts_on(tmp_path)
    front, reverse = outer
    stories = [(x, line) for x, line in front if "lamp held" in line or "The gale" in line]
    assert stories
    assert min(x for x, _ in stories) > 600 / 12  # the front page is the right one
    assert not any("lamp held" in line for side in (reverse, *inner) for _, line in side)
    assert any(line == "The Gazette" for _, line in front)
    for numbers, side in (("27", reverse), ("63", inner[0]), ("45", inner[1])):
        assert {*numbers} <= {line for _, line in side}
    assert {"Lamp Holds", "Boat Late", "One penny", "Wind and weather"} <= {line for _, line in front}


def test_columns_keep_apart(tmp_path: Path) -> None:
    outer, _ = texts_on(tmp_path)
    lefts = sorted({round(x, 1) for x, line in outer[0] if len(line) > 12 and x > 600 / 12})
    assert len(lefts) >= 4


@pytest.mark.parametrize(
    ("right", "wrong", "told"),
    [
        ("pages: 8", "pages: 6", "6 is not a multiple of 4, but a folded sheet has four pages; write 4, 8, 12 or 16"),
        (
            "pages: 8",
            "pages: 8\n    fold: {kind: gate}",
            "a newspaper cannot be folded as a gate; write half or letter",
        ),
        ("columns: 4", "columns: 40", "40 is out of range"),
    ],
)
def test_what_cannot_be_imposed_is_said(tmp_path: Path, right: str, wrong: str, told: str) -> None:
    with pytest.raises(ShelfFileError) as caught:
        check(shelf(tmp_path, SHELF.replace(right, wrong)))
    assert any(told in str(problem) for problem in caught.value.problems), [str(one) for one in caught.value.problems]


def test_sheet_music_has_its_title_in_front_and_notes_behind(tmp_path: Path) -> None:
    (piece,) = check(shelf(tmp_path)).drafts["waltz"].pieces
    front, reverse = record(piece.art), record(piece.reverse)
    assert any("Waltz" in text.text for text in front.texts)
    assert not reverse.texts
    assert len(reverse.strokes) >= 4  # staves and stems of two pages


def test_what_is_seen_of_a_newspaper_is_its_first_page(tmp_path: Path) -> None:
    draft = check(shelf(tmp_path)).drafts["gazette"]
    assert {str(role) for role in draft.faces} == {"front", "back"}
    assert "One penny" in {text.text for text in record(draft.faces[Role.FRONT].art).texts}
