"""Cover designs: one module a style, one row a style in the table below."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, Any

from ..flat import Flat
from ..spec.entry import Entry, either
from . import plain
from .design import Dress, Words

__all__ = ["PLAIN", "AnyDesign", "Dress", "Words", "dress_flat", "load_design"]

STYLES: Mapping[type[Entry], ModuleType] = {
    plain.Plain: plain,
}

PLAIN = plain.Plain()
"""The design of a book that asks for none."""

if TYPE_CHECKING:
    AnyDesign = Entry
else:
    AnyDesign: Any = either(tuple(STYLES), "style")


def load_design(entry: Entry, folder: Path) -> Any:
    """Read the files a design names; what comes back is that style's own."""
    return STYLES[type(entry)].load(entry, folder)


def dress_flat(entry: Entry, artwork: Any, flat: Flat, words: Words) -> Dress:
    """Draw one flat of a cover; `artwork` is what `load_design` gave."""
    dress: Dress = STYLES[type(entry)].dress(entry, artwork, flat, words)
    return dress
