"""Which entries of an imported object are copied: those that make what it shows, and no others (ISO 32000-1).

Files say much more of themselves: where they came from, what is to happen when they are opened or printed, which
other files belong to them. Nothing of it can be reached from what is kept.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from enum import Enum
from typing import Any

__all__ = ["Sort", "kept"]


class Sort(Enum):
    """What the keys of a dictionary are: of an object, of resources by their category, or names of the file's own."""

    OBJECT = "object"
    RESOURCES = "resources"
    NAMES = "names"


RESOURCES = "ExtGState ColorSpace Pattern Shading XObject Font Properties ProcSet"
"""Categories of resources (table 33)."""

ANY = """
Type Subtype Name Filter DecodeParms DL Predictor Colors BitsPerComponent Columns EarlyChange K EndOfLine
EncodedByteAlign Rows EndOfBlock BlackIs1 DamagedRowsBeforeError JBIG2Globals ColorTransform
"""
"""Of any object, of streams and their filters (tables 5, 8, 11, 13)."""

DRAWINGS = """
BBox Matrix Resources Group FormType S CS I Width Height ColorSpace Intent ImageMask Mask Decode Interpolate SMask
SMaskInData Matte OC OCGs
"""
"""Of forms, groups and pictures (tables 89, 95, 96, 147)."""

COLOURS = """
N Alternate Range WhitePoint BlackPoint Gamma Colorants Process Components MixingHints Solidities PrintingOrder DotGain
PatternType PaintType TilingType XStep YStep Shading ExtGState ShadingType Background AntiAlias Domain Function Coords
Extend BitsPerCoordinate BitsPerFlag VerticesPerRow FunctionType Size BitsPerSample Order Encode C0 C1 Functions Bounds
"""
"""Of colours, patterns, shadings and functions (tables 38 to 42, 63 to 84)."""

STATES = """
LW LC LJ ML D RI OP op OPM Font BG BG2 UCR UCR2 TR TR2 HT FL SM SA BM CA ca AIS TK G BC HalftoneType Frequency Angle
SpotFunction AccurateScreens TransferFunction Xsquare Ysquare Width2 Height2
"""
"""Of states of graphics, soft masks and halftones (tables 58, 130 to 134, 144)."""

FONTS = """
BaseFont FirstChar LastChar Widths FontDescriptor Encoding ToUnicode FontBBox FontMatrix CharProcs DescendantFonts
CIDSystemInfo Registry Ordering Supplement DW W DW2 W2 CIDToGIDMap FontName FontFamily FontStretch FontWeight Flags
ItalicAngle Ascent Descent Leading CapHeight XHeight StemV StemH AvgWidth MaxWidth MissingWidth FontFile FontFile2
FontFile3 CharSet Style Panose Lang FD CIDSet Length1 Length2 Length3 BaseEncoding Differences CMapName WMode UseCMap
"""
"""Of fonts, their descriptors, encodings and maps of characters (tables 111 to 124)."""

NAMED = "CharProcs Colorants Solidities DotGain FD"
"""Keys under which the file gives names of its own: to glyphs, to colorants, to classes of glyphs."""


def _keys(words: str) -> frozenset[str]:
    return frozenset(f"/{word}" for word in words.split())


CATEGORIES, NAMES_UNDER = _keys(RESOURCES), _keys(NAMED)
KEPT = _keys(ANY) | _keys(DRAWINGS) | _keys(COLOURS) | _keys(STATES) | _keys(FONTS)

BY_COLORANTS = 5
"""The type of halftones that are given by the names of their colorants (10.5.5.6)."""


def kept(items: Iterable[tuple[str, Any]], sort: Sort) -> Iterator[tuple[str, Any, Sort]]:
    """The entries of a dictionary that are copied, each with the sort of what stands under its key."""
    entries = list(items)
    if sort is Sort.OBJECT and ("/HalftoneType", BY_COLORANTS) in entries:
        sort = Sort.NAMES
    for key, value in entries:
        if sort is Sort.NAMES:
            yield key, value, Sort.OBJECT
        elif sort is Sort.RESOURCES and key in CATEGORIES:
            yield key, value, Sort.NAMES
        elif sort is Sort.OBJECT and key in KEPT:
            under = Sort.NAMES if key in NAMES_UNDER else Sort.RESOURCES if key == "/Resources" else Sort.OBJECT
            yield key, value, under
