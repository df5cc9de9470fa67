"""How much searching is allowed: counted steps, so that the same input gives the same result on any machine."""

from __future__ import annotations

from collections.abc import Callable

__all__ = ["Work"]


class Work:
    """A budget of steps, one step being one layout looked at, give or take. No clock is looked at.

    `progress` is told the share of the work that is done, from 0 to 1.
    """

    def __init__(self, steps: int, progress: Callable[[float], None] | None = None) -> None:
        self.steps = steps
        self.done = 0
        self._progress = progress

    @property
    def over(self) -> bool:
        """Whether no more should be tried."""
        return self.done >= self.steps

    def spend(self, steps: int) -> None:
        """Count steps, and tell the share that is done."""
        self.done += steps
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
        super().__init__(steps)
        self._whole = whole

    def spend(self, steps: int) -> None:
        self.done += steps
        self._whole.spend(steps)
