"""Files given other bytes, all of them or none, and the lines in which two texts differ."""

from __future__ import annotations

import difflib
from collections.abc import Sequence

from ...ground.files import SourceFile
from ...ground.problems import CommandError, Problem
from ...shelf_file.edits.files import EditedFile, undo
from ..jobs import Changed

__all__ = ["changed_lines", "exchanged"]

MOST_LINES = 400
"""So many lines that differ are told at most."""


def exchanged(wanted: Sequence[Changed]) -> tuple[Changed, ...]:
    """Give each file the bytes wanted, if it still has the digest; what comes back takes that back in its turn.

    Raises:
        CommandError: a file was changed meanwhile; all are as they were.
    """
    done: list[Changed] = []
    for one in reversed(wanted):
        edited = undo(EditedFile(one.path, one.digest, SourceFile(one.path, "", one.before)))
        if isinstance(edited, Problem):
            if done:
                exchanged(done)
            raise CommandError((edited,))
        done.append(Changed(edited.path, edited.digest, edited.before.data))
    return tuple(done)


def changed_lines(before: bytes, after: bytes) -> list[str]:
    """The lines that go, each after a -, and those that come, each after a +, in the order of the file.

    >>> changed_lines(b"a\\nb\\nc", b"a\\nB\\nc")
    ['-b', '+B']
    """
    old, new = (data.decode("utf-8", "replace").splitlines() for data in (before, after))
    found = [line for line in difflib.unified_diff(old, new, n=0, lineterm="") if line[:2] not in ("--", "++", "@@")]
    return found[:MOST_LINES]
