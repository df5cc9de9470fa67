"""What `import bookmaker` offers: opened once, asked again and again, pictures as notebooks show them."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from importlib.resources import files
from pathlib import Path

import pytest

import bookmaker
from bookmaker.ground.problems import BookmakerError
from tests.kit.shelves import ONE_BOOK


@pytest.fixture
def shelf(tmp_path: Path) -> bookmaker.Shelf:
    """A shelf of one book."""
    (tmp_path / "shelf.yaml").write_text(ONE_BOOK, encoding="utf-8")
    return bookmaker.open(tmp_path / "shelf.yaml")


def test_what_is_offered() -> None:
    assert bookmaker.__all__ == ["Picture", "Progress", "Shelf", "check", "make", "open"]
    assert all(getattr(bookmaker, name).__doc__ for name in bookmaker.__all__ if name != "Progress")
    assert files(bookmaker).joinpath("py.typed").is_file()


def test_a_shelf_is_checked_and_made(shelf: bookmaker.Shelf, tmp_path: Path) -> None:
    assert shelf.check().sound
    made = shelf.make(str(tmp_path / "printed"))
    assert {file.name for file in made.files} == {file.name for file in (tmp_path / "printed").iterdir()}
    assert bookmaker.check(str(shelf.path)).sound
    again = bookmaker.make(shelf.path, tmp_path / "again")
    assert again.files == made.files
    for name in [file.name for file in made.files]:
        assert (tmp_path / "again" / name).read_bytes() == (tmp_path / "printed" / name).read_bytes()


def test_an_edit_is_seen_the_next_time(shelf: bookmaker.Shelf) -> None:
    before = shelf.pictures("Tide Tables")["spine"]
    assert shelf.pictures("1")["spine"] == before
    shelf.path.write_text(ONE_BOOK.replace("Tide Tables", "Tides"), encoding="utf-8")
    assert shelf.pictures("Tides")["spine"] != before


def test_pictures_are_svg_at_true_size(shelf: bookmaker.Shelf) -> None:
    pictures = shelf.pictures("Tide Tables")
    assert {"front", "spine", "back", "opening 1"} <= pictures.keys()
    for name, picture in {**pictures, **shelf.fronts()}.items():
        root = ET.fromstring(picture._repr_svg_())
        assert root.get("width") == f"{picture.width:.3f}".rstrip("0").rstrip(".") + "mm", name
    assert pictures["spine"].height == pytest.approx(shelf.check().drafts["tide-tables"].faces["spine"].box.height)


def test_what_is_not_there_is_refused_in_words(shelf: bookmaker.Shelf, tmp_path: Path) -> None:
    with pytest.raises(BookmakerError, match="did you mean 'Tide Tables'"):
        shelf.pictures("Tide Tabels")
    with pytest.raises(BookmakerError, match="there is no"):
        bookmaker.check(tmp_path / "none.yaml")
