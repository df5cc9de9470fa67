"""Texts from outside the folder of the shelf file: read only where the maker says so.

A shelf file that somebody sent must not print what it finds elsewhere on the computer.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

from ..ground.problems import Problem
from ..ground.visible import brief
from ..shelf_file.fields.entry import files_named
from .entries import ShelfSpec

__all__ = ["outside_texts"]

PRINTED = frozenset(("text", "captions"))
"""Files whose words are printed as they stand."""


def outside_texts(spec: ShelfSpec, folder: Path) -> Iterator[Problem]:
    """Refusals of texts and captions that lie neither in the folder of the shelf file nor in one it names."""
    allowed = [real for written in (".", *spec.texts_from) if (real := _real(folder / written))]
    for field, what, written in files_named(spec):
        file = _real(folder / written) if what in PRINTED else None
        if file is not None and not any(file.is_relative_to(one) for one in allowed):
            beside = Path(written).parent
            named = beside if _real(folder / beside) == file.parent else file.parent
            yield Problem(
                f"{brief(written)} lies outside the folder of the shelf file",
                f"copy it there, or add the line texts_from: {named.as_posix()} to the shelf file",
                field=field,
                by_itself=True,
            )


def _real(path: Path) -> Path | None:
    """Where a path leads, links followed; None if no file can have that name."""
    with suppress(OSError, ValueError):
        return Path(os.path.realpath(path))
    return None
