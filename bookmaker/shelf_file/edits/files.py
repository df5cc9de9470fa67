"""Files edited: read, changed as text, and written back in their own encoding, unless somebody else changed them."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from ...ground.files import SourceFile, read_file
from ...ground.output import exchange_file
from ...ground.problems import BookmakerError, Problem, ShelfFileError
from ...ground.quantities import show
from ..book_list.table import ARCHIVES, TABLE
from ..encodings import Encoded, NotText, decoded
from ..source_text import SHELF, TABLES
from .edit import Edit
from .manner import Manner
from .table_text import edit_table
from .yaml_text import edit_yaml

__all__ = ["EditedFile", "edit_file", "edited_data", "read_maker_file", "undo"]

READ_AGAIN = "look at it again, then make the change once more"


@dataclass(frozen=True, slots=True)
class EditedFile:
    """A file that was edited: its digest now, and what it held before, for who wants that back."""

    path: Path
    digest: str
    before: SourceFile


def edit_file(
    path: Path, edits: Iterable[Edit], keys: Mapping[str, bool], manner: Manner, digest: str | None = None
) -> EditedFile | Problem:
    """Edit a shelf file, or a table of books by the end of its name; or say why not, and leave it as it is.

    With the `digest` of what was seen a file that was changed since is not touched; without, the edits are made on
    what it holds now. What somebody writes while this runs is never overwritten. `keys` are those of a book.
    """
    try:
        file = read_maker_file(path)
        if digest is not None and file.digest != digest:
            return Problem(f"{path.name} was changed since it was read", READ_AGAIN)
        data = edited_data(file, edits, keys, manner)
        return data if isinstance(data, Problem) else _exchanged(file, data)
    except BookmakerError as refusal:
        return refusal.problems[0]


def read_maker_file(path: Path) -> SourceFile:
    """A shelf file, or a table of books by the end of its name.

    Raises:
        ShelfFileError: it cannot be read.
    """
    return read_file(path, TABLE if _is_table(path) else SHELF)


def undo(edited: EditedFile) -> EditedFile | Problem:
    """Give a file the bytes that it had before an edit, if it was not changed since."""
    try:
        now = read_maker_file(edited.path)
        if now.digest != edited.digest:
            return Problem(f"{edited.path.name} was changed since the edit", "change it by hand")
        return _exchanged(now, edited.before.data)
    except BookmakerError as refusal:
        return refusal.problems[0]


def edited_data(file: SourceFile, edits: Iterable[Edit], keys: Mapping[str, bool], manner: Manner) -> bytes | Problem:
    """The bytes of a file with its text edited; mark, encoding and line ends are its own."""
    if file.data.startswith(ARCHIVES):
        return Problem(f"{file.name} is a spreadsheet", "change it in its own program, or save it as CSV")
    try:
        old = decoded(file.data, foreign=_is_table(file.path))
    except NotText as trouble:
        return Problem(f"{file.name} is not text in {trouble.name}", "save it again as UTF-8")
    if _is_table(file.path):
        new = edit_table(old.text, edits, keys, file.name)
    else:
        new = edit_yaml(old.text, edits, manner, file.name)
    return new if isinstance(new, Problem) else _encoded(old, new, file.name)


def _encoded(old: Encoded, text: str, name: str) -> bytes | Problem:
    try:
        return old.with_text(text).data()
    except UnicodeEncodeError as trouble:
        letters = show(text[trouble.start : trouble.end])
        return Problem(
            f"{name} is in {old.name}, which has no {letters!r}", "save it as UTF-8 first, or write it without"
        )


def _exchanged(file: SourceFile, data: bytes) -> EditedFile:
    wanted = TABLE if _is_table(file.path) else SHELF
    if len(data) > wanted.largest:
        raise ShelfFileError((Problem(f"{file.name} would become too large", wanted.smaller),))
    if data != file.data:
        exchange_file(file.path, data, wanted, file.digest)
    return EditedFile(file.path, hashlib.sha256(data).hexdigest(), file)


def _is_table(path: Path) -> bool:
    return path.suffix.casefold() in TABLES
