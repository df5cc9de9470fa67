"""What the pages of a book show, part after part: told for the form, and written as the form has it."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence

from pydantic import BaseModel, ConfigDict, Field

from ...ground.problems import FieldPath
from ...shelf.entries import ShelfSpec
from ...shelf_file.edits.edit import Edit, SetValue
from ...shelf_file.reading import ShelfFile
from ...shelf_file.source_text import TABLES
from ...shelf_file.yaml_tree import Plain, Tree
from ...things.book.entry import BookEntry
from ...things.book.pages.kinds import KINDS
from ...things.book.pages.part import Part
from ...things.book.pages.written import parts_of
from ..replies import Value
from .fields import is_one_value, key_told
from .values import value_set, without_unknown

__all__ = ["INSIDE", "WantedPart", "inside_path", "inside_seen", "inside_set", "inside_told"]

INSIDE, KIND = "inside", "kind"

MODELS: dict[str, type[Part]] = {str(kind.model_fields[KIND].default): kind for kind in KINDS}


class WantedPart(BaseModel):
    """A part as the form has it: which one it was, from 0, or None if it is new, and the keys set or taken out."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    was: int | None = Field(None, ge=0)
    set: dict[str, str | None] = Field(default_factory=dict, max_length=60)


def inside_told(entry: BookEntry, shelf: ShelfFile[ShelfSpec], field: FieldPath) -> Value:
    """The parts with their keys, the kinds that there are, and how all of it is written."""
    written = shelf.tree.below((*field, INSIDE))
    several = written is not None and isinstance(written.value, list)
    parts = [
        _part_told(part, shelf, (*field, INSIDE, number) if several else (*field, INSIDE))
        for number, part in enumerate(parts_of(entry.inside))
    ]
    one = _in_table(shelf, field)
    return {"parts": parts, "kinds": [*MODELS], "seen": inside_seen(shelf, field), "one": one}


def inside_path(shelf: ShelfFile[ShelfSpec], field: FieldPath) -> FieldPath:
    """Where what the pages show is written: a cell of a table holds one value, so there it is a key of one part."""
    return (*field, INSIDE, KIND) if _in_table(shelf, field) else (*field, INSIDE)


def _in_table(shelf: ShelfFile[ShelfSpec], field: FieldPath) -> bool:
    return shelf.tree.place_of(field).file.casefold().endswith(TABLES)


def _part_told(part: Part, shelf: ShelfFile[ShelfSpec], path: FieldPath) -> Value:
    keys = [name for name in type(part).model_fields if name != KIND]
    simple = [name for name in keys if is_one_value(type(part), name, shelf.tree.below((*path, name)))]
    fields = [key_told(name, shelf.tree, (*path, name), shelf.spec, type(part)) for name in simple]
    written = shelf.tree.below(path)
    others = [key for key in keys if key not in simple and written and written.holds((key,))]
    return {"kind": type(part).model_fields[KIND].default, "fields": fields, "others": others}


def inside_seen(shelf: ShelfFile[ShelfSpec], field: FieldPath) -> str:
    """What is written, in one text: it is another if anything in it is."""
    tree = shelf.tree.below((*field, INSIDE))
    return json.dumps(tree.plain() if tree else None, ensure_ascii=False)


def inside_set(shelf: ShelfFile[ShelfSpec], field: FieldPath, wanted: Sequence[WantedPart]) -> Iterator[Edit]:
    """The edits that write the parts so: of one part that stays alone its keys, else the list."""
    path = (*field, INSIDE)
    tree = shelf.tree.below(path)
    several = tree is not None and isinstance(tree.value, list)
    if not wanted:
        yield from value_set(shelf, path, None)
    elif len(wanted) == 1 and not several:
        kind = wanted[0].set.get(KIND)
        if kind in MODELS:
            yield from without_unknown(shelf, path, MODELS[kind].model_fields)
        for key, value in wanted[0].set.items():
            yield from value_set(shelf, (*path, key), value)
    else:
        old = tree.value if tree and isinstance(tree.value, list) else [tree] if tree else []
        yield SetValue(path, [_written(old, one, shelf) for one in wanted])


def _written(old: Sequence[Tree], wanted: WantedPart, shelf: ShelfFile[ShelfSpec]) -> Plain:
    """A part as it is written: its own keys as they were, but for those that are set."""
    before = old[wanted.was].value if wanted.was is not None and wanted.was < len(old) else {}
    own = before if isinstance(before, dict) else {}
    kind = wanted.set.get(KIND) or (own[KIND].value if KIND in own else None)
    known = MODELS[kind].model_fields if isinstance(kind, str) and kind in MODELS else own
    part: dict[str, Plain] = {KIND: kind if isinstance(kind, str) else None}
    part |= {key: tree.plain() for key, tree in own.items() if key in known and tree.place not in shelf.lent}
    part |= wanted.set
    return {key: value for key, value in part.items() if value is not None}
