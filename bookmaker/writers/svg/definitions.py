"""What an SVG holds once and uses often: glyphs, clips, art that repeats, pictures."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import partial
from string import ascii_lowercase

from ...ground.imported import ImportedPage
from ...ground.pictures import Picture
from ...ground.typefaces import Typeface
from .images import Part, image_of_page, image_of_picture
from .outlines import glyph_outline

__all__ = ["MARK", "Definitions"]

MARK = "\0"
"""Stands before every name until the whole picture is known; no text can hold it."""

Size = tuple[float, float]


@dataclass(slots=True)
class _Face:
    """A typeface of a picture: the letter its glyphs begin with, and the name of each glyph, "" for a blank."""

    letter: str
    names: dict[int, str] = field(default_factory=dict)


class Definitions:
    """Everything that is written once; each is asked for by what it is and answered with its name."""

    def __init__(self) -> None:
        self._elements: list[str] = []
        self._faces: dict[Typeface, _Face] = {}
        self._names: dict[tuple[str, str], str] = {}
        self._images: dict[object, _Image] = {}

    def glyphs(self, typeface: Typeface) -> Callable[[int], str]:
        """What names the glyphs of a typeface; a blank has no name."""
        if typeface not in self._faces:
            self._faces[typeface] = _Face(_letters(len(self._faces)))
        face = self._faces[typeface]

        def name(gid: int) -> str:
            known = face.names.get(gid)
            if known is None:
                outline = glyph_outline(typeface, gid)
                known = face.names[gid] = f"{MARK}{face.letter}{gid}" if outline else ""
                if outline:
                    self._elements.append(f'<path id="{known}" d="{outline}"/>')
            return known

        return name

    def clip(self, data: str) -> str:
        """A clip, by its path data."""
        return self._kept("C", data, '<clipPath id="{}"><path d="{}"/></clipPath>')

    def repeated(self, content: str) -> str:
        """Art that repeats, by its elements."""
        return self._kept("R", content, '<g id="{}">{}</g>')

    def _kept(self, kind: str, content: str, element: str) -> str:
        known = self._names.get((kind, content))
        if known is None:
            known = self._names[kind, content] = f"{MARK}{kind}{len(self._names)}"
            self._elements.append(element.format(known, content))
        return known

    def picture(self, picture: Picture, part: Part, size: Size) -> str:
        """A part of a picture that stands on the paper at a size in mm."""
        return self._image((picture.key, part), partial(image_of_picture, picture, part), size)

    def imported(self, page: ImportedPage, size: Size) -> str:
        """A page of a PDF file that stands on the paper at a size in mm."""
        return self._image((page.digest, page.index), partial(image_of_page, page), size)

    def _image(self, key: object, made: Callable[[float, float, float], str], size: Size) -> str:
        known = self._images.get(key)
        if known is None:
            known = self._images[key] = _Image(f"{MARK}P{len(self._images)}", made)
        known.width, known.height = max(known.width, size[0]), max(known.height, size[1])
        return known.name

    def content(self, dpi: float) -> str:
        """All of it; pictures with so many pixels to the inch of paper."""
        return "".join((*self._elements, *(image.element(dpi) for image in self._images.values())))


@dataclass(slots=True)
class _Image:
    """A picture, and the largest size in mm at which it stands anywhere on the paper."""

    name: str
    made: Callable[[float, float, float], str]
    width: float = 0.0
    height: float = 0.0

    def element(self, dpi: float) -> str:
        """The picture, one unit wide and high."""
        data = self.made(self.width, self.height, dpi)
        return f'<image id="{self.name}" width="1" height="1" preserveAspectRatio="none" href="{data}"/>'


def _letters(number: int) -> str:
    """a … z, then aa … az.

    >>> _letters(0), _letters(27)
    ('a', 'ab')
    """
    more, last = divmod(number, len(ascii_lowercase))
    return (_letters(more - 1) if more else "") + ascii_lowercase[last]
