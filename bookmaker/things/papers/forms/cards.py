"""Cards and labels: postcards, index cards, visiting cards, tickets, labels for jars and drawers."""

from __future__ import annotations

from abc import ABC
from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from ....ground.art import Stroked
from ....ground.drawing import Art, Colour, Pen
from ....ground.geometry import Point, Rect, Size, Transform, polygon
from ....ground.outlines import Outline, circle, rounded
from ....paper.stock import Stock
from ....shelf_file.fields.counts import Count
from ....shelf_file.fields.words import Flag, Ink, Lines
from ..entry import Leaf, Press
from ..face import FaceEntry, PaperFace, SetFace, dress_face, together
from .card_stock import CardStock

__all__ = ["Cards", "Labels"]

NUMBER = "#"
"""This sign in a text is the number of the card."""

INK = Colour.from_hex("#2b2620")


class TextCards(CardStock, ABC):
    """Cards that are alike but for their numbers or their texts."""

    front: FaceEntry = Field(FaceEntry(), description="what their fronts show; # in its text is the number of a card")
    back: FaceEntry = Field(FaceEntry(), description="what their backs show")
    each: tuple[Lines, ...] = Field((), description="a text for each card, in place of that of the front")
    first: Count = Field(1, description="the number of the first card")
    tear: Flag = Field(False, description="whether they are torn apart, as tickets are, along perforations")

    @property
    def keeps_off(self) -> float:
        """How far words keep from its edges, as a share of the shorter side, more than they do on all surfaces."""
        return 0.0

    @property
    def cards(self) -> int:
        """One for each text, or so many as are asked for, in each copy."""
        return len(self.each) * self.count if self.each else self.count

    @property
    def torn(self) -> bool:
        """Whether they are torn apart."""
        return self.tear

    def card(self, number: int, area: Rect, press: Press) -> tuple[SetFace, SetFace]:
        """Front and back; fields are the entry's."""
        sides = ((key, self._numbered(press.face(key), number, own=key == "front")) for key in ("front", "back"))
        inner, reach = area.grown(-self.keeps_off * min(area.size)), area.grown(press.bleed)
        front, back = (
            dress_face(face, inner, reach, press.words, press.dpi, self.paper).told_of(key) for key, face in sides
        )
        return front, back

    def _numbered(self, face: PaperFace, number: int, *, own: bool) -> PaperFace:
        """A face with the text of its card, the number in it."""
        text = self.each[number % len(self.each)] if self.each and own else face.entry.text
        if text is None:
            return face
        return face.with_text(text.replace(NUMBER, str(self.first + number)))


class Cards(TextCards):
    """Postcards, index cards, visiting cards, tickets."""

    kind: Literal["cards"] = "cards"
    usual_format = "index card"


class Labels(TextCards):
    """Labels, each with its text in a border."""

    kind: Literal["labels"] = "labels"
    shape: Literal["rectangle", "rounded", "clipped", "oval"] = Field("rectangle", description="their outline")
    border: Literal["none", "line", "double"] = Field("double", description="the line along the edge")
    border_ink: Ink = Field(INK, description="its colour")
    usual_format = "business card"

    @property
    def keeps_off(self) -> float:
        """Within the border, and out of the corners of an oval."""
        return 0.17 if self.shape == "oval" else 0.09

    def leaves(self, size: Size, stock: Stock) -> tuple[Leaf, ...]:
        """Rectangles lie side by side; what has another outline is cut out by itself."""
        if self.shape == "rectangle":
            return super().leaves(size, stock)
        outline = _outline(self.shape, Rect(0, 0, *size))
        return tuple(Leaf(f"label {n + 1}", size, None, n, outline=outline) for n in range(self.cards))

    def card(self, number: int, area: Rect, press: Press) -> tuple[SetFace, SetFace]:
        """Front and back; the border over the front."""
        front, back = super().card(number, area, press)
        return together(front, SetFace(tuple(self._border(area)))), back

    def _border(self, area: Rect) -> Iterator[Art]:
        short = min(area.size)
        lines = {"none": (), "line": ((0.07, 0.02),), "double": ((0.06, 0.025), (0.105, 0.009))}[self.border]
        for inset, width in lines:
            path = polygon(_outline(self.shape, area.grown(-inset * short)))
            yield Stroked(path, Pen(max(0.06, width * short), self.border_ink))


def _outline(shape: str, area: Rect) -> Outline:
    """The outline of a label in an area."""
    match shape:
        case "oval":
            longer = max(area.size) / 2
            stretch = Transform.stretch(area.width / 2 / longer, area.height / 2 / longer).moved(*area.centre)
            return tuple(stretch.apply(point) for point in circle(Point(0, 0), longer))
        case "rounded":
            return rounded(area.corners, min(area.size) * 0.2)
        case "clipped":
            cut = min(area.size) * 0.18
            x, y, right, top = area.x, area.y, area.right, area.top
            corners = ((x + cut, y), (right - cut, y), (right, y + cut), (right, top - cut))
            more = ((right - cut, top), (x + cut, top), (x, top - cut), (x, y + cut))
            return tuple(Point(*corner) for corner in (*corners, *more))
        case _:
            return area.corners
