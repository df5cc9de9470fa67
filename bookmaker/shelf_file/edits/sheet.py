"""A table as rows and cells with their places, and the pieces of its text that an edit replaces."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cached_property

from ...ground.problems import FieldPath
from ...ground.quantities import show
from ..book_list.cells import LINE_END, NOTE, Row
from ..book_list.columns import column_name, known_names
from ..book_list.listed import ListedBooks
from ..yaml_tree import Plain
from .edit import Copy, Edit, Insert, Remove, Reorder, SetValue
from .refusal import refused, refused_of
from .written import Splice, spliced

__all__ = ["Sheet", "leaves"]


class Sheet:
    """A table to be edited: each edit is of one cell, or of whole rows."""

    def __init__(self, listed: ListedBooks, keys: Mapping[str, bool]) -> None:
        self.listed, self.keys = listed, keys
        self.text, self.separator = listed.table.text, listed.separator

    def plain(self) -> Plain:
        """The books."""
        return [tree.plain() for tree in self.listed.trees()]

    @cached_property
    def line_break(self) -> str:
        """What ends the first line."""
        found = LINE_END.search(self.text)
        return found[0] if found else "\n"

    @cached_property
    def heads(self) -> dict[int, int]:
        """Where the notes above each row begin, by the row's line; without notes, where it begins itself."""
        found: dict[int, int] = {}
        head: int | None = None
        for row in self.listed.rows:
            start = row.spans[0][0]
            if row.is_note:
                head = start if head is None else head
            else:
                found[row.line] = start if head is None else head
                head = None
        return found

    def pieces(self, edit: Edit) -> list[Splice]:
        """What an edit replaces; all columns it needs are there."""
        match edit:
            case SetValue(path, value):
                return self._with_cell(path, "" if value is None else str(value))
            case Remove((int(at), *_)):
                return [self._without(self.listed.books[at])]
            case Insert((int(at), *_), value):
                return [self._between(at, self._line(value, edit.path))]
            case Copy((int(at), *_), (int(to), *_)):
                row = self.listed.books[at]
                return [self._between(to, self._text(row.spans[0][0], row))]
            case Reorder(_, order):
                return self._in_order(order)
        raise refused("a table has cells, not groups of keys", "set the cells one by one", edit.path)

    def lifted(self, at: int) -> tuple[str, str]:
        """A row with its notes, and the text without them."""
        row = self.listed.books[at]
        return self._text(self.heads[row.line], row), spliced(self.text, [self._without(row)])

    def with_row(self, at: int, text: str) -> str:
        """The text with a row put between others."""
        return spliced(self.text, [self._between(at, text)])

    def missing_column(self, edit: Edit) -> list[Splice]:
        """What adds a column that an edit needs; nothing, if all are there."""
        names: list[str] = []
        if isinstance(edit, SetValue) and edit.value is not None:
            names = [_dotted(edit.path[1:])]
        elif isinstance(edit, Insert):
            names = [_dotted(path) for path, _ in leaves(edit.value, ())]
        present = {column.key for column in self.listed.columns}
        name = next((name for name in names if name not in present), None)
        if name is None:
            return []
        if name not in known_names(self.keys).values():
            raise refused(f"no column is called {show(name)!r}", "choose a key of a book that is no group", edit.path)
        header, *books = self.listed.header, *self.listed.books
        width = len(header.cells)
        # rows that are as long as the first line stay so
        whole = [row for row in books if len(row.cells) == width] if self._is_even else []
        at_ends = [Splice(row.spans[-1][1], row.spans[-1][1], self.separator) for row in whole]
        end = header.spans[-1][1]
        return [Splice(end, end, self.separator + self._cell(column_name(name), width + 1, edit.path)), *at_ends]

    @cached_property
    def _is_even(self) -> bool:
        return all(len(row.cells) == len(self.listed.header.cells) for row in self.listed.books)

    def _with_cell(self, path: FieldPath, text: str) -> list[Splice]:
        at, key = path[0], _dotted(path[1:])
        number = next((column.number for column in self.listed.columns if column.key == key), 0)
        if not number or not isinstance(at, int):
            return []
        row = self.listed.books[at]
        if number > len(row.cells):
            end = row.spans[-1][1]
            missing = self.separator * (number - len(row.cells))
            return [Splice(end, end, missing + self._cell(text, number, path))] if text else []
        start, end = row.spans[number - 1]
        old = self.text[start:end]
        start, end = start + len(old) - len(old.lstrip(" ")), end - (len(old) - len(old.rstrip(" ")))
        old = old.strip(" ")
        start = min(start, end)
        needless = old.startswith('"') and not self._needs_quotes(row.cell(number))
        return [Splice(start, end, self._cell(text, number, path, quotes=bool(needless and text)))]

    def _cell(self, text: str, number: int, path: FieldPath, *, quotes: bool = False) -> str:
        """A text as it stands in a cell."""
        if text != text.strip():
            raise refused("a cell cannot keep the blanks around its text", "leave them out", path)
        if number == 1 and f"{text} ".startswith(NOTE):
            raise refused(f"a line of a table that begins with {NOTE}is a note", "choose another beginning", path)
        if not quotes and not self._needs_quotes(text):
            return text
        return '"' + text.replace('"', '""') + '"'

    def _needs_quotes(self, text: str) -> bool:
        return any(sign in text for sign in (self.separator, '"', "\n", "\r"))

    def _line(self, value: Plain, path: FieldPath) -> str:
        """A new row."""
        said = {_dotted(key): text for key, text in leaves(value, ())}
        texts = {column.number: said.get(column.key, "") for column in self.listed.columns}
        width = len(self.listed.header.cells)
        cells = [self._cell(texts.get(number, ""), number, path) for number in range(1, width + 1)]
        while not self._is_even and cells and not cells[-1]:
            cells.pop()
        return self.separator.join(cells)

    def _text(self, start: int, row: Row) -> str:
        """A row from where it, or its notes, begin, without the end of its last line."""
        return self.text[start : row.spans[-1][1]]

    def _without(self, row: Row) -> Splice:
        start = self.heads[row.line]
        ends_open = row.behind == len(self.text) == row.spans[-1][1]
        if ends_open:  # the last line has no end: nor has the one before it
            start -= len(self.line_break) if self.text[:start].endswith(self.line_break) else 0
        return Splice(start, row.behind, "")

    def _between(self, at: int, text: str) -> Splice:
        """A row put behind the one before it, or at the top."""
        row = self.listed.books[at - 1] if at else self.listed.header
        if row.behind == row.spans[-1][1]:
            return Splice(row.behind, row.behind, self.line_break + text)
        return Splice(row.behind, row.behind, text + self.line_break)

    def _in_order(self, order: tuple[int, ...]) -> list[Splice]:
        books = self.listed.books
        texts = [self._text(self.heads[row.line], row) for row in books]
        places = zip(books, order, strict=True)
        return [Splice(self.heads[row.line], row.spans[-1][1], texts[number]) for row, number in places]


def leaves(value: Plain, path: FieldPath) -> Iterator[tuple[FieldPath, str]]:
    """The cells that a value fills, each with its path.

    Raises:
        EditRefused: there is a list in it.
    """
    if isinstance(value, list):
        raise refused_of(path, "is a list, and a cell holds one value", "write it in YAML")
    if isinstance(value, dict):
        for key, below in value.items():
            yield from leaves(below, (*path, key))
    elif value:
        yield path, value


def _dotted(path: FieldPath) -> str:
    return ".".join(map(str, path))
