"""Sections, folded, nested, gathered and trimmed in code from the flats alone, and read from the first page on."""

from __future__ import annotations

import math
from itertools import groupby, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.geometry import Axis, Rect, Size
from bookmaker.ground.problems import ShelfFileError
from bookmaker.paper.stock import Stock
from bookmaker.sheets.flat import Face, Flat, MarkKind, Role
from bookmaker.things.book.blocks.block_plan import BlockPlan
from bookmaker.things.book.blocks.sections import Sections
from tests.kit.hands import Page, fold_up, gathered, leaf_through, nested
from tests.kit.papers import CALIPER, GLUE, paper

PAGE = Size(15, 21)


def block(page: Size = PAGE, stock: Stock | None = None, right_to_left: bool = False, **keys: str) -> BlockPlan:
    entry = Sections.model_validate({"stock": "page", **keys})
    return entry.plan(page, {"page": stock or paper(sheet="A3")}, right_to_left=right_to_left)


@st.composite
def books(draw: st.DrawFn) -> dict[str, str]:
    """Keys of any sound block of sections."""
    fold, on_sheet = draw(st.sampled_from([("folio", 4), ("quarto", 8), ("octavo", 16)]))
    pages = 2 * draw(st.integers(1, 60))
    keys = {"fold": fold, "pages": str(pages), "fastening": "sewn"}
    sheets = -(-pages // on_sheet)
    if draw(st.booleans()):
        keys["pages_in_section"] = str(on_sheet * draw(st.integers(1, min(sheets, 16 // on_sheet))))
    if fold == "folio":
        keys["printing"] = draw(st.sampled_from(["one side", "both sides"]))
        keys["trim"] = draw(st.sampled_from(["0 mm", "1 mm", "2.5 mm"]))
    elif draw(st.booleans()):
        keys["trim"] = "0.7 mm"
    return keys


def sections_of(plan: BlockPlan) -> list[list[Flat]]:
    """The flats of each section, in their order, told apart by their names."""
    return [list(flats) for _, flats in groupby(plan.flats, key=lambda flat: flat.name.split(",")[0])]


def read(flats: list[Flat], right_to_left: bool) -> list[Page]:
    return nested([leaf_through(*fold_up(flat), right_to_left) for flat in flats])


def panels_of(pages: list[Page]) -> list[int | None]:
    return [page.panel.page if page.panel else None for page in pages]


@given(keys=books(), right_to_left=st.booleans(), width=st.floats(11, 25), height=st.floats(11, 30))
def test_the_book_can_be_read(keys: dict[str, str], right_to_left: bool, width: float, height: float) -> None:
    made = block(Size(width, height), right_to_left=right_to_left, **keys)
    pages = gathered([read(flats, right_to_left) for flats in sections_of(made)])
    printed = int(keys["pages"])
    # every page once, in order, and what is left over is blank
    assert panels_of(pages) == [*range(1, printed + 1), *[None] * (made.panels - printed)]
    assert (made.pages, len(pages)) == (printed, made.panels)
    for number, page in enumerate(pages):
        assert page.upright
        # recto on the right, or on the left of a book that reads the other way
        assert page.right_hand is ((number % 2 == 0) is not right_to_left)
        assert page.panel and page.panel.role is (Role.PAGE if number < printed else Role.FLYLEAF)
    for recto, verso in zip(pages[::2], pages[1::2], strict=True):
        _assert_back_to_back(recto, verso, one_side=keys.get("printing") == "one side")


@given(keys=books())
def test_sections_that_are_filled_are_the_same_sheets_with_no_blank_page(keys: dict[str, str]) -> None:
    plain, full = block(**keys), block(**keys, fill_sections="yes")
    pages = gathered([read(flats, right_to_left=False) for flats in sections_of(full)])
    assert panels_of(pages) == [*range(1, full.pages + 1)]
    assert (full.pages, full.panels) == (plain.panels, plain.panels)
    assert full.thickness == plain.thickness
    assert [flat.outline for flat in full.flats] == [flat.outline for flat in plain.flats]
    assert full.notes == ()


def _assert_back_to_back(recto: Page, verso: Page, *, one_side: bool) -> None:
    """The verso lies exactly behind its recto: in the same place, or as far from its own spine."""
    assert recto.panel and verso.panel
    one, other = recto.panel, verso.panel
    if one_side:
        assert (one.face, other.face) == (Face.FRONT, Face.FRONT)
        assert one.rect.size == pytest.approx(other.rect.size)
        assert one.rect.y == other.rect.y
    else:
        assert {one.face, other.face} == {Face.FRONT, Face.REVERSE}
        assert one.rect == other.rect
    for page in (recto, verso):
        assert page.panel
        spine_edge = min(abs(page.panel.rect.x - page.spine), abs(page.panel.rect.right - page.spine))
        assert spine_edge == pytest.approx(0, abs=1e-9)
    assert one.creep == other.creep


@given(keys=books(), right_to_left=st.booleans(), microns=st.integers(40, 110))
def test_margins_are_even_after_the_knife(keys: dict[str, str], right_to_left: bool, microns: int) -> None:
    """Folds nest as half circles around one axis; one knife cuts all leaves in one plane.

    A leaf whose fold has the middle radius r spends a quarter turn, π/2·r, before it runs straight. The image
    of its page is as wide as the page and is moved towards the spine by its creep.
    """
    page, caliper = Size(25, 30), microns / 1000
    leaf = 2 * caliper + GLUE if keys.get("printing") == "one side" else caliper
    for flats in sections_of(block(page, paper(caliper, sheet="A3"), right_to_left, **keys)):
        leaves = read(flats, right_to_left)[::2]
        around = [min(number, len(leaves) - 1 - number) for number in range(len(leaves))]
        bends = [math.pi / 2 * leaf * (len(leaves) / 2 - depth - 0.5) for depth in around]
        plane = page.width - bends[0]
        for leaf_page, bend in zip(leaves, bends, strict=True):
            panel = leaf_page.panel
            assert panel
            cut = plane + bend  # where the knife meets this leaf, from its fold
            assert page.width - panel.creep == pytest.approx(cut, abs=0.01)  # the outer edge of the image
            assert panel.rect.width == pytest.approx(cut, abs=0.01)
            waste = abs(leaf_page.fore_edge - leaf_page.spine) - cut
            # single folds end flush even before the knife; in one sheet folded often, inner leaves stand out
            assert waste == pytest.approx(_trim(keys) + (0 if keys["fold"] == "folio" else panel.creep), abs=0.01)


def _trim(keys: dict[str, str]) -> float:
    usual = "0 mm" if keys["fold"] == "folio" else "1 mm"
    return float(keys.get("trim", usual).removesuffix(" mm"))


@given(keys=books(), right_to_left=st.booleans())
def test_trims_part_what_shows_from_what_is_cut_off(keys: dict[str, str], right_to_left: bool) -> None:
    """Cut along all trims that run through a page's cell: what holds the middle of the page is the page."""
    for flats in sections_of(block(right_to_left=right_to_left, **keys)):
        for flat in flats:
            for page in leaf_through(*fold_up(flat), right_to_left):
                assert page.panel
                shown = page.panel.rect
                assert _cut_out(page.cell, shown, flat) == pytest.approx(shown, abs=1e-6)
                beyond = (
                    shown.y - page.cell.y,
                    page.cell.top - shown.top,
                    abs(page.fore_edge - page.spine) - shown.width,
                )
                assert {waste > 0.5 for waste in beyond} == {_trim(keys) > 0}


def _cut_out(cell: Rect, shown: Rect, flat: Flat) -> Rect:
    left, bottom, right, top = cell.x, cell.y, cell.right, cell.top
    middle = shown.centre
    for start, end in flat.trims:
        if start.x == end.x and cell.x < start.x < cell.right and min(start.y, end.y) < middle.y < max(start.y, end.y):
            left, right = (max(left, start.x), right) if start.x < middle.x else (left, min(right, start.x))
        if start.y == end.y and cell.y < start.y < cell.top and min(start.x, end.x) < middle.x < max(start.x, end.x):
            bottom, top = (max(bottom, start.y), top) if start.y < middle.y else (bottom, min(top, start.y))
    return Rect(left, bottom, right - left, top - bottom)


@given(keys=books(), right_to_left=st.booleans())
def test_marks_lie_on_the_back_of_each_section(keys: dict[str, str], right_to_left: bool) -> None:
    page = Size(15, 21)
    sections = sections_of(block(page, right_to_left=right_to_left, **keys))
    steps: list[Rect] = []
    for flats in sections:
        assert all(not inner.marks for inner in flats[1:])
        first = next(panel for panel in flats[0].panels if panel.page == min(flats[0].pages))
        fold = first.rect.right if right_to_left else first.rect.x
        heights = [mark.rect.centre.y - first.rect.y for mark in flats[0].marks if mark.kind is MarkKind.HOLE]
        assert len(heights) == 3
        assert heights == pytest.approx([page.height - height for height in reversed(heights)])
        assert all(1 <= height <= page.height - 1 for height in heights)
        assert all(mark.rect.centre.x == pytest.approx(fold) for mark in flats[0].marks)
        bars = [mark.rect for mark in flats[0].marks if mark.kind is MarkKind.COLLATION]
        steps += [bar.moved(-fold, -first.rect.y) for bar in bars]
        holes = [mark.rect for mark in flats[0].marks if mark.kind is MarkKind.HOLE]
        assert not any(bar.overlaps(hole) for bar in bars for hole in holes)
    assert len(steps) == (len(sections) if len(sections) > 1 else 0)
    assert all(bar.y >= 0 and bar.top <= page.height for bar in steps)
    # gathered, they form a stair that goes down by the same step
    assert all(lower.top < upper.y for upper, lower in pairwise(steps))
    assert len({round(upper.y - lower.y, 6) for upper, lower in pairwise(steps)}) <= 1
    # and what shows of the back is no narrower than the bar: half around the outermost fold
    leaf = 2 * CALIPER + GLUE if keys.get("printing") == "one side" else CALIPER
    for bar, flats in zip(steps, sections, strict=False):
        leaves = len(read(flats, right_to_left)) // 2
        assert bar.width <= math.pi * leaves / 2 * leaf + 1e-9


@given(keys=books(), right_to_left=st.booleans())
def test_every_panel_lies_on_its_flat_and_fibres_run_along_the_spine(keys: dict[str, str], right_to_left: bool) -> None:
    made = block(right_to_left=right_to_left, **keys)
    assert made.pastedowns is False
    for flat in made.flats:
        whole = Rect(0, 0, *flat.size)
        assert flat.grain is Axis.Y
        assert all(whole.contains(panel.rect) for panel in flat.panels)
        for face in Face:
            rects = [panel.rect for panel in flat.panels if panel.face is face]
            assert not any(one.overlaps(other) for number, one in enumerate(rects) for other in rects[:number])


SEWN = {"pages": "64", "pages_in_section": "16"}


@pytest.mark.parametrize(
    ("keys", "thickness"),
    [
        (SEWN, 32 * 0.08 + 4 * 0.1),
        ({**SEWN, "sewing": "two on"}, 32 * 0.08 + 2 * 0.1),
        ({**SEWN, "thread": "0.2 mm"}, 32 * 0.08 + 4 * 0.2),
        ({**SEWN, "fastening": "glued"}, 32 * 0.08),
        ({"pages": "16", "fastening": "stapled", "thread": "0.3 mm"}, 8 * 0.08 + 0.3),
        ({**SEWN, "printing": "one side"}, 32 * (2 * 0.08 + 0.02) + 4 * 0.1),
        ({"pages": "62", "pages_in_section": "16"}, 32 * 0.08 + 4 * 0.1),
        ({**SEWN, "measured_thickness": "3.3 mm"}, 3.3),
    ],
)
def test_thickness_is_leaves_and_swell(keys: dict[str, str], thickness: float) -> None:
    assert block(**keys).thickness.value == pytest.approx(thickness, abs=1e-9)


@given(keys=books(), microns=st.integers(40, 110))
def test_thickness_answers_to_the_caliper_as_it_says(keys: dict[str, str], microns: int) -> None:
    """The derivative by central differences; automatic sections may change their number with the caliper."""
    fixed = {"pages_in_section": {"folio": "4", "quarto": "8", "octavo": "16"}[keys["fold"]], **keys}
    step = 0.001

    def thickness(caliper: float) -> float:
        return block(stock=paper(caliper, sheet="A3"), **fixed).thickness.value

    slope = (thickness(microns / 1000 + step) - thickness(microns / 1000 - step)) / (2 * step)
    made = block(stock=paper(microns / 1000, sheet="A3"), **fixed)
    said = made.thickness.sensitivities
    films = made.panels / 2 if keys.get("printing") == "one side" else 0
    assert said.pop("films of glue stick", 0) == films
    assert said == {"page": pytest.approx(slope, rel=1e-6)}


@pytest.mark.parametrize("keys", [{"printing": "both sides"}, {"printing": "one side"}])
def test_one_page_more_makes_what_it_says(keys: dict[str, str]) -> None:
    made, more = (block(pages=pages, pages_in_section="16", fastening="glued", **keys) for pages in ("64", "96"))
    assert (more.thickness.value - made.thickness.value) / 32 == pytest.approx(made.thickness_of_a_page)


@given(pages=st.integers(1, 300).map(lambda leaves: 2 * leaves), width=st.floats(8, 25))
def test_automatic_sections_are_few_alike_and_waste_less_than_a_sheet(pages: int, width: float) -> None:
    made = block(Size(width, 21), pages=str(pages))
    sheets = [len(flats) for flats in sections_of(made)]
    assert sum(sheets) == math.ceil(pages / 4)
    assert made.panels == 4 * sum(sheets)
    assert max(sheets) - min(sheets) <= 1
    assert len(sheets) == math.ceil(sum(sheets) / 4)  # four sheets, 16 pages


def test_sections_take_fewer_pages_where_leaves_would_creep_too_far() -> None:
    """A ninth of 4.5 mm is 0.5 mm; with 0.17 mm paper two sheets creep 0.27 and three 0.53 mm."""
    made = block(Size(4.5, 6), paper(0.17, sheet="A3"), pages="24")
    assert [len(flats) for flats in sections_of(made)] == [2, 2, 2]


def test_a_stapled_book_is_one_section() -> None:
    made = block(pages="24", fastening="stapled")
    assert [len(flats) for flats in sections_of(made)] == [6]
    assert len([mark for mark in made.flats[0].marks if mark.kind is MarkKind.HOLE]) == 4
    assert {mark.kind for flat in made.flats for mark in flat.marks} == {MarkKind.HOLE}


def test_a_low_stapled_book_has_one_staple() -> None:
    assert len(block(Size(8, 10), pages="8", fastening="stapled").flats[0].marks) == 2


def test_glued_sections_have_no_holes() -> None:
    made = block(pages="32", fastening="glued")
    assert [mark.kind for flat in made.flats for mark in flat.marks] == [MarkKind.COLLATION] * 2


def test_stations_are_those_asked_for() -> None:
    made = block(pages="8", stations="5")
    assert [mark.rect.centre.y for mark in made.flats[0].marks] == pytest.approx([2.1, 6.3, 10.5, 14.7, 18.9])


def test_flats_are_named_for_the_bench() -> None:
    assert [flat.name for flat in block(pages="24", pages_in_section="12").flats][2:4] == [
        "section 1 of 2, sheet 3 of 3 from outside",
        "section 2 of 2, sheet 1 of 3 from outside",
    ]
    assert [flat.name for flat in block(pages="16", fold="octavo").flats] == ["section"]


def test_blank_pages_are_said() -> None:
    (note,) = block(pages="46").notes
    assert (str(note), str(note.severity), note.field) == (
        "46 pages do not fill the sections: 2 blank pages follow the last one; "
        "write pages: 48 for none, or fill_sections: yes",
        "note",
        ("block", "pages"),
    )
    assert block(pages="48").notes == ()


REFUSED: list[tuple[dict[str, str], list[tuple[str, str]]]] = [
    (
        {"pages": "24", "pages_in_section": "32"},
        [
            (
                "pages_in_section",
                "a section of 32 pages is larger than the whole book, which has 24; write 24 or less, or automatic",
            )
        ],
    ),
    (
        {"pages": "64", "fold": "octavo", "pages_in_section": "24"},
        [
            (
                "pages_in_section",
                "24 pages are not a whole number of octavo sheets of 16 pages; write 16 or 32",
            )
        ],
    ),
    (
        {"pages": "64", "fold": "quarto", "pages_in_section": "4"},
        [("pages_in_section", "4 pages are not a whole number of quarto sheets of 8 pages; write 8")],
    ),
    (
        {"pages": "64", "pages_in_section": "60"},
        [
            (
                "pages_in_section",
                "a section of 60 pages is 1.2 mm of paper in one fold, which springs open; "
                "write pages_in_section: 48 or less, or take a thinner paper: 1 mm can be folded",
            ),
            (
                "pages_in_section",
                "the innermost leaf of a section of 60 pages creeps 1.76 mm, more than its inner margin, "
                "a ninth of the page: 1.67 mm; write pages_in_section: 48 or less, or take a thinner paper",
            ),
        ],
    ),
    (
        {"pages": "64", "fastening": "stapled"},
        [
            (
                "pages_in_section",
                "a section of 64 pages is 1.28 mm of paper in one fold, which springs open; write fastening: sewn and "
                "pages_in_section: 48 or less, or at most 48 pages: 1 mm can be folded",
            ),
            (
                "pages_in_section",
                "the innermost leaf of a section of 64 pages creeps 1.88 mm, more than its inner margin, a ninth of "
                "the page: 1.67 mm; write fastening: sewn and pages_in_section: 48 or less, or at most 48 pages",
            ),
        ],
    ),
    (
        {"pages": "32", "fastening": "stapled", "pages_in_section": "16"},
        [
            (
                "fastening",
                "staples hold one section, but the book has 2; write fastening: sewn, or leave out pages_in_section",
            )
        ],
    ),
    (
        {"pages": "16", "sewing": "two on"},
        [
            (
                "sewing",
                "two on needs at least two sections, but the book has one; write sewing: all along",
            )
        ],
    ),
    (
        {"pages": "16", "fastening": "glued", "stations": "3"},
        [("stations", "glued sections have no holes; leave stations out, or write fastening: sewn")],
    ),
    (
        {"pages": "16", "fastening": "stapled", "stations": "3"},
        [("stations", "3 holes are not a whole number of staples; write 2 or 4: each staple has two")],
    ),
    (
        {"pages": "16", "stations": "20"},
        [
            (
                "stations",
                "20 holes on a page 21 mm high are 0.88 mm apart and tear out; write stations: 12 or less: 1.5 mm hold",
            )
        ],
    ),
    (
        {"pages": "16", "fold": "quarto", "trim": "0 mm"},
        [
            (
                "trim",
                "without a trim the folds at the head of the quarto stay closed and its pages cannot be opened; "
                "write trim: 1 mm, or leave it out",
            )
        ],
    ),
    (
        {"pages": "16", "fold": "quarto", "printing": "one side", "trim": "6 mm"},
        [
            (
                "printing",
                "no quarto sheet can be printed on one side and glued back to back; "
                "write fold: folio, or printing: both sides",
            ),
            (
                "trim",
                "a trim of 6 mm at each edge leaves too little of a page of 15 mm × 21 mm; "
                "write at most a quarter of its shorter side, 3.75 mm",
            ),
        ],
    ),
]


@pytest.mark.parametrize(("keys", "said"), REFUSED, ids=lambda part: str(part)[:60])
def test_what_cannot_be_made_is_refused(keys: dict[str, str], said: list[tuple[str, str]]) -> None:
    with pytest.raises(ShelfFileError) as refusal:
        block(**keys)
    assert [(problem.field, str(problem)) for problem in refusal.value.problems] == [
        (("block", field), text) for field, text in said
    ]


def test_stiff_paper_and_large_sheets_are_refused_together() -> None:
    with pytest.raises(ShelfFileError) as refusal:
        block(Size(120, 170), paper(0.3, sheet="A3"), pages="16", fold="octavo", pages_in_section="16")
    assert [str(problem) for problem in refusal.value.problems] == [
        "the octavo sheet is 484 mm × 344 mm, but the A3 sheet of page has room for 282.6 mm × 392.6 mm with its grain "
        "along the folds; give page a sheet of at least 498.4 mm × 371.4 mm and grain: short, or make it smaller",
        "page is 0.3 mm thick; paper over 0.2 mm cracks in a tight fold; "
        "score every fold and write scored: yes, or take a thinner paper",
        "a section of 16 pages is 1.2 mm of paper in one fold, which springs open; "
        "write fold: folio, or take a thinner paper: 1 mm can be folded",
    ]


def test_scored_stiff_paper_is_folded() -> None:
    assert block(stock=paper(0.22, sheet="A3"), pages="8", scored="yes").pages == 8


@pytest.mark.parametrize(("grammage", "refused"), [("150 g/m2", False), ("151 g/m2", True)])
def test_weight_goes_before_thickness(grammage: str, refused: bool) -> None:
    stock = paper(0.21, grammage=grammage, sheet="A3")
    if not refused:
        assert block(stock=stock, pages="8").pages == 8
        return
    with pytest.raises(ShelfFileError) as refusal:
        block(stock=stock, pages="8")
    assert str(refusal.value) == (
        "page weighs 151 g/m²; paper over 150 g/m² cracks in a tight fold; "
        "score every fold and write scored: yes, or take a thinner paper"
    )
