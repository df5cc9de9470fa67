"""What random shelves print: all of it within reach of the printer, on both sides, and every page whole."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import numpy as np
import pypdfium2
from ruamel.yaml import YAML

from tests.kit.random_shelves import RandomShelf

DPI = 100
PER_MM = DPI / 25.4
EDGE = 2
"""Pixels beside the edge of what is reached that may be grey, for they lie on both sides of it."""


def test_nothing_is_printed_where_the_printer_does_not_reach(shelf: RandomShelf) -> None:
    reach = margins(shelf.text)
    for file in {sheet["file"] for sheet in shelf.plan["sheets"]}:
        for page in pages(shelf.out / file):
            left, right, top, bottom = (
                round(reach[side] * PER_MM) - EDGE for side in ("left", "right", "top", "bottom")
            )
            assert page[:top].min() > 250 and page[-bottom:].min() > 250
            assert page[:, :left].min() > 250 and page[:, -right:].min() > 250


def margins(text: str) -> dict[str, float]:
    """What the printer of a shelf does not reach on each side, in mm."""
    printer: dict[str, Any] = YAML(typ="safe", pure=True).load(text)["printer"]
    return {side: float(length.split()[0]) for side, length in printer["margins"].items()}


def pages(file: Path) -> list[np.ndarray[tuple[int, ...], np.dtype[np.uint8]]]:
    """The pages of a PDF as rows of grey pixels."""
    document = pypdfium2.PdfDocument(file)
    found = [np.asarray(page.render(scale=DPI / 72, grayscale=True).to_pil().convert("L")) for page in document]
    document.close()
    return found
