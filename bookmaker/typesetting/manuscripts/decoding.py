"""Text files decoded: plain text in UTF-8, and what else a file may be that was meant for one."""

from __future__ import annotations

import codecs
from typing import NoReturn

from ...ground.problems import Problem, ShelfFileError

__all__ = ["SAVE_AS_TEXT", "decoded"]

OTHER_FORMATS = {
    b"PK\x03\x04": "a word processor's document or an archive",
    b"\xd0\xcf\x11\xe0": "a word processor's document",
    b"{\\rtf": "a word processor's document",
    b"%PDF": "a PDF",
    b"\xff\xd8\xff": "a picture",
    b"\x89PNG": "a picture",
}
"""How files begin that are often taken for plain text, and what they are."""

SAVE_AS_TEXT = "save it as plain text in UTF-8"


def decoded(name: str, data: bytes) -> str:
    """The text that a file of a name holds.

    Raises:
        ShelfFileError: it is no plain text in UTF-8.
    """
    what = next((what for start, what in OTHER_FORMATS.items() if data.startswith(start)), "")
    if what:
        also = ", or write kind: pdf" if what == "a PDF" else ""
        _refuse(f"{name} is {what}, not plain text", SAVE_AS_TEXT + also)
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        _refuse(f"{name} is saved as UTF-16", SAVE_AS_TEXT)
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as failure:
        line = data.count(b"\n", 0, failure.start) + 1
        _refuse(
            f"{name} is not UTF-8: byte {failure.start + 1} (line {line}) is 0x{data[failure.start]:02X}",
            SAVE_AS_TEXT,
        )


def _refuse(message: str, remedy: str) -> NoReturn:
    raise ShelfFileError((Problem(message, remedy, field=("file",)),))
