"""Blocks that fill: unlike within their bounds, rows that then fit for sure, and what is refused."""

from __future__ import annotations

from math import inf, isclose
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.cli.tables import breakdown_table
from bookmaker.ground.problems import ShelfFileError
from bookmaker.shelf.entries import ShelfSpec, shelf_model
from bookmaker.shelf.fit import Verdict
from bookmaker.things.families import all_families
from tests.kit.by_kind import books_of, planned_shelf
from tests.kit.shelves import told


def book(title: str, block: str, **keys: object) -> dict[str, object]:
    pairs = dict(part.split(": ") for part in block.split(", "))
    return {
        "title": title,
        "size": {"height": "21 mm", "width": "15 mm"},
        "block": pairs,
        "cover": {"kind": "wrap", "stock": "card", "turn_in": "4 mm"},
        "space": "upper",
        **keys,
    }


def spec_of(width: float, books: list[dict[str, object]]) -> ShelfSpec:
    written = {
        "shelf": "A Row",
        "stocks": {
            "laid": {"caliper": "75 um", "glue": "15 um"},
            "card": {"caliper": "160 um", "film": "50 um", "tolerance": "4 %"},
        },
        "spaces": {
            "upper": {"width": f"{width:.3f} mm", "height": "27 mm", "depth": "22 mm"},
            "lower": {"width": "40 mm", "height": "27 mm", "depth": "22 mm"},
        },
        "books": books,
    }
    return shelf_model(all_families()).model_validate(written)


def at_its_least(row: dict[str, Any]) -> dict[str, Any]:
    """The book with the thinnest block it may have."""
    block = row["block"]
    return row | {"block": {"kind": "dummy", "thickness": block["at_least"]}} if "at_least" in block else row


FILLS = st.lists(
    st.tuples(st.integers(10, 80), st.none() | st.integers(0, 120)).map(
        lambda pair: (pair[0] / 10, None if pair[1] is None else (pair[0] + pair[1]) / 10)
    ),
    min_size=1,
    max_size=5,
)


@given(
    width=st.floats(40, 180),
    leaves=st.lists(st.integers(2, 40), max_size=4),
    fills=FILLS,
    tolerance=st.integers(0, 40),
    stack=st.booleans(),
)
def test_a_filled_row_fits_for_sure_with_nothing_left_over(
    width: float, leaves: list[int], fills: list[tuple[float, float | None]], tolerance: int, stack: bool
) -> None:
    books = [book(f"Leaves {count}", f"stock: laid, pages: {2 * count}") for count in leaves]
    for number, (least, most) in enumerate(fills):
        bounds = f"at_least: {least} mm" + ("" if most is None else f", at_most: {most} mm")
        filler = book(f"Dummy {number}", f"kind: dummy, thickness: fill, {bounds}")
        books.insert(number * 2, filler | {"assembly_tolerance": f"{tolerance / 100} mm"})
    if stack:
        books.append(book("Lying", "kind: dummy, thickness: 9 mm", stack="flat"))
    books.append(book("Elsewhere", "kind: dummy, thickness: 7 mm", space="lower"))
    spec = spec_of(width, books)
    try:
        plan = planned_shelf(spec)
    except ShelfFileError as refusal:
        [problem] = refusal.problems
        assert problem.message.startswith("upper has no room left for ")
        assert planned_shelf(spec_of(width, [at_its_least(row) for row in books])).spaces[0].verdict is not Verdict.FITS
        return
    upper = plan.spaces[0]
    standing = [row for row in books_of(plan) if row.entry.space == "upper"]
    taken = sum(row.cover.thickness.value for row in standing if row.entry.stack is None) + 21 * stack
    spare = width - taken - 0.2 * len(standing) - upper.likely
    thick = [row.block.thickness.value for row in standing if row.entry.title.startswith("Dummy")]
    assert upper.verdict is Verdict.FITS
    assert isclose(upper.room_left - upper.likely, spare, abs_tol=1e-3)
    assert all(least <= found <= (most or inf) for found, (least, most) in zip(thick, fills, strict=True))
    assert spare >= -1e-3
    if spare > 0.01 * len(fills) + 1e-3:
        assert all(
            most is not None and found >= most - 0.01 * len(books)
            for found, (_, most) in zip(thick, fills, strict=True)
        )
    others = [row.block.thickness.value for row in standing if not row.entry.title.startswith("Dummy")]
    if not any("has blocks of equal thickness" in note.message for note in plan.notes):
        assert len({*thick, *others}) == len(thick) + len(set(others)), "no two are alike"


SHELF = """\
shelf: Filled
stocks:
  laid: {caliper: 75 um, glue: 15 um, grain: long}
  card: {caliper: 160 um, film: 50 um, grain: long}
spaces:
  upper: {width: 20 mm, height: 27 mm, depth: 22 mm}
defaults:
  size: {height: 21 mm, width: 15 mm}
  cover: {kind: wrap, stock: card}
books:
  - title: Tide Tables
    block: {kind: accordion, stock: laid, pages: 48}
    space: upper
  - title: A Filler
    block: {kind: dummy, thickness: fill}
    space: upper
"""


def test_a_fill_takes_what_is_left(tmp_path: Path) -> None:
    """Worked by hand: 20 − 4.56 − 2 · 0.2 − 0.42 of its own cover and 2 · 0.03 of glue leave 14.56 less its error.

    It is √((50 · 0.0075)² + (4 · 0.016)² + 2 · 0.15² + (26 · 0.005)² + (2 · 0.01)²) = 0.455: 14.105, 14.1 as cut.
    """
    assert told(SHELF, tmp_path) == [
        "shelf.yaml:15:37: the block that fills upper becomes 14.1 mm thick, like a book of 169 mm; "
        "add 1 more to share the space, or write at_most: 12 mm and leave the rest empty"
    ]
    plan = check(tmp_path / "shelf.yaml").plan
    assert books_of(plan)[1].block.thickness.value == 14.1
    assert books_of(plan)[1].block.cut_list[0].thickness == 14.1
    assert [space.verdict for space in plan.spaces] == [Verdict.FITS]


def test_a_measured_block_has_filled_already(tmp_path: Path) -> None:
    assert told(SHELF.replace("thickness: fill", "thickness: fill, measured_thickness: 9.1 mm"), tmp_path) == []
    block = books_of(check(tmp_path / "shelf.yaml").plan)[1].block
    assert (block.thickness.value, block.thickness.computed) == (9.1, 9.1)


ANOTHER = "  - title: Another\n    block: {kind: dummy, thickness: fill, at_least: 1/8 in}\n    space: upper\n"


def test_a_measured_block_leaves_the_rest_to_the_others(tmp_path: Path) -> None:
    """Worked by hand: 20 − 4.56 − 5.48 − 0.48 − 3 · 0.2 = 8.88 less 0.4882, the root of the sum of squares.

    Paper 0.375, card 0.096, hands 3 × 0.15, films 26 · 0.005 and 4 · 0.01, the gauge 0.05.
    """
    text = SHELF.replace("thickness: fill", "thickness: fill, measured_thickness: 5 mm") + ANOTHER
    assert told(text, tmp_path) == []
    books = books_of(check(tmp_path / "shelf.yaml").plan)
    assert [book.block.thickness.value for book in books[1:]] == [5.0, 8.39]


def test_a_bound_is_kept_to_the_letter(tmp_path: Path) -> None:
    """1/8 in is 3.175 mm, not 3.17, and 1.41 mm beside it leave more of 11.2 − 6.6056 = 4.5944 mm than 4.6 do."""
    text = SHELF.replace("width: 20 mm", "width: 11.2 mm").replace("fill}", "fill, at_least: 1 mm}") + ANOTHER
    assert told(text, tmp_path) == []
    books = books_of(check(tmp_path / "shelf.yaml").plan)
    assert [book.block.thickness.value for book in books[1:]] == [1.41, 3.18]


def test_what_a_fill_became_is_explained(tmp_path: Path) -> None:
    told(SHELF, tmp_path)
    table = breakdown_table(books_of(check(tmp_path / "shelf.yaml").plan)[1], "2 Fill")
    shown = [" ".join(cells).split() for cells, _ in table.rows]
    assert ["block", "as", "cut", "to", "fill", "its", "space", "1", "14.100", "14.100"] in shown
    assert ["finished", "book", "14.580"] in shown


@pytest.mark.parametrize(
    ("right", "wrong", "message"),
    [
        (
            "width: 20 mm",
            "width: 7 mm",
            "shelf.yaml:15:37: upper has no room left for the block that is to fill it: with 2 mm for it and "
            "± 0.45 mm for the likely error the row is 0.9 mm too long; "
            "take a book out, write a smaller at_least, or write width: 7.9 mm for upper",
        ),
        (
            "fill}\n    space: upper",
            "fill}",
            "shelf.yaml:15:37: the block is to fill its space, but the book stands in none; "
            "add space: with a name from spaces, or write a thickness such as 4 mm",
        ),
        (
            "fill}",
            "fill}\n    stack: heap",
            "shelf.yaml:15:37: a book in a stack cannot fill its space: the stack takes the height of its longest "
            "book; leave stack out, or write a thickness such as 4 mm",
        ),
        (
            "thickness: fill",
            "thickness: fill, at_most: 9 mm",
            "shelf.yaml:15:52: upper is not filled: 5.11 mm stay empty when its blocks are as thick as they may be; "
            "write a larger at_most, or add a book",
        ),
    ],
)
def test_what_cannot_be_filled_is_said(tmp_path: Path, right: str, wrong: str, message: str) -> None:
    assert right in SHELF
    assert told(SHELF.replace(right, wrong), tmp_path) == [message]


def test_several_that_find_no_room_are_counted(tmp_path: Path) -> None:
    more = SHELF + "  - title: Another\n    block: {kind: dummy, thickness: fill, at_least: 3 mm}\n    space: upper\n"
    assert told(more.replace("width: 20 mm", "width: 9 mm"), tmp_path) == [
        "shelf.yaml:15:37: upper has no room left for the 2 blocks that are to fill it: with 5 mm for them and "
        "± 0.49 mm for the likely error the row is 2.61 mm too long; "
        "take a book out, write a smaller at_least, or write width: 11.61 mm for upper"
    ]


def test_advice_on_a_giant_holds_when_it_is_followed(tmp_path: Path) -> None:
    """14.1 mm at 1:12 are more than 144 mm in life; at 1:24 they are more still, and 6 mm are the most."""
    assert told(SHELF + ANOTHER, tmp_path) == []
    (left,) = told(SHELF.replace("fill}", "fill, at_most: 12 mm}"), tmp_path)
    assert "upper is not filled" in left
    (smaller,) = told(SHELF.replace("stocks:", "scale: 1:24\nstocks:", 1), tmp_path)
    assert "like a book of 338 mm; add 2 more to share the space, or write at_most: 6 mm" in smaller
