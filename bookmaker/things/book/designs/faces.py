"""The faces of a cover found on a flat, whatever parts of a book the flat holds."""

from __future__ import annotations

from dataclasses import dataclass

from ....ground.geometry import Point, Rect
from ....sheets.flat import Flat, Role

__all__ = ["Faces", "read_faces"]

NARROWEST_SIDE = 0.35
"""A panel narrower than this share of its height is the edge of a side, as on the spine piece of a half binding."""


@dataclass(frozen=True, slots=True)
class Faces:
    """Where art goes on a flat.

    `whole` is everything that is inked, out to the bleed. `front`, `back` and `spine` are what shows in the
    finished book, None where the flat has none, the sides as high as no cut corner takes anything of them;
    strips of a side, as beside the spine in a half binding, do not count as sides. `edges` are all panels that
    show, the strips included; `tips` the corners of the book on corner pieces.
    """

    whole: Rect
    front: Rect | None
    back: Rect | None
    spine: Rect | None
    edges: tuple[Rect, ...]
    tips: tuple[Point, ...] = ()

    @property
    def sides(self) -> tuple[Rect, ...]:
        """Front and back, as far as there are any."""
        return tuple(side for side in (self.front, self.back) if side)

    @property
    def folds(self) -> tuple[float, ...]:
        """The two x where the spine ends."""
        return (self.spine.x, self.spine.right) if self.spine else ()

    def outward(self, side: Rect) -> int:
        """+1 if the fore-edge of a side lies on its right, −1 on its left."""
        if self.spine:
            return 1 if side.centre.x > self.spine.centre.x else -1
        # A side that is a piece of its own: the turn-in lies beyond its fore-edge.
        left, right = side.x - self.whole.x, self.whole.right - side.right
        if abs(left - right) > 1e-6:
            return 1 if right > left else -1
        return -1 if side == self.back else 1

    @property
    def pieced(self) -> bool:
        """Whether the flat is the spine piece or a corner of a quarter or half binding, or a box: of plain cloth."""
        return not self.sides

    @property
    def side_alone(self) -> bool:
        """Whether the flat is the side of a quarter or half binding."""
        return bool(self.sides) and not self.spine

    def shown(self, side: Rect) -> Rect:
        """All that shows of a side, between the corners too where these are pieces of their own."""
        return next(edge for edge in self.edges if abs(edge.x - side.x) < 1e-6 and edge.width >= side.width - 1e-6)

    def to_bleed(self, side: Rect) -> Rect:
        """A side with all that is folded in or trimmed beyond its outer edges; the edge at the spine stays, if there
        is one.
        """
        if not self.spine:
            return self.whole
        left, right = (side.x, self.whole.right) if self.outward(side) > 0 else (self.whole.x, side.right)
        return Rect(left, self.whole.y, right - left, self.whole.height)

    def spine_to_bleed(self) -> Rect | None:
        """The spine from bleed to bleed."""
        return Rect(self.spine.x, self.whole.y, self.spine.width, self.whole.height) if self.spine else None


def read_faces(flat: Flat) -> Faces:
    """Find the faces of a flat."""

    def of(role: Role) -> list[Rect]:
        return [panel.rect for panel in flat.panels if panel.role is role]

    def side(role: Role) -> Rect | None:
        if of(Role.TAB):  # a spine piece: its sides go on under other pieces
            return None
        wide = [flat.clear_of_cuts(rect) for rect in of(role) if rect.width >= NARROWEST_SIDE * rect.height]
        return max(wide, key=lambda rect: rect.width, default=None)

    spines = of(Role.SPINE)
    return Faces(
        whole=Rect(0, 0, *flat.size).grown(flat.bleed),
        front=side(Role.FRONT),
        back=side(Role.BACK),
        spine=spines[0] if spines else None,
        edges=(*of(Role.FRONT), *spines, *of(Role.BACK)),
        tips=_tips(flat) if of(Role.CORNER) else (),
    )


def _tips(flat: Flat) -> tuple[Point, ...]:
    """Where the folds of a corner piece cross: there the corner of the board is."""
    upright = [fold.start.x for fold in flat.folds if abs(fold.start.x - fold.end.x) < 1e-6]
    level = [fold.start.y for fold in flat.folds if abs(fold.start.y - fold.end.y) < 1e-6]
    return tuple(Point(x, y) for x in upright for y in level)
