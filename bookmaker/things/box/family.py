"""Boxes as kinds of things among others: one kind a form."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from ...ground.units import rounded
from ..draft import Draft
from ..listed import ListedFamily, pieces_of
from ..thing import Around, Plan
from .dressing import dress_net, unseen_sides
from .forms.form import BoxEntry
from .forms.kinds import KINDS
from .front_view import front_view, top_view
from .plan import Box, BoxPlan

if TYPE_CHECKING:
    from ..making import Bench, Chapter

__all__ = ["BOXES"]


class Boxes(ListedFamily[BoxEntry, BoxPlan]):
    """The boxes of one form."""

    made = Box

    def __init__(self, form: type[BoxEntry]) -> None:
        self._form = form

    @property
    def listed(self) -> type[BoxEntry]:
        """The entries of its form."""
        return self._form

    @property
    def noun(self) -> str:
        """The kind as it is written."""
        kind: str = self._form.model_fields["kind"].default
        return kind

    def draw(self, plan: BoxPlan, held: Sequence[Plan]) -> Draft:
        """Its nets, every side dressed."""
        dressed = [dress_net(plan, net) for net in plan.nets]
        problems = (*(problem for _, found in dressed for problem in found), *unseen_sides(plan))
        arts = [art for art, _ in dressed]
        return Draft(pieces_of(plan, arts), problems, front_seen=front_view(plan, arts), lying=top_view(plan, arts))

    def chapter(self, plan: BoxPlan, bench: Bench, around: Around) -> Chapter:
        """What it holds, and how its nets are made."""
        from .chapter import box_chapter

        return box_chapter(plan, bench, around)

    def report(self, plan: BoxPlan, draft: Draft, around: Around) -> dict[str, Any]:
        """The room inside, and the outside."""
        return {
            "kind": plan.entry.kind,
            "name": plan.name,
            "contents": list(plan.held),
            "inside_mm": {side: rounded(value) for side, value in plan.room._asdict().items()},
            "outside_mm": {side: rounded(value) for side, value in plan.outside._asdict().items()},
        }


BOXES = tuple(Boxes(form) for form in KINDS)
