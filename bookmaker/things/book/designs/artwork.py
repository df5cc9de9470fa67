"""Picture files of a cover, read at the start."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from math import ceil
from pathlib import Path

from ....ground.drawing import Colour
from ....ground.geometry import Size
from ....ground.imported import ImportedPage
from ....ground.pictures import Picture, load_picture, show_dpi
from ....ground.problems import Problem, Severity, ShelfFileError
from ....ground.units import MM_PER_INCH, print_mm
from ....shelf_file.fields.entry import Entry

__all__ = [
    "LOWEST_RESOLUTION",
    "NO_ARTWORK",
    "Artwork",
    "Fit",
    "Pictures",
    "load_artwork",
    "on_ground",
    "picture_problems",
    "pictures_named_by",
]

LOWEST_RESOLUTION = 300.0
"""Dots per inch under which a picture looks coarse (common practice)."""

MOST_CROPPED = 0.2
"""A picture of which a larger share is cropped may have lost what it is of; that is told."""

STRIP = 5.0
"""A place so many times longer than wide, as the spine of a thin book, takes a cut of any picture: nobody misses it."""


Pictures = Mapping[str, Picture]
"""The pictures of a cover by the keys that name them, such as `front_picture`."""


@dataclass(frozen=True, slots=True)
class Artwork:
    """What the files of a design hold: pictures by the keys that name them, or the pages of one for the whole cover.

    `notes` say what of the pages is not as it is in their file. `piece` says for which piece of the cover it is,
    counted from 0, and `pieces` of how many that is made.
    """

    pictures: Pictures = field(default_factory=dict)
    pages: tuple[Picture | ImportedPage, ...] = ()
    notes: tuple[str, ...] = ()
    piece: int = 0
    pieces: int = 1

    @property
    def name(self) -> str:
        """The name of the file of the pages."""
        return self.pages[0].path.name

    @property
    def page_for_each(self) -> bool:
        """Whether there are as many pages as pieces."""
        return len(self.pages) == self.pieces

    @property
    def shown(self) -> Picture | ImportedPage:
        """The page that the piece shows."""
        return self.pages[self.piece if self.page_for_each else 0]

    @property
    def label(self) -> str:
        """What the piece shows, in words."""
        return f"page {self.piece + 1} of {self.name}" if self.pieces > 1 and self.page_for_each else self.name


NO_ARTWORK = Artwork()
"""That of a design that names no files."""


@dataclass(frozen=True, slots=True)
class Fit:
    """How artwork covers a place of another size: `scale` is how much larger it is printed, in whatever units both
    are, `lost` the share of it that is cropped, `where`, and `wider` how much wider the artwork is than it should be
    at the height of the place, in the units of the place.
    """

    scale: float
    lost: float
    where: str
    wider: float

    @classmethod
    def of(cls, artwork: Size, place: Size) -> Fit:
        """How artwork fills a place."""
        across, up = place.width / artwork.width, place.height / artwork.height
        lost = 1 - min(across, up) / max(across, up)
        where = "head and tail" if across > up else "left and right"
        return cls(max(across, up), lost, where, artwork.width * up - place.width)

    @property
    def cropped(self) -> str:
        """What is lost, in words."""
        return f"{self.lost:.0%} of it is cropped at {self.where}"


def load_artwork(files: Mapping[str, str | None], folder: Path) -> Artwork:
    """Read the picture each key names, if it names one.

    Raises:
        ShelfFileError: with every picture that cannot be used, each under its key.
    """
    pictures: dict[str, Picture] = {}
    problems: list[Problem] = []
    for key, name in files.items():
        try:
            if name:
                pictures[key] = load_picture(folder / name, name)
        except ShelfFileError as refusal:
            problems += [replace(problem, field=(key,)) for problem in refusal.problems]
    if problems:
        raise ShelfFileError(problems)
    return Artwork(pictures)


def pictures_named_by(design: Entry) -> dict[str, str | None]:
    """The picture files that a design names, by its keys that end in `_picture`."""
    return {key: name for key, name in design if key.endswith("_picture")}


def on_ground(picture: Picture, ground: Colour) -> Picture:
    """A picture as it lies on a cover: where it is transparent the ground shows."""
    red, green, blue = (round(255 * part) for part in ground)
    return picture.over((red, green, blue))


def picture_problems(picture: Picture, size: Size, *field: str) -> Iterator[Problem]:
    """What was done to a picture that fills a face, what of it is lost, and whether it is fine enough for the print."""
    for note in picture.notes:
        yield Problem(f"{picture.path.name} {note}", severity=Severity.NOTE, field=field)
    fit = Fit.of(Size(picture.width_px, picture.height_px), size)
    resolution = MM_PER_INCH / fit.scale
    if fit.lost > MOST_CROPPED and max(size) < STRIP * min(size):
        yield Problem(
            f"{picture.path.name}: {fit.cropped}",
            f"crop it to the proportions of the {print_mm(size.width, 2)} × {print_mm(size.height, 2)} it fills, "
            "if that shall not be its middle",
            Severity.NOTE,
            field=field,
        )
    if resolution < LOWEST_RESOLUTION:
        width, height = (ceil(side * LOWEST_RESOLUTION / resolution) for side in (picture.width_px, picture.height_px))
        yield Problem(
            f"{picture.path.name} prints at only {show_dpi(resolution)}",
            f"use a picture of at least {width} × {height} pixels",
            Severity.WARNING,
            field=field,
        )
