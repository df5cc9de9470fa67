"""Cases around blocks, planned for tests."""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import Any

from hypothesis import assume

from bookmaker.ground.geometry import Point, Rect, Size
from bookmaker.ground.problems import ShelfFileError
from bookmaker.paper.papers import FORMATS
from bookmaker.paper.stock import Stock
from bookmaker.paper.stock_entry import Grain
from bookmaker.sheets.flat import Flat
from bookmaker.things.book.covers.case.case import Case
from bookmaker.things.book.covers.cover_plan import CoverPlan
from tests.kit.flats import block_of, edges_of

__all__ = ["BACK", "C", "Made", "cased", "holds"]


def stock(name: str, caliper: float, film: float = 0.0) -> Stock:
    return Stock(name, caliper, film, 0.01, 0.03, Grain.LONG, FORMATS["A3"], Rect(5, 5, 287, 410))


C, BACK = 0.21, 0.13
"""Covering with its film, and the leather of spine and corners."""


@dataclass(frozen=True)
class Made:
    """A case with the numbers it was asked for."""

    cover: CoverPlan
    page: Size
    block: float
    board: float
    stiffener: float
    square: float
    turn_in: float

    def part(self, name: str) -> Flat:
        return next(flat for flat in self.cover.flats if flat.name == name)

    @property
    def boards(self) -> Size:
        part = next(part for part in self.cover.cut_list if part.what == "board")
        return Size(part.width, part.height)


def cased(
    page: tuple[float, float] = (15, 21),
    block: float = 4.14,
    board: float = 1.0,
    *,
    rtl: bool = False,
    pastedowns: bool = True,
    **keys: Any,
) -> Made:
    """A case of 1 mm board around the usual block, or what the keys say."""
    stocks = {
        "cloth": stock("cloth", 0.16, 0.05),
        "leather": stock("leather", BACK),
        "board": stock("board", board),
        "card": stock("card", 0.3),
        "plain": stock("plain", 0.1),
    }
    keys = {"square": max(0.4, board / 3 + 0.01), **keys}  # as thick as the board may be
    entry = Case(stock="cloth", boards="board", **keys)
    try:
        cover = entry.plan(Size(*page), block_of(block, pastedowns=pastedowns), stocks, right_to_left=rtl)
    except ShelfFileError:
        assume(False)
        raise
    parts = [part.thickness for part in cover.cut_list if part.what == "stiffener"]
    return Made(cover, Size(*page), block, board, sum(parts), keys["square"], entry.turn_in)


def holds(flat: Flat, point: Point, slack: float = 1e-6) -> bool:
    """Whether a point lies on the paper: left of every edge of an outline that runs counter-clockwise."""
    for start, end in edges_of(flat.outline):
        edge = sqrt((end.x - start.x) ** 2 + (end.y - start.y) ** 2)
        left = ((end.x - start.x) * (point.y - start.y) - (end.y - start.y) * (point.x - start.x)) / edge
        if left < -slack:
            return False
    return True
