"""Pages of pictures."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from bookmaker.drawing import NOTHING
from bookmaker.errors import Severity, ShelfFileError
from bookmaker.geometry import Path as Outline
from bookmaker.geometry import Rect
from bookmaker.pages import PageFrame
from bookmaker.pages import pictures as kind
from bookmaker.pages.pictures import PicturesInside, PicturesSource, compose, load, natural_order
from bookmaker.pictures import Picture

from .recording import record

FINE = Picture(Path("fine.png"), 3000, 4500, "")


def make(folder: Path, *names: str, size: tuple[int, int] = (400, 600)) -> None:
    folder.mkdir(exist_ok=True)
    for name in names:
        Image.new("RGB", size, "navy").save(folder / name)


def source(*pictures: Picture) -> PicturesSource:
    return PicturesSource("plates", pictures)


def refusal(tmp_path: Path, folder: str = "plates") -> list[str]:
    with pytest.raises(ShelfFileError) as caught:
        load(PicturesInside(folder=folder), tmp_path)
    assert all(problem.field == ("folder",) for problem in caught.value.problems)
    return [str(problem) for problem in caught.value.problems]


# ---- the folder


def test_pictures_come_in_the_order_people_count(tmp_path: Path) -> None:
    names = ["plate 10.png", "plate 2.png", "Plate 1.jpg", "plate 2b.webp", "atlas.tif"]
    make(tmp_path / "plates", *names)
    found = load(PicturesInside(folder="plates"), tmp_path)
    assert [picture.path.name for picture in found.pictures] == [
        "atlas.tif",
        "Plate 1.jpg",
        "plate 2.png",
        "plate 2b.webp",
        "plate 10.png",
    ]


@given(names=st.lists(st.text("ab12٣ ", max_size=6)), data=st.data())
def test_the_order_of_names_does_not_depend_on_how_they_were_found(names: list[str], data: st.DataObject) -> None:
    found = data.draw(st.permutations(names))
    assert sorted(found, key=natural_order) == sorted(names, key=natural_order)


def test_numbers_in_names_count_as_numbers() -> None:
    assert sorted(["2", "10", "1", "a", "a10b", "a2c"], key=natural_order) == [
        "1",
        "2",
        "10",
        "a",
        "a2c",
        "a10b",
    ]


def test_hidden_files_are_passed_over_quietly_and_others_are_named(tmp_path: Path) -> None:
    make(tmp_path / "plates", "1.png", "2.png")
    (tmp_path / "plates" / ".hidden.png").touch()
    (tmp_path / "plates" / "notes.txt").touch()
    (tmp_path / "plates" / "old").mkdir()
    entry = PicturesInside(folder="plates")
    inside = compose(entry, load(entry, tmp_path), PageFrame(15, 21, 2))
    assert [(str(p), p.severity) for p in inside.problems] == [
        ("not pictures, left out of plates: notes.txt", Severity.NOTE)
    ]


def test_folders_that_cannot_be_used_are_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert refusal(tmp_path) == ["there is no folder plates; write its path as seen from that of the shelf file"]
    (tmp_path / "plates").touch()
    assert refusal(tmp_path) == ["plates is a file, not a folder; write the folder that holds the pictures"]
    (tmp_path / "empty").mkdir()
    assert refusal(tmp_path, "empty") == [
        "the folder empty holds no pictures; put JPEG, PNG, WebP or TIFF files into it"
    ]
    assert refusal(tmp_path, "a\0b") == ["the folder a\0b cannot be read (embedded null byte); allow reading it"]
    make(tmp_path / "many", "1.png", "2.png", "3.png")
    monkeypatch.setattr(kind, "MOST_PICTURES", 2)
    assert refusal(tmp_path, "many") == [
        "many holds 3 pictures; no book has more than 2 pages; share them out among several folders and books"
    ]


def test_all_pictures_that_cannot_be_used_are_reported_together(tmp_path: Path) -> None:
    make(tmp_path / "plates", "1.png", "3.gif")
    (tmp_path / "plates" / "2.jpg").touch()
    assert refusal(tmp_path) == [
        "2.jpg is empty (0 bytes); save or copy it again from where it came",
        "3.gif is a GIF picture, which cannot be used; save it as JPEG, PNG, WebP or TIFF",
    ]


# ---- on the page

SIDES = st.integers(1, 5000)


@given(width=SIDES, height=SIDES, number=st.integers(1, 4), right_to_left=st.booleans())
def test_a_picture_fits_the_type_area_centred_and_undistorted(
    width: int, height: int, number: int, right_to_left: bool
) -> None:
    frame = PageFrame(15, 21, 4, right_to_left)
    picture = Picture(Path("x.png"), width, height, "")
    pages = compose(PicturesInside(folder="plates"), source(*[picture] * 4), frame).pages
    [placed] = record(pages[number - 1]).pictures
    area, bounds = frame.type_area(number), placed.bounds
    assert area.contains(bounds)
    assert bounds.centre == pytest.approx(area.centre)
    assert bounds.width / bounds.height == pytest.approx(width / height)
    assert bounds.width == pytest.approx(area.width) or bounds.height == pytest.approx(area.height)
    assert placed.clips == ()


@given(width=SIDES, height=SIDES)
def test_with_bleed_a_picture_covers_the_page_cropped_evenly(width: int, height: int) -> None:
    frame = PageFrame(15, 21, 2)
    picture = Picture(Path("x.png"), width, height, "")
    pages = compose(PicturesInside(folder="plates", bleed="yes"), source(picture, picture), frame).pages
    [placed] = record(pages[0]).pictures
    bounds, page = placed.bounds, Rect(0, 0, 15, 21)
    assert bounds.contains(page)
    assert bounds.centre == pytest.approx(page.centre)
    assert bounds.width / bounds.height == pytest.approx(width / height)
    assert bounds.width == pytest.approx(15) or bounds.height == pytest.approx(21)
    assert placed.clips == (() if page.contains(bounds) else (Outline.rectangle(page),))


def test_pages_without_a_picture_are_blank_and_noted() -> None:
    inside = compose(PicturesInside(folder="plates"), source(FINE, FINE, FINE), PageFrame(15, 21, 8))
    assert [page is NOTHING for page in inside.pages] == [False] * 3 + [True] * 5
    assert [(str(p), p.severity, p.field) for p in inside.problems] == [
        ("plates fills 3 of 8 pages; the others stay empty", Severity.NOTE, ("folder",))
    ]


def test_pictures_without_a_page_are_an_error_with_their_names() -> None:
    pictures = [Picture(Path(f"{n}.png"), 3000, 4500, "") for n in range(1, 8)]
    inside = compose(PicturesInside(folder="plates"), source(*pictures), PageFrame(15, 21, 2))
    assert len(inside.pages) == 2
    assert [(str(p), p.severity) for p in inside.problems] == [
        (
            "5 of 7 pictures of plates do not fit in 2 pages: 3.png, 4.png, 5.png and 2 more; "
            "write pages: 8 or take pictures out of the folder",
            Severity.ERROR,
        )
    ]


def test_a_coarse_picture_is_a_warning_with_the_pixels_it_needs() -> None:
    # the type area is 10 × 14 mm; 100 × 140 pixels there are 254 per inch, 300 need 119 × 166
    coarse = Picture(Path("coarse.png"), 100, 140, "")
    inside = compose(PicturesInside(folder="plates"), source(FINE, coarse), PageFrame(15, 21, 2))
    assert [(str(p), p.severity) for p in inside.problems] == [
        (
            "coarse.png prints at only 254 dots per inch; use a picture of at least 119 × 166 pixels",
            Severity.WARNING,
        )
    ]
    enough = Picture(Path("enough.png"), 119, 166, "")
    assert compose(PicturesInside(folder="plates"), source(FINE, enough), PageFrame(15, 21, 2)).problems == ()


def test_what_is_changed_in_a_picture_is_said() -> None:
    picture = Picture(Path("map.tif"), 3000, 4500, "", ("is CMYK", "is large"))
    inside = compose(PicturesInside(folder="plates"), source(FINE, picture), PageFrame(15, 21, 2))
    assert [(str(p), p.severity, p.field) for p in inside.problems] == [
        ("map.tif is CMYK", Severity.NOTE, ("folder",)),
        ("map.tif is large", Severity.NOTE, ("folder",)),
    ]


def test_numbers_stand_under_pictures_if_asked() -> None:
    entry = PicturesInside(folder="plates", numbers="yes")
    pages = compose(entry, source(FINE), PageFrame(15, 21, 2)).pages
    assert [mark.text for page in pages for mark in record(page).texts] == ["1", "2"]
    assert record(compose(PicturesInside(folder="plates"), source(FINE), PageFrame(15, 21, 2)).pages[0]).texts == []
