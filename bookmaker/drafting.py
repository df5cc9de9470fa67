"""Plan and art become pieces: every flat of every book with what is printed on it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from .designs import Lettering, dress_flat
from .drawing import NOTHING, Art, Canvas
from .errors import FieldPath, Problem
from .flat import Flat
from .geometry import Rect, Transform
from .pages import Inside
from .piece import Piece
from .plan import BookPlan

__all__ = ["Draft", "PanelArt", "draft_book"]


@dataclass(frozen=True, slots=True)
class Draft:
    """The pieces of a book, what is wrong with their art, how its cover is lettered; fields count from the shelf."""

    pieces: tuple[Piece, ...]
    problems: tuple[Problem, ...]
    lettering: tuple[Lettering, ...] = ()


@dataclass(frozen=True, slots=True)
class PanelArt:
    """Pages on the panels of a flat: each drawn in its own coordinates, from its panel's lower left corner."""

    panels: tuple[tuple[Rect, Art], ...]

    def draw(self, canvas: Canvas) -> None:
        """Draw every page in its panel."""
        for rect, art in self.panels:
            with canvas.placed(Transform.move(rect.x, rect.y)):
                art.draw(canvas)


def draft_book(book: BookPlan, inside: Inside, artwork: Any) -> Draft:
    """Draw everything to print for one book; `artwork` is what its design has read."""
    pieces = [_block_piece(book, index, flat, inside) for index, flat in enumerate(book.block.flats, start=1)]
    problems = list(_within(("books", book.number, "inside"), inside.problems))
    lettering: list[Lettering] = []
    for index, flat in enumerate(book.cover.flats, start=1):
        dress = dress_flat(book.entry.design, artwork, flat, book.words)
        pieces.append(Piece(_piece_id(book, flat, index), book.number, _label(book, flat), flat, dress.art))
        problems += _within(("books", book.number, "design"), dress.problems)
        lettering += dress.lettering
    return Draft(tuple(pieces), tuple(problems), tuple(lettering))


def _block_piece(book: BookPlan, index: int, flat: Flat, inside: Inside) -> Piece:
    drawn = tuple(
        (panel.rect, inside.pages[panel.page - 1])
        for panel in flat.panels
        if panel.page is not None and inside.pages[panel.page - 1] is not NOTHING
    )
    return Piece(_piece_id(book, flat, index), book.number, _label(book, flat), flat, PanelArt(drawn))


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
