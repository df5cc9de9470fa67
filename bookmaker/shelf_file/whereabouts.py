"""Where a maker writes a word about one book: the file and the line of it, and how the key stands there.

Most books are an entry or an item of a row, and take any key. A title alone on its line becomes a group first, a
book of a table has columns, and a volume of a set has no line at all until it is given an item of a row.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, auto

from ..ground.problems import FieldPath, Place
from ..ground.told import unit
from .fields.entry import Entry
from .reading import ShelfFile
from .volumes import is_volume

__all__ = ["Whereabouts", "whereabouts"]


class Form(Enum):
    """How a book stands in its file."""

    KEYS = auto()
    TITLE = auto()
    LINE = auto()
    VOLUME = auto()
    VOLUME_OF_LINE = auto()


@dataclass(frozen=True, slots=True)
class Whereabouts:
    """The place of a book, and its form; of a volume also which one it is, from 1, and of how many.

    `own_groups` are the keys under which the book has a group of its own.
    """

    place: Place
    form: Form
    own_groups: frozenset[str] = frozenset()
    volume: int = 1
    volumes: int = 1

    def length_of(self, *path: str) -> str:
        """How the length under a key is written, such as ``("block", "measured_thickness")``."""
        return f"{self.place.file}, line {self.place.line}{self._stands(path)}"

    def _stands(self, path: tuple[str, ...]) -> str:
        *groups, key = path
        within = f"{key}: … {unit()}"
        for group in reversed(groups):
            within = f"{group}: {{{within}}}"
        match self.form:
            case Form.LINE:
                return f": column {'.'.join(path)}"
            case Form.VOLUME_OF_LINE:
                return f": a line for each volume, with the columns volume and {'.'.join(path)}"
            case Form.VOLUME:
                return (
                    f": beside volumes a row of {self.volumes} items, number {self.volume} of them {{{within}}}, "
                    "the others {}"
                )
            case Form.TITLE:
                return f": {{title: …, {within}}}"
            case Form.KEYS if groups and groups[0] in self.own_groups:
                return f", in its {groups[0]}: {key}: … {unit()}"
            case Form.KEYS:
                return f": {within}"


def whereabouts(shelf: ShelfFile[Entry], field: FieldPath) -> Whereabouts:
    """Those of the entry in a field: an item of a list, or what stands under a name."""
    book = shelf.tree.below(field)
    assert book is not None  # the shelf was read, so it is there
    in_a_table = book.place.file != shelf.tree.place.file
    if is_volume(shelf.tree, field):
        around = shelf.tree.below(field[:-1])
        items = around.value if around and isinstance(around.value, list) else []
        alike = [number for number, other in enumerate(items) if other.place == book.place]
        form = Form.VOLUME_OF_LINE if in_a_table else Form.VOLUME
        volume = next(place for place, number in enumerate(alike, start=1) if number == field[-1])
        return Whereabouts(book.place, form, volume=volume, volumes=len(alike))
    if in_a_table:
        return Whereabouts(book.place, Form.LINE)
    title = book.child("title")
    if title is not None and title.place == book.place:
        return Whereabouts(book.place, Form.TITLE)
    assert isinstance(book.value, dict)  # the shelf was read, so its books are groups
    own = {key for key, value in book.value.items() if value.place not in shelf.lent}
    return Whereabouts(book.place, Form.KEYS, frozenset(own))
