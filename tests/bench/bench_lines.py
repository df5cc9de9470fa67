"""The lines of set prose, beside those of a general typesetter in the same run.

    python -m tests.bench.bench_lines [FILE ...]

Sets the paragraphs of FILEs (the demo's English texts) on pages of 15 × 21 and 25 × 35 mm in two faces, by our own
galley and by typst with the same face, size, measure, hyphens and limits of tracking, writes both as PDF and reads both
back with pdfium, in the same way. Printed are: pages and lines; hyphens in 100 lines; ladders of three hyphens
or more; the mean space of filled lines as a multiple of the face's own space; the share of filled lines whose spaces
are over 1.5 times as wide; lines inside a paragraph that end short of the margin; single lines of a paragraph at the
head or foot of a page; pages of fewer lines than others; words parted after or before two letters; hyphens over the
turn of a leaf.
"""

from __future__ import annotations

import ctypes
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from pathlib import Path
from statistics import fmean

import pypdfium2
import typst
from fontTools.ttLib import TTFont
from pypdfium2 import raw

from bookmaker.ground.geometry import Size
from bookmaker.ground.typefaces import Typeface, bundled
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.lines.boxes import TIGHTENING
from bookmaker.typesetting.lines.tracking import loosening_at
from bookmaker.typesetting.page import BookWords, PageFrame
from bookmaker.typesetting.standing_type import StandingType
from bookmaker.writers.pdf import PdfFile

TEXTS = Path(__file__).parents[2] / "demo" / "texts"
OURS = ("bird-notes.txt", "keepers-almanac.txt", "log-of-the-lamp.txt", "small-tales.txt", "the-glass-lighthouse.md")
PAGES = ((15.0, 21.0), (25.0, 35.0))
FACES = ("text", "old style")
SIZE_PT, LEADING, POINT = 2.2, 1.25, 25.4 / 72
SHORTEST = 60
"""Paragraphs of fewer characters are heads, or hardly broken."""

MOST = 5_000
"""No text here has more pages."""


@dataclass(frozen=True)
class ReadLine:
    """A line as it stands on a page: its words, the white between them in ems, and where it begins and ends, in ems."""

    page: int
    text: str
    whites: tuple[float, ...]
    left: float
    right: float

    @property
    def hyphened(self) -> bool:
        """Whether it ends with a hyphen, typed or added."""
        return self.text.endswith("-")


def prose(files: Sequence[Path]) -> list[str]:
    """The paragraphs of some files, without headings and verse."""
    found = []
    for file in files:
        for block in file.read_text(encoding="utf-8").split("\n\n"):
            text = " ".join(block.split())
            if len(text) >= SHORTEST and text[0] not in "#>|-*" and text.isprintable() and "*" not in text:
                found.append(text)
    return found


def read_lines(file: Path, size: float) -> list[ReadLine]:
    """The lines of a PDF, as pdfium finds its letters."""
    found = []
    with pypdfium2.PdfDocument(file) as document:
        for number in range(len(document)):
            text = document[number].get_textpage()
            letters = [letter for at in range(text.count_chars()) if (letter := _letter(text, at))]
            for _, row in groupby(letters, key=lambda letter: round(letter[2] / size * 2)):
                found.append(_read_line(number, sorted(row, key=lambda letter: letter[1]), size))
    return found


def _letter(text: pypdfium2.PdfTextPage, at: int) -> tuple[str, float, float, float] | None:
    """A letter with its origin and where it ends; None for spaces."""
    sign = chr(raw.FPDFText_GetUnicode(text, at))
    if sign.isspace() or sign == "\0":
        return None
    x, y, box = ctypes.c_double(), ctypes.c_double(), raw.FS_RECTF()
    raw.FPDFText_GetCharOrigin(text, at, x, y)
    raw.FPDFText_GetLooseCharBox(text, at, box)
    return ("-" if sign in "\x02\u00ad\u2010\ufffe" else sign), x.value, y.value, box.right


def _read_line(page: int, letters: Sequence[tuple[str, float, float, float]], size: float) -> ReadLine:
    """A row of letters as words: what is further apart than letters ever are is parted by a space."""
    words, whites = letters[0][0], []
    for one, other in pairwise(letters):
        white = (other[1] - one[3]) / size
        if white > 0.11:
            whites.append(white)
            words += " "
        words += other[0]
    return ReadLine(page, words, tuple(whites), letters[0][1] / size, letters[-1][3] / size)


def ours(text: Sequence[str], page: tuple[float, float], face: str, folder: Path) -> Path:
    """Our pages as a PDF."""
    (folder / "prose.txt").write_text("\n\n".join(text), encoding="utf-8")
    keys = {"file": "prose.txt", "size": f"{SIZE_PT} pt", "leading": LEADING, "face": face, "numbers": "no"}
    loaded = TextInside.model_validate({**keys, "language": "en"}).load(folder)
    frame = PageFrame(*page, MOST, book=BookWords("Prose", "N. Body"))
    pages = loaded.extent(frame)
    assert pages is not None
    inside = loaded.compose(PageFrame(*page, pages, book=BookWords("Prose", "N. Body")))
    with PdfFile(folder / "ours.pdf", title="ours") as pdf:
        for art in inside.pages:
            with pdf.page(Size(*page)) as canvas:
                art.draw(canvas)
    return folder / "ours.pdf"


def theirs(text: Sequence[str], page: tuple[float, float], face: Typeface, folder: Path) -> Path:
    """Typst's pages as a PDF: the same type area and limits, on pages of as many lines."""
    width, height = page
    loosest = loosening_at(SIZE_PT * POINT)
    source = f"""
#set page(width: {width}mm, height: {height}mm,
  margin: (inside: {width / 9}mm, outside: {width * 2 / 9}mm, top: {height / 9}mm, bottom: {height * 2 / 9}mm))
#set text(font: "{family(face)}", size: {SIZE_PT}pt, lang: "en", hyphenate: true, top-edge: 0.8em, bottom-edge: -0.2em)
#set par(justify: true, leading: {LEADING - 1}em, spacing: {LEADING - 1}em,
  first-line-indent: (amount: 1em, all: true),
  justification-limits: (spacing: (min: 75%, max: 150%), tracking: (min: -{TIGHTENING}em, max: {loosest}em)))
"""
    escaped = (paragraph.replace("\\", "\\\\").replace('"', '\\"') for paragraph in text)
    source += "\n\n".join(f'#"{paragraph}"' for paragraph in escaped)
    (folder / "theirs.typ").write_text(source, encoding="utf-8")
    typst.compile(
        folder / "theirs.typ",
        output=folder / "theirs.pdf",
        font_paths=[face.path.parent],
        ignore_system_fonts=True,
    )
    return folder / "theirs.pdf"


def family(face: Typeface) -> str:
    """What typst calls a face."""
    with TTFont(face.path) as font:
        return str(font["name"].getBestFamilyName())


def measured(lines: Sequence[ReadLine], space: float) -> Iterator[str]:
    """What there is to say of some lines; ends of paragraphs are found by the indent of the next line."""
    margin = {side: min(line.left for line in lines if line.page % 2 == side) for side in (0, 1)}
    ends = [after.left - margin[after.page % 2] > 0.8 for after in lines[1:]] + [True]
    edge = {side: sorted(line.right for line in lines if line.page % 2 == side)[-len(lines) // 8] for side in (0, 1)}
    filled = [line for line, end in zip(lines, ends, strict=True) if not end]
    times = [fmean(line.whites) / space for line in filled if line.whites]
    short = sum(edge[line.page % 2] - line.right > 0.8 for line in filled)
    runs = [len(list(run)) for hyphened, run in groupby(line.hyphened for line in lines) if hyphened]
    parted = [(line.text.split()[-1], after.text.split()[0]) for line, after in pairwise(lines) if line.hyphened]
    letters = [(len(head.strip("“‘(-")), len(tail.rstrip(",.;:!?”’)-"))) for head, tail in parted]
    turns = sum(line.hyphened and after.page > line.page and line.page % 2 == 0 for line, after in pairwise(lines))
    single = sum(
        before.page != after.page and (starts or end)
        for before, after, starts, end in zip(lines, lines[1:], [True, *ends], ends[1:], strict=False)
    )
    yield f"{lines[-1].page + 1:4} pages {len(lines):5} lines"
    hyphens = sum(line.hyphened for line in lines)
    yield f"{100 * hyphens / len(lines):4.1f} hyphens in 100 ({100 * hyphens / len(filled):4.1f} of filled)"
    yield f"{sum(run >= 3 for run in runs):2} ladders"
    over = 100 * sum(one > 1.5 for one in times) / len(filled)
    yield f"space {fmean(times):.2f}, {over:4.1f} % over 1.5, widest {max(times):.1f}"
    deep = Counter(line.page for line in lines)
    pages = sum(count < max(deep.values()) for page, count in deep.items() if page < lines[-1].page)
    yield f"{short} lines short, {single} single, {100 * pages / len(deep):.0f} % of pages short"
    few = [sum(count <= 2 for count in side) for side in zip(*letters, strict=True)] or [0, 0]
    yield f"{few[0]} after two, {few[1]} before two, {turns} over the turn"


def main() -> None:
    """Run the benchmark and print what was measured."""
    text = prose([Path(name) for name in sys.argv[1:]] or [TEXTS / name for name in OURS])
    print(f"{sum(len(paragraph.split()) for paragraph in text)} words, {len(text)} paragraphs, in {SIZE_PT} pt")
    with tempfile.TemporaryDirectory() as name, StandingType().used():
        folder = Path(name)
        for page in PAGES:
            for face in FACES:
                typeface = bundled(face)
                space = typeface.shape(" ").width
                for who, made in (
                    ("ours", ours(text, page, face, folder)),
                    ("typst", theirs(text, page, typeface, folder)),
                ):
                    said = measured(read_lines(made, SIZE_PT), space)
                    print(f"{page[0]:g} × {page[1]:g} {face:9} {who:5} {'; '.join(said)}")


if __name__ == "__main__":
    main()
