"""The loosest line of a text: the measure of how well its paragraphs could be broken."""

from __future__ import annotations

from dataclasses import dataclass

from .....typesetting.galleys.made_pages import Slot
from .....typesetting.lines.set_lines import SetLine
from .....typesetting.manuscripts.passage import Role
from .copyfit import Copy, Proof

__all__ = ["Loosest", "loosest_line"]


@dataclass(frozen=True, slots=True)
class Loosest:
    """The line of prose with the widest spaces, `times` as wide as usual: its page in the book, and its words."""

    times: float
    page: int
    words: str


def loosest_line(copy: Copy, proof: Proof) -> Loosest | None:
    """The line whose spaces are the widest; None if there is no prose."""
    worst: tuple[float, int, str] | None = None
    for number, page in enumerate(proof.pages, start=1):
        for slot in page.slots:
            for line in slot.matter.lines[slot.start : slot.end]:
                if (worst is None or line.gap > worst[0]) and slot.matter.role is Role.BODY:
                    worst = (line.gap, copy.frame.folio(number), _with_initials(slot, line))
    if worst is None:
        return None
    gap, page_number, words = worst
    return Loosest(1 + gap / (copy.fount_at(proof.setting.size).space.width * proof.setting.size), page_number, words)


def _with_initials(slot: Slot, line: SetLine) -> str:
    """The words of a line of prose, with the drop capital that they belong to."""
    first = slot.start == 0 and line is slot.matter.lines[0]
    return "".join(initial.words for initial in slot.matter.initials if first) + line.words
