"""Text files as bytes: which encoding a file has, told by its mark or its bytes, and the way back to the same."""

from __future__ import annotations

import codecs
from dataclasses import dataclass, field, replace

__all__ = ["Encoded", "NotText", "decoded"]

MARKS = {
    "utf-8": codecs.BOM_UTF8,
    "utf-16-le": codecs.BOM_UTF16_LE,
    "utf-16-be": codecs.BOM_UTF16_BE,
}
"""The byte order marks that a text may begin with."""

LOOKED_AT = 2000
"""So many bytes are enough to tell which half of each letter is zero."""

NAMES = {"utf-8": "UTF-8", "utf-16-le": "UTF-16", "utf-16-be": "UTF-16", "cp1252": "the Windows encoding, cp1252"}


class NotText(ValueError):  # noqa: N818 - it reads as a sentence where it is caught
    """Bytes that are no text: the encoding they seem to have, and where they break it."""

    def __init__(self, name: str, at: int) -> None:
        super().__init__(name, at)
        self.name, self.at = name, at


@dataclass(frozen=True, slots=True)
class Encoded:
    """The text of a file, and how its letters become bytes."""

    text: str
    encoding: str = "utf-8"
    mark: bytes = field(default=b"", repr=False)

    @property
    def name(self) -> str:
        """The encoding as makers know it."""
        return NAMES[self.encoding]

    def data(self) -> bytes:
        """The bytes of the file.

        Raises:
            UnicodeEncodeError: the encoding has no bytes for a letter.
        """
        return self.mark + self.text.encode(self.encoding)

    def with_text(self, text: str) -> Encoded:
        """Another text in the same encoding."""
        return replace(self, text=text)


def decoded(data: bytes, *, foreign: bool = False) -> Encoded:
    """The text in the bytes of a file; `foreign`: it may be in UTF-16, or in the encoding of Windows, too.

    >>> decoded("Fähre".encode("cp1252"), foreign=True)
    Encoded(text='Fähre', encoding='cp1252')

    Raises:
        NotText: it is in no encoding that is read.
    """
    encoding = _marked(data)
    if encoding is None and foreign and b"\0" in data:
        encoding = _of_halves(data)
    if encoding is None or (encoding != "utf-8" and not foreign):
        encoding = "utf-8"
    mark = MARKS[encoding] if data.startswith(MARKS[encoding]) else b""
    try:
        text = data[len(mark) :].decode(encoding)
        if "\0" in text:
            raise NotText(NAMES[encoding], data.index(b"\0"))
        return Encoded(text, encoding, mark)
    except UnicodeDecodeError as trouble:
        if encoding == "utf-8" and foreign and not mark and b"\0" not in data:
            return _windows(data, trouble.start)
        raise NotText(NAMES[encoding], len(mark) + trouble.start) from None


def _windows(data: bytes, at: int) -> Encoded:
    try:
        return Encoded(data.decode("cp1252"), "cp1252")
    except UnicodeDecodeError:
        raise NotText(NAMES["utf-8"], at) from None


def _marked(data: bytes) -> str | None:
    return next((name for name, mark in MARKS.items() if data.startswith(mark)), None)


def _of_halves(data: bytes) -> str | None:
    """UTF-16 without a mark: of most letters of Europe one of the two bytes is zero."""
    start = data[: LOOKED_AT - LOOKED_AT % 2]
    low, high = start[::2].count(0), start[1::2].count(0)
    if len(data) % 2 or max(low, high) * 4 < len(start):
        return None
    return "utf-16-le" if high > low else "utf-16-be"
