"""The maker's guide as a PDF."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path as FilePath

from ..drawing import Art
from ..geometry import Size
from .pdf import PdfFile

__all__ = ["GUIDE", "write_guide"]

GUIDE = "guide"
"""The name under which the guide is written."""


def write_guide(path: FilePath, shelf: str, pages: Iterable[Art], size: Size) -> None:
    """Draw every page of the guide on a page of its own."""
    with PdfFile(path, title=f"{shelf}: maker's guide") as pdf:
        for page in pages:
            with pdf.page(size) as canvas:
                page.draw(canvas)
