"""A pair of hands: folds, cuts and reads flats by what is drawn on them, knowing nothing of how they were planned.

A flat is taken apart along its folds into cells. The hands fold it in half again and again, each time along a
line in the middle where all layers are creased the same way, until one cell's size is left. Then they hold the
folded sheet upright with the spine on the side where such a book has it, and leaf through.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import pytest

from bookmaker.ground.geometry import Point, Rect
from bookmaker.sheets.flat import Face, Flat, Fold, FoldKind, Panel

__all__ = [
    "Page",
    "Pile",
    "alone",
    "cells_of",
    "cut",
    "fold_up",
    "gathered",
    "leaf_through",
    "nested",
    "open_leaf",
    "piled",
]

NEAR = 1e-6


@dataclass(frozen=True)
class Page:
    """A printed face as the reader meets it: what stands there, if anything, and whether its head is up.

    `panel` is where it came from, `spine` and `fore_edge` where the edges of its cell are on the flat,
    `right_hand` whether it lies on the right of the open book.
    """

    panel: Panel | None
    upright: bool
    right_hand: bool
    spine: float
    fore_edge: float
    cell: Rect


@dataclass(frozen=True)
class Layer:
    """A cell of a flat somewhere in the folded sheet: x' = sx·x + ox, y' = sy·y + oy; `face_up` is what lies up."""

    cell: Rect
    panels: tuple[Panel, ...]
    sx: int = 1
    ox: float = 0.0
    sy: int = 1
    oy: float = 0.0
    face_up: Face = Face.FRONT

    @property
    def place(self) -> Rect:
        """Where it lies now."""
        xs = sorted(self.sx * x + self.ox for x in (self.cell.x, self.cell.right))
        ys = sorted(self.sy * y + self.oy for y in (self.cell.y, self.cell.top))
        return Rect(xs[0], ys[0], xs[1] - xs[0], ys[1] - ys[0])

    def turned_over(self, line: float, upright: bool) -> Layer:
        """Laid over along a line."""
        down = Face.REVERSE if self.face_up is Face.FRONT else Face.FRONT
        if upright:
            return replace(self, sx=-self.sx, ox=2 * line - self.ox, face_up=down)
        return replace(self, sy=-self.sy, oy=2 * line - self.oy, face_up=down)

    def panel_on(self, face: Face) -> Panel | None:
        """What is printed on one of its faces."""
        found = [panel for panel in self.panels if panel.face is face]
        assert len(found) <= 1
        return found[0] if found else None


Pile = tuple[Layer, ...]
"""Layers from the lowest to the topmost."""


def cells_of(flat: Flat, xs: Sequence[float], ys: Sequence[float]) -> Pile:
    """The flat taken apart along upright and level lines; every panel lies in one cell, wholly."""
    across = sorted({0.0, flat.size.width, *(round(x, 9) for x in xs)})
    up = sorted({0.0, flat.size.height, *(round(y, 9) for y in ys)})
    cells = [Rect(x, y, right - x, top - y) for y, top in pairwise(up) for x, right in pairwise(across)]
    layers = tuple(Layer(cell, tuple(p for p in flat.panels if cell.contains(p.rect, NEAR))) for cell in cells)
    assert sum(len(layer.panels) for layer in layers) == len(flat.panels)
    return layers


def fold_up(flat: Flat) -> tuple[Pile, float]:
    """Fold a flat up along all its folds: the layers from the lowest up, and x of the spine, the last fold."""
    upright = [fold for fold in flat.folds if fold.start.x == fold.end.x]
    level = [fold for fold in flat.folds if fold.start.y == fold.end.y]
    assert len(upright) + len(level) == len(flat.folds)
    pile: Sequence[Pile] = [
        (layer,) for layer in cells_of(flat, [f.start.x for f in upright], [f.start.y for f in level])
    ]
    spine = 0.0
    while len(pile) > 1:
        folded = next((done for way in (True, False) if (done := _in_half(pile, flat.folds, way))), None)
        assert folded, "no line in the middle is creased one way in all layers"
        pile, line, was_upright = folded
        spine = line if was_upright else spine
    return pile[0], spine


def _in_half(stacks: Sequence[Pile], folds: Sequence[Fold], upright: bool) -> tuple[list[Pile], float, bool] | None:
    """Fold all stacks along their middle line, if all layers there are creased alike."""
    low = min(_low(stack[0].place, upright) for stack in stacks)
    high = max(_high(stack[0].place, upright) for stack in stacks)
    line = (low + high) / 2
    kept = [stack for stack in stacks if _high(stack[0].place, upright) <= line + NEAR]
    moved = [stack for stack in stacks if _low(stack[0].place, upright) >= line - NEAR]
    if not kept or len(kept) != len(moved) or len(kept) + len(moved) != len(stacks):
        return None
    kinds = {
        kind for stack in kept if abs(_high(stack[0].place, upright) - line) < NEAR
        for layer in stack for kind in [_crease(layer, line, upright, folds)]
    }  # fmt: skip
    if len(kinds) != 1 or None in kinds:
        return None
    (kind,) = kinds
    done = []
    for stack in kept:
        (over,) = [
            turned
            for other in moved
            for turned in [tuple(layer.turned_over(line, upright) for layer in reversed(other))]
            if _same(turned[0].place, stack[0].place)
        ]
        done.append((*stack, *over) if kind is FoldKind.VALLEY else (*over, *stack))
    return done, line, upright


def _low(place: Rect, upright: bool) -> float:
    return place.x if upright else place.y


def _high(place: Rect, upright: bool) -> float:
    return place.right if upright else place.top


def _same(one: Rect, other: Rect) -> bool:
    return all(abs(a - b) < NEAR for a, b in zip(one, other, strict=True))


def _crease(layer: Layer, line: float, upright: bool, folds: Sequence[Fold]) -> FoldKind | None:
    """How a layer is creased along a line, as seen from above; None if it is not creased there."""
    if upright:
        at = (line - layer.ox) / layer.sx
        mine = [f for f in folds if f.start.x == f.end.x and abs(f.start.x - at) < NEAR]
        spans = [(f, f.start.y, f.end.y, layer.cell.y, layer.cell.top) for f in mine]
    else:
        at = (line - layer.oy) / layer.sy
        mine = [f for f in folds if f.start.y == f.end.y and abs(f.start.y - at) < NEAR]
        spans = [(f, f.start.x, f.end.x, layer.cell.x, layer.cell.right) for f in mine]
    kinds = {f.kind for f, one, other, a, b in spans if min(one, other) < a + NEAR and max(one, other) > b - NEAR}
    assert len(kinds) <= 1
    kind = next(iter(kinds), None)
    if kind is None or layer.face_up is Face.FRONT:
        return kind
    return FoldKind.MOUNTAIN if kind is FoldKind.VALLEY else FoldKind.VALLEY


def leaf_through(pile: Pile, spine: float, right_to_left: bool) -> list[Page]:
    """Every face of a folded sheet from its front to its back; unprinted backs must meet and are left out."""
    spine_on_right = _high(pile[0].place, True) <= spine + NEAR
    assert spine_on_right or _low(pile[0].place, True) >= spine - NEAR
    # as it lies, the reader sees the topmost layer; turned over from left to right, the lowest one
    from_above = spine_on_right is right_to_left
    faces: list[Page] = []
    for layer in reversed(pile) if from_above else pile:
        up, down = layer.face_up, Face.REVERSE if layer.face_up is Face.FRONT else Face.FRONT
        for turn, face in enumerate((up, down) if from_above else (down, up)):
            faces.append(_page(layer, face, spine, (turn == 0) is not right_to_left))
    return list(_without_glued(faces, {panel.face for layer in pile for panel in layer.panels}))


def _page(layer: Layer, face: Face, spine: float, right_hand: bool) -> Page:
    panel = layer.panel_on(face)
    cell = layer.cell
    at_left = abs(layer.sx * cell.x + layer.ox - spine) < NEAR
    upright = panel is not None and (layer.sy == 1) is not panel.head_down
    edges = (cell.x, cell.right) if at_left else (cell.right, cell.x)
    return Page(panel, upright, right_hand, *edges, cell)


def _without_glued(faces: list[Page], printed: set[Face]) -> Iterator[Page]:
    """The printed faces; where only one side of the paper is printed, backs come in pairs that are glued."""
    if len(printed) > 1:
        yield from faces
        return
    glued = [number for number, page in enumerate(faces) if page.panel is None]
    pairs = list(zip(glued[::2], glued[1::2], strict=True))
    assert all(other == one + 1 for one, other in pairs), "backs that are glued do not meet"
    yield from (page for page in faces if page.panel is not None)


def nested(sheets: Sequence[list[Page]]) -> list[Page]:
    """Folded sheets laid into one another, the first outside."""
    pages: list[Page] = []
    for sheet in reversed(sheets):
        half = len(sheet) // 2
        pages = [*sheet[:half], *pages, *sheet[half:]]
    return pages


def gathered(sections: Sequence[list[Page]]) -> list[Page]:
    """Sections laid on one another."""
    return [page for section in sections for page in section]


def cut(flat: Flat) -> Pile:
    """The flat cut along its lines, which run from edge to edge."""
    width, height = flat.size
    for start, end in flat.cuts:
        assert {start.x, end.x} == {0, width} or {start.y, end.y} == {0, height}
    return cells_of(
        flat,
        [start.x for start, end in flat.cuts if start.x == end.x],
        [start.y for start, end in flat.cuts if start.y == end.y],
    )


def piled(flats: Sequence[Flat], right_to_left: bool) -> list[tuple[Flat, Rect]]:
    """All cells of all flats in the order of the book: pile by pile in reading order, each from its top down."""
    assert len({tuple(fold.kind for fold in flat.folds) for flat in flats}) == 1
    assert all(_lines(flat) == pytest.approx(_lines(flats[0]), abs=NEAR) for flat in flats)  # so they cut as one
    cells = [[layer.cell for layer in cut(flat)] for flat in flats]
    order = sorted(range(len(cells[0])), key=lambda n: (-cells[0][n].y, cells[0][n].x * (-1 if right_to_left else 1)))
    return [(flat, cells[0][place]) for place in order for flat in flats]


def _lines(flat: Flat) -> list[float]:
    """All that is cut and folded of a flat, as numbers."""
    ends = [end for cut in flat.cuts for end in cut] + [end for fold in flat.folds for end in (fold.start, fold.end)]
    return [number for point in (*flat.outline, *ends) for number in point]


def alone(flat: Flat, cell: Rect) -> Flat:
    """One cell of a flat as a flat of its own."""
    folds = [fold for fold in flat.folds if cell.x < fold.start.x < cell.right]
    return Flat(
        flat.kind,
        flat.name,
        flat.stock,
        cell.moved(-cell.x, -cell.y).corners,
        tuple(Fold(f.kind, Point(f.start.x - cell.x, 0), Point(f.end.x - cell.x, cell.height)) for f in folds),
        tuple(
            type(panel)(panel.role, panel.rect.moved(-cell.x, -cell.y), panel.page, panel.face)
            for panel in flat.panels
            if cell.contains(panel.rect)
        ),
    )


def open_leaf(flat: Flat, right_to_left: bool) -> list[Page]:
    """A single leaf: as it lies, or folded at its fore-edge, so that the spine is at the free edges."""
    if not flat.folds:
        return leaf_through(cells_of(flat, [], []), flat.size.width if right_to_left else 0.0, right_to_left)
    pile, fore_edge = fold_up(flat)
    place = pile[0].place
    return leaf_through(pile, place.x if abs(place.right - fore_edge) < 1e-6 else place.right, right_to_left)
