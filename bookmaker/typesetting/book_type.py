"""The type of a book's running text: what stands before and after it is set in the same, and names it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..ground.typefaces import Typeface
from .lines.fount import Style

__all__ = ["BookType", "Family"]

Family = Mapping[Style, Typeface]
"""Typefaces that go with one another, by style; roman is always there."""


@dataclass(frozen=True, slots=True)
class BookType:
    """The typefaces of the first text of a book, what all its texts are set in, and the language it is written in.

    `language` is a tag such as ``de``, or empty if nobody knows. If it is `vertical`, lines run down.
    """

    family: Family
    names: tuple[str, ...]
    language: str = ""
    vertical: bool = False
