"""Flat parts drawn to scale, seen from the printed face, with their folds, cuts and what each panel is."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...ground.art import Filled, Group, Stroked
from ...ground.drawing import Art
from ...ground.geometry import Path, Point, Rect, Size, Transform
from ...ground.outlines import Outline
from ...sheets.flat import Face, Flat, MarkKind, Panel
from ..making import Figure
from ..wording import sides
from .ink import EDGE, FOLDED, HAIRLINE, PAPER, PERFORATED, SCORED, TRIMMED, line, word
from .signs import glued, ring

__all__ = ["flat_figure", "scale_for", "scale_in_words"]

SCALES = (20.0, 10.0, 5.0, 3.0, 2.0, 1.5, 1.0, 1 / 2, 1 / 3, 1 / 4, 1 / 5, 1 / 10, 1 / 20, 1 / 50, 1 / 100)
"""How large a drawing may be: twenty times to a hundredth of the real thing."""

SMALL_RING = 1.2
"""The radius of the rings around the numbers of folds, in mm."""

ENLARGED = 70.0
"""A part that is drawn larger than it is gets no wider than this, in mm."""


def scale_for(size: Size, room: Size) -> float:
    """The largest scale at which something has room."""
    fits = (scale for scale in SCALES if size.width * scale <= room.width and size.height * scale <= room.height)
    return next(fits, SCALES[-1])


def scale_in_words(scale: float) -> str:
    """A scale in words.

    >>> scale_in_words(2), scale_in_words(1), scale_in_words(1 / 3)
    ('twice its size', 'at its real size', 'at 1/3 of its size')
    """
    if scale > 1:
        return "twice its size" if scale == 2 else f"{scale:g} times its size"
    return "at its real size" if scale == 1 else f"at 1/{1 / scale:g} of its size"


def flat_figure(
    flat: Flat,
    room: float,
    what: str,
    *,
    high: float = 52.0,
    order: Sequence[tuple[int, Point]] = (),
    glue: Sequence[Outline] = (),
) -> Figure:
    """A flat as its front is seen, at most `high` mm on paper; `what` begins its caption.

    `order` tells in which order its folds are folded, each with a point of it; `glue` is where glue comes on the front.
    """
    scale = scale_for(flat.size, Size(room, high))
    if scale > 1:
        scale = max(1.0, scale_for(flat.size, Size(min(room, ENLARGED), high)))
    size = Size(flat.size.width * scale, flat.size.height * scale)
    caption = f"{what}, {sides(flat.size)} wide and high, {scale_in_words(scale)}, seen from the printed face."
    if order:
        caption += " The numbers are the order of folding."
    rings = (ring(str(number), Point(at.x * scale, at.y * scale), SMALL_RING) for number, at in order)
    to_page = Transform.stretch(scale, scale)
    pasted = (glued([to_page.apply(point) for point in outline]) for outline in glue)
    return Figure(Group((*_parts(flat, scale), *pasted, *rings)), size, caption)


def _parts(flat: Flat, scale: float) -> Iterator[Art]:
    to_page = Transform.stretch(scale, scale)
    move = to_page.apply
    shape = flat.shape().transformed(to_page)
    yield Filled(shape, PAPER)
    for cut in flat.cuts:
        yield line(move(cut.start), move(cut.end), EDGE)
    for trim in flat.trims:
        yield line(move(trim.start), move(trim.end), TRIMMED)
    yield Stroked(shape, EDGE)
    for fold in flat.folds:
        yield line(move(fold.start), move(fold.end), FOLDED[fold.kind])
    for pen, strokes in ((SCORED, flat.scores), (PERFORATED, flat.perforations)):
        yield from (line(move(start), move(end), pen) for start, end in strokes)
    for mark in flat.marks:
        area = to_page.apply_to(mark.rect)
        if mark.kind is MarkKind.HOLE:
            yield Stroked(Path.circle(area.centre, 0.5), HAIRLINE)
    for panel in flat.panels:
        if panel.face is Face.FRONT:
            yield from _named(panel, to_page.apply_to(panel.rect))


def _named(panel: Panel, area: Rect) -> Iterator[Art]:
    """The page, or what else the panel is, where it has room for that."""
    if min(area.size) < 1.2:
        return
    text = str(panel.page) if panel.page is not None else panel.role.value
    if panel.head_down:
        text += " (head down)"
    upright = len(text) > 4 and area.height > area.width
    across, along = area.size.turned if upright else area.size
    yield word(text, area.centre, min(2.4, along * 0.8), room=across * 0.9, upright=upright)
