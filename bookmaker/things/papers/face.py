"""A face of a paper: a surface, and pages of any kind set on it, in one column or in several."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path

from pydantic import Field

from ...ground.art import NOTHING, Group
from ...ground.drawing import Art, Colour
from ...ground.geometry import Rect, Transform
from ...ground.problems import Problem, ShelfFileError, gathered, within
from ...ground.typefaces.strokes import Strokes
from ...shelf_file.fields.counts import Columns
from ...shelf_file.fields.measures import Margin
from ...typesetting.page import BookWords, Margins, PageFrame
from ..book.designs.design import Words
from ..book.pages.kinds import OnePart
from ..book.pages.part import LoadedPart
from ..surface import PLAIN_SURFACE, Surface, SurfaceEntry, dress_surface, read_surface

__all__ = [
    "FaceEntry",
    "PaperFace",
    "SetFace",
    "columns_in",
    "dress_face",
    "dummy_text",
    "frame_of",
    "read_face",
    "set_columns",
    "set_pages",
    "smallest_text",
    "together",
]

WHITE_BETWEEN = 0.7
"""Between two columns, as a share of a margin (common practice: about an em of the text)."""


class FaceEntry(SurfaceEntry):
    """What a face of a paper shows."""

    inside: OnePart | None = Field(None, description="pages as books have them, set on it: a text, music, a map grid")
    columns: Columns = Field(1, description="in how many columns they are set, one page in each")
    margin: Margin | None = Field(None, description="white around them; a tenth of the shorter side, if not given")


@dataclass(frozen=True, slots=True)
class PaperFace:
    """A face as it was written, with what its files hold."""

    entry: FaceEntry = field(default_factory=FaceEntry)
    surface: Surface = PLAIN_SURFACE
    inside: LoadedPart | None = None

    def with_text(self, text: str) -> PaperFace:
        """The same with another text."""
        entry = self.entry.model_copy(update={"text": text})
        return replace(self, entry=entry, surface=replace(self.surface, entry=entry))


@dataclass(frozen=True, slots=True)
class SetFace:
    """A face drawn, no art at all if it is bare, what is wrong, and how small its text is in mm, if it has some."""

    layers: tuple[Art, ...] = ()
    problems: tuple[Problem, ...] = ()
    x_height: float | None = None
    strokes: Strokes | None = None

    def moved(self, x: float, y: float) -> SetFace:
        """The same elsewhere."""
        return replace(self, layers=(Group(self.layers, Transform.move(x, y)),) if self.layers else ())

    def told_of(self, *field: str | int) -> SetFace:
        """The same with its problems told of what it is a part of, where it stands in that field."""
        return replace(self, problems=within(field, self.problems))


def together(*faces: SetFace) -> SetFace:
    """Several on one another as one."""
    smallest = smallest_text(faces)
    return SetFace(
        tuple(layer for face in faces for layer in face.layers),
        tuple(problem for face in faces for problem in face.problems),
        smallest.x_height,
        smallest.strokes,
    )


def smallest_text(faces: Iterable[SetFace]) -> SetFace:
    """That of some faces whose text has the smallest letters; one without text if none has any."""
    return min((face for face in faces if face.x_height), key=lambda face: face.x_height or math.inf, default=SetFace())


def read_face(entry: FaceEntry, folder: Path) -> PaperFace:
    """Read the files it names.

    Raises:
        ShelfFileError: files cannot be used; fields are relative to the face.
    """
    problems: list[Problem] = []
    surface, inside = PLAIN_SURFACE, None
    with gathered(problems):
        surface = read_surface(entry, folder)
    with gathered(problems, "inside"):
        inside = entry.inside.load(folder) if entry.inside else None
    if problems:
        raise ShelfFileError(problems)
    return PaperFace(entry, surface, inside)


def dress_face(
    face: PaperFace, area: Rect, reach: Rect, words: Words, dpi: float, ground: Colour | None = None
) -> SetFace:
    """Draw a face into an area, its ground out to `reach`; `dpi` is the printer's, `ground` what lies under it."""
    if face.entry == FaceEntry():
        return SetFace()
    dress = dress_surface(face.surface, area.size, reach.moved(-area.x, -area.y), words, ground)
    under = Group((dress.art,), Transform.move(area.x, area.y))
    if face.inside is None:
        return SetFace((under,), dress.problems)
    margin = min(area.size) / 10 if face.entry.margin is None else face.entry.margin
    done = set_columns(face.inside, area, face.entry.columns, margin, words, dpi).told_of("inside")
    return together(SetFace((under,), dress.problems), done)


@cache
def dummy_text() -> LoadedPart:
    """Lines that look like a text, for columns that nobody will read."""
    part = FaceEntry.model_validate({"inside": {"kind": "dummy text", "size": "0.9 pt", "chapter": 0}}).inside
    assert part  # it was just given
    return part.load(Path())


def columns_in(area: Rect, columns: int, margin: float) -> list[Rect]:
    """The columns between the margins of an area, from the left."""
    white = margin * WHITE_BETWEEN
    wide = (area.width - 2 * margin - (columns - 1) * white) / columns
    return [
        Rect(area.x + margin + n * (wide + white), area.y + margin, wide, area.height - 2 * margin)
        for n in range(columns)
    ]


def set_columns(part: LoadedPart, area: Rect, columns: int, margin: float, words: Words, dpi: float) -> SetFace:
    """A part on one page as large as the area, or on several that stand in it as columns; fields are the part's."""
    rects = [area] if columns == 1 else columns_in(area, columns, margin)
    white = margin if columns == 1 else 0.0
    if min(rects[0].size) <= 2 * white + 1e-6:
        problem = Problem("the margins leave no room", "write a smaller margin: or fewer columns:")
        return SetFace(problems=(problem,))
    return set_pages(part, rects, Margins(white, white, white, white), words, dpi)


def set_pages(part: LoadedPart, rects: Sequence[Rect], margins: Margins, words: Words, dpi: float) -> SetFace:
    """The pages of a part, one in each of some rectangles of one size, each a layer; empty pages are `NOTHING`."""
    frame = frame_of(rects, margins, words, dpi)
    inside = part.compose(frame)
    pages = zip(inside.pages, rects, strict=True)
    art = tuple(NOTHING if page is NOTHING else Group((page,), Transform.move(rect.x, rect.y)) for page, rect in pages)
    return SetFace(art, inside.problems, inside.x_height, inside.strokes)


def frame_of(rects: Sequence[Rect], margins: Margins, words: Words, dpi: float) -> PageFrame:
    """Some rectangles of one size as the pages of a part."""
    return PageFrame(
        *rects[0].size,
        len(rects),
        resolution_dpi=dpi,
        book=BookWords(words.title, look=words.look),
        margins=margins,
        step=1,
        advice=lambda pages: "a larger paper" if pages > len(rects) else f"columns: {pages}",
        loose=True,
    )
