"""A folded sheet as a net of panels and strips, as boxes have them: so it is folded in space, and drawn step by step.

The net has of every panel what lies flat in the packet. Where a layer has paper to spare at a fold, its strip is as
high as it climbs, and the pucker is left out: the panels beyond it are moved up by as much.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from ...ground.geometry import Axis, Point, Rect, Size
from ...sheets.flat import FoldKind, Role
from ..box.folding import folded
from ..box.net import Hinge, Net, NetPanel, Shown, rect_panel
from .folding import Cell, FoldedSheet

__all__ = ["net_of", "packet_size", "panel_name"]

LAST = 99
"""After all steps."""


def panel_name(cell: Cell) -> str:
    """What a panel of the net is called."""
    return f"panel {cell.row + 1}.{cell.column + 1}"


def net_of(sheet: FoldedSheet, name: str) -> Net:
    """The net of a sheet: every panel hangs on one nearer to the panel that stays.

    The first folds are hinges in every panel of the second ones; these are hinges in the layer that stays alone, and
    the others follow.
    """
    return Net(name, tuple(_panels(sheet)), shown=Shown.PRINT_UP)


def packet_size(sheet: FoldedSheet) -> Size:
    """Width and height of the folded sheet in mm, from fold to fold."""
    net = net_of(sheet, "sheet")
    poses = folded(net, LAST)
    places = [poses[panel.name].of(corner) for panel in net.panels for corner in panel.outline]
    box = Rect.around(Point(place.x, place.y) for place in places)
    # half the paper stands out at every end that is a fold
    aside, above = (min(len(chain.steps), 2) * sheet.caliper / 2 for chain in (sheet.columns, sheet.rows))
    return Size(box.width + aside, box.height + above)


class _Link(NamedTuple):
    """A panel that hangs on another, the step in which it is bent, the levels that it climbs."""

    cell: Cell
    step: int
    climb: int


def _panels(sheet: FoldedSheet) -> Iterator[NetPanel]:
    waiting, done = [sheet.root], set[Cell]()
    yield rect_panel(panel_name(sheet.root), Role.FRONT, _lying(sheet, sheet.root))
    while waiting:
        cell = waiting.pop(0)
        done.add(cell)
        for link in _hung_on(sheet, cell):
            if link.cell not in done:
                yield from _hinged(sheet, cell, link)
                waiting.append(link.cell)


def _hung_on(sheet: FoldedSheet, cell: Cell) -> Iterator[_Link]:
    """The panels beside one that may hang on it."""
    one, two = sheet.one, sheet.two
    first, second = sheet.places(cell)
    for near in (first - 1, first + 1):
        if 0 <= near < len(one.levels):
            fold = min(first, near)
            yield _Link(sheet.cell(near, second), one.steps[fold], one.climbs[fold])
    if first == one.root:
        for near in (second - 1, second + 1):
            if 0 <= near < len(two.levels):
                fold = min(second, near)
                step = max(one.steps, default=0) + two.steps[fold]
                yield _Link(sheet.cell(first, near), step, sheet.climb(cell, fold))


def _hinged(sheet: FoldedSheet, cell: Cell, link: _Link) -> Iterator[NetPanel]:
    """A panel that hangs on another, and the strip between them."""
    here, there = _lying(sheet, cell), _lying(sheet, link.cell)
    angle = 90.0 if sheet.bend(cell, link.cell) is FoldKind.MOUNTAIN else -90.0
    near, far, strip = _between(here, there, beside=cell.row == link.cell.row)
    name = f"fold {panel_name(cell)} {panel_name(link.cell)}"
    yield rect_panel(name, Role.EDGE, strip, Hinge(panel_name(cell), *near, link.step, angle))
    yield rect_panel(panel_name(link.cell), Role.FRONT, there, Hinge(name, *far, link.step, angle))


def _lying(sheet: FoldedSheet, cell: Cell) -> Rect:
    """What of a panel lies flat in the packet, as the net has it."""
    rect, (_, second) = sheet.rect(cell), sheet.places(cell)
    before = sheet.inside_by(cell, second - 1) if second else 0.0
    after = sheet.inside_by(cell, second) if second < len(sheet.two.steps) else 0.0
    moved = _moved_up(sheet, second)
    if sheet.first is Axis.Y:
        return rect.grown(-before, 0, -after, 0).moved(moved, 0)
    return rect.grown(0, -after, 0, -before).moved(0, -moved)


def _moved_up(sheet: FoldedSheet, second: int) -> float:
    """How far the net has a panel nearer to the one that stays than the sheet has it, along the second folds."""
    root = sheet.two.root
    way = 1 if second < root else -1
    folds = range(second, root) if second < root else range(root, second)
    # the strip of the layer that stays: the sheet has so much more there than that layer climbs and goes inwards
    return way * sum(
        2 * sheet.inside_by(sheet.root, fold) + (sheet.highest[fold] - sheet.climb(sheet.root, fold)) * sheet.caliper
        for fold in folds
    )


Edge = tuple[Point, Point]


def _between(here: Rect, there: Rect, *, beside: bool) -> tuple[Edge, Edge, Rect]:
    """The facing edges of two panels, that of the first one first, and the strip between them."""
    if beside:
        left, right = (here, there) if here.x < there.x else (there, here)
        strip = Rect(left.right, here.y, right.x - left.right, here.height)
        edges = [(Point(x, here.y), Point(x, here.top)) for x in (strip.x, strip.right)]
    else:
        left, right = (here, there) if here.y < there.y else (there, here)
        strip = Rect(here.x, left.top, here.width, right.y - left.top)
        edges = [(Point(here.x, y), Point(here.right, y)) for y in (strip.y, strip.top)]
    near, far = edges if here is left else edges[::-1]
    return near, far, strip
