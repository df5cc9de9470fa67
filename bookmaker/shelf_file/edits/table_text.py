"""Tables edited: cells set, rows added, moved, copied and removed, columns added; every other byte stays.

A table is a list of books: ``(3, "design", "style")`` is the cell of the fourth book in the column of that key. The
notes right above a row go with it. Where a key has no column, one is added at the right.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping

from ...ground.problems import FieldPath, Place, Problem, ShelfFileError
from ..book_list.listed import listed_books
from ..book_list.table import Table
from ..subjects import named_in
from ..yaml_tree import Plain, Tree
from .edit import Edit, Move, Remove, Rename, Reorder, SetValue
from .outcome import outcome, value_at
from .refusal import EditRefused, refused, refused_of
from .sheet import Sheet, leaves
from .steps import steps
from .written import spliced

__all__ = ["edit_table"]


def edit_table(text: str, edits: Iterable[Edit], keys: Mapping[str, bool], file: str = "the table") -> str | Problem:
    """The text of a table after one edit after the other, or why one of them cannot be made; then none is.

    `keys` are those of a book, with dots, and whether they are groups of keys.

    >>> keys = {"title": False, "block.pages": False}
    >>> edit_table("title;pages\\nFog;8\\n", [SetValue((0, "block", "pages"), "9")], keys)
    'title;pages\\nFog;9\\n'
    """

    here = Place(file)

    def read(text: str) -> Sheet:
        return Sheet(listed_books(Table(file, text), keys, here), keys)

    try:
        sheet = read(text)
        wanted = sheet.plain()
        for edit in edits:
            for step in _smaller(wanted, edit):
                sheet = _after(sheet, step, read)
            wanted = outcome(wanted, edit)
            if _told(sheet.plain()) != _told(wanted):
                raise refused_of(edit.path, "cannot be written so that it reads as it should", "change it by hand")
    except EditRefused as refusal:
        return named_in(refusal.problem.within(("books",)), Tree({"books": Tree(sheet.listed.trees(), here)}, here))
    except ShelfFileError as refusal:
        return refusal.problems[0]
    return sheet.text


def _after(sheet: Sheet, step: Edit, read: Callable[[str], Sheet]) -> Sheet:
    """The table after an edit of one cell, or of whole rows."""
    if isinstance(step, Move):
        at, to = step.path[0], step.to[0]
        assert isinstance(at, int)
        assert isinstance(to, int)
        if at == to:
            return sheet
        row, rest = sheet.lifted(at)
        return read(read(rest).with_row(to, row))
    while column := sheet.missing_column(step):
        sheet = read(spliced(sheet.text, column))
    return read(spliced(sheet.text, sheet.pieces(step)))


def _told(value: Plain) -> Plain:
    """A value without what a table leaves out: empty texts and groups."""
    if isinstance(value, list):
        return [_told(item) for item in value]
    if isinstance(value, dict):
        kept = {key: _told(item) for key, item in value.items()}
        return {key: item for key, item in kept.items() if item not in (None, "", {})}
    return value


def _smaller(plain: Plain, edit: Edit) -> Iterator[Edit]:
    """The edits of single cells and whole rows that an edit is made of."""
    outcome(plain, edit)
    if isinstance(edit, SetValue) and len(edit.path) < 2:
        for step in steps(edit.path, value_at(plain, edit.path), edit.value):
            yield from _smaller(plain, step) if len(step.path) > 1 else (step,)
    elif isinstance(edit, SetValue):
        old = dict(leaves(_value_or_none(plain, edit.path), edit.path))
        new = dict(leaves(edit.value, edit.path))
        yield from (SetValue(path, new.get(path)) for path in {**old, **new} if old.get(path) != new.get(path))
    elif isinstance(edit, Remove) and len(edit.path) > 1:
        yield from (SetValue(path, None) for path, _ in leaves(value_at(plain, edit.path), edit.path))
    elif isinstance(edit, Rename) or len(edit.path) > (not isinstance(edit, Reorder)):
        raise refused("a table has cells, not groups of keys", "set the cells one by one", edit.path)
    else:
        yield edit


def _value_or_none(plain: Plain, path: FieldPath) -> Plain:
    try:
        return value_at(plain, path)
    except EditRefused:
        return None
