"""Short lines of text, drawn by our canvas and by reportlab's own, in one run.

    python -m tests.bench.bench_pdf_text [LINES]

Both draw the same words at the same places with the same typeface; ours shapes and kerns them too, with
nothing remembered from before. What is printed is the median of five rounds, ours and reportlab's in turn.
"""

from __future__ import annotations

import io
import random
import statistics
import sys
import tempfile
import time
from pathlib import Path

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from bookmaker.ground.drawing import BLACK
from bookmaker.ground.geometry import Point, Size
from bookmaker.ground.typefaces import TextLine, bundled, load_typeface
from bookmaker.ground.units import to_pt
from bookmaker.writers.pdf import PdfFile

WORDS_A_LINE, VOCABULARY, LINES_A_PAGE = 8, 3000, 250
ROUNDS = 5
PAGE, SIZE, LEADING = Size(210, 297), 1.0, 1.1


def vocabulary() -> list[str]:
    """Made-up words of two to ten letters, with every letter pair that kerns and ligatures now and then."""
    chance = random.Random(3)
    letters = "etaoinshrdlucmfwypvbgkjqxzAVTW"
    weights = [12, 9, 8, 8, 7, 7, 6, 6, 6, 4, 4, 3, 3, 2, 4, 2, 2, 2, 1, 1, 2, 1, 1, 1, 1, 1, 1, 1, 1, 1]
    return ["".join(chance.choices(letters, weights, k=chance.randint(2, 10))) for _ in range(VOCABULARY)]


def made_up_lines(count: int) -> list[list[str]]:
    """Lines of words; every word but the last of a line brings its space with it."""
    chance, words = random.Random(4), vocabulary()
    lines = [chance.choices(words, k=WORDS_A_LINE) for _ in range(count)]
    return [[*(word + " " for word in line[:-1]), line[-1]] for line in lines]


def ours(lines: list[list[str]], font: Path) -> int:
    """Shape every word, place it, draw each line."""
    typeface = load_typeface(font)
    file = io.BytesIO()
    with PdfFile(file, title="bench") as pdf:
        for start in range(0, len(lines), LINES_A_PAGE):
            with pdf.page(PAGE) as canvas:
                for row, words in enumerate(lines[start : start + LINES_A_PAGE]):
                    runs, x = [], 0.0
                    for word in words:
                        run = typeface.shape(word)
                        runs.append((x, run))
                        x += run.width * SIZE
                    canvas.text(TextLine(SIZE, tuple(runs)), Point(10, 285 - row * LEADING), BLACK)
    return len(file.getvalue())


def reportlabs(lines: list[list[str]], font: Path) -> int:
    """Draw each line as one string, unkerned."""
    pdfmetrics.registerFont(TTFont(font.stem, font))
    file = io.BytesIO()
    canvas = Canvas(file, (to_pt(PAGE.width), to_pt(PAGE.height)), pageCompression=1, invariant=1)
    for start in range(0, len(lines), LINES_A_PAGE):
        canvas.setFont(font.stem, to_pt(SIZE))
        for row, words in enumerate(lines[start : start + LINES_A_PAGE]):
            canvas.drawString(to_pt(10), to_pt(285 - row * LEADING), "".join(words))
        canvas.showPage()
    canvas.save()
    return len(file.getvalue())


def main() -> None:
    """Time both and print the ratio."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 100_000
    lines = made_up_lines(count)
    seconds: dict[str, list[float]] = {"bookmaker": [], "reportlab": []}
    sizes: dict[str, int] = {}
    with tempfile.TemporaryDirectory() as folder:
        for turn in range(ROUNDS):
            for name, draw in (("bookmaker", ours), ("reportlab", reportlabs)):
                # A file of its own each time, so that no typeface is known already.
                font = Path(folder, f"{name}-{turn}.ttf")
                font.write_bytes(bundled("text").data)
                before = time.perf_counter()
                sizes[name] = draw(lines, font)
                seconds[name].append(time.perf_counter() - before)
    for name, taken in seconds.items():
        typical = statistics.median(taken)
        print(f"{name}: {count} lines in {typical:.2f} s, {count / typical:.0f} a second, {sizes[name]:,} B")
    ratio = statistics.median(seconds["bookmaker"]) / statistics.median(seconds["reportlab"])
    print(f"bookmaker / reportlab: {ratio:.2f}")


if __name__ == "__main__":
    main()
