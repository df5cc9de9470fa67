"""How far a book may lean before it slides, and how little before it stands up again.

A book of thickness t and height h leans on one lower corner; what it leans on touches it at its upper corner, if that
reaches so high, else with an edge of its own at a lower height. Statics of a rigid body with dry friction on the board
and on the neighbour, derived here. Friction of paper on paper at rest is 0.28 to 0.49 (measured values in *The Physics
Factbook*, 2005); the least of them, rounded, is taken for both.
"""

from __future__ import annotations

from math import atan2, cos, degrees, radians, sin

__all__ = ["FRICTION", "holds", "least_lean", "most_lean", "push"]

FRICTION = 0.3
"""Of paper on a board, and on paper."""


def least_lean(thickness: float, height: float) -> float:
    """Degrees below which a book stands up by itself: its middle is still over its base.

    >>> round(least_lean(3, 20), 2)
    8.53
    """
    return degrees(atan2(thickness, height))


def most_lean(thickness: float, height: float, board: float = FRICTION, neighbour: float = FRICTION) -> float:
    """Degrees from which a book slides whose head touches something at least so high.

    tan α = (2 μ₁ + (1 + μ₁ μ₂) t / h) / (1 − μ₁ μ₂), μ₁ on the board and μ₂ on the neighbour:

    >>> round(most_lean(3, 20, 0.3, 0.0), 2)
    36.87
    """
    both = board * neighbour
    return degrees(atan2(2 * board + (1 + both) * thickness / height, 1 - both))


def holds(thickness: float, height: float, lean: float, met: float) -> bool:
    """Whether a book that leans so many degrees stays as it is; what it leans on touches it `met` mm over the board.

    Below the upper corner the neighbour presses square to the face of the book. With its share N of the weight, from
    the moments about the foot N = (h sin α − t cos α) / 2s, s along the face, it slides when
    N (cos α − μ sin α) > μ (1 − N (sin α + μ cos α)).
    """
    sine, cosine = sin(radians(lean)), cos(radians(lean))
    if met >= height * cosine - 1e-6:
        return lean <= most_lean(thickness, height) + 1e-9
    pressed = (height * sine - thickness * cosine) / 2 / max(met / cosine, 1e-9)
    return pressed * (cosine - FRICTION * sine) <= FRICTION * (1 - pressed * (sine + FRICTION * cosine)) + 1e-9


def push(thickness: float, height: float, lean: float) -> float:
    """How hard what leans turns what it leans on over, for each unit of its weight: mm, half of h sin α − t cos α.

    That is its own moment about its foot, whatever the height at which they touch. What it leans on stays as long as
    its weight times half its thickness is more: a book of 3 × 20 mm that leans 15° turns over one as high and deep that
    is thinner than 2.61 mm, and two of which each is thinner than 1.85 mm.

    >>> round(push(3, 20, 15), 3)
    1.139
    """
    return max(0.0, height * sin(radians(lean)) - thickness * cos(radians(lean))) / 2
