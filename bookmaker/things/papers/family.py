"""Papers as kinds of things among others: one kind a form."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random
from typing import TYPE_CHECKING, Any

from ...ground.art import NOTHING, Group
from ...ground.drawing import Art
from ...ground.geometry import Path, Rect, Transform
from ...ground.units import rounded
from ...sheets.flat import Flat, Fold
from ..book.designs.design import Words
from ..draft import Draft
from ..listed import ListedFamily, pieces_of
from ..thing import Around, Plan
from .ageing import aged, worn_folds
from .entry import BLEED, Leaf, PaperEntry, Press
from .face import SetFace, smallest_text
from .forms.kinds import KINDS
from .plan import Paper, PaperPlan
from .seen import hanging, lying

if TYPE_CHECKING:
    from ..making import Bench, Chapter

__all__ = ["PAPERS"]


class Papers(ListedFamily[PaperEntry, PaperPlan]):
    """The papers of one form."""

    made = Paper

    def __init__(self, form: type[PaperEntry]) -> None:
        self._form = form

    @property
    def listed(self) -> type[PaperEntry]:
        """The entries of its form."""
        return self._form

    @property
    def noun(self) -> str:
        """The kind as it is written."""
        kind: str = self._form.model_fields["kind"].default
        return kind

    def draw(self, plan: PaperPlan, held: Sequence[Plan]) -> Draft:
        """Its leaves, both faces of each, registered; all copies alike."""
        press = Press(plan.size, plan.thing.faces, Words(plan.name), plan.dpi, BLEED)
        printed = plan.thing.entry.printed(plan.leaves, press)
        sides = [_sides(plan, *one) for one in zip(plan.leaves, plan.flats, printed, strict=False)]
        fronts, reverses = ([side[face] for side in sides] * plan.thing.entry.copies for face in (0, 1))
        found = [face for faces in printed for face in faces]
        problems = tuple(dict.fromkeys(problem for face in found for problem in face.problems))
        smallest = smallest_text(found)
        leaf, (front, reverse) = plan.leaves[0], sides[0]
        return Draft(
            pieces_of(plan, fronts, reverses),
            problems,
            x_height=smallest.x_height,
            strokes=smallest.strokes,
            lying=lying(leaf, front, reverse),
            hanging=hanging(leaf, front),
        )

    def chapter(self, plan: PaperPlan, bench: Bench, around: Around) -> Chapter:
        """What it is, and how it is cut and folded."""
        from .chapter import paper_chapter

        return paper_chapter(plan, bench)

    def report(self, plan: PaperPlan, draft: Draft, around: Around) -> dict[str, Any]:
        """How large it is flat and folded."""
        flat, bulk = plan.size, plan.bulk
        folded = {side: rounded(value) for side, value in bulk._asdict().items()} if bulk else {}
        return {
            "kind": plan.thing.entry.kind,
            "name": plan.name,
            "count": plan.thing.entry.count,
            "flat_mm": {"width": rounded(flat.width), "height": rounded(flat.height)},
            "lying_mm": folded,
        }


def _sides(plan: PaperPlan, leaf: Leaf, flat: Flat, printed: tuple[SetFace, SetFace]) -> tuple[Art, Art]:
    """The front and the reverse of a leaf, on paper as old as it is."""
    front, reverse = printed
    mirror = Transform(a=-1.0, e=leaf.size.width)
    turned = [Fold(fold.kind, mirror.apply(fold.start), mirror.apply(fold.end)) for fold in flat.folds]
    return _side(plan, leaf, front, flat.folds, "front"), _side(plan, leaf, reverse, turned, "reverse")


def _side(plan: PaperPlan, leaf: Leaf, face: SetFace, folds: Sequence[Fold], name: str) -> Art:
    """One of them, its folds as it is seen; a bare one is not printed, unless it is seen."""
    chance, entry = Random(f"{plan.id} {leaf.number} {name}"), plan.thing.entry
    if name == "reverse" and not face.layers and not entry.ages_behind:
        return NOTHING
    layers = (*_ground(plan, leaf, chance), *face.layers, *worn_folds(folds, entry.age, chance))
    return Group(layers, clip=Path.rectangle(Rect(0, 0, *leaf.size).grown(BLEED))) if layers else NOTHING


def _ground(plan: PaperPlan, leaf: Leaf, chance: Random) -> Iterator[Art]:
    """The paper, each part of a leaf that is cut up by itself."""
    entry = plan.thing.entry
    for part in leaf.parts if entry.age > 0 else [Rect(0, 0, *leaf.size)]:
        yield from aged(part, part.grown(BLEED), entry.paper, entry.age, chance)


PAPERS = tuple(Papers(form) for form in KINDS)
