"""Small files that ask for much: refused before the work is done, with what to do instead."""

from __future__ import annotations

import time
import zlib
from pathlib import Path
from typing import Any

import pikepdf
import pytest
from PIL import Image
from reportlab.pdfgen.canvas import Canvas

from bookmaker.ground import pictures
from bookmaker.ground.colours.on_screen import to_screen_colours
from bookmaker.ground.imported import load_pages
from bookmaker.ground.operators import page_streams
from bookmaker.ground.pictures import load_picture
from bookmaker.ground.problems import ShelfFileError


def pdf(path: Path, pages: int = 1) -> Path:
    canvas = Canvas(str(path), pagesize=(85, 119), invariant=1)
    for number in range(pages):
        canvas.drawString(10, 60, f"Page {number}")
        canvas.showPage()
    canvas.save()
    return path


def refusal(path: Path) -> str:
    start = time.process_time()
    with pytest.raises(ShelfFileError) as caught:
        load_pages(path) if path.suffix == ".pdf" else load_picture(path)
    assert time.process_time() - start < 3
    (problem,) = caught.value.problems
    assert problem.remedy
    return problem.message


def test_a_page_that_unfolds_without_measure(tmp_path: Path) -> None:
    path = pdf(tmp_path / "a.pdf", pages=2)
    with pikepdf.open(path, allow_overwriting_input=True) as file:
        blank = zlib.compress(b" " * 60_000_000)
        file.pages[1].obj.Contents = pikepdf.Stream(file, blank, Filter=pikepdf.Name.FlateDecode)
        file.save(path, compress_streams=False)
    assert path.stat().st_size < 100_000
    assert refusal(path) == "page 2 of a.pdf draws more than can be printed"


def test_one_stream_named_many_times_on_a_page(tmp_path: Path) -> None:
    path = pdf(tmp_path / "a.pdf")
    with pikepdf.open(path, allow_overwriting_input=True) as file:
        stream = file.make_indirect(
            pikepdf.Stream(file, zlib.compress(b" " * 5_000_000), Filter=pikepdf.Name.FlateDecode)
        )
        file.pages[0].obj.Contents = pikepdf.Array([stream] * 20)
        file.save(path, compress_streams=False)
    assert refusal(path) == "page 1 of a.pdf draws more than can be printed"


def test_one_stream_shared_by_many_pages(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(page_streams, "MOST_IN_ALL", 1000)
    path = pdf(tmp_path / "a.pdf", pages=40)
    assert load_pages(pdf(tmp_path / "few.pdf", pages=3))
    assert refusal(path).endswith(" of a.pdf draws more than can be printed")


def test_streams_that_hold_objects_without_end(tmp_path: Path) -> None:
    path = pdf(tmp_path / "a.pdf")
    path.write_bytes(path.read_bytes().replace(b"%%EOF", b"9 0 obj<</Type/ObjStm/N 1000000>>endobj\n%%EOF"))
    assert refusal(path) == "a.pdf holds more objects than pages need"


@pytest.mark.parametrize("what", ["a picture", "a font"])
def test_what_is_damaged_in_a_page_is_told_with_the_page(tmp_path: Path, what: str) -> None:
    path = tmp_path / "a.pdf"
    Image.effect_noise((40, 40), 90).convert("RGB").save(tmp_path / "a.png")
    canvas = Canvas(str(path), pagesize=(85, 119), invariant=1)
    canvas.showPage()
    canvas.drawImage(tmp_path / "a.png", 10, 10, 40, 40)
    canvas.drawString(10, 80, "Salt")
    canvas.save()
    load_pages(path)
    with pikepdf.open(path, allow_overwriting_input=True) as file:
        broken = pikepdf.Stream(file, b"no deflated stream at all", Filter=pikepdf.Name.FlateDecode)
        file.pages[0].obj.Contents = file.make_stream(b"0 0 m")  # it names the font as well, and sets nothing
        resources = file.pages[1].obj.Resources
        if what == "a picture":
            (name,) = resources.XObject.keys()
            for key, value in resources.XObject[name].items():
                if key not in ("/Filter", "/DecodeParms", "/Length"):
                    broken[key] = value
            resources.XObject[name] = broken
        else:
            (font,) = resources.Font.values()
            font.FontDescriptor = file.make_indirect(
                pikepdf.Dictionary(Type=pikepdf.Name.FontDescriptor, FontFile2=file.make_indirect(broken))
            )
        file.save(path, compress_streams=False)
    with pytest.raises(ShelfFileError) as caught:
        load_pages(path)
    assert caught.value.problems[0].message == "page 2 of a.pdf is damaged"
    assert len(load_pages(path, ((1, 1),))[0]) == 1


def test_a_picture_that_needs_more_memory_than_there_is(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its 100 × 100 pixels are held as four colours, as their opacity, on white, and as RGB: 160 kB."""
    path = tmp_path / "a.png"
    Image.new("RGBA", (100, 100), (9, 9, 9, 9)).save(path)
    load_picture(path)
    monkeypatch.setattr(pictures, "MOST_HELD", 150_000)
    assert refusal(path) == "a.png needs 0 MB of memory, more than 0 MB"
    Image.new("RGB", (100, 100)).save(path)
    load_picture(path)


@pytest.mark.parametrize(
    ("name", "keys", "times"),
    [
        ("a.webp", {}, 4),
        ("a.jpg", {"progressive": True}, 2),
        ("a.jpg", {}, 1),
        ("a.tif", {"compression": "tiff_lzw", "strip_size": 1_000_000}, 2),
        ("a.tif", {"compression": "tiff_lzw", "strip_size": 5000}, 1),
        ("a.tif", {}, 1),
    ],
)
def test_what_a_decoder_holds_besides_is_counted(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str, keys: dict[str, Any], times: int
) -> None:
    """Of 100 × 100 pixels in RGB, at four bytes each."""
    Image.new("RGB", (100, 100), (9, 90, 200)).save(tmp_path / name, **keys)
    monkeypatch.setattr(pictures, "MOST_HELD", 40_000 * times)
    load_picture(tmp_path / name)
    monkeypatch.setattr(pictures, "MOST_HELD", 40_000 * times - 1)
    assert refusal(tmp_path / name).startswith(f"{name} needs 0 MB of memory")


def test_plain_colours_are_not_copied() -> None:
    """A picture of 99 million pixels takes 400 MB as it is."""
    for mode in ("RGB", "L"):
        image = Image.new(mode, (9, 9))
        assert to_screen_colours(image, (255, 255, 255)) is image


def test_a_column_of_one_pixel(tmp_path: Path) -> None:
    path = tmp_path / "a.png"
    Image.new("L", (1, 70_000)).save(path)
    assert refusal(path) == "a.png is 70000 pixels long, more than 65000"
