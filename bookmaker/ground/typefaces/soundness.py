"""A font file looked over before it is used: its tables are there, whole, and of a size that their purpose explains.

What is read here is read by hand, in time that the size of the file bounds: readers of fonts believe what tables say of
themselves, and a kilobyte of them can ask for hours. Names and forms are those of OpenType 1.9.
"""

from __future__ import annotations

import struct
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

__all__ = ["UnsoundFontError", "look_over"]

MOST_TABLES = 100
"""Fonts have twenty or thirty."""

MOST_NAMES = 1_000_000
"""Bytes of all that a font says of itself, each text counted wherever it is used."""

EM = range(16, 16_385)
"""Units of an em (`head`)."""

HIGHEST = 10
"""So many ems at most lie between ascent and descent; in those of books there is one and a half."""

MOST_DRAWN = 50_000
"""Bytes of the parts of one glyph, each counted wherever it is used; accented letters come to a few hundred."""

MOST_NESTED = 20
"""So deep lie parts within parts; two or three are usual."""

NESTED = "is damaged: a letter is made of itself, or of parts of parts without end"

NEEDED = ("head", "hhea", "hmtx", "maxp", "cmap", "name")

COMPONENTS_LEFT, WORDS, SCALE, TWO_SCALES, FOUR_SCALES = 0x20, 0x01, 0x08, 0x40, 0x80
"""Flags of a component (`glyf`)."""


class UnsoundFontError(Exception):
    """What is wrong with a font, in a few words that go on after its name."""


def look_over(data: bytes) -> None:
    """Look a TrueType or OpenType font over.

    Raises:
        UnsoundFontError: it cannot be used.
    """
    try:
        tables = _tables(data)
        if lost := [tag for tag in NEEDED if tag not in tables]:
            raise UnsoundFontError(f"is damaged: it has no table {lost[0]}")
        glyphs = _measures(tables)
        _names(tables["name"])
        if "glyf" in tables and "loca" in tables:
            _drawn(tables, glyphs)
    except (struct.error, IndexError):
        raise UnsoundFontError("is damaged: a table ends too soon") from None


def _tables(data: bytes) -> Mapping[str, bytes]:
    """The tables of a font by their tags."""
    (count,) = struct.unpack_from(">H", data, 4)
    if count > MOST_TABLES:
        raise UnsoundFontError("is damaged: it has too many tables")
    found = {}
    for at in range(12, 12 + 16 * count, 16):
        tag, _, start, length = struct.unpack_from(">4sLLL", data, at)
        if start + length > len(data):
            raise UnsoundFontError("is damaged: it is cut short")
        found[tag.decode("latin-1")] = data[start : start + length]
    return found


def _measures(tables: Mapping[str, bytes]) -> int:
    """The number of glyphs; measures that no letter could be set with are refused."""
    (em,) = struct.unpack_from(">H", tables["head"], 18)
    if em not in EM:
        raise UnsoundFontError(f"is damaged: an em of {em} units")
    ascent, descent = struct.unpack_from(">hh", tables["hhea"], 4)
    if ascent <= 0 or descent > ascent or ascent - descent > HIGHEST * em:
        raise UnsoundFontError(f"is damaged: its letters reach from {descent} to {ascent} units")
    glyphs = int.from_bytes(tables["maxp"][4:6])
    wide = int.from_bytes(tables["hhea"][34:36])
    if not 1 <= wide <= glyphs:
        raise UnsoundFontError(f"is damaged: {wide} widths for {glyphs} glyphs")
    if len(tables["hmtx"]) < 4 * wide + 2 * (glyphs - wide):
        raise UnsoundFontError("is damaged: it does not say how wide all letters are")
    return glyphs


def _names(table: bytes) -> None:
    """Names may share their bytes, so few bytes can say the same without end."""
    (count,) = struct.unpack_from(">H", table, 2)
    said = sum(struct.unpack_from(">H", table, 6 + 12 * number + 8)[0] for number in range(count))
    if said > MOST_NAMES:
        raise UnsoundFontError("is damaged: its names have no end")


def _drawn(tables: Mapping[str, bytes], glyphs: int) -> None:
    """Glyphs made of glyphs made of glyphs: how much they come to, and that none is made of itself."""
    places = _places(tables, glyphs)
    made_of = [[*_components(tables["glyf"][start:end])] for start, end in places]
    sizes: dict[int, tuple[int, int]] = {}
    for number in range(glyphs):
        ahead = [number]
        while ahead:
            parts = [part for part in made_of[ahead[-1]] if part < glyphs]
            if new := [part for part in parts if part not in sizes]:
                ahead.append(new[0])
            else:
                start, end = places[ahead[-1]]
                sizes[ahead.pop()] = _size(end - start, [sizes[part] for part in parts])
            if len(ahead) > MOST_NESTED:
                raise UnsoundFontError(NESTED)


def _size(own: int, parts: Sequence[tuple[int, int]]) -> tuple[int, int]:
    """How many bytes a glyph comes to with all its parts, and how deep these lie in one another."""
    drawn, deep = own + sum(drawn for drawn, _ in parts), 1 + max((deep for _, deep in parts), default=0)
    if parts and drawn > MOST_DRAWN:
        raise UnsoundFontError("is damaged: a letter is made of too many parts")
    if deep > MOST_NESTED:
        raise UnsoundFontError(NESTED)
    return drawn, deep


def _places(tables: Mapping[str, bytes], glyphs: int) -> list[tuple[int, int]]:
    """Where each glyph stands in `glyf`."""
    (long,) = struct.unpack_from(">h", tables["head"], 50)
    form, step = ("L", 1) if long else ("H", 2)
    starts = [step * at for at in struct.unpack_from(f">{glyphs + 1}{form}", tables["loca"])]
    if starts != sorted(starts) or starts[-1] > len(tables["glyf"]):
        raise UnsoundFontError("is damaged: its outlines are not where it says")
    return list(pairwise(starts))


def _components(glyph: bytes) -> Iterator[int]:
    """The numbers of the glyphs that one is made of; none if it is drawn."""
    if len(glyph) < 10 or struct.unpack_from(">h", glyph)[0] >= 0:
        return
    at, flags = 10, COMPONENTS_LEFT
    while flags & COMPONENTS_LEFT:
        flags, number = struct.unpack_from(">HH", glyph, at)
        yield number
        at += 8 if flags & WORDS else 6
        at += 2 if flags & SCALE else 4 if flags & TWO_SCALES else 8 if flags & FOUR_SCALES else 0
