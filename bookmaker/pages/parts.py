"""The inside of a book put together from its parts: where each begins, how long it is, what the contents list.

A part has the pages it asks for, or its natural length, that of its text or its pictures. Parts without one,
such as ruled pages, take what is left of the book; if there are none, the last part does. Page numbers run on.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from types import ModuleType
from typing import Any

from ..drawing import NOTHING, Art
from ..errors import Problem, Severity
from . import contents
from .page import Heading, Inside, PageFrame
from .part import Part

__all__ = ["Bound", "bind", "natural_extent"]


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
        opening, *others = headings or (None,)
        opens = opening is not None and opening.page == first
        if opening and opens and (opening.title or not others or opening.text == self.entry.listed_as):
            headings = tuple(others)
        shared = any(heading.page == first for heading in headings)
        own = Heading(self.entry.listed_as, first, numbered=not shared)
        return (own, *(replace(heading, inner=True) for heading in headings))


def bind(parts: Sequence[Bound], frame: PageFrame) -> Inside:
    """All pages of a book, the parts in order; what finds no room is reported."""
    frames = _frames(parts, frame, frame.pages)
    composed, frames = _composed(parts, frames, frame, frame.pages)
    pages: list[Art] = []
    for inside, own in zip(composed, frames, strict=True):
        pages += (NOTHING,) * (own.first - 1 - len(pages))
        pages += inside.pages
    problems = [problem for inside in composed for problem in inside.problems]
    problems += _extent(parts, frame, len(pages))
    pages += (NOTHING,) * (frame.pages - len(pages))
    headings = tuple(heading for inside in composed for heading in inside.headings)
    heights = [inside.x_height for inside in composed if inside.x_height is not None]
    return Inside(tuple(pages[: frame.pages]), tuple(problems), headings, min(heights, default=None))


def natural_extent(parts: Sequence[Bound], frame: PageFrame) -> int | None:
    """How many pages the parts need by themselves; None if one of them takes whatever is left."""
    if any(part.length(frame) is None for part in parts):
        return None
    _, frames = _composed(parts, _frames(parts, frame, None), frame, None)
    return frames[-1].first + frames[-1].pages - 1


def _composed(
    parts: Sequence[Bound], frames: list[PageFrame], whole: PageFrame, room: int | None
) -> tuple[list[Inside], list[PageFrame]]:
    """The parts on their pages, tables of contents last, when what they list is known.

    How long a table of contents is depends on how many lines it lists, and on it depends where the parts
    after it begin: if it turns out longer or shorter than thought, all is set once more.
    """
    composed = _others(parts, frames)
    if not any(_is_contents(part) for part in parts):
        return list(composed.values()), frames
    headings = _headings(composed)
    again = _frames(parts, replace(whole, contents=headings), room)
    if [(own.first, own.pages) for own in again] != [(own.first, own.pages) for own in frames]:
        composed = _others(parts, again)
        headings = _headings(composed)
    for number, part in enumerate(parts):
        if _is_contents(part):
            composed[number] = part.composed(replace(again[number], contents=headings))
    return [composed[number] for number in range(len(parts))], again


def _is_contents(part: Bound) -> bool:
    return isinstance(part.entry, contents.Contents)


def _others(parts: Sequence[Bound], frames: Sequence[PageFrame]) -> dict[int, Inside]:
    """All parts but tables of contents, composed, by their number."""
    return {
        number: part.composed(own)
        for number, (part, own) in enumerate(zip(parts, frames, strict=True))
        if not _is_contents(part)
    }


def _headings(composed: Mapping[int, Inside]) -> tuple[Heading, ...]:
    return tuple(heading for inside in composed.values() for heading in inside.headings)


def _frames(parts: Sequence[Bound], whole: PageFrame, room: int | None) -> list[PageFrame]:
    """The pages of each part: `room` is how many the book has, None if as many as it needs."""
    open_ended = _open_ended(parts, whole)
    if room is None or open_ended is None:
        return list(_laid(parts, whole, {}))
    end = _end(_laid(parts, whole, {open_ended: 1}))
    most = max(1, 1 + room - end)
    # rectos may leave a page blank or not, as the length of the part before them has it
    while most > 1 and _end(_laid(parts, whole, {open_ended: most})) > room:
        most -= 1
    return list(_laid(parts, whole, {open_ended: most}))


def _open_ended(parts: Sequence[Bound], whole: PageFrame) -> int | None:
    """Which part takes what is left: the last that has no length of its own, or else the last, unless it says."""
    loose = [number for number, part in enumerate(parts) if part.length(whole) is None]
    if loose:
        return loose[-1]
    return len(parts) - 1 if parts[-1].entry.pages is None else None


def _laid(parts: Sequence[Bound], whole: PageFrame, given: Mapping[int, int]) -> Iterator[PageFrame]:
    """The parts one after the other, some with lengths given; one without any has a page."""
    first = 1
    for number, part in enumerate(parts):
        if part.entry.begins == "recto" and first % 2 == 0:
            first += 1
        own = replace(whole, first=first, pages=0)
        pages = given.get(number) or part.length(own) or 1
        yield replace(own, pages=pages)
        first += pages


def _end(frames: Iterator[PageFrame]) -> int:
    *_, last = frames
    return last.first + last.pages - 1


def _extent(parts: Sequence[Bound], whole: PageFrame, needed: int) -> Iterator[Problem]:
    """Whether the parts are longer or shorter than the book, and parts that cannot tell how long they are."""
    open_ended, pages = _open_ended(parts, whole), whole.pages
    for number, part in enumerate(parts):
        if part.length(whole) is None and number != open_ended:
            yield Problem(
                "two parts of the inside would take what is left: this one gets 1 page",
                "write pages: with how many it shall have",
                Severity.WARNING,
                field=part.place,
            )
    if needed > pages:
        yield Problem(
            f"the parts of the inside need {needed} pages, the block has {pages}: "
            f"{needed - pages} {'page is' if needed - pages == 1 else 'pages are'} lost",
            f"write pages: {needed + needed % 2} in the block, or fewer in a part",
        )
    elif pages - needed > 1:
        yield Problem(
            f"the parts of the inside fill {needed} of {pages} pages; the others stay empty",
            f"write pages: {needed + needed % 2} in the block, or leave pages out in one part, for what is left",
            Severity.NOTE,
        )
