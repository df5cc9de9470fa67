"""The outlines of glyphs as SVG path data, in the units of their typeface, y up; each is worked out once."""

from __future__ import annotations

from weakref import WeakKeyDictionary

from ...ground.typefaces import Typeface

__all__ = ["glyph_outline"]

_KNOWN: WeakKeyDictionary[Typeface, dict[int, str]] = WeakKeyDictionary()
"""Outlines by the numbers of their glyphs, as long as their typeface is in use."""


def glyph_outline(typeface: Typeface, gid: int) -> str:
    """The `d` of a glyph, each step counted from where the last one ended; empty if it is a blank."""
    outlines = _KNOWN.setdefault(typeface, {})
    if gid not in outlines:
        outlines[gid] = _outline(typeface, gid)
    return outlines[gid]


def _outline(typeface: Typeface, gid: int) -> str:
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
