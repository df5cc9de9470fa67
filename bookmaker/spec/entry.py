"""The form every part of the shelf file shares: written once, checked once, never changed after."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Annotated, Any, Union

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field

__all__ = ["Entry", "Names", "either", "named"]


class Entry(BaseModel):
    """A mapping in the shelf file: frozen, and no key is accepted that it does not know."""

    model_config = ConfigDict(frozen=True, extra="forbid")


class Names:
    """Marks a field whose text is the name of something else in the shelf file: a stock, a space."""

    def __init__(self, what: str) -> None:
        self.what = what


def named(entry: Entry, what: str) -> Iterator[tuple[str, str]]:
    """The keys of an entry that name a `what`, each with the name written there."""
    for key, field in type(entry).model_fields.items():
        written = getattr(entry, key)
        if written and any(isinstance(mark, Names) and mark.what == what for mark in field.metadata):
            yield key, written


def either(models: Sequence[type[Entry]], told_apart_by: str = "kind", usual: str | None = None) -> Any:
    """The type of a field that takes any one of these entries, told apart by one key.

    Where that key is left out, `usual` is meant; without a usual one the key must be given.
    """
    if len(models) == 1:
        return models[0]
    choice: Any = Annotated[Union[tuple(models)], Field(discriminator=told_apart_by)]  # noqa: UP007 (the union is made at run time)
    if usual is None:
        return choice

    def filled_in(value: object) -> object:
        return {told_apart_by: usual, **value} if isinstance(value, dict) else value

    filled: Any = Annotated[choice, BeforeValidator(filled_in)]
    return filled
