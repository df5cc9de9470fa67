"""Papers that are one sheet with a front and a back: letters, maps, posters, sheet music, table tops."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import ceil
from typing import Literal

from pydantic import Field

from ....ground.geometry import Rect, Size
from ....ground.problems import Problem
from ....ground.units import print_mm
from ....paper.stock import Stock
from ....sheets.flat import Face
from ....shelf_file.fields.counts import Columns
from ..entry import BLEED, Leaf, PaperEntry, Press
from ..face import FaceEntry, SetFace, dress_face, together
from ..fold_entry import FoldEntry

__all__ = ["FoldedMap", "Letter", "PlainPaper", "Poster", "Print"]


TOUCH = 1e-6
"""What is no further from an edge than this, in mm, ends with it."""


class PlainPaper(PaperEntry):
    """A sheet with a front and a back."""

    front: FaceEntry = Field(FaceEntry(), description="what its front shows")
    back: FaceEntry = Field(FaceEntry(), description="what its back shows")

    def printed(self, leaves: Sequence[Leaf], press: Press) -> Sequence[tuple[SetFace, SetFace]]:
        """Front and back."""
        return [(self.dressed("front", leaf, press), self.dressed("back", leaf, press)) for leaf in leaves]

    def dressed(self, key: str, leaf: Leaf, press: Press) -> SetFace:
        """One of them."""
        area = Rect(0, 0, *leaf.size)
        face = press.face(key)
        return dress_face(face, area, area.grown(press.bleed), press.words, press.dpi, self.paper).told_of(key)


class Letter(PlainPaper):
    """A letter, folded in thirds, the text inside."""

    kind: Literal["letter"] = "letter"
    ages_behind = True

    @property
    def folds(self) -> FoldEntry:
        """In thirds, unless otherwise written."""
        return self.fold or FoldEntry()


class Poster(PlainPaper):
    """A poster; a play bill, a notice."""

    kind: Literal["poster"] = "poster"
    usual_format = "double crown"


class Print(PlainPaper):
    """A plain rectangle of art, for a table top, a wall, a floor: in one piece, or in strips laid edge to edge."""

    kind: Literal["print"] = "print"
    strips: Columns = Field(1, description="in how many upright strips it is printed, to be laid edge to edge")

    def leaves(self, size: Size, stock: Stock) -> tuple[Leaf, ...]:
        """The strips, from the left, all alike."""
        if self.strips == 1:
            return super().leaves(size, stock)
        strip = Size(size.width / self.strips, size.height)
        return tuple(Leaf(f"print, strip {n + 1}", strip, None, n) for n in range(self.strips))

    def faults(self, size: Size, stock: Stock) -> Iterator[Problem]:
        """Strips of what is folded; what goes on no sheet, and how many strips would."""
        yield from super().faults(size, stock)
        if self.strips > 1 and self.fold:
            yield Problem("a print in strips cannot be folded", "leave fold or strips out", field=("fold",))
        room = max((room for room in stock.openings(None)), key=lambda room: room.height)
        needed = ceil((size.width + 1e-9) / (room.width - 2 * BLEED))
        if needed > self.strips and size.height + 2 * BLEED <= room.height and not self._fits(size, stock):
            yield Problem(
                f"{print_mm(size.width, 1)} × {print_mm(size.height, 1)} is too large for one sheet of {stock.name}",
                f"write strips: {needed}, and lay them edge to edge",
                field=("strips",) if self.strips > 1 else ("stock",),
            )

    def _fits(self, size: Size, stock: Stock) -> bool:
        """Whether a strip goes on a sheet, whichever way it lies."""
        wide, high = size.width / self.strips + 2 * BLEED, size.height + 2 * BLEED
        return any(wide <= room.width and high <= room.height for room in stock.openings(None))

    def printed(self, leaves: Sequence[Leaf], press: Press) -> Sequence[tuple[SetFace, SetFace]]:
        """The art of the whole, each strip its part of it; the back is mirrored with it."""
        whole = Leaf(self.kind, press.size)
        front, back = self.dressed("front", whole, press), self.dressed("back", whole, press)
        return [(self._strip(front, leaf), self._strip(back, leaf, behind=press.size.width)) for leaf in leaves]

    def _strip(self, face: SetFace, leaf: Leaf, *, behind: float | None = None) -> SetFace:
        left = leaf.number * leaf.size.width
        return face.moved(-left if behind is None else left + leaf.size.width - behind, 0)


class FoldedMap(PlainPaper):
    """A map or a chart, folded in rows and then to and fro."""

    kind: Literal["map"] = "map"
    ages_behind = True
    cover: FaceEntry = Field(FaceEntry(), description="what is seen of it when it is folded, on its outer panel")
    usual_format = "map sheet"

    @property
    def folds(self) -> FoldEntry:
        """As maps are folded, unless otherwise written."""
        return self.fold or FoldEntry(kind="map")

    def printed(self, leaves: Sequence[Leaf], press: Press) -> Sequence[tuple[SetFace, SetFace]]:
        """Front and back, and over one of them the cover, on the panel that comes outside."""
        return [self._covered(leaf, press) for leaf in leaves]

    def _covered(self, leaf: Leaf, press: Press) -> tuple[SetFace, SetFace]:
        sides = {Face.FRONT: self.dressed("front", leaf, press), Face.REVERSE: self.dressed("back", leaf, press)}
        if leaf.folded:
            (cell, face), _ = leaf.folded.outer
            area, reach = leaf.folded.rect(cell), _to_bleed(leaf.folded.whole(cell), leaf.size, press.bleed)
            if face is Face.REVERSE:
                area, reach = (rect._replace(x=leaf.size.width - rect.right) for rect in (area, reach))
            cover = dress_face(press.face("cover"), area, reach, press.words, press.dpi, self.paper).told_of("cover")
            sides[face] = together(sides[face], cover)
        return sides[Face.FRONT], sides[Face.REVERSE]


def _to_bleed(panel: Rect, sheet: Size, bleed: float) -> Rect:
    """A panel from fold to fold; where it ends with the sheet it goes on into the bleed."""
    ends = (panel.x, panel.y, sheet.width - panel.right, sheet.height - panel.top)
    return panel.grown(*(bleed if abs(end) < TOUCH else 0.0 for end in ends))
