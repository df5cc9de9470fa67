"""Off-cuts that no piece fits on, and what would make pieces that do."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from ..ground.problems import Problem, Severity
from ..ground.units import print_mm
from ..paper.stock import Stock
from ..sheets.packing_items import takes
from ..sheets.piece import Piece
from .plan import ShelfPlan

__all__ = ["useless_off_cuts"]

MOST_NAMED = 3
"""So many things are named; more would be noise."""


def useless_off_cuts(plan: ShelfPlan, pieces: Collection[Piece]) -> Iterator[Problem]:
    """A note for each off-cut that is too small for any of the pieces; the remedy says what would fit."""
    for stock in plan.stocks.values():
        mine = [piece for piece in pieces if piece.flat.stock == stock.name]
        owners = dict.fromkeys(piece.owner for piece in mine)
        for off_cut in stock.off_cuts if mine else ():
            if not any(takes(off_cut.on_both_sides if piece.two_sided else off_cut, piece.flat) for piece in mine):
                yield _useless(off_cut, _what_would_fit(owners, off_cut, plan))


def _useless(off_cut: Stock, what_would_fit: str) -> Problem:
    room = off_cut.usable
    return Problem(
        f"the {off_cut.sheet.name} off-cut of {off_cut.name} is smaller than any piece: with its margins and notes "
        f"it has room for {print_mm(room.width, 1)} × {print_mm(room.height, 1)}",
        f"keep it for smaller pieces, and take it out of off_cuts{what_would_fit}",
        severity=Severity.NOTE,
        field=("stocks", off_cut.name, "off_cuts"),
    )


def _what_would_fit(owners: Collection[str], off_cut: Stock, plan: ShelfPlan) -> str:
    """The advice of the greatest worth, and the things that give it; empty if none has any."""
    found = {plan.plans[id].name: said for id in owners if (said := plan.plans[id].onto(off_cut, plan.terms))}
    if not found:
        return ""
    best = max(found.values(), key=lambda advice: advice.worth)
    named = [name for name, advice in found.items() if advice == best]
    some = ", ".join(named[:MOST_NAMED]) + (" or another" if len(named) > MOST_NAMED else "")
    return f"; or write {best.text} of {some}"
