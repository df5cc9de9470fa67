"""The inside of a book, one part or several one after the other, with what their files hold."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from ....ground.problems import Problem, Severity, ShelfFileError, gathered, within
from ....ground.typefaces import Typeface
from ....typesetting.lines.fount import Style
from ....typesetting.page import Inside, PageFrame
from .part import Part
from .parts import bind, natural_extent
from .placed_part import PlacedPart
from .written import Parts

__all__ = ["LoadedInside", "load_inside"]


@dataclass(frozen=True, slots=True)
class LoadedInside:
    """The parts of an inside with what their files hold; fields of problems are relative to the inside."""

    parts: Sequence[PlacedPart] = ()

    @property
    def errors(self) -> tuple[Problem, ...]:
        """What spoils the pages for certain now that the files have been read, such as letters no typeface has."""
        problems = (problem for part in self.parts for problem in within(part.place, part.loaded.problems))
        return tuple(problem for problem in problems if problem.severity is Severity.ERROR)

    @property
    def face(self) -> Typeface | None:
        """The typeface of its first text, if it has one."""
        types = (part.loaded.type for part in self.parts)
        return next((type.family[Style.ROMAN] for type in types if type), None)

    def extent(self, frame: PageFrame) -> int | None:
        """How many pages a block needs, in its steps; None if it takes any number. `frame.pages` is of no account."""
        pages = natural_extent(self.parts, frame)
        return None if pages is None else frame.in_steps(pages)

    def why_open(self, frame: PageFrame) -> Problem | None:
        """What keeps it from telling how many pages it needs, if one of its parts knows."""
        return next((told for part in self.parts if (told := part.why_open(frame))), None)

    def compose(self, frame: PageFrame) -> Inside:
        """Fill the pages, if there are any."""
        return bind(self.parts, frame) if frame.pages else Inside(())


def load_inside(inside: Parts, folder: Path) -> LoadedInside:
    """Read the files an inside names, as seen from a folder.

    Raises:
        ShelfFileError: files cannot be used; fields are relative to the inside.
    """
    if isinstance(inside, Part):
        return LoadedInside((PlacedPart(inside, inside.load(folder)),))
    parts: list[PlacedPart] = []
    problems: list[Problem] = []
    for number, part in enumerate(inside):
        with gathered(problems, number):
            parts.append(PlacedPart(part, part.load(folder), (number,)))
    if problems:
        raise ShelfFileError(problems)
    return LoadedInside(tuple(parts))
