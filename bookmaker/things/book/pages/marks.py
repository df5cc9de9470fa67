"""The marks with which a book is punctuated wherever something of it is printed: those of its first text."""

from __future__ import annotations

from collections.abc import Sequence

from ....typesetting.punctuation import Punctuation, punctuation_of
from .front_matter.phrases import language_of_letters
from .part import Part
from .prose.text_keys import TextInside

__all__ = ["marks_of"]


def marks_of(parts: Sequence[Part], title: str) -> Punctuation:
    """The marks of the first text among the parts of a book; where there is none, its title tells the language."""
    texts = (part for part in parts if isinstance(part, TextInside))
    return next((text.marks for text in texts), None) or punctuation_of(language_of_letters(title))
