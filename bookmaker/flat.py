"""A flat part of a book: what is cut from one stock and folded, before anything is drawn on it.

Every binding, whatever its kind, ends in flats: a page strip, a wrap, a printed section sheet, a jacket.
The later stages know only this one form.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from .geometry import Point, Rect, Size

__all__ = ["Axis", "Flat", "Fold", "FoldKind", "Panel", "Role"]


class FoldKind(StrEnum):
    """Seen from the printed face: a mountain turns the faces away from each other, a valley makes them meet."""

    MOUNTAIN = "mountain"
    VALLEY = "valley"


class Axis(StrEnum):
    """A direction on a flat: the way its fibres must run, parallel to the folds."""

    X = "x"
    Y = "y"


class Role(StrEnum):
    """What a panel is in the finished book."""

    PAGE = "page"
    PASTEDOWN = "pastedown"
    FLYLEAF = "flyleaf"
    TAB = "tab"
    FRONT = "front"
    SPINE = "spine"
    BACK = "back"
    TURN_IN = "turn-in"


@dataclass(frozen=True, slots=True)
class Fold:
    """A straight fold from edge to edge."""

    kind: FoldKind
    start: Point
    end: Point


@dataclass(frozen=True, slots=True)
class Panel:
    """A part of a flat between folds; `page` is the page printed there, if one is."""

    role: Role
    rect: Rect
    page: int | None = None


@dataclass(frozen=True, slots=True)
class Flat:
    """One part to cut out and fold. Lengths in mm, the lower left of the outline at the origin.

    `bleed` is how far the print runs past the outline. `grain` is the direction the fibres must run, or
    None if it does not matter.
    """

    kind: str
    name: str
    stock: str
    outline: tuple[Point, ...]
    folds: tuple[Fold, ...]
    panels: tuple[Panel, ...]
    grain: Axis | None = None
    bleed: float = 0.0

    @property
    def size(self) -> Size:
        """Width and height of the outline."""
        return Rect.around(self.outline).size

    @property
    def pages(self) -> tuple[int, ...]:
        """The pages printed on this flat, in the order of its panels."""
        return tuple(panel.page for panel in self.panels if panel.page is not None)
