"""Folders on the way to what is written: made when they are needed, gone when nothing came of it."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from .held_back import held_back

__all__ = ["parents_of"]


@contextmanager
def parents_of(target: Path) -> Iterator[None]:
    """The folders above a target; those that are not there are made, and taken away again if the block fails.

    Raises:
        OSError: one cannot be made.
    """
    made: list[Path] = []
    try:
        for folder in reversed([parent for parent in target.parents if not os.path.lexists(parent)]):
            made.append(folder)
            folder.mkdir()
        yield
    except BaseException:
        with held_back():
            for folder in reversed(made):
                with suppress(OSError):
                    folder.rmdir()
        raise
