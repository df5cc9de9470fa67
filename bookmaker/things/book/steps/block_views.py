"""Blocks seen from the tail, spread so that every fold shows."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from ....ground.art import Group
from ....ground.drawing import Art
from ....ground.geometry import Size
from ....sheets.flat import Role
from ...making import Figure
from ...views.side_view import GLUE, SHEETS, SideView
from .job import BookJob

__all__ = ["accordion_view", "sections_view"]

THICKEST = 14.0
"""How thick a section is drawn at most, in mm."""

OPEN, GLUED = 3.4, 1.3
"""Between two panels whose faces meet, and between two whose backs are glued together, as drawn, in mm."""

MOST_SHOWN = 15
"""Panels, or leaves, that are drawn one by one; of longer blocks the middle is left out."""


def accordion_view(job: BookJob) -> Figure:
    """All panels of an accordion as it is folded, the front on top; where strips meet, their ends stay apart."""
    view = job.side_view
    panels = [(number, panel) for number, strip in enumerate(job.block.flats, 1) for panel in strip.panels]
    leaves = [(strip, panel) for strip, panel in panels if panel.role is not Role.TAB]
    shown = _ends_of(len(leaves))
    spine, fore_edge = 14.0, view.width - 22.0
    heights = _heights(shown)
    high = heights[shown[0]] + 3.5
    art: list[Art] = []
    for panel, after in zip(shown, [*shown[1:], None], strict=True):
        y = heights[panel]
        art.append(view.line((spine, y), (fore_edge, y), SHEETS))
        strip, what = leaves[panel]
        upward = panel % 2 == 1
        text = str(what.page) if what.page is not None else f"{what.role.value}, blank"
        across, above = (0.3, 1.4) if upward else (0.7, -1.4)
        art.append(view.word(text, spine + (fore_edge - spine) * across, y + above))
        if after is None:
            continue
        below = heights[after]
        if after != panel + 1:
            art.append(view.word("· · ·", (spine + fore_edge) / 2, (y + below) / 2, 3.0))
            continue
        begun = leaves[after][0] if leaves[after][0] != strip else None
        art += _fold(view, panel, (y, below), (spine, fore_edge), begun)
    art.append(view.word("spine", 4.5, high / 2))
    art.append(view.word("fore-edge", view.width - 8.0, 1.2))
    caption = (
        "Side view from the tail, front cover on top, spread open: v is a valley, m a mountain of the printed face; "
        "grey is glue. The first and the last panel are pasted into the cover."
    )
    return Figure(Group(tuple(art)), Size(view.width, high), caption)


def _ends_of(count: int) -> list[int]:
    """Which of so many panels are drawn: all, or the first and the last ones."""
    if count <= MOST_SHOWN + 3:
        return list(range(count))
    return [*range(10), *range(count - 4, count)]


def _heights(shown: Sequence[int]) -> dict[int, float]:
    """How high each panel is drawn, the first on top: valleys gape, backs lie close."""
    steps = [GLUED if after == panel + 1 and panel % 2 else OPEN for panel, after in pairwise(shown)]
    heights, y = {}, sum(steps) + 2.0
    for panel, step in zip(shown, [*steps, 0.0], strict=True):
        heights[panel] = y
        y -= step
    return heights


def _fold(
    view: SideView, panel: int, ys: tuple[float, float], xs: tuple[float, float], begun: int | None
) -> Iterable[Art]:
    """The fold after a panel, or the joint where a strip is begun; backs that are glued together are filled grey."""
    (upper, lower), (spine, fore_edge) = ys, xs
    valley = panel % 2 == 0
    x, outward = (spine, -1.0) if valley else (fore_edge, 1.0)
    if not valley:
        yield view.filled([(spine, upper), (fore_edge, upper), (fore_edge, lower), (spine, lower)], GLUE)
    middle = (upper + lower) / 2
    if begun:
        yield view.word(f"strip {begun}", x + outward * 6.0, middle, 2.0)
        if valley:
            yield view.chain([(x, upper), (x + outward * 1.2, middle), (x, lower), (x + 5, lower - 0.5)], SHEETS)
    else:
        yield view.chain([(x, upper), (x + outward * 1.2, middle), (x, lower)], SHEETS)
        yield view.word("v" if valley else "m", x + outward * 2.6, middle, 2.0)


def sections_view(job: BookJob, nests: Sequence[Sequence[str]], fastened: str) -> Figure:
    """Sections as they are gathered, each of sheets laid into one another.

    `nests` gives for each section its folded pairs of leaves by name, the outermost first; `fastened` ends the caption.
    """
    view = job.side_view
    shown = list(range(len(nests))) if len(nests) <= 4 else [0, 1, len(nests) - 1]
    spine, fore_edge = 18.0, view.width - 26.0
    art: list[Art] = []
    y = 3.0
    for section in reversed(shown):
        sheets = nests[section]
        step = min(1.1, THICKEST / (2 * len(sheets)))
        high = step * (2 * len(sheets) - 1) + 2.0
        art.append(view.word(f"section {section + 1}" if len(nests) > 1 else "section", 8.0, y + high / 2, 2.0))
        for depth, name in enumerate(sheets):
            low, top = y + depth * step, y + high - depth * step
            x = spine + depth * step
            middle = (low + top) / 2
            folded = [(fore_edge, top), (x + 0.8, top), (x, middle), (x + 0.8, low), (fore_edge, low)]
            art.append(view.chain(folded, SHEETS))
            if depth in (0, len(sheets) - 1):
                beside = middle if depth else top - 0.6
                art.append(view.word(name, fore_edge + 13.0, beside, 1.9, 24.0))
        y += high + 2.2
        if section == shown[-1] and len(shown) < len(nests):
            art.append(view.word("· · ·", (spine + fore_edge) / 2, y, 3.0))
            y += 3.0
    art.append(view.word("spine", 8.0, 1.0, 2.0))
    caption = f"Side view from the tail, front on top: each line is a leaf, all folds lie at the spine, {fastened}."
    return Figure(Group(tuple(art)), Size(view.width, y), caption)
