"""What every cover design is to the rest of the book, whatever its style."""

from __future__ import annotations

import hashlib
from abc import ABC, abstractmethod
from dataclasses import dataclass, replace
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, ClassVar, Literal

from pydantic import Field

from ....ground.art import NOTHING
from ....ground.drawing import Art, Colour
from ....ground.geometry import Path
from ....ground.problems import Problem
from ....ground.typefaces import Typeface
from ....sheets.flat import Flat
from ....shelf_file.fields.entry import Entry
from ....shelf_file.fields.measures import Tracking
from ....shelf_file.fields.words import Flag, Ink
from .artwork import NO_ARTWORK, Artwork
from .ornament.devices import DeviceName
from .ornament.fleurons import OrnamentName
from .palettes import Material, PaletteName

__all__ = [
    "Case",
    "Design",
    "DrawnDesign",
    "Dress",
    "InSet",
    "LetteredDesign",
    "Lettering",
    "SpineTitle",
    "Titling",
    "TypefaceName",
    "Wear",
    "Words",
]

TypefaceName = Literal[
    "caslon", "caslon italic", "old style", "old style italic", "didone", "clarendon", "clarendon bold",
    "inscriptional", "humanist", "humanist bold", "geometric", "geometric bold", "text", "text italic", "text bold",
    "text bold italic", "sans", "sans bold", "typewriter", "blackletter", "script",
]  # fmt: skip
Case = Literal["by style", "capitals", "as written"]
SpineTitle = Literal["auto", "down", "up", "across", "none"]
Wear = Literal["none", "light", "heavy"]


@dataclass(frozen=True, slots=True)
class InSet:
    """A book's place in a set, in mm: how much wider its spine is than the narrowest, how far into the row of all
    spines of the set it begins, and how wide that row is; and the words of all its books.

    `taller` is how much taller than this book the tallest of the set is, `shorter` how much shorter the shortest,
    whose room for words has the share `low` of the height that this book's has.
    """

    wider: float
    begins: float
    width: float
    books: tuple[Words, ...] = ()
    taller: float = 0.0
    shorter: float = 0.0
    low: float = 1.0


@dataclass(frozen=True, slots=True)
class Words:
    """What stands on a cover; `language` is a BCP 47 tag, or empty if nobody said.

    `named` are title and author as the maker wrote them, where the cover has them with other marks. `look` is the
    number on which all hangs that is left to chance; without one, 0, that hangs on the words. `period` is the year of
    a book that bears none. `own` is the typeface of its text, for what those of covers lack.
    """

    title: str
    author: str = ""
    volume: str = ""
    date: str = ""
    language: str = ""
    series: str = ""
    in_set: InSet | None = None
    named: tuple[str, str] | None = None
    look: int = 0
    period: str = ""
    own: Typeface | None = None

    @property
    def dated(self) -> str:
        """What tells of which age the book is: its date, or the year it is given without one."""
        return self.date or self.period

    @property
    def titles(self) -> tuple[str, ...]:
        """The titles that are to be lettered alike: those of the set, or the book's own."""
        return tuple(dict.fromkeys(words.title for words in self.fellows))

    @property
    def fellows(self) -> tuple[Words, ...]:
        """The books that are to be lettered alike: those of the set, or this one alone."""
        return self.in_set.books if self.in_set and self.in_set.books else (self,)

    @property
    def place(self) -> int:
        """Which of its fellows this book is, counted from 0."""
        return self.fellows.index(replace(self, in_set=None)) if len(self.fellows) > 1 else 0

    def on_narrowest(self) -> Words:
        """The words for a room that is already no wider than on the narrowest spine of the set."""
        return replace(self, in_set=self.in_set and replace(self.in_set, wider=0.0))

    def on_lowest(self, low: float) -> Words:
        """The words for a room of which the shortest book of the set has that share in height."""
        return replace(self, in_set=self.in_set and replace(self.in_set, low=low))

    def without(self, part: Literal["volume", "date"]) -> Words:
        """The words less one of them, here and in the whole set: it stands elsewhere."""
        in_set = self.in_set and replace(self.in_set, books=tuple(book.without(part) for book in self.in_set.books))
        if part == "volume":
            return replace(self, volume="", in_set=in_set)
        return replace(self, date="", in_set=in_set)

    def unsaid(self) -> Words:
        """No words, for what looks like the book without saying what it says: its kin is the same."""
        series = self.series or "\0".join(self._named)
        return replace(self, title="", author="", volume="", date="", series=series, named=None)

    @property
    def kin(self) -> int:
        """The number from which grows what all books of a set share: ornaments, typefaces, colours, weave."""
        return _seed(f"look {self.look}") if self.look else _seed(*self.set_words)

    @property
    def set_words(self) -> tuple[str, ...]:
        """What all books of a set have in common: the series, or title and author."""
        return (self.series,) if self.series else self._named

    @property
    def seed(self) -> int:
        """The number from which grows what is the book's own: its words tell it only from others of its set."""
        if self.look and not self.in_set:
            return _seed(f"book of look {self.look}")
        return _seed(*([f"book of look {self.look}"] if self.look else []), *self._named, self.volume)

    @property
    def _named(self) -> tuple[str, str]:
        return self.named or (self.title, self.author)


def _seed(*texts: str) -> int:
    return int.from_bytes(hashlib.sha256("\0".join(texts).encode()).digest()[:8])


@dataclass(frozen=True, slots=True)
class Lettering:
    """How one text of a cover came out: its x-height in mm, and its contrast with the ground by WCAG 2.x.

    `help` says what would make it larger, as far as the design knows. Where all letters are capitals, `x_height`
    is their height.
    """

    what: Literal["title", "author", "volume", "date"]
    on: Literal["spine", "front"]
    way: Literal["down", "up", "across"]
    text: str
    x_height: float
    contrast: float
    help: str = ""


@dataclass(frozen=True, slots=True)
class Titling:
    """In what hand a cover is titled: the typeface by its name, whether in capitals, the ink, the ornament with it.

    `tracking` is how far its letters are set apart, in ems, if the maker said so; `own` is the book's own typeface, for
    what that one lacks.
    """

    face: str
    capitals: bool
    ink: Colour
    ornament: Path | None = None
    tracking: float | None = None
    own: Typeface | None = None


@dataclass(frozen=True, slots=True)
class Dress:
    """The art for one flat of a cover, how its words came out, and what is wrong; fields are relative to the design.

    `titling` is for what goes with the book, such as its box; None if the design letters nothing.
    """

    art: Art = NOTHING
    problems: tuple[Problem, ...] = ()
    lettering: tuple[Lettering, ...] = ()
    titling: Titling | None = None


class Design(Entry, ABC):
    """A cover design as it was written; every style is a class of its own, with its keys and these answers."""

    if TYPE_CHECKING:
        style: str  # each style names itself

    @property
    @abstractmethod
    def ground(self) -> Colour | None:
        """The colour of the whole; None as long as its palette has not settled that."""

    @property
    def picture_across(self) -> str | None:
        """The file of the picture that runs across the spines of a set, if it has one."""
        return None

    @property
    def palette_of_set(self) -> PaletteName | None:
        """The palette that gives it its colour, one for a whole set; None if the colour comes from elsewhere."""
        return None

    @property
    def is_landscape(self) -> bool:
        """Whether it draws a landscape across the spines of a set."""
        return False

    def settled(self, words: Words) -> Design:  # noqa: ARG002 (most designs are)
        """The design that a book with these words has, where this one leaves it open."""
        return self

    def period_for(self, words: Words) -> str:  # noqa: ARG002 (most designs are of no age)
        """The year of a book with these words, if the design is of an age."""
        return ""

    @property
    def scene_named(self) -> bool:
        """Whether the maker named the scene it shows."""
        return False

    def scene_for(self, words: Words) -> str | None:  # noqa: ARG002 (few styles show scenes)
        """The name of the scene that it shows on a book with these words, if it draws one."""
        return None

    def under_jacket(self) -> Design:
        """The same design on a cover that a jacket keeps from hands and light."""
        return self

    def load(self, folder: FilePath) -> Artwork:  # noqa: ARG002 (most styles name no files)
        """Read the files it names, as seen from a folder: the only method that touches any.

        Raises:
            ShelfFileError: files cannot be used; fields are relative to the design.
        """
        return NO_ARTWORK

    @abstractmethod
    def dress(self, artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat of a cover out to its bleed; `artwork` is what `load` gave, for this piece of the cover."""


class LetteredDesign(Design):
    """The keys of all styles that letter a cover: how its words are set."""

    face: TypefaceName | None = Field(None, description="typeface of the titling; of the age of the book, if not given")
    case: Case = Field("by style", description="how titles are set: by style, capitals, as written")
    tracking: Tracking | None = Field(None, description="space between letters, in percent of their size: 6 %")


class DrawnDesign(LetteredDesign):
    """The keys that all drawn styles share."""

    material: ClassVar[Material]
    """What its ground is made of: with the palette this settles which colours it may have."""

    palette: PaletteName = Field("library", description="set of colours: library, harbour, orchard, attic, fairground")
    colour: Ink | None = Field(None, description="ground colour; picked from the palette by its look, if not given")
    steps: Flag = Field(False, description="whether each book of a set takes the next colour of the palette")
    second_colour: Ink | None = Field(None, description="colour of labels, corners or stripes; from the palette")
    ink: Ink | None = Field(None, description="colour of the titling; what stands out from the ground, if not given")
    spine_title: SpineTitle = Field("auto", description="how the spine is lettered: auto, down, up, across, none")
    abbreviate: Flag = Field(False, description="whether a title too long for the spine may be shortened there")
    front_title: Flag = Field(True, description="title and author on the front")
    ornament: OrnamentName = Field("auto", description="ornament of spine and front; auto leaves it to the book")
    device: DeviceName = Field("none", description="publisher's device at the foot of the spine")
    wear: Wear = Field("light", description="rubbed edges: none, light, heavy")

    @property
    def ground(self) -> Colour | None:
        """The colour that was named, or that its look picked."""
        return self.colour

    def under_jacket(self) -> DrawnDesign:
        """The same, neither rubbed nor bleached."""
        return self.model_copy(update={"wear": "none"})

    @property
    def palette_of_set(self) -> PaletteName | None:
        """Its palette, unless its colour was named or each book of a set takes the next one."""
        return None if self.colour or self.steps else self.palette
