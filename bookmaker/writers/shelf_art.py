"""Rows of a shelf as they look: boards and uprights, and the spines that stand between them."""

from __future__ import annotations

from dataclasses import replace

from ..ground.art import Filled, Group
from ..ground.drawing import Art, Colour
from ..ground.geometry import Path, Point, Rect, Transform
from ..sheets.facsimiles import Facsimile
from .shelf_front import Front, Row, Shown, rows_of

__all__ = ["TIMBER", "facsimile_of_front", "facsimile_of_shown", "row_art"]

TIMBER = 1.6
"""How thick boards and uprights are drawn, in mm."""

RECESS, BOARD = Colour.from_hex("#4b4038"), Colour.from_hex("#a98a62")
CARD = Colour.from_hex("#d8cdb8")


def facsimile_of_front(front: Front) -> Facsimile:
    """A space from the front at true size, with its board and its uprights; its lower left corner at the origin."""
    (row,) = rows_of(front, float("inf"))
    uprights = (TIMBER * row.begins, TIMBER, TIMBER * row.ends, TIMBER)
    return Facsimile(row_art(row, 1.0, Point(-row.left, 0.0)), Rect(0, 0, row.width, row.height).grown(*uprights))


def facsimile_of_shown(shown: Shown) -> Facsimile:
    """What is seen in one place of a space, its lower left corner at the origin: of a book the spine as it stands."""
    home = shown.rect.moved(-shown.rect.x, -shown.rect.y)
    return Facsimile(_shown_art(replace(shown, rect=home)), home)


def row_art(row: Row, scale: float, origin: Point) -> Art:
    """What stands on a row, in its space, enlarged; `origin` is where its board meets the left upright."""
    room = Rect(*origin, row.width * scale, row.height * scale)
    uprights = (TIMBER * row.begins, TIMBER, TIMBER * row.ends, TIMBER)
    around = Filled.box(room.grown(*uprights), BOARD if row.name else RECESS)
    to_page = Transform.stretch(scale, scale).moved(origin.x - row.left * scale, origin.y)
    return Group((around, Filled.box(room, RECESS), Group(tuple(map(_shown_art, row.shown)), to_page)))


def _shown_art(shown: Shown) -> Art:
    if shown.spine is None:
        return Filled.box(shown.rect, CARD)
    piece, spine = shown.spine
    # A little of the sides is seen beside the spine, as far as the book is thicker than its spine is wide.
    thick = shown.rect.height if shown.lies else shown.rect.width
    seen = spine.grown((thick - spine.width) / 2, 0, (thick - spine.width) / 2, 0)
    if shown.lies:
        to_shelf = Transform.move(-seen.x, -seen.y).then(Transform.quarter_turn(1))
        to_shelf = to_shelf.moved(shown.rect.x + seen.height, shown.rect.y)
    else:
        to_shelf = Transform.move(shown.rect.x - seen.x, shown.rect.y - seen.y)
    return Group((piece.art,), to_shelf, Path.rectangle(seen))
