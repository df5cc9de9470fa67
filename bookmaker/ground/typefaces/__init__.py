"""Typefaces: loaded from ``fonts/`` or from the maker's own files, and text shaped in them."""

from __future__ import annotations

from .contours import Commands
from .cuts import cut_of
from .files import bundled, load_typeface
from .typeface import Glyph, Run, TextLine, Typeface, set_line
from .vertical import Vertical, across, is_dotted, vertical_of

__all__ = [
    "Commands",
    "Glyph",
    "Run",
    "TextLine",
    "Typeface",
    "Vertical",
    "across",
    "bundled",
    "cut_of",
    "is_dotted",
    "load_typeface",
    "set_line",
    "vertical_of",
]
