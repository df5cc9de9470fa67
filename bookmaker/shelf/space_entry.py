"""What the maker writes about the places where books stand."""

from __future__ import annotations

from typing import Annotated

from pydantic import BeforeValidator, Field, WithJsonSchema

from ..ground.amounts import parse_share
from ..ground.units import NotAMeasure
from ..shelf_file.fields.entry import Entry
from ..shelf_file.fields.measures import ShelfSide, SmallLength
from ..shelf_file.fields.words import read_text, refuse
from ..things.chance import USUAL_CHANCE
from ..things.place import PlaceEntry

__all__ = ["SpaceEntry"]


LEAST, MOST = 0.5, 0.9999
"""Between these a chance can be asked for."""


def _read_chance(value: object) -> float:
    if isinstance(value, float):
        return value
    text = read_text(value)
    try:
        share = parse_share(text)
    except NotAMeasure as problem:
        raise refuse(problem.message, "write a percentage such as 95 %") from None
    if not LEAST <= share <= MOST:
        raise refuse(f"{text} is out of range", f"write {LEAST:.0%} to {MOST:.2%}", f"{LEAST:.0%} to {MOST:.2%}")
    return share


Chance = Annotated[float, BeforeValidator(_read_chance), WithJsonSchema({"type": "string", "examples": ["95 %"]})]
"""How sure something must be."""


class SpaceEntry(Entry):
    """A clear opening for books: between two uprights, below the next board, in front of the back."""

    width: ShelfSide = Field(description="clear width between the uprights")
    height: ShelfSide = Field(description="clear height")
    depth: ShelfSide = Field(description="clear depth from the front edge")
    chance: Chance = Field(USUAL_CHANCE, description="how sure it must be to fit to be told so, such as 95 %")
    place: PlaceEntry | None = Field(None, description="where in the room it is, measured")
    clearance: SmallLength = Field(0.2, description="play for each book or stack, to draw it out")
    to_spare: SmallLength | None = Field(
        None, description="what blocks that fill leave of the width; the likely error of the row, if not given"
    )
