"""Draws the picture of some of the demo's pages for the README.

bookmaker make demo/shelf.yaml --into out
python demo/draw_kinds.py out
"""

from __future__ import annotations

import json
import sys
from pathlib import Path

import pypdfium2 as pdfium
from draw_sheets import DESK, SHADOW
from PIL import Image, ImageFilter

PX_PER_MM = 15
GAP = 22
ROWS = (
    (("Candle Haven", (1,)), ("Candle Haven", (2, 3)), ("Nine Winters", (5,)), ("Nine Winters", (8, 9))),
    (("Herring Accounts", (4,)), ("Candle Haven", (21,)), ("Signals", (4, 5)), ("Memoranda", (6,)), ("Seaweeds", (2,))),
)
"""What stands in each row: books, and the page or the two facing pages to show."""


def _panels(plan: dict[str, object], title: str, pages: tuple[int, ...]) -> list[tuple[str, int, list[float]]]:
    """File, sheet and place in mm of some pages of a book, from left to right."""
    id = next(book["id"] for book in plan["books"] if book["title"] == title)  # type: ignore[attr-defined]
    return [
        (sheet["file"], sheet["page"], panel["rect_mm"])
        for sheet in plan["sheets"]  # type: ignore[attr-defined]
        for piece in sheet["pieces"]
        if piece["owner"] == id
        for panel in piece["panels"]
        if panel["page"] in pages
    ]


def _shown(folder: Path, file: str, sheet: int, place: list[float]) -> Image.Image:
    """One page as it will be cut out."""
    page = pdfium.PdfDocument(folder / file)[sheet - 1]
    scale = 2 * PX_PER_MM * 25.4 / 72
    drawn = page.render(scale=scale).to_pil()
    x, y, width, height = (side * 2 * PX_PER_MM for side in place)
    cut = drawn.crop((round(x), round(drawn.height - y - height), round(x + width), round(drawn.height - y)))
    return cut.resize((cut.width // 2, cut.height // 2), Image.Resampling.LANCZOS)


def draw(folder: Path, into: Path) -> None:
    """Lay the pages in rows on a desk."""
    plan = json.loads((folder / "plan.json").read_text(encoding="utf-8"))
    rows = [[[_shown(folder, *panel) for panel in _panels(plan, title, pages)] for title, pages in row] for row in ROWS]
    widths = [sum(sum(page.width for page in spread) + GAP for spread in row) + GAP for row in rows]
    heights = [max(page.height for spread in row for page in spread) + GAP for row in rows]
    desk = Image.new("RGB", (max(widths), sum(heights) + GAP), DESK)
    shade, y = Image.new("L", desk.size, 0), GAP
    placed = []
    for row, width, height in zip(rows, widths, heights, strict=True):
        x = GAP + (desk.width - width) // 2
        for spread in row:
            for page in spread:
                placed.append((page, (x, y + height - GAP - page.height)))
                x += page.width
            x += GAP
        y += height
    for page, (x, top) in placed:
        shade.paste(150, (x + 2, top + 5, x + 2 + page.width, top + 5 + page.height))
    desk.paste(SHADOW, mask=shade.filter(ImageFilter.GaussianBlur(6)))
    for page, place in placed:
        desk.paste(page, place)
    desk.quantize(256, dither=Image.Dither.NONE).save(into, optimize=True)


if __name__ == "__main__":
    draw(Path(sys.argv[1]), Path(__file__).parents[1] / "bookmaker/manual/pictures/kinds-of-pages.png")
