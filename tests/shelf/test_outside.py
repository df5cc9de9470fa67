"""Texts from outside the folder of the shelf file need a word of the maker."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.ground.problems import ShelfFileError
from bookmaker.shelf.outside import outside_texts
from bookmaker.shelf.reading import read_shelf
from bookmaker.shelf.register import register_of

SHELF = """\
shelf: The Letter Rack
{line}
stocks: {{laid: {{caliper: 75 um}}, card: {{caliper: 160 um}}}}
defaults:
  size: {{height: 42 mm, width: 30 mm}}
  block: {{kind: accordion, stock: laid, pages: 16}}
  cover: {{kind: wrap, stock: card}}
books:
  - title: Letters
    inside: {{kind: text, file: "{file}", size: 3 pt}}
"""


@pytest.fixture
def rack(tmp_path: Path) -> Path:
    """A shelf's folder beside one with letters, and links from one to the other."""
    for folder in ("rack/texts", "letters/old"):
        (tmp_path / folder).mkdir(parents=True)
    for name in ("rack/a.txt", "rack/texts/b.txt", "letters/c.txt", "letters/old/d.txt"):
        (tmp_path / name).write_text("Dear reader.", encoding="utf-8")
    (tmp_path / "rack" / "link.txt").symlink_to("../letters/c.txt")
    (tmp_path / "rack" / "linked").symlink_to("../letters")
    (tmp_path / "letters" / "back.txt").symlink_to("../rack/a.txt")
    return tmp_path / "rack"


def written(rack: Path, file: str, line: str = "") -> Path:
    path = rack / "shelf.yaml"
    path.write_text(SHELF.format(file=file, line=line), encoding="utf-8")
    return path


def refusals(path: Path) -> list[str]:
    with pytest.raises(ShelfFileError) as caught:
        check(path)
    return [str(problem) for problem in caught.value.problems]


OUTSIDE = {
    "../letters/c.txt": "../letters",
    "texts/../../letters/old/d.txt": "texts/../../letters/old",
    "link.txt": "{letters}",
    "linked/old/d.txt": "linked/old",
    "{letters}/c.txt": "{letters}",
}


@pytest.mark.parametrize("file", OUTSIDE)
def test_a_text_from_elsewhere_is_refused_until_its_folder_is_named(rack: Path, file: str) -> None:
    letters = (rack.parent / "letters").as_posix()
    name, folder = file.format(letters=letters), OUTSIDE[file].format(letters=letters)
    told = (
        f"shelf.yaml:10:32: {name} lies outside the folder of the shelf file; "
        f"copy it there, or add the line texts_from: {folder} to the shelf file"
    )
    assert refusals(written(rack, name)) == [told]
    assert refusals(written(rack, name, "texts_from: [texts, old]")) == [told]
    assert check(written(rack, name, f"texts_from: {folder}")).sound
    assert check(written(rack, name, f"texts_from: [texts, '{letters}']")).sound


@pytest.mark.parametrize("file", ["a.txt", "texts/b.txt", "./texts/../a.txt", "../rack/a.txt", "../letters/back.txt"])
def test_a_text_of_the_shelf_s_own_folder_needs_no_word(rack: Path, file: str) -> None:
    assert check(written(rack, file)).sound


def test_a_folder_that_begins_alike_is_another(rack: Path) -> None:
    (rack.parent / "rack2").mkdir()
    (rack.parent / "rack2" / "e.txt").write_text("Dear reader.", encoding="utf-8")
    assert "lies outside" in refusals(written(rack, "../rack2/e.txt"))[0]


def test_what_a_system_keeps_is_not_printed(rack: Path) -> None:
    for file in ("/etc/passwd", "/proc/self/environ", "/dev/stdin"):
        told = refusals(written(rack, file))
        assert told[0].startswith(f"shelf.yaml:10:32: {file} lies outside the folder of the shelf file; ")
        assert not any("root" in line for line in told)


def test_captions_count_as_texts_and_pictures_do_not(rack: Path) -> None:
    shelf = written(rack, "a.txt")
    pictures = "    inside: {kind: pictures, folder: ../letters, captions: ../letters/c.txt}\n"
    shelf.write_text(shelf.read_text().rpartition("    inside")[0] + pictures, encoding="utf-8")
    spec = read_shelf(shelf).spec
    register = register_of(spec)
    found = list(outside_texts(register, spec.texts_from, rack))
    assert [((*register.fields[problem.thing], *problem.field), problem.message) for problem in found] == [
        (("books", 0, "inside", "captions"), "../letters/c.txt lies outside the folder of the shelf file")
    ]


def test_what_all_books_share_is_told_once(rack: Path) -> None:
    shelf = written(rack, "../letters/c.txt")
    head, _, inside = shelf.read_text().rpartition("    inside")
    head = head.replace("books:", f"  inside{inside}books:").replace("- title: Letters", "- title: A\n  - title: B")
    shelf.write_text(head, encoding="utf-8")
    assert len(refusals(shelf)) == 1


def test_a_name_that_no_file_can_have_is_told_as_missing(rack: Path) -> None:
    assert [told for told in refusals(written(rack, "x" * 3000)) if "lies outside" in told] == []
