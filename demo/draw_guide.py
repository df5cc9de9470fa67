"""Draws the pictures of the guide for the manual: a book's page, and the page with the drawings of how it is done.

bookmaker make demo/shelf.yaml --into out
python demo/draw_guide.py out
"""

from __future__ import annotations

import re
import sys
from pathlib import Path

import pypdfium2 as pdfium
from PIL import Image

WIDTH = 920
"""How wide a picture is in pixels."""

PAGES = {
    "guide-page.png": ("29. Letters to a Cartographer", "case in full binding", 1.0),
    "guide-drawings.png": ("", "How it is done, in drawings", 0.94),
}
"""What the page of each picture begins with, what it has, and how much of its height is shown, from the head down."""

GREYS = 16


def draw(folder: Path, start: str, has: str, share: float, into: Path) -> None:
    """Find the first page that begins so and has that, and save it in a few greys."""
    with pdfium.PdfDocument(folder / "guide.pdf") as pdf:
        said = ((page, page.get_textpage().get_text_range()) for page in pdf)
        page = next(page for page, text in said if re.match(start, text) and has in text)
        large: Image.Image = page.render(scale=3 * WIDTH / page.get_width(), grayscale=True).to_pil()
    small = large.resize((WIDTH, round(WIDTH * large.height / large.width)), Image.Resampling.LANCZOS)
    shown = small.crop((0, 0, WIDTH, round(small.height * share)))
    shown.quantize(GREYS, dither=Image.Dither.NONE).save(into, optimize=True)


if __name__ == "__main__":
    pictures = Path(__file__).parents[1] / "bookmaker/manual/pictures"
    for name, (start, has, share) in PAGES.items():
        draw(Path(sys.argv[1]), start, has, share, pictures / name)
