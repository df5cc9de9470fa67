"""Pictures, and pages of PDF files, as the data that an SVG holds in itself: as many pixels as are shown."""

from __future__ import annotations

import math
from base64 import b64encode
from functools import lru_cache

from ...ground.geometry import Rect
from ...ground.imported import ImportedPage
from ...ground.pictures import Picture
from ...ground.units import MM_PER_INCH
from ..encoded_pictures import as_png, encoded, pixels_for
from ..pdf_pixels import THROUGH, rendered_page

__all__ = ["Part", "image_of_page", "image_of_picture", "seen_part"]

MOST_IMAGES = 128
"""Pictures that are kept ready, and as many pages, some 100 kB each."""


Part = tuple[int, int, int, int]
"""A part of a picture in its pixels: its left, upper, right and lower edge, counted from the upper left corner."""


def seen_part(picture: Picture, into: Rect, seen: Rect) -> tuple[Part, Rect]:
    """What of a picture that fills a rectangle is to be held, and where that lies: all, unless half of it is unseen."""
    columns, rows = picture.width_px, picture.height_px
    if seen.width * seen.height * 2 > into.width * into.height:
        return (0, 0, columns, rows), into
    across, up = into.width / columns, into.height / rows
    # a pixel more on each side, into which what is shown may be blurred
    left, right = math.floor((seen.x - into.x) / across) - 1, math.ceil((seen.right - into.x) / across) + 1
    above, below = math.floor((into.top - seen.top) / up) - 1, math.ceil((into.top - seen.y) / up) + 1
    part = max(0, left), max(0, above), min(columns, right), min(rows, below)
    left, above, right, below = part
    return part, Rect(into.x + left * across, into.top - below * up, (right - left) * across, (below - above) * up)


@lru_cache(maxsize=MOST_IMAGES)
def image_of_picture(picture: Picture, part: Part, width: float, height: float, dpi: float) -> str:
    """A part of a picture that is shown so many mm wide and high, as a data URL (RFC 2397).

    Raises:
        ShelfFileError: the file is not what it was when it was loaded.
    """
    _, png, jpeg = encoded(picture, width, height, dpi, part)
    return _data("png", png) if jpeg is None or len(png) <= len(jpeg) else _data("jpeg", jpeg)


@lru_cache(maxsize=MOST_IMAGES)
def image_of_page(page: ImportedPage, width: float, height: float, dpi: float) -> str:
    """A page of a PDF file that is shown so many mm wide and high, as a data URL; what it leaves bare is clear."""
    across, up = (pixels_for(length, dpi) for length in (width, height))
    finest = max(across / page.size.width, up / page.size.height) * MM_PER_INCH
    return _data("png", as_png(rendered_page(page.path, page.index, finest, THROUGH, notes=False)))


def _data(kind: str, content: bytes) -> str:
    return f"data:image/{kind};base64,{b64encode(content).decode()}"
