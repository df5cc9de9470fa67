"""Draws the picture of a page of the guide for the README.

bookmaker make demo/shelf.yaml --into out
python demo/draw_guide.py out
"""

from __future__ import annotations

import sys
from pathlib import Path

import pypdfium2 as pdfium
from PIL import Image

WIDTH, SHOWN = 920, 0.79
"""How wide the picture is in pixels, and how much of the page's height it shows, from the head down."""

BOOK = "1. The Keeper"
"""What the heading of the page begins with."""

GREYS = 16


def draw(folder: Path, into: Path) -> None:
    """Find the page on which the book begins, and save it in a few greys."""
    with pdfium.PdfDocument(folder / "guide.pdf") as pdf:
        page = next(page for page in pdf if page.get_textpage().get_text_range().startswith(BOOK))
        large: Image.Image = page.render(scale=3 * WIDTH / page.get_width(), grayscale=True).to_pil()
    small = large.resize((WIDTH, round(WIDTH * large.height / large.width)), Image.Resampling.LANCZOS)
    shown = small.crop((0, 0, WIDTH, round(small.height * SHOWN)))
    shown.quantize(GREYS, dither=Image.Dither.NONE).save(into, optimize=True)


if __name__ == "__main__":
    draw(Path(sys.argv[1]), Path(__file__).parents[1] / "bookmaker/manual/pictures/guide-page.png")
