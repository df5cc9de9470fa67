"""Pieces become sheets: where each piece lies, and the marks, labels and notes around it.

All coordinates are nominal millimetres on the sheet, before the printer's calibration. Marks and labels lie
in an apron around each piece, never on what shows in the finished book.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from .apron import APRON
from .errors import Problem, ShelfFileError
from .flat import Fold, Stroke
from .geometry import Point, Size, Transform
from .packing import Bin, DoesNotFit, Item, Placed, pack_rows
from .piece import Piece
from .stock import Stock
from .units import print_mm

__all__ = ["Placement", "Sheet", "lay_out"]


@dataclass(frozen=True, slots=True)
class Placement:
    """A piece on a sheet: its lower left corner there, and whether it was turned a quarter counter-clockwise."""

    piece: Piece
    at: Point
    turned: bool

    @property
    def to_sheet(self) -> Transform:
        """From the piece's coordinates to the sheet's."""
        if not self.turned:
            return Transform.move(*self.at)
        return Transform.quarter_turn().moved(self.at.x + self.piece.flat.size.height, self.at.y)

    @property
    def outline(self) -> tuple[Point, ...]:
        """The cut line on the sheet."""
        return tuple(map(self.to_sheet.apply, self.piece.flat.outline))

    @property
    def folds(self) -> tuple[Fold, ...]:
        """The folds on the sheet."""
        move = self.to_sheet.apply
        return tuple(Fold(fold.kind, move(fold.start), move(fold.end)) for fold in self.piece.flat.folds)

    def on_sheet(self, strokes: Iterable[Stroke]) -> tuple[Stroke, ...]:
        """Cuts or trims of the flat on the sheet."""
        move = self.to_sheet.apply
        return tuple(Stroke(move(start), move(end)) for start, end in strokes)


@dataclass(frozen=True, slots=True)
class Sheet:
    """One printed sheet: `number` of `count` for its stock, and what lies on it."""

    stock: Stock
    number: int
    count: int
    placements: tuple[Placement, ...]

    @property
    def two_sided(self) -> bool:
        """Whether anything is printed on its reverse."""
        return any(placement.piece.two_sided for placement in self.placements)

    @property
    def size(self) -> Size:
        """Width and height of the paper in mm."""
        return Size(*self.stock.sheet.size)


def lay_out(pieces: Sequence[Piece], stocks: Mapping[str, Stock], knife_room: float) -> tuple[Sheet, ...]:
    """Place all pieces on sheets, stock by stock, in the order the stocks are written.

    Raises:
        ShelfFileError: pieces are larger than their stock's sheet.
    """
    sheets: list[Sheet] = []
    problems: list[Problem] = []
    for name, stock in stocks.items():
        mine = {piece.id: piece for piece in pieces if piece.flat.stock == name}
        try:
            sheets += _sheets_of(stock, mine, knife_room)
        except DoesNotFit as refusal:
            problems += [_too_large(mine[key], stock) for key in refusal.keys]
    if problems:
        raise ShelfFileError(problems)
    return tuple(sheets)


def _sheets_of(stock: Stock, pieces: Mapping[str, Piece], knife_room: float) -> list[Sheet]:
    area = stock.usable
    gap = max(0.0, knife_room - 2 * APRON.side)
    items = [_item(piece, stock) for piece in pieces.values()]
    placed = pack_rows(items, Bin(area.width, area.height), gap) if items else []
    count = 1 + max((spot.bin for spot in placed), default=-1)
    return [
        Sheet(
            stock,
            number + 1,
            count,
            tuple(_placement(spot, pieces, stock) for spot in placed if spot.bin == number),
        )
        for number in range(count)
    ]


def _item(piece: Piece, stock: Stock) -> Item:
    """The room a piece takes with its apron, as it lies when its grain is right."""
    width, height = APRON.around(piece.flat.size, piece.flat.bleed)
    if _lies_turned(piece, stock):
        width, height = height, width
    free = piece.flat.grain is None or stock.grain_axis is None
    return Item(piece.id, width, height, may_turn=free, group=" ".join(map(str, piece.owner)))


def _lies_turned(piece: Piece, stock: Stock) -> bool:
    """Whether the fibres of the sheet ask for a quarter turn."""
    wanted, given = piece.flat.grain, stock.grain_axis
    return wanted is not None and given is not None and wanted is not given


def _placement(spot: Placed, pieces: Mapping[str, Piece], stock: Stock) -> Placement:
    piece = pieces[spot.key]
    turned = spot.turned != _lies_turned(piece, stock)
    corner = Point(stock.usable.x + spot.x, stock.usable.y + spot.y)
    return Placement(piece, APRON.inside(corner, piece.flat.bleed, turned), turned)


def _too_large(piece: Piece, stock: Stock) -> Problem:
    width, height = APRON.around(piece.flat.size, piece.flat.bleed)
    room = stock.usable
    return Problem(
        f"{piece.label[1]} of {piece.label[0]} needs {print_mm(width, 1)} × {print_mm(height, 1)} with its marks, "
        f"but the {stock.sheet.name} sheet of {stock.name} has {print_mm(room.width, 1)} × {print_mm(room.height, 1)}",
        "write a larger sheet or a smaller book",
        field=piece.owner,
    )
