"""Tracking: how far apart the letters of small type stand, in ems.

Small type needs looser spacing: H. Carter, Optical Scale in Typefounding, 1937 (from memory); T. Ahrens and
S. Mugikura, Size-specific Adjustments to Type Designs, 2014. Under 6 pt that is 2 to 5 % of the em (common practice,
no source).
"""

from __future__ import annotations

from ...ground.units import to_pt

__all__ = ["LOOSENING", "loosening_at", "tracking_at"]

SMALL_PT, SMALLEST_PT = 6.0, 1.0
"""Letters stand further apart in type under so many points, and no further in type under one."""

LOOSENING, LOOSEST = 0.03, 0.05
"""How far letters may be tracked apart to fill a line, from 6 pt up and at 1 pt (common practice).

In type of 6 pt 3 % are 0.064 mm, one and a half printer's dots at 600 to the inch.
"""

WIDEST = 0.025
"""How far apart letters of 1 pt stand in lines that need not be filled: about as far as in those that are.

In those of the demo's texts in 2.2 pt that is 1 to 2 % on an average (tests/bench/bench_lines.py).
"""


def loosening_at(size: float) -> float:
    """How far letters of a size in mm may be tracked apart to fill a line, in ems: more under 6 pt, to 5 % at 1 pt.

    Filled lines so become wider by their letters rather than by their spaces, and no longer than they were: set wider
    throughout by 2 %, the demo's texts would take 4 % more pages, and their spaces would come out wider for it.

    >>> from ...ground.units import from_pt
    >>> [round(loosening_at(from_pt(size)), 3) for size in (10, 6, 2.2, 1)]
    [0.03, 0.03, 0.045, 0.05]
    """
    return LOOSENING + (LOOSEST - LOOSENING) * _smallness(size)


def tracking_at(size: float) -> float:
    """How far apart letters of a size in mm stand in lines that end as they come: verse, headings, lists, captions.

    >>> from ...ground.units import from_pt
    >>> [round(tracking_at(from_pt(size)), 3) for size in (10, 6, 2.2, 1)]
    [0.0, 0.0, 0.019, 0.025]
    """
    return WIDEST * _smallness(size)


def _smallness(size: float) -> float:
    """0 from 6 pt up, 1 at 1 pt and under it."""
    return min(1.0, max(0.0, (SMALL_PT - to_pt(size)) / (SMALL_PT - SMALLEST_PT)))
