"""Where everything stands on its space, as seen from the front; lengths in mm."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..ground.geometry import Rect
from ..things.standing import Standing
from .fit import SpaceFit
from .plan import ShelfPlan

__all__ = ["Stood", "arranged"]


class Stood(NamedTuple):
    """What stands where on its space, from its lower left corner; books of a stack lie, their heads at the left."""

    rect: Rect
    who: Standing

    @property
    def lies(self) -> bool:
        """Whether it lies in a stack."""
        return self.who.stack is not None


def arranged(fit: SpaceFit, plan: ShelfPlan) -> Iterator[Stood]:
    """Everything from the left, each with its clearance; a stack where the first of its books is listed."""
    standing = [found for id in fit.things if (found := plan.plans[id].standing)]
    clearance = plan.spec.spaces[fit.name].clearance
    done: set[str] = set()
    x = 0.0
    for one in standing:
        if one.stack is None:
            yield Stood(Rect(x, 0, one.thickness, one.height), one)
            x += one.thickness + clearance
        elif one.stack not in done:
            done.add(one.stack)
            lying = [other for other in standing if other.stack == one.stack]
            yield from _stack(lying, x)
            x += max(book.height for book in lying) + clearance


def _stack(books: Sequence[Standing], x: float) -> Iterator[Stood]:
    """The first on top."""
    y = sum(book.thickness for book in books)
    for book in books:
        y -= book.thickness
        yield Stood(Rect(x, y, book.height, book.thickness), book)
