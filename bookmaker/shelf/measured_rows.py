"""Rows of finished books that were measured side by side: each book takes its share of what the gauge said."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import sqrt

from ..paper.thickness import READING_TOLERANCE
from ..things.thing import Plan
from .entries import MeasuredRowEntry
from .register import Register

__all__ = ["MeasuredRow", "as_measured", "measured_row"]


@dataclass(frozen=True, slots=True)
class MeasuredRow:
    """Finished things measured side by side: their ids, and how thick they are together, in mm."""

    things: tuple[str, ...]
    thickness: float


def measured_row(entry: MeasuredRowEntry, register: Register) -> MeasuredRow:
    """The row with its books found by name; `cross_check` has refused unknown ones."""
    return MeasuredRow(tuple(id for name in entry.books for id in register.find_counted(name)), entry.thickness)


def as_measured(plans: Mapping[str, Plan], rows: Iterable[MeasuredRow]) -> dict[str, Plan]:
    """The plans with their shares: the difference is spread by thickness, the error of the reading evenly.

    Books of 4 and 8 mm that measure 12.6 mm together are taken as 4.2 and 8.4 mm.
    """
    measured = dict(plans)
    for row in rows:
        if not plans.keys() >= set(row.things):
            continue
        thick = {id: standing.thickness for id in row.things if (standing := plans[id].standing)}
        error = READING_TOLERANCE / sqrt(len(thick))
        for id, computed in thick.items():
            measured[id] = plans[id].as_measured(computed * row.thickness / sum(thick.values()), error)
    return measured
