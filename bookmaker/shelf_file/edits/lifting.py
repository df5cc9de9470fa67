"""Entries moved, copied and put in another order: lifted out of the text as they stand, with their notes."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from ...ground.problems import FieldPath
from ..yaml_nodes import GroupNode, ListNode, Node
from ..yaml_tree import Plain
from . import in_braces, own_lines
from .edit import Copy, Move, Reorder
from .outcome import value_at
from .reach import Reached, needed, reach, reach_within, refuse_names_within
from .refusal import refused
from .setting import inserted, name_like, removed, with_value
from .writing import Writer
from .written import Splice, Written, read_written, spliced

__all__ = ["copied", "moved", "reordered"]

LINE = re.compile(r"(?<![^\r\n])([ \t]*)(?=\S)")

REMEDY = "take the notes out, or move it by hand"


@dataclass(frozen=True, slots=True)
class _Lifted:
    """An entry as text: its lines, set in by some columns; and as it stood between brackets or braces, if it did."""

    value: Plain
    key: str
    lines: str = ""
    column: int = 0
    piece: in_braces.Piece | None = None

    @property
    def has_notes(self) -> bool:
        if self.piece:
            return bool(self.piece.above or self.piece.note)
        return re.search(r"(?:\A|\s)#", self.lines) is not None


def moved(written: Written, edit: Move, writer: Writer) -> str:
    """The text with an entry taken out of its place and put into another."""
    lifted = _lifted(written, edit.path)
    rest = read_written(spliced(written.text, removed(written, edit.path)), written.tree.place.file)
    rest = replace(rest, usual_break=written.line_break)
    return spliced(rest.text, _put(rest, edit.to, lifted, writer))


def copied(written: Written, edit: Copy, writer: Writer) -> str:
    """The text with an entry written a second time."""
    name, to = edit.to[-1], edit.to
    if isinstance(name, int):
        return spliced(written.text, _put(written, to, _lifted(written, edit.path, again=True), writer))
    group = needed(reach(written, to[:-1]), to[:-1])
    count = len(group.node.entries) if isinstance(group.node, GroupNode) else 0
    beside = (group.position(edit.path[-1]) or 0) + 1 if to[:-1] == edit.path[:-1] else count
    lifted = _lifted(written, edit.path, again=True, name=name)
    return spliced(written.text, _put(written, (*to[:-1], beside), lifted, writer))


def reordered(written: Written, edit: Reorder) -> str:
    """The text with the items of a list in another order; what stands between them stays where it is."""
    node = needed(reach(written, edit.path), edit.path).node
    refuse_names_within(written, node, edit.path)
    assert isinstance(node, ListNode)
    module = in_braces.reordered if node.flow else own_lines.reordered
    return spliced(written.text, module(written, node, edit.order))


def _lifted(written: Written, path: FieldPath, *, again: bool = False, name: str = "") -> _Lifted:
    """An entry as it stands; `again`: without the notes that are told of this one only, and under another name."""
    found = needed(reach(written, path), path)
    refuse_names_within(written, found.node, path)
    around = Reached(path[:-1], found.nodes[:-1])
    node, at = around.node, around.position(path[-1])
    assert at is not None
    value, own_name = value_at(written.tree.plain(), path), path[-1] if isinstance(path[-1], str) else ""
    key = node.entries[at][0] if isinstance(node, GroupNode) else None
    behind_name = key.end - key.start if key and name else 0
    named = name_like(key, name, braces=around.in_braces) if key and name else ""
    if around.in_braces:
        piece = in_braces.piece_of(written, node, at)
        piece = in_braces.Piece(named + piece.body[behind_name:]) if again else piece
        return _Lifted(value, name or own_name, _alone(written, node, at, named), piece=piece)
    lines = own_lines.text_of(written, node, at, notes_above=not again)
    column = written.column(own_lines.mark_start(written, node, at))
    if name:
        lines = " " * column + named + lines[column + behind_name :]
    return _Lifted(value, name or own_name, lines, column)


def _alone(written: Written, node: Node, at: int, named: str) -> str:
    """An entry between braces as it stands without them: between them a key may lack its colon, or the blank after."""
    if not isinstance(node, GroupNode):
        return in_braces.piece_of(written, node, at).body
    key, value = node.entries[at]
    name = named or written.text[key.start : key.end]
    return f"{name}: {written.text[value.start : value.end]}".rstrip()


def _put(written: Written, to: FieldPath, lifted: _Lifted, writer: Writer) -> list[Splice]:
    """The entry at its new place."""
    group = reach_within(written, to[:-1])
    node, at = group.node, to[-1]
    assert isinstance(at, int)
    if not _has_entries(node):
        if lifted.has_notes:
            raise refused("what is moved has notes, and the list or group it moves to is empty", REMEDY, to)
        if lifted.key:
            return with_value(written, (*to[:-1], lifted.key), lifted.value, writer)
        return inserted(written, to, lifted.value, writer)
    if group.in_braces:
        piece = lifted.piece or _between_braces(lifted, to, writer)
        if isinstance(node, GroupNode) and not node.flow:
            return in_braces.beside_pair(node, at, piece.body)
        return in_braces.inserted(written, node, at, piece)
    column = written.column(own_lines.mark_start(written, node, 0))
    text = _on_lines(lifted, column, written.line_break) if lifted.piece else _set_in(lifted, column)
    return own_lines.inserted(written, node, at, text)


def _has_entries(node: Node) -> bool:
    return bool(node.entries if isinstance(node, GroupNode) else isinstance(node, ListNode) and node.items)


def _between_braces(lifted: _Lifted, to: FieldPath, writer: Writer) -> in_braces.Piece:
    """What stood on lines of its own, on one."""
    if lifted.has_notes:
        raise refused("what is moved has notes, which have no place between brackets and braces", REMEDY, to)
    if lifted.key:
        return in_braces.Piece(writer.pair(lifted.key, lifted.value, (*to[:-1], lifted.key)))
    return in_braces.Piece(writer.in_braces(lifted.value, to))


def _on_lines(lifted: _Lifted, column: int, end: str) -> str:
    """What stood between brackets or braces, on lines of its own."""
    assert lifted.piece is not None
    mark = "" if lifted.key else "- "
    lines = (*lifted.piece.above, f"{mark}{lifted.lines}{lifted.piece.note}")
    return end.join(" " * column + line for line in lines)


def _set_in(lifted: _Lifted, column: int) -> str:
    """The lines, set in by other columns than before; those that stand less far in only as far as they can."""
    further = column - lifted.column
    if not further:
        return lifted.lines
    return LINE.sub(lambda found: " " * max(len(found[1]) + further, 0), lifted.lines)
