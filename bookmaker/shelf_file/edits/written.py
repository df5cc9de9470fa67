"""A YAML text with its nodes: where lines begin and end, where entries stand, and which notes belong to them.

The notes of an entry are those right above it, the one behind it on its last line, and those below it that stand
further in than it begins. A note with blank lines around it, such as the heading of a part of a list, is nobody's.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from ..yaml_nodes import GroupNode, Lines, ListNode, Node, RepeatNode
from ..yaml_tree import Tree, parse_nodes
from .refusal import refused

__all__ = ["Entry", "Splice", "Written", "entries_of", "nodes_within", "read_written", "spliced"]

BLANKS = " \t\ufeff"

LINE_END = re.compile(r"\r\n|\r|\n")

BLANK = re.compile(rf"[{BLANKS}]*")

DASH = re.compile(rf"(?<![^\r\n])[{BLANKS}]*(-)(?=[ \t\r\n]|\Z)")

PROPERTY = re.compile(r"\S*\s*(?:#[^\r\n]*\s*)*")
"""A name with & or a tag with !, and what stands between it and the value."""


@dataclass(frozen=True, slots=True)
class Splice:
    """A piece of text from `start` to `end` to be replaced."""

    start: int
    end: int
    text: str


def spliced(text: str, splices: list[Splice]) -> str:
    """A text with pieces of it replaced; they lie apart, or touch.

    >>> spliced("pages: 40", [Splice(7, 9, "48")])
    'pages: 48'
    """
    made, at = [], 0
    for splice in sorted(splices, key=lambda splice: (splice.start, splice.end)):
        made += [text[at : splice.start], splice.text]
        at = splice.end
    return "".join([*made, text[at:]])


@dataclass(frozen=True, slots=True)
class Entry:
    """An entry on lines of its own: a key with its value, or a dash with its item.

    From `head`, where its notes above begin, and `start`, its first sign, to `end` behind its value and `tail`, where
    the next line after it and its notes begins.
    """

    head: int
    start: int
    end: int
    tail: int


@dataclass(frozen=True)
class Written:
    """A text, its nodes, and the tree they make; `usual_break` is what ends lines where the text has but one."""

    lines: Lines
    root: Node
    tree: Tree
    usual_break: str = "\n"

    @property
    def text(self) -> str:
        """All of it."""
        return self.lines.text

    def line_number(self, offset: int) -> int:
        """The line of an offset, from 1."""
        return self.lines.number(offset)[0] + 1

    def column(self, offset: int) -> int:
        """How many signs stand before an offset on its line."""
        return self.lines.number(offset)[1]

    def line_start(self, offset: int) -> int:
        """Where the line of an offset begins."""
        return offset - self.column(offset)

    def next_line(self, offset: int) -> int:
        """Where the line after that of an offset begins; the end of the text, if there is none."""
        line = self.line_number(offset)
        return self.lines.starts[line] if line < len(self.lines.starts) else len(self.text)

    def line_end(self, offset: int) -> int:
        """Where the line of an offset ends, before the signs that end it."""
        found = LINE_END.search(self.text, offset)
        return found.start() if found else len(self.text)

    def before(self, offset: int) -> str:
        """What stands before an offset on its line, without the blanks around it."""
        return self.text[self.line_start(offset) : offset].strip(BLANKS)

    def is_first(self, offset: int) -> bool:
        """Whether nothing but blanks stands before an offset on its line."""
        return not self.before(offset)

    def ends_line(self, offset: int) -> bool:
        """Whether nothing but a note stands behind an offset on its line."""
        return self.text[offset : self.line_end(offset)].lstrip(BLANKS)[:1] in ("", "#")

    @cached_property
    def line_break(self) -> str:
        """What ends the lines of this text: what ends the first."""
        found = LINE_END.search(self.text)
        return found[0] if found else self.usual_break

    def opening(self, node: Node) -> int:
        """Where a node begins behind its ``&`` and ``!``: at a bracket, the first dash, the first key."""
        at = node.start
        while self.text[at : at + 1] in ("&", "!"):
            at = _end(PROPERTY, self.text, at)
        return at

    @cached_property
    def repeated(self) -> dict[int, RepeatNode]:
        """What stands for a node elsewhere, by its identity; of several, the last."""
        return {id(node.meant): node for node in nodes_within(self.root) if isinstance(node, RepeatNode)}


def read_written(text: str, file: str) -> Written:
    """A text read for editing.

    Raises:
        ShelfFileError: it is not one text in YAML, or a key stands twice in it.
    """
    return Written(Lines(text), *parse_nodes(text, file))


def entries_of(written: Written, node: Node) -> list[Entry]:
    """The entries of a list or a group on lines of its own.

    Raises:
        EditRefused: a key is written in a long form that is not edited.
    """
    spans = list(_spans(written, node))
    entries: list[Entry] = []
    for number, (start, end) in enumerate(spans):
        limit = spans[number + 1][0] if number + 1 < len(spans) else len(written.text)
        tail = _tail(written, end, limit, written.column(spans[0][0]))
        head = _head(written, start, entries[-1].tail if entries else 0)
        # notes that begin the file are told of the whole of it
        entries.append(Entry(head or written.line_start(start), start, end, tail))
    return entries


def _spans(written: Written, node: Node) -> Iterator[tuple[int, int]]:
    """Where each entry begins, and where its value ends."""
    if isinstance(node, GroupNode):
        for key, value in node.entries:
            if written.before(key.start).endswith("?"):
                raise refused("a key is written with a ? before it", "write key: value")
            yield key.start, value.end
    if isinstance(node, ListNode) and node.items:
        yield written.opening(node), node.items[0].end
        for before, item in pairwise(node.items):
            # a dash that follows another item is the first sign of its line
            dash = DASH.search(written.text, written.next_line(before.end))
            assert dash is not None
            yield dash.start(1), item.end


def _tail(written: Written, end: int, limit: int, column: int) -> int:
    """Behind the notes that stand below an entry, further in than it begins."""
    tail = at = written.next_line(end)
    while at < limit:
        first = _end(BLANK, written.text, at)
        sign = written.text[first : first + 1]
        if sign not in ("#", "\r", "\n") or (sign == "#" and first - at <= column):
            break
        at = written.next_line(first)
        tail = at if sign == "#" else tail
    return tail


def _head(written: Written, start: int, floor: int) -> int:
    """Where the lines of notes begin that stand right above an entry; its start, if something is before it."""
    if not written.is_first(start):
        return start
    head = written.line_start(start)
    while head > floor:
        above = written.line_start(head - 1)
        if not written.text.startswith("#", _end(BLANK, written.text, above)):
            break
        head = above
    return head


def nodes_within(node: Node) -> Iterator[Node]:
    """A node, and all that is written in it."""
    yield node
    if isinstance(node, ListNode):
        for item in node.items:
            yield from nodes_within(item)
    if isinstance(node, GroupNode):
        for key, value in node.entries:
            yield from nodes_within(key)
            yield from nodes_within(value)


def _end(pattern: re.Pattern[str], text: str, at: int) -> int:
    """Where a pattern that always matches ends."""
    found = pattern.match(text, at)
    assert found is not None
    return found.end()
