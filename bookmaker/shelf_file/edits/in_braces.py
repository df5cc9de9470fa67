"""Entries between brackets or braces: put between others, or taken out, each with the notes on its lines."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..yaml_nodes import GroupNode, ListNode, Node
from .refusal import refused
from .written import Splice, Written

__all__ = ["Piece", "beside_pair", "inserted", "piece_of", "removed", "reordered"]

GAP = re.compile(r"(?:\s|(?<=\s)#[^\r\n]*)*")
"""Blanks, line ends and notes."""

NOTE = re.compile(r"[ \t]+#[^\r\n]*")


@dataclass(frozen=True, slots=True)
class Piece:
    """An entry as text, with the lines of notes above it, and the note behind it with the blanks before that."""

    body: str
    above: tuple[str, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True)
class _Item:
    """Where an entry stands: `head`, where its notes above begin, its comma, if it has one, and its note's span."""

    head: int
    start: int
    end: int
    comma: int | None
    note: tuple[int, int]

    @property
    def behind(self) -> int:
        return self.note[1]


def piece_of(written: Written, node: Node, at: int) -> Piece:
    """An entry with its notes."""
    return _piece(written, _items(written, node)[at])


def _piece(written: Written, item: _Item) -> Piece:
    text = written.text
    above = [line.strip() for line in text[item.head : written.line_start(item.start)].splitlines()]
    body = text[item.start : item.end]
    # a key without a value keeps its colon apart from the comma that follows
    return Piece(f"{body} " if body.endswith(":") else body, tuple(above), text[slice(*item.note)])


def inserted(written: Written, node: Node, at: int, piece: Piece) -> list[Splice]:
    """A new entry as number `at`."""
    items = _items(written, node)
    if not items:
        return _first(written, node, piece)
    if at == len(items):
        return _last(written, items, piece)
    following, end = items[at], written.line_break
    set_in = " " * written.column(following.start)
    if written.is_first(following.start):
        lines = [set_in + line for line in (*piece.above, f"{piece.body},{piece.note}")]
        return [Splice(following.head, following.head, "".join(line + end for line in lines))]
    if piece.above or piece.note:
        above = "".join(f"{line}{end}{set_in}" for line in piece.above)
        text = f"{end}{set_in}{above}{piece.body},{piece.note}{end}{set_in}"
        return [Splice(following.start, following.start, text)]
    comma = _comma(written, items)
    if at:
        last = items[at - 1].end
        # a key without a value keeps its colon apart from the comma
        return [Splice(last, last, f" {comma}{piece.body}" if written.text[last - 1] == ":" else comma + piece.body)]
    return [Splice(following.start, following.start, piece.body + comma)]


def beside_pair(pair: GroupNode, at: int, body: str) -> list[Splice]:
    """A second key for a pair in a list that has no braces of its own yet."""
    if at:
        return [Splice(pair.start, pair.start, "{"), Splice(pair.end, pair.end, f", {body}}}")]
    return [Splice(pair.start, pair.start, f"{{{body}, "), Splice(pair.end, pair.end, "}")]


def _first(written: Written, node: Node, piece: Piece) -> list[Splice]:
    """The only entry between brackets."""
    start, end = written.opening(node) + 1, node.end - 1
    inner = written.text[start:end]
    if piece.above or piece.note:
        lines = "".join(f"{line}{written.line_break} " for line in ("", *piece.above, f"{piece.body}{piece.note}"))
        return [Splice(start, start, lines)]
    return [Splice(start, start if inner.strip() else end, piece.body)]


def _last(written: Written, items: list[_Item], piece: Piece) -> list[Splice]:
    """A new entry behind all others; if those have lines of their own, so has it."""
    last, end = items[-1], written.line_break
    own_line = written.is_first(last.start) or last.note[0] < last.behind or piece.above or piece.note
    if not own_line:
        return [Splice(last.end, last.end, _comma(written, items) + piece.body)]
    set_in = " " * written.column(last.start if written.is_first(last.start) else items[0].start)
    lines = "".join(end + set_in + line for line in (*piece.above, piece.body))
    lines += ("" if last.comma is None else ",") + piece.note
    if piece.note and written.text[last.behind : written.line_end(last.behind)].strip():
        lines += end + set_in
    if last.comma is not None:
        return [Splice(last.behind, last.behind, lines)]
    return [Splice(last.end, last.end, ","), Splice(last.behind, last.behind, lines)]


def _comma(written: Written, items: list[_Item]) -> str:
    """The comma as it stands between entries."""
    tight = len(items) > 1 and items[0].comma == items[1].start - 1
    return "," if tight and not written.text[items[1].start].isspace() else ", "


def removed(written: Written, node: Node, at: int) -> list[Splice]:
    """An entry taken out, with its comma and its notes."""
    items = _items(written, node)
    item = items[at]
    if len(items) == 1:
        return _only(written, node, item)
    before = items[at - 1] if at else None
    following = items[at + 1] if at + 1 < len(items) else None
    notes_above = Splice(item.head, max(written.line_start(item.start), item.head), "")
    if written.is_first(item.start) and written.ends_line(item.behind):
        lines = [Splice(item.head, written.next_line(item.behind), "")]
        return lines + (_without_comma(before) if following is None and item.comma is None else [])
    if following is not None and not written.is_first(following.start):
        return [Splice(item.start, following.start, ""), notes_above]
    if before is None:
        return [Splice(item.start, item.behind, "")]
    if before.note[0] < before.behind:
        return [
            Splice(item.start, item.behind, ""),
            notes_above,
            *(_without_comma(before) if item.comma is None else []),
        ]
    assert before.comma is not None  # something follows it
    ends_in_comma = following is not None or item.comma is not None
    return [Splice(before.comma + ends_in_comma, item.behind, "")]


def reordered(written: Written, node: Node, order: Sequence[int]) -> list[Splice]:
    """The entries in another order, each with its notes; commas and line ends stay.

    Raises:
        EditRefused: one with notes would come to stand where there is no line for them.
    """
    items = _items(written, node)
    pieces = [_piece(written, item) for item in items]
    splices = []
    for item, number in zip(items, order, strict=True):
        piece, line = pieces[number], written.line_start(item.start)
        has_line = written.is_first(item.start) and written.ends_line(item.behind)
        if (piece.above or piece.note) and not has_line:
            raise refused("the notes between brackets have no line where they would go", "move them by hand")
        set_in = " " * written.column(item.start)
        if item.head < item.start:
            above = "".join(f"{set_in}{note}{written.line_break}" for note in piece.above)
            splices.append(Splice(item.head, line, above))
        splices += [Splice(item.start, item.end, piece.body), Splice(*item.note, piece.note)]
    return splices


def _only(written: Written, node: Node, item: _Item) -> list[Splice]:
    start, end = written.opening(node) + 1, node.end - 1
    rest = written.text[start : item.head] + written.text[item.behind : end]
    return [Splice(item.head, item.behind, "") if rest.strip() else Splice(start, end, "")]


def _without_comma(item: _Item | None) -> list[Splice]:
    return [] if item is None or item.comma is None else [Splice(item.comma, item.comma + 1, "")]


def _items(written: Written, node: Node) -> list[_Item]:
    items: list[_Item] = []
    floor = written.opening(node) + 1
    for start, end in _spans(written, node):
        items.append(_item(written, floor, start, end))
        floor = items[-1].behind
    return items


def _spans(written: Written, node: Node) -> Iterator[tuple[int, int]]:
    if isinstance(node, ListNode):
        yield from ((item.start, item.end) for item in node.items)
    if isinstance(node, GroupNode):
        for key, value in node.entries:
            if written.before(key.start).endswith("?"):
                raise refused("a key is written with a ? before it", "write key: value")
            yield key.start, value.end


def _item(written: Written, floor: int, start: int, end: int) -> _Item:
    text = written.text
    gap = GAP.match(text, end)
    assert gap is not None
    comma = gap.end() if text[gap.end()] == "," else None
    behind = end if comma is None or "#" in gap[0] else comma + 1
    note = NOTE.match(text, behind)
    head = start
    if written.is_first(start):
        head = written.line_start(start)
        while (above := written.line_start(head - 1)) >= floor and text[above:head].lstrip().startswith("#"):
            head = above
    return _Item(head, start, end, comma, note.span() if note else (behind, behind))
