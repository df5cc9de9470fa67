"""Scripts: which stretches of a text are Latin, Greek, Hebrew, and in which order they stand on the line.

HarfBuzz shapes one script in one direction at a time. Directions follow the Unicode Bidirectional Algorithm
(UAX #9) as far as books need it: letters, numbers and what stands between them; no explicit controls.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import NamedTuple

from fontTools import unicodedata

__all__ = ["Stretch", "in_visual_order", "reads_from_right", "stretches"]

NEUTRAL, NUMBER = "", "0"
SHARED = ("Zyyy", "Zzzz")
"""Script values (UAX #24) of signs and spaces that any script may use."""

INHERITED = "Zinh"
"""Script value of marks that belong to the letter before."""

NUMBER_SIGNS = ".,:/"
"""Signs that belong to a number when they stand between its digits."""


class Stretch(NamedTuple):
    """Text from `start` to before `end`, in one script (ISO 15924); an odd level reads from the right."""

    start: int
    end: int
    script: str
    level: int


def stretches(text: str, right_to_left: bool = False) -> list[Stretch]:
    """The stretches of a text that is read from the left, or from the right, in the order of reading.

    >>> stretches("Ωδή 7 a")
    [Stretch(start=0, end=6, script='Grek', level=0), Stretch(start=6, end=7, script='Latn', level=0)]
    """
    if text.isascii() and not right_to_left:
        return [Stretch(0, len(text), "Latn", 0)] if text else []
    marks = _marks(text)
    if right_to_left or any(_is_from_right(mark) for mark in marks):
        levels = _levels(marks, right_to_left)
    else:
        marks = [NEUTRAL if mark == NUMBER else mark for mark in marks]
        levels = [0] * len(marks)
    found, start = [], 0
    for (script, level), group in groupby(zip(_joined(marks, levels), levels, strict=True)):
        end = start + sum(1 for _ in group)
        found.append(Stretch(start, end, script, level))
        start = end
    return found


def reads_from_right(text: str) -> bool:
    """Whether the first letter of a text is one that is read from right to left (UAX #9, rule P2).

    >>> reads_from_right("7 \u05d0 a"), reads_from_right("7 a \u05d0"), reads_from_right("7")
    (True, False, False)
    """
    if text.isascii():
        return False
    sides = (unicodedata.bidirectional(sign) for sign in text)
    return next((side for side in sides if side in {"L", "R", "AL"}), "L") != "L"


def in_visual_order(levels: Sequence[int]) -> list[int]:
    """The places of stretches from left to right, by their levels (UAX #9, rule L2).

    >>> in_visual_order([1, 2, 1])
    [2, 1, 0]
    """
    order = list(range(len(levels)))
    for level in range(max(levels, default=0), 0, -1):
        order = [
            place
            for high, group in groupby(order, key=lambda place: levels[place] >= level)
            for place in (reversed(list(group)) if high else list(group))
        ]
    return order


def _marks(text: str) -> list[str]:
    """For each character its script, or that it is a number's or nobody's in particular."""
    marks: list[str] = []
    for index, char in enumerate(text):
        script = unicodedata.script(char)
        around = text[index - 1 : index] + text[index + 1 : index + 2]
        if char.isdigit() or (char in NUMBER_SIGNS and len(around) == 2 and around.isdigit()):
            marks.append(NUMBER)
        elif script == INHERITED and marks:
            marks.append(marks[-1])
        else:
            marks.append(NEUTRAL if script in (*SHARED, INHERITED) else script)
    return marks


def _levels(marks: Sequence[str], right_to_left: bool) -> list[int]:
    """For each character its level: 1 runs from the right, 0 and 2 from the left (UAX #9, W7, N1 to I2)."""
    sides = _sides(marks, right_to_left)
    from_left = 2 if right_to_left else 0
    return [2 if mark == NUMBER and side else 1 if side else from_left for mark, side in zip(marks, sides, strict=True)]


def _sides(marks: Sequence[str], right_to_left: bool) -> list[bool]:
    """For each character whether it goes with what reads from the right.

    A number goes with the letters before it. What stands between goes with both sides if they agree, else
    with the text as a whole.
    """
    known: list[bool | None] = []
    side = right_to_left
    for mark in marks:
        if mark not in (NEUTRAL, NUMBER):
            side = _is_from_right(mark)
        known.append(None if mark == NEUTRAL else side)
    after: list[bool] = []
    following = right_to_left
    for own in reversed(known):
        following = following if own is None else own
        after.append(following)
    sides: list[bool] = []
    before = right_to_left
    for own, following in zip(known, reversed(after), strict=True):
        before = before if own is None else own
        sides.append(before if before == following else right_to_left)
    return sides


def _joined(marks: Sequence[str], levels: Sequence[int]) -> list[str]:
    """For each character a script: its own, or that of its neighbour of the same level."""
    joined: list[str] = []
    for place, (mark, level) in enumerate(zip(marks, levels, strict=True)):
        if mark == NEUTRAL and place and levels[place - 1] == level:
            joined.append(joined[-1])
        elif mark == NEUTRAL:
            fitting = (other for other, its in zip(marks, levels, strict=True) if other and its == level)
            joined.append(next(fitting, "Hebr" if level % 2 else "Latn"))
        else:
            joined.append(mark)
    return ["Latn" if script == NUMBER else script for script in joined]


def _is_from_right(mark: str) -> bool:
    direction: str = unicodedata.script_horizontal_direction(mark, "LTR") if mark else "LTR"
    return direction == "RTL"
