"""The sizes of a framed picture: opening, what is seen of it, outside, rails, mount and window.

Face is the seen width of a rail, `covers` how far it lies over what it frames (the rebate, where there is one),
allowance the play. Opening = framed + allowance; sight = opening − 2 · covers; outside = opening + 2 (face − covers)
(derived; "Find the length of any picture frame molding", Fine Woodworking 275).
"""

from __future__ import annotations

from dataclasses import dataclass

from ...ground.geometry import Point, Rect, Size
from .entry import FrameEntry, MountEntry

__all__ = ["FrameSizes", "frame_sizes", "joints"]

FOOT = 4 / 3
"""A mount is wider at its foot: top and sides to foot as 3 to 4 (US Navy, Illustrator Draftsman, "Matting")."""


@dataclass(frozen=True, slots=True)
class FrameSizes:
    """Widths and heights in mm; `window` lies in the mount, counted from the lower left corner of that.

    `framed` is what lies between the rails: the mount, or the picture where there is none. `layer` is what a paper
    round the rails adds on every side.
    """

    picture: Size
    framed: Size
    window: Rect | None
    opening: Size
    sight: Size
    outside: Size
    layer: float = 0.0

    def rails(self, face: float, *, mitred: bool) -> tuple[tuple[str, float], tuple[str, float]]:
        """The rails over all, two of each: the level ones run through where they are not mitred."""
        level, upright = (side - 2 * self.layer for side in self.outside)
        return ("level rail", level), ("upright rail", upright if mitred else upright - 2 * face)


def frame_sizes(entry: FrameEntry, scale: float, layer: float = 0.0) -> FrameSizes:
    """All sizes of a frame; `layer` is the paper round its rails, if there is some, and its glue.

    A picture of 20 × 25 mm between rails 4 mm wide that cover 1 mm, with 0.25 mm of play, is 26.25 × 31.25 mm outside.
    """
    picture = Size(entry.finished(entry.width, scale), entry.finished(entry.height, scale))
    framed, window = (picture, None) if entry.mount is None else _mounted(picture, entry.mount)
    opening = Size(*(side + entry.allowance for side in framed))
    sight = Size(*(side - 2 * entry.rails.covers for side in opening))
    outside = Size(*(side + 2 * (entry.rails.face + 2 * layer - entry.rails.covers) for side in opening))
    return FrameSizes(picture, framed, window, opening, sight, outside, layer)


def joints(outer: Rect, inner: Rect, *, mitred: bool) -> list[tuple[Point, Point]]:
    """The four lines at which rails meet, between the outside and the inside of a frame."""
    if mitred:
        return list(zip(outer.corners, inner.corners, strict=True))
    ends = ((outer.x, inner.x), (inner.right, outer.right))
    return [(Point(x, y), Point(edge, y)) for y in (inner.y, inner.top) for x, edge in ends]


def _mounted(picture: Size, mount: MountEntry) -> tuple[Size, Rect]:
    """A mount around a picture, and its window."""
    foot = mount.border * FOOT if mount.foot is None else mount.foot
    window = Rect(mount.border, foot, picture.width - 2 * mount.covers, picture.height - 2 * mount.covers)
    return Size(window.width + 2 * mount.border, window.height + mount.border + foot), window
