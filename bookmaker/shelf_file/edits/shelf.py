"""Edits of a shelf as it was read: each put into the file that has the place, the shelf file or a table of books."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from ...ground.problems import BookmakerError, Problem
from ...ground.quantities import show
from ..fields.entry import Entry
from ..reading import ShelfFile
from ..source_text import TABLES, source_text
from ..subjects import named_in
from ..yaml_tree import Tree
from .edit import Edit, SetValue
from .files import EditedFile, edit_file, edited_data, read_maker_file, undo
from .manner import Manner
from .origins import placed
from .refusal import EditRefused
from .written import Written, read_written
from .yaml_text import yaml_refusal

__all__ = ["edit_shelf", "shelf_refusal", "supposed_shelf"]


def edit_shelf(
    shelf: ShelfFile[Entry],
    edits: Sequence[Edit],
    keys: Mapping[str, bool],
    manner: Manner,
    digests: Mapping[str, str] | None = None,
) -> Sequence[EditedFile] | Problem:
    """Make edits in the files of a shelf, all of them or none; what was edited, for who wants it undone.

    Paths count books as the shelf was read, one after the other, whatever file they are in; an edit that numbers
    books anew stands last. `keys` are those of a book. `digests`, by the names of the files, are those of what was
    read: a file that was changed since is not touched.
    """
    by_file = _by_file(shelf, edits)
    if isinstance(by_file, Problem):
        return by_file
    done: list[EditedFile] = []
    for file, there in by_file.items():
        path = _path_of(file, shelf)
        made = edit_file(path, there, keys, manner, (digests or {}).get(file))
        if isinstance(made, Problem):
            for edited in reversed(done):
                undo(edited)
            return made
        done.append(made)
    return done


def supposed_shelf(
    shelf: ShelfFile[Entry], edits: Sequence[Edit], keys: Mapping[str, bool], manner: Manner
) -> Mapping[Path, bytes] | Problem:
    """What the files of a shelf would hold after edits, by their paths; nothing is written."""
    by_file = _by_file(shelf, edits)
    if isinstance(by_file, Problem):
        return by_file
    found: dict[Path, bytes] = {}
    try:
        for file, there in by_file.items():
            path = _path_of(file, shelf)
            data = edited_data(read_maker_file(path), there, keys, manner)
            if isinstance(data, Problem):
                return data
            found[path] = data
    except BookmakerError as refusal:
        return refusal.problems[0]
    return found


def _path_of(file: str, shelf: ShelfFile[Entry]) -> Path:
    return shelf.path if file == shelf.path.name else shelf.folder / file


def _by_file(shelf: ShelfFile[Entry], edits: Sequence[Edit]) -> Mapping[str, list[Edit]] | Problem:
    """The edits as they are made in each file."""
    try:
        written = read_written(source_text(shelf.path), shelf.path.name)
        by_file: dict[str, list[Edit]] = {}
        for edit in edits:
            file, placed_edit = placed(shelf.tree, written, edit)
            by_file.setdefault(file, []).append(placed_edit)
    except EditRefused as refusal:
        return named_in(refusal.problem, shelf.tree)
    except BookmakerError as refusal:
        return refusal.problems[0]
    return by_file


def shelf_refusal(tree: Tree, written: Written, edit: Edit, keys: Mapping[str, bool]) -> Problem | None:
    """Why an edit of a shelf cannot be made, told beforehand, so that nobody is offered what will not work.

    None says that its place can be edited; a form of text that nobody foresaw may still refuse the edit itself.
    """
    try:
        file, there = placed(tree, written, edit)
    except EditRefused as refusal:
        return named_in(refusal.problem, tree)
    if file == tree.place.file:
        return yaml_refusal(written, there)
    if not file.casefold().endswith(TABLES):
        return Problem(f"{show(file)} is a spreadsheet", "change it in its own program", field=edit.path)
    if isinstance(there, SetValue) and ".".join(map(str, there.path[1:])) not in keys:
        return Problem("a cell holds one value", "write the book in YAML", field=edit.path)
    return None
