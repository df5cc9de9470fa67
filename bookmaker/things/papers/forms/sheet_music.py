"""Sheet music: a folded sheet of four pages, or more of them in one another; a title in front, notes behind."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random
from typing import Literal

from pydantic import Field

from ....ground.geometry import Rect, Size
from ....ground.units import MM_PER_INCH
from ....paper.stock import Stock
from ....shelf_file.fields.counts import NewsPages
from ....shelf_file.fields.measures import StaffSpacing
from ..entry import Leaf, PaperEntry, Press
from ..face import FaceEntry, SetFace, dress_face
from ..folio import folio_leaves, pages_on
from .notation import score

__all__ = ["SheetMusic"]

MARGIN = 0.09
"""The white around the staves, as a share of the width."""


class SheetMusic(PaperEntry):
    """Sheet music of invented notes, or of staves of your own."""

    kind: Literal["sheet music"] = "sheet music"
    ages_behind = True
    pages: NewsPages = Field(4, description="how many pages it has: a multiple of 4")
    staff: StaffSpacing = Field(0.2, description="from line to line of a staff, such as 0.2 mm")
    front: FaceEntry = Field(FaceEntry(), description="its first page")
    notes: FaceEntry = Field(FaceEntry(), description="the pages after it, in place of invented notes")
    back: FaceEntry = Field(FaceEntry(), description="its last page")
    usual_format = "A4"

    @property
    def what(self) -> str:
        """How much of it there is."""
        return f"Sheet music of {self.pages} pages"

    def leaves(self, size: Size, stock: Stock) -> tuple[Leaf, ...]:
        """Its sheets, one in the other."""
        return folio_leaves(self.kind, size, self.pages, stock.covered)

    def printed(self, leaves: Sequence[Leaf], press: Press) -> Sequence[tuple[SetFace, SetFace]]:
        """Title, notes, back, imposed."""
        area = Rect(0, 0, *press.size)
        reach = area.grown(press.bleed)
        first, last = (
            dress_face(press.face(key), area, reach, press.words, press.dpi, self.paper).told_of(key)
            for key in ("front", "back")
        )
        inner = [self._page(number, area, press) for number in range(2, self.pages)]
        return pages_on(leaves, press.size, [first, *inner, last])

    def _page(self, number: int, area: Rect, press: Press) -> SetFace:
        """A page of notes."""
        own = press.face("notes")
        if own.entry != FaceEntry():
            return dress_face(own, area, area, press.words, press.dpi, self.paper).told_of("notes")
        room = area.grown(-MARGIN * area.width)
        dot = MM_PER_INCH / press.dpi
        space = max(2, round(self.staff / dot)) * dot
        return SetFace(tuple(score(room, space, Random(f"{press.words.seed} {number}"))))
