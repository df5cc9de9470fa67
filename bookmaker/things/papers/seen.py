"""A paper as it lies about, folded if it is folded, and as it hangs on a wall, open."""

from __future__ import annotations

from ...ground.art import Filled, Group
from ...ground.drawing import WHITE, Art
from ...ground.geometry import Path, Rect, Transform
from ...sheets.facsimiles import Facsimile
from ...sheets.flat import Face
from .entry import Leaf

__all__ = ["hanging", "lying"]


def hanging(leaf: Leaf, front: Art) -> Facsimile:
    """The front of one copy, open; `front` is that of its leaf."""
    return _cut_out(front, leaf.parts[0])


def lying(leaf: Leaf, front: Art, reverse: Art) -> Facsimile:
    """One copy as it lies: of what is folded the outer panel that shows its cover."""
    if leaf.folded is None:
        return hanging(leaf, front)
    (cell, face), _ = leaf.folded.outer
    panel = leaf.folded.whole(cell)
    if face is Face.REVERSE:
        return _cut_out(reverse, panel._replace(x=leaf.size.width - panel.right))
    return _cut_out(front, panel)


def _cut_out(art: Art, rect: Rect) -> Facsimile:
    """A part of some art on white paper, its lower left corner at the origin."""
    outline = Path.rectangle(rect)
    seen = Group((Filled(outline, WHITE), Group((art,), clip=outline)))
    return Facsimile(Group((seen,), Transform.move(-rect.x, -rect.y)), Rect(0, 0, *rect.size))
