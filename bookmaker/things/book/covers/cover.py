"""What every cover is to the rest of the book, whatever its kind."""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from pydantic import Field

from ....ground.problems import Problem
from ....paper.thickness import Thickness
from ....sheets.cutting import CutPart
from ....sheets.flat import Flat
from ....shelf_file.fields.entry import Entry
from ....shelf_file.fields.words import StockName

__all__ = ["CoverEntry", "CoverPlan", "bend_allowance"]


class CoverEntry(Entry):
    """The keys all kinds of cover share."""

    stock: StockName = Field(description="name of the cover paper, as under stocks")


def bend_allowance(angle_deg: float, inside_radius: float, caliper: float, neutral: float = 0.5) -> float:
    """Length of stock a fold takes up, in mm: A·π/180·(R + K·c).

    `neutral` is K: 0 measures on the inner face, ½ in the middle, 1 on the outer face (*Machinery's
    Handbook*, bend allowances). A scored right angle in 0.21 mm stock takes π/4 · 0.21 = 0.165 mm:

    >>> round(bend_allowance(90, 0, 0.21), 3)
    0.165
    """
    return angle_deg * pi / 180 * (inside_radius + neutral * caliper)


@dataclass(frozen=True, slots=True)
class CoverPlan:
    """A cover worked out.

    `spine` is the width of the spine on the flat, between fold centres; `thickness` is that of the whole
    finished book, `height` and `depth` its other outer sides, all in mm. `edge` is how thick one side of the
    cover is at the fore-edge: a jacket's flap goes around it. `cut_list` is what is cut by hand.
    """

    kind: str
    spine: float
    thickness: Thickness
    height: float
    depth: float
    flats: tuple[Flat, ...]
    edge: float
    cut_list: tuple[CutPart, ...] = ()
    notes: tuple[Problem, ...] = ()
