"""Where everything stands on its space, as seen from the front; lengths in mm."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from ..ground.geometry import Point, Rect, Transform
from ..things.stance import Way
from ..things.standing import Standing
from .fit import SpaceFit
from .placing.places import Placed, placed
from .plan import ShelfPlan

__all__ = ["Stood", "arranged", "leaning", "row_of"]


class Stood(NamedTuple):
    """What stands where on its space, from its lower left corner; books of a stack lie, their heads at the left.

    `rect` is its place before it leans by so many degrees about its lower left corner, with its head to the left, or
    with less than 0 about its lower right one. `place` tells what stands together.
    """

    rect: Rect
    who: Standing
    lean: float = 0.0
    place: int = 0

    @property
    def lies(self) -> bool:
        """Whether it lies, by itself or in a stack."""
        return self.who.stack is not None or self.who.stance.way is Way.LYING

    @property
    def box(self) -> Rect:
        """The upright rectangle around it as it stands."""
        return leaning(self.rect, self.lean).apply_to(self.rect) if self.lean else self.rect


def leaning(rect: Rect, lean: float) -> Transform:
    """The turn that takes a rectangle to where it leans."""
    return Transform.turn(lean, Point(rect.x if lean > 0 else rect.right, rect.y))


def arranged(fit: SpaceFit, plan: ShelfPlan) -> Iterator[Stood]:
    """Everything from the left, each with its clearance; a stack where the first of its books is listed."""
    for number, one in enumerate(row_of(fit, plan)):
        if one.place.stack is None:
            yield Stood(Rect(one.x, 0, one.place.width, one.place.height), one.place.things[0], one.place.lean, number)
        else:
            yield from _stack(one, number)


def row_of(fit: SpaceFit, plan: ShelfPlan) -> tuple[Placed, ...]:
    """The places of a space from the left; what falls leans as far as there is room."""
    return placed(fit.places, plan.spec.spaces[fit.name].clearance, fit.width)


def _stack(stack: Placed, number: int) -> Iterator[Stood]:
    """The first on top."""
    y = stack.place.height
    for book in stack.place.things:
        y -= book.thickness
        yield Stood(Rect(stack.x, y, book.height, book.thickness), book, place=number)
