"""Straight edge-to-edge cuts: how a layout is taken apart with knife and steel rule."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from ...ground.geometry import Point, Rect
from .items import Bin, Placed

__all__ = ["Cut", "Panel", "take_apart"]

TOUCH = 1e-6
"""Pieces may be this many mm closer than their gap, for rounding."""


@dataclass(frozen=True, slots=True)
class Cut:
    """One cut through a loose part of the sheet, from edge to edge; `upright` runs from bottom to top at
    x = `at`, else the cut runs from side to side at y = `at`."""

    panel: Rect
    upright: bool
    at: float

    @property
    def start(self) -> Point:
        """The end of the cut that is lower, or on the left."""
        return Point(self.at, self.panel.y) if self.upright else Point(self.panel.x, self.at)

    @property
    def end(self) -> Point:
        """The other end."""
        return Point(self.at, self.panel.top) if self.upright else Point(self.panel.right, self.at)

    @property
    def parts(self) -> tuple[Rect, Rect]:
        """What the cut makes: left and right, or lower and upper."""
        x, y, width, height = self.panel
        if self.upright:
            return Rect(x, y, self.at - x, height), Rect(self.at, y, self.panel.right - self.at, height)
        return Rect(x, y, width, self.at - y), Rect(x, self.at, width, self.panel.top - self.at)


@dataclass(frozen=True, slots=True)
class Panel:
    """A loose part of a sheet, and the pieces still on it."""

    rect: Rect
    pieces: tuple[Placed, ...]


def take_apart(pieces: Sequence[Placed], area: Bin, gap: float) -> tuple[tuple[Cut, ...], tuple[Panel, ...]]:
    """The cuts that separate the pieces of one bin, in order, and the panels that remain in the end.

    Cuts run where there is the full gap (in mm) between pieces, half of it beside or above a piece, so that
    off-cuts stay as large as they can be. If more than one piece remains on a panel, the layout cannot be taken
    apart by such cuts.

    >>> row = [Placed("a", 0, 0, 0, 6, 4, False), Placed("b", 0, 8, 0, 6, 4, False)]
    >>> [(cut.start, cut.end) for cut in take_apart(row, Bin(14, 9), 2)[0]]
    [(Point(x=7.0, y=0.0), Point(x=7.0, y=9.0))]
    """
    cuts: list[Cut] = []
    loose: list[Panel] = []
    waiting = [Panel(Rect(0.0, 0.0, area.width, area.height), tuple(pieces))]
    while waiting:
        panel = waiting.pop()
        split = max(_split(panel, False, gap), _split(panel, True, gap), key=len)
        if not split:
            loose.append(panel)
            continue
        cuts += [cut for cut, _ in split]
        parts = [Panel(cut.parts[0], held) for cut, held in split]
        gone = {piece.key for part in parts for piece in part.pieces}
        held = tuple(piece for piece in panel.pieces if piece.key not in gone)
        waiting += reversed([*parts, Panel(split[-1][0].parts[1], held)])
    return tuple(cuts), tuple(loose)


def _split(panel: Panel, upright: bool, gap: float) -> list[tuple[Cut, tuple[Placed, ...]]]:
    """All cuts of one direction that cross no piece, each with the pieces it takes off on the near side."""

    def reach(piece: Placed) -> tuple[float, float]:
        return (piece.x, piece.x + piece.width) if upright else (piece.y, piece.y + piece.height)

    found: list[tuple[Cut, tuple[Placed, ...]]] = []
    held: list[Placed] = []
    rest, far = panel.rect, 0.0
    for piece in sorted(panel.pieces, key=reach):
        near, end = reach(piece)
        if held and near >= far + gap - TOUCH:
            cut = Cut(rest, upright, far + gap / 2)
            found.append((cut, tuple(held)))
            rest, held = cut.parts[1], []
        far = max(far, end) if held else end
        held.append(piece)
    return found
