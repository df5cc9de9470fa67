"""Changes of the whole shelf that are seen before they are written: arranged, filled, written out, looks kept."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated, Literal, get_args

from pydantic import BaseModel, ConfigDict, Field, TypeAdapter, ValidationError

from ...ground.problems import CommandError, Problem
from ...ground.quantities import counted
from ...ground.told import print_mm
from ...shelf.arranging.edits import arranging_edits, entries_of
from ...shelf.arranging.keys import HEAVIEST, ArrangeEntry, Rule
from ...shelf.arranging.proposal import proposed
from ...shelf.keeping import frozen_text, looks_kept
from ...shelf.space_entry import SpaceEntry
from ...shelf_file.edits.edit import Edit, Insert
from ...shelf_file.edits.manner import manner_of
from ...shelf_file.edits.shelf import supposed_shelf
from ...shelf_file.fields.keys import dotted_keys
from ...shelf_file.invented.keys import MOST
from ...shelf_file.invented.words import SUBJECTS
from ...shelf_file.yaml_tree import Plain
from ...things.book.entry import BookEntry
from ...workshop import Checked
from ..replies import Value
from .changes import NOT_UNDERSTOOD
from .first_shelf import FINGER, MOODS

__all__ = ["Proposal", "offered", "proposal_of"]

BOOKS = "books"

LEAST_HEIGHT, MOST_HEIGHT, WIDTH_SHARE = 12.0, 23.0, 0.7
"""Pages of invented books in mm, and how wide they are for their height (as the books that are invented)."""

LOWEST = 0.78
"""The lowest of some invented books beside the highest."""

Weight = Annotated[float | None, Field(ge=0, le=HEAVIEST)]
"""As the shelf file has it, if it is not given."""


class _Asked(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


class _Arrange(_Asked):
    """Books on the spaces and in the order that cost least, or in a plain order."""

    what: Literal["arrange"]
    by: Rule | None = None
    colour: Weight = None
    thickness: Weight = None
    style: Weight = None
    rhythm: Weight = None

    def proposal(self, checked: Checked, said: Callable[[int, int], None]) -> Proposal:
        plan, entries = checked.plan, entries_of(checked.shelf, checked.plan)
        asked = self.model_dump(exclude={"what"}, exclude_none=True)
        found = proposed(plan, entries, plan.spec.arrange.model_copy(update={**asked, "by": self.by}), progress=said)
        edits = list(arranging_edits(plan, entries, found))
        return Proposal(_supposed(checked, edits), tuple(self._words(checked, found.moved, found.left_over, edits)))

    @staticmethod
    def _words(
        checked: Checked, moved: Mapping[str, str], left_over: Sequence[str], edits: Sequence[Edit]
    ) -> Iterator[str]:
        plans = checked.plan.plans
        for id, space in moved.items():
            yield f"{plans[id].name} goes to {space}, from {plans[id].space or 'nowhere'}."
        if left_over:
            names = ", ".join(plans[id].name for id in left_over)
            yield f"No space has room for {counted(len(left_over), 'book')}: {names}."
        if not edits:
            yield "The order is as good as any that was found: nothing would change."


class _Fill(_Asked):
    """Invented books with solid blocks for the room that is left on a space."""

    what: Literal["fill"]
    space: str
    count: int | None = Field(None, ge=1, le=MOST)
    subjects: tuple[Literal[SUBJECTS], ...] = ()  # type: ignore[valid-type] # a table
    mood: str = ""
    cover: str = ""

    def proposal(self, checked: Checked, said: Callable[[int, int], None]) -> Proposal:
        said(0, 1)
        spec = checked.plan.spec
        if self.space not in spec.spaces:
            raise CommandError((Problem(f"there is no space {self.space}", "choose another"),))
        books = checked.shelf.tree.child(BOOKS)
        count = len(books.value) if books and isinstance(books.value, list) else 0
        edit = Insert((BOOKS, count), self._entry(spec.spaces[self.space]))
        return Proposal(_supposed(checked, [edit]), ())

    def _entry(self, space: SpaceEntry) -> dict[str, Plain]:
        high = min(space.height - FINGER, (space.depth - FINGER) / WIDTH_SHARE, MOST_HEIGHT)
        if high < LEAST_HEIGHT:
            message = f"{self.space} is too low or too shallow for invented books"
            raise CommandError((Problem(message, "add books of your own"),))
        invented: dict[str, Plain] = {"heights": [print_mm(high * LOWEST, 1), print_mm(high, 1)]}
        if self.count:
            invented["count"] = str(self.count)
        if self.subjects:
            invented["subjects"] = [*self.subjects]
        if self.mood in MOODS:
            palette, styles = MOODS[self.mood]
            invented |= {"styles": {style: str(styles.count(style)) for style in styles}, "palettes": [palette]}
        entry: dict[str, Plain] = {"space": self.space, "block": {"kind": "dummy", "thickness": "fill"}}
        if self.cover:
            entry["cover"] = {"kind": "wrap", "stock": self.cover}
        return {**entry, "invented": invented}


class _Freeze(_Asked):
    """Invented books written out, each to be changed by itself."""

    what: Literal["freeze"]

    def proposal(self, checked: Checked, said: Callable[[int, int], None]) -> Proposal:
        said(0, 1)
        data, count = frozen_text(checked.shelf)
        if not count:
            return Proposal({}, ("No books are invented: nothing would change.",))
        words = f"{counted(count, 'invented book')} would be written into the file, each to be changed by itself."
        return Proposal({checked.shelf.path: data}, (words,))


class _Keep(_Asked):
    """The present looks written down; `apart`: those that are too like their neighbours changed before."""

    what: Literal["keep"]
    apart: bool = False

    def proposal(self, checked: Checked, said: Callable[[int, int], None]) -> Proposal:
        said(0, 1)
        edits = list(looks_kept(checked.shelf, checked.plan, unlike=self.apart))
        if not edits:
            return Proposal({}, ("All looks are kept already: nothing would change.",))
        words = f"{counted(len(edits), 'look')} would be written into the file; then nothing changes them but you."
        return Proposal(_supposed(checked, edits), (words,))


@dataclass(frozen=True, slots=True)
class Proposal:
    """What the files would hold, and what there is to say of it; without files, nothing would change."""

    files: Mapping[Path, bytes]
    words: tuple[str, ...]


Wanted = Annotated[_Arrange | _Fill | _Freeze | _Keep, Field(discriminator="what")]

_READER: TypeAdapter[_Arrange | _Fill | _Freeze | _Keep] = TypeAdapter(Wanted)


def offered(stocks: Iterable[str], arrange: ArrangeEntry) -> Value:
    """What may be chosen when something is proposed, and what the shelf file says of it."""
    weights = arrange.model_dump(include={"colour", "thickness", "style", "rhythm"})
    said: Value = {"rule": arrange.by or "", "weights": weights}
    return {"rules": [*get_args(Rule)], "subjects": [*SUBJECTS], "moods": [*MOODS], "stocks": [*stocks], **said}


def proposal_of(data: bytes, checked: Checked, said: Callable[[int, int], None]) -> Proposal:
    """What is proposed for what the page asked for; nothing is written. `said` is told how far it is.

    Raises:
        BookmakerError: it is not understood, or cannot be done with this shelf.
    """
    try:
        asked = _READER.validate_json(data)
    except ValidationError:
        raise CommandError((NOT_UNDERSTOOD,)) from None
    return asked.proposal(checked, said)


def _supposed(checked: Checked, edits: Sequence[Edit]) -> Mapping[Path, bytes]:
    keys, manner = dotted_keys(BookEntry), manner_of(type(checked.shelf.spec), BookEntry)
    found = supposed_shelf(checked.shelf, edits, keys, manner)
    if isinstance(found, Problem):
        raise CommandError((found,))
    return found
