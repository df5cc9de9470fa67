"""How a book is dressed, and in which words."""

from __future__ import annotations

from dataclasses import dataclass

from ...ground.typefaces import bundled
from .designs.design import Design, Words
from .entry import BookEntry
from .pages.inside import LoadedInside
from .pages.written import language_named, marks_of, parts_of

__all__ = ["Coat", "words_of"]


@dataclass(frozen=True, slots=True)
class Coat:
    """How a book is dressed beside its neighbours: its design and that of its jacket, settled, and the words on them.

    `jacket` is None where there is none, or where it shows the design of the book.
    """

    words: Words
    design: Design
    jacket: Design | None = None

    @property
    def seen(self) -> Design:
        """The design that neighbours see."""
        return self.jacket or self.design


def words_of(entry: BookEntry, look: int, inside: LoadedInside) -> Words:
    """What stands on the cover of a book, in the typeface of its text if that of others lacks the letters."""
    parts = parts_of(entry.inside)
    printed = marks_of(parts, entry.title, entry.language).printed
    return Words(
        title=printed(entry.title),
        author=printed(entry.author or ""),
        volume=entry.volume or "",
        date=printed(entry.date or ""),
        language=language_named(parts) or entry.language,
        series=entry.series or "",
        named=(entry.title, entry.author or ""),
        look=look,
        own=inside.face if bundled("text").missing(entry.title + (entry.author or "")) else None,
    )
