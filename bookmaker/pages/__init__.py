"""What the pages of a book show: one module a kind, one row a kind in the table below."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, Any

from ..errors import Problem, Severity
from ..spec.entry import Entry, either
from . import blank, pictures, ruled, text
from .page import Inside, PageFrame

__all__ = ["BLANK", "AnyInside", "Inside", "PageFrame", "compose_inside", "load_inside"]

KINDS: Mapping[type[Entry], ModuleType] = {
    blank.Blank: blank,
    ruled.Ruled: ruled,
    text.TextInside: text,
    pictures.PicturesInside: pictures,
}

BLANK = blank.Blank()
"""The inside of a book that asks for none."""

UNSEEN = Problem(
    "this book is solid and has no pages: its inside will not be seen",
    "leave it out, or write inside: {kind: blank}",
    Severity.NOTE,
)

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
    """Fill the pages; `source` is what `load_inside` gave. Of a book that has none it is only said that it has none."""
    if not frame.pages:
        return Inside((), () if isinstance(entry, blank.Blank) else (UNSEEN,))
    inside: Inside = KINDS[type(entry)].compose(entry, source, frame)
    return inside
