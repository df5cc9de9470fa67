"""Pictures that stand among the operators of a page (ISO 32000-1, 8.9.7): whether they are whole.

A viewer that does not find where such a picture ends takes its pixels for operators, and the operators after it for
pixels: some of the page is lost without a word.
"""

from __future__ import annotations

import re
import zlib
from collections.abc import Mapping

__all__ = ["check_inline_pictures"]

TEXT = rb"\((?:[^()\\]++|\\.|\((?:[^()\\]++|\\.|\((?:[^()\\]++|\\.)*+\))*+\))*+\)"
"""A text in its brackets, and brackets in it."""

NAME = rb"/[^\s/\[\]()<>{}%]*+"

VALUE = rb"(?:%b|\[(?:[^\[\]()]++|%b|\[[^\[\]()]*+\])*+\]|<<.*?>>|<[^<>]*+>|%b|[^\s/\[\]()<>]++)" % (NAME, TEXT, TEXT)

PICTURE = re.compile(rb"%%[^\r\n]*+|%b|(?<![^\s\])>}])(?P<picture>BI)(?=[\s/])" % TEXT, re.DOTALL)
"""A remark or a text, in which the letters BI mean nothing; or the beginning of a picture."""

HEAD = re.compile(rb"(?P<keys>(?:\s*+%b\s*+%b)*+)\s*+ID\s?" % (NAME, VALUE), re.DOTALL)
"""What stands between the beginning and the pixels: keys, each with its value, and one blank."""

KEY = re.compile(rb"(%b)\s*+(%b)" % (NAME, VALUE), re.DOTALL)

END = re.compile(rb"(?<=\s)EI(?![^\s\]/<>])")

AFTER = re.compile(rb"\s{0,8}EI(?![^\s\]/<>])")
"""What follows pixels whose number is known; some programs leave the blank out, and some write more."""

SHORT = {b"/Width": b"/W", b"/Height": b"/H", b"/BitsPerComponent": b"/BPC", b"/ColorSpace": b"/CS", b"/Filter": b"/F"}
SHORT |= {b"/ImageMask": b"/IM", b"/FlateDecode": b"/Fl"}
"""Long names, each with the short one (tables 93 and 94)."""

INKS = {b"/G": 1, b"/DeviceGray": 1, b"/RGB": 3, b"/DeviceRGB": 3, b"/CMYK": 4, b"/DeviceCMYK": 4}

INDEXED = re.compile(rb"\[\s*+/I(?:ndexed)?+[\s/\[]")

MOST_PIXELS = 50_000_000
"""The standard asks for pictures of less than 4 kB."""

STEP = 65_536


def check_inline_pictures(content: bytes) -> None:
    """Look through the pictures among the operators of a page or a form.

    Raises:
        ValueError: one does not end, or has fewer pixels than it says.
    """
    at = 0 if b"BI" in content else len(content)
    while found := PICTURE.search(content, at):
        at = found.end()
        if found["picture"]:
            if not (head := HEAD.match(content, at)):
                raise ValueError
            keys = {SHORT.get(key, key): value for key, value in KEY.findall(head["keys"])}
            at = _end(content, head.end(), keys)


def _end(content: bytes, start: int, keys: Mapping[bytes, bytes]) -> int:
    """Where the operators go on after the pixels that start here."""
    filters = [SHORT.get(name, name) for name in re.findall(NAME, keys.get(b"/F", b""))]
    length = _length(keys)
    if filters[:1] == [b"/Fl"]:
        return _after(content, _unfolded(content, start, length if len(filters) == 1 else 0), 0)
    return _after(content, start, 0 if filters else length)


def _after(content: bytes, start: int, length: int) -> int:
    """Where the operators go on after pixels that start here and are so long, or a little longer."""
    found = AFTER.match(content, start + length)
    if not found and not END.search(content, start, start + length):
        found = END.search(content, start + length)
    if not found:
        raise ValueError
    return found.end()


def _length(keys: Mapping[bytes, bytes]) -> int:
    """How many bytes the pixels take at least: one ink a pixel where that hangs on what the page calls a colour."""
    width, height = int(keys.get(b"/W", b"0")), int(keys.get(b"/H", b"0"))
    if not 0 < width * height < MOST_PIXELS:
        raise ValueError
    mask = keys.get(b"/IM") == b"true"
    depth = 1 if mask else int(keys.get(b"/BPC", b"1"))
    inks = 1 if mask or INDEXED.match(keys.get(b"/CS", b"")) else INKS.get(keys.get(b"/CS", b""), 1)
    return -(-width * depth * inks // 8) * height


def _unfolded(content: bytes, start: int, length: int) -> int:
    """Where deflated pixels end.

    Raises:
        ValueError: they are damaged, fewer than they should be, or very many.
    """
    unfolding, at, size = zlib.decompressobj(), start, 0
    while not unfolding.eof:
        data = unfolding.unconsumed_tail or content[at : (at := at + STEP)]
        if not data:
            raise ValueError
        try:
            size += len(unfolding.decompress(data, STEP))
        except zlib.error:
            raise ValueError from None
        if size > MOST_PIXELS:
            raise ValueError
    if size < length:
        raise ValueError
    return min(at, len(content)) - len(unfolding.unused_data)
