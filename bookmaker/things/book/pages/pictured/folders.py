"""Folders of pictures, read: their pictures in the order of their names, and a caption for each if asked."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import NoReturn

from pydantic import Field

from .....ground.files import files_in
from .....ground.geometry import Size
from .....ground.pictures import Picture, effective_dpi, load_picture, show_dpi
from .....ground.problems import Problem, Severity, ShelfFileError, gathered
from .....ground.units import MM_PER_INCH
from .....shelf_file.fields.words import CaptionsFile, PictureFolder
from ..part import Part
from .captions import captions_of

__all__ = ["FolderPart", "PicturesSource", "listed_names", "natural_order", "passed_over", "picture_notes"]

PICTURE_NAME = re.compile(
    r".*\.(jpe?g|jpe|jfif|png|webp|tiff?|gif|bmp|hei[cf]|avif|jp2|jxl|svg|psd|ico|tga)", re.IGNORECASE
)
"""Names that end so are pictures; those of other formats than ours are refused, not passed over."""

MOST_PICTURES = 2000
"""No book has more pages."""

MOST_NAMED = 3

LOWEST_RESOLUTION = 300.0
"""Dots per inch; below, a print held close looks coarse (common practice)."""


class FolderPart(Part):
    """A part that shows the pictures of a folder."""

    folder: PictureFolder = Field(description="folder of pictures, one after the other in the order of their names")
    captions: CaptionsFile | None = Field(
        None, description="names, for those of the pictures, or a text file with a line each"
    )

    @property
    def shows(self) -> str:
        """The folder."""
        return self.folder

    def source(self, folder: FilePath) -> PicturesSource:
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
        return PicturesSource(self.folder, tuple(pictures), passed_over, captions, remarks)


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


def picture_notes(picture: Picture, size: Size) -> Iterator[Problem]:
    """What is changed of a picture for print, and whether it is fine enough at a size in mm."""
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


def passed_over(source: PicturesSource) -> Iterator[Problem]:
    """The files of the folder that are no pictures."""
    if source.passed_over:
        yield Problem(
            f"not pictures, left out of {source.folder}: {listed_names(source.passed_over)}",
            severity=Severity.NOTE,
            field=("folder",),
        )


def listed_names(names: Sequence[str]) -> str:
    """Some names of many."""
    more = len(names) - MOST_NAMED
    return ", ".join(names[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")
