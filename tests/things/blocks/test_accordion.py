"""Laws of the accordion's strips, from the plan's flats; test_refolding.py folds what is written to plan.json."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.geometry import Size
from bookmaker.ground.problems import ShelfFileError
from bookmaker.sheets.flat import FoldKind, Role
from bookmaker.things.book.blocks.accordion import Accordion, balance
from tests.kit.papers import paper

EVEN = st.integers(1, 300).map(lambda leaves: 2 * leaves)


JOINTS = ["back to back", "hinge tab"]


@given(panels=EVEN, capacity=st.integers(2, 61))
def test_strips_are_even_within_capacity_few_and_alike(panels: int, capacity: int) -> None:
    strips = balance(panels, capacity)
    assert sum(strips) == panels
    assert all(strip % 2 == 0 and 0 < strip <= capacity for strip in strips)
    assert max(strips) - min(strips) <= 2
    assert len(strips) == math.ceil(panels / (capacity - capacity % 2))


@given(
    pages=EVEN,
    flyleaves=st.sampled_from([0, 2, 4]),
    width=st.floats(6, 60),
    grain=st.sampled_from(["long", "short", "unknown"]),
    right_to_left=st.booleans(),
)
def test_folds_alternate_and_panels_tile_the_strip(
    pages: int, flyleaves: int, width: float, grain: str, right_to_left: bool
) -> None:
    entry = Accordion.model_validate({"stock": "page", "pages": str(pages), "flyleaves": str(flyleaves)})
    block = entry.plan(
        Size(width, 21), {"page": paper("75 um", glue="15 um", grain=grain)}, right_to_left=right_to_left
    )
    assert block.panels == pages + 2 + 2 * flyleaves == sum(len(flat.panels) for flat in block.flats)
    kinds: list[FoldKind] = []
    roles: list[Role] = []
    for flat in block.flats:
        assert len(flat.folds) == len(flat.panels) - 1
        assert math.isclose(flat.size.width, len(flat.panels) * width)
        panels = sorted(flat.panels, key=lambda panel: panel.rect.x, reverse=right_to_left)
        folds = sorted(flat.folds, key=lambda fold: fold.start.x, reverse=right_to_left)
        for panel, (number, fold) in zip(panels, enumerate(folds, start=1), strict=False):
            edge = panel.rect.x if right_to_left else panel.rect.right
            assert math.isclose(fold.start.x, edge, abs_tol=1e-9) and fold.start.x == fold.end.x
            assert math.isclose(edge, width * (len(panels) - number if right_to_left else number), abs_tol=1e-9)
        assert sorted((panel.rect.x for panel in panels), reverse=right_to_left) == [p.rect.x for p in panels]
        kinds += [fold.kind for fold in folds]
        kinds.append(FoldKind.MOUNTAIN)  # strips meet back to back where a mountain would be
        roles += [panel.role for panel in panels]
    assert kinds[:-1] == [FoldKind.VALLEY, FoldKind.MOUNTAIN] * (block.panels // 2 - 1) + [FoldKind.VALLEY]
    blank = [Role.FLYLEAF] * flyleaves
    assert roles == [Role.PASTEDOWN, *blank, *[Role.PAGE] * pages, *blank, Role.PASTEDOWN]


@given(pages=EVEN, longest=st.integers(2, 10).map(lambda pairs: 2 * pairs), joint=st.sampled_from(JOINTS))
def test_no_strip_is_longer_than_the_longest_or_than_the_sheet_holds(pages: int, longest: int, joint: str) -> None:
    written = {"stock": "page", "pages": str(pages), "longest_strip": str(longest), "joint": joint}
    block = Accordion.model_validate(written).plan(
        Size(15, 21), {"page": paper("75 um", glue="15 um")}, right_to_left=False
    )
    panels = [sum(panel.role is not Role.TAB for panel in flat.panels) for flat in block.flats]
    assert sum(panels) == pages + 2
    assert max(panels) <= min(longest, 13)  # A4 with 5 mm margins and the marks has room for 13 panels of 15 mm
    if joint == "back to back":
        assert len(panels) == math.ceil((pages + 2) / min(longest, 12))


@given(pages=EVEN, microns=st.integers(40, 300), flyleaves=st.sampled_from([0, 2]))
def test_two_more_pages_add_two_sheets_and_one_film(pages: int, microns: int, flyleaves: int) -> None:
    def thickness(count: int) -> float:
        written = {"stock": "page", "pages": str(count), "flyleaves": str(flyleaves), "scored": "yes"}
        entry = Accordion.model_validate(written)
        stocks = {"page": paper(f"{microns} um", glue="15 um")}
        return entry.plan(Size(15, 21), stocks, right_to_left=False).thickness.value

    assert math.isclose(thickness(pages + 2) - thickness(pages), 2 * microns / 1000 + 0.015, abs_tol=1e-8)


def test_stiff_paper_and_a_page_too_wide_are_refused_together() -> None:
    entry = Accordion.model_validate({"stock": "page", "pages": "8"})
    with pytest.raises(ShelfFileError) as refusal:
        entry.plan(Size(120, 21), {"page": paper("0.3 mm", glue="15 um")}, right_to_left=False)
    assert [str(problem) for problem in refusal.value.problems] == [
        "page is 0.3 mm thick; paper over 0.2 mm cracks in a tight fold; "
        "score every fold and write scored: yes, or take a thinner paper",
        "a strip of two pages is 240 mm × 21 mm, but the A4 sheet of page has room for 195.6 mm × 269.6 mm with its "
        "grain along the folds; give page the sheet letter and grain: short, or make it smaller",
    ]
