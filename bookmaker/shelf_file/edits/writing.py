"""New values as text: on one line, between brackets and braces where they fit, or on lines of their own."""

from __future__ import annotations

from dataclasses import dataclass, replace

from ...ground.problems import FieldPath
from ..yaml_tree import Plain
from .manner import Indents, Manner
from .scalars import Quotes, lines_of_block, on_one_line

__all__ = ["Value", "Writer"]

WIDEST = 110
"""Columns; a group that would reach further is written on lines of its own."""


@dataclass(frozen=True, slots=True)
class Value:
    """A value as text: what stands behind its key or dash, and the lines below, set in already."""

    head: str
    below: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Writer:
    """Writes values in the manner of a file."""

    manner: Manner
    indents: Indents
    with_lines: bool = True
    """Whether texts of several lines are written on lines of their own; else in quotes, which fit anywhere."""

    def with_items_at(self, further: int) -> Writer:
        """The same where items stand so many columns behind their dash, if they stand there at all."""
        return replace(self, indents=replace(self.indents, item=further)) if further > 1 else self

    def scalar(self, value: str | None, path: FieldPath, *, braces: bool, like: Quotes = "") -> str:
        """A single value on one line."""
        return on_one_line(value, braces=braces, like=like, words=self.manner.is_words(path))

    def in_braces(self, value: Plain, path: FieldPath, like: Quotes = "") -> str:
        """Any value on one line, as it stands between braces.

        >>> from .manner import AS_IT_COMES
        >>> Writer(AS_IT_COMES, Indents()).in_braces({"title": "Salt, Rope", "block": {"pages": "40"}}, ())
        '{title: "Salt, Rope", block: {pages: 40}}'
        """
        if isinstance(value, list):
            return f"[{', '.join(self.in_braces(item, (*path, at)) for at, item in enumerate(value))}]"
        if isinstance(value, dict):
            return f"{{{', '.join(self.pair(key, item, (*path, key)) for key, item in value.items())}}}"
        return self.scalar(value, path, braces=True, like=like)

    def pair(self, key: str, value: Plain, path: FieldPath) -> str:
        """A key with its value between braces."""
        return f"{on_one_line(key, braces=True)}: {self.in_braces(value, path)}"

    def value(self, value: Plain, path: FieldPath, column: int, *, dash: bool, braces: bool | None) -> Value:
        """A value behind a key or a dash that begins at a column.

        `braces` says whether values beside it stand between braces; None, if there are none.
        """
        if isinstance(value, list | dict) and value:
            inline = self.in_braces(value, path)
            fits = column + len(str(path[-1:])) + len(inline) <= WIDEST and not _has_lines(value)
            if fits and (_is_flat(value) if braces is None else braces):
                return Value(inline)
            return self._on_lines(value, path, column, dash)
        if isinstance(value, str) and self.with_lines and (block := lines_of_block(value)):
            inner = column + (self.indents.item if dash else self.indents.group)
            return Value(block[0], tuple(_set_in(line, inner) for line in block[1]))
        return Value(self.in_braces(value, path) if value in ([], {}) else self._plain(value, path))

    def _plain(self, value: Plain, path: FieldPath) -> str:
        assert value is None or isinstance(value, str)  # lists and groups went before
        return self.scalar(value, path, braces=False)

    def _on_lines(self, value: list[Plain] | dict[str, Plain], path: FieldPath, column: int, dash: bool) -> Value:
        is_list = isinstance(value, list)
        inner = column + (self.indents.item if dash else self.indents.listing if is_list else self.indents.group)
        lines: list[str] = []
        for part, item in enumerate(value) if isinstance(value, list) else value.items():
            here = (*path, part)
            written = self.value(item, here, inner, dash=is_list, braces=True if _is_flat(item) else None)
            lines += self.entry(part, written, inner)
        if dash:
            return Value(lines[0].lstrip(" "), tuple(lines[1:]))
        return Value("", tuple(lines))

    def entry(self, part: str | int, value: Value, column: int) -> list[str]:
        """The lines of an entry: a key or a dash, and the value behind it."""
        mark = f"{on_one_line(part, braces=False)}:" if isinstance(part, str) else "-".ljust(self.indents.item - 1)
        return [" " * column + (f"{mark} {value.head}" if value.head else mark), *value.below]


def _is_flat(value: Plain) -> bool:
    """Whether a value holds no groups, or is a group that holds neither groups nor lists."""
    if isinstance(value, list):
        return not any(isinstance(item, list | dict) for item in value)
    return not isinstance(value, dict) or not any(isinstance(item, list | dict) and item for item in value.values())


def _has_lines(value: Plain) -> bool:
    """Whether a text in a value goes over several lines."""
    if isinstance(value, dict):
        return any(map(_has_lines, value.values()))
    return any(map(_has_lines, value)) if isinstance(value, list) else "\n" in (value or "")


def _set_in(line: str, column: int) -> str:
    return " " * column + line if line else line
