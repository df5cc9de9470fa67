"""Pages to read, such as the maker's guide, as a PDF."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path as FilePath

from ..ground.drawing import Art
from ..ground.geometry import Size
from .pdf import PdfFile

__all__ = ["write_leaflet"]


def write_leaflet(path: FilePath, title: str, pages: Iterable[Art], size: Size) -> None:
    """Draw every page on a page of its own."""
    with PdfFile(path, title=title) as pdf:
        for page in pages:
            with pdf.page(size) as canvas:
                page.draw(canvas)
