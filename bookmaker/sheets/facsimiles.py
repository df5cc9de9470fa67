"""Facsimiles of pieces and pages: what is printed there, on white paper, with nothing around it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..ground.art import Filled, Group
from ..ground.drawing import WHITE, Art
from ..ground.geometry import Path, Rect, Size, Transform
from .flat import Face, Panel
from .piece import Piece

__all__ = ["Facsimile", "facsimile_of_page", "facsimile_of_panel", "facsimile_of_piece", "openings", "side_by_side"]


@dataclass(frozen=True, slots=True)
class Facsimile:
    """The exact likeness of something: art, and the box in its coordinates, in mm, outside of which nothing is."""

    art: Art
    box: Rect


def facsimile_of_piece(piece: Piece, face: Face = Face.FRONT, *, bleed: bool = False) -> Facsimile:
    """One side of a piece as it is cut out, or with its bleed around it as it is printed."""
    flat = piece.flat
    whole = Rect(0, 0, *flat.size).grown(flat.bleed if bleed else 0.0)
    outline = flat.inked(face) if bleed else flat.shape(face)
    return Facsimile(_on_paper(_printed(piece, face), outline), whole)


def facsimile_of_panel(piece: Piece, panel: Panel) -> Facsimile:
    """One panel of a piece, upright, without what is around it."""
    rect = panel.rect
    if panel.face is Face.REVERSE:
        rect = rect._replace(x=piece.flat.size.width - rect.right)
    upright = (
        Transform.quarter_turn(2).moved(rect.right, rect.top) if panel.head_down else Transform.move(-rect.x, -rect.y)
    )
    seen = _on_paper(_printed(piece, panel.face), Path.rectangle(rect))
    if piece.flat.holes:
        seen = Group((seen,), clip=piece.flat.shape(panel.face))
    return Facsimile(Group((seen,), upright), Rect(0, 0, *rect.size))


def facsimile_of_page(page: Art, size: Size) -> Facsimile:
    """A page of a size in mm, its lower left corner at the origin."""
    box = Rect(0, 0, *size)
    return Facsimile(_on_paper(page, Path.rectangle(box)), box)


def openings(pages: Sequence[Facsimile], *, right_to_left: bool = False) -> Iterator[Facsimile]:
    """What is seen at each opening of a book: the first page alone, then two and two that face each other."""
    for start in range(-1 if pages else 0, len(pages), 2):
        facing = pages[max(start, 0) : start + 2]
        yield side_by_side(facing[::-1] if right_to_left else facing)


def side_by_side(facsimiles: Sequence[Facsimile]) -> Facsimile:
    """Facsimiles from left to right on one base, such as two pages that face each other."""
    art: list[Art] = []
    x = 0.0
    for one in facsimiles:
        art.append(Group((one.art,), Transform.move(x - one.box.x, -one.box.y)))
        x += one.box.width
    return Facsimile(Group(tuple(art)), Rect(0, 0, x, max(one.box.height for one in facsimiles)))


def _printed(piece: Piece, face: Face) -> Art:
    return piece.art if face is Face.FRONT else piece.reverse


def _on_paper(art: Art, outline: Path) -> Art:
    """What of some art is printed on white paper of an outline."""
    return Group((Filled(outline, WHITE), Group((art,), clip=outline)))
