"""Typefaces built for tests."""

from __future__ import annotations

import unicodedata
from itertools import pairwise
from pathlib import Path
from typing import Any

from fontTools.fontBuilder import FontBuilder
from fontTools.misc.psCharStrings import T2CharString
from fontTools.pens.t2CharStringPen import T2CharStringPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont, newTable

from bookmaker.ground.typefaces import bundled

__all__ = ["LETTERS", "calls_upon_calls", "cff_font", "font_of_boxes", "without_end"]

LETTERS = "אבגדהוזחטיכלמנסעפצקרשתםןץףך abcdefghijklmnopqrstuvwxyz0123456789.,-•"

BIAS = 107
"""What is taken off the number of a subroutine where there are few (Adobe Technical Note 5176, section 16)."""


def cff_font(path: Path, chars: str) -> Path:
    """A font file with the given letters of the text face, drawn as cubic curves (CFF)."""
    source = TTFont(bundled("text").path)
    glyphs, names = source.getGlyphSet(), {ord(char): source.getBestCmap()[ord(char)] for char in chars}
    order = [".notdef", *names.values()]
    builder = FontBuilder(1000, isTTF=False)
    builder.setupGlyphOrder(order)
    builder.setupCharacterMap(names)
    drawn = {}
    for name in order:
        pen = T2CharStringPen(glyphs[name].width, glyphs)
        glyphs[name].draw(pen)
        drawn[name] = pen.getCharString()
    builder.setupCFF("Trial", {}, drawn, {})
    builder.setupHorizontalMetrics({name: (glyphs[name].width, 0) for name in order})
    builder.setupHorizontalHeader(ascent=1069, descent=-293)
    builder.setupOS2(sTypoAscender=1069)
    builder.setupNameTable({"familyName": "Trial", "styleName": "Regular", "psName": "Trial-Regular"})
    builder.save(path)
    return path


def calls_upon_calls(path: Path, depth: int = 9, times: int = 200) -> Path:
    """A letter drawn by a subroutine that calls another so often, and that a third, and so on (CFF)."""
    cff_font(path, "abcdefxHTide ")
    tables = TTFont(path, recalcBBoxes=False)
    letters = tables["CFF "].cff
    drawn = letters[0].CharStrings["x"]
    drawn.decompile()
    drawn.program = [100, 0, "rmoveto", depth - 1 - BIAS, "callgsubr", "endchar"]
    for number in range(depth):
        steps = [number - 1 - BIAS, "callgsubr"] * times if number else [10, 10, "rlineto"]
        routine = T2CharString(program=[*steps, "return"], private=letters[0].Private, globalSubrs=letters.GlobalSubrs)
        letters.GlobalSubrs.append(routine)
    tables.save(path)
    assert path.stat().st_size < 10_000
    return path


def font_of_boxes(path: Path, letters: str = LETTERS, features: str = "", joined: tuple[str, ...] = ()) -> Path:
    """A typeface in which every letter is a box, half an em wide; marks take no room, wide signs a whole em.

    The box stands at the left, in what opens a bracket or a quotation at the right.

    `features` are written in the language of feature files, with glyphs called such as u0061 and those `joined`.
    """
    names = [".notdef", *(f"u{ord(letter):04X}" for letter in letters), *joined]
    builder = FontBuilder(1000, isTTF=True)
    builder.setupGlyphOrder(names)
    builder.setupCharacterMap({ord(letter): f"u{ord(letter):04X}" for letter in letters})
    blank, box = TTGlyphPen(None).glyph(), _box()
    wide = {f"u{ord(letter):04X}" for letter in letters if unicodedata.east_asian_width(letter) in {"W", "F"}}
    opening = {f"u{ord(letter):04X}" for letter in letters if unicodedata.category(letter) == "Ps"} & wide
    drawn = {name: blank if name == "u0020" else _box(500) if name in opening else box for name in names}
    builder.setupGlyf(drawn)
    marks = {f"u{ord(letter):04X}" for letter in letters if unicodedata.category(letter) == "Mn"}
    widths = {name: 0 if name in marks else 1000 if name in wide else 500 for name in names}
    builder.setupHorizontalMetrics({name: (widths[name], 550 if name in opening else 50) for name in names})
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable({"familyName": "Boxes", "styleName": "Regular"})
    builder.setupOS2(sxHeight=500, sCapHeight=500)
    builder.setupPost()
    if features:
        builder.addOpenTypeFeatures(features)
    builder.save(path)
    return path


def without_end(path: Path, depth: int = 12, times: int = 8) -> Path:
    """A small typeface whose one letter is made of so many of a glyph that is made of so many of another, and so on."""
    names = [".notdef", *(f"part{number}" for number in range(depth)), "x"]
    glyphs = {".notdef": TTGlyphPen(None).glyph(), "part0": _box()}
    for below, name in pairwise(names[1:]):
        pen = TTGlyphPen(dict.fromkeys(names))
        for number in range(times):
            pen.addComponent(below, (1, 0, 0, 1, number, 0))
        glyphs[name] = pen.glyph()
    builder = FontBuilder(1000, isTTF=True)
    builder.setupGlyphOrder(names)
    builder.setupCharacterMap({ord("x"): "x"})
    builder.font["glyf"] = table = newTable("glyf")
    table.glyphs, table.glyphOrder = glyphs, names
    builder.font["loca"] = newTable("loca")
    for glyph in glyphs.values():
        glyph.xMin = glyph.yMin = 0
        glyph.xMax = glyph.yMax = 500
    builder.setupHorizontalMetrics(dict.fromkeys(names, (500, 0)))
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable({"familyName": "Without End", "styleName": "Regular"})
    builder.setupOS2(sxHeight=500, sCapHeight=500)
    builder.setupPost()
    builder.font.recalcBBoxes = False
    builder.save(path)
    return path


def _box(left: int = 0) -> Any:
    pen = TTGlyphPen(None)
    pen.moveTo((left + 50, 0))
    pen.lineTo((left + 50, 500))
    pen.lineTo((left + 450, 500))
    pen.lineTo((left + 450, 0))
    pen.closePath()
    return pen.glyph()
