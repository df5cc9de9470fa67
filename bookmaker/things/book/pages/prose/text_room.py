"""What there is to say of type too large for its page, and of margins that leave no room for it."""

from __future__ import annotations

import math
from collections.abc import Iterator

from .....ground.problems import Problem, Severity
from .....ground.units import print_mm, print_pt, to_pt
from .....typesetting.galleys.setting import FEWEST_LETTERS, NARROWEST, Setting
from .copyfit import Bounds, Copy

__all__ = ["few_letters", "no_room", "too_large"]

HARDLY_A_WORD = 8
"""A line of fewer letters breaks most words (common practice)."""


def too_large(copy: Copy, size: float) -> Problem:
    """A size of which not one line or not one letter finds room."""
    manuscript, frame = copy.manuscript, copy.frame.upright
    area = frame.type_area(1)
    page = f"a page of {print_mm(frame.width, 2)} × {print_mm(frame.height, 2)}"
    if frame.margins:
        page = f"the {print_mm(area.width, 2)} × {print_mm(area.height, 2)} that the margins leave of {page}"
    return Problem(
        f"{manuscript.name} does not fit in {print_pt(size)} type on {page}: "
        f"all of its {manuscript.words} words are lost",
        _smaller(copy),
        field=("size",),
    )


def _smaller(copy: Copy) -> str:
    """What to write for type that has room, and lines of enough letters."""
    margins = ["smaller margins"] if copy.frame.margins else []
    size = min(copy.largest_settable, copy.largest_filled)
    ways = [f"size: {_in_points(size)} or smaller"] if size >= copy.smallest_legible else []
    return f"write {', or '.join([*ways, *margins])}" if ways or margins else "choose a larger page"


def no_room(copy: Copy) -> Problem:
    """Margins that leave nothing between them."""
    frame = copy.frame.upright
    margins, area = frame.margins, frame.type_area(1)
    assert margins is not None  # margins by ninths always leave room
    told = []
    if area.width <= 0:
        told.append(_taken("inner", "outer", margins.inner, margins.outer, frame.width, "wide"))
    if area.height <= 0:
        told.append(_taken("top", "bottom", margins.top, margins.bottom, frame.height, "high"))
    return Problem(
        f"{' and '.join(told)}: no room is left for the {copy.manuscript.words} words of {copy.manuscript.name}",
        "write smaller margins, or leave them out",
        field=("margins",),
    )


def few_letters(copy: Copy, setting: Setting, bounds: Bounds | None) -> Iterator[Problem]:
    """Type so large that hardly a word goes into a line: mostly a decimal point was left out."""
    letters = setting.measure / setting.size * FEWEST_LETTERS / NARROWEST
    if letters >= HARDLY_A_WORD:
        return
    yield Problem(
        f"lines in {print_pt(setting.size)} type hold about {max(1, round(letters))} "
        f"{'letter' if letters < 1.5 else 'letters'}: most words of {copy.manuscript.name} are broken",
        _for_more_letters(copy, setting.size, bounds),
        Severity.WARNING,
        field=("size",),
    )


def _for_more_letters(copy: Copy, size: float, bounds: Bounds | None) -> str:
    """What to write for lines that hold enough letters, in type that can be printed."""
    if bounds is None and copy.smallest_legible <= size / 10 <= copy.largest_filled:
        return f"did you mean {print_pt(size / 10)}?"
    if copy.largest_filled < copy.smallest_legible:
        return "choose a wider page or narrower margins: no type that can be read has room for more"
    keys = "size" if bounds is None else "smallest" if size <= bounds.smallest else "largest"
    if bounds and copy.largest_filled < bounds.smallest < size:
        keys = "smallest: and largest"
    return f"write {keys}: {_in_points(copy.largest_filled)} or smaller"


def _taken(one: str, other: str, here: float, there: float, side: float, way: str) -> str:
    both = f"{one} {print_mm(here, 2)} and {other} {print_mm(there, 2)}"
    return f"{both} take {print_mm(here + there, 2)} of a page {print_mm(side, 2)} {way}"


def _in_points(mm: float) -> str:
    """A size rounded down to a tenth of a point."""
    return f"{math.floor(to_pt(mm) * 10 + 1e-6) / 10:g} pt"
