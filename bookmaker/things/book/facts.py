"""What the print of a book follows from, in the words of makers, so that whatever changes can be told."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator

from ...ground.units import print_mm
from .neighbours import seen_design
from .plan import BookPlan

__all__ = ["facts_of"]


def facts_of(book: BookPlan) -> dict[str, str]:
    """By name; what is too long to be shown is told by a digest."""
    return dict(_facts(book))


def _facts(book: BookPlan) -> Iterator[tuple[str, str]]:
    entry, words = book.entry, book.coat.words
    yield "title", entry.title
    yield "author", entry.author or ""
    yield "volume", entry.volume or ""
    yield "series", entry.series or ""
    yield "date", entry.date or ""
    yield "page", f"{print_mm(book.page.width)} × {print_mm(book.page.height)}"
    yield "thickness", print_mm(book.thickness.value, 2)
    yield "number of pages", str(book.block.pages)
    yield "how its block is made", f"{book.block.kind} {_digest(entry.block)}"
    yield "how it is covered", f"{book.made_as} {_digest(entry.cover)}"
    yield "what its pages show", _digest(entry.inside)
    yield "look", str(words.look)
    yield "style", seen_design(entry).style
    yield "design", _digest(entry.design, entry.jacket)
    if words.in_set:
        yield "the set it belongs to", _digest([fellow.title for fellow in words.fellows], words.in_set.width)


def _digest(*written: object) -> str:
    """Longer than what is shown."""
    return hashlib.sha256(repr(written).encode()).hexdigest()
