"""Pages of pictures: a folder of them in the order of their names, one a page or across two, with captions if asked."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import Literal, NoReturn

from pydantic import Field

from .....ground.files import files_in
from .....ground.geometry import Size
from .....ground.pictures import Picture, effective_dpi, load_picture, show_dpi
from .....ground.problems import Problem, Severity, ShelfFileError, gathered
from .....ground.units import MM_PER_INCH
from .....shelf_file.fields.words import CaptionsFile, Flag, PictureFolder
from .....typesetting.page import Inside, PageFrame, numbered
from ..part import LoadedPart, Part, some_empty
from .captions import captions_of
from .plates import Plate, arrange, place, size_of_captions, small_captions

__all__ = ["LoadedPictures", "PicturesInside", "PicturesSource"]

PICTURE_NAME = re.compile(
    r".*\.(jpe?g|jpe|jfif|png|webp|tiff?|gif|bmp|hei[cf]|avif|jp2|jxl|svg|psd|ico|tga)", re.IGNORECASE
)
"""Names that end so are pictures; those of other formats than ours are refused, not passed over."""

MOST_PICTURES = 2000
"""No book has more pages."""

MOST_NAMED = 3

LOWEST_RESOLUTION = 300.0
"""Dots per inch; below, a print held close looks coarse (common practice)."""


class PicturesInside(Part):
    """A folder of pictures."""

    kind: Literal["pictures"] = "pictures"
    folder: PictureFolder = Field(description="folder of pictures, one a page in the order of their names")
    bleed: Flag = Field(False, description="yes: fill the page and crop; no: keep the margins")
    spreads: Literal["none", "wide", "all"] = Field("none", description="which pictures lie across two pages")
    captions: CaptionsFile | None = Field(
        None, description="names, for those of the pictures, or a text file with a line each"
    )
    numbers: Flag = Field(False, description="page numbers, yes or no")

    @property
    def shows(self) -> str:
        """The folder."""
        return self.folder

    def load(self, folder: FilePath) -> LoadedPictures:
        """Read all pictures of the folder.

        Raises:
            ShelfFileError: there is no such folder, it holds no pictures, or some cannot be used; or the captions.
        """
        files = _visible_files(folder / self.folder, self.folder)
        pictures: list[Picture] = []
        problems: list[Problem] = []
        names = [file for file in files if PICTURE_NAME.fullmatch(file.name)]
        if not names:
            _refuse(f"the folder {self.folder} holds no pictures", "put JPEG, PNG, WebP or TIFF files into it")
        if len(names) > MOST_PICTURES:
            _refuse(
                f"{self.folder} holds {len(names)} pictures; no book has more than {MOST_PICTURES} pages",
                "share them out among several folders and books",
            )
        for file in names:
            with gathered(problems, "folder"):
                pictures.append(load_picture(file))
        captions: tuple[str, ...] = ()
        remarks: tuple[Problem, ...] = ()
        with gathered(problems):
            captions, remarks = captions_of(self.captions, [file.stem for file in names], folder)
        if problems:
            raise ShelfFileError(problems)
        passed_over = tuple(file.name for file in files if not PICTURE_NAME.fullmatch(file.name))
        source = PicturesSource(self.folder, tuple(pictures), passed_over, captions, remarks)
        return LoadedPictures(self, source)


@dataclass(frozen=True, slots=True)
class PicturesSource:
    """The pictures in page order, the name of their folder, and the files there that are none.

    There are as many captions as pictures, or none at all; an empty one is left out.
    """

    folder: str
    pictures: tuple[Picture, ...]
    passed_over: tuple[str, ...] = ()
    captions: tuple[str, ...] = ()
    problems: tuple[Problem, ...] = ()


def _refuse(message: str, remedy: str) -> NoReturn:
    raise ShelfFileError((Problem(message, remedy, field=("folder",)),))


def _visible_files(folder: FilePath, written: str) -> list[FilePath]:
    """The files of a folder by name, numbers in names counting as numbers; hidden ones are left out."""
    return sorted(files_in(folder, written, ("folder",)), key=lambda file: natural_order(file.name))


def natural_order(name: str) -> tuple[list[str | int], str]:
    """A key that sorts names as people count.

    >>> sorted(["plate 10", "plate 2"], key=natural_order)
    ['plate 2', 'plate 10']
    """
    parts = re.split(r"(\d+)", name.casefold())
    return [int(part) if i % 2 else part for i, part in enumerate(parts)], name


@dataclass(frozen=True, slots=True)
class LoadedPictures(LoadedPart):
    """A folder of pictures, read."""

    written: PicturesInside
    source: PicturesSource

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What is wrong with the captions."""
        return self.source.problems

    def extent(self, frame: PageFrame) -> int:
        """The pages that all pictures need, with those that stay blank before spreads."""
        *_, last = arrange(self.source.pictures, (), self.written.spreads, frame)
        return last.page + last.pages - 1

    def compose(self, frame: PageFrame) -> Inside:
        """Each picture on its page or its two; what is left over on either side is reported."""
        written, source = self.written, self.source
        captions = () if written.bleed else source.captions
        plates = list(arrange(source.pictures, captions, written.spreads, frame))
        shown = [plate for plate in plates if plate.page + plate.pages - 1 <= frame.pages]
        pages = [*frame.with_blanks()]
        problems = [*_count(source, plates, len(shown), frame), *_passed_over(source), *source.problems]
        if written.bleed and source.captions:
            problems.append(_no_room())
        caption_size = size_of_captions(shown, frame)
        problems += small_captions(shown, caption_size, frame)
        for plate in shown:
            size, art = place(plate, frame, caption_size, bleed=written.bleed)
            for number, page in art.items():
                pages[number - 1] = page
            problems += _notes(plate.picture, size)
        return Inside(numbered(pages, frame) if written.numbers else tuple(pages), tuple(problems))


def _no_room() -> Problem:
    return Problem(
        "pictures that fill the page leave no room for captions, which are left out",
        "write bleed: no, or leave captions out",
        Severity.WARNING,
        field=("captions",),
    )


def _notes(picture: Picture, size: Size) -> Iterator[Problem]:
    for note in picture.notes:
        yield Problem(f"{picture.path.name} {note}", severity=Severity.NOTE, field=("folder",))
    resolution = effective_dpi(picture, *size)
    if resolution < LOWEST_RESOLUTION - 0.5:
        width, height = (math.ceil(side / MM_PER_INCH * LOWEST_RESOLUTION) for side in size)
        yield Problem(
            f"{picture.path.name} prints at only {show_dpi(resolution)}",
            f"use a picture of at least {width} × {height} pixels",
            Severity.WARNING,
            field=("folder",),
        )


def _count(source: PicturesSource, plates: Sequence[Plate], shown: int, frame: PageFrame) -> Iterator[Problem]:
    needed, pages = plates[-1].page + plates[-1].pages - 1, frame.pages
    if shown < len(plates):
        lost = [plate.picture.path.name for plate in plates[shown:]]
        yield Problem(
            f"{len(lost)} of {len(plates)} pictures of {source.folder} do not fit in {frame.count}: {_listed(lost)}",
            f"write {frame.to_write(needed)} or take pictures out of the folder",
            field=("folder",),
        )
    elif pages - needed > 1:  # one page over is the back of the last leaf
        yield some_empty(source.folder, needed, frame, "folder")


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
