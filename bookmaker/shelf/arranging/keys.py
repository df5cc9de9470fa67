"""What the maker writes about the order of rows: what matters, and how much."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BeforeValidator, Field, WithJsonSchema

from ...ground.quantities import show
from ...shelf_file.fields.entry import Entry
from ...shelf_file.fields.words import read_text, refuse

__all__ = ["HEAVIEST", "ArrangeEntry", "Rule"]

Rule = Literal["height", "thickness", "colour", "title", "author"]
"""Plain orders: what is highest or thickest first, colours round the hues, titles and surnames by the alphabet."""

HEAVIEST = 100.0
"""No weight need be larger."""


def _read_weight(value: object) -> float:
    if isinstance(value, float):
        return value
    text = read_text(value).strip()
    try:
        weight = float(text)
    except ValueError:
        weight = -1.0
    if not 0 <= weight <= HEAVIEST:
        raise refuse(f"{show(text)} is not a weight", f"write a number from 0 to {HEAVIEST:g}")
    return weight


Weight = Annotated[
    float, BeforeValidator(_read_weight), WithJsonSchema({"type": "number", "minimum": 0, "maximum": HEAVIEST})
]
"""How much something counts; 0 leaves it out."""


class ArrangeEntry(Entry):
    """How rows are put in order."""

    colour: Weight = Field(1.0, description="how much neighbours of like colour count")
    thickness: Weight = Field(0.5, description="how much neighbours of like thickness count")
    style: Weight = Field(0.5, description="how much neighbours of one style count")
    rhythm: Weight = Field(0.5, description="how much stairs and saw-teeth of heights count")
    colours: Literal["apart", "gradient"] = Field("apart", description="neighbours unlike, or as like as may be")
    by: Rule | None = Field(None, description="a plain order in place of all this")
