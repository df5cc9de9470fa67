"""Draws the pictures of the guide for the manual: a book's page, and the page with the drawings of how it is done.

bookmaker make demo/shelf.yaml --into out
python demo/draw_guide.py out
"""

from __future__ import annotations

import sys
from pathlib import Path

import pypdfium2 as pdfium
from PIL import Image

WIDTH = 920
"""How wide a picture is in pixels."""

PAGES = {"guide-page.png": ("24. Sermons", 0.93), "guide-drawings.png": ("What many books share", 0.84)}
"""What the page of each picture begins with, and how much of its height is shown, from the head down."""

GREYS = 16


def draw(folder: Path, start: str, share: float, into: Path) -> None:
    """Find the page that begins so, and save it in a few greys."""
    with pdfium.PdfDocument(folder / "guide.pdf") as pdf:
        page = next(page for page in pdf if page.get_textpage().get_text_range().startswith(start))
        large: Image.Image = page.render(scale=3 * WIDTH / page.get_width(), grayscale=True).to_pil()
    small = large.resize((WIDTH, round(WIDTH * large.height / large.width)), Image.Resampling.LANCZOS)
    shown = small.crop((0, 0, WIDTH, round(small.height * share)))
    shown.quantize(GREYS, dither=Image.Dither.NONE).save(into, optimize=True)


if __name__ == "__main__":
    pictures = Path(__file__).parents[1] / "bookmaker/manual/pictures"
    for name, (start, share) in PAGES.items():
        draw(Path(sys.argv[1]), start, share, pictures / name)
