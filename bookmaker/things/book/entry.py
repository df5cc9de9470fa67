"""A book as the maker wrote it."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from ...ground.geometry import Size
from ...ground.told import in_units
from ...paper.thickness import ASSEMBLY_TOLERANCE
from ...shelf_file.book_names import BookName
from ...shelf_file.fields.counts import LookNumber
from ...shelf_file.fields.entry import Entry, ThingEntry
from ...shelf_file.fields.measures import LifeSide, PageSide, SmallLength, Thickness
from ...shelf_file.fields.words import DoneSteps, SpaceName, ThingId, Title, refuse
from ...shelf_file.invented.keys import Invented
from ...shelf_file.rows import LONGEST_ROW
from ...shelf_file.volumes import MOST_VOLUMES
from ..pinned import UNPINNED, PinnedText
from ..place import PlaceEntry
from .blocks.kinds import AnyBlock
from .covers.jacket import Jacket
from .covers.kinds import AnyCover
from .designs.kinds import PLAIN, AnyDesign
from .leaf_tones import AS_PAPER, LeafTones
from .pages.kinds import BLANK, AnyInside
from .pages.prose.text_keys import BookLanguage
from .stands import AS_OTHERS, Stands

__all__ = ["SMALLEST_PAGE", "BookEntry", "LifeSize", "PageSize"]

SMALLEST_PAGE = 1.0
"""A page side below this is a slip, in mm."""


class PageSize(Entry):
    """The page of the finished miniature."""

    height: PageSide = Field(description="height of the page, such as 21 mm")
    width: PageSide = Field(description="width of the page, such as 15 mm")


class LifeSize(Entry):
    """The page of the full-size book the miniature stands for."""

    height: LifeSide = Field(description="height of the full-size page, such as 198 mm")
    width: LifeSide = Field(description="width of the full-size page, such as 129 mm")


def _read_row(value: object) -> None:
    """Rows are written out before books are read: what is left of one is none."""
    if value is None:
        raise refuse("is empty", "write titles or groups of keys, each after a -")
    if not isinstance(value, list):
        raise refuse("is not a list", "write titles or groups of keys, each after a -")
    if not 1 <= len(value) <= LONGEST_ROW:
        raise refuse(f"lists {len(value)} books", f"write from 1 to {LONGEST_ROW}", f"1 to {LONGEST_ROW}")
    raise refuse("stands where no row is allowed", "write row in a book of its own, not in defaults or another row")


NoRow = Annotated[None, BeforeValidator(_read_row), WithJsonSchema({"type": "array"})]
"""Where a row would stand."""


def _read_volumes(value: object) -> None:
    """Sets are written out before books are read: what is left of one is none."""
    limit = f"2 to {MOST_VOLUMES}"
    if not isinstance(value, str) or not value.isdecimal():
        raise refuse("is not a whole number", f"write how many books the set has, {limit}", limit)
    if not 2 <= int(value[:4]) <= MOST_VOLUMES:
        raise refuse(f"is {value}; a set has {limit} books", "write how many, or leave it out for one book", limit)
    raise refuse(
        f"is {value}, but the row beside it has another number of books",
        "write as many items as volumes, or leave one of the two out; in defaults and within a row it cannot stand",
    )


NoVolumes = Annotated[
    None, BeforeValidator(_read_volumes), WithJsonSchema({"type": "integer", "minimum": 2, "maximum": MOST_VOLUMES})
]
"""Where a set would stand."""


class BookEntry(ThingEntry):
    """One book. Its size is that of the page; the cover adds what it needs."""

    id: ThingId | None = Field(None, description="what it goes by; made of title, volume, series, author and date")
    title: Title = Field(description="title, as it shall stand on spine and front")
    author: Title | None = Field(None, description="author, as it shall stand on spine and front")
    volumes: NoVolumes = Field(None, description="a set of so many books that differ in their numbers, from 2 to 100")
    series: Title | None = Field(None, description="the set it belongs to: all books of it look alike")
    volume: Title | None = Field(None, description="number of the volume, as it shall stand on the spine")
    date: Title | None = Field(None, description="year or date, as it shall stand on the spine")
    size: PageSize | None = Field(None, description="width and height of the finished page")
    life_size: LifeSize | None = Field(None, description="width and height of the full-size page; divided by the scale")
    language: BookLanguage = Field("", description="its language, if it has no text that names one: en, de, el, tr")
    direction: Literal["left-to-right", "right-to-left"] = Field("left-to-right", description="which way it reads")
    block: AnyBlock = Field(description="how the pages are made")
    cover: AnyCover = Field(description="how they are covered")
    jacket: Jacket | None = Field(None, description="a loose jacket around the covered book")
    inside: AnyInside = Field(BLANK, description="what the pages show")
    design: AnyDesign = Field(PLAIN, description="what the cover shows")
    leaf_tones: LeafTones = Field(AS_PAPER, description="printed or marbled ends, and browned leaves")
    look: LookNumber | None = Field(
        None, description="which of many looks it has: what is left to chance hangs on this"
    )
    space: SpaceName | None = Field(None, description="where it stands, as under spaces")
    place: PlaceEntry | None = Field(None, description="where in the room it lies, measured")
    stack: Title | None = Field(None, description="books of a space with the same stack lie on one another")
    stands: Stands = Field(AS_OTHERS, description="how it stands, if not upright with its spine to the room")
    pinned: PinnedText = Field(UNPINNED, description="where it stays when the shelf is put in order")
    measured_thickness: Thickness | None = Field(
        None, description="thickness of the finished book; overrides the computed one"
    )
    invented: Invented | None = Field(None, description="so many invented books that share all else of this entry")
    done: DoneSteps = Field((), description="what is done and not asked for again: printed, cut, measured")
    row: NoRow = Field(None, description="books that share all else, each a title or a group of keys")
    assembly_tolerance: SmallLength = Field(ASSEMBLY_TOLERANCE, description="what folding and gluing may add or take")

    @property
    def name(self) -> BookName:
        """What it is called where it must be told from other books."""
        return BookName(self.title, self.volume or "", self.series or "")

    @model_validator(mode="after")
    def _none_invented(self) -> Self:
        if self.invented:
            raise refuse(
                "has invented where it is not allowed",
                "write invented: in an entry of the list of books, without row and volumes",
                instead={"invented": None},
            )
        return self

    @model_validator(mode="after")
    def _one_size(self) -> Self:
        if (self.size is None) == (self.life_size is None):
            high, wide = in_units("21 mm", "0.83 in"), in_units("15 mm", "0.59 in")
            said = "has both size and life_size" if self.size else "has no size"
            raise refuse(
                said,
                f"write either size: {{height: {high}, width: {wide}}} or life_size with the full-size page",
                instead={"size": {"height": high, "width": wide}, "life_size": None},
            )
        if self.stack and not self.space:
            remedy = "add space: with a name from spaces"
            raise refuse("lies in a stack, but in no space", remedy, instead={"stack": None})
        if self.stack and self.stands.otherwise:
            said = f"lies in a stack, and stands with {self.stands.otherwise}"
            raise refuse(said, "leave one of the two out", instead={"stack": None})
        if self.stands.lean is not None and not self.space:
            said = "leans, but stands in no space, where nothing holds it"
            raise refuse(said, "add space: with a name from spaces", instead={"stands": None})
        return self

    @property
    def right_to_left(self) -> bool:
        """Whether the book opens the other way."""
        return self.direction == "right-to-left"

    def page_size(self, scale: float) -> Size:
        """The page of the miniature in mm.

        A demy octavo of 216 × 138 mm becomes 18.0 × 11.5 mm at 1:12.
        """
        if self.size is not None:
            return Size(self.size.width, self.size.height)
        assert self.life_size is not None  # every entry has one of the two
        return Size(self.life_size.width / scale, self.life_size.height / scale)
