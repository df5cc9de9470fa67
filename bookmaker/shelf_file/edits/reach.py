"""The way to a place in a text, and what forbids to change it: what is repeated elsewhere, or repeats something."""

from __future__ import annotations

from dataclasses import dataclass

from ...ground.problems import FieldPath
from ..yaml_nodes import GroupNode, ListNode, Node, RepeatNode, ScalarNode
from .refusal import absent, refused_of
from .written import Written, nodes_within

__all__ = ["Reached", "needed", "reach", "reach_within", "refuse_names_within", "refuse_repeated"]

OWN_WORDS = "write it out there, without the *, and try again"


@dataclass(frozen=True, slots=True)
class Reached:
    """A node at a path; `nodes` are those on the way, the whole text first and the node itself last."""

    path: FieldPath
    nodes: tuple[Node, ...]

    @property
    def node(self) -> Node:
        """The node itself."""
        return self.nodes[-1]

    @property
    def in_braces(self) -> bool:
        """Whether its entries stand between brackets or braces, or would."""
        return any(isinstance(node, GroupNode | ListNode) and node.flow for node in self.nodes)

    def position(self, part: str | int) -> int | None:
        """Which of its entries a key or a number is."""
        if isinstance(self.node, GroupNode):
            named = (key.meant if isinstance(key, RepeatNode) else key for key, _ in self.node.entries)
            texts = [key.text if isinstance(key, ScalarNode) else None for key in named]
            return texts.index(part) if isinstance(part, str) and part in texts else None
        count = len(self.node.items) if isinstance(self.node, ListNode) else 0
        return part if isinstance(part, int) and 0 <= part < count else None


def reach(written: Written, path: FieldPath) -> Reached:
    """The way to a place, up to the last thing on it that is written.

    Raises:
        EditRefused: the way leads through something that stands there, or elsewhere, only as a repetition.
    """
    found = Reached((), (written.root,))
    for number, part in enumerate(path):
        at = found.position(part)
        _refuse_shared(written, found, path)
        if at is None:
            break
        node = found.node
        below = (
            node.entries[at][1]
            if isinstance(node, GroupNode)
            else node.items[at]
            if isinstance(node, ListNode)
            else node
        )
        found = Reached(path[: number + 1], (*found.nodes, below))
    return found


def reach_within(written: Written, path: FieldPath) -> Reached:
    """The way to a list or a group that gets one entry more.

    Raises:
        EditRefused: nothing stands there, or it is repeated, or only a repetition.
    """
    found = needed(reach(written, path), path)
    _refuse_shared(written, found, path)
    return found


def _refuse_shared(written: Written, around: Reached, path: FieldPath) -> None:
    """Refuse to change anything within what is repeated, or repeats."""
    node = around.node
    if isinstance(node, RepeatNode):
        assert node.meant is not None  # the text was read
        line = written.line_number(node.meant.start)
        what = f"repeats with *{node.name} what stands on line {line}"
        raise refused_of(around.path, what, "write it out here, without the *, and try again", path)
    refuse_repeated(written, node, around.path)


def refuse_repeated(written: Written, node: Node, path: FieldPath) -> None:
    """Refuse to change what is repeated elsewhere by its name."""
    repeat = written.repeated.get(id(node))
    if repeat:
        line = written.line_number(repeat.start)
        raise refused_of(path, f"is repeated on line {line} with *{repeat.name}", OWN_WORDS)


def refuse_names_within(written: Written, node: Node, path: FieldPath) -> None:
    """Refuse to take away, or to write a second time, what holds something that is repeated elsewhere."""
    for inner in nodes_within(node):
        refuse_repeated(written, inner, path)


def needed(found: Reached, path: FieldPath) -> Reached:
    """What was reached, if it is the whole way.

    Raises:
        EditRefused: nothing stands at the path.
    """
    if found.path != path:
        raise absent(path)
    return found
