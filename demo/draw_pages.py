"""Draws the picture of the demo's pages for the README: two spreads at 400 %, taken from the printed sheets.

bookmaker make demo/shelf.yaml --into out
python demo/draw_pages.py out
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

import pypdfium2 as pdfium
from PIL import Image, ImageFilter

DESK, SHADOW, PAPER = (214, 206, 192), (120, 108, 92), (252, 250, 244)
SCALE = 4 * 192 / 25.4
"""Pixels per millimetre: 400 % on a screen of 192 dots to the inch."""
EDGE, GAP = 56, 64
SPREADS = (("The Glass Lighthouse", 30), ("Salt Verses", 4))
"""Which spreads to show: the book, and its left-hand page."""


def _panel(plan: dict[str, Any], folder: Path, book: int, page: int) -> Image.Image:
    """One page of a book, cut out of its sheet."""
    for sheet in plan["sheets"]:
        for piece in sheet["pieces"]:
            for panel in piece["panels"]:
                if (piece["book"], panel["page"]) == (book, page):
                    x, y, width, height = panel["rect_mm"]
                    left, below = x, y
                    right, above = sheet["size_mm"][0] - x - width, sheet["size_mm"][1] - y - height
                    crop = tuple(side * 72 / 25.4 for side in (left, below, right, above))
                    drawn = pdfium.PdfDocument(folder / sheet["file"])[sheet["page"] - 1]
                    large: Image.Image = drawn.render(scale=2 * SCALE * 25.4 / 72, crop=crop).to_pil().convert("L")
                    small = large.resize((round(width * SCALE), round(height * SCALE)), Image.Resampling.LANCZOS)
                    paper = Image.new("RGB", small.size, PAPER)
                    paper.paste((20, 18, 16), mask=small.point(lambda grey: 255 - grey))
                    return paper
    raise LookupError(page)


def _spread(plan: dict[str, Any], folder: Path, title: str, page: int) -> Image.Image:
    book = [entry["title"] for entry in plan["books"]].index(title)
    left, right = (_panel(plan, folder, book, number) for number in (page, page + 1))
    spread = Image.new("RGB", (left.width + right.width, left.height), PAPER)
    spread.paste(left, (0, 0))
    spread.paste(right, (left.width, 0))
    dip = Image.linear_gradient("L").rotate(90).resize((left.width // 9, left.height)).point(lambda grey: grey // 3)
    fold = Image.new("L", spread.size, 0)
    fold.paste(dip, (left.width - dip.width, 0))
    fold.paste(dip.transpose(Image.Transpose.FLIP_LEFT_RIGHT), (left.width, 0))
    spread.paste(SHADOW, mask=fold)
    return spread


def draw(folder: Path, into: Path) -> None:
    """Lay the spreads side by side on a desk."""
    plan = json.loads((folder / "plan.json").read_text(encoding="utf-8"))
    spreads = [_spread(plan, folder, title, page) for title, page in SPREADS]
    width = sum(spread.width for spread in spreads) + GAP * (len(spreads) - 1) + 2 * EDGE
    desk = Image.new("RGB", (width, max(spread.height for spread in spreads) + 2 * EDGE), DESK)
    shade = Image.new("L", desk.size, 0)
    places, x = [], EDGE
    for spread in spreads:
        places.append((x, desk.height - EDGE - spread.height))
        x += spread.width + GAP
    for (left, top), spread in zip(places, spreads, strict=True):
        shade.paste(150, (left + 4, top + 8, left + 4 + spread.width, top + 8 + spread.height))
    desk.paste(SHADOW, mask=shade.filter(ImageFilter.GaussianBlur(9)))
    for place, spread in zip(places, spreads, strict=True):
        desk.paste(spread, place)
    desk.quantize(64, dither=Image.Dither.NONE).save(into, optimize=True)


if __name__ == "__main__":
    draw(Path(sys.argv[1]), Path(__file__).parents[1] / "bookmaker/manual/pictures/pages.png")
