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
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal, NamedTuple, Protocol

from ..ground.art import NOTHING
from ..ground.drawing import Art, Colour
from ..ground.geometry import Rect
from ..ground.ids import Called
from ..ground.problems import FieldPath, Problem
from ..paper.eyesight import Legibility
from ..paper.printer_entry import PaperPath
from ..paper.stock import Stock
from ..paper.thickness import Thickness
from ..sheets.cutting import CutPart, Stick
from ..sheets.flat import Flat
from ..shelf_file.book_names import BookName
from ..shelf_file.fields.entry import Entry
from .book.designs.design import Titling
from .draft import Draft
from .standing import Standing

if TYPE_CHECKING:
    # nobody who only checks a shelf waits for what tells how things are made
    from .making import Bench, Chapter

__all__ = [
    "Advice",
    "Around",
    "Clothes",
    "Family",
    "Measurable",
    "Named",
    "Niche",
    "Plan",
    "Section",
    "Stretch",
    "Table",
    "Terms",
    "Thing",
]


class Named(NamedTuple):
    """The name of another thing as it was written, and the field of the entry in which it stands."""

    name: str
    field: FieldPath


class Stretch(NamedTuple):
    """How thick something may become that takes what is left on its space, in mm; `field` is the group that says so."""

    at_least: float
    at_most: float | None
    field: FieldPath


class Measurable(NamedTuple):
    """A part that may be measured: what it is, its thickness, and the field that takes what the gauge says.

    `scatter` is the usual error of its assembly in mm, for a part that tells of the caliper of its paper.
    """

    what: str
    thickness: Thickness
    field: FieldPath
    scatter: float | None = None


class Advice(NamedTuple):
    """What may be done about something; of several, that of the greatest worth is told."""

    text: str
    worth: float


class Niche(NamedTuple):
    """The place of something held, as the front of its holder is seen: in mm from the holder's lower left corner.

    `edges` are what is seen of the holder around it.
    """

    thing: str
    rect: Rect
    edges: tuple[Rect, ...]


class Table(NamedTuple):
    """A table for the terminal: its title, its columns, each with whether it holds numbers, and its rows."""

    title: str
    columns: tuple[tuple[str, bool], ...]
    rows: tuple[tuple[str, ...], ...]


class Clothes(NamedTuple):
    """What something wears that is to look like another thing: art, its colour on the whole, the hand of its titles."""

    art: Art = NOTHING
    tone: Colour | None = None
    titling: Titling | None = None


class Section(NamedTuple):
    """A key of the shelf file with the things of one kind, and the field that it is, as the models want it.

    Where it is `counted`, things go by their numbers in it as well, from 1.
    """

    key: str
    field: tuple[Any, Any]
    counted: bool = False


@dataclass(frozen=True, slots=True)
class Terms:
    """What a shelf gives to all its things: its name and scale, its papers and its usual printer.

    `viewing_distance` is from the eye to the page, in mm.
    """

    shelf: str
    scale: float
    printer: PaperPath
    stocks: Mapping[str, Stock]
    viewing_distance: float

    @property
    def tolerances(self) -> Mapping[str, float]:
        """The tolerance of each stock's caliper, ± mm."""
        return {name: stock.tolerance for name, stock in self.stocks.items()}

    def resolution(self, stocks: Iterable[str]) -> float:
        """Dots to the inch of the coarsest printer that some stocks go through."""
        return min((self.stocks[name].printer.resolution for name in stocks), default=self.printer.resolution)

    def letters(self, x_height: float, stocks: Iterable[str]) -> Legibility:
        """Letters of an x-height in mm as they are printed on some stocks, and seen from the viewing distance."""
        return Legibility(x_height, self.resolution(stocks), self.viewing_distance)


class Thing(ABC):
    """Something to make, as the maker wrote it; frozen."""

    __slots__ = ()

    @property
    @abstractmethod
    def id(self) -> str:
        """What it goes by: no other thing of the shelf does, and where it stands in the file is no matter."""

    @property
    @abstractmethod
    def family(self) -> Family:
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
    def stack(self) -> str | None:
        """The stack it lies in, if it lies in one."""
        return None

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


class Plan(ABC):
    """A thing worked out, lengths in mm; frozen."""

    __slots__ = ()

    @property
    @abstractmethod
    def thing(self) -> Thing:
        """What was written."""

    @property
    @abstractmethod
    def flats(self) -> tuple[Flat, ...]:
        """Everything to print for it."""

    @property
    @abstractmethod
    def made_as(self) -> str:
        """What it is, in a few words."""

    @property
    def id(self) -> str:
        """What the thing goes by."""
        return self.thing.id

    @property
    def family(self) -> Family:
        """The kind of the thing."""
        return self.thing.family

    @property
    def name(self) -> str:
        """What people call it, wherever it must be told from the others of its set."""
        return str(self.thing.name)

    @property
    def cut_list(self) -> tuple[CutPart, ...]:
        """Everything to cut by hand for it."""
        return ()

    @property
    def sticks(self) -> tuple[Stick, ...]:
        """Everything to saw by hand from strip for it."""
        return ()

    @property
    def standing(self) -> Standing | None:
        """The finished thing as a shelf sees it; None if it stands nowhere."""
        return None

    @property
    def space(self) -> str | None:
        """Where it stands."""
        return self.thing.space

    @property
    def held(self) -> tuple[str, ...]:
        """The ids of the things that stand in it."""
        return ()

    @property
    def notes(self) -> tuple[Problem, ...]:
        """What there is to say about its making."""
        return ()

    @property
    def stretch(self) -> Stretch | None:
        """How thick it may become, if it is to take what is left on its space."""
        return None

    @property
    def layers(self) -> tuple[tuple[str, Thickness], ...]:
        """Where its thickness comes from: what it is at each step of the making, each with all that lies in it."""
        return ()

    @property
    def flat_lengths(self) -> Mapping[str, float]:
        """Lengths on its flats that follow from its thickness, by what they are."""
        return {}

    @property
    def computed(self) -> float:
        """How thick it is, whatever was measured, in mm."""
        return self.layers[-1][1].computed if self.layers else 0.0

    @property
    def measurable(self) -> tuple[Measurable, ...]:
        """Its parts that may be measured."""
        return ()

    @property
    def templates(self) -> Mapping[str, tuple[Flat, ...]]:
        """What the maker may draw over, by the word that tells it from the rest; the first needs none."""
        return {}

    @property
    def paged_on(self) -> frozenset[str]:
        """The stocks its pages are printed on."""
        return frozenset()

    @property
    def lettered_on(self) -> frozenset[str]:
        """The stocks its titles are printed on."""
        return frozenset()

    @property
    def style(self) -> str:
        """The style in which it is seen, if that has a name."""
        return ""

    def as_measured(self, thickness: float, error: float) -> Plan:
        """The same as thick as it was found side by side with others, ± that error, in mm."""
        return self

    def thinner(self, missing: float) -> Advice | None:
        """How it can be made thinner by so many mm."""
        return None

    def smaller(self, side: Literal["tall", "deep"]) -> str:
        """What makes it less tall or deep."""
        return "make it smaller"

    def onto(self, off_cut: Stock, terms: Terms) -> Advice | None:
        """How its parts can be made to go on an off-cut that is too small for them."""
        return None

    def niches(self, held: Sequence[Plan]) -> tuple[Niche, ...]:
        """Where its things stand, as its front is seen, from the left."""
        return ()

    def covering_for(self, flat: Flat) -> Clothes:
        """What covers a flat of something else that is to look like this thing, without its words."""
        return Clothes()

    def punctuated(self, text: str) -> str:
        """A text with the marks that this thing is punctuated with."""
        return text


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


class Family(ABC):
    """A kind of thing. Plans that come in are of its own kind, unless all those of a shelf come together."""

    @property
    @abstractmethod
    def noun(self) -> str:
        """What one of them is called."""

    @property
    def section(self) -> Section | None:
        """A section of the shelf file of its own, if it has one."""
        return None

    @property
    def listed(self) -> type[Entry] | None:
        """Its entries in the list of all kinds of things, told apart by `kind`; None if they do not stand there."""
        return None

    @abstractmethod
    def called(self, entry: Entry, key: str | int) -> Called:
        """What the id is made of, of an entry that stands under a key of its section or as one of a list."""

    @abstractmethod
    def thing(self, entry: Entry, key: str | int, id: str) -> Thing:
        """The thing that an entry describes."""

    @abstractmethod
    def draw(self, plan: Plan, held: Sequence[Plan]) -> Draft:
        """Everything printed for a thing, drawn, around what it holds."""

    @abstractmethod
    def chapter(self, plan: Plan, bench: Bench, around: Around) -> Chapter:
        """What a thing tells its maker, with every number from its plan; `bench` is what lies before the maker."""

    def findings(self, plan: Plan, draft: Draft, around: Around) -> Iterator[Problem]:
        """What is to be said of a thing once all is known."""
        return iter(())

    def report(self, plan: Plan, draft: Draft, around: Around) -> dict[str, Any]:
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
