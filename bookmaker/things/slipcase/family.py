"""Slipcases as one kind of thing among others: how they are listed, drawn, and told of."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Annotated, Any

from pydantic import Field

from ...ground.art import Group
from ...ground.geometry import Transform
from ...ground.ids import Called
from ...ground.problems import Problem, Severity, within
from ...ground.told import figure, rounded_up, unit
from ...ground.units import print_mm, rounded
from ...paper.thickness import READING_TOLERANCE
from ...sheets.facsimiles import Facsimile
from ...sheets.flat import Role
from ...sheets.piece import Piece
from ...shelf_file.book_names import BookName
from ...shelf_file.fields.words import ByName
from ..answers import Clothes, Section, Table
from ..draft import Draft
from ..faces_seen import facsimile_of_face
from ..thing import Around, Family, Plan
from .faces import dress_box
from .plan import ListedSlipcase, Slipcase, SlipcaseEntry, SlipcasePlan

if TYPE_CHECKING:
    from ..making import Bench, Chapter

__all__ = ["SLIPCASES"]

COLUMNS = (
    ("slipcase", False),
    ("books", True),
    ("room wide", True),
    ("high", True),
    ("deep", True),
    ("outside wide", True),
    ("high", True),
    ("deep", True),
    ("likely ±", True),
    ("space", False),
)


class Slipcases(Family[SlipcaseEntry, SlipcasePlan]):
    """The slipcases of a shelf."""

    noun = "slipcase"
    section = Section(
        "slipcases",
        (
            Annotated[dict[str, SlipcaseEntry], ByName],
            Field(default_factory=dict, description="boxes for sets of books by name"),
        ),
    )
    listed = ListedSlipcase

    def called(self, entry: SlipcaseEntry, key: str | int) -> Called:
        """The name under which it stands."""
        return Called((self.noun, str(key)), entry, entry.id or "")

    def thing(self, entry: SlipcaseEntry, key: str | int, id: str) -> Slipcase:
        """The slipcase of an entry."""
        name = (entry.title or entry.id) if isinstance(entry, ListedSlipcase) else str(key)
        return Slipcase(id=id, family=self, entry=entry, name=BookName(name))

    def draw(self, plan: SlipcasePlan, held: Sequence[Plan]) -> Draft:
        """The net, dressed as its first book if that is asked for; its own title is in the same hand."""
        faces, worn = plan.entry.faces, Clothes()
        if faces and faces.as_books:
            worn = held[0].covering_for(plan.flat)
        if faces and faces.title:
            faces = faces.model_copy(update={"title": held[0].punctuated(faces.title)})
        dress = dress_box(faces, plan.thing.pictures, plan.flat, worn)
        piece = Piece(f"{plan.id}-1", plan.id, (plan.name, plan.made_as), plan.flat, dress.art)
        return Draft((piece,), within(("faces",), dress.problems), lying=_top(piece))

    def chapter(self, plan: SlipcasePlan, bench: Bench, around: Around) -> Chapter:
        """What it holds, and how its net is made."""
        from .chapter import slipcase_chapter

        return slipcase_chapter(plan, bench, around)

    def findings(self, plan: SlipcasePlan, draft: Draft, around: Around) -> Iterator[Problem]:
        """The box is made to computed sizes: books that come out thicker than its clearance do not go in.

        What helps is what the books measure together, unless the clearance is less than a gauge may be off.
        """
        if plan.row_tolerance <= plan.entry.clearance + 1e-9:
            return
        clearance = f"write clearance: {print_mm(rounded_up(plan.row_tolerance, 2), 2)}"
        measured = (
            "finish the books before you print the box, and write what they measure side by side as "
            f"measured_rows: - {{books: [{around.called(plan.held)}], thickness: … {unit()}}}"
        )
        yield Problem(
            f"the books of {plan.name} may be off by ± {print_mm(plan.row_tolerance, 2)} together, "
            f"but the clearance is {print_mm(plan.entry.clearance)}",
            f"{measured}; or {clearance}" if plan.entry.clearance >= READING_TOLERANCE else clearance,
            Severity.NOTE,
            field=("clearance",),
        )

    def report(self, plan: SlipcasePlan, draft: Draft, around: Around) -> dict[str, Any]:
        """The room inside, and the outside."""
        return {
            "name": plan.name,
            "books": [number - 1 for book in plan.held if (number := around.number_of(book))],
            "inside_mm": {side: rounded(value) for side, value in plan.inside._asdict().items()},
            "outside_mm": {side: rounded(value) for side, value in plan.outside._asdict().items()},
        }

    def table(self, plans: Sequence[Plan], around: Around) -> Table | None:
        """One row a slipcase; lengths in mm."""
        boxes = [plan for plan in plans if isinstance(plan, SlipcasePlan)]
        return Table("slipcases", COLUMNS, tuple(_row(box, around) for box in boxes)) if boxes else None


SLIPCASES = Slipcases()


def _row(box: SlipcasePlan, around: Around) -> tuple[str, ...]:
    _, likely = box.uncertainty.spread(around.terms.tolerances)
    sides = (figure(side) for side in (*box.inside, *box.outside, likely))
    return (box.name, str(len(box.held)), *sides, box.space or "–")


def _top(piece: Piece) -> Facsimile | None:
    """Its top from above, the spines to the front: the net has it the other way round, behind the back."""
    top = facsimile_of_face((piece,), Role.TOP)
    return top and Facsimile(Group((top.art,), Transform.turn(180.0, top.box.centre)), top.box)
