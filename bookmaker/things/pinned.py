"""What of a thing's place stays as it is when the shelf is put in order."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from pydantic import BeforeValidator, WithJsonSchema

from ..ground.quantities import show
from ..shelf_file.fields.words import read_text, refuse

__all__ = ["UNPINNED", "Pinned", "PinnedText"]

IN_ITS_SPACE, BESIDE = "in its space", "beside "
ENDS = ("first", "last", "here")


@dataclass(frozen=True, slots=True)
class Pinned:
    """Where a thing stays: `at` first, last or here in its row; beside others, by their names; in its space."""

    at: str = ""
    beside: tuple[str, ...] = ()
    in_its_space: bool = False

    @property
    def stays(self) -> bool:
        """Whether it stays in its space."""
        return self.in_its_space or bool(self.at)


UNPINNED = Pinned()
"""Anywhere."""


def _read_pinned(value: object) -> Pinned:
    """One or several, in a list."""
    if isinstance(value, Pinned):
        return value
    said = value if isinstance(value, (list, tuple)) else [value]
    words = [" ".join(read_text(one).split()) for one in said]
    beside = tuple(word[len(BESIDE) :] for word in words if word.casefold().startswith(BESIDE))
    others = [word.casefold() for word in words if not word.casefold().startswith(BESIDE)]
    ends = list(dict.fromkeys(word for word in others if word in ENDS))
    unknown = next((word for word in others if word not in (*ENDS, IN_ITS_SPACE)), None)
    if unknown is not None:
        raise refuse(
            f"{show(unknown)} is not a place to pin a book to",
            f"write first, last, here, {IN_ITS_SPACE}, or beside and a title",
        )
    if len(ends) > 1:
        raise refuse(f"is pinned both {ends[0]} and {ends[1]}", "write one of the two")
    return Pinned(ends[0] if ends else "", beside, IN_ITS_SPACE in others)


PLACE = {"type": "string", "pattern": f"^(first|last|here|{IN_ITS_SPACE}|{BESIDE}.+)$"}

PinnedText = Annotated[
    Pinned, BeforeValidator(_read_pinned), WithJsonSchema({"anyOf": [PLACE, {"type": "array", "items": PLACE}]})
]
"""Where a thing stays."""
