"""Typefaces: loaded from ``fonts/`` or from the maker's own files, and text shaped in them."""

from __future__ import annotations

from .files import bundled, load_typeface
from .typeface import Glyph, Run, TextLine, Typeface, set_line

__all__ = ["Glyph", "Run", "TextLine", "Typeface", "bundled", "load_typeface", "set_line"]
