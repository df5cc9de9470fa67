"""The table of what pages show: one module a kind, one row a kind."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

from pydantic import BeforeValidator, Discriminator, Tag

from ....shelf_file.fields.entry import either
from ....shelf_file.fields.words import refuse
from .front_matter.colophon import Colophon
from .front_matter.contents import Contents
from .front_matter.dedication import Dedication
from .front_matter.epigraph import Epigraph
from .front_matter.half_title import HalfTitle
from .front_matter.title_page import TitlePage
from .part import Part
from .patterns.blank import Blank
from .patterns.dummy_text import DummyText
from .patterns.ledger_paper import LedgerPaper
from .patterns.map_grid import MapGrid
from .patterns.music import Music
from .patterns.ruled import Ruled
from .patterns.squared import Squared
from .pictured.album import AlbumInside
from .pictured.pdf_pages import PdfInside
from .pictured.pictures import PicturesInside
from .prose.text import TextInside
from .written import Parts

__all__ = ["BLANK", "KINDS", "AnyInside", "OnePart"]

KINDS: tuple[type[Part], ...] = (
    Blank,
    Ruled,
    Squared,
    LedgerPaper,
    Music,
    MapGrid,
    DummyText,
    HalfTitle,
    TitlePage,
    Dedication,
    Epigraph,
    Contents,
    TextInside,
    PicturesInside,
    AlbumInside,
    PdfInside,
    Colophon,
)

BLANK = Blank()
"""The inside of a book that asks for none."""

MOST_PARTS = 200


def _read_parts(value: object) -> object:
    if isinstance(value, list) and not 1 <= len(value) <= MOST_PARTS:
        said = f"lists {len(value)} parts" if value else "lists no parts"
        raise refuse(said, f"write from 1 to {MOST_PARTS} parts, each after a -", f"1 to {MOST_PARTS}")
    return value


if TYPE_CHECKING:
    OnePart = Part
    AnyInside = Parts
else:
    OnePart = either(KINDS)
    AnyInside = Annotated[
        Annotated[OnePart, Tag("one part")] | Annotated[tuple[OnePart, ...], Tag("parts")],
        Discriminator(lambda value: "parts" if isinstance(value, (list, tuple)) else "one part"),
        BeforeValidator(_read_parts),
    ]
