"""Pages of pictures: a folder of them in the order of their names, one a page or across two, with captions if asked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path as FilePath
from typing import Literal, Self

from pydantic import Field, model_validator

from .....ground.problems import Problem, Severity
from .....shelf_file.fields.words import Flag, TypefaceName, refuse
from .....typesetting.book_type import Family
from .....typesetting.chosen_faces import family_of
from .....typesetting.page import Inside, PageFrame, numbered
from ..part import LoadedPart, some_empty
from .captions import caption_face, letters_missing
from .folders import FolderPart, PicturesSource, listed_names, passed_over, picture_notes
from .plates import Plate, arrange, place, small_captions, type_of_captions
from .tissue import guard, guarded

__all__ = ["LoadedPictures", "PicturesInside"]


class PicturesInside(FolderPart):
    """A folder of pictures."""

    kind: Literal["pictures"] = "pictures"
    bleed: Flag = Field(False, description="yes: fill the page and crop; no: keep the margins")
    spreads: Literal["none", "wide", "all"] = Field("none", description="which pictures lie across two pages")
    tissue: Flag = Field(False, description="a leaf of tissue before each picture, which shows through it")
    face: TypefaceName | None = Field(None, description="typeface of captions: a bundled one, or a TTF or OTF file")
    numbers: Flag = Field(False, description="page numbers, yes or no")

    @model_validator(mode="after")
    def _tissue_before_a_page(self) -> Self:
        if self.tissue and self.spreads != "none":
            raise refuse("has tissue before pictures across two pages", "leave tissue or spreads out")
        return self

    def load(self, folder: FilePath) -> LoadedPictures:
        """Read all pictures of the folder.

        Raises:
            ShelfFileError: there is no such folder, it holds no pictures, or some cannot be used; or the captions.
        """
        return LoadedPictures(self, self.source(folder), family_of(self.face, folder))


@dataclass(frozen=True, slots=True)
class LoadedPictures(LoadedPart):
    """A folder of pictures, read."""

    written: PicturesInside
    pictures: PicturesSource
    family: Family | None = None

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What is wrong with the captions."""
        return self.pictures.problems

    def extent(self, frame: PageFrame) -> int:
        """The pages that all pictures need, with those that stay blank before spreads."""
        *_, last = self._plates(frame, ())
        return last.page + last.pages - 1

    def compose(self, frame: PageFrame) -> Inside:
        """Each picture on its page or its two; what is left over on either side is reported."""
        written, source = self.written, self.pictures
        captions = () if written.bleed else source.captions
        plates = list(self._plates(frame, captions))
        shown = [plate for plate in plates if plate.page + plate.pages - 1 <= frame.pages]
        pages = [*frame.with_blanks()]
        problems = [*_count(source, plates, len(shown), frame), *passed_over(source), *source.problems]
        if written.bleed and source.captions:
            problems.append(_no_room())
        face = caption_face(self.family, frame, captions)
        problems += letters_missing(face, captions, "write face: with one that has them, or the captions without them")
        type = type_of_captions(shown, frame, face)
        problems += small_captions(shown, type, frame)
        for plate in shown:
            size, art = place(plate, frame, type, bleed=written.bleed)
            if plate.guarded:
                art |= guard(plate, frame, type, bleed=written.bleed)
            for number, page in art.items():
                pages[number - 1] = page
            problems += picture_notes(plate.picture, size)
        return Inside(numbered(pages, frame) if written.numbers else tuple(pages), tuple(problems))

    def _plates(self, frame: PageFrame, captions: Sequence[str]) -> Iterator[Plate]:
        if self.written.tissue:
            return guarded(self.pictures.pictures, captions, frame)
        return arrange(self.pictures.pictures, captions, self.written.spreads, frame)


def _no_room() -> Problem:
    return Problem(
        "pictures that fill the page leave no room for captions, which are left out",
        "write bleed: no, or leave captions out",
        Severity.WARNING,
        field=("captions",),
    )


def _count(source: PicturesSource, plates: Sequence[Plate], shown: int, frame: PageFrame) -> Iterator[Problem]:
    needed, pages = plates[-1].page + plates[-1].pages - 1, frame.pages
    if shown < len(plates):
        lost = [plate.picture.path.name for plate in plates[shown:]]
        named = listed_names(lost)
        yield Problem(
            f"{len(lost)} of {len(plates)} pictures of {source.folder} do not fit in {frame.count}: {named}",
            f"write {frame.to_write(needed)} or take pictures out of the folder",
            field=("folder",),
        )
    elif pages - needed > 1:  # one page over is the back of the last leaf
        yield some_empty(source.folder, needed, frame, "folder")
