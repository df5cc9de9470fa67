"""YAML as a tree of plain text with the place of every value.

Only the structure of YAML is used, never its guesses about types: a title of ``1984``, ``no`` or
``2001-02-03`` stays the text that was written.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from ruamel.yaml.error import MarkedYAMLError, YAMLError

from ..ground.kept import Kept
from ..ground.problems import FieldPath, Place, Problem, ShelfFileError
from .slips.marks import cut_short, written_from
from .slips.repeats import Again, repeated
from .slips.unreadable import syntax_error
from .slips.values import TEXTS, wrong_sign
from .yaml_nodes import GroupNode, Lines, ListNode, Node, RepeatNode, ScalarNode, read_nodes
from .yaml_pieces import Piece, Pieced, in_pieces

__all__ = ["HIDDEN", "Plain", "Tree", "parse_nodes", "parse_tree"]

Plain = str | None | list["Plain"] | dict[str, "Plain"]
"""A value without its places."""

MOST_VALUES = 200_000
"""More values than any shelf has: aliases that multiply are stopped here."""

DEEPEST = 30
"""Deeper nesting than any shelf has."""

DEPTH_OF_ITEMS = 2
"""How deep an item of a list of the whole lies: as `_Reader.tree` counts."""

ESCAPED = "\0\a\b\v\f\r"
"""What a letter after a \\ stands for, as one that begins the name of a folder."""

HIDDEN = ("Cc", "Cs")
"""Unicode categories of control characters and of halves of characters."""


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

    def places(self) -> Iterator[Place]:
        """The places of the value, of its keys, and of everything in it."""
        yield self.place
        yield from self.keys.values()
        below = self.value.values() if isinstance(self.value, dict) else self.value
        for tree in below if below and not isinstance(below, str) else ():
            yield from tree.places()

    def below(self, path: FieldPath) -> Tree | None:
        """What is written in a field, if anything is."""
        node: Tree | None = self
        for part in path:
            node = node.child(part) if node else None
        return node

    def holds(self, path: FieldPath) -> bool:
        """Whether the field is written, by its value or at least by its key."""
        return self.below(path) is not None

    def key_place_of(self, path: FieldPath) -> Place:
        """The place of a field's key; of the field, where it has none."""
        around: Tree | None = self
        for part in path[:-1]:
            around = around.child(part) if around else None
        return (around.keys if around else {}).get(str(path[-1])) or self.place_of(path)

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
    pieced = in_pieces(text)
    reader = _Reader(file, Lines(text), pieced)
    return reader.whole(pieced.rest if pieced else _nodes(text, reader))


def parse_nodes(text: str, file: str) -> tuple[Node, Tree]:
    """The same with the nodes that the tree was made of.

    Raises:
        ShelfFileError: the text is not YAML, a key stands twice, or aliases multiply beyond measure.
    """
    pieced = in_pieces(text)
    reader = _Reader(file, Lines(text))
    node = pieced.whole if pieced else _nodes(text, reader)
    return node, reader.whole(node)


def _nodes(text: str, reader: _Reader) -> Node:
    """The node that is the whole text.

    Raises:
        ShelfFileError: the text is not YAML, or empty.
    """
    nowhere = Place(reader.file)
    try:
        node = read_nodes(text)
    except MarkedYAMLError as trouble:
        raise syntax_error(trouble, reader.lines.all, reader.place) from None
    except RecursionError:
        raise ShelfFileError((_too_much(nowhere),)) from None
    except (YAMLError, ValueError) as trouble:
        said = f"this is not YAML: {_first_line(trouble)}"
        raise ShelfFileError((Problem(said, "save the shelf as plain text", place=nowhere),)) from None
    if node is None:
        remedy = "describe a shelf; 'bookmaker new DIR' writes one to start from"
        raise ShelfFileError((Problem("the file is empty", remedy, place=nowhere),))
    return node


def _too_much(place: Place) -> Problem:
    what = "aliases or nested lists make more values than any shelf has"
    return Problem(what, "write the values out, without & and *", place=place)


def _first_line(trouble: Exception) -> str:
    return (str(trouble).splitlines() or [type(trouble).__name__])[0][:120]


class _ReadItem(NamedTuple):
    """What stands in a piece, what is wrong with it, and how many values it has."""

    tree: Tree
    problems: Sequence[Problem]
    seen: int


ITEMS = Kept[_ReadItem](most=4096)
"""Pieces that were read, by file, text and line."""


class _Reader:
    """Turns YAML nodes into trees, collecting what is wrong on the way; its lines stand behind so many `above`."""

    def __init__(self, file: str, lines: Lines, pieced: Pieced | None = None, above: int = 0) -> None:
        self.file = file
        self.lines = lines
        self.pieced = pieced
        self.above = above
        self.problems: list[Problem] = []
        self.seen = 0

    def whole(self, node: Node) -> Tree:
        tree = self.tree(node)
        if self.problems:
            raise ShelfFileError(self.problems)
        return tree

    def place(self, line: int, column: int) -> Place:
        return Place(self.file, self.above + line + 1, column + 1, self.lines.line(line))

    def at(self, offset: int) -> Place:
        return self.place(*self.lines.number(offset))

    def tree(self, written: Node, depth: int = 0, *, words: bool = False) -> Tree:
        """A node as a tree; whether it holds `words`, which may begin with any sign."""
        node = written.meant if isinstance(written, RepeatNode) else written
        self.seen += 1
        place = self.at((node or written).start)
        if isinstance(written, ScalarNode):
            self._refuse_named(written, place, words)
        if node is None or self.seen > MOST_VALUES or depth > DEEPEST:
            raise ShelfFileError((_too_much(place),))
        if self.pieced and node is self.pieced.listed:
            return Tree([self._item(piece) for piece in self.pieced.pieces], place)
        if isinstance(node, ListNode):
            return Tree([self.tree(item, depth + 1) for item in node.items], place)
        if isinstance(node, GroupNode):
            return self._group(node, place, depth)
        assert isinstance(node, ScalarNode)
        self._refuse_hidden(node.text, place)
        if node.text:
            self._refuse_cut_short(node, node.style)
        return Tree(None if node.is_nothing else node.text, place)

    def _item(self, piece: Piece) -> Tree:
        """What stands in a piece: found again while it stands on that line, whatever changes around it."""
        above = self.lines.number(piece.begin)[0]
        item = _Reader(self.file, Lines(piece.text), above=above)
        read = ITEMS.get((self.file, piece.text, above), lambda: item.read(piece.node))
        self.seen += read.seen
        self.problems += read.problems
        return read.tree

    def read(self, item: Node) -> _ReadItem:
        return _ReadItem(self.tree(item, DEPTH_OF_ITEMS), self.problems, self.seen)

    def _refuse_hidden(self, text: str, place: Place) -> None:
        """Escapes in quotes can spell signs that would command a terminal, or that no file can hold."""
        if text.isprintable():  # as nearly all are
            return
        hidden = next((sign for sign in text if unicodedata.category(sign) in HIDDEN and sign not in "\n\t"), "")
        if hidden:
            message = f"the text holds the control character U+{ord(hidden):04X}"
            remedy = "write visible letters only"
            if hidden in ESCAPED and "\\" in place.source:
                remedy += "; a \\ in double quotes begins a sign: write / in paths, or put the text in single quotes"
            self.problems.append(Problem(message, remedy, place=place))

    def _refuse_named(self, node: ScalarNode, place: Place, words: bool) -> None:
        """A text that begins with a sign which YAML takes away: a ! or an & with a name that nothing repeats."""
        sign = self.lines.text[node.start : node.start + 1]
        named = node.anchor and f"*{node.anchor}" not in self.lines.text and (words or not node.text)
        if named or (sign == "!" and not node.style):
            text = written_from(place.source, place.column - 1)
            self.problems.append(replace(wrong_sign(text), place=place))

    def _refuse_cut_short(self, last: ScalarNode, style: str, *, colon: int = 0) -> None:
        """A # may turn into a note what was meant as the value, or its end; `colon` is the length of one after it."""
        if not style and (lost := cut_short("" if colon else last.text, self.at(last.end + colon))):
            self.problems.append(lost)

    def _group(self, node: GroupNode, place: Place, depth: int) -> Tree:
        values: dict[str, Tree] = {}
        keys: dict[str, Place] = {}
        again: list[Again] = []
        for key, value, at in self._pairs(node):
            if key in values:
                again.append(Again(key, keys[key], at))
            values[key], keys[key] = self.tree(value, depth + 1, words=key in TEXTS), at
        self.problems += repeated(next(iter(values), ""), again)
        return Tree(values, place, keys)

    def _pairs(self, node: GroupNode) -> Iterator[tuple[str, Node, Place]]:
        for key, value in node.entries:
            at = self.at(key.start)
            named = key.meant if isinstance(key, RepeatNode) else key
            if isinstance(named, ScalarNode):
                self._refuse_hidden(named.text, at)
                if isinstance(value, ScalarNode) and not value.text:
                    self._refuse_cut_short(replace(named, end=key.end), value.style, colon=1)
                yield named.text, value, at
            else:
                self.problems.append(
                    Problem("a key is a word here, not a list or a group", "write key: value", place=at)
                )
