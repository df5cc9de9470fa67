"""Every key and every option that takes a path meets everything that may stand there and is no file."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path
from types import FrameType
from typing import get_args, get_type_hints

import pytest

from bookmaker.cli.commands import app
from bookmaker.shelf_file.fields.entry import NamesFile
from tests.kit.command_line import Said, bookmaker
from tests.kit.models import all_models
from tests.kit.special_files import NO_FILES, lay

SHELF = """\
shelf: The Cupboard
stocks: {{laid: {{caliper: 75 um}}, card: {{caliper: 160 um}}}}
{whole}
books:
  - title: Doors
    size: {{height: 42 mm, width: 30 mm}}
    block: {{kind: accordion, stock: laid, pages: 16}}
    cover: {{kind: wrap, stock: card}}
    {own}
  {listed}
"""

KEYS: Mapping[str, tuple[str, str]] = {
    "PrinterEntry.profile": ("whole", "printer: {{profile: {}}}"),
    "BoxFace.picture": ("whole", "slipcases: {{box: {{stock: card, books: Doors, faces: {{back: {{picture: {}}}}}}}}}"),
    "SurfaceEntry.picture": (
        "whole",
        "things: [{{id: b, kind: frame, stock: card, width: 20 mm, height: 20 mm, shows: {{picture: {}}}}}]",
    ),
    "BoxSides.picture": (
        "whole",
        "things: [{{id: b, kind: tray, stock: card, inside: {{length: 30 mm, width: 20 mm, height: 10 mm}}, "
        "faces: {{picture: {}}}}}]",
    ),
    "FaceEntry.picture": (
        "whole",
        "things: [{{id: p, kind: print, stock: card, width: 20 mm, height: 20 mm, front: {{picture: {}}}}}]",
    ),
    "TextInside.file": ("own", "inside: {{kind: text, file: {}}}"),
    "TextInside.face": ("own", "inside: {{kind: text, file: words.txt, face: ./{}}}"),
    "TextInside.italic_face": ("own", "inside: {{kind: text, file: words.txt, italic_face: ./{}}}"),
    "TextInside.bold_face": ("own", "inside: {{kind: text, file: words.txt, bold_face: ./{}}}"),
    "PicturesInside.folder": ("own", "inside: {{kind: pictures, folder: {}}}"),
    "PicturesInside.captions": ("own", "inside: {{kind: pictures, folder: plates, captions: {}}}"),
    "PicturesInside.face": ("own", "inside: {{kind: pictures, folder: plates, face: ./{}}}"),
    "AlbumInside.folder": ("own", "inside: {{kind: album, folder: {}}}"),
    "AlbumInside.captions": ("own", "inside: {{kind: album, folder: plates, captions: {}}}"),
    "PdfInside.file": ("own", "inside: {{kind: pdf, file: {}}}"),
    "OwnArtwork.picture": ("own", "design: {{style: artwork, picture: {}}}"),
    "PictureCover.front_picture": ("own", "design: {{style: picture, front_picture: {}}}"),
    "PictureCover.spine_picture": ("own", "design: {{style: picture, spine_picture: {}}}"),
    "PictureCover.back_picture": ("own", "design: {{style: picture, back_picture: {}}}"),
    "Plain.front_picture": ("own", "design: {{front_picture: {}}}"),
    "Plain.back_picture": ("own", "design: {{back_picture: {}}}"),
    "HalfTitle.face": ("own", "inside: {{kind: half title, face: ./{}}}"),
    "TitlePage.face": ("own", "inside: {{kind: title page, face: ./{}}}"),
    "Dedication.face": ("own", "inside: {{kind: dedication, text: To all, face: ./{}}}"),
    "Epigraph.face": ("own", "inside: {{kind: epigraph, text: To all, face: ./{}}}"),
    "Contents.face": ("own", "inside: {{kind: contents, face: ./{}}}"),
    "Colophon.face": ("own", "inside: {{kind: colophon, face: ./{}}}"),
    "ShelfSpec.books": ("listed", "- from {}"),
    "a picture of a text": ("own", "inside: {{kind: text, file: plates.md}}"),
    "a PDF of a cover": ("own", "design: {{style: artwork, picture: {}.pdf}}"),
}
"""Where each key stands, and how it is written with a path."""

NOT_A_FILE = {**dict.fromkeys(NO_FILES), "a name too long": None, "an endless name": None}


@pytest.fixture(autouse=True)
def cupboard(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """A folder to work in, and an end to what takes for ever."""

    def late(_: int, __: FrameType | None) -> None:
        raise TimeoutError("it hangs")

    monkeypatch.chdir(tmp_path)
    (tmp_path / "words.txt").write_text("Doors and doors.", encoding="utf-8")
    (tmp_path / "plates.md").write_text("Doors.\n\n![A door](odd)\n", encoding="utf-8")
    (tmp_path / "plates").mkdir()
    before = signal.signal(signal.SIGALRM, late)
    signal.alarm(30)
    yield tmp_path
    signal.alarm(0)
    signal.signal(signal.SIGALRM, before)


def shelf(place: str, line: str, name: str) -> str:
    parts = {"whole": "", "own": "", "listed": ""} | {place: line.format(name)}
    Path("shelf.yaml").write_text(SHELF.format(**parts), encoding="utf-8")
    return "shelf.yaml"


def laid(what: str) -> str:
    """Something that is no file, under a name that is returned."""
    if what == "a name too long":
        return "x" * 300
    if what == "an endless name":
        return "/".join(["xyz"] * 1500)
    lay(what, Path("odd"))
    lay(what, Path("odd.pdf"))
    return "odd"


def test_all_keys_that_take_a_path_are_tried() -> None:
    marked = {
        f"{model.__name__}.{key}"
        for model in all_models()
        for key, field in model.model_fields.items()
        if "NamesFile" in repr(field) or any(isinstance(mark, NamesFile) for mark in field.metadata)
    }
    assert marked - {"PaperPath.profile"} == {key for key in KEYS if "." in key} - {"ShelfSpec.books"}


@pytest.mark.parametrize("what", NOT_A_FILE)
@pytest.mark.parametrize("key", KEYS)
def test_a_key_that_names_no_file_is_refused_at_once(key: str, what: str) -> None:
    if key in ("PicturesInside.folder", "AlbumInside.folder") and what == "a folder":
        pytest.skip("that is what it takes")
    place, line = KEYS[key]
    refused(bookmaker("check", shelf(place, line, laid(what))), "shelf.yaml:")


OPTIONS = {
    "check": ("check", "{}"),
    "make": ("make", "{}", "--into", "out"),
    "make --into": ("make", "shelf.yaml", "--into", "{}"),
    "ruler --into": ("ruler", "--into", "{}"),
    "ruler --printer": ("ruler", "--into", "page.pdf", "--printer", "{}"),
    "ruler --measured": ("ruler", "--measured", "{}"),
    "new": ("new", "{}"),
    "show": ("show", "{}", "--no-browser"),
    "show --into": ("show", "shelf.yaml", "--into", "{}"),
    "looks": ("looks", "Doors", "{}"),
    "looks --into": ("looks", "Doors", "shelf.yaml", "--into", "{}", "--count", "1"),
    "keep": ("keep", "{}"),
    "arrange": ("arrange", "{}"),
    "arrange --into": ("arrange", "shelf.yaml", "--into", "{}"),
    "manual --into": ("manual", "--into", "{}"),
    "freeze": ("freeze", "{}"),
}


def test_all_options_that_take_a_path_are_tried() -> None:
    tried = {f"{name.partition(' --')[0]} {name.partition(' --')[2] or 'the argument'}" for name in OPTIONS}
    found = {
        f"{command.callback.__name__} {'the argument' if key in ('shelf', 'folder') else key}"
        for command in app.registered_commands
        if command.callback
        for key, kind in get_type_hints(command.callback).items()
        if Path in (kind, *get_args(kind))
    }
    assert found == tried


TAKEN = {("make --into", "a folder"), ("new", "a folder")}
"""Options that take what others refuse."""


@pytest.mark.parametrize("what", NOT_A_FILE)
@pytest.mark.parametrize("option", OPTIONS)
def test_an_option_that_names_no_file_is_refused_at_once(option: str, what: str) -> None:
    shelf("own", "", "")
    name = laid(what)
    before = sorted(Path().iterdir())
    said = bookmaker(*(part.format(name) for part in OPTIONS[option]), typed="inkjet\n" + "\n" * 20)
    if (option, what) in TAKEN:
        assert said.code == 0
        return
    refused(said)
    assert sorted(Path().iterdir()) == before


def refused(said: Said, where: str = "") -> None:
    """Nothing was done, and it is said why in a line or two that fit a screen."""
    assert (said.code, said.out) == (2, "")
    assert "Traceback" not in said.err
    assert said.err.startswith(where)
    assert max(map(len, said.err.splitlines())) < 500
    assert "; " in said.err.splitlines()[0]


@pytest.mark.parametrize("option", OPTIONS)
def test_a_working_folder_that_is_gone_is_told(option: str, cupboard: Path) -> None:
    here = cupboard / "here"
    here.mkdir()
    os.chdir(here)
    here.rmdir()
    said = bookmaker(*(part.format("any") for part in OPTIONS[option]), typed="inkjet\n" + "\n" * 20)
    assert (said.code, said.out) == (2, "")
    assert said.err == "the folder you are in is no longer there; go to another one, and run the command again\n"


@pytest.mark.skipif(os.name != "posix", reason="other systems keep the folder that somebody is in")
@pytest.mark.parametrize("option", ["ruler --into", "looks", "keep"])
def test_a_process_that_begins_in_a_folder_that_is_gone_tells_it(option: str, cupboard: Path) -> None:
    """What is loaded for these commands looks for the working folder as soon as it is."""
    words = [part.format("any") for part in OPTIONS[option]]
    begin = f"mkdir here && cd here && rmdir ../here && {sys.executable} -m bookmaker {' '.join(words)}"
    around = os.environ | {"PYTHONPATH": str(Path(__file__).parents[2])}
    said = subprocess.run(begin, shell=True, cwd=cupboard, env=around, capture_output=True, text=True, check=False)
    assert (said.returncode, said.stdout) == (2, "")
    told = " ".join(said.stderr.split())
    assert told == "the folder you are in is no longer there; go to another one, and run the command again"
