"""Albums and plates under tissue: photographs in their corners on dark leaves, plates that show through."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations
from pathlib import Path

import pytest
from PIL import Image

from bookmaker.ground.art import NOTHING
from bookmaker.ground.drawing import Colour, luminance
from bookmaker.ground.pictures import Picture
from bookmaker.things.book.pages.pictured.album import AlbumInside, LoadedAlbum
from bookmaker.things.book.pages.pictured.folders import PicturesSource
from bookmaker.things.book.pages.pictured.pictures import LoadedPictures, PicturesInside
from bookmaker.typesetting.page import PageFrame
from tests.kit.recording import RecordingCanvas, ink_box, record
from tests.kit.shelves import checked

SHELF = """\
shelf: Albums
stocks:
  paper: {caliper: 90 um}
books:
  - title: Summers
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: paper, pages: 8}
    cover: {kind: wrap, stock: paper}
    inside: {kind: album, folder: p, captions: names}
"""
TALL, WIDE = Picture(Path("tall.png"), 600, 900, "a"), Picture(Path("wide.png"), 900, 600, "b")
LEAF = Colour.from_hex("#3b342d")


def album(*pictures: Picture, captions: Sequence[str] = (), **keys: object) -> LoadedAlbum:
    written = AlbumInside.model_validate({"kind": "album", "folder": "p", **keys})
    return LoadedAlbum(written, PicturesSource("p", pictures, (), tuple(captions)))


def page(album: LoadedAlbum, frame: PageFrame, number: int = 1) -> RecordingCanvas:
    return record(album.compose(frame).pages[number - 1])


@pytest.mark.parametrize("frame", [PageFrame(15, 21, 1), PageFrame(24, 18, 1), PageFrame(15, 21, 1, bleed=1.0)])
@pytest.mark.parametrize("many", range(1, 7))
def test_photographs_lie_apart_on_their_page_each_with_border_and_four_corners(frame: PageFrame, many: int) -> None:
    pictures = [TALL, WIDE, TALL, WIDE, TALL, TALL][:many]
    drawn = page(album(*pictures, captions=["Fog"] * many, on_page=str(many)), frame)
    seen = [placed.bounds for placed in drawn.pictures]
    assert len(seen) == many
    for one, other in combinations(seen, 2):
        assert not one.overlaps(other)
    ground, *fills = drawn.fills
    assert ground.colour == LEAF
    assert ground.path.bounds == frame.inked(1)
    prints = [fill.path.bounds for fill in fills if fill.colour == Colour.from_hex("#f1ead9")]
    assert all(whole.contains(picture) for whole, picture in zip(prints, seen, strict=True))
    corners = [fill for fill in fills if len([*fill.path.points()]) == 3]
    assert len(corners) == 4 * many
    for mark in (*prints, *(corner.path.bounds for corner in corners)):
        assert frame.page().contains(mark)
    for text in drawn.texts:
        assert frame.page().contains(ink_box(text))
        assert not any(whole.overlaps(ink_box(text), 0.02) for whole in prints)


@pytest.mark.parametrize(("paper", "white"), [("#3b342d", True), ("#d9d2c0", False)])
def test_captions_are_white_on_dark_leaves_and_dark_on_light_ones(paper: str, white: bool) -> None:
    (text,) = page(album(TALL, captions=["Fog"], paper=paper), PageFrame(15, 21, 1)).texts
    assert (luminance(text.colour) > 0.5) is white


def test_an_album_takes_as_many_pages_as_it_needs_or_all_that_a_book_has_left() -> None:
    three = album(TALL, WIDE, TALL, on_page="2")
    assert three.extent(PageFrame(15, 21, 9)) == 2
    assert three.extent(PageFrame(15, 21, 9, asked=9)) is None
    pages = three.compose(PageFrame(15, 21, 3)).pages
    assert [fill.colour for fill in record(pages[2]).fills] == [LEAF], "a leaf without photographs is dark too"


def test_photographs_without_a_page_are_told() -> None:
    (problem,) = album(TALL, WIDE, TALL).compose(PageFrame(15, 21, 2)).problems
    assert problem.message == "1 of 3 photographs of p do not fit in 2 pages: tall.png"


def test_photographs_are_toned_as_asked() -> None:
    (sepia,) = page(album(TALL), PageFrame(15, 21, 1)).pictures
    (plain,) = page(album(TALL, tone="as it is"), PageFrame(15, 21, 1)).pictures
    assert sepia.picture.tones
    assert plain.picture == TALL


def test_an_album_in_a_book_is_looked_through_by_its_names(tmp_path: Path) -> None:
    (tmp_path / "p").mkdir()
    for name in ("1 fog", "2 rain"):
        Image.new("L", (400, 500), 90).save(tmp_path / "p" / f"{name}.png")
    (draft,) = checked(SHELF, tmp_path).drafts.values()
    assert [text.text for seen in draft.pages[:2] for text in record(seen.art).texts] == ["fog", "rain"]


def plates(*pictures: Picture, **keys: object) -> LoadedPictures:
    written = PicturesInside.model_validate({"kind": "pictures", "folder": "p", "tissue": "yes", **keys})
    return LoadedPictures(written, PicturesSource("p", pictures, (), ("Fog",) * len(pictures)))


@pytest.mark.parametrize("first", [1, 2])
@pytest.mark.parametrize("bleed", ["yes", "no"])
def test_a_plate_shows_through_its_tissue_and_leaves_a_ghost_behind(first: int, bleed: str) -> None:
    """Tissue and plate are rectos: through the one the other is seen in its place; the ghost faces it, mirrored."""
    frame = PageFrame(15, 21, 9, first=first)
    loaded = plates(TALL, WIDE, bleed=bleed)
    pages = loaded.compose(frame).pages
    tissue = 1 if first == 1 else 2
    through, ghost, plate = (record(pages[tissue - 1 + at]) for at in range(3))
    (seen,), (mirrored,), (printed,) = through.pictures, ghost.pictures, plate.pictures
    assert frame.folio(tissue + 2) % 2 == 1
    assert seen.bounds == printed.bounds
    assert mirrored.transform.a < 0
    across = (frame.width - printed.bounds.right, frame.width - printed.bounds.x)
    assert (mirrored.bounds.x, mirrored.bounds.right) == pytest.approx(across)
    assert printed.picture == TALL
    (dark, _), (fainter, light) = seen.picture.tones or (), mirrored.picture.tones or ()
    assert dark < fainter < light
    assert not through.texts
    assert not ghost.texts
    assert pages[tissue + 2] is NOTHING, "the back of the plate"
    assert loaded.extent(frame) == tissue + 6


def test_tissue_lies_before_single_pages_alone() -> None:
    with pytest.raises(ValueError, match="tissue before pictures across two pages"):
        plates(WIDE, spreads="wide")


def test_letters_that_handwriting_has_not_are_an_error() -> None:
    told = [str(problem) for problem in album(TALL, captions=["Fog \u4e00"]).compose(PageFrame(15, 21, 1)).problems]
    assert (
        "the typeface of captions, Dancing Script, has no glyph for \u4e00 U+4E00; write the captions without them"
    ) in told
