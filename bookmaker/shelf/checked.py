"""A shelf that was read and worked out, with everything there is to say about it."""

from __future__ import annotations

from dataclasses import dataclass

from ..ground.problems import Problem, Severity
from ..paper.eyesight import Legibility
from ..shelf_file.reading import ShelfFile
from ..things.book.designs.design import Lettering
from ..things.book.drafting import Draft
from .entries import ShelfSpec
from .plan import ShelfPlan

__all__ = ["Checked"]


@dataclass(frozen=True, slots=True)
class Checked:
    """What `check` finds: one draft for every book and for every slipcase."""

    shelf: ShelfFile[ShelfSpec]
    plan: ShelfPlan
    drafts: tuple[Draft, ...]
    slipcases: tuple[Draft, ...]
    problems: tuple[Problem, ...]

    @property
    def legibility(self) -> tuple[Legibility | None, ...]:
        """How well the text of each book can be read; None for books without any."""
        heights = zip(self.plan.books, (draft.x_height for draft in self.drafts), strict=True)
        return tuple(None if height is None else self.plan.letters(height, book.paged_on) for book, height in heights)

    @property
    def lettering(self) -> tuple[tuple[Lettering, ...], ...]:
        """How each book is lettered as it stands on the shelf: its jacket, or its cover without one."""
        return tuple(draft.shelved for draft in self.drafts)

    @property
    def sound(self) -> bool:
        """Whether nothing is wrong that spoils the shelf."""
        return all(problem.severity is not Severity.ERROR for problem in self.problems)
