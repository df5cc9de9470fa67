"""What is printed for a thing, drawn: its pieces, what is wrong with their art, how it is lettered."""

from __future__ import annotations

from dataclasses import dataclass

from ..ground.geometry import Rect
from ..ground.problems import Problem
from ..sheets.flat import Role
from ..sheets.piece import Piece
from .book.designs.design import Lettering

__all__ = ["Draft"]


@dataclass(frozen=True, slots=True)
class Draft:
    """The pieces of a thing, and the problems of their art.

    `x_height` is that of the text on its pages in mm, if it has some, and `widest_space` how many times as wide as
    usual the spaces of its loosest line are. `lettering` is all that its covers say, `shelved` what of that is seen on
    the shelf: on the jacket of a book that wears one, else on its cover.
    """

    pieces: tuple[Piece, ...]
    problems: tuple[Problem, ...] = ()
    x_height: float | None = None
    widest_space: float | None = None
    lettering: tuple[Lettering, ...] = ()
    shelved: tuple[Lettering, ...] = ()

    @property
    def spine_title(self) -> Lettering | None:
        """How its title came out on the spine that the shelf shows; None if none stands there."""
        return next((line for line in self.shelved if line.on == "spine" and line.what == "title"), None)

    @property
    def front(self) -> tuple[Piece, Rect] | None:
        """What of it is seen on the shelf: the outermost spine, and where it lies on its piece; None without one."""
        spines = (
            (piece, panel.rect)
            for piece in reversed(self.pieces)
            for panel in piece.flat.panels
            if panel.role is Role.SPINE
        )
        return next(spines, None)
