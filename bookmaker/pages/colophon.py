"""The colophon: a few lines at the end that say what the book is, how it is set, and who made it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path as FilePath
from typing import Literal

from pydantic import Field

from ..drawing import BLACK, NOTHING, Art, Drawn
from ..geometry import Rect
from ..spec.words import Flag, Text, Title
from ..typefaces import TextLine, Typeface
from .display import LEADING, broken, centred
from .faces import face_of, missing_glyphs
from .page import Inside, PageFrame, numbered
from .part import Part
from .title_page import SwelledRule

__all__ = ["Colophon", "compose", "extent", "load"]

SIZE = 1 / 34
"""Size of type (the em) as a share of the page's height: 0.62 mm on a page of 21 mm."""

SMALLEST = 1 / 200

MOST_LINES = 12
"""So many lines at most for each sentence; longer ones are set smaller."""


class Colophon(Part):
    """A colophon, on the last page of its part."""

    kind: Literal["colophon"] = "colophon"
    text: Title | None = Field(None, description="what it says, in place of title, author and shelf")
    imprint: Title | None = Field(None, description="who brings the book out")
    place: Title | None = Field(None, description="where")
    year: Title | None = Field(None, description="when")
    face: Text = Field("text", description="name of a bundled typeface, or path of a TTF or OTF file")
    numbers: Flag = Field(False, description="page numbers, yes or no")


def load(entry: Colophon, folder: FilePath) -> Typeface:
    """The typeface.

    Raises:
        ShelfFileError: it cannot be used.
    """
    return face_of(entry.face, folder)


def extent(entry: Colophon, source: Typeface, frame: PageFrame) -> int:  # noqa: ARG001 (every kind is called alike)
    """One page."""
    return 1


def compose(entry: Colophon, source: Typeface, frame: PageFrame) -> Inside:
    """The colophon on the last page, blank ones before it if there are more."""
    area, sentences = frame.type_area(frame.pages), list(_sentences(entry, source, frame))
    size = frame.height * SIZE
    lines = _lines(sentences, source, size, frame)
    while _height(lines) > area.height * 0.9 and size > frame.height * SMALLEST:
        size *= 0.92
        lines = _lines(sentences, source, size, frame)
    pages: tuple[Art, ...] = (*(NOTHING,) * (frame.pages - 1), _set(lines, area, source, frame))
    problems = tuple(missing_glyphs("colophon", source, "".join(sentences)))
    return Inside(numbered(pages, frame, source) if entry.numbers else pages, problems)


def _sentences(entry: Colophon, face: Typeface, frame: PageFrame) -> Iterator[str]:
    """What it says, each sentence on lines of its own."""
    book = frame.book
    if entry.text:
        yield entry.text
    else:
        yield book.title
        if book.author:
            yield f"by {book.author}"
        yield f"made for {book.shelf}"
        yield f"and set in {face.name}"
    imprint = ", ".join(part for part in (entry.imprint, entry.place, entry.year) if part)
    if imprint:
        yield imprint


def _lines(sentences: list[str], face: Typeface, size: float, frame: PageFrame) -> list[TextLine]:
    measure = frame.type_area(1).width
    return [
        line
        for sentence in sentences
        for line in broken(face, sentence, size, measure, MOST_LINES, right_to_left=frame.right_to_left)
    ]


def _height(lines: list[TextLine]) -> float:
    return sum(line.size * LEADING for line in lines)


def _set(lines: list[TextLine], area: Rect, face: Typeface, frame: PageFrame) -> Art:
    """The lines at the foot of the type area, under a short swelled rule."""
    layers: list[Art] = []
    top = area.y + _height(lines)
    rule = Rect(area.centre.x - area.width / 12, top + lines[0].size / 2, area.width / 6, 2 * frame.line())
    layers.append(SwelledRule(rule, BLACK))
    for line in lines:
        layers.append(centred((line,), area.centre.x, top - face.cap_height * line.size))
        top -= line.size * LEADING
    return Drawn(tuple(layers))
