"""All that is on a shelf and in its room as outlines at true size, with names, on plain paper, to try out its place.

What hangs has its hook, what stands on a desk its front and its top in one strip, folded between them; of a space
there is what is seen of it from the front, with every book outlined.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import count

from ...ground.art import Group, Stroked
from ...ground.drawing import Art
from ...ground.geometry import Path, Point, Rect, Size, Transform
from ...ground.told import print_mm, print_sides
from ...paper.stock import Stock, make_stock
from ...paper.stock_entry import StockEntry
from ...sheets.flat import Flat, Fold, FoldKind
from ...sheets.piece import Piece
from ...shelf.plan import ShelfPlan
from ...things.thing import Plan
from ...things.views.ink import HAIRLINE, box, line, word
from ..shelf_front import Row, fronts, rows_of

__all__ = ["mock_up_pieces", "plain_paper"]

PAPER = "plain paper"

HOOK = 1.5
"""Half as long as the arms of the cross at a hook, in mm."""

NAME, SMALL = 3.0, 2.0
"""Sizes of the type in mm, where there is room."""


def plain_paper(plan: ShelfPlan) -> Stock:
    """Ordinary paper on the sheets of the printer: 100 µm, which matters to nothing here."""
    return make_stock(PAPER, StockEntry.model_validate({"caliper": 0.1}), plan.spec.printer)


def mock_up_pieces(plan: ShelfPlan, paper: Stock) -> list[Piece]:
    """A piece for everything that can be seen, or several of what is larger than a sheet."""
    room = max(paper.openings(None), key=lambda opening: opening.width * opening.height)
    numbers = count(1)
    pieces: list[Piece] = []
    for name, size, art, folds in (*_rows(plan, room), *_things(plan)):
        pieces += _tiled(f"mock-up-{next(numbers)}", name, size, art, folds, room)
    return pieces


Drawn = tuple[str, Size, Art, tuple[Fold, ...]]
"""What an outline is called, its sides, what is drawn on it, and where it is folded."""


def _things(plan: ShelfPlan) -> Iterator[Drawn]:
    """Everything that is in the room, and what is nowhere yet, but for what stands in a space or lies in another."""
    placed = {one.thing: (surface, one) for surface in plan.room for one in surface.things if one.thing}
    held = {id for one in plan.plans.values() for id in one.held}
    for id, one in plan.plans.items():
        if id in placed:
            surface, there = placed[id]
            hook = there.hook and Point(there.hook.x - there.rect.x, there.hook.y - there.rect.y)
            yield _standing(one, there.rect.size) if not surface.entry.upright else _lying(one, there.rect.size, hook)
        elif one.standing is None and id not in held and (size := one.on_wall or one.from_above):
            yield _lying(one, size, None)


def _standing(one: Plan, size: Size) -> Drawn:
    """What stands on a desk: its front below, its top above; what lies there is seen from above alone."""
    stands = one.standing
    if stands is None or abs(stands.thickness - size.width) > 1e-6 or abs(stands.depth - size.height) > 1e-6:
        return _lying(one, size, None)
    front, top = Rect(0, 0, size.width, stands.height), Rect(0, stands.height, *size)
    fold = Fold(FoldKind.MOUNTAIN, Point(0, stands.height), Point(size.width, stands.height))
    art = Group((*_named(one.name, front, print_mm(stands.height, 1)), *_named("top", top)))
    return one.name, Size(size.width, stands.height + size.height), art, (fold,)


def _lying(one: Plan, size: Size, hook: Point | None) -> Drawn:
    whole = Rect(0, 0, *size)
    art = [*_named(one.name, whole, print_sides(*size, digits=1))]
    if hook:
        art += [
            line(hook.plus(-HOOK, 0), hook.plus(HOOK, 0), HAIRLINE),
            line(hook.plus(0, -HOOK), hook.plus(0, HOOK), HAIRLINE),
            Stroked(Path.circle(hook, HOOK / 2), HAIRLINE),
        ]
    return one.name, size, Group(tuple(art)), ()


def _named(name: str, rect: Rect, below: str = "") -> Iterator[Art]:
    """A name in the middle of a part, along its longer side, and its size below, as far as there is room."""
    upright = rect.height > rect.width * 1.4
    across = rect.width if upright else rect.height
    room = (rect.height if upright else rect.width) * 0.9
    size = min(NAME, across * 0.6)
    yield word(name, rect.centre, size, room=room, upright=upright)
    if below and across > 5 * SMALL:
        away = size + 0.5
        middle = rect.centre.plus(-away, 0) if upright else rect.centre.plus(0, -away)
        yield word(below, middle, SMALL, room=room, upright=upright)


def _rows(plan: ShelfPlan, room: Size) -> Iterator[Drawn]:
    """Every space from the front, in parts that go on a sheet."""
    for front in fronts(plan, {}):
        rows = [*rows_of(front, max(room))]
        for number, row in enumerate(rows, start=1):
            name = row.name or plan.spec.shelf
            part = f"{name}, part {number} of {len(rows)}" if len(rows) > 1 else name
            yield part, Size(row.width, row.height), _row_art(row, plan), ()


def _row_art(row: Row, plan: ShelfPlan) -> Art:
    """Everything outlined, with its number and its name."""
    parts: list[Art] = []
    for shown in row.shown:
        outlined = Group((box(shown.rect, pen=HAIRLINE), *_named(plan.printed(shown.thing), shown.rect)))
        parts.append(Group((outlined,), shown.to_shelf.moved(-row.left, 0)))
    return Group(tuple(parts))


def _tiled(id: str, name: str, size: Size, art: Art, folds: tuple[Fold, ...], room: Size) -> Iterator[Piece]:
    """An outline as one piece, or parted into as few equal tiles as go on a sheet; folds stay in one that is whole."""
    tiles = _tiles(size, room)
    for number, tile in enumerate(tiles, start=1):
        part = f"part {number} of {len(tiles)}" if len(tiles) > 1 else "outline"
        whole = Rect(0, 0, *tile.size)
        moved = Group((Group((art,), Transform.move(-tile.x, -tile.y)), box(whole, pen=HAIRLINE)))
        flat = Flat("outline", part, PAPER, whole.corners, folds if len(tiles) == 1 else (), ())
        yield Piece(f"{id}-{number}", id, (name, part), flat, moved)


def _tiles(size: Size, room: Size) -> Sequence[Rect]:
    """Equal tiles, none larger than the room whichever way it lies."""

    def parted(opening: Size) -> list[Rect]:
        across, up = (-(-side // most) for side, most in zip(size, opening, strict=True))
        wide, high = size.width / across, size.height / up
        return [Rect(x * wide, y * high, wide, high) for y in range(int(up)) for x in range(int(across))]

    return min((parted(opening) for opening in (room, room.turned)), key=len)
