"""What the things of the list have in common: their keys, how they are found, how their flats become pieces.

A kind of thing that stands in the list only says the rest: keys of its own, how it is planned, drawn and made.
"""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Generic, Literal, TypeVar

from pydantic import Field

from ..ground.art import NOTHING
from ..ground.drawing import Art
from ..ground.ids import Called
from ..ground.problems import Problem
from ..sheets.cutting import CutPart, Stick
from ..sheets.flat import Flat
from ..sheets.piece import Piece
from ..shelf_file.book_names import BookName
from ..shelf_file.fields.entry import ThingEntry
from ..shelf_file.fields.words import SpaceName, ThingId, Title
from .answers import Bulk
from .place import PlaceEntry
from .standing import Standing
from .thing import AnyFamily, Family, Plan, Thing

__all__ = ["FlatPlan", "ListedEntry", "ListedFamily", "ListedThing", "SizedEntry", "pieces_of"]


class ListedEntry(ThingEntry):
    """The keys that all things of the list share; each kind names itself with a `kind` of its own."""

    if TYPE_CHECKING:
        kind: str

    id: ThingId = Field(description="what it goes by")
    title: Title | None = Field(None, description="what it is called; its id, if not given")
    space: SpaceName | None = Field(None, description="where it stands, as under spaces")
    place: PlaceEntry | None = Field(None, description="where in the room it stands, lies or hangs, measured")


class SizedEntry(ListedEntry):
    """The keys of things whose sides may be written as they are in life."""

    sizes: Literal["finished", "life size"] = Field(
        "finished", description="what its sides are: finished, or life size, which is divided by the scale"
    )

    def finished(self, length: float, scale: float) -> float:
        """A side of the finished thing in mm: the 56 mm of a matchbox in life are 4.67 mm at 1:12."""
        return length / scale if self.sizes == "life size" else length


Written = TypeVar("Written", bound=ListedEntry)
WorkedOut = TypeVar("WorkedOut", bound=Plan)


@dataclass(frozen=True, slots=True, kw_only=True)
class ListedThing(Thing, Generic[Written]):
    """A thing of the list as it was written."""

    id: str
    family: AnyFamily = field(compare=False, repr=False)
    entry: Written
    name: BookName

    @property
    def space(self) -> str | None:
        """Where it stands, as written."""
        return self.entry.space

    @property
    def place(self) -> PlaceEntry | None:
        """Where in the room it is, as written."""
        return self.entry.place


Made = TypeVar("Made", bound=Thing)


@dataclass(frozen=True, slots=True, kw_only=True)
class FlatPlan(Plan, Generic[Made]):
    """A thing worked out of which there is no more to say than what is printed and cut for it, and how it stands."""

    thing: Made
    made_as: str
    flats: tuple[Flat, ...]
    cut_list: tuple[CutPart, ...] = ()
    sticks: tuple[Stick, ...] = ()
    notes: tuple[Problem, ...] = ()
    standing: Standing | None = None
    bulk: Bulk | None = None


class ListedFamily(Family[Written, WorkedOut]):
    """A kind of thing that stands in the list."""

    @property
    @abstractmethod
    def made(self) -> type[ListedThing[Written]]:
        """What its entries describe."""

    def called(self, entry: Written, key: str | int) -> Called:
        """The id that was given."""
        return Called((self.noun, entry.id), entry, entry.id)

    def thing(self, entry: Written, key: str | int, id: str) -> ListedThing[Written]:
        """The thing of an entry."""
        return self.made(id=id, family=self, entry=entry, name=BookName(entry.title or entry.id))


def pieces_of(plan: Plan, fronts: Sequence[Art], reverses: Sequence[Art] = ()) -> tuple[Piece, ...]:
    """The flats of a plan, in their order, each with its art, and that of its reverse if anything is printed there."""
    turned = [*reverses, *[NOTHING] * (len(fronts) - len(reverses))]
    return tuple(
        Piece(f"{plan.id}-{number}", plan.id, (plan.name, flat.name), flat, front, reverse)
        for number, (flat, front, reverse) in enumerate(zip(plan.flats, fronts, turned, strict=True), start=1)
    )
