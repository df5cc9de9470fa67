"""A flat part of a book: what is cut from one stock and folded, before anything is drawn on it.

Every binding, whatever its kind, ends in flats: a page strip, a wrap, a printed section sheet, a jacket.
The later stages know only this one form.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import NamedTuple

from ..ground.geometry import Axis, Path, Point, Rect, Size
from ..ground.outlines import Outline, region, spread

__all__ = ["Face", "Flat", "Fold", "FoldKind", "Mark", "MarkKind", "Panel", "Role", "Stroke"]


class FoldKind(StrEnum):
    """Seen from the printed face: a mountain turns the faces away from each other, a valley makes them meet."""

    MOUNTAIN = "mountain"
    VALLEY = "valley"


class Face(StrEnum):
    """A side of the paper: the front is printed first and lies up; the reverse is printed after the sheet is turned."""

    FRONT = "front"
    REVERSE = "reverse"


class Role(StrEnum):
    """What a panel is in the finished book, or of the box it stands in."""

    PAGE = "page"
    PASTEDOWN = "pastedown"
    FLYLEAF = "flyleaf"
    TAB = "tab"
    FRONT = "front"
    SPINE = "spine"
    BACK = "back"
    TURN_IN = "turn-in"
    JOINT = "joint"
    FLAP = "flap"
    EDGE = "edge"
    CORNER = "corner"
    BOARD = "board"
    LEFT = "left"
    RIGHT = "right"
    TOP = "top"
    BOTTOM = "bottom"


BARE = frozenset({Role.PASTEDOWN, Role.FLYLEAF, Role.BOARD})
"""Panels that no design dresses: white paper inside the cover, and outlines to cut board by."""


UNFINISHED = BARE | {Role.PAGE, Role.TAB}
"""Panels over which no film is laid: what is within the covers, and what is only glued."""


@dataclass(frozen=True, slots=True)
class Fold:
    """A straight fold from edge to edge."""

    kind: FoldKind
    start: Point
    end: Point


class Stroke(NamedTuple):
    """A straight line to cut, to score or to perforate along."""

    start: Point
    end: Point


class MarkKind(StrEnum):
    """What a mark is for: where the needle goes through, or in which order sections are gathered."""

    HOLE = "hole"
    COLLATION = "collation"


@dataclass(frozen=True, slots=True)
class Mark:
    """A mark printed on the front of a flat where the binding hides it; the middle of a hole's area is the hole."""

    kind: MarkKind
    rect: Rect


@dataclass(frozen=True, slots=True)
class Panel:
    """A part of a flat between folds; `page` is the page printed there, if one is.

    `rect` is what shows of it, in the coordinates of the flat as its front is seen; a panel on the reverse is
    given by the rectangle behind which it lies. `head_down` panels stand on their heads on the flat. `creep`
    is how far, in mm, the image of the page is moved towards the spine; as much of it is lost there.
    """

    role: Role
    rect: Rect
    page: int | None = None
    face: Face = Face.FRONT
    head_down: bool = False
    creep: float = 0.0


@dataclass(frozen=True, slots=True)
class Flat:
    """One part to cut out and fold. Lengths in mm, the lower left of the outline at the origin.

    `bleed` is how far the print runs past the outline. `grain` is the direction the fibres must run, or
    None if it does not matter. `cuts` divide the flat after it is printed; along `trims` the finished block
    is trimmed. Along `scores` it is creased and stays flat, so that it bends there later; along `perforations` it
    can be torn. `holes` are cut out of it; curves, of holes and of the outline, are chords as `ground.outlines`
    makes them. Everything is given as the front is seen.
    """

    kind: str
    name: str
    stock: str
    outline: Outline
    folds: tuple[Fold, ...]
    panels: tuple[Panel, ...]
    grain: Axis | None = None
    bleed: float = 0.0
    cuts: tuple[Stroke, ...] = ()
    trims: tuple[Stroke, ...] = ()
    marks: tuple[Mark, ...] = ()
    holes: tuple[Outline, ...] = ()
    scores: tuple[Stroke, ...] = ()
    perforations: tuple[Stroke, ...] = ()

    def shape(self, face: Face = Face.FRONT) -> Path:
        """What is left of it when it is cut out, as one path, as one of its faces is seen."""
        outline, *holes = self._edges(face)
        return region(outline, holes)

    def inked(self, face: Face = Face.FRONT) -> Path:
        """Where print may be on a face: the shape, and the bleed around its outline and into its holes."""
        outline, *holes = self._edges(face)
        return spread(outline, holes, self.bleed)

    def _edges(self, face: Face) -> tuple[Outline, ...]:
        """The outline and the holes as a face is seen."""
        if face is Face.FRONT:
            return self.outline, *self.holes
        right = self.size.width
        return tuple(tuple(Point(right - x, y) for x, y in edge) for edge in (self.outline, *self.holes))

    @property
    def size(self) -> Size:
        """Width and height of the outline."""
        return Rect.around(self.outline).size

    def clear_of_cuts(self, face: Rect) -> Rect:
        """The height of a face at which no cut corner takes anything of it: words may stand there."""
        low, high = face.y, face.top
        inset = face.width * 1e-6
        for x in (face.x + inset, face.right - inset):
            crossed = [
                start.y + (end.y - start.y) * (x - start.x) / (end.x - start.x)
                for start, end in zip(self.outline, (*self.outline[1:], self.outline[0]), strict=True)
                if (start.x - x) * (end.x - x) < 0
            ]
            low, high = max(low, min(crossed)), min(high, max(crossed))
        return Rect(face.x, low, face.width, high - low)

    @property
    def dressed(self) -> bool:
        """Whether a design draws on this part of a cover; endpapers and board templates stay bare."""
        return any(panel.role not in BARE for panel in self.panels)

    @property
    def finished(self) -> bool:
        """Whether what a stock has over its print, such as a film, is laid over this part.

        It is over all that is seen and handled from outside; pages are sewn and glued, endpapers and templates too.
        """
        return any(panel.role not in UNFINISHED for panel in self.panels)

    @property
    def pages(self) -> tuple[int, ...]:
        """The pages printed on this flat, in the order of its panels."""
        return tuple(panel.page for panel in self.panels if panel.page is not None)

    def seen_from(self, face: Face) -> tuple[Panel, ...]:
        """The panels of one face as they lie when that face is up: those of the reverse are mirrored."""
        mine = tuple(panel for panel in self.panels if panel.face is face)
        if face is Face.FRONT:
            return mine
        right = self.size.width
        return tuple(replace(panel, rect=panel.rect._replace(x=right - panel.rect.right)) for panel in mine)
