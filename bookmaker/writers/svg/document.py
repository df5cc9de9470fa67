"""A whole SVG picture: true size, no scripts, nothing fetched, names that no other picture has."""

from __future__ import annotations

import hashlib
from string import ascii_letters
from xml.sax.saxutils import escape

from ...ground.drawing import Art
from ...ground.geometry import Rect
from .canvas import SvgCanvas
from .definitions import MARK, Definitions
from .paths import MICROMETRES

__all__ = ["SCREEN_DPI", "svg_picture"]

SCREEN_DPI = 288.0
"""Pixels to the inch that pictures have: sharp on a fine screen, and up to three times as large on any."""

LETTERS = 6
"""In what all names of a picture begin with: among a thousand pictures two are alike once in 40 000 times."""


def svg_picture(art: Art, box: Rect, *, title: str = "", dpi: float = SCREEN_DPI) -> str:
    """What of some art lies in a box, both in mm, y up: an SVG as wide and high as the box.

    `title` is what it is called where it cannot be seen. Pictures in it have at most `dpi` pixels to the inch.
    The same art gives the same text; the names in it begin with a digest, so that many of them stand in one page.

    Raises:
        ShelfFileError: a picture file is not what it was when it was loaded.

    >>> from bookmaker.ground.art import Filled
    >>> print(svg_picture(Filled.box(Rect(1, 1, 2, 2)), Rect(0, 0, 4, 5)))
    <svg xmlns="http://www.w3.org/2000/svg" width="4mm" height="5mm" viewBox="0 0 4 5"><g \
transform="matrix(.001 0 0 -.001 0 5)" stroke-miterlimit="10"><path d="m1000 1000h2000v2000h-2000z"/></g></svg>
    """
    definitions = Definitions()
    canvas = SvgCanvas(definitions, box)
    art.draw(canvas)
    body = canvas.content()
    held = definitions.content(dpi)
    width, height, left, top = (_mm(length) for length in (box.width, box.height, -box.x, box.top))
    called = escape("".join(filter(str.isprintable, title)))  # XML has no place for control characters
    told = f"<title>{called}</title>" if called else ""
    unit = f"{1 / MICROMETRES}".removeprefix("0")
    text = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" viewBox="0 0 {width} {height}">'
        f"{told}{f'<defs>{held}</defs>' if held else ''}"
        f'<g transform="matrix({unit} 0 0 -{unit} {left} {top})" stroke-miterlimit="10">{body}</g></svg>'
    )
    return text.replace(MARK, _name(text)) if held else text


def _mm(length: float) -> str:
    """A length in mm, to a thousandth."""
    return f"{round(length, 3) + 0.0:.3f}".rstrip("0").rstrip(".")


def _name(text: str) -> str:
    """A name for a text that hardly any other has, of letters."""
    number = int.from_bytes(hashlib.blake2b(text.encode(), digest_size=8).digest())
    return "".join(
        ascii_letters[number // len(ascii_letters) ** place % len(ascii_letters)] for place in range(LETTERS)
    )
