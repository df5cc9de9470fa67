"""Art as pixels, by way of an SVG and by way of a PDF, each through a renderer that is not ours."""

from __future__ import annotations

import io
from collections.abc import Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass, replace

import numpy as np
import pypdfium2
import resvg_py
from PIL import Image

from bookmaker.ground.art import Group
from bookmaker.ground.drawing import Art, Canvas, Colour, Pen, Tag
from bookmaker.ground.geometry import Path, Point, Rect, Transform
from bookmaker.ground.imported import ImportedPage
from bookmaker.ground.pictures import Picture
from bookmaker.ground.typefaces import TextLine
from bookmaker.writers.pdf import PdfFile
from bookmaker.writers.svg import svg_picture

__all__ = ["Broad", "Pixels", "apart", "pdf_pixels", "svg_pixels"]

Pixels = np.ndarray[tuple[int, ...], np.dtype[np.float64]]
"""Rows of pixels from above, each red, green and blue from 0 to 255."""

PICTURE_DPI = 150.0
"""Of the pictures in both."""


def svg_pixels(svg: str, dpi: float, per_mm: float, box: Rect) -> Pixels:
    """An SVG on white paper, drawn with so many dots to the inch and then averaged over larger pixels."""
    png = resvg_py.svg_to_bytes(svg_string=svg, dpi=dpi, background="#fff", skip_system_fonts=True)
    return _averaged(Image.open(io.BytesIO(bytes(png))), per_mm, box)


def pdf_pixels(art: Art, dpi: float, per_mm: float, box: Rect) -> Pixels:
    """What of some art lies in a box, by way of a PDF page of that size."""
    data = io.BytesIO()
    with PdfFile(data, title="pixels", most_dpi=PICTURE_DPI) as pdf, pdf.page(box.size) as canvas:
        Group((art,), Transform.move(-box.x, -box.y)).draw(canvas)
    document = pypdfium2.PdfDocument(data.getvalue())
    image = document[0].render(scale=dpi / 72).to_pil()
    document.close()
    return _averaged(image, per_mm, box)


def apart(art: Art, box: Rect, dpi: float, per_mm: float) -> Pixels:
    """How far SVG and PDF of the same art are from one another, in each averaged pixel."""
    svg = svg_picture(art, box, dpi=PICTURE_DPI)
    return np.abs(svg_pixels(svg, dpi, per_mm, box) - pdf_pixels(art, dpi, per_mm, box))


def _averaged(image: Image.Image, per_mm: float, box: Rect) -> Pixels:
    size = (max(1, round(box.width * per_mm)), max(1, round(box.height * per_mm)))
    return np.asarray(image.convert("RGB").resize(size, Image.Resampling.BOX), dtype=np.float64)


@dataclass(frozen=True)
class Broad:
    """Art with its lines at least so many mm wide.

    PDFium draws no line thinner than a pixel, whatever its width; a pixel wide, it draws them as they are.
    """

    art: Art
    least: float

    def draw(self, canvas: Canvas) -> None:
        """Draw it on a canvas that has no finer pens."""
        self.art.draw(_BroadPens(canvas, self.least))


class _BroadPens:
    """A canvas whose pens are at least so many mm wide on the paper."""

    def __init__(self, canvas: Canvas, least: float) -> None:
        self._canvas = canvas
        self._least = least

    def fill(self, path: Path, colour: Colour) -> None:
        """Fill an outline."""
        self._canvas.fill(path, colour)

    def veil(self, path: Path, colour: Colour, cover: float) -> None:
        """Fill an outline with thin ink."""
        self._canvas.veil(path, colour, cover)

    def stroke(self, path: Path, pen: Pen) -> None:
        """Draw along a path with a pen that is wide enough."""
        self._canvas.stroke(path, replace(pen, width=max(pen.width, self._least)))

    def text(self, line: TextLine, at: Point, colour: Colour) -> None:
        """Set a line of text."""
        self._canvas.text(line, at, colour)

    def picture(self, picture: Picture, into: Rect) -> None:
        """Place a picture."""
        self._canvas.picture(picture, into)

    def imported(self, page: ImportedPage, into: Rect) -> None:
        """Place a page of a PDF file."""
        self._canvas.imported(page, into)

    def repeat(self, art: Art, bounds: Rect, places: Sequence[Point]) -> None:
        """Draw the same art at several places."""
        self._canvas.repeat(Broad(art, self._least), bounds, places)

    def layer(self, title: str) -> AbstractContextManager[None]:
        """A layer of the canvas."""
        return self._canvas.layer(title)

    def tagged(self, tag: Tag) -> AbstractContextManager[None]:
        """A tag of the canvas."""
        return self._canvas.tagged(tag)

    @contextmanager
    def placed(self, transform: Transform, clip: Path | None = None) -> Iterator[None]:
        """Within the block a mm is longer or shorter on the paper."""
        outer = self._least
        self._least = outer / abs(transform.a * transform.d - transform.b * transform.c) ** 0.5
        with self._canvas.placed(transform, clip):
            yield
        self._least = outer
