"""The margin around a piece on the sheet that holds its cut and fold marks and its label.

Marks begin where the bleed ends, so that they show on white paper and never on the finished surface. The
foot is deeper than the other sides because the label stands there.
"""

from __future__ import annotations

from typing import NamedTuple

from ..ground.geometry import Point, Size

__all__ = ["CROSS_ARM", "CROSS_ROOM", "FOOTER_HEIGHT", "MARK_MARGIN", "MarkMargin"]

FOOTER_HEIGHT = 12.0
"""What the test line, the legend and the notes take at the foot of every sheet, in mm."""


CROSS_ROOM, CROSS_ARM = 6.0, 2.0
"""For a cutting machine: the room of an alignment cross along each edge, and the length of its arms, in mm."""


class MarkMargin(NamedTuple):
    """Widths in mm, beyond the bleed, in the piece's own directions."""

    side: float
    head: float
    foot: float

    def around(self, size: Size, bleed: float) -> Size:
        """The room a piece takes with bleed and margin, lying upright.

        >>> MarkMargin(2, 2, 3).around(Size(150, 21), 0)
        Size(width=154, height=26)
        """
        return Size(size.width + 2 * (bleed + self.side), size.height + 2 * bleed + self.head + self.foot)

    def within(self, room: Size) -> Size:
        """The largest piece without bleed that a room holds with its margin, lying upright."""
        return Size(room.width - 2 * self.side, room.height - self.head - self.foot)

    def inside(self, corner: Point, bleed: float, turned: bool) -> Point:
        """Where the outline begins when its room begins at `corner`; a turned piece has its foot on the right."""
        if turned:
            return corner.plus(self.head + bleed, self.side + bleed)
        return corner.plus(self.side + bleed, self.foot + bleed)


MARK_MARGIN = MarkMargin(side=2.2, head=2.2, foot=3.2)
