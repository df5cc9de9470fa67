"""Pages of plain text: one typeface, one size, flush left, wrapped to the measure."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice
from pathlib import Path
from typing import Annotated, Literal

from pydantic import BeforeValidator, Field, WithJsonSchema

from ..drawing import NOTHING, Art
from ..errors import Problem, Severity, ShelfFileError
from ..quantities import NotAMeasure, read_number, tidy
from ..spec.measures import Flag, Text, TypeSize, read_text, refuse
from ..typefaces import Typeface, bundled, load_typeface
from ..units import from_pt, print_mm, to_pt
from .copyfit import FEWEST_DOTS, Copy
from .manuscript import Manuscript, read_manuscript
from .page import Inside, PageFrame, numbered
from .part import Part
from .setting import Setting, TextPage
from .wrapping import Line

__all__ = ["TextInside", "TextSource", "compose", "extent", "load"]

TIGHTEST, LOOSEST = 0.8, 3.0


def _read_leading(value: object) -> float:
    if isinstance(value, float):
        return value
    try:
        ratio = float(read_number(tidy(read_text(value), "1.25")))
    except NotAMeasure as problem:
        raise refuse(problem.message, problem.remedy) from None
    if not TIGHTEST <= ratio <= LOOSEST:
        limit = f"{TIGHTEST:g} to {LOOSEST:g}"
        raise refuse(f"{value} is out of range", f"write a number from {limit}, such as 1.25", limit)
    return ratio


Leading = Annotated[
    float,
    BeforeValidator(_read_leading),
    WithJsonSchema({"type": "number", "minimum": TIGHTEST, "maximum": LOOSEST}),
]
"""Baseline to baseline as a multiple of the size of type."""


class TextInside(Part):
    """A text file, set simply.

    The default size, 2.2 pt, gives an x-height of 0.42 mm: just below what a sharp eye reads at 300 mm
    (0.436 mm), ten printer dots at 600 to the inch, and crisp through a lens.
    """

    kind: Literal["text"] = "text"
    file: Text = Field(description="text file in UTF-8, blank lines between paragraphs")
    size: TypeSize = Field(from_pt(2.2), description="size of type, such as 2.2 pt")
    leading: Leading = Field(1.25, description="from line to line, as a multiple of the size, such as 1.25")
    face: Text = Field("text", description="name of a bundled typeface, or path of a TTF or OTF file")
    numbers: Flag = Field(True, description="page numbers, yes or no")


@dataclass(frozen=True, slots=True)
class TextSource:
    """What was read for a text: the words and the typeface to set them in."""

    manuscript: Manuscript
    typeface: Typeface


def load(entry: TextInside, folder: Path) -> TextSource:
    """Read the text and its typeface.

    Raises:
        ShelfFileError: one of them cannot be used.
    """
    typeface, manuscript, problems = None, None, []
    try:
        typeface = _typeface(entry.face, folder)
    except ShelfFileError as refusal:
        problems += [replace(problem, field=("face",)) for problem in refusal.problems]
    try:
        manuscript = read_manuscript(folder / entry.file, typeface)
    except ShelfFileError as refusal:
        problems += refusal.problems
    if typeface is None or manuscript is None:
        raise ShelfFileError(problems)
    return TextSource(manuscript, typeface)


def _typeface(face: str, folder: Path) -> Typeface:
    """A typeface by its name here, or by the path of its file."""
    is_path = "/" in face or Path(face).suffix
    return load_typeface(folder / face) if is_path else bundled(face)


def extent(entry: TextInside, source: TextSource, frame: PageFrame) -> int:
    """The pages that the whole text needs."""
    copy = Copy(source.manuscript, source.typeface, entry.leading, frame)
    if entry.size > copy.largest_settable:
        return 1
    setting = copy.setting(entry.size)
    return math.ceil(sum(1 for _ in copy.lines(setting)) / setting.lines_per_page)


def compose(entry: TextInside, source: TextSource, frame: PageFrame) -> Inside:
    """Set the text on the pages; what finds no room is counted and reported."""
    copy = Copy(source.manuscript, source.typeface, entry.leading, frame)
    pages: tuple[Art, ...] = (NOTHING,) * frame.pages
    problems: tuple[Problem, ...]
    if entry.size > copy.largest_settable:
        problems = (_too_large(copy, entry.size),)
    else:
        setting = copy.setting(entry.size)
        placed = list(islice(copy.lines(setting), setting.lines_per_page * frame.pages))
        pages = tuple(_pages(setting, placed, frame))
        problems = (*_broken_words(copy, placed), *_too_small(copy, setting), *_extent(copy, setting, placed))
    if entry.numbers:
        pages = numbered(pages, frame, source.typeface)
    return Inside(pages, (*source.manuscript.problems, *problems))


def _pages(setting: Setting, placed: Sequence[Line], frame: PageFrame) -> Iterator[Art]:
    count = setting.lines_per_page
    for number in range(1, frame.pages + 1):
        lines = placed[(number - 1) * count : number * count]
        yield TextPage(setting, frame, number, "\n".join(words for words, _ in lines)) if lines else NOTHING


def _too_large(copy: Copy, size: float) -> Problem:
    manuscript, frame = copy.manuscript, copy.frame
    page = f"{print_mm(frame.width, 2)} × {print_mm(frame.height, 2)}"
    return Problem(
        f"{manuscript.name} does not fit in {_print_pt(size)} type on a page of {page}: "
        f"all of its {manuscript.words} words are lost",
        f"write size: {math.floor(to_pt(copy.largest_settable) * 10) / 10:g} pt or smaller",
        field=("size",),
    )


def _too_small(copy: Copy, setting: Setting) -> Iterator[Problem]:
    smallest = copy.smallest_legible
    if setting.size < smallest - 1e-9:
        dots = FEWEST_DOTS * setting.size / smallest
        yield Problem(
            f"small letters in {_print_pt(setting.size)} type are only {dots:.1f} printer dots high: "
            "they print as texture",
            f"write size: {math.ceil(to_pt(smallest) * 10) / 10:g} pt or larger, to be read through a lens",
            Severity.WARNING,
            field=("size",),
        )


def _broken_words(copy: Copy, placed: Sequence[Line]) -> Iterator[Problem]:
    """A line by whose end no further word is complete holds part of a word too wide for the measure."""
    before = [0, *(done for _, done in placed)]
    parts = {done: words for last, (words, done) in reversed([*zip(before, placed, strict=False)]) if done == last}
    if parts:
        which = "1 word is" if len(parts) == 1 else f"{len(parts)} words are"
        yield Problem(
            f"{which} wider than the lines of {copy.manuscript.name} and broken between letters; "
            f"the first begins {parts[min(parts)]!r}",
            "write a smaller size, or part such words by hand",
            Severity.NOTE,
            field=("file",),
        )


def _extent(copy: Copy, setting: Setting, placed: Sequence[Line]) -> Iterator[Problem]:
    """Whether the text is longer or shorter than the pages."""
    manuscript, pages = copy.manuscript, copy.frame.pages
    used = math.ceil(len(placed) / setting.lines_per_page)
    lost = manuscript.words - placed[-1][1]
    if lost:
        which, do = ("1 word", "does") if lost == 1 else (f"{lost} words", "do")
        yield Problem(
            f"{which} of the {manuscript.words} of {manuscript.name} {do} not fit in {pages} pages",
            _what_would_fit(copy, setting),
            field=("file",),
        )
    elif pages - used >= 2:
        yield Problem(
            f"{manuscript.name} fills {used} of {pages} pages; the others stay empty",
            f"write pages: {used + used % 2} for a thinner book, or a larger size",
            Severity.NOTE,
            field=("file",),
        )


def _what_would_fit(copy: Copy, setting: Setting) -> str:
    pages, points = copy.pages_for(setting), copy.points_for(setting.size)
    ways = [f"pages: {pages}"] if pages else []
    ways += [f"size: {points:g} pt"] if points else []
    return f"write {' or '.join(ways)}" if ways else "shorten it, or split it into volumes"


def _print_pt(mm: float) -> str:
    return f"{to_pt(mm):.3g} pt"
