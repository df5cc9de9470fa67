"""What somebody does on the page, as edits of the shelf: checked as the file is checked, before anything is written."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from ...ground.files import supposing
from ...ground.problems import CommandError, FieldPath, Problem, ShelfFileError
from ...shelf.entries import ShelfSpec, shelf_model
from ...shelf.reading import proofread
from ...shelf.register import Register, register_of
from ...shelf_file.edits.edit import Copy, Edit, Insert, Move, Remove
from ...shelf_file.edits.files import read_maker_file
from ...shelf_file.edits.manner import Manner, manner_of
from ...shelf_file.edits.shelf import edit_shelf, supposed_shelf
from ...shelf_file.fields.keys import dotted_keys
from ...shelf_file.reading import ShelfFile
from ...shelf_file.yaml_tree import Plain
from ...things.book.entry import BookEntry
from ...things.families import all_families
from ...workshop import Workshop
from ..jobs import Changed
from .fields import KIND_KEYS, models_told_apart
from .inside import INSIDE, WantedPart, inside_seen, inside_set
from .placing import list_of, origins
from .values import value_set, without_unknown
from .walls import hung_elsewhere

__all__ = ["Wanted", "make_change", "supposed_change", "wanted_of"]

BOOKS = "books"
MOST_TRIES = 4
"""So often a change is made on the text as it is now, if somebody else writes at the same time."""

NOT_UNDERSTOOD = Problem("the page asks for something that is not understood", "load the page again")
MEND_FIRST = Problem("the shelf file is broken for the moment", "mend it first, then make the change")
GONE = "is no longer on the shelf"


class Wanted(BaseModel):
    """A change of one book: keys set, a place to stand, or itself removed, copied, or added.

    A value that is None is taken out. `inside` are all parts of its inside, in their order. `was` are the values that
    were seen: one that is another by now is not changed. `before` is the thing that it is to stand before; None: it is
    to stand last on its space. `on` is a surface of the room where it is to hang or lie, `left` and `low` its lower, or
    front, left corner there in mm.
    """

    model_config = ConfigDict(extra="forbid", frozen=True)

    thing: str = ""
    set: dict[str, str | None] = Field(default_factory=dict, max_length=60)
    inside: list[WantedPart] | None = Field(None, max_length=200)
    was: dict[str, str | None] = Field(default_factory=dict, max_length=60)
    place: bool = False
    space: str | None = None
    stack: str | None = None
    before: str | None = None
    on: str | None = None
    left: float = Field(0.0, ge=0, le=2000)
    low: float = Field(0.0, ge=0, le=2000)
    remove: bool = False
    copy_it: bool = False
    add: bool = False


@dataclass(frozen=True, slots=True)
class _Text:
    """The shelf as it is written now, and the digest of each of its files."""

    shelf: ShelfFile[ShelfSpec]
    register: Register
    digests: Mapping[str, str]

    def field(self, thing: str) -> FieldPath:
        """Where a book is written.

        Raises:
            CommandError: it is no longer there, or no book.
        """
        field = self.register.fields.get(thing)
        if field is None:
            raise CommandError((Problem(f"{thing} {GONE}", "choose it anew"),))
        if field[0] != BOOKS:
            raise CommandError((Problem(f"{thing} is not a book", "change it in the file"),))
        return field


def wanted_of(data: bytes) -> Wanted:
    """A change as the page sent it.

    Raises:
        CommandError: it is none.
    """
    try:
        return Wanted.model_validate_json(data)
    except (ValidationError, ValueError):
        raise CommandError((NOT_UNDERSTOOD,)) from None


def make_change(path: Path, wanted: Wanted, workshop: Workshop) -> tuple[tuple[Changed, ...], FieldPath]:
    """Write a change into the files, and say what they held, and where the book then is.

    Raises:
        BookmakerError: it cannot be written, or the shelf could not be used afterwards; nothing was written.
    """
    for _ in range(MOST_TRIES):
        text = _read(path, workshop)
        edits, field = _edits(text, wanted)
        held = _supposed(text, edits)
        with supposing(held):
            workshop.planned(path)
        done = edit_shelf(text.shelf, edits, dotted_keys(BookEntry), _manner(), text.digests)
        if not isinstance(done, Problem):
            return tuple(Changed(one.path, one.digest, one.before.data, held[one.path]) for one in done), field
        if not _changed_since(text):
            break
    assert isinstance(done, Problem)
    raise CommandError((done,))


def supposed_change(path: Path, wanted: Wanted, workshop: Workshop) -> tuple[Mapping[Path, bytes], FieldPath]:
    """What the files would hold after a change, and where the book would be; nothing is written.

    Raises:
        BookmakerError: it cannot be made.
    """
    text = _read(path, workshop)
    edits, field = _edits(text, wanted)
    return _supposed(text, edits), field


def _read(path: Path, workshop: Workshop) -> _Text:
    shelf = proofread(path)
    if shelf.faults:
        raise ShelfFileError((MEND_FIRST, *shelf.faults))
    if shelf.open_walls:  # how many books these are, only the plan knows
        shelf = workshop.written(path)
    books = shelf.tree.child(BOOKS)
    items = books.value if books and isinstance(books.value, list) else []
    names = dict.fromkeys([path.name, *(book.place.file for book in items)])
    files = {name: path if name == path.name else shelf.folder / name for name in names}
    digests = {name: read_maker_file(file).digest for name, file in files.items()}
    return _Text(shelf, register_of(shelf.spec), digests)


def _changed_since(text: _Text) -> bool:
    return any(
        read_maker_file(text.shelf.path if name == text.shelf.path.name else text.shelf.folder / name).digest != digest
        for name, digest in text.digests.items()
    )


def _manner() -> Manner:
    return manner_of(shelf_model(all_families()), BookEntry)


def _supposed(text: _Text, edits: list[Edit]) -> Mapping[Path, bytes]:
    found = supposed_shelf(text.shelf, edits, dotted_keys(BookEntry), _manner())
    if isinstance(found, Problem):
        raise CommandError((found,))
    return found


def _edits(text: _Text, wanted: Wanted) -> tuple[list[Edit], FieldPath]:
    """The edits that a change is, and where its book is afterwards."""
    if wanted.add:
        return _added(text, wanted)
    if wanted.on is not None:
        return hung_elsewhere(text.shelf.spec, text.register, wanted.thing, wanted.on, wanted.left, wanted.low)
    field = text.field(wanted.thing)
    if wanted.remove:
        return [Remove(field)], field
    to: FieldPath
    if wanted.copy_it:
        to = (BOOKS, int(field[1]) + 1)
        return [Copy(field, to), *_another_name(text, field, to)], to
    edits = [*_set(text, field, wanted), *_inside(text, field, wanted)]
    if not wanted.place:
        return edits, field
    for key, value in (("space", wanted.space), ("stack", wanted.stack)):
        edits += value_set(text.shelf, (*field, key), value)
    to = _destination(text, field, wanted)
    return ([*edits, Move(field, to)] if to != field else edits), to


def _another_name(text: _Text, field: FieldPath, to: FieldPath) -> Iterator[Edit]:
    """A copy has no id of its own, which must be the only one of its kind."""
    if text.shelf.tree.holds((*field, "id")):
        yield Remove((*to, "id"))


def _set(text: _Text, field: FieldPath, wanted: Wanted) -> Iterator[Edit]:
    """The keys that are set; with another kind, those that it does not know are taken out first, and what was only
    lent by the defaults, which may not reach this kind, is written."""
    another_kind: set[FieldPath] = set()
    for key, value in wanted.set.items():
        path = (*field, *key.split("."))
        tree = text.shelf.tree.below(path)
        now = tree.value if tree and isinstance(tree.value, str) else None
        if key in wanted.was and now != wanted.was[key]:
            message = f"{key} was changed meanwhile: it is {now if now is not None else 'left out'} now"
            raise CommandError((Problem(message, "look at it again, then make the change once more"),))
        if path[-1] in KIND_KEYS and value is not None and len(path) > len(field) + 1:
            model = models_told_apart(BookEntry, str(path[2])).get(value)
            if model:
                yield from without_unknown(text.shelf, path[:-1], model.model_fields)
            another_kind.add(path[:-1])
        yield from value_set(text.shelf, path, value, lent=path[:-1] not in another_kind)


def _inside(text: _Text, field: FieldPath, wanted: Wanted) -> Iterator[Edit]:
    """The parts of its inside, unless they were changed meanwhile."""
    if wanted.inside is None:
        return
    if wanted.was.get(INSIDE, seen := inside_seen(text.shelf, field)) != seen:
        message = "what its pages show was changed meanwhile"
        raise CommandError((Problem(message, "look at it again, then make the change once more"),))
    yield from inside_set(text.shelf, field, wanted.inside)


def _destination(text: _Text, field: FieldPath, wanted: Wanted) -> FieldPath:
    """The number that a book has once it stands where it is wanted: before another, or behind the last of its space."""
    number = int(field[1])
    if wanted.before is not None:
        at = int(text.field(wanted.before)[1])
        return (BOOKS, at - (number < at))
    things = text.register.things
    beside = [
        int(place[1])
        for id, place in text.register.fields.items()
        if place[0] == BOOKS and place != field and things[id].space == wanted.space
    ]
    written = origins(text.shelf)
    mine = list_of(written[number])
    if mine:  # it stays in its row or table
        beside = [at for at in beside if list_of(written[at]) == mine]
    if not beside or max(beside) < number:  # it stands last already
        return field
    last = max(beside)
    entry = written[last].entry
    while not mine and last + 1 < len(written) and written[last + 1].entry == entry:
        last += 1  # no place is within a row or a table of others
    return (BOOKS, last)


def _added(text: _Text, wanted: Wanted) -> tuple[list[Edit], FieldPath]:
    """A new book: like the last one as far as it must be, with a title of its own."""
    books = text.shelf.tree.child(BOOKS)
    items = books.value if books and isinstance(books.value, list) else []
    value: dict[str, Plain] = {}
    for key, said in wanted.set.items():
        if said is not None:
            *groups, last = key.split(".")
            at = value
            for group in groups:
                below = at.setdefault(group, {})
                assert isinstance(below, dict)
                at = below
            at[last] = said
    if wanted.space:
        value["space"] = wanted.space
    to = (BOOKS, len(items))
    return [Insert(to, value)], to
