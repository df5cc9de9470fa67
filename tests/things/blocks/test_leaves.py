"""Leaves, piled, cut and laid on one another in code from the flats alone, and read from the first page on."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.geometry import Axis, Size
from bookmaker.ground.problems import ShelfFileError
from bookmaker.paper.stock import Stock
from bookmaker.sheets.flat import Face, FoldKind, Role
from bookmaker.things.book.blocks.block_plan import BlockPlan
from bookmaker.things.book.blocks.leaves import Leaves
from tests.kit.hands import alone, cut, open_leaf, piled
from tests.kit.papers import paper

PAGE = Size(15, 21)
EVEN = st.integers(1, 300).map(lambda leaves: 2 * leaves)
PRINTING = st.sampled_from(["both sides", "one side"])
TRIMS = st.sampled_from(["0 mm", "1 mm"])


def block(page: Size = PAGE, stock: Stock | None = None, right_to_left: bool = False, **keys: str) -> BlockPlan:
    entry = Leaves.model_validate({"stock": "page", **keys})
    return entry.plan(page, {"page": stock or paper()}, right_to_left=right_to_left)


@given(pages=EVEN, printing=PRINTING, trim=TRIMS, right_to_left=st.booleans(), width=st.floats(6, 40))
def test_the_book_can_be_read(pages: int, printing: str, trim: str, right_to_left: bool, width: float) -> None:
    made = block(Size(width, 21), right_to_left=right_to_left, pages=str(pages), printing=printing, trim=trim)
    leaves = [alone(*spot) for spot in piled(made.flats, right_to_left)]
    printed, waste = leaves[: pages // 2], leaves[pages // 2 :]
    assert not any(leaf.panels for leaf in waste)  # cells without a leaf come last
    found = [page for leaf in printed for page in open_leaf(leaf, right_to_left)]
    assert [page.panel.page if page.panel else None for page in found] == list(range(1, pages + 1))
    assert made.pages == made.panels == pages
    for number, page in enumerate(found):
        assert page.panel and page.upright and page.panel.role is Role.PAGE
        assert page.panel.rect.size == pytest.approx((width, 21))
        assert page.right_hand is ((number % 2 == 0) is not right_to_left)
        near_spine = page.panel.rect.x if page.spine < page.fore_edge else page.panel.rect.right
        assert near_spine == pytest.approx(page.spine, abs=1e-6)
        assert abs(page.fore_edge - page.spine) == pytest.approx(width + float(trim[0]))
    for recto, verso in zip(found[::2], found[1::2], strict=True):
        assert recto.panel and verso.panel
        if printing == "both sides":
            assert (recto.panel.face, verso.panel.face) == (Face.FRONT, Face.REVERSE)
            assert recto.panel.rect == verso.panel.rect
        else:
            assert recto.panel.rect.y == verso.panel.rect.y


@given(pages=EVEN, printing=PRINTING, trim=TRIMS, grain=st.sampled_from(["long", "short", "unknown"]))
def test_flats_are_few_and_fit_the_sheet(pages: int, printing: str, trim: str, grain: str) -> None:
    stock = paper(grain=grain)
    made = block(stock=stock, pages=str(pages), printing=printing, trim=trim)
    width = (15 + float(trim[0])) * (2 if printing == "one side" else 1)
    height = 21 + 2 * float(trim[0])
    most = max(int(room.width / width) * int(room.height / height) for room in stock.openings(Axis.Y))
    assert len(made.flats) == math.ceil(pages / 2 / most)
    for flat in made.flats:
        assert flat.grain is Axis.Y
        assert any(
            flat.size.width <= room.width + 1e-6 and flat.size.height <= room.height + 1e-6
            for room in stock.openings(Axis.Y)
        )
        assert all(fold.kind is FoldKind.MOUNTAIN for fold in flat.folds)
    cells = sum(len(cut(flat)) for flat in made.flats)
    assert cells - pages / 2 < len(made.flats) * max(1, math.sqrt(most))


@given(pages=EVEN, printing=PRINTING, right_to_left=st.booleans())
def test_trims_part_each_page_from_what_is_cut_off(pages: int, printing: str, right_to_left: bool) -> None:
    made = block(right_to_left=right_to_left, pages=str(pages), printing=printing, trim="1.5 mm")
    for flat in made.flats:
        for panel in flat.panels:
            shown = panel.rect
            level = [s for s in flat.trims if s.start.y == s.end.y and s.start.x <= shown.x and s.end.x >= shown.right]
            upright = [s for s in flat.trims if s.start.x == s.end.x and s.start.y <= shown.y and s.end.y >= shown.top]
            assert {shown.y, shown.top} <= {round(s.start.y, 9) for s in level}
            recto = panel.page is not None and panel.page % 2 == 1
            fore_edge_right = (recto or panel.face is Face.REVERSE) is not right_to_left
            edge = shown.right if fore_edge_right else shown.x
            assert any(s.start.x == pytest.approx(edge) for s in upright)
            assert not any(shown.x + 1e-6 < s.start.x < shown.right - 1e-6 for s in upright)
    assert block(pages=str(pages), printing=printing).flats[0].trims == ()


@pytest.mark.parametrize(
    ("keys", "thickness"),
    [
        ({"pages": "120"}, 60 * 0.08),
        ({"pages": "120", "printing": "one side"}, 60 * (0.08 + 0.02 + 0.08)),
        ({"pages": "120", "measured_thickness": "5.1 mm"}, 5.1),
    ],
)
def test_thickness_is_that_of_the_leaves(keys: dict[str, str], thickness: float) -> None:
    made = block(**keys)
    assert made.thickness.value == pytest.approx(thickness, abs=1e-9)
    assert made.pastedowns is False


@given(pages=EVEN, printing=PRINTING, microns=st.integers(40, 150))
def test_thickness_answers_to_the_caliper_as_it_says(pages: int, printing: str, microns: int) -> None:
    step = 0.001

    def made(caliper: float) -> BlockPlan:
        return block(stock=paper(caliper), pages=str(pages), printing=printing)

    at = microns / 1000
    slope = (made(at + step).thickness.value - made(at - step).thickness.value) / (2 * step)
    said = made(at).thickness.sensitivities
    assert said.pop("films of glue stick", 0) == (pages / 2 if printing == "one side" else 0)
    assert said == {"page": pytest.approx(slope, rel=1e-6)}
    two_more = block(stock=paper(at), pages=str(pages + 2), printing=printing)
    assert two_more.thickness.value - made(at).thickness.value == pytest.approx(2 * made(at).thickness_of_a_page)


def test_flats_say_that_they_are_cut_together() -> None:
    assert [flat.name for flat in block(pages="60").flats] == ["leaves"]
    names = [flat.name for flat in block(pages="400").flats]
    assert names == [f"leaves, {number} of 2 to pile and cut together" for number in (1, 2)]


def test_what_cannot_be_made_is_refused_at_once() -> None:
    with pytest.raises(ShelfFileError) as refusal:
        block(Size(120, 40), paper(0.25), pages="8", printing="one side", trim="10 mm")
    assert [(problem.field, str(problem)) for problem in refusal.value.problems] == [
        (
            ("block", "stock"),
            "a leaf folded back to back is 260 mm × 60 mm, but the A4 sheet of page has room for 195.6 mm × 269.6 mm "
            "with its grain along the folds; give page the sheet A4 and grain: short, or make it smaller",
        ),
        (
            ("block", "stock"),
            "page is 0.25 mm thick; paper over 0.2 mm cracks in a tight fold; "
            "score every fold and write scored: yes, or take a thinner paper",
        ),
    ]
    with pytest.raises(ShelfFileError) as refusal:
        block(Size(12, 30), pages="8", trim="4 mm")
    assert str(refusal.value) == (
        "a trim of 4 mm at each edge leaves too little of a page of 12 mm × 30 mm; "
        "write at most a quarter of its shorter side, 3 mm"
    )


def test_stiff_leaves_that_are_not_folded_need_no_score() -> None:
    assert block(stock=paper(0.25), pages="8").thickness.value == 1.0
    assert block(stock=paper(0.25), pages="8", printing="one side", scored="yes").pages == 8
