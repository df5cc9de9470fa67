"""Making small shelves for tests, and reading back what was made."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pypdf import PdfReader
from pypdf.generic import ContentStream

from bookmaker.paper.thickness import Layer, Thickness
from bookmaker.things.book.blocks.block_plan import BlockPlan
from bookmaker.workshop import make

__all__ = ["POINT", "Stroke", "apart", "block_of", "made", "on_two_papers", "strokes_of"]

POINT = 25.4 / 72
"""One PDF unit in mm (ISO 32000-1, 8.3.2.3)."""

Matrix = tuple[float, float, float, float, float, float]
XY = tuple[float, float]


@dataclass(frozen=True)
class Stroke:
    """A straight stroked line on the page, in mm from its lower left corner."""

    start: XY
    end: XY
    dashed: bool
    width: float


def block_of(thickness: float, *, pastedowns: bool = True) -> BlockPlan:
    """A block to cover that is known by its thickness alone."""
    layers = (Layer("block", 1, thickness),)
    return BlockPlan("block", 48, 50, Thickness(layers), flats=(), pastedowns=pastedowns)


def on_two_papers(books: str, *, printer: str, grain: str = "long", off_cuts: str = "[]") -> str:
    """A shelf of the listed books on a page paper and a cover paper, ``page`` and ``cover``; margins are 5 mm."""
    return f"""\
shelf: On Two Papers
printer: {{margins: 5 mm, {printer}}}
stocks:
  page: {{caliper: 75 um, glue: 15 um, grain: {grain}, off_cuts: {off_cuts}}}
  cover: {{caliper: 160 um, film: 50 um, grain: {grain}}}
books:
{books}
"""


def made(shelf: str, folder: Path) -> tuple[dict[str, Any], Path]:
    """Write a shelf file, make it, and return plan.json and the folder of the output."""
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / "shelf.yaml"
    path.write_text(shelf, encoding="utf-8")
    make(path, folder / "out")
    return json.loads((folder / "out" / "plan.json").read_text(encoding="utf-8")), folder / "out"


def strokes_of(file: Path, page: int) -> list[Stroke]:
    """All straight lines stroked on a page (numbered from 1), taken through the current transform."""
    reader = PdfReader(file)
    content = ContentStream(reader.pages[page - 1]["/Contents"], reader)
    matrix: Matrix = (1, 0, 0, 1, 0, 0)
    width, dashed = 1.0, False
    kept: list[tuple[Matrix, float, bool]] = []
    lines: list[tuple[XY, XY]] = []
    at: XY = (0, 0)
    found: list[Stroke] = []
    for operands, operator in content.operations:
        match operator:
            case b"q":
                kept.append((matrix, width, dashed))
            case b"Q":
                matrix, width, dashed = kept.pop()
            case b"cm":
                matrix = _times(tuple(map(float, operands)), matrix)  # type: ignore[arg-type]
            case b"w":
                width = float(operands[0])
            case b"d":
                dashed = bool(operands[0])
            case b"m":
                at = (float(operands[0]), float(operands[1]))
            case b"l":
                to = (float(operands[0]), float(operands[1]))
                lines.append((at, to))
                at = to
            case b"S" | b"s":
                found += [Stroke(_mm(a, matrix), _mm(b, matrix), dashed, width * POINT) for a, b in lines]
                lines = []
            case b"f" | b"F" | b"f*" | b"n" | b"B":
                lines = []
    return found


def _times(inner: Matrix, outer: Matrix) -> Matrix:
    a, b, c, d, e, f = inner
    g, h, i, j, k, m = outer
    return (a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + m)


def _mm(point: XY, matrix: Matrix) -> XY:
    a, b, c, d, e, f = matrix
    x, y = point
    return (a * x + c * y + e) * POINT, (b * x + d * y + f) * POINT


def apart(one: list[float], other: list[float]) -> bool:
    """Whether two boxes (left, bottom, right, top) share no area."""
    return (
        one[2] <= other[0] + 1e-3 or other[2] <= one[0] + 1e-3 or one[3] <= other[1] + 1e-3 or other[3] <= one[1] + 1e-3
    )
