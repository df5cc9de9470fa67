"""Draws the picture of the demo's spines for the README, from the contact sheet.

bookmaker make demo/shelf.yaml --into out --contact-sheet
python demo/draw_spines.py out
"""

from __future__ import annotations

import sys
from pathlib import Path

from PIL import Image, ImageChops

PAPER = (255, 255, 255)
WIDTH, EDGE = 1200, 18
HEADING = 0.1
"""The heading and the name of the space take this share of a page, from the top."""


def _rows(page: Image.Image) -> Image.Image:
    """What stands on a page below its heading, trimmed."""
    below = page.crop((0, round(page.height * HEADING), page.width, page.height))
    return below.crop(ImageChops.difference(below, Image.new("RGB", below.size, PAPER)).getbbox())


def draw(folder: Path, into: Path) -> None:
    """The rows at 400 %, which begin on the second page, one under the other and as wide as the widest."""
    pages = sorted(folder.glob("spines-*.png"), key=lambda path: int(path.stem.split("-")[1]))[1:]
    rows = [_rows(Image.open(page).convert("RGB")) for page in pages]
    scale = (WIDTH - 2 * EDGE) / max(row.width for row in rows)
    rows = [row.resize((round(row.width * scale), round(row.height * scale)), Image.Resampling.LANCZOS) for row in rows]
    drawn = Image.new("RGB", (WIDTH, sum(row.height + EDGE for row in rows) + EDGE), PAPER)
    y = EDGE
    for row in rows:
        drawn.paste(row, (EDGE, y))
        y += row.height + EDGE
    drawn.quantize(256, kmeans=4, dither=Image.Dither.NONE).save(into, optimize=True)


if __name__ == "__main__":
    draw(Path(sys.argv[1]), Path(__file__).parents[1] / "bookmaker/manual/pictures/spines.png")
