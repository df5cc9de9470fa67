"""How a chapter of the guide begins: what it is of, what that is, and beside it a small picture of it."""

from __future__ import annotations

from dataclasses import dataclass

from ..ground.art import Group
from ..ground.drawing import Art
from ..ground.geometry import Path, Point, Rect, Transform
from ..sheets.facsimiles import Facsimile
from ..things.views.ink import HAIRLINE, box
from .items import AFTER, Heading, Paragraph

__all__ = ["Titled"]

HIGH, WIDE = 15.0, 30.0
"""The largest that a picture may be, in mm: as high as a title and a line take anyway."""

BESIDE = 5.0
"""Between the words and the picture."""


@dataclass(frozen=True, slots=True)
class Titled:
    """A title, a line on it, and what it looks like when it is finished, if that is known."""

    title: str
    about: str
    seen: Facsimile | None = None
    leads: bool = True

    def height(self, width: float) -> float:
        """Its words, or the picture if that is higher."""
        words = sum(item.height(self._room(width)) for item in self._words)
        return max(words, self._picture.height + AFTER)

    def below(self, corner: Point, width: float) -> Art:
        """The words at the left, the picture at the right."""
        parts: list[Art] = []
        at = corner
        for item in self._words:
            parts.append(item.below(at, self._room(width)))
            at = at.plus(0, -item.height(self._room(width)))
        if self.seen:
            parts.append(self._drawn(self.seen, corner.plus(width - self._picture.width, -self._picture.height)))
        return Group(tuple(parts))

    @property
    def _words(self) -> tuple[Heading, Paragraph]:
        return Heading(self.title, level=1), Paragraph(self.about)

    @property
    def _picture(self) -> Rect:
        """The room of the picture."""
        if self.seen is None:
            return Rect(0, 0, 0, 0)
        seen = self.seen.box
        scale = min(HIGH / seen.height, WIDE / seen.width, 1.0)
        return Rect(0, 0, seen.width * scale, seen.height * scale)

    def _room(self, width: float) -> float:
        return width - self._picture.width - (BESIDE if self.seen else 0.0)

    def _drawn(self, seen: Facsimile, corner: Point) -> Art:
        """The likeness, made smaller, with a thin line around it: many a cover is as white as the page."""
        scale = self._picture.height / seen.box.height
        placed = Transform.move(-seen.box.x, -seen.box.y).then(Transform(a=scale, d=scale)).moved(*corner)
        frame = box(Rect(*corner, *self._picture.size), pen=HAIRLINE)
        return Group((Group((Group((seen.art,), clip=Path.rectangle(seen.box)),), placed), frame))
