"""Proofs: every book opened at every place, at true size and at 300 %, to be read before anything is printed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path as FilePath

from ..ground.art import Group, Stroked, Written
from ..ground.drawing import Art, Colour, Pen
from ..ground.geometry import Path, Point, Rect, Size, Transform
from ..ground.typefaces import set_line
from ..sheets.facsimiles import Facsimile
from ..typesetting.stand_ins import face_with
from .pdf import PdfFile

__all__ = ["PROOF", "write_proof"]

PROOF = "proof.pdf"

SCALES = ((1.0, "at true size"), (3.0, "at 300 %"))
"""How much larger than life, and what to call it."""

MARGIN, HEADING, CAPTION, APART = 12.0, 8.0, 3.5, 5.0
"""Around the page, under its heading, under each spread for its numbers, and between spreads, in mm."""

INK, EDGE = Colour.from_hex("#33302c"), Colour.from_hex("#a8a29a")


@dataclass(frozen=True, slots=True)
class Spread:
    """What is seen at one opening, what to call it, and how much larger than life it is drawn."""

    seen: Facsimile
    called: str
    scale: float

    @property
    def size(self) -> Size:
        """What it takes on the page, its caption included."""
        return Size(self.seen.box.width * self.scale, self.seen.box.height * self.scale + CAPTION)


def write_proof(
    folder: FilePath, shelf: str, books: Sequence[tuple[str, Sequence[Facsimile], bool]], sheet: Size
) -> list[str]:
    """Write the spreads of each book, by its name, read from the right or not; the names of the files."""
    page = Size(max(sheet), min(sheet))
    with PdfFile(folder / PROOF, title=f"{shelf}: proof") as pdf:
        for scale, called in SCALES:
            for name, openings, right_to_left in books:
                first = True
                for rows in _pages(list(_spreads(openings, scale, right_to_left)), page):
                    heading = f"{name}, {called}"
                    size = Size(max(page.width, _width(rows)), max(page.height, _height(rows)))
                    with pdf.page(size, entries=[heading] if first else []) as canvas:
                        Group(tuple(_parts(heading, rows, size))).draw(canvas)
                    first = False
    return [PROOF]


def _spreads(openings: Sequence[Facsimile], scale: float, right_to_left: bool) -> Iterator[Spread]:
    """Page 1 stands alone; then 2 and 3 face each other, and so on."""
    for number, seen in enumerate(openings):
        alone = seen.box.width < 1.5 * openings[0].box.width
        pages = [1] if not number else [2 * number] if alone else [2 * number, 2 * number + 1]
        said = "–".join(map(str, reversed(pages) if right_to_left else pages))
        yield Spread(seen, said, scale)


Row = list[Spread]


def _pages(spreads: Sequence[Spread], page: Size) -> Iterator[list[Row]]:
    """Spreads in rows, and rows in pages, as they are read; what is larger than the page has one of its own."""
    rows: list[Row] = []
    for spread in spreads:
        if rows and _width([[*rows[-1], spread]]) <= page.width:
            rows[-1].append(spread)
        else:
            rows.append([spread])
    some: list[Row] = []
    for row in rows:
        if some and _height([*some, row]) > page.height:
            yield some
            some = []
        some.append(row)
    if some:
        yield some


def _width(rows: Sequence[Row]) -> float:
    return 2 * MARGIN + max(sum(one.size.width + APART for one in row) - APART for row in rows)


def _height(rows: Sequence[Row]) -> float:
    return 2 * MARGIN + HEADING + sum(max(one.size.height for one in row) + APART for row in rows) - APART


def _parts(heading: str, rows: Sequence[Row], size: Size) -> Iterator[Art]:
    """The heading of a page, and its spreads with a fine line round each and the numbers of its pages below."""
    top = size.height - MARGIN
    yield Written(set_line(face_with(heading, "sans bold"), 4.0, heading), Point(MARGIN, top - 4.0), INK)
    y = top - HEADING
    for row in rows:
        x = MARGIN
        for one in row:
            box = Rect(x, y - one.size.height + CAPTION, one.size.width, one.size.height - CAPTION)
            home = Transform.move(-one.seen.box.x, -one.seen.box.y).then(Transform.stretch(one.scale, one.scale))
            yield Group((one.seen.art,), home.then(Transform.move(box.x, box.y)))
            yield Stroked(Path.rectangle(box), Pen(0.1, EDGE))
            line = set_line(face_with(one.called, "sans"), 2.2, one.called)
            yield Written(line, Point(box.centre.x - line.width / 2, box.y - CAPTION + 0.9), INK)
            x += one.size.width + APART
        y -= max(one.size.height for one in row) + APART
