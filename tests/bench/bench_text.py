"""A long text set, imposed and written, against reportlab's own flow of paragraphs, in one run.

    python -m tests.bench.bench_text [WORDS] [ROUNDS]

Ours: one book of WORDS (100 000) on pages of 15 × 21 mm, read from a file, hyphenated, broken by total fit,
justified, made up without widows, imposed on strips, drawn and written. Theirs: the same text, face, size,
leading and measure in Paragraphs, first fit, no hyphens, in a Frame of the same type area, one page a page.
Both in one process, best of ROUNDS (3) each, nothing kept from round to round; then ours alone in a fresh process
for its peak of memory.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from pathlib import Path

from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.platypus import BaseDocTemplate, Frame, PageTemplate, Paragraph

from bookmaker import make
from bookmaker.ground.typefaces import bundled
from bookmaker.typesetting.standing_type import StandingType
from tests.kit.prose import paragraphs

WIDTH, HEIGHT, SIZE_PT, LEADING = 15.0, 21.0, 2.2, 1.25
POINT = 25.4 / 72

SHELF = f"""\
shelf: Bench
stocks:
  page: {{caliper: 30 um, grain: long}}
  cover: {{caliper: 160 um, grain: long}}
books:
  - title: A Long Story
    size: {{height: {HEIGHT} mm, width: {WIDTH} mm}}
    block: {{kind: accordion, stock: page}}
    cover: {{kind: wrap, stock: cover}}
    inside: {{kind: text, file: story.txt, size: {SIZE_PT} pt, leading: {LEADING}}}
"""


def ours(folder: Path) -> None:
    """The whole way, from the shelf file to the sheets."""
    with StandingType().used():
        make(folder / "shelf.yaml", folder / "out")


def theirs(text: list[str], file: Path) -> int:
    """Paragraphs through a frame; the number of pages."""
    document = BaseDocTemplate(str(file), pagesize=(WIDTH / POINT, HEIGHT / POINT), pageCompression=1)
    frame = Frame(WIDTH / 9 / POINT, HEIGHT * 2 / 9 / POINT, WIDTH * 6 / 9 / POINT, HEIGHT * 6 / 9 / POINT, 0, 0, 0, 0)
    document.addPageTemplates([PageTemplate(frames=[frame])])
    style = ParagraphStyle(
        "text", fontName="bench", fontSize=SIZE_PT, leading=SIZE_PT * LEADING, alignment=4, firstLineIndent=SIZE_PT
    )
    document.build([Paragraph(paragraph, style) for paragraph in text])
    return int(document.page)


def peak_memory(folder: Path) -> float:
    """The most memory, in MB, that making the shelf takes in a process of its own."""
    code = (
        "import re, sys; from pathlib import Path; from tests.bench.bench_text import ours; "
        # unlike what getrusage tells, this has nothing of the process that started it
        "ours(Path(sys.argv[1])); print(re.search(r'VmHWM:\\s+(\\d+)', Path('/proc/self/status').read_text())[1])"
    )
    run = subprocess.run([sys.executable, "-c", code, str(folder)], capture_output=True, text=True, check=True)
    return int(run.stdout) / 1024


def main() -> None:
    """Run the benchmark and print what was measured."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 100_000
    rounds = int(sys.argv[2]) if len(sys.argv) > 2 else 3
    text = paragraphs(count)
    words = [word for paragraph in text for word in paragraph.split()]
    pdfmetrics.registerFont(TTFont("bench", str(bundled("text").path)))
    times: dict[str, list[float]] = {"ours": [], "theirs": []}
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "story.txt").write_text("\n\n".join(text), encoding="utf-8")
        (folder / "shelf.yaml").write_text(SHELF, encoding="utf-8")
        for _ in range(rounds):
            start = time.process_time()
            ours(folder)
            times["ours"].append(time.process_time() - start)
            start = time.process_time()
            pages = theirs(text, folder / "theirs.pdf")
            times["theirs"].append(time.process_time() - start)
        memory = peak_memory(folder)
        size = sum(file.stat().st_size for file in (folder / "out").glob("page*.pdf"))
    print(f"{len(words)} words, {len(set(words))} different, {len(text)} paragraphs")
    for who, taken in times.items():
        print(f"{who:7} {taken[0]:.2f} s at first, {min(taken):.2f} s at best")
    first, best = times["ours"][0] / times["theirs"][0], min(times["ours"]) / min(times["theirs"])
    print(f"ratio   {first:.2f} at first, {best:.2f} at best")
    print(f"theirs has {pages} pages; our PDF has {size / 1e6:.2f} MB; peak of memory {memory:.0f} MB")


if __name__ == "__main__":
    main()
