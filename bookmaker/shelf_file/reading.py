"""From a shelf file on disk to a checked spec that remembers where everything was written.

What may stand in the file is handed in as a `Form`: this room knows how things are written, not which there are.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Generic, Protocol, TypeVar

from ..ground.problems import FieldPath, Place, Problem, Severity, ShelfFileError, near_match
from ..ground.told import Units, told_in
from .book_list import for_a_table, told_of_tables, with_listed_books
from .defaults import with_defaults
from .fields.entry import Entry
from .fields.keys import dotted_keys
from .invented.wall import open_walls, with_invented
from .past_faults import lies_in, mended
from .rows import with_rows
from .source_text import PROFILE, source_text
from .subjects import named_in
from .volumes import is_volume, with_volumes
from .yaml_tree import Tree, parse_tree

__all__ = ["Form", "Profiles", "ShelfFile", "in_file_order", "known_keys", "place_in", "proofread"]

WITH_NAMES = ("stocks", "spaces", "books")
"""Keys of the shelf under which stands what other parts of the file call by its name."""

DEFAULTS: FieldPath = ("defaults",)
"""Where what all books share is written."""

NOWHERE: Mapping[str, FieldPath] = {}
"""Where the entries of no things stand."""

Spec_co = TypeVar("Spec_co", bound=Entry, covariant=True)


class Profiles(Protocol):
    """Lays the profiles of printers under a shelf that names them, and says which cannot be used."""

    def __call__(self, shelf: Tree, read: Callable[[str, Place], Tree]) -> tuple[Tree, tuple[Problem, ...]]:
        """The shelf with its profiles; `read` reads the file of one by its name."""


@dataclass(frozen=True, slots=True)
class Form(Generic[Spec_co]):
    """What may stand in a shelf file: the model of the whole, that of its listed entries, and how profiles are laid.

    Which model the whole has is asked of what is written: it need not know what no key asks for. `told` says from what
    is written in which units to tell what is wrong with it.
    """

    shelf: Callable[[Tree], type[Spec_co]]
    listed: type[Entry]
    profiles: Profiles
    told: Callable[[Tree], Units]


@dataclass(frozen=True, slots=True)
class ShelfFile(Generic[Spec_co]):
    """A shelf file that was read: what it says, and where it says it.

    `lent` are the places of the defaults, and of what the books of a row share: they stand in `tree` under every
    book that takes them. Each comes with the field it is told of: the defaults, or the first book of the row.
    `open_walls` are the entries that invent as many books as it takes, by their numbers, and where they say so;
    `counts` how many that is, as far as it was told. `all_listed` says whether all lists of books could be read,
    `remarks` what there is to say of those that could.
    """

    path: Path
    spec: Spec_co
    tree: Tree
    lent: Mapping[Place, FieldPath] = field(default_factory=dict)
    faults: tuple[Problem, ...] = ()
    mended: frozenset[FieldPath] = frozenset()
    all_listed: bool = True
    remarks: tuple[Problem, ...] = ()
    open_walls: Mapping[int, Place] = field(default_factory=dict)
    counts: Mapping[int, int] = field(default_factory=dict)

    @property
    def names_stand(self) -> bool:
        """Whether everything that has a name is where it is looked for, and no section is missing or no section."""
        sections = {field[0] for field in self.mended if len(field) == 1}
        return sections.isdisjoint(WITH_NAMES)

    @property
    def folder(self) -> Path:
        """The folder that paths in the file start from."""
        return self.path.parent

    def located(self, problems: Iterable[Problem], things: Mapping[str, FieldPath] = NOWHERE) -> tuple[Problem, ...]:
        """The problems with their fields counted from the shelf, and with the places of these.

        `things` say where the entry of each thing stands. What is wrong by itself with a value that several take is
        told once, where they take it from; anything else that goes wrong with it is shown at the thing. Volumes that
        share one entry share what is wrong in it. Left out are problems of what was only stood in for, and notes on
        what all have by default.
        """
        told: dict[tuple[object, ...], Problem] = {}
        for problem in problems:
            whole = replace(problem, field=(*things.get(problem.thing, ()), *problem.field))
            if lies_in(whole.field, self.mended) or self._is_a_default(whole):
                continue
            found = _located(self._of_owner(_of_lender(whole, self.tree, self.lent), things), self.tree, self.lent)
            shared = is_volume(self.tree, found.field)
            told.setdefault((found.place, found.message, found.remedy) if shared else (found,), found)
        return tuple(told.values())

    def _of_owner(self, problem: Problem, things: Mapping[str, FieldPath]) -> Problem:
        """A problem whose field was moved to a lender, told of the thing that lends it, if it is one."""
        if problem.field[:2] == things.get(problem.thing, ()):
            return problem
        return replace(problem, thing=next((id for id, field in things.items() if field == problem.field[:2]), ""))

    def concerns(self, problem: Problem, thing: str, things: Mapping[str, FieldPath]) -> bool:
        """Whether a problem that was located is one of a thing, or of its set."""
        if problem.thing == thing:
            return True
        alike = (*things[thing], *problem.field[2:])
        if not all(is_volume(self.tree, field) for field in (problem.field, alike)):
            return False
        told_of = _located(replace(problem, field=alike, place=None), self.tree, self.lent)
        return told_of.place == problem.place

    def _is_a_default(self, problem: Problem) -> bool:
        """Whether a note is on what the defaults say."""
        a_note = problem.by_itself and problem.severity is Severity.NOTE
        return a_note and self.lent.get(self.tree.place_of(problem.field)) == DEFAULTS

    def refusal(self, problems: Iterable[Problem], things: Mapping[str, FieldPath]) -> ShelfFileError:
        """The problems as a refusal, in the order of the file, with those of the file itself."""
        return ShelfFileError(in_file_order((*self.faults, *self.located(problems, things))))


def proofread(path: Path, form: Form[Spec_co], counts: Mapping[int, int] | None = None) -> ShelfFile[Spec_co]:
    """Read a shelf file past its faults, as far as it can be; `counts` are those of its open walls.

    Raises:
        ShelfFileError: it is not YAML, names a file that cannot be read, or nothing can be made of it.
    """
    parsed = parse_tree(source_text(path), path.name)
    model = form.shelf(parsed)
    parsed = _with_meant_sections(parsed, model)
    written, unfit = form.profiles(parsed, _profile_reader(path.parent))
    with told_in(form.told(written)):
        return _checked(path, model, form.listed, written, unfit, counts or {})


def _checked(
    path: Path,
    model: type[Spec_co],
    listed_model: type[Entry],
    written: Tree,
    unfit: tuple[Problem, ...],
    counts: Mapping[int, int],
) -> ShelfFile[Spec_co]:
    """A file that could be parsed, with its lists, rows and defaults laid out, checked against the model."""
    written, of_lists = with_listed_books(written, path.parent, dotted_keys(listed_model))
    unlisted = [problem for problem in of_lists if problem.severity is Severity.ERROR]
    remarks = tuple(problem for problem in of_lists if problem.severity is not Severity.ERROR)
    defaults = written.child("defaults")
    in_rows, shared = with_rows(with_volumes(with_invented(written, counts)))
    lent = {**shared, **dict.fromkeys(defaults.places() if defaults else (), DEFAULTS)}
    tree = with_defaults(in_rows)
    if not isinstance(tree.value, dict):
        remedy = "write keys and values, beginning with shelf: and a name"
        raise ShelfFileError((Problem("the file does not describe a shelf", remedy, place=tree.place),))
    found = mended(tree.plain(), model)
    # what a list at fault would have held is missing, and that is told already
    own = (problem for problem in found.problems if not (unlisted and problem.field == ("books",)))
    told = (_located(_of_lender(replace(problem, by_itself=True), tree, lent), tree, lent) for problem in own)
    faults = in_file_order((*unfit, *told_of_tables(told, tree), *unlisted))
    if found.entry is None:
        raise ShelfFileError(faults)
    walls = dict(open_walls(written))
    listed = not unlisted
    return ShelfFile(path, found.entry, tree, lent, faults, found.fields, listed, remarks, walls, counts)


def _with_meant_sections(tree: Tree, shelf: type[Entry]) -> Tree:
    """The file with what stands under misspelled keys of the shelf under the right ones as well.

    The misspelled ones are told of later; without the right ones, so would be all books that lean on them.
    """
    if not isinstance(tree.value, dict):
        return tree
    known = known_keys(shelf)
    meant = {near_match(key, known): value for key, value in tree.value.items() if key not in known}
    return replace(tree, value={**{key: value for key, value in meant.items() if key}, **tree.value})


def known_keys(shelf: type[Entry]) -> set[str]:
    """The keys that a shelf may have."""
    return {"defaults", *shelf.model_fields}


def _profile_reader(folder: Path) -> Callable[[str, Place], Tree]:
    def read(name: str, place: Place) -> Tree:
        path = folder / name
        return parse_tree(source_text(path, PROFILE, name, place), path.name)

    return read


def in_file_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """The problems file by file, as they are first named, each in the order of its lines."""
    found = tuple(dict.fromkeys(problems))
    files = list(dict.fromkeys(problem.place.file for problem in found if problem.place))

    def order(problem: Problem) -> tuple[int, int, int]:
        place = problem.place
        return (files.index(place.file), place.line, place.column) if place else (-1, 0, 0)

    return tuple(sorted(found, key=order))


def _of_lender(problem: Problem, tree: Tree, lent: Mapping[Place, FieldPath]) -> Problem:
    """What is wrong by itself with a value that several take, told of where they take it from: once, not for each."""
    place = place_in(problem, tree)
    lender = lent.get(place)
    if not problem.by_itself or lender is None or not tree.holds(problem.field):
        return problem
    # which book takes a default is no matter
    moved = _default if lender == DEFAULTS else lambda field: (*lender, *field[2:])
    subject = None if problem.subject is None else moved(problem.subject)
    return replace(problem, field=moved(problem.field), subject=subject, place=place)


def _default(field: FieldPath) -> FieldPath:
    """A field of a book as it stands in the defaults, where a list of groups is one group."""
    return (*DEFAULTS, *(part for part in field[2:] if isinstance(part, str)))


def _located(problem: Problem, tree: Tree, lent: Mapping[Place, FieldPath]) -> Problem:
    """The problem with its place; what goes wrong in a book with something lent is shown at the book."""
    place = problem.place or place_in(problem, tree)
    if not problem.place and place in lent and not (lent[place] != DEFAULTS and is_volume(tree, problem.field)):
        place = tree.place_of(problem.field[:2])
    found = problem.at(place)
    if problem.subject is None:
        return found
    if problem.field[:1] == ("books",) and place.file != tree.place.file:
        cell = tree.below(problem.field)
        found = for_a_table(found, None if cell is None else str(cell.value))
    return named_in(found, tree)


def place_in(problem: Problem, tree: Tree) -> Place:
    """Where a problem's field stands; a key that is wrong itself is shown, not what follows it."""
    if problem.field and problem.value == problem.field[-1]:
        return tree.key_place_of(problem.field)
    return tree.place_of(problem.field)
