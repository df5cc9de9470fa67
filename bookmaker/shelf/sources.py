"""What a shelf names in other files, all of it read before anything is worked out."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from ..ground.pictures import Picture
from ..ground.problems import FieldPath, Problem, ShelfFileError
from ..sheets.flat import Role
from ..shelf_file.reading import ShelfFile
from ..things.book.designs import load_design
from ..things.book.pages import load_inside, reading_errors
from ..things.slipcase.faces import load_faces
from .entries import ShelfSpec

__all__ = ["Sources", "read_sources"]


@dataclass(frozen=True, slots=True)
class Sources:
    """What was read from the files a shelf names: by book its inside, design and jacket; by slipcase its pictures.

    `errors` are those of files that could be read all the same, and that the pages will tell of once they are set.
    """

    books: Sequence[tuple[object, object, object]]
    slipcases: Mapping[str, Mapping[Role, Picture]]
    errors: Sequence[Problem] = ()


def read_sources(shelf: ShelfFile[ShelfSpec], problems: list[Problem]) -> Sources:
    """The files every book and slipcase names; what cannot be read is added to the problems."""
    books: list[tuple[object, object, object]] = []
    errors: list[Problem] = []
    touched = {field[:3] for field in shelf.mended}

    def read(load: Callable[..., Any], entry: object, field: FieldPath) -> Any:
        try:
            return load(entry, shelf.folder)
        except ShelfFileError as refusal:
            told = (replace(problem, field=(*field, *problem.field)) for problem in refusal.problems)
            problems.extend(shelf.of_the_maker(told))
            return None

    for number, book in enumerate(shelf.spec.books):
        here: FieldPath = ("books", number, "inside")
        inside = read(load_inside, book.inside, here)
        if inside is not None and here not in touched:
            errors += [replace(one, field=(*here, *one.field)) for one in reading_errors(book.inside, inside)]
        design = read(load_design, book.design, ("books", number, "design"))
        own = book.jacket.design if book.jacket else None
        jacket = read(load_design, own, ("books", number, "jacket", "design")) if own else None
        books.append((inside, design, jacket))
    slipcases = {
        name: read(load_faces, box.faces, ("slipcases", name, "faces")) if box.faces else {}
        for name, box in shelf.spec.slipcases.items()
    }
    return Sources(books, slipcases, errors)
