"""Draws the picture of the reading room's papers for the manual.

bookmaker make demo/reading-room.yaml --into out
python demo/draw_papers.py out
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

import pypdfium2 as pdfium
from PIL import Image, ImageDraw, ImageFilter

DESK, SHADOW = (142, 108, 78), (70, 50, 34)
DPMM = 9.0
"""Pixels to the mm."""

WIDTH, HEIGHT = 1500, 980

PLACES = (
    ("pack", 430, 800, -2.0),
    ("draughts", 1150, 560, 3.0),
    ("gazette", 50, 60, -3.0),
    ("sound-chart", 790, 40, 4.0),
    ("skerry-waltz", 60, 690, 2.0),
    ("to-maud", 920, 540, -7.0),
    ("from-orrin", 730, 520, 8.0),
    ("founder", 1350, 500, -5.0),
    ("picnic", 1240, 440, 6.0),
    ("jars", 500, 690, 4.0),
)
"""What lies where on the desk, its upper left corner in pixels, and how it is turned."""


def _piece(folder: Path, sheet: dict[str, Any], piece: dict[str, Any]) -> Image.Image:
    """A piece as it is cut out, upright."""
    page = pdfium.PdfDocument(folder / sheet["file"])[sheet["page"] - 1]
    whole: Image.Image = page.render(scale=3 * DPMM * 25.4 / 72).to_pil().convert("RGBA")
    high = sheet["size_mm"][1]
    xs, ys = ([point[axis] for point in piece["outline_mm"]] for axis in (0, 1))
    box = [round(3 * DPMM * side) for side in (min(xs), high - max(ys), max(xs), high - min(ys))]
    mask = Image.new("L", whole.size, 0)
    ImageDraw.Draw(mask).polygon([(3 * DPMM * x, 3 * DPMM * (high - y)) for x, y in piece["outline_mm"]], fill=255)
    whole.putalpha(mask)
    cut = whole.crop((box[0], box[1], box[2], box[3]))
    return cut.rotate(-piece["turned_deg"], expand=True)


def draw(folder: Path, into: Path) -> None:
    """Lay the papers on a desk, each with its shadow."""
    sheets = json.loads((folder / "plan.json").read_text(encoding="utf-8"))["sheets"]
    found = {piece["owner"]: (sheet, piece) for sheet in sheets for piece in reversed(sheet["pieces"])}
    desk = Image.new("RGB", (WIDTH, HEIGHT), DESK)
    for owner, x, y, turned in PLACES:
        cut = _piece(folder, *found[owner]).rotate(turned, expand=True, resample=Image.Resampling.BICUBIC)
        small = cut.resize((cut.width // 3, cut.height // 3), Image.Resampling.LANCZOS)
        shade = Image.new("L", desk.size, 0)
        shade.paste(small.getchannel("A").point(lambda alpha: alpha * 2 // 3), (x + 3, y + 6))
        desk.paste(SHADOW, mask=shade.filter(ImageFilter.GaussianBlur(6)))
        desk.paste(small, (x, y), small)
    desk.quantize(160, kmeans=3, dither=Image.Dither.NONE).save(into, optimize=True)


if __name__ == "__main__":
    draw(Path(sys.argv[1]), Path(__file__).parent.parent / "bookmaker" / "manual" / "pictures" / "papers.png")
