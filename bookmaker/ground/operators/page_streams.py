"""What the pages of a PDF file draw: unfolded within limits, and looked through for damage before it is copied."""

from __future__ import annotations

import io
import re
import zlib
from collections.abc import Iterable, Iterator
from typing import Any, NoReturn

from ..demands import demand
from ..files import SAVE_AGAIN
from ..problems import Problem, ShelfFileError
from .inline_pictures import check_inline_pictures

__all__ = ["Node", "PageStreams", "content_of"]

Node = dict[str, Any]
"""A page or a node of the page tree: its entries as they are written, references among them."""

DRAWN = re.compile(rb"/([^\s/<>\[\](){}%]+)\s+Do\b")
"""What draws a form or a picture: its name and an operator."""

SET = re.compile(rb"/([^\s/<>\[\](){}%]+)\s+[-+.\d]+\s+Tf\b")
"""What chooses a font: its name, a size and an operator."""

MOST_OF_PAGE, MOST_IN_ALL = 40_000_000, 200_000_000
"""Bytes that operators of a page, and of all pages of a file, may unfold to; a street map takes five million."""

CHECKSUM = "incorrect data check"

DEEPEST = 50
"""Forms within forms; a file with more means harm."""

STEP = 1_000_000
"""So many bytes of a picture are unfolded at once."""

LARGE = 50_000_000
"""Pictures of so many pixels are not decoded to see whether they are whole."""

PROGRAMS = ("/FontFile", "/FontFile2", "/FontFile3")
"""Where a font descriptor has its font (ISO 32000-1, table 122)."""

LESS = "print or save it to a PDF again with a coarser drawing, or save it as a picture"

Key = tuple[int, int]


class _TooMuchError(Exception):
    """More is drawn than anybody sees."""


def content_of(page: Node) -> bytes:
    """The operators of a page, its streams joined (ISO 32000-1, 7.8.2).

    Raises:
        ValueError: a stream is damaged.
    """
    from pypdf.generic import ArrayObject

    found = page["/Contents"].get_object() if "/Contents" in page else ArrayObject()
    parts: list[bytes] = []
    room = MOST_OF_PAGE
    for part in found if isinstance(found, ArrayObject) else [found]:
        parts.append(_data(part.get_object(), room))
        room -= len(parts[-1])
    return b"\n".join(parts)


def _data(stream: Any, room: int) -> bytes:
    """What a stream holds, which is no more than there is room for.

    Raises:
        ValueError: it is damaged. The reader would pass over that, and some of a page would be lost.
    """
    if stream.get("/Filter") in ("/FlateDecode", ["/FlateDecode"]):
        try:
            if len(zlib.decompressobj().decompress(stream._data, room + 1)) > room:
                raise _TooMuchError
        except zlib.error as damage:
            # some programs get the checksum at the end wrong, and viewers do not mind
            if CHECKSUM not in str(damage):
                raise ValueError from damage
    data = bytes(stream.get_data())
    if len(data) > room:
        raise _TooMuchError
    return data


class PageStreams:
    """Looks through the pages of one file, each stream once however often it is drawn; `name` is that of the file."""

    def __init__(self, name: str) -> None:
        self._name = name
        self._unfolded = 0
        self._done: set[Key] = set()

    def check(self, number: int, page: Node) -> None:
        """Refuse a page whose streams cannot be read or unfold without measure, or whose forms draw themselves.

        Raises:
            ShelfFileError: the page, counted from 1, cannot be used.
        """
        try:
            resources = page["/Resources"].get_object() if "/Resources" in page else {}
            self._drawing(content_of(page), resources, ())
        except ShelfFileError:
            raise
        except _TooMuchError:
            _refuse(f"page {number} of {self._name} draws more than can be printed", LESS)
        except Exception:  # a damaged file can make its reader raise anything
            _refuse(f"page {number} of {self._name} is damaged", SAVE_AGAIN)

    def _drawing(self, content: bytes, resources: Any, above: tuple[Key, ...]) -> None:
        """Only what is really drawn counts: many files give every form a list of all of them."""
        from pypdf.generic import StreamObject

        self._unfolded += len(content)
        if self._unfolded > MOST_IN_ALL:
            raise _TooMuchError
        demand("operators", len(content), name=self._name, field=("file",))
        check_inline_pictures(content)
        self._fonts(content, resources)
        forms: Any = resources["/XObject"].get_object() if "/XObject" in resources else {}
        for name in _named(DRAWN, content, forms):
            reference, found = forms.raw_get(name), forms[name]
            if not isinstance(found, StreamObject):
                continue
            key = (reference.idnum, reference.generation)
            if key in above or len(above) > DEEPEST:
                _refuse(f"a drawing in {self._name} contains itself", SAVE_AGAIN)
            if key not in self._done:
                self._drawn(found, resources, (*above, key))
                self._done.add(key)

    def _drawn(self, found: Any, resources: Any, above: tuple[Key, ...]) -> None:
        """A form or a picture."""
        if found.get("/Subtype") == "/Form":
            own = found["/Resources"].get_object() if "/Resources" in found else resources
            self._drawing(_data(found, MOST_OF_PAGE), own, above)
        elif found.get("/Subtype") == "/Image":
            _look_through(found)
            if "/SMask" in found:
                _look_through(found["/SMask"].get_object())

    def _fonts(self, content: bytes, resources: Any) -> None:
        """The programs of the fonts that are set, which viewers would replace without a word."""
        from pypdf.generic import DictionaryObject

        fonts: Any = resources["/Font"].get_object() if "/Font" in resources else {}
        for font in (fonts[name] for name in _named(SET, content, fonts) if isinstance(fonts[name], DictionaryObject)):
            for program in _programs(font):
                if (key := (program.idnum, program.generation)) not in self._done:
                    _look_through(program.get_object())
                    self._done.add(key)


def _named(operators: re.Pattern[bytes], content: bytes, known: Iterable[str]) -> list[str]:
    """The names of what some operators ask for, as far as they are known."""
    return sorted({"/" + sign.decode("latin-1") for sign in operators.findall(content)} & set(known))


def _programs(font: Any) -> Iterator[Any]:
    """References to the font files of a font, or of the one it descends to."""
    from pypdf.generic import ArrayObject, DictionaryObject, IndirectObject, NullObject

    below = font.get("/DescendantFonts", ArrayObject()).get_object()
    for one in (font, *(part.get_object() for part in below)):
        descriptor = one.get("/FontDescriptor", NullObject()).get_object()
        if isinstance(descriptor, DictionaryObject):
            programs = (descriptor.raw_get(key) for key in PROGRAMS if key in descriptor)
            yield from (program for program in programs if isinstance(program, IndirectObject))


def _look_through(stream: Any) -> None:
    """Read a picture or a font to its end, a little at a time.

    Raises:
        ValueError: it is damaged, or cut short.
    """
    written = stream.get("/Filter")
    if written in ("/FlateDecode", ["/FlateDecode"]):
        _unfold(stream._data)
    elif written in ("/DCTDecode", ["/DCTDecode"]) and stream._data[:2] != b"\xff\xd8":
        raise ValueError
    elif written in ("/DCTDecode", ["/DCTDecode"]) and stream["/Width"] * stream["/Height"] < LARGE:
        _decode(stream._data)


def _unfold(data: bytes) -> None:
    unfolding = zlib.decompressobj()
    try:
        while data and not unfolding.eof:
            unfolding.decompress(data, STEP)
            data = unfolding.unconsumed_tail
    except zlib.error as damage:
        if CHECKSUM not in str(damage):
            raise ValueError from damage


def _decode(data: bytes) -> None:
    """A JPEG, at an eighth of its size, which reads it to its end."""
    from PIL import Image

    with Image.open(io.BytesIO(data), formats=("JPEG",)) as image:
        image.draft(None, (image.width // 8, image.height // 8))
        image.load()


def _refuse(message: str, remedy: str) -> NoReturn:
    raise ShelfFileError((Problem(message, remedy, field=("file",)),))
