"""The faces of a finished thing, cut out of the pieces that cover it; put together where several make one face."""

from __future__ import annotations

from collections.abc import Sequence

from ..ground.art import Filled, Group
from ..ground.drawing import WHITE, Art
from ..ground.geometry import Path, Rect, Transform
from ..sheets.facsimiles import Facsimile, facsimile_of_panel
from ..sheets.flat import Panel, Role
from ..sheets.piece import Piece

__all__ = ["facsimile_of_face"]

Part = tuple[Piece, Panel]


def facsimile_of_face(pieces: Sequence[Piece], role: Role) -> Facsimile | None:
    """A face of a thing as it is seen, of the jacket of a book that wears one; None if it has no such face."""
    parts = [(piece, panel) for piece in pieces for panel in piece.flat.panels if panel.role is role]
    if not parts:
        return None
    strips = [part for part in parts if _has(part[0], Role.TAB)]
    if not strips or parts[-1] in strips:
        return facsimile_of_panel(*parts[-1])
    corners = [
        (piece, panel)
        for piece in pieces
        for panel in piece.flat.panels
        if panel.role is Role.CORNER and f" {role} " in piece.flat.name
    ]
    return _facsimile_of_board(strips[0], parts[-1], corners)


def _has(piece: Piece, role: Role) -> bool:
    return any(panel.role is role for panel in piece.flat.panels)


def _facsimile_of_board(strip: Part, side: Part, corners: Sequence[Part]) -> Facsimile:
    """A board of a quarter or half binding: the edge of the spine piece, the corners, and the side that laps over both.

    The spine piece has its spine on the one hand of the strip, which tells where the other parts lie.
    """
    spine = next(panel.rect for panel in strip[0].flat.panels if panel.role is Role.SPINE)
    spine_on_left = spine.x < strip[1].rect.x
    box = Rect(0, 0, strip[1].rect.width + side[1].rect.width, side[1].rect.height)
    layers = [Filled.box(box, WHITE), _laid(strip, box, to_left=spine_on_left)]
    layers += [_laid(corner, box, to_left=not spine_on_left) for corner in corners]
    layers.append(_laid(side, box, to_left=not spine_on_left))
    return Facsimile(Group(tuple(layers), clip=Path.rectangle(box)), box)


def _laid(part: Part, box: Rect, *, to_left: bool) -> Art:
    """A piece with its panel at the left or the right edge of a board, the corner of an upper one at the head."""
    piece, panel = part
    x = box.x - panel.rect.x if to_left else box.right - panel.rect.right
    upper = panel.role is Role.CORNER and piece.flat.size.height - panel.rect.top < panel.rect.y
    y = box.top - panel.rect.top if upper else box.y - panel.rect.y
    return Group((Group((piece.art,), clip=piece.flat.shape()),), Transform.move(x, y))
