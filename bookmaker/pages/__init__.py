"""What the pages of a book show: one module a kind, one row a kind in the table below."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, Any

from ..spec.entry import Entry, either
from . import blank, ledger, map_grid, mock_text, music, pdf_pages, pictures, ruled, squared, text
from .page import BookWords, Inside, PageFrame

__all__ = ["BLANK", "AnyInside", "BookWords", "Inside", "PageFrame", "compose_inside", "load_inside"]

KINDS: Mapping[type[Entry], ModuleType] = {
    blank.Blank: blank,
    ruled.Ruled: ruled,
    squared.Squared: squared,
    ledger.Ledger: ledger,
    music.Music: music,
    map_grid.MapGrid: map_grid,
    mock_text.MockText: mock_text,
    text.TextInside: text,
    pictures.PicturesInside: pictures,
    pdf_pages.PdfInside: pdf_pages,
}

BLANK = blank.Blank()
"""The inside of a book that asks for none."""

if TYPE_CHECKING:
    AnyInside = Entry
else:
    AnyInside: Any = either(tuple(KINDS))


def load_inside(entry: Entry, folder: Path) -> Any:
    """Read the files an inside names, as seen from a folder; what comes back is that kind's own.

    Raises:
        ShelfFileError: a file cannot be used; fields are relative to the inside.
    """
    return KINDS[type(entry)].load(entry, folder)


def compose_inside(entry: Entry, source: Any, frame: PageFrame) -> Inside:
    """Fill the pages; `source` is what `load_inside` gave."""
    inside: Inside = KINDS[type(entry)].compose(entry, source, frame)
    return inside
