"""A corner turned in, seen from the inside of a cover: around a board, or folded from paper alone."""

from __future__ import annotations

from collections.abc import Sequence

from ....ground.art import Filled, Group, Stroked
from ....ground.drawing import WHITE, Art, Colour
from ....ground.geometry import Point, polygon
from ....sheets.flat import FoldKind
from ...making import Manner
from ...views.ink import EDGE, FOLDED, PAPER, line, word
from ...views.signs import HIDDEN, bent_arrow, pointed
from ...views.stages import staged

__all__ = ["CORNER_OF_BOARD", "CORNER_OF_PAPER", "corner_of_board", "corner_of_paper"]

CORNER_OF_BOARD, CORNER_OF_PAPER = "a corner turned in over a board", "a corner turned in"

BOARD = Colour(0.8, 0.8, 0.8)
EDGE_X, EDGE_Y = 22.0, 14.0
"""Where the edges at the fore-edge and at the head are drawn, in mm; the cover lies on the left and below."""

LEFT, FOOT, TURN_IN = 3.0, 1.5, 8.0
OF_BOARD, OF_PAPER = 2.6, 0.6
"""How far outside the corner the cut runs, measured along the edge as it is drawn: 1.5 boards, or next to nothing."""


def corner_of_board(room: float) -> Manner:
    """Cut off, turned in at the head, nipped in, turned in at the fore-edge."""
    stages = (
        _cut(OF_BOARD, board=True),
        _head_in(OF_BOARD, board=True),
        _nipped(),
        _both_in(OF_BOARD, board=True),
    )
    caption = (
        "A corner seen from the inside. a: the covering is cut at 45°, outside the board by one and a half times what "
        "board and covering have together. b: the turn-in at head or tail goes over the board first. c: the little "
        "ear that stands out is nipped in around the corner with the bone folder. d: the turn-in at the fore-edge "
        "goes over it last; the two meet in a mitre."
    )
    return Manner(CORNER_OF_BOARD, staged(stages, room, caption))


def corner_of_paper(room: float) -> Manner:
    """Cut off, folded in at the head, folded in at the fore-edge."""
    stages = (_cut(OF_PAPER, board=False), _head_in(OF_PAPER, board=False), _both_in(OF_PAPER, board=False))
    caption = (
        "A corner seen from the inside. a: it is cut off at 45°, along the line of the sheet. b: the turn-in at head "
        "or tail is folded over first. c: the turn-in at the fore-edge goes over it; the two meet in a mitre."
    )
    return Manner(CORNER_OF_PAPER, staged(stages, room, caption))


def _shape(points: Sequence[tuple[float, float]], ground: Colour) -> Art:
    outline = polygon([Point(*point) for point in points])
    return Group((Filled(outline, ground), Stroked(outline, EDGE)))


def _covering(cut: float, *, head: bool, fore_edge: bool) -> Art:
    """What still lies flat of the covering."""
    right, top = EDGE_X + TURN_IN, EDGE_Y + TURN_IN
    points = [(LEFT, FOOT)]
    points += [(right, FOOT), (right, EDGE_Y - TURN_IN + cut)] if fore_edge else [(EDGE_X, FOOT)]
    if fore_edge:
        points += [(EDGE_X + cut, EDGE_Y)] if not head else [(EDGE_X - TURN_IN + cut, top)]
    elif not head:
        points += [(EDGE_X, EDGE_Y)]
    points += [(LEFT, top)] if head else [(LEFT, EDGE_Y)]
    return _shape(points, WHITE)


def _inside(*, board: bool) -> Art:
    """The board, or the lines along which the paper is scored."""
    if board:
        return _shape([(LEFT, FOOT), (EDGE_X, FOOT), (EDGE_X, EDGE_Y), (LEFT, EDGE_Y)], BOARD)
    scored = FOLDED[FoldKind.MOUNTAIN]
    return Group(
        (
            line(Point(LEFT, EDGE_Y), Point(EDGE_X, EDGE_Y), scored),
            line(Point(EDGE_X, FOOT), Point(EDGE_X, EDGE_Y), scored),
        )
    )


def _cut(cut: float, *, board: bool) -> Art:
    right, top = EDGE_X + TURN_IN, EDGE_Y + TURN_IN
    a, b = Point(EDGE_X - TURN_IN + cut, top), Point(right, EDGE_Y - TURN_IN + cut)
    goes = [line(a, Point(right, top), HIDDEN), line(Point(right, top), b, HIDDEN)]
    names = [word("board", Point(11.0, 7.0), 2.1), word("covering", Point(9.0, EDGE_Y + 4.0), 2.1)]
    if not board:
        names = [word("inside of the cover", Point(12.5, 7.0), 2.1), word("turn-in", Point(9.0, EDGE_Y + 4.0), 2.1)]
    return Group((_covering(cut, head=True, fore_edge=True), _inside(board=board), *goes, *names, _cut_off(a, b)))


def _cut_off(a: Point, b: Point) -> Art:
    return pointed("45°", Point(31.0, 24.3), Point((a.x + b.x) / 2, (a.y + b.y) / 2))


def _head_flap(cut: float) -> Art:
    low = EDGE_Y - TURN_IN
    return _shape([(LEFT, EDGE_Y), (EDGE_X + cut, EDGE_Y), (EDGE_X - TURN_IN + cut, low), (LEFT, low)], PAPER)


def _head_in(cut: float, *, board: bool) -> Art:
    turned = bent_arrow(Point(8.0, EDGE_Y + 4.5), Point(8.0, EDGE_Y - 4.0), 3.0)
    return Group((_covering(cut, head=False, fore_edge=True), _inside(board=board), _head_flap(cut), turned))


def _nipped() -> Art:
    """What stood out beyond the board lies on it, folded back along its edge."""
    low = EDGE_Y - OF_BOARD
    flap = [(LEFT, EDGE_Y), (EDGE_X, EDGE_Y), (EDGE_X, low), (EDGE_X - TURN_IN + OF_BOARD, EDGE_Y - TURN_IN)]
    ear = [(EDGE_X, EDGE_Y), (EDGE_X, low), (EDGE_X - OF_BOARD, EDGE_Y)]
    drawn = (_shape([*flap, (LEFT, EDGE_Y - TURN_IN)], PAPER), _shape(ear, BOARD))
    folder = bent_arrow(Point(EDGE_X + 8.0, EDGE_Y + 5.0), Point(EDGE_X - 0.6, EDGE_Y - 0.6), 1.5)
    flat = _covering(OF_BOARD, head=False, fore_edge=True)
    return Group((flat, _inside(board=True), *drawn, folder, word("bone folder", Point(26.0, 21.5), 2.1)))


def _both_in(cut: float, *, board: bool) -> Art:
    far = EDGE_X - TURN_IN
    fore_edge = [
        (EDGE_X, FOOT),
        (EDGE_X, EDGE_Y),
        (EDGE_X - cut * 0.4, EDGE_Y),
        (far, EDGE_Y - TURN_IN + cut),
        (far, FOOT),
    ]
    turned = bent_arrow(Point(EDGE_X + 5.0, 3.5), Point(EDGE_X - 4.0, 3.5), -3.0)
    body = [(LEFT, FOOT), (EDGE_X, FOOT), (EDGE_X, EDGE_Y), (LEFT, EDGE_Y)]
    ground = _shape(body, BOARD if board else WHITE)
    head = [
        (LEFT, EDGE_Y),
        (EDGE_X, EDGE_Y),
        (EDGE_X, EDGE_Y - cut),
        (far + cut, EDGE_Y - TURN_IN),
        (LEFT, EDGE_Y - TURN_IN),
    ]
    return Group((ground, _shape(head, PAPER), _shape(fore_edge, PAPER), turned))
