"""What is likely a slip in a book is told: sides of the real book as those of the small one, far too many pages, a
title that stands there twice.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker.ground.problems import Severity
from tests.kit.shelves import ONE_BOOK, changed, checked, refused

BOOK = ONE_BOOK[ONE_BOOK.index("  - title") :]


def said(text: str, folder: Path) -> list[str]:
    return [
        f"{one.message}; {one.remedy}" for one in checked(text, folder).problems if one.severity is Severity.WARNING
    ]


@pytest.mark.parametrize(("height", "told"), [("83 mm", False), ("84 mm", True)])
def test_a_page_higher_than_real_books_are_is_told(height: str, told: bool, tmp_path: Path) -> None:
    """At 1:12 a page of 83.3 mm is one of a metre."""
    text = changed(("height: 21 mm", f"height: {height}"), ("height: 27 mm", "height: 127 mm"))
    found = [one for one in said(text, tmp_path) if "the real book would be" in one]
    assert len(found) == told
    assert all("write life_size: {height: 84 mm, width: 15 mm} in place of size" in one for one in found)
    text = changed(("books:", "scale: 1:1\nbooks:"), text=text)
    assert said(text, tmp_path) == []


def test_sides_of_the_real_book_that_no_sheet_holds_are_told_as_that(tmp_path: Path) -> None:
    found = refused(changed(("height: 21 mm, width: 15 mm", "height: 8 in, width: 5 in")), tmp_path)
    assert "write life_size: {height: 203.2 mm, width: 127 mm}" in found[0]


def test_a_block_thicker_than_its_page_is_high_is_told(tmp_path: Path) -> None:
    [found] = said(changed(("pages: 48", "pages: 1400"), ("width: 60 mm", "width: 600 mm")), tmp_path)
    assert "1400 pages are 700 leaves" in found


def test_a_cover_too_wide_for_its_sheet_asks_for_fewer_pages_where_that_is_why(tmp_path: Path) -> None:
    many = refused(changed(("pages: 48", "pages: 2000"), ("caliper: 75 um", "caliper: 150 um")), tmp_path)
    assert any("make the block thinner, with fewer pages" in one for one in many)
    large = refused(changed(("height: 21 mm, width: 15 mm", "height: 80 mm, width: 140 mm")), tmp_path)
    assert any("make it smaller" in one for one in large)


@pytest.mark.parametrize(
    ("other", "told"), [("", True), ("    author: A. Thorne\n", False), ("    volume: II\n", False)]
)
def test_a_title_that_stands_there_twice_is_noted(other: str, told: bool, tmp_path: Path) -> None:
    found = checked(ONE_BOOK + BOOK.replace("Tide Tables", "tide tables") + other, tmp_path).problems
    notes = [one for one in found if "2 books have the title" in one.message]
    assert [one.severity for one in notes] == [Severity.NOTE] * told
