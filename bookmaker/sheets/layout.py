"""Pieces become sheets: where each piece lies, and the marks, labels and notes around it.

All coordinates are nominal millimetres on the sheet, before the printer's calibration. Marks and labels lie
in a margin around each piece, never on what shows in the finished book.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from ..ground.geometry import Point, Rect, Size, Transform
from ..ground.outlines import Outline
from ..ground.problems import Problem, ShelfFileError
from ..ground.units import print_mm
from ..paper.mark_margin import CROSS_ARM, CROSS_ROOM, FOOTER_HEIGHT, MARK_MARGIN
from ..paper.printer_entry import SheetOrder
from ..paper.stock import Stock
from .flat import Fold, Stroke
from .packing import NEST_EFFORT, ROUNDING, Cut, DoesNotFit, Nesting, Placed, nest, nest_by_group
from .packing_items import bin_of, item_of, lies_turned, takes
from .piece import Piece
from .tally import Tally, tally_of, together

__all__ = ["Layout", "Placement", "Sheet", "lay_out"]

Progress = Callable[[str, int, int], None]

EFFORT_A_PIECE = 2000
"""Steps of search for each piece of a stock, up to the usual effort: few pieces are soon looked through."""


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
    def holes(self) -> tuple[Outline, ...]:
        """The holes on the sheet."""
        return tuple(tuple(map(self.to_sheet.apply, hole)) for hole in self.piece.flat.holes)

    @property
    def folds(self) -> tuple[Fold, ...]:
        """The folds on the sheet."""
        move = self.to_sheet.apply
        return tuple(Fold(fold.kind, move(fold.start), move(fold.end)) for fold in self.piece.flat.folds)

    def on_sheet(self, strokes: Iterable[Stroke]) -> tuple[Stroke, ...]:
        """Cuts, trims, scores or perforations of the flat on the sheet."""
        move = self.to_sheet.apply
        return tuple(Stroke(move(start), move(end)) for start, end in strokes)


@dataclass(frozen=True, slots=True)
class Sheet:
    """One printed sheet: `number` of `count` alike for its stock, what lies on it, and how to part that.

    `cuts` are straight and run from edge to edge of what is loose by then: made in their order, with a steel
    rule, they leave each piece with its marks on a part of its own.
    """

    stock: Stock
    number: int
    count: int
    placements: tuple[Placement, ...]
    cuts: tuple[Stroke, ...] = ()

    @property
    def two_sided(self) -> bool:
        """Whether anything is printed on its reverse."""
        return any(placement.piece.two_sided for placement in self.placements)

    @property
    def filmed(self) -> bool:
        """Whether the film of its stock is laid over it."""
        return bool(self.stock.film) and any(placement.piece.flat.finished for placement in self.placements)

    @property
    def area(self) -> Rect:
        """Where everything on it lies, in mm: what the printer reaches, on both sides if both are printed."""
        return (self.stock.on_both_sides if self.two_sided else self.stock).printable

    @property
    def size(self) -> Size:
        """Width and height of the paper in mm."""
        return Size(*self.stock.sheet.size)

    @property
    def foot(self) -> Rect:
        """Where the notes stand, below the pieces."""
        side = CROSS_ROOM if self.stock.crosses else 0.0
        return self.area._replace(height=FOOTER_HEIGHT).grown(-side, 0, -side, 0)

    @property
    def crosses(self) -> tuple[Stroke, ...]:
        """Alignment crosses for a cutting machine: at both lower corners of the printable area and the upper left one.

        Three, not four, so that a sheet that lies the wrong way round is seen.
        """
        if not self.stock.crosses:
            return ()
        lower_left, lower_right, _, upper_left = self.area.grown(-CROSS_ROOM / 2).corners
        return tuple(arm for at in (lower_left, lower_right, upper_left) for arm in _cross(at))


@dataclass(frozen=True, slots=True)
class Layout:
    """All sheets, and what they come to for each stock."""

    sheets: tuple[Sheet, ...]
    tallies: tuple[Tally, ...]


def _cross(at: Point) -> tuple[Stroke, Stroke]:
    level = Stroke(at.plus(-CROSS_ARM, 0), at.plus(CROSS_ARM, 0))
    return level, Stroke(at.plus(0, -CROSS_ARM), at.plus(0, CROSS_ARM))


def lay_out(
    pieces: Sequence[Piece],
    stocks: Mapping[str, Stock],
    gap_between_pieces: float,
    order: SheetOrder = SheetOrder.FEWEST,
    progress: Progress = lambda *_: None,
) -> Layout:
    """Place all pieces on sheets, stock by stock, in the order the stocks are written; off-cuts come first.

    `progress` is told what is being done, and how many parts of how many are done.

    Raises:
        ShelfFileError: pieces are larger than their stock's sheet.
    """
    sheets: list[Sheet] = []
    tallies: list[Tally] = []
    problems: list[Problem] = []
    # a thing's place among the others, not its name: what it is called shall not move anything
    groups = {owner: str(place) for place, owner in enumerate(dict.fromkeys(piece.owner for piece in pieces))}
    for name, stock in stocks.items():
        mine = {piece.id: piece for piece in pieces if piece.flat.stock == name}
        if not mine:
            continue
        laid: list[Sheet] = []
        taken: list[Tally] = []
        for alike in _apart_by_finish(stock, mine):
            left = _left_of(stock, laid)
            for paper, some in _runs(left, alike):
                try:
                    nesting = _nested(paper, some, groups, gap_between_pieces, order, progress)
                except DoesNotFit as refusal:
                    problems += [_too_large(mine[key], paper) for key in refusal.keys]
                    continue
                laid += _sheets_of(stock, left.off_cuts, paper, some, nesting)
                taken.append(tally_of(paper, nesting))
        sheets += _numbered(laid)
        tallies += [together(taken)] if taken else []
    if problems:
        raise ShelfFileError(problems)
    return Layout(tuple(sheets), tuple(tallies))


def _apart_by_finish(stock: Stock, pieces: Mapping[str, Piece]) -> Iterator[dict[str, Piece]]:
    """What gets the film of a stock, or any other finish that goes over a whole sheet, and what does not."""
    if not stock.film:
        yield dict(pieces)
        return
    for finished in (True, False):
        if alike := {key: piece for key, piece in pieces.items() if piece.flat.finished is finished}:
            yield alike


def _left_of(stock: Stock, sheets: Sequence[Sheet]) -> Stock:
    """A stock with the off-cuts on which nothing lies yet."""
    used = Counter(sheet.stock for sheet in sheets)
    left: list[Stock] = []
    for off_cut in stock.off_cuts:
        if used[off_cut]:
            used[off_cut] -= 1
        else:
            left.append(off_cut)
    return replace(stock, off_cuts=tuple(left))


def _runs(stock: Stock, pieces: Mapping[str, Piece]) -> Iterator[tuple[Stock, dict[str, Piece]]]:
    """What is laid together, and the room for it: all that fits where both sides are reached, if any piece needs that.

    What then needs more of the front has sheets of its own.
    """
    if not any(piece.two_sided for piece in pieces.values()):
        yield stock, dict(pieces)
        return
    both = stock.on_both_sides
    beside = {key: piece for key, piece in pieces.items() if piece.two_sided or takes(both, piece.flat)}
    yield both, beside
    if alone := {key: piece for key, piece in pieces.items() if key not in beside}:
        yield replace(stock, off_cuts=()), alone


def _nested(
    stock: Stock,
    pieces: Mapping[str, Piece],
    groups: Mapping[str, str],
    gap_between_pieces: float,
    order: SheetOrder,
    progress: Progress,
) -> Nesting:
    gap = max(0.0, gap_between_pieces - 2 * MARK_MARGIN.side)
    items = [item_of(piece, stock, groups[piece.owner]) for piece in pieces.values()]
    area, off_cuts = bin_of(stock), [bin_of(off_cut) for off_cut in stock.off_cuts]
    if order is SheetOrder.BY_BOOK:
        return nest_by_group(items, area, gap, off_cuts)
    effort = min(NEST_EFFORT, EFFORT_A_PIECE * len(items))

    def told(share: float) -> None:
        progress(f"nesting {stock.name}", round(100 * share), 100)

    return nest(items, area, gap, off_cuts, effort=effort, progress=told)


def _sheets_of(
    stock: Stock, off_cuts: Sequence[Stock], run: Stock, pieces: Mapping[str, Piece], nesting: Nesting
) -> Iterator[Sheet]:
    """The sheets of a stock that are used, its off-cuts first; `run` is the stock with the room that was there."""
    papers = [*zip(off_cuts, run.off_cuts, strict=False), *[(stock, run)] * nesting.sheets]
    for bin_number in sorted({spot.bin for spot in nesting.placed}):
        paper, area = papers[bin_number]
        placements = tuple(_placement(spot, pieces, area) for spot in nesting.on(bin_number))
        cuts = tuple(_knife_cut(cut, area) for cut in nesting.cuts(bin_number))
        yield Sheet(paper, 1, 1, placements, cuts)


def _numbered(sheets: Sequence[Sheet]) -> Iterator[Sheet]:
    """Each sheet counted among those of the same paper."""
    count = Counter(sheet.stock for sheet in sheets)
    number: Counter[Stock] = Counter()
    for sheet in sheets:
        number[sheet.stock] += 1
        yield replace(sheet, number=number[sheet.stock], count=count[sheet.stock])


def _knife_cut(cut: Cut, paper: Stock) -> Stroke:
    """A cut of the printable area, carried on to the edges of the sheet where it ends at the area's own."""
    area = paper.usable
    width, height = paper.sheet.size

    def on_sheet(value: float, low: float, length: float, whole: float) -> float:
        return 0.0 if value <= 0 else whole if value >= length - ROUNDING else low + value

    start, end = (
        Point(on_sheet(x, area.x, area.width, width), on_sheet(y, area.y, area.height, height))
        for x, y in (cut.start, cut.end)
    )
    return Stroke(start, end)


def _placement(spot: Placed, pieces: Mapping[str, Piece], stock: Stock) -> Placement:
    piece = pieces[spot.key]
    turned = spot.turned != lies_turned(piece, stock)
    corner = Point(stock.usable.x + spot.x, stock.usable.y + spot.y)
    return Placement(piece, MARK_MARGIN.inside(corner, piece.flat.bleed, turned), turned)


def _too_large(piece: Piece, stock: Stock) -> Problem:
    width, height = MARK_MARGIN.around(piece.flat.size, piece.flat.bleed)
    room, item = stock.usable, item_of(piece, stock)
    whole_width = math.ceil(item.width + stock.sheet.size[0] - room.width)
    whole_height = math.ceil(item.height + stock.sheet.size[1] - room.height)
    return Problem(
        f"{piece.label[1]} of {piece.label[0]} needs {print_mm(width, 1)} × {print_mm(height, 1)} with its marks, "
        f"but the {stock.sheet.name} sheet of {stock.name} has {print_mm(room.width, 1)} × {print_mm(room.height, 1)}",
        f"write a sheet of at least {print_mm(whole_width)} × {print_mm(whole_height)}, or a smaller book",
        thing=piece.owner,
    )
