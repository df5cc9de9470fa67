"""What things answer when they are asked, each answer a small value of its own."""

from __future__ import annotations

from typing import Any, NamedTuple

from ..ground.art import NOTHING
from ..ground.drawing import Art, Colour
from ..ground.geometry import Rect
from ..ground.problems import FieldPath
from ..paper.thickness import Thickness
from .book.designs.design import Titling

__all__ = ["Advice", "Bulk", "Clothes", "Measurable", "Named", "Niche", "Section", "Stretch", "Table"]


class Named(NamedTuple):
    """The name of another thing as it was written, and the field of the entry in which it stands."""

    name: str
    field: FieldPath


class Stretch(NamedTuple):
    """How thick something may become that takes what is left on its space, in mm; `field` is the group that says so.

    `now` is how thick its plan has it, `about` what it is to be about, `choices` all it can be if it is not any.
    """

    at_least: float
    at_most: float | None
    field: FieldPath
    now: float
    about: float | None = None
    choices: tuple[float, ...] = ()


class Bulk(NamedTuple):
    """The room that something takes as it lies: its longer and its shorter side and its thickness, in mm."""

    length: float
    width: float
    thickness: float


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
