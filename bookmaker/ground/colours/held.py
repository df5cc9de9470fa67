"""How much memory a picture takes on its way from its file to the colours of screens."""

from __future__ import annotations

from PIL import Image

__all__ = ["bytes_held"]

ROWS_PER_STRIP = 0x0116
"""The tag of a TIFF that says how many rows are packed together (TIFF 6.0)."""

WEBP_HELD = 3
"""So many times more is held while a WebP is decoded: two frames and the bytes of one (measured)."""


def bytes_held(image: Image.Image, *, turned: bool) -> int:
    """The most bytes that are held at once, whether or not it is `turned` upright.

    Pillow holds four bytes for a pixel of any mode but grey; a picture of 5000 × 5000 with transparency takes 400 MB.
    """
    each = 1 if image.mode in {"1", "L"} else 4
    steps = 1 + (image.mode not in {"1", "L", "RGB"}) + 2 * image.has_transparency_data + turned + _beside(image)
    return image.width * image.height * each * steps


def _beside(image: Image.Image) -> int:
    """How many times as much as comes of it a decoder holds besides, of what it has read so far."""
    if image.format == "WEBP":
        return WEBP_HELD
    packed = image.format == "TIFF" and image.info.get("compression", "raw") != "raw"
    in_one = packed and 2 * image.getexif().get(ROWS_PER_STRIP, image.height) > image.height
    return int(in_one or "progressive" in image.info)
