"""A slipcase coming together, drawn like a box: its net after each step of the work."""

from __future__ import annotations

from collections.abc import Iterator

from ...ground.geometry import Point, Rect
from ...ground.outlines import Outline
from ...sheets.flat import Flat, Role
from ..box.net import Hinge, Net, NetPanel, rect_panel
from ..box.views import folding_figure
from ..making import Figure
from .net import TAB_TAPER

__all__ = ["coming_together", "net_to_fold", "tab_outlines"]


def coming_together(flat: Flat, room: float) -> Figure:
    """Sides up, tabs in, top and bottom over the tabs; the box lies on its back, its opening up."""
    return folding_figure(net_to_fold(flat), room)


def net_to_fold(flat: Flat) -> Net:
    """The net of a slipcase as one of panels that hang on its back."""
    return Net("slipcase", tuple(_panels(flat)))


def tab_outlines(flat: Flat) -> list[Outline]:
    """The tabs of a slipcase as they are cut, narrower at their tips."""
    return [panel.outline for panel in net_to_fold(flat).panels if panel.role is Role.TAB]


def _panels(flat: Flat) -> Iterator[NetPanel]:
    rects: dict[Role, Rect] = {panel.role: panel.rect for panel in flat.panels if panel.role is not Role.TAB}
    back = rects[Role.BACK]
    yield rect_panel("back", Role.BACK, back)
    for role, x in ((Role.LEFT, back.right), (Role.RIGHT, back.x)):
        side = rects[role]
        crease = Hinge("back", Point(x, side.y), Point(x, side.top), 1)
        yield rect_panel(f"{role} side", role, side, crease)
    for number, tab in enumerate(panel.rect for panel in flat.panels if panel.role is Role.TAB):
        yield _tab(f"tab {number + 1}", tab, rects[Role.LEFT], rects[Role.RIGHT])
    for step, role, y in ((3, Role.TOP, back.top), (4, Role.BOTTOM, back.y)):
        yield rect_panel(str(role), role, rects[role], Hinge("back", Point(back.x, y), Point(back.right, y), step))


def _tab(name: str, tab: Rect, left: Rect, right: Rect) -> NetPanel:
    """A tab on the side that it lies above or below, counter-clockwise from its fold."""
    role, side = (Role.LEFT, left) if tab.x >= left.x else (Role.RIGHT, right)
    upper = tab.y >= side.top
    y, tip, taper = (tab.y, tab.top, TAB_TAPER * tab.height) if upper else (tab.top, tab.y, -TAB_TAPER * tab.height)
    start, end = (tab.x, tab.right) if upper else (tab.right, tab.x)
    outline = (Point(start, y), Point(end, y), Point(end - taper, tip), Point(start + taper, tip))
    return NetPanel(name, Role.TAB, outline, Hinge(f"{role} side", Point(tab.x, y), Point(tab.right, y), 2))
