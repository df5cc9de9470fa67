"""Picture files of a cover, read at the start."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from ..errors import Problem, ShelfFileError
from ..pictures import Picture, load_picture

__all__ = ["load_artwork"]


def load_artwork(files: Mapping[str, str], folder: Path) -> dict[str, Picture]:
    """Read the picture each key names.

    Raises:
        ShelfFileError: with every picture that cannot be used, each under its key.
    """
    pictures: dict[str, Picture] = {}
    problems: list[Problem] = []
    for key, name in files.items():
        try:
            pictures[key] = load_picture(folder / name)
        except ShelfFileError as refusal:
            problems += [replace(problem, field=(key,)) for problem in refusal.problems]
    if problems:
        raise ShelfFileError(problems)
    return pictures
