"""A shelf file read as this program knows it: with everything that may stand in one."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from ..ground.problems import ShelfFileError
from ..paper.profiles import with_profiles
from ..shelf_file.reading import Form, ShelfFile, known_keys
from ..shelf_file.reading import proofread as proofread_as
from ..shelf_file.yaml_tree import Tree
from ..things.book.entry import BookEntry
from ..things.families import SECTIONS, all_families
from ..things.thing import AnyFamily
from .entries import THINGS, ShelfSpec, shelf_model, units_meant

__all__ = ["proofread", "read_shelf"]


def proofread(
    path: Path, families: tuple[AnyFamily, ...] | None = None, counts: Mapping[int, int] | None = None
) -> ShelfFile[ShelfSpec]:
    """Read a shelf file past its faults, as far as it can be.

    `families` are the kinds of things it may hold, where they are not the usual ones;
    `counts` say how many books are invented by entries that take as many as it takes.

    Raises:
        ShelfFileError: it is not YAML, names a file that cannot be read, or nothing can be made of it.
    """

    def model(shelf: Tree) -> type[ShelfSpec]:
        return _usual_model(shelf) if families is None else shelf_model(families)

    return proofread_as(path, Form(model, BookEntry, with_profiles, units_meant), counts)


def _usual_model(shelf: Tree) -> type[ShelfSpec]:
    """The model of a shelf as it is written: only where there may be a list of things, it has all that stand there."""
    model = shelf_model(SECTIONS)
    enough = isinstance(shelf.value, dict) and shelf.value.keys() <= known_keys(model) - {THINGS}
    return model if enough else shelf_model(all_families())


def read_shelf(path: Path) -> ShelfFile[ShelfSpec]:
    """Read and check a shelf file.

    Raises:
        ShelfFileError: with everything that is wrong in the file, each problem with its place.
    """
    shelf = proofread(path)
    if shelf.faults:
        raise ShelfFileError(shelf.faults)
    return shelf
