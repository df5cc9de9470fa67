"""What is read for a book: the files of its pages, of its design, and of that of its jacket."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from ...ground.problems import Problem, gathered
from .designs.artwork import NO_ARTWORK, Artwork
from .entry import BookEntry
from .pages.inside import LoadedInside, load_inside

__all__ = ["UNREAD", "Sources", "read_sources"]

NOTHING_READ = LoadedInside()
"""An inside that names no files."""


@dataclass(frozen=True, slots=True)
class Sources:
    """What was read for a book: for its pages, for its design, for that of its jacket.

    `unread` says that files of its pages could not be used, so that nobody can tell how many it needs.
    """

    inside: LoadedInside = NOTHING_READ
    design: Artwork = NO_ARTWORK
    jacket: Artwork = NO_ARTWORK
    unread: bool = False


UNREAD = Sources()
"""Those of a book whose files nobody looked at."""


def read_sources(entry: BookEntry, folder: Path) -> tuple[Sources, tuple[Problem, ...]]:
    """What its files hold, as seen from a folder, and what is wrong with them; fields are relative to the book."""
    problems: list[Problem] = []
    inside = NOTHING_READ
    design = jacket = NO_ARTWORK
    with gathered(problems, "inside"):
        inside = load_inside(entry.inside, folder)
    unread = bool(problems)
    with gathered(problems, "design"):
        design = entry.design.load(folder)
    if entry.jacket and entry.jacket.design:
        with gathered(problems, "jacket", "design"):
            jacket = entry.jacket.design.load(folder)
    return Sources(inside, design, jacket, unread), tuple(problems)
