"""Pages of a PDF file, made small: what was drawn as lines and letters stays so."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated, Literal

from pydantic import BeforeValidator, Field, WithJsonSchema

from .....ground.art import Imported
from .....ground.geometry import Rect
from .....ground.imported import ImportedPage, PageRange, load_pages
from .....ground.problems import Problem, Severity
from .....ground.quantities import show
from .....shelf_file.fields.words import Flag, PdfFile, read_text, refuse
from .....typesetting.page import Inside, PageFrame, numbered
from ..part import LoadedPart, Part, some_empty

__all__ = ["LoadedPdf", "PdfInside", "PdfSource"]


def _read_range(value: object) -> PageRange:
    if isinstance(value, tuple):
        return value
    text = read_text(value)
    stretches: list[tuple[int, int | None]] = []
    for part in text.split(","):
        found = re.fullmatch(r"\s*([0-9]{1,6})(\s*[-–]\s*([0-9]{1,6})?)?\s*", part)
        if not found:
            raise refuse(f"{show(text)!r} is not a range of pages", "write it like 3-10, 14, 20-")
        first = int(found[1])
        last = int(found[3]) if found[3] else None if found[2] else first
        if first == 0:
            raise refuse(f"{show(text)!r} begins with page 0", "count pages from 1")
        if last is not None and last < first:
            raise refuse(f"{show(part.strip())!r} runs backwards", f"write {last}-{first}")
        stretches.append((first, last))
    return tuple(stretches)


Pages = Annotated[
    PageRange,
    BeforeValidator(_read_range),
    WithJsonSchema({"type": "string", "examples": ["3-10, 14, 20-"]}),
]
"""Pages of a file, counted from 1: stretches with their first and last page, the last one None if it is open."""


class PdfInside(Part):
    """A PDF file, one of its pages on each page."""

    kind: Literal["pdf"] = "pdf"
    file: PdfFile = Field(description="PDF file")
    range: Pages | None = Field(None, description="which of its pages, such as 3-10, 14, 20-")
    fill: Literal["page", "type area"] = Field("page", description="what its pages are scaled to fit into")
    numbers: Flag = Field(False, description="page numbers, yes or no")

    @property
    def shows(self) -> str:
        """The file."""
        return self.file

    def load(self, folder: Path) -> LoadedPdf:
        """Look through the file.

        Raises:
            ShelfFileError: it cannot be used, or has no such pages.
        """
        path = folder / self.file
        pages, notes = load_pages(path, self.range, self.file)
        return LoadedPdf(self, PdfSource(path.name, pages, notes))


@dataclass(frozen=True, slots=True)
class PdfSource:
    """The pages wanted, the name of their file, and what is left out of it."""

    name: str
    pages: tuple[ImportedPage, ...]
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LoadedPdf(LoadedPart):
    """A PDF file, looked through."""

    written: PdfInside
    source: PdfSource

    def extent(self, frame: PageFrame) -> int:  # noqa: ARG002 (as many as the file has)
        """The pages wanted of the file."""
        return len(self.source.pages)

    def compose(self, frame: PageFrame) -> Inside:
        """One page of the file a page, as large as fits; what is left over on either side is reported."""
        written, source = self.written, self.source
        shown = source.pages[: frame.pages]
        placed = tuple(
            Imported(page, _fitting(page, frame.page() if written.fill == "page" else frame.type_area(number)))
            for number, page in enumerate(shown, start=1)
        )
        pages = frame.with_blanks(*placed)
        notes = (Problem(f"{source.name} {note}", severity=Severity.NOTE, field=("file",)) for note in source.notes)
        return Inside(numbered(pages, frame) if written.numbers else pages, (*_count(source, frame), *notes))


def _fitting(page: ImportedPage, area: Rect) -> Rect:
    """The largest rectangle of the page's proportions inside an area, centred in it."""
    scale = min(area.width / page.size.width, area.height / page.size.height)
    width, height = page.size.width * scale, page.size.height * scale
    return Rect(area.centre.x - width / 2, area.centre.y - height / 2, width, height)


def _count(source: PdfSource, frame: PageFrame) -> Iterator[Problem]:
    count, pages = len(source.pages), frame.pages
    if count > pages:
        yield Problem(
            f"{count - pages} of {count} pages of {source.name} do not fit in {frame.count}",
            f"write {frame.to_write(count)}, or range: with fewer",
            field=("file",),
        )
    elif pages - count > 1:  # one page over is the back of the last leaf
        yield some_empty(source.name, count, frame, "file")
