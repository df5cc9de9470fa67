"""YAML texts edited: each edit becomes pieces of text to be replaced, and the outcome is read again and compared."""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import assert_never

from ...ground.problems import Problem, ShelfFileError
from ..subjects import named_in
from ..yaml_tree import Plain
from .edit import Copy, Edit, Insert, Move, Remove, Rename, Reorder, SetValue
from .lifting import copied, moved, reordered
from .manner import AS_IT_COMES, Manner, indents_of
from .outcome import outcome, sole_around, value_at
from .reach import needed, reach, refuse_names_within
from .refusal import EditRefused
from .setting import inserted, removed, renamed, with_value
from .steps import steps
from .writing import Writer
from .written import Splice, Written, read_written, spliced

__all__ = ["edit_yaml", "yaml_refusal"]


def edit_yaml(text: str, edits: Iterable[Edit], manner: Manner = AS_IT_COMES, file: str = "the file") -> str | Problem:
    """The text after one edit after the other, or why one of them cannot be made; then none is.

    Nothing changes but the entries that the edits name, and what joins them to their neighbours.

    >>> edit_yaml("books:\\n  - title: Fog   # thick\\n", [SetValue(("books", 0, "title"), "Salt: a tale")])
    'books:\\n  - title: "Salt: a tale"   # thick\\n'
    """
    told: Problem | None = None
    asked = tuple(edits)
    for with_lines in (True, False):
        try:
            desk = _Desk(text, manner, file, with_lines)
            for edit in asked:
                desk.make(edit)
            return desk.checked()
        except _NotAsAsked as refusal:
            told = _named_in_text(refusal.problem, text, file)
        except EditRefused as refusal:
            return _named_in_text(refusal.problem, text, file)
        except ShelfFileError as refusal:
            return refusal.problems[0]
    assert told is not None
    return told


def yaml_refusal(written: Written, edit: Edit) -> Problem | None:
    """Why an edit cannot be made, told by the way to its place and what stands there, without making it."""
    try:
        outcome(written.tree.plain(), edit)
        found = reach(written, edit.path)
        if not isinstance(edit, Insert | SetValue):
            refuse_names_within(written, needed(found, edit.path).node, edit.path)
        if isinstance(edit, Move | Copy):
            reach(written, edit.to)
    except EditRefused as refusal:
        return named_in(refusal.problem, written.tree)
    return None


def _named_in_text(problem: Problem, text: str, file: str) -> Problem:
    """A refusal with what it is about named as the text does."""
    return named_in(problem, read_written(text, file).tree)


class _NotAsAsked(EditRefused):
    """The text would not read as was asked for; what stands around the place has a form that is not edited."""


class _Desk:
    """A text at work, and the pieces that were not put into it yet: they lie apart, and are put in together.

    So a thousand values are set while the text is read twice.
    """

    def __init__(self, text: str, manner: Manner, file: str, with_lines: bool) -> None:
        self.file = file
        self.written = read_written(text, file)
        self.writer = Writer(manner, indents_of(self.written), with_lines)
        self.plain = self.written.tree.plain()
        self.pending: list[Splice] = []
        self.last: Edit | None = None

    def make(self, edit: Edit) -> None:
        """Make an edit.

        Raises:
            EditRefused: it cannot be made.
        """
        after, self.last = outcome(self.plain, edit), edit
        for step in _smaller(self.plain, edit):
            if isinstance(step, SetValue) or (isinstance(step, Remove) and isinstance(step.path[-1], str)):
                self._lay(step)
            else:
                self._read_again()
                self._read(self._text_after(step))
        self.plain = after

    def _lay(self, step: SetValue | Remove) -> None:
        """Lay the pieces of a step beside the others; where they meet, those come first."""
        try:
            pieces = _pieces(self.written, step, self.writer)
        except EditRefused:
            if not self.pending:
                raise
            pieces = []
        if not pieces or any(self._meets(piece) for piece in pieces):
            self._read_again()
            pieces = _pieces(self.written, step, self.writer)
        for piece in pieces:
            insort(self.pending, piece, key=lambda one: (one.start, one.end))

    def _meets(self, piece: Splice) -> bool:
        at = bisect_left(self.pending, piece.start, key=lambda one: one.start)
        return any(one.start <= piece.end and piece.start <= one.end for one in self.pending[max(at - 1, 0) : at + 1])

    def _read_again(self) -> None:
        if self.pending:
            text, self.pending = spliced(self.written.text, self.pending), []
            self._read(text)

    def _read(self, text: str) -> None:
        try:
            self.written = read_written(text, self.file)
        except ShelfFileError:
            raise self._not_as_asked("cannot be written into the lines around it") from None
        self.writer = replace(self.writer, indents=indents_of(self.written))

    def _text_after(self, step: Edit) -> str:
        try:
            return _text_after(self.written, step, self.writer)
        except ShelfFileError:
            raise self._not_as_asked("cannot be taken out of the lines around it") from None

    def _not_as_asked(self, what: str) -> _NotAsAsked:
        path = self.last.path if self.last else ()
        return _NotAsAsked(Problem(what, "change it in the file by hand", field=path, subject=path))

    def checked(self) -> str:
        """The text, which reads as was asked for.

        Raises:
            EditRefused: it does not.
        """
        self._read_again()
        read = self.written.tree.plain()
        if read != self.plain or not _in_order(read, self.plain, self.last):
            raise self._not_as_asked("cannot be written so that it reads as it should")
        return self.written.text


def _in_order(read: Plain, wanted: Plain, last: Edit | None) -> bool:
    """Whether the keys of a group in which one was moved or renamed follow one another as they should."""
    if not isinstance(last, Move | Rename):
        return True
    path = (last.to if isinstance(last, Move) else last.path)[:-1]
    found, meant = value_at(read, path), value_at(wanted, path)
    return not isinstance(found, dict) or not isinstance(meant, dict) or list(found) == list(meant)


def _smaller(plain: Plain, edit: Edit) -> Iterator[Edit]:
    """The edits that an edit is made of."""
    if isinstance(edit, Remove) and edit.whole_groups:
        yield Remove(sole_around(plain, edit.path))
    elif isinstance(edit, SetValue):
        try:
            old = value_at(plain, edit.path)
        except EditRefused:
            yield edit
        else:
            yield from steps(edit.path, old, edit.value)
    else:
        yield edit


def _pieces(written: Written, step: SetValue | Remove, writer: Writer) -> list[Splice]:
    if isinstance(step, SetValue):
        return with_value(written, step.path, step.value, writer)
    return removed(written, step.path)


def _text_after(written: Written, step: Edit, writer: Writer) -> str:
    match step:
        case SetValue() | Remove():
            return spliced(written.text, _pieces(written, step, writer))
        case Insert(path, value):
            return spliced(written.text, inserted(written, path, value, writer))
        case Rename(path, key):
            return spliced(written.text, renamed(written, path, key))
        case Move():
            return moved(written, step, writer)
        case Copy():
            return copied(written, step, writer)
        case Reorder():
            return reordered(written, step)
        case _:
            assert_never(step)
