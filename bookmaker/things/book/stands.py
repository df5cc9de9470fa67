"""What the maker writes of a book that does not stand as others do."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from ...ground.problems import Problem
from ...ground.quantities import show
from ...paper.thickness import Thickness
from ...shelf_file.fields.counts import PartPages
from ...shelf_file.fields.entry import Entry
from ...shelf_file.fields.measures import Margin
from ...shelf_file.fields.words import Flag, read_text, refuse
from ..stance import Opened, Stance, Way

__all__ = ["AS_OTHERS", "Stands"]

UNTIL = "until it meets its neighbour"

LEAST_LEAN, MOST_LEAN = 1.0, 60.0
"""Degrees: less is not seen, more lies rather than leans (common practice)."""


def _read_lean(value: object) -> float | str:
    if isinstance(value, float):
        return value
    text = " ".join(read_text(value).split()).casefold()
    if text == UNTIL:
        return UNTIL
    number = text.removesuffix("degrees").removesuffix("°").strip()
    try:
        degrees = float(number)
    except ValueError:
        raise refuse(f"{show(text)!r} is not an angle", f"write it like 15 degrees, or {UNTIL}") from None
    if not LEAST_LEAN <= degrees <= MOST_LEAN:
        limit = f"{LEAST_LEAN:g} to {MOST_LEAN:g} degrees"
        raise refuse(f"{show(text)} is out of range", f"write {limit}, or lying: yes for a book that lies", limit)
    return degrees


Lean = Annotated[
    float | str, BeforeValidator(_read_lean), WithJsonSchema({"type": "string", "examples": ["15 degrees", UNTIL]})
]
"""Degrees from upright, or until it meets its neighbour."""


class Stands(Entry):
    """How a book stands on its space."""

    lean: Lean | None = Field(None, description="degrees from upright, or until it meets its neighbour")
    towards: Literal["left", "right"] = Field("left", description="where its head leans to")
    shows: Literal["spine", "front", "back"] = Field("spine", description="what of it is turned to the room")
    lying: Flag = Field(False, description="lies by itself, spine to the room, head at the left")
    open_at: PartPages | None = Field(None, description="lies open on its covers at this page, tail to the room")
    upside_down: Flag = Field(False, description="head down; of a lying book: head at the right")
    pulled_out: Margin = Field(0.0, description="how far it stands before the others")

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        ways = [f"shows: {self.shows}"] if self.shows != "spine" else []
        ways += ["lean"] if self.lean is not None else []
        ways += ["lying"] if self.lying else []
        ways += ["open_at"] if self.open_at is not None else []
        if len(ways) > 1:
            raise refuse(
                f"has both {ways[0]} and {ways[1]}",
                "write one of the two: a book stands in one way",
                instead={"shows": None, "lean": None, "lying": None},
            )
        return self

    @property
    def otherwise(self) -> str:
        """The key that keeps it from lying in a stack, or from standing in a box; empty if none does."""
        keys = {"lean": self.lean, "lying": self.lying, "open_at": self.open_at}
        found = [key for key, value in keys.items() if value] + (["shows"] if self.shows != "spine" else [])
        return found[0] if found else ""

    def stance(self, pages: int, block: Thickness, whole: Thickness, *, right_to_left: bool) -> Stance:
        """How a book stands that has so many pages, a block and a whole so thick."""
        way = Way.LYING if self.lying else Way.OPEN if self.open_at is not None else Way(self.shows)
        side = 1 if self.towards == "left" else -1
        opened = None
        if self.open_at is not None:
            opened = _opened(self.open_at, pages, block.value, whole.value, right_to_left=right_to_left)
        return Stance(
            way=way,
            lean=self.lean * side if isinstance(self.lean, float) else 0.0,
            falls=side if self.lean == UNTIL else 0,
            upside_down=self.upside_down,
            pulled_out=self.pulled_out,
            opened=opened,
        )

    def problem(self, pages: int) -> Problem | None:
        """Why a book of so many pages cannot lie open; the field is relative to the book."""
        if self.open_at is None or self.open_at <= pages:
            return None
        field = ("stands", "open_at")
        if not pages:
            return Problem("a book without pages does not open", "leave open_at out, or write lying: yes", field=field)
        message = f"the book is to lie open at page {self.open_at}, and has {pages} pages"
        return Problem(message, f"write a page from 1 to {pages}", field=field)


def _opened(page: int, pages: int, block: float, whole: float, *, right_to_left: bool) -> Opened:
    """Each half lies on its cover: what was turned on the one, what is to be read on the other."""
    cover = (whole - block) / 2
    turned = block * (page // 2) / (pages / 2)  # a leaf has two pages; the first is a recto
    left, right = (block - turned, turned) if right_to_left else (turned, block - turned)
    return Opened(page, cover + left, cover + right, cover)


AS_OTHERS = Stands()
