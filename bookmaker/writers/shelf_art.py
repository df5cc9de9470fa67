"""Rows of a shelf as they look: boards and uprights, and the spines that stand between them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from ..ground.art import Filled, Group
from ..ground.drawing import Art, Colour
from ..ground.geometry import Path, Point, Rect, Transform, polygon
from ..sheets.facsimiles import Facsimile
from .shelf_front import Front, Row, Shown, rows_of
from .spine_shading import head_edge, shading, shadow_on

__all__ = ["TIMBER", "facsimile_of_front", "facsimile_of_shown", "row_art"]

TIMBER = 1.6
"""How thick boards and uprights are drawn, in mm."""

TEAR, TEAR_AGAIN = (0.9, 0.2, 0.6, 0.3, 1.2, 0.5, 0.8, 0.1), 18.0
"""Where a row goes on elsewhere it is torn off: so far out, one after the other, in mm, and again after so many mm."""

RECESS, BOARD = Colour.from_hex("#4b4038"), Colour.from_hex("#a98a62")
CARD = Colour.from_hex("#d8cdb8")

NEAR = 0.6
"""Things that stand no further apart than this, in mm, shade one another."""

SHADOW = Colour.from_hex("#2b241f")
CAST, LONGEST = 0.2, 0.8
"""What is pulled out casts a shadow on its neighbour at the right: so much of how far it stands out, but no longer."""


def facsimile_of_front(front: Front) -> Facsimile:
    """A space from the front at true size, with its board and its uprights; its lower left corner at the origin."""
    (row,) = rows_of(front, float("inf"))
    uprights = (TIMBER * row.begins, TIMBER, TIMBER * row.ends, TIMBER)
    return Facsimile(row_art(row, 1.0, Point(-row.left, 0.0)), Rect(0, 0, row.width, row.height).grown(*uprights))


def facsimile_of_shown(shown: Shown) -> Facsimile:
    """What is seen in one place of a space, its lower left corner at the origin: of a book the spine as it stands."""
    home = replace(shown, rect=shown.rect.moved(-shown.box.x, -shown.box.y))
    return Facsimile(_shown_art(home), home.box)


def row_art(row: Row, scale: float, origin: Point) -> Art:
    """What stands on a row, in its space, enlarged; `origin` is where its board meets the left upright."""
    room = Rect(*origin, row.width * scale, row.height * scale)
    uprights = (TIMBER * row.begins, TIMBER, TIMBER * row.ends, TIMBER)
    around = Filled(_torn(room.grown(*uprights), row), BOARD if row.name else RECESS)
    to_page = Transform.stretch(scale, scale).moved(origin.x - row.left * scale, origin.y)
    inside = Path.rectangle(Rect(row.left, 0, row.width, row.height))
    heads = Group(
        tuple(art for one in row.shown if one.head for art in head_edge(one.head, one.rect, one.deep)), clip=inside
    )
    seen = (heads, *map(_shown_art, row.shown), *_shadows(row.shown))
    recess = Group((replace(around, colour=RECESS),), clip=Path.rectangle(_as_far_as_torn(room, row)))
    return Group((around, recess, Group(seen, to_page)))


def _as_far_as_torn(room: Rect, row: Row) -> Rect:
    return room.grown(0 if row.begins else max(TEAR), 0, 0 if row.ends else max(TEAR), 0)


def _torn(rect: Rect, row: Row) -> Path:
    """A rectangle around a row, torn off raggedly where the row goes on elsewhere."""
    count = len(TEAR) * max(1, round(rect.height / TEAR_AGAIN))
    points: list[Point] = []
    for x, out, whole in ((rect.x, -1.0, row.begins), (rect.right, 1.0, row.ends)):
        heights = [rect.y, rect.top] if whole else [rect.y + rect.height * step / count for step in range(count + 1)]
        edge = [Point(x if whole else x + out * TEAR[step % len(TEAR)], y) for step, y in enumerate(heights)]
        points += edge if out < 0 else reversed(edge)
    return polygon(points)


def _shadows(shown: Sequence[Shown]) -> Iterator[Art]:
    """Of each that stands upright on its neighbour at the right; what is pulled out casts a longer one."""
    for one, other in pairwise(shown):
        close = other.rect.x - one.rect.right < NEAR
        if close and not (one.pulled_out or one.lean or other.lean or other.lies) and one.rect.y == other.rect.y:
            yield from shadow_on(other.rect, one.rect)
    yield from (_long_shadow(one) for one in shown if one.pulled_out)


def _long_shadow(shown: Shown) -> Art:
    rect = shown.rect
    strip = Filled.box(Rect(rect.right, rect.y, min(CAST * shown.pulled_out, LONGEST), rect.height), SHADOW)
    return Group((strip,), shown.to_shelf)


def _shown_art(shown: Shown) -> Art:
    art = _upright_art(shown)
    turned = Transform.turn(180.0, shown.rect.centre) if shown.upside_down else Transform()
    if shown.upside_down or shown.lean:
        return Group((art,), turned.then(shown.to_shelf))
    return art


def _upright_art(shown: Shown) -> Art:
    """What is seen before it is turned on its head, and before it leans."""
    rect = shown.rect
    if shown.face is not None:
        box = shown.face.box
        return Group((shown.face.art,), Transform.move(rect.x - box.x, rect.y - box.y))
    if shown.spine is None:
        return Filled.box(rect, CARD)
    piece, spine = shown.spine
    # A little of the sides is seen beside the spine, as far as the book is thicker than its spine is wide.
    thick = rect.height if shown.lies else rect.width
    seen = spine.grown((thick - spine.width) / 2, 0, (thick - spine.width) / 2, 0)
    if shown.lies:
        to_shelf = Transform.move(-seen.x, -seen.y).then(Transform.quarter_turn(1))
        to_shelf = to_shelf.moved(rect.x + seen.height, rect.y)
    else:
        to_shelf = Transform.move(-seen.x, -seen.y)
        if spine.height < rect.height:  # a case is higher than its flat spine: it has its turn-ins at both ends
            to_shelf = to_shelf.then(Transform.stretch(1.0, rect.height / spine.height))
        to_shelf = to_shelf.moved(rect.x, rect.y)
    return Group(
        (piece.art, *shading(piece, seen, spine, lit_right=shown.lies != shown.upside_down)),
        to_shelf,
        Path.rectangle(seen),
    )
