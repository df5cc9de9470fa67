"""The front of a shelf: what is seen of it, space by space, and how that is cut into rows that fit a page."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from ..ground.geometry import Rect
from ..sheets.flat import Role
from ..sheets.piece import Piece
from ..shelf.arrangement import Stood, arranged
from ..shelf.plan import ShelfPlan
from ..things.slipcase.plan import SlipcasePlan

__all__ = ["Front", "Row", "Shown", "Spine", "fronts", "rows_of", "spine_of"]

CLOSE = 0.2
"""Books that have no space stand so close, in mm."""


@dataclass(frozen=True, slots=True)
class Spine:
    """The spine of a book: the piece it is printed on, and where it lies there."""

    piece: Piece
    rect: Rect


@dataclass(frozen=True, slots=True)
class Shown:
    """What is seen in a rectangle of a space: a spine, lying if it is in a stack; without one the card of a box."""

    rect: Rect
    spine: Spine | None = None
    lies: bool = False


@dataclass(frozen=True, slots=True)
class Front:
    """One space: its clear width and height in mm, and from the left what belongs together in each place."""

    name: str
    width: float
    height: float
    places: tuple[tuple[Shown, ...], ...]


@dataclass(frozen=True, slots=True)
class Row:
    """A part of a front as it stands on a page, in mm of the space: from `left` on, `width` wide.

    `begins` and `ends` say whether it has the uprights of the space.
    """

    name: str
    left: float
    width: float
    height: float
    shown: tuple[Shown, ...]
    begins: bool
    ends: bool


def spine_of(pieces: Sequence[Piece]) -> Spine | None:
    """The spine of a book among its pieces, that of its jacket if it wears one; None if none of them has one."""
    for piece in reversed(pieces):
        for panel in piece.flat.panels:
            if panel.role is Role.SPINE:
                return Spine(piece, panel.rect)
    return None


def fronts(plan: ShelfPlan, spines: Mapping[int, Spine]) -> Iterator[Front]:
    """Every space with something on it, as the shelf file lists them; last the books that stand nowhere.

    `spines` are those of the books, by their numbers.
    """
    boxes = {box.standing.title: box for box in plan.slipcases}
    placed: set[int] = set()
    for fit in plan.spaces:
        places: list[tuple[Shown, ...]] = []
        for x, together in groupby(arranged(fit, plan), key=lambda one: one.rect.x):
            first, *others = together
            box = boxes.get(first.who.title) if first.who.number is None else None
            stack = tuple(shown for one in (first, *others) for shown in _book(one, spines))
            places += _boxed(x, box, plan, spines) if box else [stack]
        placed.update(fit.books, *(box.books for box in plan.slipcases if box.space == fit.name))
        if places:
            space = plan.spec.spaces[fit.name]
            yield Front(fit.name, space.width, space.height, tuple(places))
    stray = [book.standing for book in plan.books if book.number not in placed]
    if stray:
        yield _row_of([Stood(Rect(0, 0, one.thickness, one.height), one) for one in stray], spines)


def _book(one: Stood, spines: Mapping[int, Spine]) -> tuple[Shown, ...]:
    number = one.who.number
    return (Shown(one.rect, spines.get(number) if number is not None else None, one.lies),)


def _row_of(books: Sequence[Stood], spines: Mapping[int, Spine]) -> Front:
    places: list[tuple[Shown, ...]] = []
    x = 0.0
    for one in books:
        places.append(_book(Stood(one.rect.moved(x, 0), one.who), spines))
        x += one.rect.width + CLOSE
    return Front("", x - CLOSE, max(one.rect.height for one in books), tuple(places))


def _boxed(x: float, box: SlipcasePlan, plan: ShelfPlan, spines: Mapping[int, Spine]) -> Iterator[tuple[Shown, ...]]:
    """A slipcase from the front: the edges of its card around the spines of its books, each place with its share."""
    outer = Rect(x, 0, box.outside.width, box.outside.height)
    card = (outer.width - box.inside.width) / 2
    sill = (outer.height - box.inside.height) / 2
    books = [plan.books[number].standing for number in box.books]
    each = (box.inside.width - sum(book.thickness for book in books)) / len(books)
    x = outer.x + card
    for index, book in enumerate(books):
        low = outer.x if index == 0 else x
        wide = book.thickness + each
        high = outer.right if index == len(books) - 1 else x + wide
        edges = [Rect(low, outer.y, high - low, sill), Rect(low, outer.top - sill, high - low, sill)]
        edges += [Rect(outer.x, outer.y, card, outer.height)] if index == 0 else []
        edges += [Rect(outer.right - card, outer.y, card, outer.height)] if high == outer.right else []
        stood = Stood(Rect(x + each / 2, outer.y + sill, book.thickness, book.height), replace(book, stack=None))
        yield (*map(Shown, edges), *_book(stood, spines))
        x += wide


def rows_of(front: Front, room: float) -> Iterator[Row]:
    """A front in rows at most as wide as the room, in mm of the space; a place wider than that has one of its own."""
    used = max(shown.rect.right for place in front.places for shown in place)
    whole = max(front.width, used)
    height = max(front.height, *(shown.rect.top for place in front.places for shown in place))
    left = right = 0.0
    row: list[Shown] = []
    for place in front.places:
        low, high = min(shown.rect.x for shown in place), max(shown.rect.right for shown in place)
        if row and high - left > room:
            yield Row(front.name, left, right - left, height, tuple(row), begins=left == 0, ends=False)
            left, row = low, []
        row += place
        right = high
    width = min(whole - left, max(room, used - left))
    yield Row(front.name, left, width, height, tuple(row), begins=left == 0, ends=width >= whole - left - 1e-6)
