"""Pages that follow from the text, type that follows from the pages, and the spine that follows from both."""

from __future__ import annotations

import math
import re
from pathlib import Path
from typing import Any

import pytest

from bookmaker import check
from bookmaker.ground.problems import ShelfFileError
from tests.kit.shelves import refused, reported

SHELF = """\
shelf: Extents
stocks:
  page: {caliper: 75 um, glue: 15 um, grain: long}
  cover: {caliper: 160 um}
books:
  - title: Fog
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: page%s}
    cover: {kind: wrap, stock: cover}
    inside: {kind: text, file: fog.txt, %s}
"""

SENTENCE = "The keeper trims the lamp at dusk and writes down the wind, the sea and the state of the sky."
TEXT = "\n\n".join([SENTENCE] * 60)


def report(folder: Path, block: str, inside: str) -> dict[str, Any]:
    (folder / "fog.txt").write_text(TEXT, encoding="utf-8")
    return reported(SHELF % (block, inside), folder)


def errors(report: dict[str, Any]) -> list[str]:
    return [problem["message"] for problem in report["problems"] if problem["severity"] == "error"]


def test_a_block_without_pages_has_as_many_as_the_text_needs(tmp_path: Path) -> None:
    book = report(tmp_path, "", "size: 2.2 pt")["books"][0]
    pages = book["pages"]
    assert pages % 2 == 0
    assert errors(report(tmp_path, f", pages: {pages}", "size: 2.2 pt")) == []
    assert "do not fit in" in errors(report(tmp_path, f", pages: {pages - 2}", "size: 2.2 pt"))[0]
    # P · t + (P/2 + 1) · a, then the cover of 160 µm on both sides
    panels = pages + 2
    assert book["block_thickness_mm"] == pytest.approx(panels * 0.075 + (panels / 2 + 1) * 0.015)
    assert book["overall_mm"]["thickness"] == pytest.approx(book["block_thickness_mm"] + 0.32)


def test_smaller_type_makes_a_thinner_book(tmp_path: Path) -> None:
    large, small = (report(tmp_path, "", f"size: {size} pt")["books"][0] for size in (2.6, 1.8))
    assert small["pages"] < large["pages"]
    assert small["spine_mm"] < large["spine_mm"]


def test_fit_finds_the_largest_type_that_the_pages_hold(tmp_path: Path) -> None:
    fitted = report(tmp_path, ", pages: 24", "size: fit")
    assert errors(fitted) == []
    # the x-height of Noto Serif is 536 of 1000 units (its OS/2 table); 1 pt is 25.4/72 mm
    size_pt = fitted["books"][0]["legibility"]["x_height_mm"] / 0.536 / (25.4 / 72)
    assert size_pt * 20 == pytest.approx(round(size_pt * 20), abs=0.01)
    assert errors(report(tmp_path, ", pages: 24", f"size: {size_pt:.2f} pt")) == []
    assert errors(report(tmp_path, ", pages: 24", f"size: {size_pt + 0.05:.2f} pt")) != []


def test_fit_goes_no_lower_than_the_smallest(tmp_path: Path) -> None:
    found = report(tmp_path, ", pages: 2", "size: fit, smallest: 2 pt")
    [message] = errors(found)
    assert re.fullmatch(
        r"\d+ words of the 1200 of fog.txt do not fit in 2 pages even in the smallest type allowed, 2 pt", message
    )
    remedy = next(problem["remedy"] for problem in found["problems"] if problem["severity"] == "error")
    pages = int(re.match(r"write pages: (\d+)", remedy)[1])  # type: ignore[index]
    assert errors(report(tmp_path, f", pages: {pages}", "size: fit, smallest: 2 pt")) == []


def test_strips_are_filled_if_asked(tmp_path: Path) -> None:
    """A4 across the grain has room for 12 panels of 15 mm in 200 mm, so 12 · n panels are 12 · n − 2 pages."""
    plain = report(tmp_path, "", "size: 2.2 pt")["books"][0]
    full = report(tmp_path, ", fill_strips: yes", "size: 2.2 pt")["books"][0]
    assert full["strips"] == plain["strips"]
    assert full["pages"] == 12 * full["strips"] - 2
    assert full["pages"] - plain["pages"] < 12


@pytest.mark.parametrize("pages", [22, 24, 30])
def test_type_that_is_fitted_takes_the_pages_of_strips_that_are_filled(tmp_path: Path, pages: int) -> None:
    """Pages settle the strips, the strips all their pages, those the type: and the spine follows from all."""
    full = report(tmp_path, f", pages: {pages}, fill_strips: yes", "size: fit")
    book = full["books"][0]
    assert book["pages"] == 12 * book["strips"] - 2 >= pages > book["pages"] - 12
    written = report(tmp_path, f", pages: {book['pages']}", "size: fit")["books"][0]
    assert (written["legibility"], written["spine_mm"]) == (book["legibility"], book["spine_mm"])
    assert errors(full) == []
    panels = book["pages"] + 2
    assert book["block_thickness_mm"] == pytest.approx(panels * 0.075 + (panels / 2 + 1) * 0.015)
    # bend allowance: the spine of a wrap is T + π/4 · c; the report is rounded to 0.1 µm
    assert book["spine_mm"] == pytest.approx(book["block_thickness_mm"] + math.pi / 4 * 0.16, abs=1e-4)


def test_type_that_is_fitted_takes_the_pages_of_sections_that_are_filled(tmp_path: Path) -> None:
    folder, block = tmp_path, "{kind: sections, stock: page, pages: %s}"
    (folder / "fog.txt").write_text(TEXT, encoding="utf-8")

    def book(more: str) -> dict[str, Any]:
        shelf = SHELF.replace("{kind: accordion, stock: page%s}", block % more) % "size: fit"
        found = reported(shelf, folder)
        return dict(found["books"][0], said=found["problems"])

    plain, full, written = book("14"), book("14, fill_sections: yes"), book("16")
    assert (plain["pages"], full["pages"]) == (14, 16)
    assert full["spine_mm"] == plain["spine_mm"]
    assert full["legibility"] == written["legibility"]
    assert full["legibility"]["x_height_mm"] > plain["legibility"]["x_height_mm"]
    assert any("2 blank pages follow the last one" in problem["message"] for problem in plain["said"])
    assert not any("blank" in problem["message"] for problem in full["said"])


def test_neither_pages_nor_size_is_an_error(tmp_path: Path) -> None:
    (tmp_path / "fog.txt").write_text(TEXT, encoding="utf-8")
    assert refused(SHELF % ("", "size: fit"), tmp_path) == [
        "shelf.yaml:8:12: neither the size of type nor the number of pages is settled; "
        "write pages: in the block, or a size of type in place of fit"
    ]


@pytest.mark.parametrize("parts", [False, True])
def test_what_keeps_a_text_from_having_pages_is_told_itself(tmp_path: Path, parts: bool) -> None:
    margins = "margins: {inner: 9 mm, outer: 9 mm, top: 2 mm, bottom: 2 mm}"
    (tmp_path / "shelf.yaml").write_text(in_parts(parts, margins), encoding="utf-8")
    (tmp_path / "fog.txt").write_text(TEXT, encoding="utf-8")
    with pytest.raises(ShelfFileError) as caught:
        check(tmp_path / "shelf.yaml")
    [problem] = caught.value.problems
    assert problem.field == ("books", 0, "inside", *([1] if parts else []), "margins")
    assert problem.message.startswith("inner 9 mm and outer 9 mm take 18 mm of a page 15 mm wide: no room is left for ")
    (tmp_path / "shelf.yaml").write_text(in_parts(parts, "size: 80 pt"), encoding="utf-8")
    with pytest.raises(ShelfFileError, match=r"does not fit in 80 pt type .*; write size: [0-9.]+ pt or smaller"):
        check(tmp_path / "shelf.yaml")


def in_parts(parts: bool, keys: str) -> str:
    """A book of a text, or of a title page and a text."""
    shelf = SHELF % ("", keys)
    return re.sub(r"inside: (.*)", r"inside: [{kind: title page}, \1]", shelf) if parts else shelf


def test_an_inside_that_takes_any_number_of_pages_is_an_error(tmp_path: Path) -> None:
    (tmp_path / "shelf.yaml").write_text(re.sub(r" *inside:.*\n", "", SHELF % ("", "size: 2 pt")), encoding="utf-8")
    with pytest.raises(ShelfFileError) as caught:
        check(tmp_path / "shelf.yaml")
    assert str(caught.value) == (
        "shelf.yaml:8:12: the block has no pages, and its inside does not tell how many it needs; write pages: 48, say"
    )


def test_a_text_that_cannot_be_read_is_told_once_with_all_else(tmp_path: Path) -> None:
    shelf = (SHELF % ("", "size: 2 pt")).replace("fog.txt", "gone.txt").replace("width: 15 mm", "width: 150 mm")
    (tmp_path / "shelf.yaml").write_text(shelf, encoding="utf-8")
    with pytest.raises(ShelfFileError) as caught:
        check(tmp_path / "shelf.yaml")
    messages = [problem.message for problem in caught.value.problems]
    assert len(messages) == 2
    assert messages[0].startswith("a strip of two pages is 300 mm × 21 mm, but")
    assert messages[1] == "there is no text gone.txt"


def test_several_texts_to_be_fitted_need_a_number_of_pages_or_a_size(tmp_path: Path) -> None:
    """Of the two keys that would settle it the message names both."""
    (tmp_path / "fog.txt").write_text(TEXT, encoding="utf-8")
    part = "{kind: text, file: fog.txt, size: fit}"
    shelf = (SHELF % ("", "size: fit")).replace(part, f"[{part}, {part}]")
    (tmp_path / "shelf.yaml").write_text(shelf, encoding="utf-8")
    with pytest.raises(ShelfFileError, match="neither the size of type nor the number of pages is settled; write"):
        check(tmp_path / "shelf.yaml")
