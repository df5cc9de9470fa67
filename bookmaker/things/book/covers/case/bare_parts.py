"""Parts of a case that no design dresses: endpapers and board templates."""

from __future__ import annotations

from collections.abc import Iterator

from .....ground.geometry import Axis, Point, Rect, Size
from .....sheets.flat import Flat, Fold, FoldKind, Panel, Role
from .sizes import Sizes

__all__ = ["endpapers", "templates"]


def endpapers(page: Size, stock: str, *, right_to_left: bool) -> Iterator[Flat]:
    """Two folded sheets, each a pastedown and a flyleaf; seen from the face that shows when the cover is open."""
    width, height = page
    for name, pastedown_left in (("front endpaper", not right_to_left), ("back endpaper", right_to_left)):
        roles = (Role.PASTEDOWN, Role.FLYLEAF) if pastedown_left else (Role.FLYLEAF, Role.PASTEDOWN)
        yield Flat(
            kind="endpaper",
            name=name,
            stock=stock,
            outline=Rect(0, 0, 2 * width, height).corners,
            folds=(Fold(FoldKind.VALLEY, Point(width, 0), Point(width, height)),),
            panels=tuple(Panel(role, Rect(at * width, 0, width, height)) for at, role in enumerate(roles)),
            grain=Axis.Y,
        )


def templates(sizes: Sizes, stock: str) -> Iterator[Flat]:
    """Outlines of the boards, and of the stiffener if there is one, to tape on the board and cut through.

    They lie on their sides, so that the label beside a narrow stiffener has room to name the book.
    """
    parts = [("front board", sizes.boards), ("back board", sizes.boards)]
    if sizes.stiffener:
        parts.append(("stiffener", Size(sizes.spine, sizes.boards.height)))
    for name, (width, height) in parts:
        outline = Rect(0, 0, height, width)
        yield Flat("board template", name, stock, outline.corners, (), (Panel(Role.BOARD, outline),))
