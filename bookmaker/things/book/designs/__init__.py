"""Cover designs: one module a style, one row a style in the table below."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, Any

from ....ground.drawing import Colour
from ....sheets.flat import Flat
from ....shelf_file.fields.entry import Entry, either
from . import colouring
from .design import Dress, InSet, Lettering, Words
from .styles import (
    atlas,
    cloth,
    half_leather,
    leather,
    ledger,
    own_artwork,
    pamphlet,
    paper_boards,
    paperback,
    picture_cover,
    plain,
    school,
)
from types import SimpleNamespace
from .artwork import load_pictures

def _row(module):
    look = getattr(module, 'LOOK', None)
    if look: return SimpleNamespace(load=lambda e, f: None, dress=look.dress, MATERIAL=look.material)
    return SimpleNamespace(load=getattr(module,'load',load_pictures), dress=module.dress, **({'part': module.part} if hasattr(module,'part') else {}), **({'MATERIAL':module.MATERIAL} if hasattr(module,'MATERIAL') else {}))

__all__ = [
    "PLAIN",
    "STYLES",
    "AnyDesign",
    "Dress",
    "InSet",
    "Lettering",
    "Words",
    "artwork_of_piece",
    "dress_flat",
    "ground_of",
    "load_design",
    "settled",
]

STYLES: Mapping[type[Entry], ModuleType] = {
    plain.Plain: _row(plain),
    cloth.Cloth: _row(cloth),
    leather.Leather: _row(leather),
    half_leather.HalfLeather: _row(half_leather),
    paper_boards.PaperBoards: _row(paper_boards),
    picture_cover.PictureCover: _row(picture_cover),
    paperback.Paperback: _row(paperback),
    ledger.LedgerDesign: _row(ledger),
    atlas.Atlas: _row(atlas),
    school.School: _row(school),
    pamphlet.Pamphlet: _row(pamphlet),
    own_artwork.OwnArtwork: _row(own_artwork),
}

PLAIN = plain.Plain()
"""The design of a book that asks for none."""

if TYPE_CHECKING:
    AnyDesign = Entry
else:
    AnyDesign: Any = either(tuple(STYLES), "style", usual=plain.Plain)


def load_design(entry: Entry, folder: Path) -> Any:
    """Read the files a design names; what comes back is that style's own."""
    return STYLES[type(entry)].load(entry, folder)


def artwork_of_piece(entry: Entry, artwork: Any, piece: int, pieces: int) -> Any:
    """The artwork of one piece of a cover, counted from 0, that is made of so many; most styles need no telling."""
    part = getattr(STYLES[type(entry)], "part", None)
    return part(artwork, piece, pieces) if part else artwork


def dress_flat(entry: Entry, artwork: Any, flat: Flat, words: Words) -> Dress:
    """Draw one flat of a cover; `artwork` is what `load_design` gave."""
    dress: Dress = STYLES[type(entry)].dress(entry, artwork, flat, words)
    return dress


def ground_of(entry: Entry) -> Colour | None:
    """The colour a settled design has on the whole."""
    colour: Colour | None = getattr(entry, "colour", None)
    return colour


def settled(row: Sequence[tuple[Entry, Words, str | None]]) -> Iterator[Entry]:
    """The designs of a shelf in their order, with a colour for each that has none; books come with their space.

    Books of a set have one colour.
    """
    offers = [
        (entry, _offer(entry, words), (space, words.kin if words.in_set else None)) for entry, words, space in row
    ]
    return colouring.settled(offers)


def _offer(entry: Entry, words: Words) -> colouring.Offer | None:
    material = getattr(STYLES[type(entry)], "MATERIAL", None)
    return (words.kin, material) if material else None
