"""The table of cover designs: one module a style, one row a style."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ....shelf_file.fields.entry import either
from .design import Design
from .styles.atlas import Atlas
from .styles.cloth import Cloth
from .styles.half_leather import HalfLeather
from .styles.leather import Leather
from .styles.ledger import LedgerDesign
from .styles.own_artwork import OwnArtwork
from .styles.pamphlet import Pamphlet
from .styles.paper_boards import PaperBoards
from .styles.paperback import Paperback
from .styles.picture_cover import PictureCover
from .styles.plain import Plain
from .styles.room import RoomDesign
from .styles.school import School

__all__ = ["KINDS", "PLAIN", "AnyDesign"]

KINDS: tuple[type[Design], ...] = (
    Plain,
    Cloth,
    Leather,
    HalfLeather,
    PaperBoards,
    PictureCover,
    Paperback,
    LedgerDesign,
    Atlas,
    School,
    Pamphlet,
    RoomDesign,
    OwnArtwork,
)

PLAIN = Plain()
"""The design of a book that asks for none."""

if TYPE_CHECKING:
    AnyDesign = Design
else:
    AnyDesign = either(KINDS, "style", usual=Plain)
