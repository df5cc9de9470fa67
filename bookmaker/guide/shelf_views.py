"""The rows of books as they will stand on their spaces, drawn to scale, seen from the front."""

from __future__ import annotations

from collections.abc import Iterator

from ..ground.art import Group
from ..ground.drawing import Art, Pen
from ..ground.geometry import Point, Rect, Size
from ..shelf.arrangement import Stood, arranged
from ..shelf.findings import how_many
from ..shelf.fit import SpaceFit, Verdict
from ..shelf.plan import ShelfPlan
from ..things.making import Figure
from ..things.views.flat_view import scale_for, scale_in_words
from ..things.views.ink import PAPER, box, chain, word
from ..things.wording import as_list, long
from ..typesetting.stand_ins import printable

__all__ = ["space_figure"]

HIGHEST = 75.0
"""How high a drawing may be, in mm."""

NUMBERS = 4.0
"""Room above the space for the numbers of the books, in mm."""

SPACE = Pen(0.5)

VERDICTS = {
    Verdict.FITS: "the row fits",
    Verdict.TIGHT: "the row is tight: measure the blocks before you print their covers",
    Verdict.OVER: "the row does not fit",
}


def space_figure(fit: SpaceFit, plan: ShelfPlan, room: float) -> Figure:
    """One space with its row: spines upright, stacks lying, slipcases as boxes."""
    space = plan.spec.spaces[fit.name]
    stood = list(arranged(fit, plan))
    needed = Size(
        max([space.width, *(one.rect.right for one in stood)]), max([space.height, *(one.rect.top for one in stood)])
    )
    scale = min(1.0, scale_for(needed, Size(room, HIGHEST)))
    art: list[Art] = [part for one in stood for part in _drawn(one, plan.number_of(one.who.thing), scale)]
    wide, high = space.width * scale, space.height * scale
    art.append(chain([Point(0, high), Point(0, 0), Point(wide, 0), Point(wide, high)], SPACE))
    size = Size(needed.width * scale, needed.height * scale + NUMBERS)
    what = how_many([plan.plans[id] for id in fit.things])
    left = f"{long(fit.room_left)} are left" if fit.room_left >= 0 else f"{long(-fit.room_left)} are wanting"
    caption = (
        f"{fit.name}, {scale_in_words(scale)}: {long(fit.width)} wide. {as_list(what or ['nothing'])} of "
        f"{long(fit.used)} in all, {long(fit.clearance)} of clearance: {left}; {VERDICTS[fit.verdict]}."
    )
    return Figure(Group(tuple(art)), size, caption)


def _drawn(one: Stood, counted: int | None, scale: float) -> Iterator[Art]:
    x, y, wide, high = (side * scale for side in one.rect)
    rect = Rect(x, y, wide, high)
    yield box(rect, PAPER)
    upright = high > wide
    across, along = (wide, high) if upright else (high, wide)
    number = "" if counted is None else str(counted)
    name = one.who.title if printable(one.who.title) else ""
    title = f"{number} {name}".rstrip() if one.lies else name
    yield word(title, rect.centre, min(2.6, across * 0.7), room=along * 0.9, upright=upright)
    if number and not one.lies:
        yield word(number, Point(rect.centre.x, rect.top + 1.6), 2.2, room=max(1.2, wide))
