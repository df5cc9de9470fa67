"""What makes a row pleasing, as a sum of a few measured terms; each has a weight of the maker's own.

Where each comes from: unlike neighbours by colour are what `palettes` strive for already, in Oklab (Ottosson 2020);
likeness fades as an exponential of the distance (R. N. Shepard, "Toward a universal law of generalization for
psychological science", Science 237, 1987, from memory); that heights should neither rise like stairs nor go up and down
like the teeth of a saw, that thick and thin ones mix and styles do not stand in clumps is common practice of those who
dress sets and shop windows, without a source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, log

from ...ground.colours.differences import oklab_of
from ...ground.drawing import Colour
from .costs import Costs
from .keys import ArrangeEntry

__all__ = ["Worn", "costs_of"]

COLOUR_FADES, THICKNESS_FADES = 0.1, 0.35
"""Distances at which likeness has fallen to 1/e: in Oklab, where a middle red and a middle green are 0.25 apart, and of
the logarithms of thicknesses, of which one is 1.4 times the other. Common practice, no source."""

FAR_APART = 0.25
"""In Oklab: a middle red and a middle green."""

HIGHER = 1.0
"""So many mm are seen as a step."""


@dataclass(frozen=True, slots=True)
class Worn:
    """What is seen of one that stands in a row: lengths in mm."""

    height: float
    thickness: float
    style: str = ""
    tone: Colour | None = None


def costs_of(first: Sequence[Worn], last: Sequence[Worn], wishes: ArrangeEntry) -> Costs:
    """What orders of units cost, each seen by its first and its last: alike for what is one by itself.

    A unit of several has two faces to its neighbours; which of them comes to lie beside another is not known before, so
    the mean of both counts.
    """
    count = range(len(first))
    beside = tuple(
        tuple(
            0.0 if a == b else (_alike(last[a], first[b], wishes) + _alike(last[b], first[a], wishes)) / 2
            for b in count
        )
        for a in count
    )
    heights = [(one.height + other.height) / 2 for one, other in zip(first, last, strict=True)]
    steps = tuple(tuple(_step(heights[a], heights[b]) for b in count) for a in count)
    return Costs(beside, steps, wishes.rhythm, wishes.rhythm)


def _step(one: float, other: float) -> int:
    return 0 if abs(other - one) < HIGHER else 1 if other > one else -1


def _alike(one: Worn, other: Worn, wishes: ArrangeEntry) -> float:
    """How much two neighbours are alike: 0 is not at all, and each weight in full for what is the same.

    Of colours in a gradient their distance counts, in full what is 0.25 apart.

    >>> round(_alike(Worn(20, 4, "cloth"), Worn(24, 8, "cloth"), ArrangeEntry()), 3)
    0.569
    """
    colours = 0.0
    if one.tone and other.tone:
        apart = oklab_of(one.tone).distance(oklab_of(other.tone))
        colours = apart / FAR_APART if wishes.colours == "gradient" else exp(-apart / COLOUR_FADES)
    thickness = exp(-abs(log(one.thickness / other.thickness)) / THICKNESS_FADES)
    styles = float(bool(one.style) and one.style == other.style)
    return wishes.colour * colours + wishes.thickness * thickness + wishes.style * styles
