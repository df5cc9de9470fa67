"""Pictures in a PDF: image objects with the samples of a PNG file, or a JPEG as it is."""

from __future__ import annotations

import struct
from dataclasses import dataclass
from typing import Any

from PIL import Image
from reportlab.pdfbase.pdfdoc import PDFDictionary, PDFName, PDFStream

from ...ground.pictures import Picture
from ..encoded_pictures import encoded

__all__ = ["PlacedPicture"]


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
        image, png, jpeg = encoded(self.picture, self.width, self.height, most_dpi)
        samples = _png_data(png)
        if jpeg is None or len(samples) <= len(jpeg):
            return _flate(image, samples)
        return _stream(image, jpeg, {"Filter": PDFName("DCTDecode")})


def _flate(image: Image.Image, samples: bytes) -> PDFStream:
    """Exact samples, deflated after PNG's prediction (7.4.4.4), just as a PNG file holds them."""
    predictor = {
        "Predictor": 15,
        "Colors": len(image.getbands()),
        "BitsPerComponent": 8,
        "Columns": image.width,
    }
    parameters = {"Filter": PDFName("FlateDecode"), "DecodeParms": PDFDictionary(predictor)}
    return _stream(image, samples, parameters)


def _png_data(png: bytes) -> bytes:
    """The deflated samples of a PNG file: its IDAT chunks, each a length, a kind, data and a checksum."""
    data, at = b"", 8
    while at < len(png):
        length, kind = struct.unpack_from(">I4s", png, at)
        if kind == b"IDAT":
            data += png[at + 8 : at + 8 + length]
        at += length + 12
    return data


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
