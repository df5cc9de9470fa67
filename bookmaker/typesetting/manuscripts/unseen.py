"""Passages in which nothing can be seen: a heading of a soft hyphen, a paragraph of a joiner."""

from __future__ import annotations

from collections.abc import Sequence

from ...ground.problems import Problem, Severity
from ...ground.quantities import counted
from ...ground.visible import is_seen
from ..lines.fount import as_read
from .passage import Passage, Role

__all__ = ["without_unseen"]

BEARING = frozenset((Role.BODY, Role.HEADING, Role.VERSE, Role.ITEM, Role.NOTE, Role.PLACED, Role.MOTTO))
"""What a passage is that consists of its words alone."""


def without_unseen(passages: Sequence[Passage], name: str) -> tuple[list[Passage], list[Problem]]:
    """The passages of a text without those that show nothing, and a note of how many they were.

    Headings are rid of such words as well: each may come to stand on a line of its own.
    """
    kept = [_tidied(passage) for passage in passages if not _is_unseen(passage)]
    lost = len(passages) - len(kept)
    if not lost:
        return kept, []
    said = f"{name} has {counted(lost, 'passage')} in which nothing can be seen, left out"
    return kept, [Problem(said, severity=Severity.NOTE, field=("file",))]


def _is_unseen(passage: Passage) -> bool:
    return passage.role in BEARING and bool(passage.text) and not is_seen(as_read(passage.text))


def _tidied(passage: Passage) -> Passage:
    if passage.role is not Role.HEADING:
        return passage
    return passage._replace(text=" ".join(word for word in passage.text.split(" ") if is_seen(as_read(word))))
