"""What a shelf names in other files, all of it read before anything is worked out."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import TypeVar

from ..ground.pictures import Picture
from ..ground.problems import FieldPath, Problem, ShelfFileError, within
from ..sheets.flat import Role
from ..shelf_file.reading import ShelfFile
from ..things.book.designs.artwork import NO_ARTWORK, Artwork
from ..things.book.pages.inside import LoadedInside, load_inside
from ..things.slipcase.faces import load_faces
from .entries import ShelfSpec

__all__ = ["Sources", "read_sources"]

Source = TypeVar("Source")


@dataclass(frozen=True, slots=True)
class Sources:
    """What was read from the files a shelf names: by book its inside, design and jacket; by slipcase its pictures.

    `errors` are those of files that could be read all the same, and that the pages will tell of once they are set.
    """

    books: Sequence[tuple[LoadedInside, Artwork, Artwork]]
    slipcases: Mapping[str, Mapping[Role, Picture]]
    errors: Sequence[Problem] = ()


def read_sources(shelf: ShelfFile[ShelfSpec], problems: list[Problem]) -> Sources:
    """The files every book and slipcase names; what cannot be read is added to the problems."""
    books: list[tuple[LoadedInside, Artwork, Artwork]] = []
    errors: list[Problem] = []
    touched = {field[:3] for field in shelf.mended}

    def read(load: Callable[[Path], Source], nothing: Source, *field: str | int) -> Source:
        try:
            return load(shelf.folder)
        except ShelfFileError as refusal:
            problems.extend(shelf.of_the_maker(within(field, refusal.problems)))
            return nothing

    for number, book in enumerate(shelf.spec.books):
        here: FieldPath = ("books", number, "inside")
        inside = read(partial(load_inside, book.inside), LoadedInside(), *here)
        if here not in touched:
            errors += within(here, inside.errors)
        design = read(book.design.load, NO_ARTWORK, "books", number, "design")
        own = book.jacket.design if book.jacket else None
        jacket = read(own.load, NO_ARTWORK, "books", number, "jacket", "design") if own else NO_ARTWORK
        books.append((inside, design, jacket))
    slipcases: dict[str, Mapping[Role, Picture]] = {
        name: read(partial(load_faces, box.faces), {}, "slipcases", name, "faces") if box.faces else {}
        for name, box in shelf.spec.slipcases.items()
    }
    return Sources(books, slipcases, errors)
