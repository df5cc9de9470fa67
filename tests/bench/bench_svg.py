"""New pictures of one book as SVG, for every book of the demo, against the same as PDF pages, in one run.

    python -m tests.bench.bench_svg

Pictures are those that change with a title: the parts of the cover as they are cut, front, spine and back, and two
pages that face each other. Prints CPU milliseconds, median and worst over the books, and the kB of each picture.
"""

from __future__ import annotations

import gc
import io
import statistics
import sys
import time
from collections.abc import Callable, Sequence
from pathlib import Path

from bookmaker import check
from bookmaker.ground.art import Group
from bookmaker.ground.geometry import Transform
from bookmaker.sheets.facsimiles import Facsimile
from bookmaker.writers.pdf import PdfFile
from bookmaker.writers.svg import svg_picture
from tests.kit.book_pictures import pictures_of

DEMO = Path(__file__).parents[2] / "demo" / "shelf.yaml"
ROUNDS = 3
MEDIAN_MS, WORST_MS = 60.0, 150.0


def as_svg(one: Facsimile) -> int:
    """The bytes of its SVG."""
    return len(svg_picture(one.art, one.box).encode())


def as_pdf(one: Facsimile) -> int:
    """The bytes of a PDF with it on its only page."""
    data = io.BytesIO()
    with PdfFile(data, title="bench") as pdf, pdf.page(one.box.size) as canvas:
        Group((one.art,), Transform.move(-one.box.x, -one.box.y)).draw(canvas)
    return len(data.getvalue())


def measure(
    books: Sequence[Sequence[Facsimile]], written: Callable[[Facsimile], int]
) -> tuple[float, float, list[int]]:
    """CPU milliseconds a book, median and worst, and the bytes of each picture."""
    times: list[list[float]] = [[] for _ in books]
    sizes: list[int] = []
    for number in range(ROUNDS):
        for pictures, taken in zip(books, times, strict=True):
            start = time.process_time()
            found = [written(one) for one in pictures]
            taken.append((time.process_time() - start) * 1000)
            sizes += found if number == 0 else []
    each = [min(taken) for taken in times]
    return statistics.median(each), max(each), sizes


def main() -> None:
    """Run the benchmark and print what was measured; ends with 1 if a bound is not kept."""
    books = [list(pictures_of(draft)) for draft in check(DEMO).drafts.values()]
    gc.collect()
    gc.freeze()
    results = {name: measure(books, written) for name, written in (("SVG", as_svg), ("PDF", as_pdf))}
    for name, (median, worst, sizes) in results.items():
        middle = statistics.median(sizes) / 1000
        print(f"{name}: {median:.1f} ms a book, {worst:.1f} at worst; {middle:.0f} kB, {max(sizes) / 1000:.0f} at most")
    median, worst, _ = results["SVG"]
    sys.exit(median > MEDIAN_MS or worst > WORST_MS)


if __name__ == "__main__":
    main()
