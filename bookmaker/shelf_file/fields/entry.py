"""The form every part of the shelf file shares: written once, checked once, never changed after."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from typing import Annotated, Any, Self, TypeVar, Union, get_args

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    ValidationInfo,
    model_validator,
)
from pydantic.fields import FieldInfo
from pydantic.functional_validators import ModelWrapValidatorHandler

from ...ground.kept import Kept
from ...ground.problems import FieldPath

__all__ = ["Entry", "Names", "NamesFile", "ThingEntry", "either", "files_named", "named", "named_by", "read_as"]

Model = TypeVar("Model", bound=BaseModel)


class Entry(BaseModel):
    """A mapping in the shelf file: frozen, and no key is accepted that it does not know."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    @classmethod
    def in_one_value(cls, _written: str, /) -> str:
        """The keys and values that a maker means who writes one value in place of the group; or an empty text."""
        return ""


class ThingEntry(Entry):
    """A group that says all of one thing: it is read once, and found again as long as it says the same."""

    @model_validator(mode="wrap")
    @classmethod
    def _as_before(cls, written: object, read: ModelWrapValidatorHandler[Self], info: ValidationInfo) -> Self:
        if info.context is not READ:
            return read(written)
        found = READ.get((cls, repr(written)), lambda: read(written))
        assert isinstance(found, cls)  # the key says so
        return found


READ = Kept[ThingEntry](most=8192)
"""Groups that were read, by their models and by all that is written in them."""


def read_as(model: type[Model], written: object) -> Model:
    """What is written, plain text in lists and groups, as a model.

    Raises:
        ValidationError: it is no such thing.
    """
    return model.model_validate(written, context=READ)


class Names:
    """Marks a field whose text is the name of something else in the shelf file: a stock, a space."""

    def __init__(self, what: str) -> None:
        self.what = what


class NamesFile:
    """Marks a field whose text is, or may be, the path of a file or folder; `what` is to be found there."""

    def __init__(self, what: str) -> None:
        self.what = what


def named(entry: Entry, what: str) -> Iterator[tuple[FieldPath, str]]:
    """Where an entry, or what is in it, names a `what`, each with the name written there."""
    for key, marks in _marked(type(entry)):
        written = getattr(entry, key)
        if isinstance(written, Entry):
            yield from (((key, *path), name) for path, name in named(written, what))
        elif written and any(isinstance(mark, Names) and mark.what == what for mark in marks):
            yield from (((key,), name) for name in ((written,) if isinstance(written, str) else written))


def files_named(written: object, here: FieldPath = ()) -> Iterator[tuple[FieldPath, str, str]]:
    """Every field of an entry, and of the groups and lists in it, that may name a file: what of, and the path."""
    if isinstance(written, Entry):
        for key, marks in _marked(type(written)):
            value = getattr(written, key)
            if isinstance(value, str):
                yield from (((*here, key), mark.what, value) for mark in marks if isinstance(mark, NamesFile))
            elif isinstance(value, (Entry, tuple, Mapping)):
                yield from files_named(value, (*here, key))
    elif isinstance(written, (tuple, Mapping)):
        parts = written.items() if isinstance(written, Mapping) else enumerate(written)
        for part, value in parts:
            yield from files_named(value, (*here, part))


def named_by(model: type[Entry], key: str) -> str:
    """What the text under a key names, such as a stock, or an empty text."""
    marks = dict(_marked(model)).get(key, ())
    return next((mark.what for mark in marks if isinstance(mark, Names)), "")


@cache
def _marked(model: type[Entry]) -> tuple[tuple[str, tuple[object, ...]], ...]:
    """The keys of a model, each with its marks."""
    return tuple((key, tuple(_marks(field))) for key, field in model.model_fields.items())


def _marks(field: FieldInfo) -> Iterator[object]:
    """What is marked on a field's type, and on the types it may have instead of None."""
    yield from field.metadata
    for option in get_args(field.annotation):
        yield from getattr(option, "__metadata__", ())


def either(models: Sequence[type[Entry]], told_apart_by: str = "kind", usual: type[Entry] | None = None) -> Any:
    """The type of a field that takes any one of these entries, told apart by one key.

    With a `usual` one the key may be left out.
    """
    if len(models) == 1:
        return models[0]
    one_of: Any = Annotated[Union[tuple(models)], Field(discriminator=told_apart_by)]  # noqa: UP007 (made at run time)
    if usual is None:
        return one_of
    kind = usual.model_fields[told_apart_by].default

    def with_kind(written: object) -> object:
        if isinstance(written, dict) and told_apart_by not in written:
            return {told_apart_by: kind, **written}
        return written

    return Annotated[one_of, BeforeValidator(with_kind)]
