"""A whole room from one word: each book takes style, palette, wear and age as the shelves of such a room had them.

What a room holds is common practice of collectors and from memory: mostly books of the last twenty-five years before
its day, and some far older; cloth from the 1830s on, paper covers late, leather early.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from random import Random
from typing import Literal

from pydantic import Field

from .....sheets.flat import Flat
from ..artwork import Artwork
from ..design import Design, DrawnDesign, Dress, Wear, Words
from ..palettes import PaletteName
from .atlas import Atlas
from .cloth import Cloth
from .half_leather import HalfLeather
from .leather import Leather
from .ledger import LedgerDesign
from .pamphlet import Pamphlet
from .paper_boards import PaperBoards
from .paperback import Paperback
from .picture_cover import PictureCover
from .school import School

__all__ = ["ROOMS", "Room", "RoomDesign", "RoomName"]

RoomName = Literal[
    "cabinet", "parlour", "study", "schoolroom", "office", "kitchen", "bedroom", "nursery", "bedsit", "flat",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Room:
    """What a room holds: styles, palettes and kinds of wear, each with its share, and the year in which it is seen.

    `old` is the share of books that are from far before that year, up to `oldest` years.
    """

    year: int
    styles: Mapping[type[DrawnDesign], float]
    palettes: Mapping[PaletteName, float]
    wear: Mapping[Wear, float]
    old: float = 0.2
    oldest: int = 70


USED: Mapping[Wear, float] = {"none": 1, "light": 6, "heavy": 3}
CARED_FOR: Mapping[Wear, float] = {"none": 3, "light": 6, "heavy": 1}

ROOMS: Mapping[RoomName, Room] = {
    # a collector's, with glass doors
    "cabinet": Room(1825, {Leather: 6, HalfLeather: 4, PaperBoards: 3}, {"library": 6, "attic": 2, "harbour": 1},
                    CARED_FOR, 0.4, 90),
    # sets, poems, albums, a few ledgers
    "parlour": Room(1885, {Cloth: 6, HalfLeather: 3, Leather: 2, PaperBoards: 1, PictureCover: 1, Atlas: 0.6},
                    {"library": 5, "orchard": 3, "attic": 1}, CARED_FOR, 0.3),
    # a keeper's
    "study": Room(1905, {Cloth: 6, HalfLeather: 2, Leather: 2, LedgerDesign: 1.4, Pamphlet: 1.2, Atlas: 0.8,
                         PaperBoards: 0.8, PictureCover: 1}, {"library": 4, "harbour": 4, "attic": 1}, USED, 0.3),
    "schoolroom": Room(1912, {School: 5, Cloth: 4, Atlas: 1, Pamphlet: 1, PictureCover: 1.5, LedgerDesign: 0.6},
                       {"fairground": 3, "library": 3, "orchard": 2}, {"light": 4, "heavy": 6}, 0.15),
    "office": Room(1926, {LedgerDesign: 5, Cloth: 4, Pamphlet: 2, HalfLeather: 2, PaperBoards: 1}, {"library": 4,
                   "harbour": 4, "attic": 2}, USED, 0.15),
    "kitchen": Room(1937, {Cloth: 4, PictureCover: 4, Pamphlet: 3, PaperBoards: 2, School: 0.6}, {"orchard": 5,
                    "fairground": 3, "attic": 1}, {"light": 5, "heavy": 5}, 0.2),
    "bedroom": Room(1952, {Cloth: 5, PictureCover: 4, Paperback: 3, PaperBoards: 1}, {"orchard": 3, "harbour": 3,
                    "attic": 2}, USED, 0.2, 50),
    "nursery": Room(1960, {PictureCover: 8, PaperBoards: 2, Cloth: 2, School: 1, Paperback: 1.5}, {"fairground": 7,
                    "orchard": 3}, {"light": 4, "heavy": 5}, 0.15, 45),
    "bedsit": Room(1974, {Paperback: 8, PictureCover: 3, Cloth: 2, Pamphlet: 1}, {"fairground": 4, "orchard": 4,
                   "harbour": 2}, USED, 0.15, 60),
    "flat": Room(2012, {Paperback: 8, PictureCover: 4, Cloth: 2, PaperBoards: 1}, {"fairground": 3, "harbour": 3,
                 "orchard": 2, "library": 1}, CARED_FOR, 0.1, 80),
}  # fmt: skip
"""Each by its name; the comment says whose it is where that is not plain."""

RECENT = 25
"""Most books of a room are at most so many years old."""


class RoomDesign(Design):
    """Covers as on the shelves of a room."""

    style: Literal["room"] = "room"
    room: RoomName = Field(
        description="whose shelves: cabinet (1825), parlour (1885), study (1905), schoolroom (1912), office (1926), "
        "kitchen (1937), bedroom (1952), nursery (1960), bedsit (1974), flat (2012)"
    )

    @property
    def ground(self) -> None:
        """Its books have their own."""

    def settled(self, words: Words) -> Design:
        """What the look of the book takes of all that the room holds."""
        room, chance = ROOMS[self.room], Random(f"room {words.kin}")
        (model,) = chance.choices([*room.styles], [*room.styles.values()])
        (palette,) = chance.choices([*room.palettes], [*room.palettes.values()])
        (wear,) = chance.choices([*room.wear], [*room.wear.values()])
        return model.model_validate({"style": model.model_fields["style"].default, "palette": palette, "wear": wear})

    def period_for(self, words: Words) -> str:
        """A year before that of the room."""
        room, chance = ROOMS[self.room], Random(f"year {words.kin}")
        age = chance.random() ** 1.5 * RECENT
        if chance.random() < room.old:
            age = RECENT + chance.random() * (room.oldest - RECENT)
        return str(round(room.year - age))

    def scene_for(self, words: Words) -> str | None:
        """That of the picture cover, if it takes one."""
        return self.settled(words).scene_for(replace(words, period=self.period_for(words)))

    def dress(self, artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return self.settled(words).dress(artwork, flat, words)
