"""What one run prints beside what was printed before."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property

from ...sheets.fingerprints import Fingerprints
from ...sheets.piece import Piece
from ..plan import ShelfPlan
from .changes import Changes, changes_between
from .records import Printed, records_of

__all__ = ["Prints"]


class Prints:
    """What was printed before, and what would be printed now of `every` piece, which is told as late as it can be."""

    def __init__(self, plan: ShelfPlan, before: Mapping[str, object], every: Sequence[Piece]) -> None:
        self._before = Printed.read(before)
        self.fingerprints = Fingerprints()
        self._plan = plan
        self._every = every

    @cached_property
    def now(self) -> Printed:
        """All of it; what is watched and was not drawn yet is drawn twice."""
        return records_of(self._plan, self._every, self.fingerprints)

    @cached_property
    def changes(self) -> Changes:
        """What differs."""
        return changes_between(self._before, self.now)

    def then(self, pieces: Iterable[Piece]) -> Printed:
        """What is printed once these pieces are, and what is as it was."""
        fresh = {piece.id for piece in pieces} | (self.now.pieces.keys() - self.changes.among(self.now.pieces))
        return self._before.then(self.now, fresh)

    def changes_to(self, printed: Printed) -> Changes:
        """What differs from what was printed before, once the sheets lie as they were printed."""
        return changes_between(self._before, self.now.lying(printed))
