"""The drawing protocol: the few things art may ask of whatever it is drawn on.

Art is anything with ``draw(canvas)``, in millimetres, y up. It holds no layout: sizes and positions were
settled by the stages before.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from contextlib import AbstractContextManager
from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple, Protocol

from .geometry import Path, Point, Rect, Transform
from .imported import ImportedPage
from .pictures import Picture
from .typefaces import TextLine

__all__ = ["BLACK", "WHITE", "Art", "Canvas", "Colour", "Pen", "Role", "Tag", "contrast", "luminance"]


class Colour(NamedTuple):
    """An sRGB colour, each part from 0 to 1."""

    red: float
    green: float
    blue: float

    @classmethod
    def from_hex(cls, text: str) -> Colour:
        """Read ``#rrggbb`` or ``#rgb``.

        >>> Colour.from_hex("#f00")
        Colour(red=1.0, green=0.0, blue=0.0)
        """
        digits = text.removeprefix("#")
        if not re.fullmatch(r"[0-9a-fA-F]{3}|[0-9a-fA-F]{6}", digits):
            raise ValueError(f"{text!r} is not a colour")
        if len(digits) == 3:
            digits = "".join(digit * 2 for digit in digits)
        red, green, blue = (int(digits[i : i + 2], 16) / 255 for i in (0, 2, 4))
        return cls(red, green, blue)


def luminance(colour: Colour) -> float:
    """Relative luminance as WCAG 2.x defines it: 0 for black, 1 for white.

    >>> luminance(Colour(1.0, 1.0, 1.0))
    1.0
    """
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: Colour, other: Colour) -> float:
    """Contrast ratio as WCAG 2.x defines it, from 1 to 21.

    >>> round(contrast(Colour.from_hex("#777777"), Colour(1.0, 1.0, 1.0)), 3)
    4.478
    """
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


BLACK = Colour(0.0, 0.0, 0.0)
WHITE = Colour(1.0, 1.0, 1.0)


@dataclass(frozen=True, slots=True)
class Pen:
    """How a line is drawn: width and dash lengths in mm."""

    width: float
    colour: Colour = BLACK
    dash: tuple[float, ...] = ()


class Role(StrEnum):
    """What lines of text are to whoever has a file read out: headings by their level, or a paragraph."""

    TITLE = "H1"
    HEADING = "H2"
    SMALL_HEADING = "H3"
    TEXT = "P"


class Tag(NamedTuple):
    """What a file says of some of its text: its role, what it is called, its language (BCP 47); each if it is known."""

    role: Role | None = None
    title: str = ""
    language: str = ""


class Canvas(Protocol):
    """What art can be drawn on. All measures are millimetres in the current coordinates."""

    def fill(self, path: Path, colour: Colour) -> None:
        """Fill an outline (non-zero winding)."""

    def veil(self, path: Path, colour: Colour, cover: float) -> None:
        """Fill an outline with ink that hides what is under it by a share from 0 to 1; in pictures, never in print."""

    def stroke(self, path: Path, pen: Pen) -> None:
        """Draw along a path."""

    def text(self, line: TextLine, at: Point, colour: Colour) -> None:
        """Set one line of shaped text with its left end on the baseline at a point."""

    def picture(self, picture: Picture, into: Rect) -> None:
        """Place a picture, stretched to fill a rectangle."""

    def imported(self, page: ImportedPage, into: Rect) -> None:
        """Place a page of a PDF file, upright as viewers show it, stretched to fill a rectangle."""

    def repeat(self, art: Art, bounds: Rect, places: Sequence[Point]) -> None:
        """Draw the same art with its origin at each of the places; all its ink lies within `bounds`."""

    def placed(self, transform: Transform, clip: Path | None = None) -> AbstractContextManager[None]:
        """Within the block, coordinates go through `transform`; `clip`, in the inner coordinates, bounds the ink."""

    def layer(self, title: str) -> AbstractContextManager[None]:
        """Within the block, all that is drawn belongs to a layer, which whoever looks at it may hide."""

    def tagged(self, tag: Tag) -> AbstractContextManager[None]:
        """Within the block, a file says of the text what a tag says; what has a role holds nothing else that has."""


class Art(Protocol):
    """Something that can be drawn."""

    def draw(self, canvas: Canvas) -> None:
        """Draw it."""
