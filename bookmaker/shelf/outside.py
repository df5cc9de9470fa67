"""Texts from outside the folder of the shelf file: read only where the maker says so.

A shelf file that somebody sent must not print what it finds elsewhere on the computer.
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from contextlib import suppress
from functools import partial
from pathlib import Path

from ..ground.kept.last_time import AFRESH, Keeper
from ..ground.problems import FieldPath, Problem
from ..ground.visible import brief
from ..shelf_file.fields.entry import Entry, files_named
from .register import Register

__all__ = ["outside_texts"]

PRINTED = frozenset(("text", "captions"))
"""Files whose words are printed as they stand."""


def outside_texts(
    register: Register, texts_from: Sequence[str], folder: Path, kept: Keeper = AFRESH
) -> Iterator[Problem]:
    """Refusals of texts and captions that lie neither in the folder of the shelf file nor in one of those named.

    Where a path leads is looked up each time: links may have changed.
    """
    allowed = [real for written in (".", *texts_from) if (real := _real(folder / written))]
    for id, thing in register.things.items():
        for field, written in kept.value(("prints", id), (thing.entry,), partial(_printed, thing.entry)):
            file = _real(folder / written)
            if file is not None and not any(file.is_relative_to(one) for one in allowed):
                beside = Path(written).parent
                named = beside if _real(folder / beside) == file.parent else file.parent
                yield Problem(
                    f"{brief(written)} lies outside the folder of the shelf file",
                    f"copy it there, or add the line texts_from: {named.as_posix()} to the shelf file",
                    field=field,
                    thing=id,
                    by_itself=True,
                )


def _printed(entry: Entry) -> Sequence[tuple[FieldPath, str]]:
    """Where an entry names files whose words are printed, and their paths."""
    return [(field, written) for field, what, written in files_named(entry) if what in PRINTED]


def _real(path: Path) -> Path | None:
    """Where a path leads, links followed; None if no file can have that name."""
    with suppress(OSError, ValueError):
        return Path(os.path.realpath(path))
    return None
