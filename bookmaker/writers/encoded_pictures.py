"""Pictures as they are put into files: as many pixels as are shown, flat colours exact, photographs as JPEG."""

from __future__ import annotations

import io
import math
from typing import NamedTuple

from PIL import Image

from ..ground.pictures import Picture
from ..ground.units import MM_PER_INCH

__all__ = ["Encoded", "as_png", "encoded", "pixels_for"]

FEW_COLOURS = {"RGB": 256, "L": 32}
"""Art with no more colours or greys than these is drawn, not photographed, and must not be smeared by JPEG."""

JPEG_QUALITY = 92


class Encoded(NamedTuple):
    """A picture as it is to be shown, the bytes of it as PNG, and as JPEG if it may be smeared."""

    image: Image.Image
    png: bytes
    jpeg: bytes | None


def encoded(
    picture: Picture, width: float, height: float, most_dpi: float, part: tuple[int, int, int, int] | None = None
) -> Encoded:
    """A picture, or a part of it, that is shown `width` by `height` mm large, thinned to `most_dpi` pixels per inch.

    A part is given by its left, upper, right and lower edge in pixels of the picture, from its upper left corner.
    """
    image = picture.pixels() if part is None else picture.pixels().crop(part)
    is_art = image.getcolors(FEW_COLOURS[image.mode]) is not None
    wanted = min(image.width, pixels_for(width, most_dpi)), min(image.height, pixels_for(height, most_dpi))
    if wanted != image.size:
        image = image.resize(wanted, Image.Resampling.LANCZOS)
    return Encoded(image, as_png(image), None if is_art else _as_jpeg(image))


def pixels_for(length: float, dpi: float) -> int:
    """How many pixels a length in mm needs; a trace over a whole number does not need another."""
    return max(1, math.ceil(length / MM_PER_INCH * dpi - 1e-3))


def as_png(image: Image.Image) -> bytes:
    """Exact samples."""
    file = io.BytesIO()
    image.save(file, "PNG")
    return file.getvalue()


def _as_jpeg(image: Image.Image) -> bytes:
    """A JPEG that keeps the colour of every pixel (4:4:4)."""
    file = io.BytesIO()
    image.save(file, "JPEG", quality=JPEG_QUALITY, subsampling=0, optimize=True)
    return file.getvalue()
