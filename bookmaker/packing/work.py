"""How much searching is allowed: counted steps, so that the same input gives the same result on any machine."""

from __future__ import annotations

import math
import time
from collections.abc import Callable

__all__ = ["Work"]


class Work:
    """A budget of steps, one step being one layout looked at, give or take.

    The clock does not steer the search. It only ends one that runs far longer than foreseen, and then
    `stopped_by_clock` says that the result may differ on another machine.
    """

    def __init__(self, steps: int, longest_s: float, progress: Callable[[float], None] | None = None) -> None:
        self.steps = steps
        self.done = 0
        self.stopped_by_clock = False
        self._deadline = time.monotonic() + longest_s
        self._progress = progress

    @property
    def over(self) -> bool:
        """Whether no more should be tried."""
        return self.done >= self.steps or self.stopped_by_clock

    def spend(self, steps: int) -> None:
        """Count steps; tell the share of the work that is done, look at the clock."""
        self.done += steps
        if time.monotonic() > self._deadline:
            self.stopped_by_clock = True
        if self._progress:
            self._progress(min(1.0, self.done / self.steps) if self.steps else 1.0)

    def part(self, share: float) -> Work:
        """A budget of a share of these steps, spent from this one as well."""
        return _Part(self, int(self.steps * share))

    def finish(self) -> None:
        """Tell that no work is left."""
        if self._progress:
            self._progress(1.0)


class _Part(Work):
    """Part of another budget."""

    def __init__(self, whole: Work, steps: int) -> None:
        super().__init__(steps, math.inf)
        self._whole = whole

    def spend(self, steps: int) -> None:
        self.done += steps
        self._whole.spend(steps)
        self.stopped_by_clock = self._whole.stopped_by_clock
