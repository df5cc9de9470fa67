"""Styles of type: how letters within a text are set, and the signs that say so."""

from __future__ import annotations

from enum import StrEnum

__all__ = ["Style"]


class Style(StrEnum):
    """How letters are set; its value is the sign that says so in a word."""

    ROMAN = "\x00"
    ITALIC = "\x01"
    BOLD = "\x02"
    BOLD_ITALIC = "\x03"
    TYPEWRITER = "\x04"
    SMALL_CAPITALS = "\x05"
    SUPERIOR = "\x06"
