"""A part of an inside in its place among the others: how long it is there, and its pages as the whole has them."""

from __future__ import annotations

from dataclasses import dataclass, replace

from ....ground.problems import Problem, within
from ....typesetting.lines.fount import as_read
from ....typesetting.manuscripts.markdown import emphasised
from ....typesetting.page import Heading, Inside, PageFrame
from .part import LoadedPart, Part
from .prose.copyfit import Bounds

__all__ = ["PlacedPart"]


@dataclass(frozen=True, slots=True)
class PlacedPart:
    """A part, loaded; `place` is its number in the shelf file, nothing if it stands alone."""

    written: Part
    loaded: LoadedPart
    place: tuple[int, ...] = ()

    def length(self, frame: PageFrame) -> int | None:
        """The pages it asks for, or its natural length; None if any number will do."""
        return self.written.pages if self.written.pages is not None else self.loaded.extent(frame)

    def sizes(self, frame: PageFrame) -> Bounds | None:
        """Between which sizes of type it is fitted into what is left of the book; None if it is not."""
        return self.loaded.sizes(frame) if self.written.pages is None else None

    def why_open(self, frame: PageFrame) -> Problem | None:
        """What keeps it from telling its natural length, if it knows."""
        told = self.loaded.why_open(frame) if self.written.pages is None else None
        return told and replace(told, field=(*self.place, *told.field))

    def compose(self, frame: PageFrame) -> Inside:
        """Its pages, with problems and headings as the whole inside has them."""
        inside = self.loaded.compose(frame)
        problems = within(self.place, inside.problems)
        return replace(inside, problems=problems, headings=self._listed(inside.headings, frame.first))

    def _listed(self, headings: tuple[Heading, ...], first: int) -> tuple[Heading, ...]:
        """What a table of contents lists of a part that begins on page `first`: itself, then what is in it.

        What opens the part is not listed again, unless it is a chapter followed by others: then that bears the page.
        """
        if not self.written.listed_as:
            return headings
        listed_as = as_read(" ".join(emphasised(self.written.listed_as)))
        opening, *others = headings or (None,)
        opens = opening is not None and opening.page == first
        if opening and opens and (opening.title or not others or opening.text == listed_as):
            headings = tuple(others)
        shared = any(heading.page == first for heading in headings)
        own = Heading(listed_as, first, numbered=not shared)
        return (own, *(replace(heading, depth=heading.depth + 1) for heading in headings))
