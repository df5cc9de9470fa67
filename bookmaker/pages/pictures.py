"""Pages of pictures: a folder of them, one a page, in the order of their names."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path as FilePath
from typing import Literal, NoReturn

from pydantic import Field

from ..drawing import NOTHING, Art, Canvas
from ..errors import Problem, Severity, ShelfFileError
from ..geometry import Path, Rect, Transform
from ..pictures import Picture, covering, effective_dpi, fitting, load_picture
from ..spec.entry import Entry
from ..spec.measures import Flag, Text
from ..units import MM_PER_INCH
from .page import Inside, PageFrame, numbered

__all__ = ["PicturePage", "PicturesInside", "PicturesSource", "compose", "load"]

PICTURE_NAME = re.compile(
    r".*\.(jpe?g|jpe|jfif|png|webp|tiff?|gif|bmp|hei[cf]|avif|jp2|jxl|svg|psd|ico|tga)", re.IGNORECASE
)
"""Names that end so are pictures; those of other formats than ours are refused, not passed over."""

MOST_PICTURES = 2000
"""No book has more pages."""

MOST_NAMED = 3

LOWEST_RESOLUTION = 300.0
"""Dots per inch; below, a print held close looks coarse (common practice)."""


class PicturesInside(Entry):
    """A folder of pictures."""

    kind: Literal["pictures"] = "pictures"
    folder: Text = Field(description="folder of pictures, one a page in the order of their names")
    bleed: Flag = Field(False, description="yes: fill the page and crop; no: keep the margins")
    numbers: Flag = Field(False, description="page numbers, yes or no")


@dataclass(frozen=True, slots=True)
class PicturesSource:
    """The pictures in page order, the name of their folder, and the files there that are none."""

    folder: str
    pictures: tuple[Picture, ...]
    passed_over: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PicturePage:
    """A picture on a page; what stands out of `area` is cropped."""

    picture: Picture
    into: Rect
    area: Rect

    def draw(self, canvas: Canvas) -> None:
        """Place the picture."""
        if self.area.contains(self.into):
            canvas.picture(self.picture, self.into)
            return
        with canvas.placed(Transform(), Path.rectangle(self.area)):
            canvas.picture(self.picture, self.into)


def load(entry: PicturesInside, folder: FilePath) -> PicturesSource:
    """Read all pictures of the folder.

    Raises:
        ShelfFileError: there is no such folder, it holds no pictures, or some cannot be used.
    """
    files = _visible_files(folder / entry.folder)
    pictures: list[Picture] = []
    problems: list[Problem] = []
    names = [file for file in files if PICTURE_NAME.fullmatch(file.name)]
    if not names:
        _refuse(f"the folder {entry.folder} holds no pictures", "put JPEG, PNG, WebP or TIFF files into it")
    if len(names) > MOST_PICTURES:
        _refuse(
            f"{entry.folder} holds {len(names)} pictures; no book has more than {MOST_PICTURES} pages",
            "share them out among several folders and books",
        )
    for file in names:
        try:
            pictures.append(load_picture(file))
        except ShelfFileError as refusal:
            problems += [replace(problem, field=("folder",)) for problem in refusal.problems]
    if problems:
        raise ShelfFileError(problems)
    passed_over = tuple(file.name for file in files if not PICTURE_NAME.fullmatch(file.name))
    return PicturesSource(entry.folder, tuple(pictures), passed_over)


def _refuse(message: str, remedy: str) -> NoReturn:
    raise ShelfFileError((Problem(message, remedy, field=("folder",)),))


def _visible_files(folder: FilePath) -> list[FilePath]:
    """The files of a folder by name, numbers in names counting as numbers; hidden ones are left out."""
    try:
        found = [file for file in folder.iterdir() if not file.name.startswith(".") and file.is_file()]
    except FileNotFoundError:
        _refuse(f"there is no folder {folder.name}", "write its path as seen from that of the shelf file")
    except NotADirectoryError:
        _refuse(f"{folder.name} is a file, not a folder", "write the folder that holds the pictures")
    except (OSError, ValueError) as failure:
        reason = getattr(failure, "strerror", None) or failure
        _refuse(f"the folder {folder.name} cannot be read ({reason})", "allow reading it")
    return sorted(found, key=lambda file: natural_order(file.name))


def natural_order(name: str) -> tuple[list[str | int], str]:
    """A key that sorts names as people count.

    >>> sorted(["plate 10", "plate 2"], key=natural_order)
    ['plate 2', 'plate 10']
    """
    parts = re.split(r"(\d+)", name.casefold())
    return [int(part) if i % 2 else part for i, part in enumerate(parts)], name


def compose(entry: PicturesInside, source: PicturesSource, frame: PageFrame) -> Inside:
    """One picture a page; what is left over on either side is reported."""
    shown = source.pictures[: frame.pages]
    placed = [_place(entry, picture, frame, number) for number, picture in enumerate(shown, start=1)]
    problems = [*_count(source, frame), *_passed_over(source)]
    for page in placed:
        problems += _notes(page)
    pages: tuple[Art, ...] = (*placed, *(NOTHING,) * (frame.pages - len(placed)))
    return Inside(numbered(pages, frame) if entry.numbers else pages, tuple(problems))


def _place(entry: PicturesInside, picture: Picture, frame: PageFrame, number: int) -> PicturePage:
    if entry.bleed:
        return PicturePage(picture, covering(picture, frame.page()), frame.page())
    area = frame.type_area(number)
    return PicturePage(picture, fitting(picture, area), area)


def _notes(page: PicturePage) -> Iterator[Problem]:
    picture = page.picture
    for note in picture.notes:
        yield Problem(f"{picture.path.name} {note}", severity=Severity.NOTE, field=("folder",))
    resolution = effective_dpi(picture, *page.into.size)
    if resolution < LOWEST_RESOLUTION - 0.5:
        width, height = (math.ceil(side / MM_PER_INCH * LOWEST_RESOLUTION) for side in page.into.size)
        yield Problem(
            f"{picture.path.name} prints at only {resolution:.0f} dots per inch",
            f"use a picture of at least {width} × {height} pixels",
            Severity.WARNING,
            field=("folder",),
        )


def _count(source: PicturesSource, frame: PageFrame) -> Iterator[Problem]:
    count, pages = len(source.pictures), frame.pages
    if count > pages:
        lost = [picture.path.name for picture in source.pictures[pages:]]
        yield Problem(
            f"{len(lost)} of {count} pictures of {source.folder} do not fit in {pages} pages: {_listed(lost)}",
            f"write pages: {count + count % 2} or take pictures out of the folder",
            field=("folder",),
        )
    elif count < pages:
        yield Problem(
            f"{source.folder} fills {count} of {pages} pages; the others stay empty",
            severity=Severity.NOTE,
            field=("folder",),
        )


def _passed_over(source: PicturesSource) -> Iterator[Problem]:
    if source.passed_over:
        yield Problem(
            f"not pictures, left out of {source.folder}: {_listed(source.passed_over)}",
            severity=Severity.NOTE,
            field=("folder",),
        )


def _listed(names: Sequence[str]) -> str:
    more = len(names) - MOST_NAMED
    return ", ".join(names[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")
