"""A whole shelf against drawing the same lines of text directly with reportlab, in one run.

    python -m tests.bench.bench_shelf [BOOKS]

Makes BOOKS (60) books of 64 pages of text, then draws the very lines found on their pages with reportlab's
own canvas, and prints both times, their ratio and the peak of memory.
"""

from __future__ import annotations

import resource
import sys
import tempfile
import time
from pathlib import Path

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen import canvas

from bookmaker import check, make
from bookmaker.ground.typefaces import bundled
from tests.kit.prose import paragraphs
from tests.kit.recording import record

PAGES = 64
WORDS_A_BOOK = 3600


def write_shelf(folder: Path, books: int) -> Path:
    """A shelf whose books all hold their own text."""
    text = paragraphs(books * WORDS_A_BOOK)
    listed = []
    for number in range(books):
        mine = text[number * len(text) // books : (number + 1) * len(text) // books]
        (folder / f"{number}.txt").write_text("\n\n".join(mine), encoding="utf-8")
        listed.append(f"  - {{title: Book {number}, inside: {{kind: text, file: {number}.txt, size: 2.2 pt}}}}\n")
    shelf = folder / "shelf.yaml"
    shelf.write_text(
        "shelf: Bench\n"
        "stocks:\n  page: {caliper: 75 um, grain: long}\n  cover: {caliper: 160 um, grain: long}\n"
        "defaults:\n  size: {height: 21 mm, width: 15 mm}\n"
        f"  block: {{kind: accordion, stock: page, pages: {PAGES}}}\n  cover: {{kind: wrap, stock: cover}}\n"
        "books:\n" + "".join(listed),
        encoding="utf-8",
    )
    return shelf


def lines_of(shelf: Path) -> list[list[tuple[float, float, float, str]]]:
    """Every line of text of every strip: x, y, size and text, in mm."""
    strips = []
    for draft in check(shelf).drafts.values():
        for piece in draft.pieces:
            if piece.flat.kind == "strip":
                strips.append([(text.at.x, text.at.y, text.line.size, text.text) for text in record(piece.art).texts])
    return strips


def draw_directly(strips: list[list[tuple[float, float, float, str]]], path: Path) -> float:
    """Seconds that reportlab takes to draw the lines, ten strips a page."""
    pdfmetrics.registerFont(TTFont("reference", str(bundled("text").path)))
    point = 72 / 25.4
    start = time.perf_counter()
    page = canvas.Canvas(str(path), pagesize=(210 * point, 297 * point), pageCompression=1)
    for number, strip in enumerate(strips):
        for x, y, size, text in strip:
            page.setFont("reference", size * point)
            page.drawString(x * point, (y + number % 10 * 27) * point, text)
        if number % 10 == 9:
            page.showPage()
    page.save()
    return time.perf_counter() - start


def main() -> None:
    """Run the benchmark and print what was measured."""
    books = int(sys.argv[1]) if len(sys.argv) > 1 else 60
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        shelf = write_shelf(folder, books)
        start = time.perf_counter()
        make(shelf, folder / "out")
        ours = time.perf_counter() - start
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        strips = lines_of(shelf)
        direct = draw_directly(strips, folder / "direct.pdf")
    print(f"{books} books x {PAGES} pages, {sum(map(len, strips))} lines")
    print(f"bookmaker make   {ours:.2f} s, peak memory {peak:.0f} MB")
    print(f"lines directly   {direct:.2f} s")
    print(f"ratio            {ours / direct:.2f}")


if __name__ == "__main__":
    main()
