"""The joint of a case as makers write it: so many boards, or a length."""

from __future__ import annotations

from typing import Annotated

from pydantic import BeforeValidator, WithJsonSchema

from ...ground.quantities import Kind, NotAMeasure, read_quantity
from ...ground.told import in_units
from ...ground.units import parse_length, print_mm
from .entry import Entry
from .words import read_text, refuse

__all__ = ["Joint", "JointWidth"]

BOARDS = Kind("a number of boards", {"boards": "board boards"}, "1.5 boards")

MOST_BOARDS, WIDEST = 20.0, 50.0
"""More than this, in boards or mm, is a slip."""


class Joint(Entry):
    """The gap between board and stiffener: so many boards thick, or a length in mm."""

    boards: float = 0.0
    length: float = 0.0

    def of(self, board: float) -> float:
        """The joint in mm beside a board `board` mm thick.

        >>> Joint(boards=1.5).of(1.0), Joint(length=2.0).of(1.0)
        (1.5, 2.0)
        """
        return self.boards * board + self.length


def _read_joint(value: object) -> Joint:
    if isinstance(value, Joint):
        return value
    text = read_text(value)
    try:
        if "board" in text.casefold():
            joint = Joint(boards=float(read_quantity(text, BOARDS)[0]))
        else:
            joint = Joint(length=parse_length(text))
    except NotAMeasure as problem:
        raise refuse(
            problem.message,
            f"write so many boards, such as 1.5 boards, or a length such as {in_units('2 mm', '1/16 in')}",
        ) from None
    if not (0 < joint.boards <= MOST_BOARDS or 0 < joint.length <= WIDEST):
        limit = f"up to {MOST_BOARDS:g} boards or {print_mm(WIDEST)}"
        raise refuse(f"{text} is out of range", f"write a joint of {limit}", limit)
    return joint


JointWidth = Annotated[
    Joint, BeforeValidator(_read_joint), WithJsonSchema({"type": "string", "examples": ["1.5 boards"]})
]
"""A joint: a number of boards or a length."""
