"""Words on things: in a box as large as it takes, or on a line of a size."""

from __future__ import annotations

from typing import Literal

from ..ground.art import Written
from ..ground.drawing import BLACK, Colour
from ..ground.geometry import Point, Rect
from ..ground.typefaces import set_line
from .book.designs.letters.lettering import Hand, letters_for, typeface_for
from .book.designs.letters.titling import Placed, fit_text, place_centred

__all__ = ["Align", "fitted", "line_of"]

Align = Literal["left", "middle", "right"]
"""Where a point lies on a line of text."""


def fitted(text: str, face: str, box: Rect, ink: Colour = BLACK, *, largest: float = 30.0) -> Placed:
    """A text in the middle of a box, as large as it can be, the em at most `largest` mm."""
    letters, _ = letters_for("title", text, Hand(face, face, ink, ink))
    return place_centred(fit_text(letters, " ".join(text.split()), box.size, largest), box, ink)


def line_of(
    text: str,
    face: str,
    size: float,
    at: Point,
    ink: Colour = BLACK,
    *,
    align: Align = "left",
    room: float | None = None,
) -> Written:
    """A line with an em of so many mm from, about or up to a point on its baseline; smaller if it has less room."""
    typeface, _ = typeface_for(text, face)
    line = set_line(typeface, size, text)
    if room is not None and line.width > room:
        line = set_line(typeface, size * room / line.width, text)
    share = {"left": 0.0, "middle": 0.5, "right": 1.0}[align]
    return Written(line, at.plus(-share * line.width, 0), ink)
