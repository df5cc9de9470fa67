"""Pages of pictures."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from bookmaker.ground.art import NOTHING
from bookmaker.ground.geometry import Path as Outline
from bookmaker.ground.geometry import Rect, Transform
from bookmaker.ground.pictures import Picture
from bookmaker.ground.problems import Severity, ShelfFileError
from bookmaker.ground.typefaces import bundled
from bookmaker.things.book.pages.pictured import folders as kind
from bookmaker.things.book.pages.pictured.captions import captions_of
from bookmaker.things.book.pages.pictured.folders import PicturesSource, natural_order
from bookmaker.things.book.pages.pictured.pictures import LoadedPictures, PicturesInside
from bookmaker.typesetting.book_type import BookType
from bookmaker.typesetting.lines.fount import Style
from bookmaker.typesetting.page import Inside, PageFrame
from tests.kit.pictures import png_bomb
from tests.kit.recording import record

FINE = Picture(Path("fine.png"), 3000, 4500, "")


def make(folder: Path, *names: str, size: tuple[int, int] = (400, 600)) -> None:
    folder.mkdir(exist_ok=True)
    for name in names:
        Image.new("RGB", size, "navy").save(folder / name)


def source(*pictures: Picture) -> PicturesSource:
    return PicturesSource("plates", pictures)


def refusal(tmp_path: Path, folder: str = "plates") -> list[str]:
    with pytest.raises(ShelfFileError) as caught:
        PicturesInside(folder=folder).load(tmp_path)
    assert all(problem.field == ("folder",) for problem in caught.value.problems)
    return [str(problem) for problem in caught.value.problems]


# ---- the folder


def test_pictures_come_in_the_order_people_count(tmp_path: Path) -> None:
    names = ["plate 10.png", "plate 2.png", "Plate 1.jpg", "plate 2b.webp", "atlas.tif"]
    make(tmp_path / "plates", *names)
    found = PicturesInside(folder="plates").load(tmp_path).pictures
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
    inside = entry.load(tmp_path).compose(PageFrame(15, 21, 2))
    assert [(str(p), p.severity) for p in inside.problems] == [
        ("not pictures, left out of plates: notes.txt", Severity.NOTE)
    ]


def test_folders_that_cannot_be_used_are_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert refusal(tmp_path) == ["there is no folder plates; write its path as seen from the folder of the shelf file"]
    (tmp_path / "plates").touch()
    assert refusal(tmp_path) == ["plates is a file, not a folder; write the folder that holds the pictures"]
    (tmp_path / "empty").mkdir()
    assert refusal(tmp_path, "empty") == [
        "the folder empty holds no pictures; put JPEG, PNG, WebP or TIFF files into it"
    ]
    assert refusal(tmp_path, "a\0b") == [
        "there is no folder a?b; write its path as seen from the folder of the shelf file"
    ]
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
    pages = LoadedPictures(PicturesInside(folder="plates"), source(*[picture] * 4)).compose(frame).pages
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
    pages = LoadedPictures(PicturesInside(folder="plates", bleed="yes"), source(picture, picture)).compose(frame).pages
    [placed] = record(pages[0]).pictures
    bounds, page = placed.bounds, Rect(0, 0, 15, 21)
    assert bounds.contains(page)
    assert bounds.centre == pytest.approx(page.centre)
    assert bounds.width / bounds.height == pytest.approx(width / height)
    assert bounds.width == pytest.approx(15) or bounds.height == pytest.approx(21)
    assert placed.clips == (() if page.contains(bounds) else (Outline.rectangle(page),))


def test_pages_without_a_picture_are_blank_and_noted() -> None:
    inside = LoadedPictures(PicturesInside(folder="plates"), source(FINE, FINE, FINE)).compose(PageFrame(15, 21, 8))
    assert [page is NOTHING for page in inside.pages] == [False] * 3 + [True] * 5
    assert [(str(p), p.severity, p.field) for p in inside.problems] == [
        ("plates fills 3 of 8 pages; the others stay empty", Severity.NOTE, ("folder",))
    ]


def test_the_back_of_the_last_leaf_is_no_news() -> None:
    inside = LoadedPictures(PicturesInside(folder="plates"), source(FINE, FINE, FINE)).compose(PageFrame(15, 21, 4))
    assert inside.problems == ()


def test_pictures_without_a_page_are_an_error_with_their_names() -> None:
    pictures = [Picture(Path(f"{n}.png"), 3000, 4500, "") for n in range(1, 8)]
    inside = LoadedPictures(PicturesInside(folder="plates"), source(*pictures)).compose(PageFrame(15, 21, 2))
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
    inside = LoadedPictures(PicturesInside(folder="plates"), source(FINE, coarse)).compose(PageFrame(15, 21, 2))
    assert [(str(p), p.severity) for p in inside.problems] == [
        (
            "coarse.png prints at only 254 dots per inch; use a picture of at least 119 × 166 pixels",
            Severity.WARNING,
        )
    ]
    enough = Picture(Path("enough.png"), 119, 166, "")
    assert (
        LoadedPictures(PicturesInside(folder="plates"), source(FINE, enough)).compose(PageFrame(15, 21, 2)).problems
        == ()
    )


def test_what_is_changed_in_a_picture_is_said() -> None:
    picture = Picture(Path("map.tif"), 3000, 4500, "", ("is CMYK", "is large"))
    inside = LoadedPictures(PicturesInside(folder="plates"), source(FINE, picture)).compose(PageFrame(15, 21, 2))
    assert [(str(p), p.severity, p.field) for p in inside.problems] == [
        ("map.tif is CMYK", Severity.NOTE, ("folder",)),
        ("map.tif is large", Severity.NOTE, ("folder",)),
    ]


def test_numbers_stand_under_pictures_if_asked() -> None:
    entry = PicturesInside(folder="plates", numbers="yes")
    pages = LoadedPictures(entry, source(FINE, FINE)).compose(PageFrame(15, 21, 4)).pages
    assert [[mark.text for mark in record(page).texts] for page in pages] == [["1"], ["2"], [], []]
    assert (
        record(
            LoadedPictures(PicturesInside(folder="plates"), source(FINE)).compose(PageFrame(15, 21, 2)).pages[0]
        ).texts
        == []
    )


# ---- across two pages


@given(
    width=SIDES,
    height=SIDES,
    page=st.sampled_from([(15.0, 21.0), (20.0, 12.0)]),
    right_to_left=st.booleans(),
    first=st.integers(1, 4),
    bleed=st.booleans(),
)
def test_the_halves_of_a_spread_meet_at_the_fold_and_nothing_is_lost_in_it(
    width: int, height: int, page: tuple[float, float], right_to_left: bool, first: int, bleed: bool
) -> None:
    frame = PageFrame(*page, 4, right_to_left, first=first)
    picture = Picture(Path("x.png"), width, height, "")
    entry = PicturesInside(folder="plates", spreads="all", bleed="yes" if bleed else "no")
    pages = LoadedPictures(entry, source(picture)).compose(frame).pages
    shown = [number for number, art in enumerate(pages, start=1) if art is not NOTHING]
    verso, recto = shown
    assert frame.folio(verso) % 2 == 0
    assert recto == verso + 1 <= 3
    left, right = (recto, verso) if right_to_left else (verso, recto)
    [on_left], [on_right] = record(pages[left - 1]).pictures, record(pages[right - 1]).pictures
    # laid side by side, left page first, both are one and the same picture
    moved = on_right.transform.then(Transform.move(page[0], 0))
    assert on_left.transform == pytest.approx(moved)
    spread = Rect(0, 0, 2 * page[0], page[1])
    bounds = on_left.bounds
    assert bounds.width / bounds.height == pytest.approx(width / height)
    assert bounds.contains(spread) if bleed else spread.contains(bounds)
    if bleed:
        assert bounds.centre == pytest.approx(spread.centre)
    # the left page shows it up to the fold and over, the right page from the fold and before
    for placed, inner, outer in ((on_left, page[0], 0.0), (on_right, 0.0, page[0])):
        [clip] = [Rect.around(path.points()) for path in placed.clips] or [placed.bounds]
        nearest, farthest = (clip.right, clip.x) if placed is on_left else (clip.x, clip.right)
        over = nearest - inner if placed is on_left else inner - nearest
        assert 0 <= over <= 0.1 + 1e-9 or not placed.clips
        assert 0 <= farthest <= page[0] or outer == farthest


def test_only_wide_pictures_lie_across_two_pages_if_asked() -> None:
    wide, high = Picture(Path("wide.png"), 4000, 3000, ""), Picture(Path("high.png"), 3000, 4000, "")
    entry = PicturesInside(folder="plates", spreads="wide")
    inside = LoadedPictures(entry, source(high, high, wide, high, wide)).compose(PageFrame(15, 21, 8))
    shown = [[placed.picture.path.stem for placed in record(page).pictures] for page in inside.pages]
    # a spread begins on an even page: page 3 stays blank before 4 and 5
    assert shown == [["high"], ["high"], [], ["wide"], ["wide"], ["high"], [], []]
    assert [str(problem) for problem in inside.problems] == [
        "1 of 5 pictures of plates do not fit in 8 pages: wide.png; write pages: 10 or take pictures out of the folder"
    ]


# ---- captions


def test_a_caption_stands_under_its_picture_in_the_type_area() -> None:
    captions = ("Low water", "The long breakwater at the second bend, seen from the lamp room in autumn")
    frame = PageFrame(15, 21, 2)
    pages = (
        LoadedPictures(PicturesInside(folder="plates"), PicturesSource("plates", (FINE, FINE), (), captions))
        .compose(frame)
        .pages
    )
    for number, (page, caption) in enumerate(zip(pages, captions, strict=True), start=1):
        drawn, area = record(page), frame.type_area(number)
        [placed] = drawn.pictures
        assert " ".join(text.text for text in drawn.texts) == caption
        assert len(drawn.texts) == number
        for text in drawn.texts:
            assert area.x <= text.at.x
            assert text.end.x <= area.right
            assert (text.at.x + text.end.x) / 2 == pytest.approx(area.centre.x)
            assert area.y < text.at.y < placed.bounds.y - 0.5 * text.line.size


def test_all_captions_of_a_part_are_as_small_as_the_longest_must_be() -> None:
    captions = ("Low water", "The long breakwater at the second bend, seen from the lamp room in a late autumn")
    inside = LoadedPictures(
        PicturesInside(folder="plates"), PicturesSource("plates", (FINE, FINE), (), captions)
    ).compose(PageFrame(15, 21, 2))
    [size] = {line.line.size for page in inside.pages for line in record(page).texts}
    assert size < 21 / 36


def test_the_caption_of_a_spread_stands_on_its_first_page_alone() -> None:
    entry = PicturesInside(folder="plates", spreads="all")
    wide = Picture(Path("wide.png"), 4000, 3000, "")
    for right_to_left in (False, True):
        pages = (
            LoadedPictures(entry, PicturesSource("p", (wide,), (), ("Fog",)))
            .compose(PageFrame(15, 21, 4, right_to_left))
            .pages
        )
        assert [[text.text for text in record(page).texts] for page in pages] == [[], ["Fog"], [], []]


def test_captions_that_print_as_texture_are_noted() -> None:
    long = PicturesSource("plates", (FINE, FINE), (), ("Fog", "The long breakwater at the second bend, " * 3))
    [note] = LoadedPictures(PicturesInside(folder="plates"), long).compose(PageFrame(9, 13, 2)).problems
    assert re.fullmatch(
        r"small letters of the captions are only \d\.\d printer dots high, in \d\.\d+ pt type: they print as texture",
        note.message,
    )
    assert (note.severity, note.field) == (Severity.NOTE, ("captions",))
    short = PicturesSource("plates", (FINE,), (), ("Fog",))
    assert LoadedPictures(PicturesInside(folder="plates"), short).compose(PageFrame(15, 21, 1)).problems == ()


def test_captions_have_no_room_beside_pictures_that_fill_the_page() -> None:
    entry = PicturesInside(folder="plates", bleed="yes")
    inside = LoadedPictures(entry, PicturesSource("plates", (FINE,), (), ("Fog",))).compose(PageFrame(15, 21, 1))
    assert record(inside.pages[0]).texts == []
    assert [(str(problem), problem.severity, problem.field) for problem in inside.problems] == [
        (
            "pictures that fill the page leave no room for captions, which are left out; "
            "write bleed: no, or leave captions out",
            Severity.WARNING,
            ("captions",),
        )
    ]


def test_captions_come_from_names_without_their_numbers(tmp_path: Path) -> None:
    make(tmp_path / "plates", "01 - the_skerry at dusk.png", "2.png", "Buoy 7.png")
    found = PicturesInside(folder="plates", captions="names").load(tmp_path).pictures
    assert found.captions == ("the skerry at dusk", "", "Buoy 7")


def test_captions_come_from_a_file_line_by_line(tmp_path: Path) -> None:
    make(tmp_path / "plates", "1.png", "2.png", "3.png")
    (tmp_path / "c.txt").write_bytes("\ufeffNorth\r\n\r\n  South \t Head\r\n\r\n".encode())
    entry = PicturesInside(folder="plates", captions="c.txt")
    found = entry.load(tmp_path).pictures
    assert (found.captions, found.problems) == (("North", "", "South Head"), ())
    (tmp_path / "c.txt").write_text("one\n", encoding="utf-8")
    found = entry.load(tmp_path).pictures
    assert found.captions == ("one", "", "")
    assert [(str(problem), problem.severity) for problem in found.problems] == [
        (
            "c.txt has 1 line for 3 pictures; write one line for each picture, in the order of their names; "
            "leave a line empty for no caption",
            Severity.WARNING,
        )
    ]
    assert LoadedPictures(entry, found).compose(PageFrame(15, 21, 3)).problems[-1] is not None


@pytest.mark.parametrize(
    ("name", "data", "message"),
    [
        (
            "none.txt",
            None,
            "there is no file of captions none.txt; "
            "write names, or the path of a text file with one line for each picture",
        ),
        ("l.txt", b"Gr\xfc\xdfe", "l.txt is not plain text in UTF-8; save it as plain text in UTF-8"),
        ("long.txt", b"x" * 1_000_001, "long.txt has 1.0 MB, more than 1 MB; write one line for each picture"),
        (
            ".",
            None,
            " is a folder, not a file of captions; "
            "write names, or the path of a text file with one line for each picture",
        ),
    ],
)
def test_captions_that_cannot_be_used_are_refused(tmp_path: Path, name: str, data: bytes | None, message: str) -> None:
    if data is not None:
        (tmp_path / name).write_bytes(data)
    with pytest.raises(ShelfFileError) as caught:
        captions_of(name, ["1"], tmp_path)
    assert str(caught.value).endswith(message)
    assert caught.value.problems[0].field == ("captions",)


def captioned(tmp_path: Path, frame: PageFrame, said: str = "Fog", **keys: str) -> Inside:
    make(tmp_path / "plates", "1.png", size=(3000, 4500))
    (tmp_path / "c.txt").write_text(said, encoding="utf-8")
    return PicturesInside(folder="plates", captions="c.txt", **keys).load(tmp_path).compose(frame)


def face_of_caption(inside: Inside) -> str:
    [caption] = record(inside.pages[0]).texts
    return caption.line.runs[0][1].typeface.name


def test_letters_that_captions_cannot_show_are_an_error(tmp_path: Path) -> None:
    found = captioned(tmp_path, PageFrame(15, 21, 1), "Fog \u4e00")
    [told] = [problem for problem in found.problems if problem.severity is Severity.ERROR]
    assert str(told) == (
        "the typeface of captions, Noto Serif, has no glyph for \u4e00 U+4E00; "
        "write face: with one that has them, or the captions without them"
    )
    assert told.field == ("captions",)


def test_captions_are_in_the_italic_of_the_text_or_in_a_face_of_their_own(tmp_path: Path) -> None:
    frame = PageFrame(15, 21, 1)
    family = {Style.ROMAN: bundled("old style"), Style.ITALIC: bundled("old style italic")}
    assert face_of_caption(captioned(tmp_path, frame)) == "Noto Serif Italic"
    with_text = replace(frame, type=BookType(family, ("EB Garamond",)))
    assert face_of_caption(captioned(tmp_path, with_text)) == "EB Garamond Italic"
    assert face_of_caption(captioned(tmp_path, with_text, face="sans")) == "Open Sans"
    roman = replace(frame, type=BookType({Style.ROMAN: bundled("didone")}, ("Libre Bodoni",)))
    assert face_of_caption(captioned(tmp_path, roman)) == bundled("didone").name


def test_a_face_of_captions_that_is_none_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ShelfFileError, match="oldish"):
        captioned(tmp_path, PageFrame(15, 21, 1), face="oldish")


# ---- pictures of no size, or too much of it


def test_a_picture_of_one_pixel_is_a_warning_with_what_it_needs(tmp_path: Path) -> None:
    make(tmp_path / "plates", "dot.png", size=(1, 1))
    entry = PicturesInside(folder="plates")
    inside = entry.load(tmp_path).compose(PageFrame(15, 21, 1))
    # the type area is 10 mm wide: one pixel there is 2.54 per inch
    assert [str(problem) for problem in inside.problems] == [
        "dot.png prints at only 3 dots per inch; use a picture of at least 119 × 119 pixels"
    ]


def test_a_picture_of_900_million_pixels_is_refused_before_it_is_decoded(tmp_path: Path) -> None:
    (tmp_path / "plates").mkdir()
    (tmp_path / "plates" / "huge.png").write_bytes(png_bomb(30_000))
    assert refusal(tmp_path) == [
        "huge.png has 30000 × 30000 pixels, more than 100 million; scale it down to 10000 × 10000 pixels or fewer"
    ]
