"""What the rest of a book asks of its inside as it is written."""

from __future__ import annotations

from collections.abc import Sequence

from ....typesetting.punctuation import Punctuation, punctuation_of
from .front_matter.phrases import language_of_letters
from .part import Part

__all__ = ["Parts", "language_named", "marks_of", "parts_of"]

Parts = Part | tuple[Part, ...]
"""An inside as it is written: a part that stands alone has no number in the shelf file."""


def parts_of(inside: Parts) -> tuple[Part, ...]:
    """The parts, one or several."""
    return (inside,) if isinstance(inside, Part) else inside


def marks_of(parts: Sequence[Part], title: str, language: str = "") -> Punctuation:
    """The marks a book is punctuated with wherever something of it is printed, on its cover too.

    They are those of its first text; where there is none, those of the `language` that was named for the book, or that
    its title tells.
    """
    marks = (part.marks for part in parts)
    of_title = punctuation_of(language or language_of_letters(title))
    return next((of_text for of_text in marks if of_text), None) or of_title


def language_named(parts: Sequence[Part]) -> str:
    """The language of the first text for which the maker named one; empty if nobody did, or named none.

    A language that is only the default says nothing: Cyrillic letters then tell for themselves.
    """
    return next((language for part in parts if (language := part.named_language) is not None), "")
