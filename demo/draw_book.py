"""Draws the picture of finished books for the README: what the demo prints for three of them, around their blocks.

python demo/draw_book.py
"""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from pathlib import Path

from PIL import Image, ImageDraw, ImageFilter

from bookmaker import check
from bookmaker.ground.drawing import BLACK, Colour
from bookmaker.ground.geometry import Transform
from bookmaker.sheets.facsimiles import Facsimile
from bookmaker.sheets.flat import Role
from bookmaker.things.book.designs.tones import mixed
from bookmaker.things.draft import Head
from bookmaker.writers.pdf import PdfFile
from bookmaker.writers.pdf_pixels import rendered_page

DEMO = Path(__file__).parent
BOOKS = ("1", "26", "8")
"""By their numbers: two hard covers and a wrap."""

FINER = 3
"""It is drawn so many times as large, and then made smaller: so its edges are smooth."""

PER_MM = 15.0 * FINER
ACROSS, ALONG = (0.86, -0.2), (-0.62, -0.3)
"""Where a millimetre of the cover goes, from the spine, and one of the spine, from the cover; y downwards."""

WIDTH, HEIGHT, FLOOR = 1200 * FINER, 560 * FINER, 500 * FINER
SHADE = (120, 110, 100)
LEAF = 0.12
"""From leaf to leaf, in mm."""

Point = tuple[float, float]
Faces = tuple[Image.Image, Image.Image]
Sides = tuple[float, float, float]


def _pixels(face: Facsimile, folder: Path) -> Image.Image:
    path = folder / "face.pdf"
    shift = Transform.move(-face.box.x, -face.box.y)
    with PdfFile(path, title="face") as pdf, pdf.page(face.box.size) as canvas, canvas.placed(shift):
        face.art.draw(canvas)
    return rendered_page(path, 0, PER_MM * 25.4).convert("RGB")


def _moved(at: Point, by: Point, far: float) -> Point:
    return at[0] + by[0] * far * PER_MM, at[1] + by[1] * far * PER_MM


def _leaning(picture: Image.Image, corner: Point, side: Point, high: float) -> Image.Image:
    """A picture as large as the drawing, in which another one stands upright along a slanting side, from a corner."""
    width, height = picture.size
    a, b = (side[0] - corner[0]) / width, (side[1] - corner[1]) / width
    up = high / height
    x, y = corner
    # the affine map from the drawing back to the picture
    inverse = (1 / a, 0.0, -x / a, -b / (a * up), 1 / up, (b * x / a - y) / up)
    solid = picture.convert("RGBA")
    return solid.transform((WIDTH, HEIGHT), Image.Transform.AFFINE, inverse, Image.Resampling.BICUBIC)


def _book(drawn: Image.Image, at: float, faces: Faces, sides: Sides, head: Head) -> None:
    """A book with its spine and its front towards us; `sides` are thickness, height and depth in mm."""
    thick, tall, deep = sides
    high = tall * PER_MM
    foot: Point = (at, FLOOR)
    near = (foot[0], foot[1] - high)
    front, back = _moved(near, ACROSS, deep), _moved(near, ALONG, thick)
    far = _moved(front, ALONG, thick)
    pen = ImageDraw.Draw(drawn)
    pen.polygon([near, front, far, back], fill=_of_255(head.boards))
    board = min(head.board, thick / 3)
    for leaf in range(int((thick - 2 * board) / LEAF)):
        start, end = (_moved(near, ALONG, board + LEAF * (leaf + more)) for more in (0, 1))
        tone = mixed(head.leaves, BLACK, 0.12 * (leaf * 7 % 5) / 4)
        pen.polygon([start, _moved(start, ACROSS, deep), _moved(end, ACROSS, deep), end], fill=_of_255(tone))
    spine, cover = faces
    for picture, left, right, dark in ((spine, back, near, 40), (cover, near, front, 0)):
        leaning = _leaning(picture, left, right, high)
        drawn.paste(leaning, (0, 0), leaning)
        if dark:
            veil = Image.new("RGBA", drawn.size, (0, 0, 0, 0))
            ImageDraw.Draw(veil).polygon([left, right, (right[0], right[1] + high), (left[0], left[1] + high)],
                                         fill=(0, 0, 0, dark))  # fmt: skip
            drawn.alpha_composite(veil)
    pen.line([near, front, far, back, near], fill=SHADE, width=FINER)


def _of_255(colour: Colour) -> tuple[int, int, int]:
    red, green, blue = (round(255 * part) for part in colour)
    return red, green, blue


def _shadow(drawn: Image.Image, at: float, thick: float, deep: float) -> None:
    foot = (at, float(FLOOR))
    right, left = _moved(foot, ACROSS, deep), _moved(foot, ALONG, thick)
    veil = Image.new("RGBA", drawn.size, (0, 0, 0, 0))
    slid = (right[0] + 46 * FINER, right[1] + 8 * FINER)
    ImageDraw.Draw(veil).polygon([foot, slid, _moved(slid, ALONG, thick), left], fill=(30, 20, 10, 120))
    drawn.alpha_composite(veil.filter(ImageFilter.GaussianBlur(9 * FINER)))


def _finished() -> Iterator[tuple[Faces, Sides, Head]]:
    checked = check(DEMO / "shelf.yaml")
    ids = list(checked.plan.plans)
    with tempfile.TemporaryDirectory() as folder:
        for number in BOOKS:
            id = ids[int(number) - 1]
            standing, faces = checked.plan.plans[id].standing, checked.drafts[id].faces
            head = checked.drafts[id].head
            assert standing and head
            pictures = _pixels(faces[Role.SPINE], Path(folder)), _pixels(faces[Role.FRONT], Path(folder))
            yield pictures, (standing.thickness, standing.height, standing.depth), head


def draw(into: Path) -> None:
    """All three, side by side."""
    drawn = Image.new("RGBA", (WIDTH, HEIGHT), (255, 255, 255, 255))
    for at, (pictures, sides, head) in zip((110.0, 480.0, 880.0), _finished(), strict=True):
        _shadow(drawn, at * FINER, sides[0], sides[2])
        _book(drawn, at * FINER, pictures, sides, head)
    small = drawn.convert("RGB").resize((WIDTH // FINER, HEIGHT // FINER), Image.Resampling.LANCZOS)
    small.quantize(256, kmeans=4, dither=Image.Dither.NONE).save(into, optimize=True)


if __name__ == "__main__":
    draw(DEMO.parent / "bookmaker/manual/pictures/books.png")
