"""Game boards: chequers, nine men's morris, a race along a winding track."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Literal

from pydantic import Field

from ....ground.art import Filled, Stroked
from ....ground.drawing import Art, Colour, Pen
from ....ground.geometry import Path, Point, Rect
from ....shelf_file.fields.counts import Squares
from ....shelf_file.fields.words import Ink
from ...book.designs.ornament.fleurons import FLEURONS
from ...book.designs.ornament.ornaments import stamp
from ...book.designs.ornament.shapes import gathered
from ...lettering import line_of
from ..entry import Leaf, PaperEntry, Press
from ..face import FaceEntry, SetFace, dress_face

__all__ = ["GameBoard", "track"]

DARK, LIGHT = Colour.from_hex("#5b2f1f"), Colour.from_hex("#e9cf9c")

MARGIN = 0.07
"""The frame around a game, as a share of the shorter side."""

STATIONS = 6
"""Every so many squares of a race something happens."""


class GameBoard(PaperEntry):
    """A board for a game, which may fold in half."""

    kind: Literal["game board"] = "game board"
    game: Literal["chequers", "morris", "race"] = Field("chequers", description="which game is played on it")
    squares: Squares = Field(8, description="squares along a side, of chequers and of a race")
    dark: Ink = Field(DARK, description="its darker colour")
    light: Ink = Field(LIGHT, description="its lighter colour")
    back: FaceEntry = Field(FaceEntry(), description="what its back shows")
    usual_format = "map sheet"

    def printed(self, leaves: Sequence[Leaf], press: Press) -> Sequence[tuple[SetFace, SetFace]]:
        """The board, and its back."""
        area = Rect(0, 0, *press.size)
        reach = area.grown(press.bleed)
        side = min(area.size) * (1 - 2 * MARGIN)
        field = Rect(area.centre.x - side / 2, area.centre.y - side / 2, side, side)
        front = SetFace((Filled.box(reach, self.dark), *_GAMES[self.game](self, field)))
        back = dress_face(press.face("back"), area, reach, press.words, press.dpi, self.paper).told_of("back")
        return [(front, back) for _ in leaves]


def track(squares: int) -> Iterator[tuple[int, int]]:
    """The way of a race over the columns and rows of a board, from the lower left, to and fro.

    >>> list(track(2))
    [(0, 0), (1, 0), (1, 1), (0, 1)]
    """
    for row in range(squares):
        columns = range(squares) if row % 2 == 0 else range(squares - 1, -1, -1)
        yield from ((column, row) for column in columns)


def _chequers(board: GameBoard, field: Rect) -> Iterator[Art]:
    """The lower right corner is light."""
    step = field.width / board.squares
    cells = [(c, r) for c in range(board.squares) for r in range(board.squares)]
    yield Filled.box(field.grown(step * 0.12), board.light)
    yield Filled.box(field.grown(step * 0.06), board.dark)
    yield Filled.box(field, board.light)
    dark = [_cell(field, step, c, r) for c, r in cells if (c + r + board.squares) % 2 == 0]
    yield Filled(gathered(map(Path.rectangle, dark)), board.dark)


def _morris(board: GameBoard, field: Rect) -> Iterator[Art]:
    """Three squares in one another, joined at the middles of their sides."""
    yield Filled.box(field.grown(field.width * 0.03), board.light)
    unit = field.width / 7
    rings = [field.grown(-unit * (0.5 + n)) for n in range(3)]
    pen = Pen(max(0.12, unit * 0.05), board.dark)
    for ring in rings:
        yield Stroked(Path.rectangle(ring), pen)
    yield Stroked(Path.lines(zip(_middles(rings[0]), _middles(rings[2]), strict=True)), pen)
    points = [at for ring in rings for at in (*ring.corners, *_middles(ring))]
    yield Filled(gathered(Path.circle(at, unit * 0.14) for at in points), board.dark)


def _middles(rect: Rect) -> tuple[Point, ...]:
    x, y = rect.centre
    return Point(x, rect.y), Point(rect.right, y), Point(x, rect.top), Point(rect.x, y)


def _race(board: GameBoard, field: Rect) -> Iterator[Art]:
    """Numbered squares to and fro; at some of them something happens."""
    step = field.width / board.squares
    yield Filled.box(field, board.light)
    for number, (column, row) in enumerate(track(board.squares), start=1):
        cell = _cell(field, step, column, row)
        special = number % STATIONS == 0
        if special:
            yield Filled.box(cell, board.dark)
            yield stamp(FLEURONS["sun"], cell.grown(-step * 0.24).moved(step * 0.08, -step * 0.08), board.light)
        ink = board.light if special else board.dark
        yield line_of(str(number), "clarendon", step * 0.26, Point(cell.x + step * 0.1, cell.top - step * 0.27), ink)
        yield Stroked(Path.rectangle(cell), Pen(0.07, board.dark))


def _cell(field: Rect, step: float, column: int, row: int) -> Rect:
    return Rect(field.x + column * step, field.y + row * step, step, step)


_GAMES: Mapping[str, Callable[[GameBoard, Rect], Iterator[Art]]] = {
    "chequers": _chequers,
    "morris": _morris,
    "race": _race,
}
