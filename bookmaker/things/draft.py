"""What is printed for a thing, drawn: its pieces, what is wrong with their art, how it is lettered."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..ground.drawing import Colour
from ..ground.geometry import Rect
from ..ground.problems import Problem
from ..ground.typefaces.strokes import Strokes
from ..sheets.facsimiles import Facsimile, openings
from ..sheets.flat import Role
from ..sheets.piece import Piece
from .book.designs.design import Lettering
from .faces_seen import facsimile_of_face

__all__ = ["Draft", "Head"]

FACES = (Role.FRONT, Role.SPINE, Role.BACK, Role.LEFT, Role.RIGHT, Role.TOP, Role.BOTTOM)


@dataclass(frozen=True, slots=True)
class Head:
    """What is seen of a standing book from above: the edges of its leaves between its boards, each so many mm thick."""

    leaves: Colour
    boards: Colour
    board: float


@dataclass(frozen=True, slots=True)
class Draft:
    """The pieces of a thing, and the problems of their art.

    `x_height` and `strokes` are those of the text on its pages in mm, if it has some, and `widest_space` how many times
    as wide as usual the spaces of its loosest line are. `lettering` is all that its covers say, `shelved` what of that
    is seen on the shelf: on the jacket of a book that wears one, else on its cover. `pages` are those of a book as they
    are read, whichever way that is. `front_seen` is what the shelf sees of something that has no spine, `lying`
    what is seen from above of something that lies or stands on a desk, `hanging` what is seen of it on a wall, `head`
    what pictures show of the leaves of a book that stands.
    """

    pieces: tuple[Piece, ...]
    problems: tuple[Problem, ...] = ()
    x_height: float | None = None
    strokes: Strokes | None = None
    widest_space: float | None = None
    lettering: tuple[Lettering, ...] = ()
    shelved: tuple[Lettering, ...] = ()
    pages: tuple[Facsimile, ...] = ()
    right_to_left: bool = False
    front_seen: Piece | None = None
    lying: Facsimile | None = None
    hanging: Facsimile | None = None
    head: Head | None = None

    @property
    def openings(self) -> tuple[Facsimile, ...]:
        """What is seen wherever the book is opened: its first page, then two and two that face each other."""
        return tuple(openings(self.pages, right_to_left=self.right_to_left))

    @property
    def faces(self) -> Mapping[Role, Facsimile]:
        """What is seen of the finished thing from each side that it has."""
        found = ((role, facsimile_of_face(self.pieces, role)) for role in FACES)
        return {role: face for role, face in found if face}

    @property
    def spine_title(self) -> Lettering | None:
        """How its title came out on the spine that the shelf shows; None if none stands there."""
        return next((line for line in self.shelved if line.on == "spine" and line.what == "title"), None)

    @property
    def front(self) -> tuple[Piece, Rect] | None:
        """What of it is seen on the shelf: the outermost spine, and where it lies on its piece; None without one.

        Of something that has none it is the front.
        """
        if self.front_seen:
            return self.front_seen, Rect(0, 0, *self.front_seen.flat.size)
        spines = (
            (piece, panel.rect)
            for piece in reversed(self.pieces)
            for panel in piece.flat.panels
            if panel.role is Role.SPINE
        )
        return next(spines, None)
