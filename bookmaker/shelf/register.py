"""Everything on a shelf by its id: what there is, where in the file it is written, and how it is found by name."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from ..ground.demands import exhausted
from ..ground.ids import ids_of
from ..ground.kept.last_time import AFRESH, Keeper
from ..ground.problems import FieldPath, Problem, ShelfFileError, near_match
from ..ground.quantities import show
from ..shelf_file.book_names import BookNames, UnknownBook, called_in_list, find_book, find_books
from ..shelf_file.fields.entry import Entry
from ..things.thing import AnyFamily, Thing
from .entries import THINGS, ShelfSpec

__all__ = ["Register", "register_of"]

FEW_KINDS = 2
"""So many kinds are named where nothing of them goes by a name."""

Written = tuple[AnyFamily, FieldPath, Entry]
"""An entry, where it stands, and the kind of thing that it describes."""


@dataclass(frozen=True)
class Register:
    """All things of a shelf, by their ids, in the order of their sections.

    `fields` are where they are written; `counted` are those that go by their numbers in a list as well, `names` what
    people call these.
    """

    families: tuple[AnyFamily, ...]
    things: Mapping[str, Thing]
    fields: Mapping[str, FieldPath]
    counted: tuple[str, ...]
    names: BookNames

    def read(self, folder: Path, problems: list[Problem], kept: Keeper = AFRESH) -> Register:
        """The register with what the files hold that the things name; what is wrong with these is added.

        Raises:
            ShelfFileError: together they ask for too much; nothing is read after that.
        """
        things: dict[str, Thing] = {}
        for id, thing in self.things.items():
            try:
                things[id], said = kept.reading(("read", id), (thing, folder), partial(thing.read, folder))
            except ShelfFileError as refusal:
                raise ShelfFileError([*_of_files(id, refusal.problems)]) from None
            if exhausted():
                raise ShelfFileError([*_of_files(id, said)])
            problems += _of_files(id, said)
        return replace(self, things=things)

    @property
    def spoilt(self) -> list[Problem]:
        """What is known to spoil things since their files were read."""
        return [problem for id, thing in self.things.items() for problem in _of_files(id, thing.spoilt)]

    def number_of(self, thing: str) -> int | None:
        """Which on its list a thing is, from 1; None if it is on none that is counted."""
        return self.counted.index(thing) + 1 if thing in self.counted else None

    def reference(self, thing: str) -> int | str:
        """How a report calls a thing among those of its section: by its place in the list, from 0, or by its name."""
        return self.fields[thing][-1]

    def find(self, wanted: str, listed: str = "", *, one: bool = False) -> tuple[str, ...]:
        """The things with a name, a number or an id, or those of a set; only one, if so asked.

        What is counted goes before what is not. `listed` says where names are found, for who has no list at hand.

        Raises:
            UnknownBook: there is none, or several that are no set.
        """
        try:
            return self.find_counted(wanted, listed, one=one)
        except UnknownBook as unknown:
            others = {str(thing.name): id for id, thing in self.things.items() if id not in self.counted}
            known = {**{id: id for id in self.things}, **others}
            if wanted in known:
                return (known[wanted],)
            meant = near_match(wanted, others)
            if meant and not near_match(wanted, map(str, self.names)):
                nouns = dict.fromkeys(thing.family.noun for thing in self.things.values())
                message = f"there is no {' or '.join(nouns)} {show(wanted)!r}"
                if len(nouns) > FEW_KINDS:
                    message = f"nothing is called {show(wanted)!r}"
                raise UnknownBook(message, f"did you mean {meant!r}?") from None
            raise unknown from None

    def find_counted(self, wanted: str, listed: str = "", *, one: bool = False) -> tuple[str, ...]:
        """The same among what is counted, without ids."""
        found = (find_book(wanted, self.names, listed),) if one else find_books(wanted, self.names, listed)
        return tuple(self.counted[number] for number in found)

    def called(self, things: Sequence[str]) -> str:
        """How some things are called in a list of the shelf file, so that they are found again."""
        return called_in_list([self.counted.index(thing) for thing in things], self.names)

    def held_by(self, holder: Thing) -> tuple[str, ...]:
        """The things that stand in another one; names that nothing, or more than one, answers to are left out."""
        return tuple(id for named in holder.holds for id in self.answering(named.name))

    def answering(self, name: str) -> tuple[str, ...]:
        """The things with a name, a number or an id; none where nothing, or more than one, answers to it."""
        try:
            return self.find(name)
        except UnknownBook:
            return ()


def _of_files(thing: str, problems: Iterable[Problem]) -> Iterator[Problem]:
    """What is wrong with a file, whichever thing names it."""
    return (replace(problem, thing=thing, by_itself=True) for problem in problems)


def register_of(spec: ShelfSpec) -> Register:
    """All things of a shelf."""
    families, written = spec.families, list(_written(spec))
    ids = ids_of([family.called(entry, field[-1]) for family, field, entry in written])
    things = {id: family.thing(entry, field[-1], id) for id, (family, field, entry) in zip(ids, written, strict=True)}
    counted = {family.section.key for family in families if family.section and family.section.counted}
    fields = {id: field for id, (_, field, _) in zip(ids, written, strict=True)}
    listed = tuple(id for id, field in fields.items() if field[0] in counted)
    return Register(families, things, fields, listed, BookNames(things[id].name for id in listed))


def _written(spec: ShelfSpec) -> Iterator[Written]:
    """All entries of things: section after section, and last the list of all kinds."""
    sections = dict(spec)
    for family in spec.families:
        if family.section:
            key, entries = family.section.key, sections[family.section.key]
            pairs = entries.items() if isinstance(entries, dict) else enumerate(entries)
            yield from ((family, (key, name), entry) for name, entry in pairs)
    kinds = {family.listed: family for family in spec.families if family.listed}
    for number, entry in enumerate(sections.get(THINGS, ())):
        yield kinds[type(entry)], (THINGS, number), entry
