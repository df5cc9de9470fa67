"""YAML as a tree of plain text with the place of every value.

Only the structure of YAML is used, never its guesses about types: a title of ``1984``, ``no`` or
``2001-02-03`` stays the text that was written.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError, YAMLError
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode, SequenceNode

from .errors import FieldPath, Place, Problem, ShelfFileError

__all__ = ["Plain", "Tree", "parse_tree"]

Plain = str | None | list["Plain"] | dict[str, "Plain"]
"""A value without its places."""

MOST_VALUES = 200_000
"""More values than any shelf has: aliases that multiply are stopped here."""

DEEPEST = 30
"""Deeper nesting than any shelf has."""


@dataclass(frozen=True, slots=True)
class Tree:
    """A value and its place: text, None, a list of trees, or a mapping to trees.

    `keys` holds the places of a mapping's keys.
    """

    value: str | list[Tree] | dict[str, Tree] | None
    place: Place
    keys: dict[str, Place] = field(default_factory=dict)

    def plain(self) -> Plain:
        """The value alone."""
        if isinstance(self.value, list):
            return [item.plain() for item in self.value]
        if isinstance(self.value, dict):
            return {key: item.plain() for key, item in self.value.items()}
        return self.value

    def child(self, part: str | int) -> Tree | None:
        """The value under a key or an index, if there is one."""
        if isinstance(self.value, dict) and isinstance(part, str):
            return self.value.get(part)
        if isinstance(self.value, list) and isinstance(part, int) and part < len(self.value):
            return self.value[part]
        return None

    def place_of(self, path: FieldPath) -> Place:
        """The place of a field, or of the nearest thing around it that is written in the file."""
        node, place = self, self.place
        for part in path:
            below = node.child(part)
            if below is None:
                return node.keys.get(str(part), place)
            node, place = below, below.place
        return place


def parse_tree(text: str, file: str) -> Tree:
    """Read YAML text.

    Raises:
        ShelfFileError: the text is not YAML, a key stands twice, or aliases multiply beyond measure.
    """
    reader = _Reader(file, text.splitlines())
    try:
        node = YAML(typ="rt", pure=True).compose(text)
    except MarkedYAMLError as trouble:
        raise _syntax_error(trouble, reader.place) from None
    except (YAMLError, RecursionError, ValueError) as trouble:
        raise ShelfFileError(
            (
                Problem(
                    f"this is not YAML: {_first_line(trouble)}",
                    "save the shelf as plain text",
                    place=Place(file),
                ),
            )
        ) from None
    if node is None:
        raise ShelfFileError(
            (
                Problem(
                    "the file is empty",
                    "describe a shelf; 'bookmaker new DIR' writes one to start from",
                    place=Place(file),
                ),
            )
        )
    tree = reader.tree(node)
    if reader.problems:
        raise ShelfFileError(reader.problems)
    return tree


def _first_line(trouble: Exception) -> str:
    return (str(trouble).splitlines() or [type(trouble).__name__])[0][:120]


def _syntax_error(trouble: MarkedYAMLError, place: Callable[[int, int], Place]) -> ShelfFileError:
    mark = trouble.problem_mark or trouble.context_mark
    what = " ".join(str(part) for part in (trouble.context, trouble.problem) if part)
    where = place(mark.line, mark.column) if mark else place(0, 0)
    remedy = "indent keys of one group alike, with spaces, and put text with : or # in quotes"
    return ShelfFileError((Problem(f"this line is not YAML ({what})", remedy, place=where),))


class _Reader:
    """Turns YAML nodes into trees, collecting what is wrong on the way."""

    def __init__(self, file: str, lines: list[str]) -> None:
        self.file = file
        self.lines = lines
        self.problems: list[Problem] = []
        self.seen = 0

    def place(self, line: int, column: int) -> Place:
        source = self.lines[line] if line < len(self.lines) else ""
        return Place(self.file, line + 1, column + 1, source)

    def tree(self, node: Node, depth: int = 0) -> Tree:
        self.seen += 1
        place = self.place(node.start_mark.line, node.start_mark.column)
        if self.seen > MOST_VALUES or depth > DEEPEST:
            what = "aliases or nested lists make more values than any shelf has"
            raise ShelfFileError((Problem(what, "write the values out, without & and *", place=place),))
        if isinstance(node, SequenceNode):
            return Tree([self.tree(item, depth + 1) for item in node.value], place)
        if isinstance(node, MappingNode):
            return self._mapping(node, place, depth)
        assert isinstance(node, ScalarNode)
        empty = node.value == "" and node.style is None
        return Tree(None if empty or (node.style is None and node.value in {"~", "null"}) else node.value, place)

    def _mapping(self, node: MappingNode, place: Place, depth: int) -> Tree:
        values: dict[str, Tree] = {}
        keys: dict[str, Place] = {}
        for key, value, at in self._pairs(node):
            if key in values:
                first = keys[key].line
                message = f"the key {key!r} stands here a second time; it is on line {first} already"
                self.problems.append(Problem(message, "keep one of the two", place=at))
            values[key], keys[key] = self.tree(value, depth + 1), at
        return Tree(values, place, keys)

    def _pairs(self, node: MappingNode) -> Iterator[tuple[str, Node, Place]]:
        for key, value in node.value:
            at = self.place(key.start_mark.line, key.start_mark.column)
            if isinstance(key, ScalarNode):
                yield str(key.value), value, at
            else:
                self.problems.append(
                    Problem("a key is a word here, not a list or a group", "write key: value", place=at)
                )
