"""Values set, entries inserted, removed and renamed, in whatever form the text around them has."""

from __future__ import annotations

from collections.abc import Sequence

from ...ground.problems import FieldPath
from ...ground.quantities import show
from ..yaml_nodes import GroupNode, ListNode, Node, RepeatNode, ScalarNode
from ..yaml_tree import Plain
from . import in_braces, own_lines
from .reach import Reached, needed, reach, reach_within, refuse_names_within
from .refusal import absent, refused, refused_of
from .scalars import Quotes, on_one_line, quotes_for
from .writing import Value, Writer
from .written import Splice, Written

__all__ = ["inserted", "name_like", "removed", "renamed", "with_value"]


def with_value(written: Written, path: FieldPath, value: Plain, writer: Writer) -> list[Splice]:
    """A value set; groups that are missing on the way are made."""
    found = reach(written, path)
    if found.path == path:
        return _other_value(written, found, value, writer)
    key, *more = path[len(found.path) :]
    here = (*found.path, key)
    for inner in reversed(more):
        value = {str(inner): value}
    node = found.node
    if isinstance(node, ScalarNode) and node.is_nothing and isinstance(key, str):
        return _other_value(written, found, {key: value}, writer)
    if isinstance(node, GroupNode) and isinstance(key, str):
        return _with_key(written, found, here, value, writer)
    what = "a list" if isinstance(node, ListNode) else "a single value"
    raise refused_of(found.path, f"is {what} and has no {key!r}", "change it in the file first", path)


def _other_value(written: Written, found: Reached, value: Plain, writer: Writer) -> list[Splice]:
    """Another value in the place of the one that was reached."""
    refuse_names_within(written, found.node, found.path)
    if not found.path:
        raise refused("the whole file cannot be written anew", "set the keys in it", found.path)
    around, path, old = _around(found), found.path, found.node
    at = around.position(path[-1])
    assert at is not None  # it was reached
    like = _quotes_of(written, old, writer, path, braces=around.in_braces)
    if around.in_braces:
        return _in_place(around.node, at, writer.in_braces(value, path, like))
    mark = own_lines.mark_start(written, around.node, at)
    column, dash = written.column(mark), isinstance(around.node, ListNode)
    if dash:
        beside = old.start > mark + 1 and written.line_start(old.start) == written.line_start(mark)
        writer = writer.with_items_at(old.start - mark if beside else 2)
    new = writer.value(value, path, column, dash=dash, braces=_like_others(around.node, at, value))
    if like and isinstance(value, str) and not new.below:
        new = Value(writer.scalar(value, path, braces=False, like=like))
    return own_lines.replaced(written, around.node, at, new)


def _around(found: Reached) -> Reached:
    return Reached(found.path[:-1], found.nodes[:-1])


def _quotes_of(written: Written, node: Node, writer: Writer, path: FieldPath, *, braces: bool) -> Quotes:
    """The quotes to keep: those that a value has though it needs none, or that part it from a note without a blank."""
    if not isinstance(node, ScalarNode) or node.style not in ('"', "'"):
        return ""
    rest = written.text[node.end : written.line_end(node.end)].strip()
    needed_by_note = rest.startswith("#") and rest[1:2] not in ("", " ")
    needless = not quotes_for(node.text, braces=braces, words=writer.manner.is_words(path))
    return node.style if needless or needed_by_note else ""


def _in_place(around: Node, at: int, text: str) -> list[Splice]:
    """Another value between brackets or braces."""
    if isinstance(around, GroupNode):
        key, old = around.entries[at]
        if old.start == old.end:
            return [Splice(old.start, old.end, f" {text}" if old.start > key.end else f": {text}")]
        return [Splice(old.start, old.end, text)]
    assert isinstance(around, ListNode)
    return [Splice(around.items[at].start, around.items[at].end, text)]


def _with_key(written: Written, found: Reached, path: FieldPath, value: Plain, writer: Writer) -> list[Splice]:
    """A new key of a group, where the models have it."""
    group, key = found.node, str(path[-1])
    assert isinstance(group, GroupNode)
    at = _place_of(key, _keys(group), writer.manner.keys(found.path))
    if group.flow:
        return in_braces.inserted(written, group, at, in_braces.Piece(writer.pair(key, value, path)))
    if found.in_braces:  # a pair in a list, that has no braces of its own yet
        return in_braces.beside_pair(group, at, writer.pair(key, value, path))
    column = written.column(group.entries[0][0].start)
    new = writer.value(value, path, column, dash=False, braces=_like_others(group, None, value))
    return own_lines.inserted(written, group, at, written.line_break.join(writer.entry(key, new, column)))


def _keys(group: GroupNode) -> list[str]:
    named = (key.meant if isinstance(key, RepeatNode) else key for key, _ in group.entries)
    return [key.text if isinstance(key, ScalarNode) else "" for key in named]


def _place_of(key: str, present: Sequence[str], order: Sequence[str]) -> int:
    """Where a new key stands: behind the nearest that goes before it, else before the nearest that follows, or last."""
    if key in order:
        rank = order.index(key)
        for before in reversed(order[:rank]):
            if before in present:
                return present.index(before) + 1
        for after in order[rank:]:
            if after in present:
                return present.index(after)
    return len(present)


def _like_others(around: Node, at: int | None, value: Plain) -> bool | None:
    """Whether groups, or lists, beside a value stand between braces; None if there are none."""
    values = [value for _, value in around.entries] if isinstance(around, GroupNode) else []
    values = list(around.items) if isinstance(around, ListNode) else values
    kind = ListNode if isinstance(value, list) else GroupNode
    forms = [
        node.flow for place, node in enumerate(values) if isinstance(node, kind) and place != at and _is_full(node)
    ]
    return None if not forms else forms.count(True) * 2 >= len(forms)


def _is_full(node: GroupNode | ListNode) -> bool:
    return node.end - node.start > len("{}")


def removed(written: Written, path: FieldPath) -> list[Splice]:
    """An entry taken out; a group or a list that loses its last one stays, empty."""
    found = needed(reach(written, path), path)
    refuse_names_within(written, found.node, path)
    around = _around(found)
    node, at = around.node, around.position(path[-1])
    assert at is not None
    assert isinstance(node, GroupNode | ListNode)
    if node.flow:
        return in_braces.removed(written, node, at)
    if len(node.entries if isinstance(node, GroupNode) else node.items) > 1:
        return own_lines.removed(written, node, at)
    empty = "{}" if isinstance(node, GroupNode) else "[]"
    outer = _around(around) if around.path else around
    if not around.path or outer.in_braces:
        return [Splice(node.start, node.end, empty)]
    outer_at = outer.position(around.path[-1])
    assert outer_at is not None
    return own_lines.replaced(written, outer.node, outer_at, Value(empty))


def inserted(written: Written, path: FieldPath, value: Plain, writer: Writer) -> list[Splice]:
    """A new item of a list; one that has none yet is written as lists of its sort are."""
    found = reach_within(written, path[:-1])
    node, at = found.node, path[-1]
    assert isinstance(at, int)
    is_new = isinstance(node, ScalarNode) or (isinstance(node, ListNode) and not node.items and found.path != ())
    if is_new and "#" not in written.text[node.start : node.end]:
        return _other_value(written, found, [value], writer)
    if not isinstance(node, ListNode):
        raise absent(path)
    if node.flow:
        return in_braces.inserted(written, node, at, in_braces.Piece(writer.in_braces(value, path)))
    column = written.column(written.opening(node))
    writer = writer.with_items_at(written.column(node.items[0].start) - column)
    new = writer.value(value, path, column, dash=True, braces=_like_others(node, None, value))
    return own_lines.inserted(written, node, at, written.line_break.join(writer.entry(at, new, column)))


def renamed(written: Written, path: FieldPath, name: str) -> list[Splice]:
    """Another name for a key, in the quotes that it has, if it does not need them."""
    found = needed(reach(written, path), path)
    around = _around(found)
    at = around.position(path[-1])
    assert at is not None
    assert isinstance(around.node, GroupNode)
    key = around.node.entries[at][0]
    if not isinstance(key, ScalarNode) or key.anchor:
        raise refused(f"the key {show(str(path[-1]))!r} is repeated or repeats", "change it in the file by hand", path)
    return [Splice(key.start, key.end, name_like(key, name, braces=around.in_braces))]


def name_like(key: Node, name: str, *, braces: bool) -> str:
    """A key as another is written: in quotes, if those of the other are not needed, or keep its colon apart."""
    style = key.style if isinstance(key, ScalarNode) and key.style in ('"', "'") else ""
    kept = style if isinstance(key, ScalarNode) and (braces or not quotes_for(key.text, braces=braces)) else ""
    return on_one_line(name, braces=braces, like=kept)
