"""The contact sheet: every spine once at true size and once four times as large, as PDF and PNG, always the same."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from PIL import Image
from pypdf import PdfReader

from bookmaker import make
from bookmaker.workshop import Wishes

SHELF = """\
shelf: Proof
stocks:
  page: {caliper: 80 um}
  spines: {caliper: 160 um}
spaces:
  low: {width: 60 mm, height: 30 mm, depth: 25 mm}
  high: {width: 60 mm, height: 30 mm, depth: 25 mm}
defaults:
  size: {height: 20 mm, width: 14 mm}
  block: {kind: accordion, stock: page, pages: 40}
  cover: {kind: wrap, stock: spines}
books:
  - {title: Tides, space: high, design: {style: cloth}}
  - {title: Ropes, space: low, design: {style: leather}}
  - {title: Winds, space: high, design: {style: pamphlet}}
  - {title: Stray, design: {style: school}}
"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    place = tmp_path_factory.mktemp("proof")
    (place / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    make(place / "shelf.yaml", place / "out", wishes=Wishes(contact_sheet=True))
    return place / "out"


def test_every_spine_stands_there_twice_in_the_order_of_the_spaces(folder: Path) -> None:
    said = "\n".join(page.extract_text() for page in PdfReader(folder / "spines.pdf").pages).casefold()
    true, enlarged = said.split("at true size")[1].split("at 400 %", 1)
    for part in (true, enlarged):
        # each word once: the front, which is cut off, says its title too
        found = list(dict.fromkeys(re.findall(r"low|high|tides|ropes|winds|stray", part)))
        assert found == ["low", "ropes", "high", "tides", "winds", "stray"]


def test_the_pictures_have_the_size_of_the_pages(folder: Path) -> None:
    # A4 lying is 297 × 210 mm: 3508 × 2480 dots at 300 to the inch, 1754 × 1240 at 150
    for name, width in (("spines-1.png", 3508), ("spines-2.png", 1754)):
        with Image.open(folder / name) as image:
            assert abs(image.width - width) <= 1


def test_true_size_is_true_and_400_percent_is_four_times_that(folder: Path) -> None:
    contents = [page["/Contents"].get_data() for page in PdfReader(folder / "spines.pdf").pages]
    true, *enlarged = [set(re.findall(rb"q ([0-9.]+) 0 0 ([0-9.]+) [-0-9. ]+ cm", content)) for content in contents]
    assert true == {(b"1", b"1")}
    assert all((b"4", b"4") in found for found in enlarged)


def test_the_files_are_listed_and_a_stock_of_that_name_is_not_overwritten(folder: Path) -> None:
    pictures = sorted(path.name for path in folder.glob("*.png"))
    files = json.loads((folder / "plan.json").read_text(encoding="utf-8"))["files"]
    assert files == ["page.pdf", "spines-2.pdf", "guide.pdf", "spines.pdf", *pictures, "plan.json"]
    assert sorted(path.name for path in folder.iterdir()) == sorted(files)


def test_the_same_shelf_gives_the_same_bytes(folder: Path) -> None:
    again = folder.parent / "again"
    make(folder.parent / "shelf.yaml", again, wishes=Wishes(contact_sheet=True))
    for path in folder.iterdir():
        assert path.read_bytes() == (again / path.name).read_bytes(), path.name


def test_nothing_is_made_that_was_not_asked_for(folder: Path) -> None:
    make(folder.parent / "shelf.yaml", folder.parent / "bare")
    bare = sorted(path.name for path in (folder.parent / "bare").iterdir())
    assert bare == ["guide.pdf", "page.pdf", "plan.json", "spines.pdf"]
