"""Picture files of a cover, read at the start."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from math import ceil
from pathlib import Path

from ..errors import Problem, Severity, ShelfFileError
from ..geometry import Rect, Size
from ..pictures import Picture, covering, effective_dpi, load_picture, show_dpi

__all__ = ["load_artwork", "picture_problems"]

LOWEST_RESOLUTION = 300.0
"""Dots per inch under which a picture looks coarse (common practice)."""


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


def picture_problems(picture: Picture, size: Size, key: str) -> Iterator[Problem]:
    """What was done to the picture, and whether it is fine enough for the print."""
    for note in picture.notes:
        yield Problem(f"{picture.path.name} {note}", severity=Severity.NOTE, field=(key,))
    resolution = effective_dpi(picture, *covering(picture, Rect(0, 0, *size)).size)
    if resolution < LOWEST_RESOLUTION:
        width, height = (ceil(side * LOWEST_RESOLUTION / resolution) for side in (picture.width_px, picture.height_px))
        yield Problem(
            f"{picture.path.name} prints at only {show_dpi(resolution)}",
            f"use a picture of at least {width} × {height} pixels",
            Severity.WARNING,
            field=(key,),
        )
