"""Covers seen from the tail, in scale around their block, with the layers a little apart so that each shows."""

from __future__ import annotations

from ....ground.art import Group
from ....ground.drawing import Art, Pen
from ....ground.geometry import Size
from ....ground.told import figure
from ...making import Figure
from ...views.ink import PAPER
from ...views.side_view import GLUE, SideView
from ..covers.case.keys import CaseKeys
from ..covers.wrap_keys import WrapKeys
from .job import BookJob

__all__ = ["case_view", "edge_strip_view", "jacket_view", "wrap_view"]

APART = 1.5
"""Between two layers as drawn, in mm."""

COVER = Pen(0.4)
MARGIN = 4.0
HIGHEST = 45.0
"""White around a drawing, and how high a block is drawn at most, in mm."""

BEYOND = 24.0
"""Room for words beyond the fore-edge, in mm."""


def wrap_view(job: BookJob, entry: WrapKeys) -> Figure:
    """The wrap around its block: the turn-ins lie between cover and block."""
    page, thickness = job.page, job.block.thickness.value
    view = job.side_view
    width = view.width
    scale = min(HIGHEST / thickness, (width - MARGIN - BEYOND) / (page.width + entry.square))
    high, deep = max(thickness * scale, 3.0), (page.width + entry.square) * scale
    left, foot = MARGIN, MARGIN + APART
    x0, y0, x1, y1 = left, foot - APART, left + deep + APART, foot + high + APART
    turn_in = entry.turn_in * scale
    art: list[Art] = [
        view.box(left + APART, foot, page.width * scale - 0.5 * APART, high, PAPER),
        view.word("block", left + deep / 2, foot + high / 2),
    ]
    outline = [(x1, y1), (x0, y1), (x0, y0), (x1, y0)]
    if turn_in:
        inside = APART * 0.55
        top, low = y1 - inside, y0 + inside
        outline = [(x1 - turn_in, top), (x1, top), *outline, (x1, low), (x1 - turn_in, low)]
        art.append(view.word(f"turn-in {figure(entry.turn_in, 1)}", x1 + 11.0, y1 - 0.5, 2.0, 20.0))
    art.append(view.chain(outline, COVER))
    art.append(view.word("spine", x0 + 6.0, y1 + 2.2, 2.0))
    caption = "Seen from the tail: the wrap around its block. All folds are mountains, the print is outside."
    return Figure(Group(tuple(art)), Size(width, y1 + 4.5), caption)


def case_view(job: BookJob, entry: CaseKeys) -> Figure:
    """Boards, stiffener and covering around the block, with the joints between."""
    boards = next(part for part in job.cover.cut_list if part.what == "board")
    stiffener = next((part for part in job.cover.cut_list if part.what == "stiffener"), None)
    stiff = stiffener.thickness if stiffener else 0.0
    page, block = job.page, job.block.thickness.value
    view = job.side_view
    width = view.width
    reach = page.width + entry.square
    scale = min(HIGHEST / (block + 2 * boards.thickness), (width - MARGIN - BEYOND) / (reach + stiff))
    board, high = boards.thickness * scale, max(block * scale, 4.0)
    spine = MARGIN + APART + stiff * scale
    foot = MARGIN + APART + board + APART
    head = foot + high
    start, end = spine + (reach - boards.width) * scale, spine + reach * scale
    art: list[Art] = [
        view.box(spine, foot, page.width * scale, high, PAPER),
        view.word("block", spine + page.width * scale / 2, foot + high / 2),
    ]
    for y in (foot - APART - board, head + APART):
        art += [view.box(start, y, end - start, board, GLUE)]
    art.append(view.word(f"board {figure(boards.width, 1)} wide", (start + end) / 2, head + APART + board + 3.0, 2.0))
    if stiffener:
        tall = min(stiffener.width * scale, high + 2 * (board + APART))
        art.append(view.box(MARGIN + APART, foot + high / 2 - tall / 2, stiff * scale, tall, GLUE))
    low, top = foot - 2 * APART - board, head + 2 * APART + board
    art.append(_covering(view, entry.turn_in * scale, (MARGIN, end + APART), (low, top), board))
    art.append(
        view.word(f"joint {figure(reach - boards.width, 1)}", (spine + start) / 2 + 1, foot - APART - board - 3.2, 2.0)
    )
    art.append(view.word(f"square {figure(entry.square, 1)}", end + 13.0, foot + high / 2, 2.0, 20.0))
    what = "stiffener and boards" if stiffener else "boards"
    caption = f"Seen from the tail: {what} (grey) on the inside of the covering, turned in around the boards."
    return Figure(Group(tuple(art)), Size(width, head + 2 * APART + board + 4.0), caption)


def _covering(view: SideView, turn_in: float, xs: tuple[float, float], ys: tuple[float, float], board: float) -> Art:
    """Around the outside, and in again at both fore-edges."""
    (x0, x1), (y0, y1) = xs, ys
    lies = max(1.5, turn_in - board)
    inner = board + 1.6 * APART
    outline = [(x1, y1), (x0, y1), (x0, y0), (x1, y0)]
    turned = [(x1 - lies, y1 - inner), (x1, y1 - inner), *outline, (x1, y0 + inner), (x1 - lies, y0 + inner)]
    return view.chain(turned, COVER)


def jacket_view(job: BookJob, flap: float) -> Figure:
    """The jacket around the covered book, with its flaps inside."""
    depth, thickness = job.cover.depth, job.cover.thickness.value
    view = job.side_view
    width = view.width
    scale = min(HIGHEST / thickness, (width - MARGIN - BEYOND) / depth)
    high, deep, reach = max(thickness * scale, 6.0), depth * scale, flap * scale
    board = min(1.6, high / 5)
    foot = MARGIN + APART
    x0, x1, y0, y1 = MARGIN, MARGIN + deep + APART, foot - APART, foot + high + APART
    art: list[Art] = [view.box(MARGIN + APART, foot, deep - APART, high, GLUE)]
    art.append(view.box(MARGIN + APART + board, foot + board, deep - APART - board, high - 2 * board, PAPER))
    art.append(view.word("covered book", MARGIN + deep / 2, foot + high / 2))
    inner = APART + board + 0.5
    outline = [(x1, y1), (x0, y1), (x0, y0), (x1, y0)]
    folded = [(x1 - reach, y1 - inner), (x1, y1 - inner), *outline, (x1, y0 + inner), (x1 - reach, y0 + inner)]
    art.append(view.chain(folded, COVER))
    art.append(view.word(f"flap {figure(flap, 1)}", x1 + 10.0, y1 - inner, 2.0, 20.0))
    caption = "Seen from the tail: the jacket (black) lies around the cover (grey), its flaps inside."
    return Figure(Group(tuple(art)), Size(width, y1 + MARGIN), caption)


def edge_strip_view(job: BookJob) -> Figure:
    """A dummy block seen on its front, with the strip around head, fore-edge and tail."""
    page, view = job.page, job.side_view
    width = view.width
    scale = min(HIGHEST / page.height, (width - 2 * MARGIN - BEYOND) / page.width)
    wide, high = page.width * scale, page.height * scale
    left, foot = 14.0, MARGIN
    art: list[Art] = [
        view.box(left, foot, wide, high, PAPER),
        view.word("block", left + wide / 2, foot + high / 2),
        view.word("spine", left - 6.0, foot + high / 2, 2.0),
    ]
    x, y0, y1 = left + wide + APART, foot - APART, foot + high + APART
    art.append(view.chain([(left, y1), (x, y1), (x, y0), (left, y0)], COVER))
    art.append(view.word("edge strip", x + 9.0, foot + high / 2, 2.0, 16.0))
    caption = "Seen from the front: the strip goes around head, fore-edge and tail; the spine stays bare."
    return Figure(Group(tuple(art)), Size(width, y1 + MARGIN), caption)
