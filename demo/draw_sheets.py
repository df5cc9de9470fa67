"""Draws the picture of the demo's sheets for the README.

bookmaker make demo/shelf.yaml --into out
python demo/draw_sheets.py out
"""

from __future__ import annotations

import sys
from pathlib import Path

import pypdfium2 as pdfium
from PIL import Image, ImageFilter

DESK, SHADOW = (214, 206, 192), (120, 108, 92)
WIDTH, EDGE, GAP = 1600, 48, 44
SHOWN = 0.78
"""How much of the sheets' height the picture shows, from the foot up."""
SHEETS = (("log-paper.pdf", 3), ("cover-paper.pdf", 1))
"""Which sheets to show: the file and the page, counted from 1."""


def _sheet(file: Path, page: int, width: int) -> Image.Image:
    """One page, `width` pixels wide."""
    drawn = pdfium.PdfDocument(file)[page - 1]
    large: Image.Image = drawn.render(scale=2 * width / drawn.get_width()).to_pil()
    return large.resize((width, round(width * large.height / large.width)), Image.Resampling.LANCZOS)


def draw(folder: Path, into: Path) -> None:
    """Lay the lower parts of the sheets side by side on a desk."""
    width = (WIDTH - 2 * EDGE - GAP * (len(SHEETS) - 1)) // len(SHEETS)
    sheets = [_sheet(folder / name, page, width) for name, page in SHEETS]
    tallest = max(sheet.height for sheet in sheets)
    desk = Image.new("RGB", (WIDTH, round(tallest * SHOWN) + EDGE), DESK)
    shade = Image.new("L", desk.size, 0)
    places = [(EDGE + (width + GAP) * index, desk.height - EDGE - tallest) for index in range(len(sheets))]
    for (x, y), sheet in zip(places, sheets, strict=True):
        shade.paste(150, (x + 4, y + 8, x + 4 + sheet.width, y + 8 + sheet.height))
    desk.paste(SHADOW, mask=shade.filter(ImageFilter.GaussianBlur(9)))
    for place, sheet in zip(places, sheets, strict=True):
        desk.paste(sheet, place)
    desk.quantize(256, dither=Image.Dither.NONE).save(into, optimize=True)


if __name__ == "__main__":
    draw(Path(sys.argv[1]), Path(__file__).parent / "shelf-sheets.png")
