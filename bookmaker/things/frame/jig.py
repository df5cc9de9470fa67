"""A jig for gluing a frame square: its outline and its joints on card, with a mark to prick at every corner."""

from __future__ import annotations

from ...ground.art import Group, Stroked
from ...ground.drawing import Art, Pen
from ...ground.geometry import Path, Rect
from ...sheets.flat import Flat, Mark, MarkKind, Panel, Role
from .sizes import FrameSizes, joints

__all__ = ["MARGIN", "jig_art", "jig_flat"]

MARGIN = 6.0
"""Card around the frame, for pins to hold in, in mm."""

PRICK = 0.3


def _corners(sizes: FrameSizes, face: float) -> tuple[Rect, Rect]:
    """The outside of the frame, and the inside, on the jig."""
    outer = Rect(MARGIN, MARGIN, *sizes.outside)
    return outer, outer.grown(-face)


def jig_flat(sizes: FrameSizes, face: float, stock: str) -> Flat:
    """The jig; pins through its eight marks stand at the outer and the inner corners of a square frame."""
    whole = Rect(0, 0, *sizes.outside).grown(MARGIN).moved(MARGIN, MARGIN)
    places = [at for rect in _corners(sizes, face) for at in rect.corners]
    marks = tuple(Mark(MarkKind.HOLE, Rect(at.x - PRICK / 2, at.y - PRICK / 2, PRICK, PRICK)) for at in places)
    return Flat("jig", "jig", stock, whole.corners, (), (Panel(Role.BOARD, whole),), marks=marks)


def jig_art(sizes: FrameSizes, face: float, *, mitred: bool) -> Art:
    """The edges of the rails, and where they meet."""
    outer, inner = _corners(sizes, face)
    pen = Pen(0.12)
    edges = (Stroked(Path.rectangle(rect), pen) for rect in (outer, inner))
    return Group((*edges, Stroked(Path.lines(joints(outer, inner, mitred=mitred)), pen)))
