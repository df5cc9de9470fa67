"""The rows of books as they will stand on their spaces, drawn to scale, seen from the front."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from ..ground.art import Group
from ..ground.drawing import Art, Pen
from ..ground.geometry import Point, Rect, Size
from ..shelf.arrangement import Stood, arranged, leaning
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
        max([space.width, *(one.box.right for one in stood)]), max([space.height, *(one.box.top for one in stood)])
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
    caption += "".join(f" {said}." for said in (*_piled(stood, plan), *_otherwise(fit, plan)))
    return Figure(Group(tuple(art)), size, caption)


def _piled(stood: Sequence[Stood], plan: ShelfPlan) -> Iterator[str]:
    """What lies in each stack, in its order."""
    names = dict.fromkeys(one.who.stack for one in stood if one.who.stack is not None)
    for name in names:
        books = [plan.printed(one.who.thing) for one in stood if one.who.stack == name]
        stack = f"The stack {name}" if printable(name) else "The stack"
        yield f"{stack} has from the top {as_list(books)}"


def _otherwise(fit: SpaceFit, plan: ShelfPlan) -> Iterator[str]:
    """What does not stand as others do, and how it stands."""
    for place in fit.places:
        (one, *_), lean = place.things, place.lean
        if said := replace(one.stance, lean=lean).in_words():
            yield f"{plan.printed(one.thing)} {said}"


def _drawn(one: Stood, counted: int | None, scale: float) -> Iterator[Art]:
    art = Group(tuple(_upright(one, counted, scale)))
    rect = Rect(*(side * scale for side in one.rect))
    yield replace(art, transform=leaning(rect, one.lean)) if one.lean else art


def _upright(one: Stood, counted: int | None, scale: float) -> Iterator[Art]:
    """A thing before it leans."""
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
