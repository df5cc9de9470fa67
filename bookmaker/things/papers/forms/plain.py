"""Papers that are one sheet with a front and a back: letters, maps, posters, sheet music, table tops."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from pydantic import Field

from ....ground.geometry import Rect
from ....sheets.flat import Face
from ..entry import Leaf, PaperEntry, Press
from ..face import FaceEntry, SetFace, dress_face, together
from ..fold_entry import FoldEntry

__all__ = ["FoldedMap", "Letter", "PlainPaper", "Poster", "Print"]


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
    """A plain rectangle of art, for a table top, a strip of wall paper, a floor; it has no usual size."""

    kind: Literal["print"] = "print"


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
            area, reach = leaf.folded.rect(cell), leaf.folded.whole(cell)
            if face is Face.REVERSE:
                area, reach = (rect._replace(x=leaf.size.width - rect.right) for rect in (area, reach))
            cover = dress_face(press.face("cover"), area, reach, press.words, press.dpi, self.paper).told_of("cover")
            sides[face] = together(sides[face], cover)
        return sides[Face.FRONT], sides[Face.REVERSE]
