"""What the maker writes about books that are to be invented."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from ...ground.told import in_units
from ..fields.counts import Count, PartPages
from ..fields.entry import Entry
from ..fields.measures import PageSide
from ..fields.words import Text, Title, read_text, refuse
from .words import PATTERNS, SUBJECTS

__all__ = ["Invented"]

USUAL_HEIGHTS = (17.0, 23.0)
"""Pages of invented books are so high at least and at most, in mm: 204 to 276 mm at 1:12 (common practice)."""

MOST = 300


def _read_several(value: object) -> object:
    return tuple(value) if isinstance(value, (list, tuple)) else (value,)


def _read_weights(value: object) -> object:
    """A list, or a group of names with how often each is wanted beside the others."""
    if isinstance(value, dict):
        return value
    several = value if isinstance(value, (list, tuple)) else (value,)
    return {read_text(name): "1" for name in several}


AS_MANY = "as many as it takes"

COUNTS = WithJsonSchema({"anyOf": [{"const": AS_MANY}, {"type": "integer", "minimum": 1, "maximum": MOST}]})


def _read_count(value: object) -> object:
    return None if isinstance(value, str) and " ".join(value.split()).casefold() == AS_MANY else value


Several = BeforeValidator(_read_several)
NAMES = {"type": "array", "items": {"type": "string"}}
Weights = Annotated[
    dict[Text, PartPages],
    BeforeValidator(_read_weights),
    WithJsonSchema(
        {"anyOf": [{"type": "string"}, NAMES, {"type": "object", "additionalProperties": {"type": "integer"}}]}
    ),
]


class Invented(Entry):
    """So many books that share the entry they stand in, each with a title, an author and a size of its own."""

    count: Annotated[PartPages | None, BeforeValidator(_read_count), COUNTS] = Field(
        None, description="how many books; as many as it takes, if not given"
    )
    subjects: Annotated[tuple[Literal[SUBJECTS], ...], Several] = Field(  # type: ignore[valid-type] # a table
        (), description="what they are about: sea, garden, kitchen, mountains, workshop; all, if not given"
    )
    languages: Annotated[tuple[Literal[tuple(PATTERNS)], ...], Several] = Field(  # type: ignore[valid-type] # a table
        ("en",), description="the languages of their titles: en, de, fr, es"
    )
    titles: Annotated[tuple[Title, ...], Several] = Field((), description="titles of your own, before any is invented")
    authors: Annotated[tuple[Title, ...], Several] = Field((), description="authors of your own, taken in turn")
    heights: Annotated[tuple[PageSide, ...], Several] = Field(
        USUAL_HEIGHTS, description="height of the lowest and of the highest page, such as [17 mm, 23 mm]"
    )
    styles: Weights = Field(default_factory=dict, description="styles of covers: a list, or a weight for each")
    palettes: Weights = Field(default_factory=dict, description="palettes: a list, or a weight for each")
    seed: Count = Field(0, description="another number invents other books")

    @model_validator(mode="after")
    def _as_many_as_there_are(self) -> Self:
        if self.count is not None and self.count > MOST:
            raise refuse(f"asks for {self.count} books", f"write at most {MOST}, and another entry for more")
        if self.count is not None and self.titles and not self.subjects and len(self.titles) < self.count:
            missing = self.count - len(self.titles)
            raise refuse(
                f"lists {len(self.titles)} titles for {self.count} books",
                f"write {missing} more, count: {len(self.titles)}, or subjects: of which the others are invented",
            )
        if len(self.heights) != 2 or self.heights[0] > self.heights[1]:
            raise refuse(
                "has heights that are not a lowest and a highest",
                f"write heights: {in_units('[17 mm, 23 mm]', '[11/16 in, 15/16 in]')}",
            )
        return self
