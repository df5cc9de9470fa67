"""A file read on past its faults: each is taken out or stood in for, so that what else is wrong can be told as well.

What is made of such a file is never worked out, let alone printed: it is looked at for further faults, for names
that stand for nothing, and for files that are missing. What `mended` stands in for is of no account there.
"""

from __future__ import annotations

import copy
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from functools import reduce
from typing import Any, Generic, TypeVar

from pydantic import BaseModel, ValidationError

from ..ground.problems import FieldPath, Problem, near_match
from .fields.entry import read_as
from .fields.examples import example_in, example_of
from .spec_errors import Fault, faults
from .spots import Spot, tags_of, told_apart_by
from .yaml_tree import Plain

__all__ = ["Mended", "lies_in", "mended"]

MOST_ROUNDS = 12
"""Mending one fault may bring another to light, but not for ever."""

Model = TypeVar("Model", bound=BaseModel)

Mend = tuple[FieldPath, Any]
"""A field and what stands in for it; None takes it out."""


@dataclass(frozen=True, slots=True)
class Mended(Generic[Model]):
    """What a file says, mended; everything that is wrong in it, and the fields that were mended.

    `entry` is None where mending came to nothing. A group of a kind that could only be guessed counts as mended.
    """

    entry: Model | None
    problems: tuple[Problem, ...] = ()
    fields: frozenset[FieldPath] = frozenset()


def mended(plain: Plain, model: type[Model]) -> Mended[Model]:
    """Read a file as a model, past its faults."""
    problems: list[Problem] = []
    work = _Work(plain, model, frozenset())
    for _ in range(MOST_ROUNDS):
        try:
            return Mended(read_as(model, work.plain), tuple(problems), work.fields | work.guessed)
        except ValidationError as failure:
            found = list(faults(failure, model))
        problems += work.news(found)
        work = work.without(found)
        if () in work.fields:
            break
    return Mended(None, tuple(problems), work.fields)


def lies_in(field: FieldPath, around: Collection[FieldPath]) -> bool:
    """Whether a field is one of some others, or stands in one of them."""
    return any(field[:length] in around for length in range(len(field) + 1))


@dataclass(frozen=True, slots=True)
class _Work:
    """The file so far, and what was mended in it; `guessed` are groups of an unknown kind, read as another one."""

    plain: Any
    model: type[BaseModel]
    fields: frozenset[FieldPath]
    guessed: frozenset[FieldPath] = frozenset()

    def news(self, found: Sequence[Fault]) -> Iterator[Problem]:
        """The faults that are the maker's own, and not those of what stands in for others."""
        inside: dict[FieldPath, set[str | int]] = {}
        for field in self.fields:
            inside.setdefault(field[:-1], set()).add(field[-1])
        for fault in found:
            field = fault.spot.field
            among = inside.get(field, set())
            if fault.follows or lies_in(field, self.fields) or among & set(fault.instead or among):
                continue
            if field[:-1] not in self.guessed or _alike_in_all(fault.spot):
                yield fault.problem

    def without(self, found: Sequence[Fault]) -> _Work:
        """The file with these faults mended."""
        plain, fields, guessed = copy.deepcopy(self.plain), set(self.fields), set(self.guessed)
        for fault in found:
            guess = self._guess(fault)
            if guess and not guess.by_name:
                guessed.add(fault.spot.field)
            for field, stand_in in [guess.mend] if guess else self._mends(fault):
                fields.add(field)
                _put(plain, field, stand_in)
        return _Work(plain, self.model, frozenset(fields), frozenset(guessed))

    def _guess(self, fault: Fault) -> _Guess | None:
        """The kind a group probably is of, if that is the fault and nothing was guessed before."""
        if fault.sort not in {"union_tag_invalid", "union_tag_not_found"}:
            return None
        guess = _guessed(fault.spot, reduce(_child, fault.spot.field, self.plain), fault.problem.value)
        return None if guess.mend[0] in self.fields else guess

    def _mends(self, fault: Fault) -> Iterator[Mend]:
        spot = fault.spot
        keys = {(*spot.field, key): value for key, value in fault.instead.items()}
        if keys and not keys.keys() & self.fields:
            yield from keys.items()
            return
        while spot.field in self.fields and spot.around:  # what stood in was no better: the group around it goes too
            spot = spot.around
        yield spot.field, _stand_in(spot)


@dataclass(frozen=True, slots=True)
class _Guess:
    """The kind of a group as it was probably meant, and whether a name like it was written."""

    mend: Mend
    by_name: bool


def _guessed(spot: Spot, group: object, written: str) -> _Guess:
    """The kind with a name like the one written, or else the one that knows most of the keys in the group."""
    near = near_match(written, [tag for choice in spot.choices for tag in tags_of(choice)]) if written else ""
    keys = set(group) if isinstance(group, dict) else set()
    best = max(spot.choices, key=lambda choice: len(keys & choice.model_fields.keys()))
    return _Guess(((*spot.field, told_apart_by(spot.choices)), near or tags_of(best)[0]), bool(near))


def _alike_in_all(spot: Spot) -> bool:
    """Whether a key means the same in every kind that knows it, so that its value is wrong whatever the kind."""
    if spot.owner is None:
        return False
    known = [model.model_fields.get(str(spot.field[-1])) for model in (spot.owner, *spot.others)]
    meanings = [(field.annotation, field.metadata, field.is_required()) for field in known if field]
    return known[0] is not None and all(meaning == meanings[0] for meaning in meanings)


def _stand_in(spot: Spot) -> Any:
    """What is read in the place of a faulty value; None if nothing has to be."""
    if spot.owner is None:
        return example_of(spot.kind) if spot.field else {}
    key = str(spot.field[-1])
    known = spot.owner.model_fields.get(key)
    return example_in(spot.owner, key) if known and known.is_required() else None


def _child(group: Any, part: str | int) -> Any:
    """What stands under a key or a number; None if nothing does."""
    if isinstance(group, dict):
        return group.get(part)
    return group[part] if isinstance(group, list) and isinstance(part, int) and part < len(group) else None


def _put(plain: Any, field: FieldPath, stand_in: Any) -> None:
    """Put a value where a field is, or take the field out; what is no longer there was mended with its group."""
    if not field:
        return
    group, last = reduce(_child, field[:-1], plain), field[-1]
    if isinstance(group, dict) and stand_in is None:
        group.pop(last, None)
    elif isinstance(group, dict) or (isinstance(group, list) and isinstance(last, int) and last < len(group)):
        group[last] = stand_in  # type: ignore[index]
