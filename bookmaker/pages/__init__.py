"""What the pages of a book show: one module a kind, one row a kind in the table below."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, Any

from ..spec.entry import Entry, either
from . import blank, pictures, ruled, text
from .page import BookWords, Inside, PageFrame

__all__ = ["BLANK", "AnyInside", "BookWords", "Inside", "PageFrame", "compose_inside", "inside_extent", "load_inside"]

KINDS: Mapping[type[Entry], ModuleType] = {
    blank.Blank: blank,
    ruled.Ruled: ruled,
    text.TextInside: text,
    pictures.PicturesInside: pictures,
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


def inside_extent(entry: Entry, source: Any, frame: PageFrame) -> int | None:
    """How many pages an inside needs, an even number; None if it takes what it is given.

    A kind that can tell has a function `extent`; `frame.pages` is of no account to it.
    """
    extent = getattr(KINDS[type(entry)], "extent", None)
    pages: int | None = extent(entry, source, frame) if extent else None
    return None if pages is None else pages + pages % 2
