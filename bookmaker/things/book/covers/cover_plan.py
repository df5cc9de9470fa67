"""What a cover is once it is worked out, whatever its kind."""

from __future__ import annotations

from dataclasses import dataclass

from ....ground.problems import Problem
from ....paper.thickness import Thickness
from ....sheets.cutting import CutPart
from ....sheets.flat import Flat

__all__ = ["CoverPlan"]


@dataclass(frozen=True, slots=True)
class CoverPlan:
    """A cover worked out.

    `spine` is the width of the spine on the flat, between fold centres; `thickness` is that of the whole
    finished book, `height` and `depth` its other outer sides, all in mm. `edge` is how thick one side of the
    cover is at the fore-edge: a jacket's flap goes around it. `turned_in` is how much of the thickness is turn-ins,
    which lie along the edges only. `cut_list` is what is cut by hand.
    """

    kind: str
    spine: float
    thickness: Thickness
    height: float
    depth: float
    flats: tuple[Flat, ...]
    edge: float
    turned_in: float = 0.0
    cut_list: tuple[CutPart, ...] = ()
    notes: tuple[Problem, ...] = ()
