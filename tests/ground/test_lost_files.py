"""A file that is not there is named as it was written, with the file that was probably meant."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.ground.lost_files import meant_file
from bookmaker.ground.problems import ShelfFileError

SHELF = """\
shelf: The Rope Walk
stocks: {{laid: {{caliper: 75 um}}, card: {{caliper: 160 um}}}}
books:
  - title: Hemp
    size: {{height: 21 mm, width: 15 mm}}
    block: {{kind: accordion, stock: laid, pages: 8}}
    cover: {{kind: wrap, stock: card}}
    {line}
"""


@pytest.fixture
def walk(tmp_path: Path) -> Path:
    texts = ("texts/novel.md", "texts/index.txt", "titles.csv")
    for name in (*texts, "art/Sun.png", "faces/hemp.ttf", "plates/1.png"):
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text("Hemp.", encoding="utf-8")
    return tmp_path


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("texts/Novel.md", "texts/novel.md"),
        ("texts/novle.md", "texts/novel.md"),
        ("texts/novel.txt", "texts/novel.md"),
        ("text/novel.md", "texts/novel.md"),
        ("Texts/NOVEL.MD", "texts/novel.md"),
        ("./texts/../texts/Novel.md", "texts/../texts/novel.md"),
        ("texts/ballads.md", ""),
        ("novel.md", ""),
        ("nowhere/at/all.md", ""),
        ("art/sun.png", "art/Sun.png"),
        ("x" * 3000, ""),
    ],
)
def test_the_file_meant_is_found_by_its_name(walk: Path, written: str, meant: str) -> None:
    assert meant_file(walk / written, written) == meant


def test_an_ending_alone_makes_no_names_alike(tmp_path: Path) -> None:
    (tmp_path / "b.txt").touch()
    assert meant_file(tmp_path / "a.txt", "a.txt") == ""


def test_a_shelf_file_is_not_meant_by_a_name_with_another_ending(tmp_path: Path) -> None:
    (tmp_path / "loft.yaml").touch()
    assert meant_file(tmp_path / "loft.md", "loft.md") == ""
    assert meant_file(tmp_path / "lfot.yaml", "lfot.yaml") == "loft.yaml"


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("inside: {kind: text, file: texts/Novel.md}", "there is no text texts/Novel.md; did you mean texts/novel.md?"),
        ("inside: {kind: pdf, file: texts/idex.txt}", "there is no PDF texts/idex.txt; did you mean texts/index.txt?"),
        ("inside: {kind: pictures, folder: plate}", "there is no folder plate; did you mean plates?"),
        ("inside: {kind: title page, face: faces/Hemp.ttf}", "there is no font file faces/Hemp.ttf; "
         "did you mean faces/hemp.ttf?"),
        ("design: {style: picture, front_picture: art/sun.png}", "there is no picture art/sun.png; "
         "did you mean art/Sun.png?"),
        ("design: {style: artwork, picture: art/son.png}", "there is no picture art/son.png; "
         "did you mean art/Sun.png?"),
        ("inside: {kind: text, file: letters.md}", "there is no text letters.md; "
         "write its path as seen from the folder of the shelf file"),
    ],
)  # fmt: skip
def test_a_message_shows_the_path_as_written_and_the_one_meant(walk: Path, line: str, told: str) -> None:
    (walk / "shelf.yaml").write_text(SHELF.format(line=line), encoding="utf-8")
    with pytest.raises(ShelfFileError) as caught:
        check(walk / "shelf.yaml")
    assert [str(problem).split(": ", 1)[1] for problem in caught.value.problems] == [told]


def test_a_list_of_books_is_told_alike(walk: Path) -> None:
    text = SHELF.split("books:", maxsplit=1)[0].format() + "books: from title.csv\n"
    (walk / "shelf.yaml").write_text(text, encoding="utf-8")
    with pytest.raises(ShelfFileError, match=r"there is no table title\.csv; did you mean titles\.csv\?"):
        check(walk / "shelf.yaml")


def test_a_picture_that_a_text_names_is_told_alike(walk: Path) -> None:
    (walk / "hemp.md").write_text("Fibre.\n\n![A heap](art/sun.png)\n", encoding="utf-8")
    (walk / "shelf.yaml").write_text(SHELF.format(line="inside: {kind: text, file: hemp.md}"), encoding="utf-8")
    with pytest.raises(ShelfFileError, match=r"not there: art/sun\.png in line 3; did you mean art/Sun\.png\?"):
        check(walk / "shelf.yaml")


def test_a_file_to_whose_name_an_editor_added_txt_is_told_of(walk: Path) -> None:
    (walk / "shelf.yaml.txt").write_text(SHELF.format(line=""), encoding="utf-8")
    with pytest.raises(ShelfFileError) as refusal:
        check(walk / "shelf.yaml")
    said = str(refusal.value)
    assert "shelf.yaml, but shelf.yaml.txt" in said
    assert "take .txt off its name" in said
