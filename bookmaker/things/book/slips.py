"""What of a book is likely a slip: told, and worked out as it was written nevertheless."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...ground.problems import Problem, Severity
from ...ground.quantities import show
from ...ground.units import print_mm
from .entry import BookEntry
from .sizes import BookSizes

__all__ = ["thicker_than_high", "titled_alike", "written_life_size"]

HIGHEST_BOOK = 1000.0
"""A real book is hardly higher, in mm: the largest folios of libraries are about as high (common practice)."""


def written_life_size(entry: BookEntry, scale: float, severity: Severity = Severity.WARNING) -> Iterator[Problem]:
    """A page so large that its sides are probably those of the real book: 210 mm at 1:12 is a book 2.5 m high."""
    size = entry.size
    if size is None or scale <= 1 or size.height * scale <= HIGHEST_BOOK:
        return
    high, wide = print_mm(size.height, 2), print_mm(size.width, 2)
    yield Problem(
        f"the page is {print_mm(size.height, 1)} high: at 1:{scale:g} the real book would be "
        f"{print_mm(size.height * scale, 0)} high",
        f"write life_size: {{height: {high}, width: {wide}}} in place of size if these are the sides of the real book",
        severity,
        field=("size",),
        by_itself=True,
    )


def thicker_than_high(book: BookSizes, high: float) -> Iterator[Problem]:
    """A block thicker than its page is high; `high` is that in mm."""
    thick = book.block.thickness.value
    if book.block.pages and thick > high:
        yield Problem(
            f"the block is {print_mm(thick, 1)} thick and its page only {print_mm(high, 1)} high",
            f"count again: {book.block.pages} pages are {book.block.pages // 2} leaves; or write fewer pages, "
            "or a thinner paper",
            Severity.WARNING,
            field=("block",),
        )


def titled_alike(entries: Sequence[tuple[str, BookEntry]]) -> Iterator[Problem]:
    """A note for every title that several books have, volumes told apart; each book comes with its id."""
    named: dict[tuple[str, ...], list[str]] = {}
    for id, entry in entries:
        words = (entry.title, entry.volume or "", entry.series or "", entry.author or "")
        named.setdefault(tuple(word.casefold() for word in words), []).append(id)
    titles = {id: entry.title for id, entry in entries}
    for ids in named.values():
        if len(ids) > 1:
            yield Problem(
                f"{len(ids)} books have the title {show(titles[ids[0]])}",
                "delete one if it is listed twice by mistake; or write another title, volume: or author:",
                Severity.NOTE,
                field=("title",),
                thing=ids[1],
            )
