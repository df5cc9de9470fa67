"""Straight lines read back from the pages of a PDF."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from pypdf import PdfReader
from pypdf.generic import ContentStream

__all__ = ["POINT", "Stroke", "apart", "strokes_of"]

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
