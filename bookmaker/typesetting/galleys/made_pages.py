"""Made-up pages: which lines of which matter stand on each."""

from __future__ import annotations

from typing import NamedTuple

from .matter import Matter

__all__ = ["BLANK", "MadePage", "Slot"]


class Slot(NamedTuple):
    """Lines `start` to before `end` of some matter, the first of them on a `row` of the page, from 0.

    Matter that is set apart from the text may stand half a row lower.
    """

    matter: Matter
    start: int
    end: int
    row: float


class MadePage(NamedTuple):
    """What stands on a page. `chapter` is the heading it belongs to, `opens` says that one begins on it.

    `notes` stand at its foot, between the rows of its grid; where there is nothing else, they are its slots.
    """

    slots: tuple[Slot, ...]
    chapter: str = ""
    opens: bool = False
    notes: tuple[Slot, ...] = ()

    @property
    def done(self) -> int:
        """How many words of the text are wholly set by the end of this page; -1 if it holds none."""
        # a figure may stand after text that it goes before
        reached = (slot.matter.reached + slot.matter.lines[slot.end - 1].done for slot in self.slots if slot.end)
        return max(reached, default=-1)


BLANK = MadePage(())
"""A page with nothing on it, between a chapter and the next one's right-hand page."""
