"""bookmaker: from a list of invented books to print-ready parts for a miniature library.

A shelf file is opened once and asked again and again; what did not change is not worked out anew:

    shelf = bookmaker.open("shelf.yaml")
    shelf.check().sound                      # whether everything fits
    shelf.pictures("Tide Tables")["spine"]   # notebooks show it as it is
    shelf.make("printed")                    # the sheets, the guide, the plan

Lengths are in millimetres. What cannot be used is refused with a `BookmakerError`, which tells every problem at once.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    # whoever only asks for help or the version waits for none of these
    from .sheets.facsimiles import Facsimile
    from .shelf.wishes import Wishes
    from .things.thing import AnyFamily
    from .workshop import Checked, Made, Workshop

    Families = tuple[AnyFamily, ...]

__all__ = ["Picture", "Progress", "Shelf", "check", "make", "open"]

Progress = Callable[[str, int, int], None]
"""Told what is being done, how many parts are done, and of how many."""


def _quietly(doing: str, done: int, of: int) -> None:
    """Nobody is told."""


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing at true size: `svg` is its text, `width` and `height` are in mm. Notebooks show it."""

    svg: str
    width: float
    height: float

    def _repr_svg_(self) -> str:
        return self.svg


class Shelf:
    """A shelf file that is looked at again and again: answers are those of a fresh run, and soon there."""

    def __init__(self, path: str | Path, workshop: Workshop | None = None) -> None:
        self.path = Path(path)
        self._workshop = workshop or _workshop(None)

    def check(self, progress: Progress = _quietly) -> Checked:
        """Everything worked out from the files as they are now, with all that is to be said about it.

        Raises:
            BookmakerError: the shelf file, or one it names, cannot be used.
        """
        return self._workshop.check(self.path, progress)

    def make(self, into: str | Path, *, wishes: Wishes | None = None, progress: Progress = _quietly) -> Made:
        """Write the sheets, the guide and the plan into a folder: all of it, or what is wished for.

        Raises:
            BookmakerError: the shelf cannot be used, or the folder is not one to write into; it is as it was.
        """
        from .shelf.wishes import ALL_OF_IT

        return self._workshop.make(self.path, Path(into), progress, wishes or ALL_OF_IT)

    def pictures(self, thing: str) -> Mapping[str, Picture]:
        """What there is to see of a book or another thing, by its name, its number or its id.

        Its faces (``front``, ``spine``, ``back`` and others), its openings (``opening 1`` and so on), and its flat
        parts under the ids of their pieces.

        Raises:
            BookmakerError: there is no such thing, or the shelf cannot be used.
        """
        from .ground.problems import CommandError, Problem
        from .sheets.facsimiles import facsimile_of_piece
        from .shelf_file.book_names import UnknownBook

        checked = self.check()
        try:
            (id,) = checked.plan.register.find(thing, one=True)
        except UnknownBook as unknown:
            raise CommandError((Problem(unknown.message, unknown.remedy),)) from None
        draft = checked.drafts[id]
        found = {str(role): face for role, face in draft.faces.items()}
        found |= {f"opening {number}": one for number, one in enumerate(draft.openings, start=1)}
        found |= {piece.id: facsimile_of_piece(piece) for piece in draft.pieces}
        return {name: _picture(one, f"{checked.plan.plans[id].name}: {name}") for name, one in found.items()}

    def fronts(self) -> Mapping[str, Picture]:
        """Each space with what stands in it, seen from the front, by its name.

        Raises:
            BookmakerError: the shelf cannot be used.
        """
        from .writers.shelf_art import facsimile_of_front
        from .writers.shelf_front import fronts

        checked = self.check()
        return {one.name: _picture(facsimile_of_front(one), one.name) for one in fronts(checked.plan, checked.drafts)}


def _workshop(families: Families | None) -> Workshop:
    from .workshop import Workshop

    return Workshop(families)


def _picture(one: Facsimile, title: str) -> Picture:
    from .writers.svg import svg_picture

    return Picture(svg_picture(one.art, one.box, title=title), one.box.width, one.box.height)


def open(path: str | Path) -> Shelf:
    """A shelf file to be looked at; it is read when it is asked something."""
    return Shelf(path)


def check(path: str | Path, progress: Progress = _quietly, *, families: Families | None = None) -> Checked:
    """Work out a shelf file once; `families` are the kinds of things it may hold, where they are not the usual ones.

    Raises:
        BookmakerError: it, or a file it names, cannot be used.
    """
    return Shelf(path, _workshop(families)).check(progress)


def make(
    path: str | Path,
    into: str | Path,
    *,
    wishes: Wishes | None = None,
    progress: Progress = _quietly,
    families: Families | None = None,
) -> Made:
    """Make a shelf once; see `Shelf.make` and `check`.

    Raises:
        BookmakerError: the shelf cannot be used, or the folder is not one to write into; it is as it was.
    """
    return Shelf(path, _workshop(families)).make(into, wishes=wishes, progress=progress)
