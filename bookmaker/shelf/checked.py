"""A shelf that was read and worked out, with everything there is to say about it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..ground.problems import Problem, Severity
from ..paper.eyesight import Legibility
from ..shelf_file.reading import ShelfFile
from ..things.draft import Draft
from .entries import ShelfSpec
from .plan import ShelfPlan

__all__ = ["Checked"]


@dataclass(frozen=True, slots=True)
class Checked:
    """What `check` finds: everything worked out and drawn, by id."""

    shelf: ShelfFile[ShelfSpec]
    plan: ShelfPlan
    drafts: Mapping[str, Draft]
    problems: tuple[Problem, ...]

    @property
    def legibility(self) -> Mapping[str, Legibility]:
        """How well the text can be read of each thing that has any."""
        return {
            id: self.plan.terms.letters(draft.x_height, self.plan.plans[id].paged_on, draft.strokes)
            for id, draft in self.drafts.items()
            if draft.x_height is not None
        }

    @property
    def sound(self) -> bool:
        """Whether nothing is wrong that spoils the shelf."""
        return all(problem.severity is not Severity.ERROR for problem in self.problems)
