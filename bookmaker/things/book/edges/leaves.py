"""Edges that show their leaves: plain, gilt or stained.

A trimmed block shows no even ruling. Its leaves differ a little in tone, lie in sections with a darker gap
between them, run in slow waves, and the shadow between two of them comes and goes along the edge.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from itertools import pairwise
from random import Random

from ....ground.art import Stroked
from ....ground.drawing import BLACK, WHITE, Colour, Pen
from ....ground.geometry import Path
from .strip import EdgeArt, Layout, mix

__all__ = ["gilt", "lines", "stained"]

LEAF = 0.12
"""From leaf to leaf in mm: a thin paper with the air between its leaves. Coarser printers get coarser leaves."""

DOTS_A_LEAF, DOTS_A_LINE = 4.0, 1.3
"""A leaf is at least four printer dots thick, a line between two leaves a little more than one dot."""

WAVE_LENGTH = (7.0, 15.0)
"""From bend to bend of a line, in mm."""

OPENING = (3.0, 16.0)
"""How long the gap between two leaves stays as it is, in mm."""


@dataclass(frozen=True, slots=True)
class Tones:
    """How a block looks from outside: `shade` is how far its leaves differ, `drawn` how much of each line shows."""

    paper: Colour
    other: Colour
    shadow: Colour
    shade: float
    drawn: float
    glint: Colour | None = None


def lines(layout: Layout) -> EdgeArt:
    """Bare paper, a little yellowed."""
    paper, other, shadow = map(Colour.from_hex, ("#f0e7d1", "#d8c9a6", "#6e5c41"))
    return _block(layout, Tones(paper, other, shadow, shade=0.9, drawn=0.62))


def gilt(layout: Layout) -> EdgeArt:
    """Gold leaf, as near as flat ink comes: warm, smooth, with a glint here and there."""
    paper, other, shadow, glint = map(Colour.from_hex, ("#cba145", "#bb8e36", "#86632a", "#deba64"))
    return _block(layout, Tones(paper, other, shadow, shade=0.7, drawn=0.35, glint=glint))


def stained(layout: Layout) -> EdgeArt:
    """One colour, taken up a little differently by each leaf."""
    colour = layout.stain
    return _block(layout, Tones(mix(colour, WHITE, 0.1), mix(colour, BLACK, 0.14), mix(colour, BLACK, 0.5), 0.9, 0.4))


def _block(layout: Layout, tones: Tones) -> EdgeArt:
    return EdgeArt(layout.area, tones.paper, partial(_leaves, layout, tones))


def _leaves(layout: Layout, tones: Tones) -> Iterator[Stroked]:
    """Leaf by leaf from the foot of the area to its top."""
    area, dot, chance = layout.area, layout.dot, layout.chance()
    pitch = max(LEAF, DOTS_A_LEAF * dot)
    drift = _bends(layout, chance, 0.5 * pitch)
    y, left_in_section, tint = area.y, 0, 0.0
    while y < area.top + pitch:
        first = left_in_section == 0
        if first:
            left_in_section, tint = chance.randint(6, 14), chance.uniform(0.1, 0.6)
        left_in_section -= 1
        step = pitch * chance.uniform(0.75, 1.3)
        edge = [(x, y + bend + chance.uniform(-0.1, 0.1) * pitch) for x, bend in drift]
        tone = mix(tones.paper, tones.other, tones.shade * (tint + chance.uniform(-0.25, 0.4)))
        yield Stroked(_wave([(x, at + step / 2) for x, at in edge]), Pen(step * 1.35, tone))
        yield from _gap(edge, tones, dot * DOTS_A_LINE, chance, between_sections=first)
        y += step


def _bends(layout: Layout, chance: Random, reach: float) -> list[tuple[float, float]]:
    """Where the leaves bend, from the left edge to the right, and how far off the straight in mm."""
    x, end = layout.area.x, layout.area.right
    bends = [(x, chance.uniform(-reach, reach))]
    while x < end:
        x = min(end, x + chance.uniform(*WAVE_LENGTH))
        bends.append((x, chance.uniform(-reach, reach)))
    return bends


def _gap(
    edge: list[tuple[float, float]], tones: Tones, width: float, chance: Random, *, between_sections: bool
) -> Iterator[Stroked]:
    """The shadow between two leaves: it opens and closes, deepest in the middle; between sections it stays open."""
    x, end = edge[0][0], edge[-1][0]
    if between_sections:
        yield Stroked(_wave(edge), Pen(width, mix(tones.other, tones.shadow, chance.uniform(0.5, 0.9))))
        return
    while x < end:
        to = min(end, x + chance.uniform(*OPENING))
        if chance.random() < tones.drawn:
            depth = chance.uniform(0.25, 0.7)
            glint = tones.glint if chance.random() < 0.3 else None
            yield Stroked(_part(edge, x, to), Pen(width, glint or mix(tones.other, tones.shadow, depth * 0.5)))
            if not glint:
                fade = (to - x) * chance.uniform(0.15, 0.3)
                yield Stroked(_part(edge, x + fade, to - fade), Pen(width, mix(tones.other, tones.shadow, depth)))
        x = to


def _part(edge: list[tuple[float, float]], start: float, end: float) -> Path:
    """The line from one place on it to another."""
    inner = [(x, y) for x, y in edge if start < x < end]
    return _wave([(start, _height(edge, start)), *inner, (end, _height(edge, end))])


def _height(edge: list[tuple[float, float]], x: float) -> float:
    """How high the line lies at x, which is on it."""
    (left, low), (right, high) = next(pair for pair in pairwise(edge) if x <= pair[1][0] + 1e-9)
    share = (x - left) / (right - left)
    return low + (high - low) * share * share * (3 - 2 * share)


def _wave(points: list[tuple[float, float]]) -> Path:
    """A smooth line through points that lie level one after the other, level in each of them."""
    (x, y), *rest = points
    commands: list[tuple[str | float, ...]] = [("M", x, y)]
    for to_x, to_y in rest:
        third = (to_x - x) / 3
        commands.append(("C", x + third, y, to_x - third, to_y, to_x, to_y))
        x, y = to_x, to_y
    return Path(tuple(commands))
