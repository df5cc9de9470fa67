"""Sheets of two pages a side, one in the other and folded at the spine: newspapers, sheet music, programmes."""

from __future__ import annotations

from collections.abc import Sequence

from ...ground.geometry import Axis, Size
from ...sheets.flat import Face
from .chains import ONE_PANEL, Chain
from .entry import Leaf
from .face import SetFace, together
from .folding import FoldedSheet

__all__ = ["folio_leaves", "imposed", "pages_on"]


def folio_leaves(name: str, page: Size, pages: int, caliper: float, again: Chain = ONE_PANEL) -> tuple[Leaf, ...]:
    """The sheets of so many pages, the outermost first; `again` are the rows into which all are folded together.

    The spine of a sheet goes round those in it: each is wider than the next inner one by four calipers, so that their
    edges lie even.
    """
    sheets = pages // 4
    leaves = []
    for number in range(sheets):
        inner = sheets - 1 - number
        size = Size(2 * (page.width + inner * caliper) + (2 * inner + 1) * caliper, page.height)
        spine = Chain((2 * sheets - 1 - number, number), (1,), (1.0, 1.0), (0.0, 0.0))
        folded = FoldedSheet(size, caliper, spine, again, Axis.X, outside=True, deep=2 * sheets)
        leaves.append(Leaf(name if sheets == 1 else f"{name}, sheet {number + 1}", size, folded, number))
    return tuple(leaves)


def imposed(sheet: int, pages: int, face: Face) -> tuple[int, int]:
    """The numbers of the pages on the left and on the right of a face of a sheet, counted from 0, as it is seen.

    >>> [imposed(sheet, 8, face) for sheet in (0, 1) for face in Face]
    [(8, 1), (2, 7), (6, 3), (4, 5)]
    """
    first = 2 * sheet + 1
    return (pages + 1 - first, first) if face is Face.FRONT else (first + 1, pages - first)


def pages_on(leaves: Sequence[Leaf], page: Size, pages: Sequence[SetFace]) -> list[tuple[SetFace, SetFace]]:
    """Pages in the order in which they are read, imposed on their sheets: at the edges, the spine between them."""

    def side(leaf: Leaf, face: Face) -> SetFace:
        left, right = (pages[number - 1] for number in imposed(leaf.number, len(pages), face))
        return together(left, right.moved(leaf.size.width - page.width, 0))

    return [(side(leaf, Face.FRONT), side(leaf, Face.REVERSE)) for leaf in leaves]
