"""A part of an inside with what it has read and the module of its kind: all questions to a kind are asked here."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import ModuleType
from typing import Any

from ....ground.problems import Problem
from ....typesetting.lines.fount import as_read
from ....typesetting.manuscripts.markdown import emphasised
from ....typesetting.page import Heading, Inside, PageFrame
from .part import Part
from .prose.copyfit import Bounds

__all__ = ["Bound"]


@dataclass(frozen=True, slots=True)
class Bound:
    """A part and what it has read, with the module of its kind; `place` is where it stands in the shelf file."""

    entry: Part
    source: Any
    kind: ModuleType
    place: tuple[int, ...] = ()

    def length(self, frame: PageFrame) -> int | None:
        """The pages it asks for, or its natural length; None if any number will do."""
        if self.entry.pages is not None:
            return self.entry.pages
        extent = getattr(self.kind, "extent", None)
        natural: int | None = extent(self.entry, self.source, frame) if extent else None
        return natural

    def sizes(self, frame: PageFrame) -> Bounds | None:
        """Between which sizes of type it is fitted into what is left of the book; None if it is not."""
        tell = getattr(self.kind, "bounds", None)
        told: Bounds | None = tell(self.entry, self.source, frame) if tell and self.entry.pages is None else None
        return told

    def why_open(self, frame: PageFrame) -> Problem | None:
        """What keeps it from telling its natural length, if its kind knows."""
        tell = getattr(self.kind, "why_open", None)
        told: Problem | None = tell(self.entry, self.source, frame) if tell and self.entry.pages is None else None
        return told

    def composed(self, frame: PageFrame) -> Inside:
        """Its pages, with problems and headings as the whole inside has them."""
        inside: Inside = self.kind.compose(self.entry, self.source, frame)
        problems = (replace(problem, field=(*self.place, *problem.field)) for problem in inside.problems)
        return replace(inside, problems=tuple(problems), headings=self._listed(inside.headings, frame.first))

    def _listed(self, headings: tuple[Heading, ...], first: int) -> tuple[Heading, ...]:
        """What a table of contents lists of a part that begins on page `first`: itself, then what is in it.

        What opens the part is not listed again, unless it is a chapter followed by others: then that bears the page.
        """
        if not self.entry.listed_as:
            return headings
        listed_as = as_read(" ".join(emphasised(self.entry.listed_as)))
        opening, *others = headings or (None,)
        opens = opening is not None and opening.page == first
        if opening and opens and (opening.title or not others or opening.text == listed_as):
            headings = tuple(others)
        shared = any(heading.page == first for heading in headings)
        own = Heading(listed_as, first, numbered=not shared)
        return (own, *(replace(heading, depth=heading.depth + 1) for heading in headings))
