"""What everything that is made has in common: the seam between the things and all that is said and done with them.

    entry ─► Thing ─► Plan ─► Draft
             written  sizes   pieces

A `Thing` is what the maker wrote, with an id, and with what was read for it. It plans itself on the `Terms` of its
shelf, around the plans of what it holds. A `Plan` is arithmetic: flats, parts to cut by hand, how large it stands.
A `Family` makes things of entries, draws their plans, tells of them, and settles what they settle among themselves.
Whoever stands above asks these, and never which kind it has before it.

What most kinds have no answer of their own to is answered here.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any, Generic, Protocol, TypeAlias, TypeVar

from ..ground.ids import Called
from ..ground.problems import Problem
from ..shelf_file.book_names import BookName
from ..shelf_file.fields.entry import Entry
from .answers import Named, Niche, Section, Table
from .draft import Draft
from .particulars import Particulars
from .pinned import UNPINNED, Pinned
from .place import PlaceEntry
from .terms import Terms

if TYPE_CHECKING:
    # nobody who only checks a shelf waits for what tells how things are made
    from .making import Bench, Chapter

__all__ = ["AnyFamily", "Around", "Family", "Plan", "Thing"]

Written = TypeVar("Written", bound=Entry)
WorkedOut = TypeVar("WorkedOut", bound="Plan")


class Thing(ABC):
    """Something to make, as the maker wrote it; frozen."""

    __slots__ = ()

    @property
    @abstractmethod
    def id(self) -> str:
        """What it goes by: no other thing of the shelf does, and where it stands in the file is no matter."""

    @property
    @abstractmethod
    def family(self) -> AnyFamily:
        """Its kind."""

    @property
    @abstractmethod
    def entry(self) -> Entry:
        """What the maker wrote."""

    @property
    @abstractmethod
    def name(self) -> BookName:
        """What people call it."""

    @property
    def space(self) -> str | None:
        """Where it stands, as written; None if that is not said."""
        return None

    @property
    def place(self) -> PlaceEntry | None:
        """Where in the room it stands, lies or hangs, as it was measured; None if that is not said."""
        return None

    @property
    def stack(self) -> str | None:
        """The stack it lies in, if it lies in one."""
        return None

    @property
    def done(self) -> frozenset[str]:
        """What of it is done, and not asked for again: printed, cut, measured."""
        return frozenset()

    @property
    def stands_otherwise(self) -> str:
        """The key that keeps it from standing among others in a box; empty if none does."""
        return ""

    @property
    def pinned(self) -> Pinned:
        """Where it stays when the shelf is put in order."""
        return UNPINNED

    @property
    def holds(self) -> tuple[Named, ...]:
        """The things that stand in this one, and by themselves no more."""
        return ()

    @property
    def spoilt(self) -> tuple[Problem, ...]:
        """What is known to spoil it since its files were read; it is told again when it is drawn."""
        return ()

    def read(self, folder: Path) -> tuple[Thing, tuple[Problem, ...]]:
        """The same with the files it names, as seen from a folder, and what is wrong with them.

        This alone touches files.
        """
        return self, ()

    def checks(self, scale: float) -> Iterator[Problem]:
        """What is wrong with it that its keys, each for itself, do not show."""
        return iter(())

    def settled(self, terms: Terms) -> tuple[Thing, tuple[Problem, ...]]:
        """The same with everything that was left open to what was read, and what stays open nevertheless."""
        return self, ()

    def of_thickness(self, thickness: float) -> Thing:
        """The same as thick as it is to be, in mm: asked only where the plan has a `stretch`."""
        return self

    @abstractmethod
    def plan(self, terms: Terms, held: Sequence[Plan]) -> Plan:
        """Work it out, around what it holds, in the order of `holds`. Arithmetic only.

        Raises:
            ShelfFileError: it cannot be made; with everything that is wrong.
        """


class Plan(Particulars):
    """A thing worked out, lengths in mm; frozen."""

    __slots__ = ()

    @property
    @abstractmethod
    def thing(self) -> Thing:
        """What was written."""

    @property
    def id(self) -> str:
        """What the thing goes by."""
        return self.thing.id

    @property
    def family(self) -> AnyFamily:
        """The kind of the thing."""
        return self.thing.family

    @property
    def name(self) -> str:
        """What people call it, wherever it must be told from the others of its set."""
        return str(self.thing.name)

    @property
    def space(self) -> str | None:
        """Where it stands."""
        return self.thing.space

    def as_measured(self, thickness: float, error: float) -> Plan:
        """The same as thick as it was found side by side with others, ± that error, in mm."""
        return self

    def niches(self, held: Sequence[Plan]) -> tuple[Niche, ...]:
        """Where its things stand, as its front is seen, from the left."""
        return ()


class Around(Protocol):
    """What a thing may ask of the shelf it is on."""

    @property
    def terms(self) -> Terms:
        """What the shelf gives to all."""

    @property
    def plans(self) -> Mapping[str, Plan]:
        """Everything on it, by id, in the order of the file."""

    def holder_of(self, thing: str) -> Plan | None:
        """What a thing stands in; None if it stands by itself."""

    def number_of(self, thing: str) -> int | None:
        """Which on its list a thing is, from 1; None if it is on none that is counted."""

    def called(self, things: Sequence[str]) -> str:
        """How some things are called in a list of the shelf file, so that they are found again."""

    def printed(self, thing: str) -> str:
        """The number and the name of a thing, as far as they can be printed."""


class Family(ABC, Generic[Written, WorkedOut]):
    """A kind of thing: its entries and its plans; where all plans of a shelf come, they are of any kind."""

    @property
    @abstractmethod
    def noun(self) -> str:
        """What one of them is called."""

    @property
    def section(self) -> Section | None:
        """A section of the shelf file of its own, if it has one."""
        return None

    @property
    def listed(self) -> type[Written] | None:
        """Its entries in the list of all kinds of things, told apart by `kind`; None if they do not stand there."""
        return None

    @abstractmethod
    def called(self, entry: Written, key: str | int) -> Called:
        """What the id is made of, of an entry that stands under a key of its section or as one of a list."""

    @abstractmethod
    def thing(self, entry: Written, key: str | int, id: str) -> Thing:
        """The thing that an entry describes."""

    @abstractmethod
    def draw(self, plan: WorkedOut, held: Sequence[Plan]) -> Draft:
        """Everything printed for a thing, drawn, around what it holds."""

    @abstractmethod
    def chapter(self, plan: WorkedOut, bench: Bench, around: Around) -> Chapter:
        """What a thing tells its maker, with every number from its plan; `bench` is what lies before the maker."""

    def findings(self, plan: WorkedOut, draft: Draft, around: Around) -> Iterator[Problem]:
        """What is to be said of a thing once all is known."""
        return iter(())

    def looks(self, plans: Sequence[Plan], *, unlike: bool) -> Mapping[str, int]:
        """The look of each of this kind that has one, by its id; `unlike`: those alike by chance are parted first."""
        return {}

    def facts(self, plan: WorkedOut) -> Mapping[str, str]:
        """What the print of a thing follows from, by what makers call it."""
        return {}

    def in_look(self, plan: WorkedOut, look: int) -> WorkedOut:
        """The same as another look would have it."""
        return plan

    def report(self, plan: WorkedOut, draft: Draft, around: Around) -> dict[str, Any]:
        """What only this kind has to say of a thing in the plan, by key."""
        return {}

    def dressed(self, plans: Sequence[Plan]) -> Sequence[Plan]:
        """All plans of a shelf, those of this kind with what they settle among themselves."""
        return plans

    def together(self, plans: Sequence[Plan], drafts: Sequence[Draft], around: Around) -> Iterator[Problem]:
        """What is to be said of all of this kind together; each plan of the shelf comes with its draft."""
        return iter(())

    def table(self, plans: Sequence[Plan], around: Around) -> Table | None:
        """What `check` shows of all of this kind together."""
        return None


AnyFamily: TypeAlias = Family[Any, Any]
"""A family of whatever kind: who has one before it and does not know which gives it only what is its own."""
