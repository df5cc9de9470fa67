"""Flats of covers, and their panels."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from bookmaker.ground.geometry import Point, Rect, Size
from bookmaker.paper.papers import FORMATS
from bookmaker.paper.stock import Stock
from bookmaker.paper.stock_entry import Grain
from bookmaker.paper.thickness import Layer, Thickness
from bookmaker.sheets.flat import Flat, Panel, Role
from bookmaker.things.book.blocks.block_plan import BlockPlan
from bookmaker.things.book.covers.wrap import Wrap

__all__ = ["block_of", "edges_of", "flat_of", "panel", "part", "signed_area"]

CARD = Stock(
    name="card",
    caliper=0.16,
    film=0.05,
    tolerance=0.016,
    glue=0.03,
    grain=Grain.LONG,
    sheet=FORMATS["A4"],
    printable=Rect(5, 5, 200, 287),
)


def block_of(thickness: float, *, pastedowns: bool = True) -> BlockPlan:
    """A block to cover that is known by its thickness alone."""
    layers = (Layer("block", 1, thickness),)
    return BlockPlan("block", 48, 50, Thickness(layers), flats=(), pastedowns=pastedowns)


def flat_of(thickness: float = 4.0, width: float = 15.0, height: float = 21.0, **keys: str) -> Flat:
    entry = Wrap.model_validate({"kind": "wrap", "stock": "card", **keys})
    return entry.plan(Size(width, height), block_of(thickness), {"card": CARD}, right_to_left=False).flats[0]


def panel(flat: Flat, role: Role) -> Rect:
    return next(panel.rect for panel in flat.panels if panel.role is role)


def part(*roles: Role, width: float = 14.0, height: float = 21.0, bleed: float = 2.0) -> Flat:
    """A flat with the named panels side by side, the spine 4 mm wide; without any it is one blank piece."""
    panels: list[Panel] = []
    x = 0.0
    for role in roles:
        wide = 4.0 if role is Role.SPINE else width
        panels.append(Panel(role, Rect(x, 0, wide, height)))
        x += wide
    size = Rect(0, 0, x or width, height)
    return Flat("part", "part", "card", size.corners, (), tuple(panels), None, bleed)


def edges_of(corners: Sequence[Point]) -> list[tuple[Point, Point]]:
    """The sides of an outline, one after the other."""
    return list(pairwise([*corners, corners[0]]))


def signed_area(corners: Sequence[Point]) -> float:
    """The area within an outline in mm², positive when its corners run counter-clockwise."""
    return sum(a.x * b.y - b.x * a.y for a, b in edges_of(corners)) / 2
