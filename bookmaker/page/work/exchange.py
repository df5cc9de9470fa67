"""Files given other bytes, all of them or none, and the lines in which two texts differ."""

from __future__ import annotations

import difflib
from collections.abc import Sequence

from ...ground.files import SourceFile
from ...ground.problems import CommandError, Problem
from ...shelf_file.edits.files import EditedFile, read_maker_file, undo
from ..jobs import Changed

__all__ = ["changed_lines", "exchanged", "on_what_is_there"]

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
        done.append(Changed(edited.path, edited.digest, edited.before.data, one.before))
    return tuple(done)


def on_what_is_there(one: Changed) -> Changed:
    """A change to be taken back, of the bytes that the file has now: what others changed in other lines stays.

    Where they changed the same lines, it is as it was, and will be refused.
    """
    now = read_maker_file(one.path)
    if now.digest == one.digest:
        return one
    back = _lines_put_back(one.after, one.before, now.data)
    return one if back is None else Changed(one.path, now.digest, back, now.data)


def _lines_put_back(after: bytes, before: bytes, now: bytes) -> bytes | None:
    """`now` with the lines in which `after` differs from `before` as they are in `before`; None if they are others now.

    >>> _lines_put_back(b"a\\nB\\nc\\n", b"a\\nb\\nc\\n", b"a\\nB\\nc\\nd\\n")
    b'a\\nb\\nc\\nd\\n'
    """
    mine, old, there = (data.splitlines(keepends=True) for data in (after, before, now))
    alike = difflib.SequenceMatcher(None, mine, there, autojunk=False).get_matching_blocks()
    found = list(there)
    for kind, start, end, first, last in reversed(
        difflib.SequenceMatcher(None, mine, old, autojunk=False).get_opcodes()
    ):
        if kind == "equal":
            continue
        # the lines and those around them are there, side by side, once
        low, high = max(start - 1, 0), min(end + 1, len(mine))
        block = next((one for one in alike if one.a <= low and high <= one.a + one.size), None)
        if block is None:
            return None
        shift = block.b - block.a
        found[start + shift : end + shift] = old[first:last]
    return b"".join(found)


def changed_lines(before: bytes, after: bytes) -> list[str]:
    """The lines that go, each after a -, and those that come, each after a +, in the order of the file.

    >>> changed_lines(b"a\\nb\\nc", b"a\\nB\\nc")
    ['-b', '+B']
    """
    old, new = (data.decode("utf-8", "replace").splitlines() for data in (before, after))
    found = [line for line in difflib.unified_diff(old, new, n=0, lineterm="") if line[:2] not in ("--", "++", "@@")]
    return found[:MOST_LINES]
