"""What a shelf asks for is summed over all that is on it, and refused at once, where the sum passes the limit."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image
from reportlab.pdfgen.canvas import Canvas

from bookmaker.ground import files, pictures
from bookmaker.ground.demands import LIMITS, Summed
from bookmaker.ground.files import Wanted
from bookmaker.ground.problems import ShelfFileError
from bookmaker.workshop import Workshop
from tests.kit.fonts import font_of_boxes

HEAD = """\
shelf: The Ferry Office
stocks: {page: {caliper: 75 um}, card: {caliper: 160 um}}
spaces: {wall: {width: 200 mm, height: 40 mm, depth: 40 mm}}
defaults:
  size: {height: 21 mm, width: 15 mm}
  space: wall
  cover: {kind: wrap, stock: card}
  block: {kind: accordion, stock: page, pages: 8}
books:
"""

INSIDES = {
    "letters": "{kind: text, file: n.txt, size: 2.4 pt}",
    "pixels": "{kind: pictures, folder: n}",
    "pages of PDFs": "{kind: pdf, file: n.pdf}",
    "operators": "{kind: pdf, file: n.pdf}",
    "bytes": "{kind: text, file: n.txt, size: 2.4 pt}",
    "fonts": "{kind: text, file: n.txt, size: 2.4 pt, face: n.ttf}",
}

UNITS: dict[Summed, int] = {"letters": 600, "pixels": 1200, "pages of PDFs": 1, "bytes": 600, "fonts": 1, "things": 1}
"""What one book asks for."""


def shelf(folder: Path, books: int, inside: str = "{kind: blank}") -> Path:
    """A shelf of so many books, each with files of its own."""
    lines = [
        f"  - {{title: Tolls {n}, inside: {inside.replace('n.', f'{n}.').replace('folder: n', f'folder: {n}')}}}\n"
        for n in range(1, books + 1)
    ]
    for n in range(1, books + 1):
        (folder / f"{n}.txt").write_text(("fog " * 149 + f"b{n:02}.").ljust(600), encoding="ascii")
        font_of_boxes(
            folder / f"{n}.ttf", "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 .-" + chr(0xE0 + n)
        )
        (folder / str(n)).mkdir(exist_ok=True)
        Image.new("RGB", (40, 30), (n, 0, 0)).save(folder / str(n) / "quay.png")
        canvas = Canvas(str(folder / f"{n}.pdf"), pagesize=(60, 42), pageCompression=1)
        canvas.line(0, 0, 60, 42)
        canvas.showPage()
        canvas.save()
    path = folder / "shelf.yaml"
    path.write_text(HEAD + "".join(lines), encoding="utf-8")
    return path


def refusals(workshop: Workshop, path: Path) -> list[str]:
    """What a workshop says of a shelf that it refuses; nothing if it does not."""
    try:
        workshop.check(path)
    except ShelfFileError as refusal:
        return [str(problem) for problem in refusal.problems]
    return []


@pytest.mark.parametrize("summed", [*LIMITS])
def test_the_sum_is_refused_where_it_passes_the_limit_and_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, summed: Summed
) -> None:
    one = asked_by_one_book(tmp_path, monkeypatch, summed)
    path = shelf(tmp_path, 5, INSIDES.get(summed, "{kind: blank}"))
    monkeypatch.setitem(LIMITS, summed, replace(LIMITS[summed], most=5 * one, one=1))
    assert refusals(Workshop(), path) == []
    monkeypatch.setitem(LIMITS, summed, replace(LIMITS[summed], most=3 * one, one=1))
    (said,) = refusals(Workshop(), path)
    asked = 5 if summed == "things" else 4 * one
    assert f"the shelf asks for {asked:_} ".replace("_", " ") in said
    assert f"more than {3 * one:_}".replace("_", " ") in said
    assert LIMITS[summed].remedy in said
    named = {"things": "with this", "pages": "with Tolls 4", "pixels": "with quay.png", "fonts": "with 4.ttf"}
    assert named.get(summed, "with 4.") in said
    assert said.startswith(f"{path.name}:13:") or summed == "things"


def asked_by_one_book(folder: Path, monkeypatch: pytest.MonkeyPatch, summed: Summed) -> int:
    """The lowest limit that a shelf of one book keeps, found by halving."""
    path = shelf(folder, 1, INSIDES.get(summed, "{kind: blank}"))
    low, high = 0, 1 << 16
    while high - low > 1:
        most = (low + high) // 2
        monkeypatch.setitem(LIMITS, summed, replace(LIMITS[summed], most=most))
        low, high = (most, high) if refusals(Workshop(), path) else (low, most)
    assert high == UNITS.get(summed, high)
    return high


@pytest.mark.parametrize("summed", ["pixels", "letters", "pages of PDFs", "pages", "fonts"])
def test_what_is_kept_from_last_time_counts_as_if_it_were_read_now(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, summed: Summed
) -> None:
    path = shelf(tmp_path, 4, INSIDES.get(summed, "{kind: blank}"))
    whole = path.read_text(encoding="utf-8")
    less = "".join(line for line in whole.splitlines(keepends=True) if "Tolls 4" not in line)
    one = asked_by_one_book(tmp_path, monkeypatch, summed)
    monkeypatch.setitem(LIMITS, summed, replace(LIMITS[summed], most=3 * one))
    workshop = Workshop()
    for text, refused in ((less, False), (whole, True), (whole, True), (less, False), (less, False)):
        path.write_text(text, encoding="utf-8")
        assert bool(refusals(workshop, path)) == refused
        assert bool(refusals(Workshop(), path)) == refused


def test_nothing_is_read_past_the_limit(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = shelf(tmp_path, 6, INSIDES["pixels"])
    monkeypatch.setitem(LIMITS, "pixels", replace(LIMITS["pixels"], most=2 * 1200))
    read: list[str] = []
    reading = files.read_file

    def noted(file: Path, wanted: Wanted, written: str = "") -> files.SourceFile:
        read.append(str(file.relative_to(tmp_path)))
        return reading(file, wanted, written)

    monkeypatch.setattr(pictures, "read_file", noted)
    assert len(refusals(Workshop(), path)) == 1
    assert read == ["1/quay.png", "2/quay.png", "3/quay.png"]


def test_a_typeface_of_many_books_counts_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = shelf(tmp_path, 3, "{kind: text, file: n.txt, size: 2.4 pt, face: 1.ttf}")
    monkeypatch.setitem(LIMITS, "fonts", replace(LIMITS["fonts"], most=1))
    assert refusals(Workshop(), path) == []
