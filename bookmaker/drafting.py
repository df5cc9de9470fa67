"""Plan and art become pieces: every flat of every book with what is printed on it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from .designs import Words, dress_flat
from .drawing import NOTHING, Art, Canvas, Drawn
from .errors import FieldPath, Problem
from .flat import Face, Flat, Panel
from .geometry import Path, Rect, Transform
from .pages import Inside
from .piece import Piece
from .plan import BookPlan

__all__ = ["Draft", "PageArt", "draft_book"]


@dataclass(frozen=True, slots=True)
class Draft:
    """The pieces of a book and what is wrong with their art; fields count from the whole shelf."""

    pieces: tuple[Piece, ...]
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True)
class PageArt:
    """A page on a panel: its art, the way from the page's coordinates to the flat's, and what shows of it."""

    art: Art
    to_flat: Transform
    shown: Rect | None = None

    def draw(self, canvas: Canvas) -> None:
        """Draw it, cut off where it would cross the fold."""
        if self.shown is None:
            with canvas.placed(self.to_flat):
                self.art.draw(canvas)
        else:
            with canvas.placed(Transform(), Path.rectangle(self.shown)), canvas.placed(self.to_flat):
                self.art.draw(canvas)


def draft_book(book: BookPlan, inside: Inside, artwork: Any) -> Draft:
    """Draw everything to print for one book; `artwork` is what its design has read."""
    pieces = [_block_piece(book, index, flat, inside) for index, flat in enumerate(book.block.flats, start=1)]
    problems = list(_within(("books", book.number, "inside"), inside.problems))
    words = Words(book.entry.title, book.entry.author or "")
    for index, flat in enumerate(book.cover.flats, start=1):
        dress = dress_flat(book.entry.design, artwork, flat, words)
        pieces.append(Piece(_piece_id(book, flat, index), book.number, _label(book, flat), flat, dress.art))
        problems += _within(("books", book.number, "design"), dress.problems)
    return Draft(tuple(pieces), tuple(problems))


def _block_piece(book: BookPlan, index: int, flat: Flat, inside: Inside) -> Piece:
    front, reverse = (
        _printed([panel for panel in panels if panel.page is not None], inside, book)
        for panels in (flat.seen_from(Face.FRONT), flat.seen_from(Face.REVERSE))
    )
    return Piece(_piece_id(book, flat, index), book.number, _label(book, flat), flat, front, reverse)


def _printed(panels: Iterable[Panel], inside: Inside, book: BookPlan) -> Art:
    """The pages on one face of a flat; blank ones leave no trace."""
    pages = tuple(
        PageArt(art, _to_flat(panel, book), panel.rect if panel.creep else None)
        for panel in panels
        if panel.page is not None and (art := inside.pages[panel.page - 1]) is not NOTHING
    )
    return Drawn(pages) if pages else NOTHING


def _to_flat(panel: Panel, book: BookPlan) -> Transform:
    """From a page's coordinates to those of its flat; creep moves the image towards the spine, beyond the fold."""
    assert panel.page is not None  # only panels with pages are drawn
    spine_on_left = (panel.page % 2 == 1) is not book.entry.right_to_left
    beyond = panel.creep if spine_on_left else 0.0
    if panel.head_down:
        return Transform.quarter_turn(2).moved(panel.rect.right + beyond, panel.rect.top)
    return Transform.move(panel.rect.x - beyond, panel.rect.y)


def _piece_id(book: BookPlan, flat: Flat, index: int) -> str:
    return f"book-{book.number + 1}-{flat.kind}-{index}"


def _label(book: BookPlan, flat: Flat) -> tuple[str, str]:
    """What stands beside the piece: the book, which may be shortened, and the part, which may not."""
    part = flat.name
    if flat.pages:
        low, high = min(flat.pages), max(flat.pages)
        part += f", pages {low}–{high}" if high > low else f", page {low}"
    return f"{book.number + 1}. {book.entry.title}", part


def _within(prefix: FieldPath, problems: Iterable[Problem]) -> Iterator[Problem]:
    return (replace(problem, field=(*prefix, *problem.field)) for problem in problems)
