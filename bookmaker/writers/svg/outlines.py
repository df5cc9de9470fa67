"""The outlines of glyphs as SVG path data, in the units of their typeface, y up; each is worked out once."""

from __future__ import annotations

from functools import lru_cache

from ...ground.typefaces import Typeface

__all__ = ["glyph_outline"]

MOST_GLYPHS = 20_000
"""Outlines that are kept, some 300 bytes each."""


@lru_cache(maxsize=MOST_GLYPHS)
def glyph_outline(typeface: Typeface, gid: int) -> str:
    """The `d` of a glyph, each step counted from where the last one ended; empty if it is a blank."""
    written: list[str] = []
    x = y = first_x = first_y = 0.0
    for kind, *numbers in typeface.outline(gid):
        if kind == "Z":
            written.append("z")
            x, y = first_x, first_y
            continue
        steps = [float(number) - (y if place % 2 else x) for place, number in enumerate(numbers)]
        written.append(str(kind).lower() + " ".join(f"{step:.6g}" for step in steps))
        x, y = x + steps[-2], y + steps[-1]
        if kind == "M":
            first_x, first_y = x, y
    return "".join(written).replace(" -", "-")
