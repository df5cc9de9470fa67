"""A long YAML text read in pieces: what stands in one item of a long list is read once, however often the rest changes.

Only plain texts are parted: a list of blocks under a key of the whole, whose items all begin in one column. A piece
that is no YAML by itself has an end in the wrong place, such as within quotation marks, or repeats what was named in
another: then the text is read whole, and what is wrong is told of the whole.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

from ruamel.yaml.error import YAMLError

from .yaml_nodes import GroupNode, ListNode, Node, ScalarNode, read_nodes

__all__ = ["Piece", "Pieced", "in_pieces"]

LONG = 8
"""Lists of fewer items are not worth it."""

MOST_KEPT = 4096
"""So many pieces are kept."""

MOST_RESTS = 8
"""So many texts without their lists."""

NOT_PLAIN = re.compile(r"^(?:%|---|\.\.\.|\ufeff)|[\t\x85\u2028\u2029]|\r(?!\n)|^ *\?", re.MULTILINE)
"""Directives, marks between documents, tabs, uncommon ends of lines."""

SECTION = re.compile(r"^[\w-]+: *(?:#[^\n]*)?\r?\n(?P<above>(?:[ \r]*(?:#[^\n]*)?\n)*)(?P<indent> +)- ", re.MULTILINE)
"""A key of the whole text with a list below it, up to the first item."""

STAND_IN = "- 0\n"
"""What stands where the items were, while the rest is read."""


class _List(NamedTuple):
    """Where the items of a list begin, and where the last one ends, as offsets into the text."""

    begins: Sequence[int]
    ends: int
    indent: int


class Piece(NamedTuple):
    """One item of the list: its offset, its text from there to the next, and its node, which counts from there."""

    begin: int
    text: str
    node: Node


class Pieced(NamedTuple):
    """A whole text with its longest list in pieces; in `rest` stands `listed` in its place, a list without items."""

    rest: GroupNode
    listed: ListNode
    pieces: tuple[Piece, ...]

    @property
    def whole(self) -> GroupNode:
        """The node that is the whole text, as `read_nodes` tells it."""
        listed = replace(self.listed, items=tuple(_shifted(piece.node, piece.begin) for piece in self.pieces))
        entries = ((key, listed if value is self.listed else value) for key, value in self.rest.entries)
        return replace(self.rest, entries=tuple(entries))


def in_pieces(text: str) -> Pieced | None:
    """A long text in pieces; None if it has to be read whole."""
    found = None if NOT_PLAIN.search(text) else _longest(text)
    return found and _pieced(text, found)


def _longest(text: str) -> _List | None:
    """The list with the most items, if that is a long one."""
    lists = [found for section in SECTION.finditer(text) if (found := _items(text, section))]
    return max((found for found in lists if len(found.begins) >= LONG), key=lambda one: len(one.begins), default=None)


def _items(text: str, section: re.Match[str]) -> _List | None:
    """The items of a list; None if a line stands where none of them can have it."""
    indent = len(section["indent"])
    begins: list[int] = []
    at = section.start("indent")
    while at < len(text):
        end = text.find("\n", at) + 1 or len(text)
        line = text[at:end]
        depth = len(line) - len(line.lstrip(" "))
        rest = line[depth:].rstrip("\r\n")
        if rest and not rest.startswith("#"):
            if depth == 0:
                break
            if depth == indent and rest.startswith("- "):
                begins.append(at)
            elif depth <= indent:
                return None
        at = end
    return _List(begins, at, indent)


def _pieced(text: str, found: _List) -> Pieced | None:
    """The text in its pieces; None if one of them cannot be read by itself."""
    begins, ends, indent = found
    stand_in = " " * indent + STAND_IN
    try:
        rest = _read(text[: begins[0]] + stand_in + text[ends:])
        parts = ((begin, text[begin:end]) for begin, end in zip(begins, (*begins[1:], ends), strict=True))
        pieces = tuple(Piece(begin, part, node) for begin, part in parts if (node := _item(part)))
        if not isinstance(rest, GroupNode) or len(pieces) < len(begins):
            return None
        listed = ListNode(begins[0] + indent, begins[-1] + pieces[-1].node.end, ())
        after, longer = begins[0] + len(stand_in), ends - begins[0] - len(stand_in)
        entries = tuple(_entry(key, value, listed, begins[0], after, longer) for key, value in rest.entries)
    except (YAMLError, RecursionError, ValueError):
        return None
    if not any(value is listed for _, value in entries):
        return None
    return Pieced(replace(rest, entries=entries, end=entries[-1][1].end), listed, pieces)


def _entry(key: Node, value: Node, listed: Node, begin: int, after: int, longer: int) -> tuple[Node, Node]:
    """An entry of the whole text: with the list, or moved behind it."""
    if begin <= value.start < after:
        return key, listed
    return (_shifted(key, longer), _shifted(value, longer)) if key.start >= after else (key, value)


@lru_cache(maxsize=MOST_KEPT)
def _item(text: str) -> Node | None:
    """The one item of a piece.

    Raises:
        ValueError: it repeats something.
    """
    piece = read_nodes(text)
    return (
        _shifted(piece.items[0], 0)
        if isinstance(piece, ListNode) and len(piece.items) == 1 and not piece.flow
        else None
    )


@lru_cache(maxsize=MOST_RESTS)
def _read(text: str) -> Node | None:
    """What stands around the list."""
    return read_nodes(text)


def _shifted(node: Node, by: int) -> Node:
    """A node and all that is in it, so many characters further on."""
    start, end = node.start + by, node.end + by
    if isinstance(node, ScalarNode):
        return ScalarNode(start, end, node.text, node.style, node.anchor)
    if isinstance(node, ListNode):
        return ListNode(start, end, tuple(_shifted(item, by) for item in node.items), node.flow, node.anchor)
    if isinstance(node, GroupNode):
        entries = tuple((_shifted(key, by), _shifted(value, by)) for key, value in node.entries)
        return GroupNode(start, end, entries, node.flow, node.anchor)
    raise ValueError("what is repeated may stand in another piece")
