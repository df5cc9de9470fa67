"""Small files that ask for much, and large ones: what each takes in a process of its own.

    python -m tests.kit.bombs [NAME ...]

Each is made by `bookmaker make`; a line says how it ended, its seconds of the processor and the most megabytes it held.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
import zlib
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, NamedTuple

import pikepdf
from PIL import Image
from reportlab.pdfgen.canvas import Canvas

from tests.kit.fonts import calls_upon_calls, without_end
from tests.kit.spreadsheets import office, open_document

__all__ = ["BOMBS", "Taken", "laid_and_taken"]

SHELF = """\
shelf: Bombs
stocks: {laid: {caliper: 75 um, grain: long}, card: {caliper: 160 um, grain: long}}
defaults:
  size: {height: 42 mm, width: 30 mm}
  block: {kind: accordion, stock: laid}
  cover: {kind: wrap, stock: card}
books:
  - title: Tide Tables
    INSIDE
"""
HOUSE = Path(__file__).parents[2]

EIGHT = "block: {kind: accordion, stock: laid, pages: 8}\n    "
WORDS = "The keeper trims the lamp at dusk and writes down the wind, the sea and the state of the sky.\n\n"
DEFLATED = pikepdf.Name.FlateDecode

MEASURING = (
    "import json, os, subprocess, sys\n"
    "run = subprocess.Popen(sys.argv[1:], stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)\n"
    "said = run.stderr.read().decode(errors='replace')\n"
    "_, code, used = os.wait4(run.pid, 0)\n"
    "print(json.dumps([os.waitstatus_to_exitcode(code), used.ru_utime + used.ru_stime, used.ru_maxrss / 1024, said]))\n"
)
"""A small process that starts another and tells what it took: of what a large one starts, its own memory is counted."""


class Taken(NamedTuple):
    """How a run ended: its code, seconds of the processor, megabytes at most, and what it said of what was wrong."""

    code: int
    seconds: float
    megabytes: float
    said: str


def taken(folder: Path) -> Taken:
    """What `bookmaker make` takes for the shelf file in a folder."""
    command = [sys.executable, "-m", "bookmaker", "make", "--into", "out", "--quiet", "--no-cache"]
    around = os.environ | {"PYTHONPATH": str(HOUSE)}
    told = subprocess.run(
        [sys.executable, "-c", MEASURING, *command], cwd=folder, env=around, stdout=subprocess.PIPE, check=True
    )
    return Taken(*json.loads(told.stdout))


def _deflated(byte: bytes, megabytes: int) -> bytes:
    """So many megabytes of one byte, never held at once."""
    packing = zlib.compressobj(1)
    return b"".join([*(packing.compress(byte * 1_000_000) for _ in range(megabytes)), packing.flush()])


Bomb = Callable[[Path], str]
"""Lays the files of a case into a folder, and tells how a book names them, or the whole shelf."""


def _pdf(change: Callable[[pikepdf.Pdf], None], pages: int = 1) -> Bomb:
    def laid(folder: Path) -> str:
        canvas = Canvas(str(folder / "a.pdf"), pagesize=(85, 119), invariant=1)
        for number in range(pages):
            canvas.drawString(10, 60, f"Page {number}")
            canvas.showPage()
        canvas.save()
        with pikepdf.open(folder / "a.pdf", allow_overwriting_input=True) as file:
            change(file)
            file.save(folder / "a.pdf", compress_streams=False)
        return "inside: {kind: pdf, file: a.pdf}"

    return laid


def _blank_pages(file: pikepdf.Pdf) -> None:
    """Twenty pages, each of which unfolds to 70 MB."""
    blank = zlib.compress(b" " * 70_000_000)
    for page in file.pages:
        page.obj.Contents = pikepdf.Stream(file, blank, Filter=DEFLATED)


def _just_allowed(file: pikepdf.Pdf) -> None:
    """Pages that unfold to as much as one may."""
    blank = zlib.compress(b" " * 39_000_000)
    for page in file.pages:
        page.obj.Contents = pikepdf.Stream(file, blank, Filter=DEFLATED)


def _folded_twice(file: pikepdf.Pdf) -> None:
    """A stream that unfolds to one that unfolds to a gigabyte."""
    blank = zlib.compress(_deflated(b" ", 1000))
    file.pages[0].obj.Contents = pikepdf.Stream(file, blank, Filter=pikepdf.Array([DEFLATED, DEFLATED]))


def _run_lengths(file: pikepdf.Pdf) -> None:
    """Bytes that tell how often one is repeated, deflated: a thousandfold, and then sixty-fourfold."""
    blank = zlib.compress(b"\x81 " * 5_000_000)
    filters = pikepdf.Array([DEFLATED, pikepdf.Name.RunLengthDecode])
    file.pages[0].obj.Contents = pikepdf.Stream(file, blank, Filter=filters)


def _forms(file: pikepdf.Pdf) -> None:
    """A form that draws ten forms, each of which draws ten others, and so on: ten thousand million marks."""
    below = file.make_stream(b"0 0 1 1 re f", Type=pikepdf.Name.XObject, Subtype=pikepdf.Name.Form)
    below.BBox = pikepdf.Array([0, 0, 85, 119])
    for _ in range(10):
        above = file.make_stream(b"/A Do " * 10, Type=pikepdf.Name.XObject, Subtype=pikepdf.Name.Form)
        above.BBox, above.Resources = below.BBox, pikepdf.Dictionary(XObject=pikepdf.Dictionary(A=below))
        below = above
    file.pages[0].obj.Resources = pikepdf.Dictionary(XObject=pikepdf.Dictionary(A=below))
    file.pages[0].obj.Contents = file.make_stream(b"/A Do")


def _scan(file: pikepdf.Pdf) -> None:
    """A picture of 400 million pixels, all white."""
    keys = {"Type": "/XObject", "Subtype": "/Image", "ColorSpace": "/DeviceRGB", "Filter": "/FlateDecode"}
    white = _deflated(b"\xff", 1200)
    image = pikepdf.Stream(file, white, {f"/{key}": pikepdf.Name(value) for key, value in keys.items()})
    image.Width, image.Height, image.BitsPerComponent = 20_000, 20_000, 8
    file.pages[0].obj.Resources = pikepdf.Dictionary(XObject=pikepdf.Dictionary(A=image))
    file.pages[0].obj.Contents = file.make_stream(b"80 0 0 80 0 0 cm /A Do")


def _many_objects(folder: Path) -> str:
    """A stream of objects that says it holds a million."""
    inside = _pdf(lambda _: None)(folder)
    objects = b" ".join(b"%d %d" % (number + 20, 2 * number) for number in range(1_000_000)) + b" " + b"1 " * 1_000_000
    packed = zlib.compress(objects)
    head = b"9 0 obj<</Type/ObjStm/N 1000000/First %d/Filter/FlateDecode/Length %d>>stream\n"
    data = (folder / "a.pdf").read_bytes()
    stream = head % (len(objects) - 2_000_000, len(packed)) + packed + b"\nendstream endobj\n"
    (folder / "a.pdf").write_bytes(data.replace(b"%%EOF", stream + b"%%EOF"))
    return inside


def _picture(name: str, mode: str, width: int, height: int, **keys: Any) -> Bomb:
    def laid(folder: Path) -> str:
        Image.new(mode, (width, height)).save(folder / name, **keys)
        return f"{EIGHT}design: {{front_picture: {name}}}"

    return laid


def _text(text: str) -> Bomb:
    def laid(folder: Path) -> str:
        (folder / "a.md").write_text(text, encoding="utf-8")
        return "inside: {kind: text, file: a.md}"

    return laid


def _font(make: Callable[[Path], object]) -> Bomb:
    def laid(folder: Path) -> str:
        make(folder / "own.ttf")
        (folder / "a.md").write_text(WORDS.replace("The", "tide abcdefgx"), encoding="utf-8")
        return "inside: {kind: text, file: a.md, face: ./own.ttf}"

    return laid


def _table(name: str, data: bytes) -> Bomb:
    def laid(folder: Path) -> str:
        (folder / name).write_bytes(data)
        return f"block: {{kind: accordion, stock: laid, pages: 8}}\n  - from {name}"

    return laid


def _plates(folder: Path) -> str:
    """Sixty pictures of sixteen million pixels."""
    (folder / "plates").mkdir()
    picture = Image.linear_gradient("L").resize((4000, 4000)).convert("RGB")
    for number in range(60):
        picture.save(folder / "plates" / f"{number}.jpg")
    return "inside: {kind: pictures, folder: plates}"


def _written(text: str) -> Bomb:
    return lambda _: text


LAUGHS = "\n    ".join(f"x{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10)}]" for n in range(1, 12))
"""Names for lists of names for lists: a hundred thousand million words."""

CELL = '<c t="inlineStr"><is><t>Log</t></is></c>'

BOMBS: Mapping[str, Bomb] = {
    "pdf: twenty pages of 70 MB": _pdf(_blank_pages, 20),
    "pdf: four pages of 39 MB": _pdf(_just_allowed, 4),
    "pdf: folded twice": _pdf(_folded_twice),
    "pdf: run lengths": _pdf(_run_lengths),
    "pdf: forms in forms": _pdf(_forms),
    "pdf: a scan of 400 million pixels": _pdf(_scan),
    "pdf: a million objects": _many_objects,
    "picture: PNG, 99 million pixels": _picture("a.png", "RGB", 9900, 10_000),
    "picture: PNG, 99 million, opacity": _picture("a.png", "RGBA", 9900, 10_000),
    "picture: PNG, 99 million, 16 bits": _picture("a.png", "I;16", 9900, 10_000),
    "picture: PNG, 99 million, one bit": _picture("a.png", "1", 9900, 10_000),
    "picture: JPEG, 99 million, CMYK": _picture("a.jpg", "CMYK", 9900, 10_000),
    "picture: JPEG, 99 million, progressive": _picture("a.jpg", "RGB", 9900, 10_000, progressive=True),
    "picture: TIFF, 99 million": _picture("a.tif", "RGB", 9900, 10_000, compression="tiff_lzw"),
    "picture: TIFF, 99 million, deflated in one strip": _picture(
        "a.tif", "RGB", 9900, 10_000, compression="tiff_deflate", strip_size=300_000_000
    ),
    "picture: WEBP, 99 million": _picture("a.webp", "RGB", 9900, 10_000),
    "picture: a column": _picture("a.png", "L", 1, 65_000),
    "picture: sixty plates": _plates,
    "text: one word of 5 MB": _text("abcde" * 1_000_000),
    "text: 200 000 words": _text(WORDS * 10_000),
    "text: a pile of marks": _text("a" + "\u0301\u0323" * 1_000_000),
    "text: short lines": _text("a\n" * 200_000),
    "text: hashes": _text("# " * 1_000_000),
    "text: a table": _text("| a | b |\n|---|---|\n" + "| x | y |\n" * 50_000),
    "text: notes": _text("".join(f"a[^{at}]\n\n[^{at}]: note\n\n" for at in range(20_000))),
    "font: calls upon calls": _font(calls_upon_calls),
    "font: letters without end": _font(without_end),
    "shelf: 100 000 unknown keys": _written("\n    ".join(f"kye{number}: 1" for number in range(100_000))),
    "shelf: braces in braces": _written("inside: " + "[" * 100_000),
    "shelf: names for names": _written("author: &a0 [x, x]\n    " + LAUGHS),
    "shelf: a title of 5 MB": _written("author: " + "Salt " * 1_000_000),
    "table: 5 000 rows": _table("b.csv", ("title,pages\n" + "".join(f"B {n},16\n" for n in range(5000))).encode()),
    "table: xlsx of two million cells": _table("b.xlsx", office([CELL * 200] * 10_000)),
    "table: xlsx of one long cell": _table("b.xlsx", office([CELL.replace("Log", "x" * 200_000_000)])),
    "table: ods of many repeats": _table(
        "b.ods",
        open_document(
            [
                '<table:table-row table:number-rows-repeated="1000000"><table:table-cell '
                'table:number-columns-repeated="16000"><text:p>a</text:p></table:table-cell></table:table-row>'
            ]
        ),
    ),
}


def laid_and_taken(name: str, folder: Path) -> Taken:
    """Lay the files of a case into a folder and make its shelf."""
    inside = BOMBS[name](folder)
    (folder / "shelf.yaml").write_text(SHELF.replace("INSIDE", inside), encoding="utf-8")
    return taken(folder)


def main() -> None:
    """Run the cases that are named, or all, and say what each took."""
    for name in sys.argv[1:] or BOMBS:
        with tempfile.TemporaryDirectory() as folder:
            found = laid_and_taken(name, Path(folder))
        taken_by = f"{found.code} {found.seconds:6.1f} s {found.megabytes:5.0f} MB"
        print(f"{taken_by}  {name}  {found.said[:150]!r}", flush=True)


if __name__ == "__main__":
    main()
