"""Pages of PDF files as pixels. The renderer is not made for threads: one of them uses it at a time."""

from __future__ import annotations

from pathlib import Path as FilePath
from threading import Lock

import pypdfium2
from PIL import Image

from ..ground.units import MM_PER_INCH, to_pt

__all__ = ["PAPER", "THROUGH", "rendered_page"]

_ALONE = Lock()

PAPER, THROUGH = (255, 255, 255, 255), (255, 255, 255, 0)
"""Grounds of a page, red, green, blue and how far they cover: white, and nothing at all."""


def rendered_page(
    path: FilePath, index: int, dpi: float, ground: tuple[int, int, int, int] = PAPER, *, notes: bool = True
) -> Image.Image:
    """A page as viewers show it, counted from 0, with so many dots per inch, with or without the notes on it."""
    with _ALONE:
        document = pypdfium2.PdfDocument(path)
        try:
            drawn = document[index].render(scale=dpi / to_pt(MM_PER_INCH), fill_color=ground, draw_annots=notes)
            image: Image.Image = drawn.to_pil()
        finally:
            document.close()
    return image
