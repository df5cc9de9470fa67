"""Stiff stock in a tight fold: it cracks unless it is scored first."""

from __future__ import annotations

from ..errors import Problem
from ..stock import Stock
from ..units import print_mm

__all__ = ["unscored"]

STIFF_GRAMMAGE = 150.0
STIFF_CALIPER = 0.2
"""Heavier paper, in g/m², or thicker if its weight is not known, in mm, cracks in the fold (common practice)."""


def unscored(stock: Stock, *, scored: bool) -> tuple[Problem, ...]:
    """What is wrong with folding a block's paper as it is, if anything."""
    if scored:
        return ()
    if stock.grammage is not None:
        stiff, measure = stock.grammage > STIFF_GRAMMAGE, f"weighs {stock.grammage:g} g/m²"
        limit = f"{STIFF_GRAMMAGE:g} g/m²"
    else:
        stiff, measure = stock.caliper > STIFF_CALIPER, f"is {print_mm(stock.caliper)} thick"
        limit = print_mm(STIFF_CALIPER)
    if not stiff:
        return ()
    return (
        Problem(
            f"{stock.name} {measure}; paper over {limit} cracks in a tight fold",
            "score every fold and write scored: yes, or take a thinner paper",
            field=("block", "stock"),
            limit=limit,
        ),
    )
