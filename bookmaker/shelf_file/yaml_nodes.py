"""What stands in a YAML text, node by node: what each says, how it is written, and from where to where.

Places are offsets into the text, counted in characters. A node begins at its first sign, an ``&`` or ``!`` before it
taken in, and ends behind its last one; notes and blanks around it are not part of it. What a ``*`` repeats is not
written out: it stays a `RepeatNode` with the node that was named.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError
from ruamel.yaml.events import (
    AliasEvent,
    CollectionEndEvent,
    DocumentStartEvent,
    Event,
    NodeEvent,
    ScalarEvent,
    SequenceStartEvent,
)
from ruamel.yaml.scanner import Scanner

__all__ = ["GroupNode", "Lines", "ListNode", "Node", "RepeatNode", "ScalarNode", "read_nodes"]

LINE_END = re.compile(r"\r\n|\r|\n")

REST_OF_LINE = re.compile(r"[^\r\n]*")

BLOCK = ("|", ">")
"""How texts of several lines begin."""

COLON = re.compile(r"(?:\s|(?<=\s)#[^\r\n]*)*:")
"""A colon, and what may stand between it and its key."""

QUOTES = ("'", '"')

INDENT = re.compile(r" *(?:- +)*")

BRACKETS = ("[", "{")

KEPT = re.compile(r"[|>][0-9]?\+")
"""How a text of several lines begins that keeps the blank lines after it."""


@dataclass(frozen=True, slots=True)
class ScalarNode:
    """One value; `style` is the sign it begins with: a quotation mark, ``|`` or ``>``, or nothing if it is plain."""

    start: int
    end: int
    text: str
    style: str = ""
    anchor: str = ""

    @property
    def is_nothing(self) -> bool:
        """Whether no value is written here, or one that stands for none."""
        return not self.style and self.text in ("", "~", "null")


@dataclass(frozen=True, slots=True)
class ListNode:
    """A list; `flow` says whether it stands between brackets."""

    start: int
    end: int
    items: tuple[Node, ...]
    flow: bool = False
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class GroupNode:
    """Keys with their values, in their order; `flow` says whether they stand between braces."""

    start: int
    end: int
    entries: tuple[tuple[Node, Node], ...]
    flow: bool = False
    anchor: str = ""


@dataclass(frozen=True, slots=True)
class RepeatNode:
    """A ``*`` with a name, and the node that has the name.

    One that stands within the node itself means None, and is told to stand where that begins.
    """

    start: int
    end: int
    name: str
    meant: Node | None


Node = ScalarNode | ListNode | GroupNode | RepeatNode


@dataclass(frozen=True)
class Lines:
    """A text with the offsets at which its lines begin."""

    text: str

    @cached_property
    def starts(self) -> list[int]:
        """Where each line begins."""
        return [0, *(found.end() for found in LINE_END.finditer(self.text))]

    def number(self, offset: int) -> tuple[int, int]:
        """The line and column of an offset, both counted from 0."""
        line = bisect_right(self.starts, offset) - 1
        return line, offset - self.starts[line]

    @cached_property
    def all(self) -> list[str]:
        """The lines without their ends; places share them."""
        return LINE_END.split(self.text)

    def line(self, number: int) -> str:
        """A line by its number from 0, without its end; nothing, if there is none."""
        return self.all[number] if number < len(self.all) else ""


def read_nodes(text: str) -> Node | None:
    """The node that is the whole text; None if it holds nothing.

    >>> node = read_nodes("pages: 40  # of thin paper")
    >>> node.start, node.end
    (0, 9)

    Raises:
        YAMLError: the text is not YAML, or holds several documents.
        RecursionError: it is nested far too deep.
    """
    composer, reader = _Composer(text), YAML(typ="safe", pure=True)
    reader.Scanner = _Scanner
    events = iter(reader.parse(text))
    whole: Node | None = None
    for event in events:
        if isinstance(event, DocumentStartEvent):
            if whole is not None:
                raise MarkedYAMLError(problem="expected a single document", problem_mark=event.start_mark)
            whole = composer.node(next(events), events)
    return whole


class _Scanner(Scanner):
    """Lets tabs stand for blanks behind values, where they indent nothing (YAML 1.2.2, 6.2 Separation Spaces)."""

    def scan_to_next_token(self) -> None:
        super().scan_to_next_token()
        while self.reader.peek() == "\t" and self._behind_something():
            while self.reader.peek() in " \t":
                self.reader.forward()
            super().scan_to_next_token()

    def _behind_something(self) -> bool:
        here, column = self.reader.pointer, self.reader.column
        return not self.reader.buffer[max(here - column, 0) : here].isspace() and column > 0


class _Composer:
    """Makes nodes of events, and remembers what was named."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.named: dict[str, Node] = {}

    def node(self, event: Event, events: Iterator[Event]) -> Node:
        assert isinstance(event, NodeEvent)  # nothing else stands where a value does
        start, end, name = event.start_mark.index, event.end_mark.index, event.anchor or ""
        if isinstance(event, AliasEvent):
            if name not in self.named:
                raise MarkedYAMLError(problem="found undefined alias", problem_mark=event.start_mark)
            meant = self.named[name]
            return meant if isinstance(meant, RepeatNode) else RepeatNode(start, end, name, meant)
        if name:
            self.named[name] = RepeatNode(start, end, name, None)
        node = self._made(event, events, start, end, name)
        if name:
            self.named[name] = node
        return node

    def _made(self, event: NodeEvent, events: Iterator[Event], start: int, end: int, name: str) -> Node:
        if isinstance(event, ScalarEvent):
            style = event.style or ""
            self._refuse_swallowing(event, style)
            end = self._end_of_lines(start, end, event.value) if style in BLOCK else end
            return ScalarNode(start, end, event.value, style, name)
        flow = self.text[end - 1 : end] in BRACKETS and end > start
        below, closed = self._below(events)
        last = closed if flow else below[-1].end if below else end
        if isinstance(event, SequenceStartEvent):
            return ListNode(start, last, tuple(below), flow, name)
        pairs = zip(below[::2], below[1::2], strict=True)
        entries = tuple((key, self._behind_colon(key, value)) for key, value in pairs)
        return GroupNode(start, last if flow or not entries else entries[-1][1].end, entries, flow, name)

    def _refuse_swallowing(self, event: ScalarEvent, style: str) -> None:
        """Text in quotes goes on further in than its key (YAML 1.2.2, 7.3): a key or an item that does not was
        swallowed, because the quotation mark before it is not closed.

        Raises:
            MarkedYAMLError: there is such a line.
        """
        begin, end = event.start_mark, event.end_mark
        if style not in QUOTES or begin.line == end.line:
            return
        line = self.text.rfind("\n", 0, begin.index) + 1
        key = INDENT.match(self.text, line)
        assert key  # it finds nothing at least
        outside = re.compile(rf"\n {{0,{key.end() - line}}}(?:- |[\w-]+:(?:\s|$))")
        if outside.search(self.text, begin.index, end.index):
            raise MarkedYAMLError(
                context="while scanning a quoted scalar",
                context_mark=begin,
                problem="found unexpected end of stream",
                problem_mark=end,
            )

    def _behind_colon(self, key: Node, value: Node) -> Node:
        """The value of a key; one that is not written stands right behind the colon, or the key."""
        if not isinstance(value, ScalarNode) or value.end > value.start:
            return value
        colon = COLON.match(self.text, key.end)
        at = colon.end() if colon else key.end
        return replace(value, start=at, end=at)

    def _below(self, events: Iterator[Event]) -> tuple[list[Node], int]:
        """The nodes up to the end of the collection that was opened, and where that is."""
        below: list[Node] = []
        for event in events:
            if isinstance(event, CollectionEndEvent):
                return below, event.end_mark.index
            below.append(self.node(event, events))
        raise AssertionError("the parser ends what it begins")

    def _end_of_lines(self, start: int, end: int, said: str) -> int:
        """The end of the last line that a text of several lines needs; blank ones after it are mostly left out."""
        written = self.text[start:end]
        if KEPT.match(written) or said.rstrip("\n")[-1:].isspace():
            return start + len(written.removesuffix("\n").removesuffix("\r"))
        last = REST_OF_LINE.match(written, len(written.rstrip()))
        return start + last.end() if last else end
