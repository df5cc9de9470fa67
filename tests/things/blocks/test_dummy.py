"""Dummy blocks: the edge strip, folded here around the cut block, covers its three edges; slips are refused."""

from __future__ import annotations

from itertools import pairwise
from math import cos, isclose, pi, sin
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.ground.geometry import Axis, Size
from bookmaker.ground.problems import ShelfFileError
from bookmaker.paper.stock import Stock
from bookmaker.sheets.flat import Flat, FoldKind, Role
from bookmaker.things.book.blocks.block_plan import BlockPlan
from bookmaker.things.book.blocks.dummy import Dummy
from tests.kit.papers import paper
from tests.kit.shelves import made

PAPER = paper("100 um", name="laid", sheet="A3", glue="30 um")

SHELF = """\
shelf: The Dummy Room
stocks:
  laid: {caliper: 100 um, glue: 30 um, grain: long}
  card: {caliper: 160 um, film: 50 um, grain: long}
spaces:
  upper: {width: 60 mm, height: 27 mm, depth: 22 mm}
books:
  - title: The Wooden Sea
    size: {height: 21 mm, width: 15 mm}
    block: {kind: dummy, thickness: 4 mm, edges: lines, edge_stock: laid}
    cover: {kind: wrap, stock: card}
    space: upper
"""


def dummy(page: Size, stock: Stock, **keys: str) -> BlockPlan:
    written = {"kind": "dummy", "thickness": "4 mm", "edges": "lines", "edge_stock": "laid", **keys}
    return Dummy.model_validate(written).plan(page, {"laid": stock}, right_to_left=False)


def around_the_block(flat: Flat, along: float, caliper: float, height: float) -> tuple[tuple[float, float], ...]:
    """Where the inner and the outer face of the folded strip lie, `along` mm from its first end.

    The strip is laid against the fore-edge, its middle in the middle, so that the inner corners of its two folds lie
    where the back ends: at half the distance between the folds, less half the arc that each scored right angle
    takes up in the middle of the paper. x runs from the spine (0 is where a leg ends that fits), y up.
    """
    first, second = (fold.start.x for fold in flat.folds)
    arc = pi / 2 * caliper / 2
    back, leg = second - first - arc, first - arc / 2
    corner_y = back / 2
    assert isclose(corner_y * 2, height, abs_tol=0.01)
    mirrored = along > flat.size.width / 2
    s = flat.size.width - along if mirrored else along
    if s <= leg:
        inner, outward = (s, corner_y), (0.0, 1.0)
    elif s <= leg + arc:
        angle = (s - leg) / arc * pi / 2
        inner, outward = (leg, corner_y), (sin(angle), cos(angle))
    else:
        inner, outward = (leg, corner_y - (s - leg - arc)), (1.0, 0.0)
    flip = -1 if mirrored else 1
    outer = (inner[0] + outward[0] * caliper, inner[1] + outward[1] * caliper)
    return (inner[0], inner[1] * flip), (outer[0], outer[1] * flip)


@given(
    width=st.floats(4, 60),
    height=st.floats(4, 80),
    caliper=st.integers(40, 250),
    film=st.integers(0, 60),
    glue=st.integers(0, 75),
    samples=st.lists(st.floats(0, 1), max_size=10),
)
def test_the_folded_strip_covers_the_three_edges(
    width: float, height: float, caliper: int, film: int, glue: int, samples: list[float]
) -> None:
    stock = paper(f"{caliper} um", name="laid", sheet="A3", film=f"{film} um", glue=f"{glue} um")
    block = dummy(Size(width, height), stock)
    [flat], [part] = block.flats, block.cut_list
    thick, gap = (caliper + film) / 1000, glue / 1000
    ends = [0.0, *(fold.start.x for fold in flat.folds), flat.size.width]
    points = [
        around_the_block(flat, along, thick, part.height + 2 * gap)
        for along in [*ends, flat.size.width / 2, *(share * flat.size.width for share in samples)]
    ]
    for (in_x, in_y), (out_x, out_y) in points:
        assert in_x <= part.width + gap + 0.01 and abs(in_y) <= part.height / 2 + gap + 0.01
        on_the_glue = isclose(in_x, part.width + gap, abs_tol=0.01) or isclose(
            abs(in_y), part.height / 2 + gap, abs_tol=0.01
        )
        assert on_the_glue
        assert -0.01 <= out_x <= width + 0.01 and abs(out_y) <= height / 2 + 0.01
    outer = [point for _, point in points]
    # the legs end at the spine, and the dressed block has the size of the page
    assert isclose(outer[0][0], 0, abs_tol=0.01) and isclose(outer[3][0], 0, abs_tol=0.01)
    assert isclose(outer[0][1], height / 2, abs_tol=0.01) and isclose(outer[3][1], -height / 2, abs_tol=0.01)
    assert isclose(outer[4][0], width, abs_tol=0.01)


def test_the_strip_is_as_wide_as_the_block_is_thick_and_folds_away_from_the_print() -> None:
    block = dummy(Size(15, 21), PAPER, measured_thickness="4.2 mm")
    [flat] = block.flats
    assert (flat.kind, flat.name, flat.stock, flat.grain) == ("edge strip", "edge strip", "laid", Axis.Y)
    assert flat.size.height == block.thickness.value == block.cut_list[0].thickness == 4.2
    assert block.thickness.computed == 4.0
    assert [fold.kind for fold in flat.folds] == [FoldKind.MOUNTAIN] * 2
    assert all(fold.start.y == 0 and fold.end.y == 4.2 and fold.start.x == fold.end.x for fold in flat.folds)
    assert [panel.role for panel in flat.panels] == [Role.EDGE] * 3
    edges = [0.0, *(fold.start.x for fold in flat.folds), flat.size.width]
    assert [(panel.rect.x, panel.rect.right) for panel in flat.panels] == list(pairwise(edges))
    assert flat.bleed == 1.0


def test_a_bare_block_is_cut_to_the_page() -> None:
    block = dummy(Size(15, 21), PAPER, edges="none", material="lime wood", thickness="1/4 in")
    assert (block.flats, block.pages, block.panels, block.pastedowns, block.thickness_of_a_page) == ((), 0, 0, False, 0)
    [part] = block.cut_list
    assert (part.what, part.material, part.height, part.width, part.thickness, part.count) == (
        "block",
        "lime wood",
        21,
        15,
        6.35,
        1,
    )


def test_the_thickness_is_one_layer_as_cut() -> None:
    [layer] = dummy(Size(15, 21), PAPER).thickness.layers
    assert (layer.what, layer.count, layer.caliper, layer.stock) == ("block as cut", 1, 4.0, "")


def test_a_wrap_fits_a_solid_block(tmp_path: Path) -> None:
    """The spine is as wide as around leaves of the same thickness: 4.06 + π/4 · 0.21 = 4.225 mm; 4.48 mm in all.

    Two films of PVA, 0.03 mm each, lie between it and the cover.
    """
    report, _ = made(SHELF, tmp_path)
    [book] = report["books"]
    assert (book["pages"], book["panels"], book["block_thickness_mm"], book["spine_mm"]) == (0, 0, 4.0, 4.2249)
    assert book["overall_mm"] == {"thickness": 4.48, "height": 21.0, "depth": 15.21}
    assert {piece["kind"] for sheet in report["sheets"] for piece in sheet["pieces"]} == {"edge strip", "wrap"}
    assert report["problems"] == []


@pytest.mark.parametrize("inside", ["{kind: ruled, numbers: yes}", "{kind: text, file: sea.txt}"])
def test_an_inside_is_not_seen_and_said_so(tmp_path: Path, inside: str) -> None:
    """Nothing is lost by it: a text that finds no pages is no error here."""
    (tmp_path / "sea.txt").write_text("Wood, all the way down.", encoding="utf-8")
    (tmp_path / "shelf.yaml").write_text(SHELF + f"    inside: {inside}\n", encoding="utf-8")
    assert [(str(problem), problem.severity) for problem in check(tmp_path / "shelf.yaml").problems] == [
        (
            "shelf.yaml:13:13: this book is a dummy and has no pages: its inside will not be seen; "
            "leave it out, or write inside: {kind: blank}",
            "note",
        )
    ]


BLOCK = "{kind: dummy, thickness: 4 mm, edges: lines, edge_stock: laid}"

SLIPS = [
    (
        "{kind: dummy, thickness: 4, edges: none}",
        "10:37: The Wooden Sea: block.thickness: 4 has no unit; write 4 mm",
    ),
    (
        "{kind: dummy, thickness: 0.5 mm}",
        "10:37: The Wooden Sea: block.thickness: 0.5 mm is out of range; write a length from 1 mm to 200 mm",
    ),
    (
        "{kind: dummy, thickness: full}",
        "10:37: The Wooden Sea: block.thickness: 'full' is neither a length nor fill; write it like 4 mm, about 4 mm, "
        "layers of and the name of a stock, or fill",
    ),
    (
        "{kind: dummy}",
        "10:12: The Wooden Sea: block has no thickness; add thickness: thickness of the block: 4 mm, about 4 mm, "
        "layers of a stock, or fill for what is left on its space",
    ),
    (
        "{kind: dummy, thickness: 4 mm, pages: 48}",
        "10:12: The Wooden Sea: block has pages, but it is a dummy; leave pages out, or write another kind",
    ),
    (
        "{kind: dummy, thickness: fill, at_least: 0.4 mm}",
        "10:53: The Wooden Sea: block.at_least: 0.4 mm is out of range; write a length from 1 mm to 200 mm",
    ),
    (
        "{kind: dummy, thickness: fill, at_least: 6 mm, at_most: 5 mm}",
        "10:12: The Wooden Sea: block has at_least 6 mm above at_most 5 mm; "
        "write a smaller at_least or a larger at_most",
    ),
    (
        "{kind: dummy, thickness: fill, at_most: 1.5 mm}",
        "10:12: The Wooden Sea: block has at_least 2 mm above at_most 1.5 mm; "
        "write a smaller at_least or a larger at_most",
    ),
    (
        "{kind: dummy, thickness: 4 mm, edges: gilt}",
        "10:12: The Wooden Sea: block has gilt edges, but no edge_stock; add edge_stock: with a name from stocks",
    ),
    (
        "{kind: dummy, thickness: 4 mm, edges: gold, edge_stock: laid}",
        "10:50: The Wooden Sea: block.edges: 'gold' is not known; write one of none, lines, gilt, stained, marbled",
    ),
    (
        "{kind: dummy, thickness: 4 mm, edges: lines, edge_stock: lead}",
        "10:69: there is no stock 'lead'; did you mean 'laid'?",
    ),
    (
        "{kind: dummy, thickness: 4 mm, edges: stained, edge_stock: laid, edge_colour: red}",
        "10:90: The Wooden Sea: block.edge_colour: red is not a colour; "
        'write "#a8262b" for it, in quotes; bookmaker manual colours lists more',
    ),
    (
        "{kind: dummy, thickness: 4 mm, material: }",
        "10:52: The Wooden Sea: block.material is empty; write a value or leave the line out",
    ),
]


@pytest.mark.parametrize(("block", "message"), SLIPS, ids=lambda part: part[:60])
def test_a_slip_gets_one_message(tmp_path: Path, block: str, message: str) -> None:
    (tmp_path / "shelf.yaml").write_text(SHELF.replace(BLOCK, block), encoding="utf-8")
    with pytest.raises(ShelfFileError) as caught:
        check(tmp_path / "shelf.yaml")
    assert str(caught.value) == f"shelf.yaml:{message}"


def test_a_strip_that_leaves_no_block_or_fits_no_sheet_is_refused(tmp_path: Path) -> None:
    for right, wrong, message in (
        (
            "caliper: 100 um",
            "caliper: 3 mm",
            "shelf.yaml:10:69: an edge strip of laid with its glue is 3.03 mm thick: it leaves a block of "
            "1.97 mm × 0 mm; write a thinner edge_stock, a larger book, or edges: none",
        ),
        (
            "height: 21 mm",
            "height: 170 mm",
            "shelf.yaml:9:11: the page is 170 mm high: at 1:12 the real book would be 2040 mm high; "
            "write life_size: {height: 170 mm, width: 15 mm} in place of size if these are the sides of the real book\n"
            "shelf.yaml:10:69: the edge strip with its bleed is 201.8 mm × 6 mm, but the A4 sheet of laid has room for "
            "195.6 mm × 269.6 mm with its grain along the folds; "
            "give laid the sheet letter and grain: short, or make it smaller",
        ),
    ):
        text = SHELF.replace(right, wrong)
        if "3 mm" in wrong:
            text = text.replace("height: 21 mm, width: 15 mm", "height: 5 mm, width: 5 mm")
        (tmp_path / "shelf.yaml").write_text(text, encoding="utf-8")
        with pytest.raises(ShelfFileError) as caught:
            check(tmp_path / "shelf.yaml")
        assert str(caught.value) == message


def test_an_inside_that_all_books_share_is_not_told_of_solid_ones(tmp_path: Path) -> None:
    """Told once of a row that has one; of a book that takes it from the defaults, not at all."""
    rest = SHELF[SHELF.index("  - title") :]
    head = SHELF.removesuffix(rest).removesuffix("books:\n")
    shared = f"{head}defaults:\n  inside: {{kind: ruled}}\nbooks:\n{rest}"
    (tmp_path / "shelf.yaml").write_text(shared, encoding="utf-8")
    assert check(tmp_path / "shelf.yaml").problems == ()
    row = rest.replace(rest[: rest.index("\n")], "  - row: [Fog, Salt]\n    inside: {kind: ruled}", 1)
    (tmp_path / "shelf.yaml").write_text(f"{head}books:\n{row}", encoding="utf-8")
    (problem,) = check(tmp_path / "shelf.yaml").problems
    assert "will not be seen" in problem.message
    assert problem.place is not None and problem.place.source.strip() == "inside: {kind: ruled}"
