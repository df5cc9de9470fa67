"""What the pages of a book show: one module a kind, one row a kind in the table below."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, Annotated, Any

from pydantic import BeforeValidator, Discriminator, Tag

from ....ground.problems import Problem, Severity, ShelfFileError
from ....shelf_file.fields.entry import either
from ....shelf_file.fields.words import refuse
from ....typesetting.page import BookWords, Heading, Inside, PageFrame
from ....typesetting.punctuation import Punctuation
from .bound import Bound
from .front_matter import colophon, contents, dedication, epigraph, half_title, title_page
from .marks import marks_of
from .part import Part
from .parts import bind, natural_extent
from .patterns import blank, ledger, map_grid, mock_text, music, ruled, squared
from .pictured import pdf_pages, pictures
from .prose import text

__all__ = [
    "BLANK",
    "AnyInside",
    "BookWords",
    "Heading",
    "Inside",
    "PageFrame",
    "Part",
    "compose_inside",
    "inside_extent",
    "load_inside",
    "punctuation_in",
    "reading_errors",
    "why_open",
]

KINDS: Mapping[type[Part], ModuleType] = {
    blank.Blank: blank,
    ruled.Ruled: ruled,
    squared.Squared: squared,
    ledger.Ledger: ledger,
    music.Music: music,
    map_grid.MapGrid: map_grid,
    mock_text.MockText: mock_text,
    half_title.HalfTitle: half_title,
    title_page.TitlePage: title_page,
    dedication.Dedication: dedication,
    epigraph.Epigraph: epigraph,
    contents.Contents: contents,
    text.TextInside: text,
    pictures.PicturesInside: pictures,
    pdf_pages.PdfInside: pdf_pages,
    colophon.Colophon: colophon,
}

BLANK = blank.Blank()
"""The inside of a book that asks for none."""

MOST_PARTS = 200


def _read_parts(value: object) -> object:
    if isinstance(value, list) and not 1 <= len(value) <= MOST_PARTS:
        said = f"lists {len(value)} parts" if value else "lists no parts"
        raise refuse(said, f"write from 1 to {MOST_PARTS} parts, each after a -", f"1 to {MOST_PARTS}")
    return value


if TYPE_CHECKING:
    AnyInside = Part | tuple[Part, ...]
else:
    OnePart = either(tuple(KINDS))
    AnyInside = Annotated[
        Annotated[OnePart, Tag("one part")] | Annotated[tuple[OnePart, ...], Tag("parts")],
        Discriminator(lambda value: "parts" if isinstance(value, (list, tuple)) else "one part"),
        BeforeValidator(_read_parts),
    ]


def load_inside(entry: AnyInside, folder: Path) -> Any:
    """Read the files an inside names, as seen from a folder; what comes back is each kind's own.

    Raises:
        ShelfFileError: files cannot be used; fields are relative to the inside.
    """
    if isinstance(entry, Part):
        return KINDS[type(entry)].load(entry, folder)
    sources: list[Any] = []
    problems: list[Problem] = []
    for number, part in enumerate(entry):
        try:
            sources.append(KINDS[type(part)].load(part, folder))
        except ShelfFileError as refusal:
            problems += [replace(problem, field=(number, *problem.field)) for problem in refusal.problems]
    if problems:
        raise ShelfFileError(problems)
    return tuple(sources)


def reading_errors(entry: AnyInside, source: Any) -> tuple[Problem, ...]:
    """What is already known to spoil the pages when their files have been read, such as letters no typeface has."""
    return tuple(
        replace(problem, field=(*part.place, *problem.field))
        for part in _bound(entry, source)
        for problem in getattr(part.source, "problems", ())
        if problem.severity is Severity.ERROR
    )


def inside_extent(entry: AnyInside, source: Any, frame: PageFrame) -> int | None:
    """How many pages a block needs for an inside, in steps of the block; None if it takes what it is given.

    A kind that can tell has a function `extent`; `frame.pages` is of no account to it.
    """
    pages = natural_extent(_bound(entry, source), frame)
    return None if pages is None else frame.in_steps(pages)


def why_open(entry: AnyInside, source: Any, frame: PageFrame) -> Problem | None:
    """What keeps an inside from telling how many pages it needs, if one of its parts knows."""
    for part in _bound(entry, source):
        told = part.why_open(frame)
        if told:
            return replace(told, field=(*part.place, *told.field))
    return None


def punctuation_in(entry: AnyInside, title: str) -> Punctuation:
    """The marks a book is punctuated with, on its cover too."""
    return marks_of((entry,) if isinstance(entry, Part) else entry, title)


def compose_inside(entry: AnyInside, source: Any, frame: PageFrame) -> Inside:
    """Fill the pages, if there are any; `source` is what `load_inside` gave."""
    if not frame.pages:
        return Inside(())
    return bind(_bound(entry, source), frame)


def _bound(entry: AnyInside, source: Any) -> list[Bound]:
    """The parts with what they have read; a part that stands alone has no number in the shelf file."""
    if isinstance(entry, Part):
        return [Bound(entry, source, KINDS[type(entry)])]
    return [
        Bound(part, read, KINDS[type(part)], (number,))
        for number, (part, read) in enumerate(zip(entry, source, strict=True))
    ]
