"""Entries on lines of their own: put between others, taken out, or given another value."""

from __future__ import annotations

from collections.abc import Sequence

from ..yaml_nodes import GroupNode, ListNode, Node
from .writing import Value
from .written import Entry, Splice, Written, entries_of

__all__ = ["inserted", "mark_start", "removed", "reordered", "replaced", "text_of"]


def inserted(written: Written, node: Node, at: int, text: str) -> list[Splice]:
    """A new entry as number `at` of a list or group that has some: its lines, set in, the last without its end."""
    entries, end = entries_of(written, node), written.line_break
    gap = end if _is_spaced(written, entries, at) else ""
    if at:
        tail = entries[at - 1].tail
        if written.line_start(tail) != tail:  # the last line has no end, and keeps none
            return [Splice(tail, tail, end + gap + text)]
        return [Splice(tail, tail, gap + text + end)]
    first = entries[0]
    if written.is_first(first.start):
        return [Splice(first.head, first.head, text + end + gap)]
    set_in = " " * written.column(first.start)
    return [Splice(first.start, first.start, text.lstrip(" ") + end + gap + set_in)]


def _is_spaced(written: Written, entries: Sequence[Entry], at: int) -> bool:
    """Whether blank lines part the entries around a position."""
    if len(entries) < 2:
        return False
    after = min(max(at, 1), len(entries) - 1)
    between = written.text[entries[after - 1].tail : entries[after].head]
    return any(not line.strip() for line in between.splitlines())


def removed(written: Written, node: Node, at: int) -> list[Splice]:
    """An entry taken out of a list or group that has others, with its notes and one of the gaps around it."""
    entries = entries_of(written, node)
    entry = entries[at]
    if not written.is_first(entry.start):
        following = entries[1]
        alone = written.next_line(entry.end) == following.head == written.line_start(following.start)
        return [Splice(entry.start, following.start if alone else written.line_end(entry.end), "")]
    start, tail = entry.head, entry.tail
    behind = _over_blank_lines(written, tail)
    if behind == len(written.text):
        while start and _is_blank(written, start - 1):
            start = written.line_start(start - 1)
        if written.line_start(behind) != behind:  # the last line has no end: nor has the one before it
            start = written.line_end(written.line_start(start - 1)) if start else start
        return [Splice(start, tail, "")]
    has_gap_above = at == 0 or _is_blank(written, start - 1)
    return [Splice(start, behind if has_gap_above else tail, "")]


def _is_blank(written: Written, offset: int) -> bool:
    return not written.text[written.line_start(offset) : written.next_line(offset)].strip()


def _over_blank_lines(written: Written, offset: int) -> int:
    while offset < len(written.text) and _is_blank(written, offset):
        offset = written.next_line(offset)
    return offset


def text_of(written: Written, node: Node, at: int, *, notes_above: bool = True) -> str:
    """An entry with its notes, set in as it is, as if nothing stood before it; its last line without its end."""
    entry = entries_of(written, node)[at]
    return _text(written, entry.head if notes_above else entry.start, entry.tail)


def _text(written: Written, start: int, tail: int) -> str:
    set_in = " " * written.column(start)
    return set_in + written.text[start:tail].removesuffix("\n").removesuffix("\r")


def reordered(written: Written, node: Node, order: Sequence[int]) -> list[Splice]:
    """The entries in another order, each with its notes; gaps and headings between them stay."""
    entries = entries_of(written, node)
    texts = [_text(written, entry.head, entry.tail) for entry in entries]
    splices = []
    for entry, number in zip(entries, order, strict=True):
        last = written.text[entry.head : entry.tail]
        end = entry.head + len(last.removesuffix("\n").removesuffix("\r"))
        text = texts[number] if written.column(entry.head) == 0 else texts[number].lstrip(" ")
        splices.append(Splice(entry.head, end, text))
    return splices


def mark_start(written: Written, node: Node, at: int) -> int:
    """Where the key or the dash of an entry stands."""
    return entries_of(written, node)[at].start


def _mark_end(written: Written, node: Node, at: int) -> int:
    """Behind the colon or the dash of an entry."""
    if isinstance(node, GroupNode):
        key, _ = node.entries[at]
        return written.text.index(":", key.end) + 1
    return entries_of(written, node)[at].start + 1


def replaced(written: Written, around: Node, at: int, value: Value) -> list[Splice]:
    """Another value behind the mark of an entry."""
    assert isinstance(around, GroupNode | ListNode)
    old = around.entries[at][1] if isinstance(around, GroupNode) else around.items[at]
    mark, end = _mark_end(written, around, at), written.line_break
    below = "".join(end + line for line in value.below)
    head = f" {value.head}" if value.head else ""
    if written.line_start(old.start) != written.line_start(mark):
        return [Splice(mark, mark, head), Splice(written.line_end(mark), written.line_end(old.end), below)]
    start = mark if old.start == mark or not value.head else old.start
    behind = written.line_end(old.end)
    return [Splice(start, old.end, head if start == mark else value.head), Splice(behind, behind, below)]
