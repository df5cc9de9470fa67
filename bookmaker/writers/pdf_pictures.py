"""Pictures in a PDF: as many pixels as print shows, flat colours exact, photographs as JPEG."""

from __future__ import annotations

import io
import math
import struct
from dataclasses import dataclass
from typing import Any

from PIL import Image
from reportlab.pdfbase.pdfdoc import PDFDictionary, PDFName, PDFStream

from ..ground.pictures import Picture
from ..ground.units import MM_PER_INCH

__all__ = ["PlacedPicture"]

FEW_COLOURS = {"RGB": 256, "L": 32}
"""Art with no more colours or greys than these is drawn, not photographed, and must not be smeared by JPEG."""

JPEG_QUALITY = 92


@dataclass(slots=True)
class PlacedPicture:
    """A picture of a document and the largest size in mm at which it stands anywhere on the paper."""

    picture: Picture
    width: float
    height: float

    def enlarge(self, width: float, height: float) -> None:
        """The picture stands on the paper once more, at this size."""
        self.width, self.height = max(self.width, width), max(self.height, height)

    def encoded(self, most_dpi: float) -> PDFStream:
        """The picture as an image object (ISO 32000-1, 8.9.5), thinned to `most_dpi` pixels per inch."""
        image = self.picture.pixels()
        is_art = image.getcolors(FEW_COLOURS[image.mode]) is not None
        wanted = (
            min(image.width, _pixels(self.width, most_dpi)),
            min(image.height, _pixels(self.height, most_dpi)),
        )
        if wanted != image.size:
            image = image.resize(wanted, Image.Resampling.LANCZOS)
        flate = _flate(image)
        jpeg = None if is_art else _jpeg(image)
        return min((flate, jpeg), key=lambda stream: len(stream.content)) if jpeg else flate


def _pixels(length: float, dpi: float) -> int:
    """How many pixels a length in mm needs; a trace over a whole number does not need another."""
    return max(1, math.ceil(length / MM_PER_INCH * dpi - 1e-3))


def _flate(image: Image.Image) -> PDFStream:
    """Exact samples, deflated after PNG's prediction (7.4.4.4), just as a PNG file holds them."""
    file = io.BytesIO()
    image.save(file, "PNG")
    predictor = {
        "Predictor": 15,
        "Colors": len(image.getbands()),
        "BitsPerComponent": 8,
        "Columns": image.width,
    }
    parameters = {"Filter": PDFName("FlateDecode"), "DecodeParms": PDFDictionary(predictor)}
    return _stream(image, _png_data(file.getvalue()), parameters)


def _png_data(png: bytes) -> bytes:
    """The deflated samples of a PNG file: its IDAT chunks, each a length, a kind, data and a checksum."""
    data, at = b"", 8
    while at < len(png):
        length, kind = struct.unpack_from(">I4s", png, at)
        if kind == b"IDAT":
            data += png[at + 8 : at + 8 + length]
        at += length + 12
    return data


def _jpeg(image: Image.Image) -> PDFStream:
    """A JPEG that keeps the colour of every pixel (4:4:4)."""
    file = io.BytesIO()
    image.save(file, "JPEG", quality=JPEG_QUALITY, subsampling=0, optimize=True)
    return _stream(image, file.getvalue(), {"Filter": PDFName("DCTDecode")})


def _stream(image: Image.Image, content: bytes, parameters: dict[str, Any]) -> PDFStream:
    entries = {
        "Type": PDFName("XObject"),
        "Subtype": PDFName("Image"),
        "Width": image.width,
        "Height": image.height,
        "ColorSpace": PDFName("DeviceGray" if image.mode == "L" else "DeviceRGB"),
        "BitsPerComponent": 8,
    }
    return PDFStream(PDFDictionary(entries | parameters), content)
