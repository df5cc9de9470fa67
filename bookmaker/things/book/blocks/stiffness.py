"""Stiff stock in a tight fold: it cracks unless it is scored first, and board cannot be folded at all."""

from __future__ import annotations

from ....ground.problems import FieldPath, Problem
from ....ground.thin import print_caliper
from ....ground.told import print_grammage
from ....paper.stock import Stock

__all__ = ["THICKEST_COVER", "THICKEST_STRIP", "stiff_folds", "too_thick_folds"]

STIFF_GRAMMAGE = 150.0
STIFF_CALIPER = 0.2
"""Heavier paper, in g/m², or thicker if its weight is not known, in mm, cracks in the fold (common practice)."""

THICKEST_COVER = 0.45
"""Thicker card cannot be folded around a book even when scored, in mm (common practice)."""

THICKEST_STRIP = 0.25
"""Thicker endpapers and edge strips do not lie flat when folded, scored or not, in mm (common practice)."""


def stiff_folds(stock: Stock, *, scored: bool) -> tuple[Problem, ...]:
    """What is wrong with folding a block's paper as it is, if anything."""
    if scored:
        return ()
    if stock.grammage is not None:
        stiff, measure = stock.grammage > STIFF_GRAMMAGE, f"weighs {print_grammage(stock.grammage)}"
        limit = print_grammage(STIFF_GRAMMAGE)
    else:
        stiff, measure = stock.caliper > STIFF_CALIPER, f"is {print_caliper(stock.caliper)} thick"
        limit = print_caliper(STIFF_CALIPER)
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


def too_thick_folds(what: str, stock: Stock, most: float, field: FieldPath) -> tuple[Problem, ...]:
    """What is wrong with folding a part of this stock, even when it is scored; `most` is the thickest, in mm."""
    if stock.caliper <= most + 1e-9:
        return ()
    thick, limit = print_caliper(stock.caliper), print_caliper(most)
    return (
        Problem(
            f"{stock.name} is {thick} thick; {what} over {limit} cannot be folded even when scored",
            f"name a paper of {limit} or less",
            field=field,
            limit=limit,
        ),
    )
