"""Set matter: what a galley consists of, before it is made up into pages."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..lines.set_lines import SetLine
from ..manuscripts.passage import AFLOAT, Role
from .remarks import UNREMARKABLE, Remarks, together

__all__ = ["Initial", "Matter", "with_runs"]


class Initial(NamedTuple):
    """A drop capital, or the mark of an item: its x and size in mm, how far it stands below the first baseline."""

    words: str
    x: float
    size: float
    drop: float = 0.0


class Matter(NamedTuple):
    """Lines that belong together, `rows` deep on the grid; the lines of its text are `step` mm apart.

    `drop` is how far the first of them stands below the first row. `before` and `after` are blank rows, which
    vanish at the head of a page. The first `together` lines are not parted, nor is a line from one of `bound`
    that follows it; `stays` keeps it with what follows, `signs` with the last lines of what goes before.
    `opens` puts it on a new page, on a `recto` if that is asked for, `sink` rows down; `title` is the heading of the
    whole text, `part` of a part of it; a chapter is `within` such a part.
    Before it `reached` words of the text are set; `remarks` tells what is remarkable about it.
    What is set apart may stand half a row off the grid, if it has a `run`: the rows from its beginning to the end
    of all that is set apart with it. `rule` is drawn under so many lines, from x to x in mm. `notes` are those to which
    it refers, where they stand at the foot of its page, `short` is what stands for a heading over the pages after it.
    """

    role: Role
    lines: tuple[SetLine, ...]
    rows: int
    size: float
    step: float
    drop: float = 0.0
    before: float = 0
    after: float = 0
    together: int = 2
    bound: frozenset[int] = frozenset()
    stays: bool = False
    signs: bool = False
    opens: bool = False
    recto: bool = False
    sink: int = 0
    initials: tuple[Initial, ...] = ()
    heading: str = ""
    picture: str = ""
    title: bool = False
    part: bool = False
    within: bool = False
    run: float = 0
    rule: tuple[int, float, float] | None = None
    reached: int = 0
    remarks: Remarks = UNREMARKABLE
    notes: tuple[Matter, ...] = ()
    short: str = ""

    def remarked(self, remarks: Remarks) -> Matter:
        """The matter with more remarks."""
        return self if remarks is UNREMARKABLE else self._replace(remarks=together((self.remarks, remarks)))


def with_runs(apart: Sequence[Matter]) -> Iterator[Matter]:
    """Matter set apart from the text around it, each piece with the rows from its beginning to the end of all."""
    run, following = 0.0, 0.0
    found: list[Matter] = []
    for matter in reversed(apart):
        if matter.role in AFLOAT:
            found.append(matter)
            continue
        run += matter.rows + max(following, matter.after) if run else matter.rows
        following = matter.before
        found.append(matter._replace(run=run))
    return reversed(found)
