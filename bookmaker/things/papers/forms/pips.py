"""The signs of playing cards: four suits drawn from a few curves, and where they stand on a card."""

from __future__ import annotations

from collections.abc import Mapping

from ....ground.drawing import Colour
from ....ground.geometry import Path, Point, Transform, polygon
from ...book.designs.ornament.shapes import gathered

__all__ = ["PLACES", "RANKS", "SUITS", "pip"]

RED, BLACK = Colour.from_hex("#b02a26"), Colour.from_hex("#1d1b1a")

RANKS = ("A", "2", "3", "4", "5", "6", "7", "8", "9", "10", "J", "Q", "K")


def _heart() -> Path:
    return Path(
        (
            ("M", 0.0, -0.5),
            ("C", -0.18, -0.22, -0.5, -0.06, -0.5, 0.2),
            ("C", -0.5, 0.46, -0.1, 0.58, 0.0, 0.26),
            ("C", 0.1, 0.58, 0.5, 0.46, 0.5, 0.2),
            ("C", 0.5, -0.06, 0.18, -0.22, 0.0, -0.5),
            ("Z",),
        )
    )


def _foot() -> Path:
    return Path(
        (("M", 0.0, 0.05), ("C", 0.02, -0.25, 0.08, -0.42, 0.22, -0.5), ("L", -0.22, -0.5),
         ("C", -0.08, -0.42, -0.02, -0.25, 0.0, 0.05), ("Z",))
    )  # fmt: skip


def _spade() -> Path:
    head = _heart().transformed(Transform.stretch(0.92, -0.82).moved(0.0, 0.09))
    return gathered((head, _foot()))


def _club() -> Path:
    leaves = [Path.circle(Point(x, y), 0.215) for x, y in ((0.0, 0.27), (-0.25, -0.07), (0.25, -0.07))]
    return gathered((*leaves, Path.circle(Point(0.0, 0.05), 0.12), _foot()))


def _diamond() -> Path:
    return polygon((Point(0, -0.5), Point(0.38, 0), Point(0, 0.5), Point(-0.38, 0)))


SUITS: Mapping[str, tuple[Path, Colour]] = {
    "spades": (_spade(), BLACK),
    "hearts": (_heart(), RED),
    "clubs": (_club(), BLACK),
    "diamonds": (_diamond(), RED),
}
"""Each sign in a square of 1 around the origin, and its colour."""

LEFT, MIDDLE, RIGHT = -1.0, 0.0, 1.0
THIRDS, HALVES = (-1.0, 0.0, 1.0), (-1.0, -1 / 3, 1 / 3, 1.0)

PLACES: Mapping[str, tuple[tuple[float, float], ...]] = {
    "A": ((MIDDLE, 0.0),),
    "2": ((MIDDLE, 1.0), (MIDDLE, -1.0)),
    "3": ((MIDDLE, 1.0), (MIDDLE, 0.0), (MIDDLE, -1.0)),
    "4": tuple((x, y) for x in (LEFT, RIGHT) for y in (1.0, -1.0)),
    "5": (*((x, y) for x in (LEFT, RIGHT) for y in (1.0, -1.0)), (MIDDLE, 0.0)),
    "6": tuple((x, y) for x in (LEFT, RIGHT) for y in THIRDS),
    "7": (*((x, y) for x in (LEFT, RIGHT) for y in THIRDS), (MIDDLE, 0.5)),
    "8": (*((x, y) for x in (LEFT, RIGHT) for y in THIRDS), (MIDDLE, 0.5), (MIDDLE, -0.5)),
    "9": (*((x, y) for x in (LEFT, RIGHT) for y in HALVES), (MIDDLE, 0.0)),
    "10": (*((x, y) for x in (LEFT, RIGHT) for y in HALVES), (MIDDLE, 2 / 3), (MIDDLE, -2 / 3)),
}
"""Where the signs of a card stand, from -1 to 1 across and up its field (common practice)."""


def pip(suit: str, at: Point, high: float, *, head_down: bool = False) -> Path:
    """A sign so many mm high about a point."""
    turn = -high if head_down else high
    return SUITS[suit][0].transformed(Transform.stretch(turn, turn).moved(*at))
