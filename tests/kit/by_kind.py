"""What a shelf comes to, kind by kind, for tests of one kind."""

from __future__ import annotations

from bookmaker.shelf.entries import ShelfSpec
from bookmaker.shelf.plan import ShelfPlan, plan_shelf
from bookmaker.shelf.register import register_of
from bookmaker.things.book.designs.design import Lettering
from bookmaker.things.book.plan import BookPlan
from bookmaker.things.draft import Draft
from bookmaker.things.slipcase.plan import SlipcasePlan
from bookmaker.workshop import Checked

__all__ = ["books_of", "box_drafts_of", "drafts_of", "lettering_of", "planned_shelf", "slipcases_of"]


def planned_shelf(spec: ShelfSpec) -> ShelfPlan:
    """A shelf worked out that names no files."""
    return plan_shelf(spec, register_of(spec))


def books_of(plan: ShelfPlan) -> list[BookPlan]:
    """The books, in the order of their list."""
    return [one for one in plan.plans.values() if isinstance(one, BookPlan)]


def slipcases_of(plan: ShelfPlan) -> list[SlipcasePlan]:
    """The slipcases, in the order of the file."""
    return [one for one in plan.plans.values() if isinstance(one, SlipcasePlan)]


def drafts_of(checked: Checked) -> list[Draft]:
    """The drafts of the books."""
    return [checked.drafts[book.id] for book in books_of(checked.plan)]


def box_drafts_of(checked: Checked) -> list[Draft]:
    """The drafts of the slipcases."""
    return [checked.drafts[box.id] for box in slipcases_of(checked.plan)]


def lettering_of(checked: Checked) -> list[tuple[Lettering, ...]]:
    """How each book is lettered as it stands on the shelf."""
    return [draft.shelved for draft in drafts_of(checked)]
