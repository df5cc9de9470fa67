"""Typefaces built for tests."""

from __future__ import annotations

from pathlib import Path

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.t2CharStringPen import T2CharStringPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib import TTFont

from bookmaker.ground.typefaces import bundled

__all__ = ["LETTERS", "cff_font", "font_of_boxes"]

LETTERS = "אבגדהוזחטיכלמנסעפצקרשתםןץףך abcdefghijklmnopqrstuvwxyz0123456789.,-•"


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


def font_of_boxes(path: Path, letters: str = LETTERS) -> Path:
    """A typeface in which every letter is a box, half an em wide."""
    names = [".notdef", *(f"u{ord(letter):04X}" for letter in letters)]
    pen = TTGlyphPen(None)
    pen.moveTo((50, 0))
    pen.lineTo((50, 500))
    pen.lineTo((450, 500))
    pen.lineTo((450, 0))
    pen.closePath()
    builder = FontBuilder(1000, isTTF=True)
    builder.setupGlyphOrder(names)
    builder.setupCharacterMap({ord(letter): f"u{ord(letter):04X}" for letter in letters})
    blank = TTGlyphPen(None).glyph()
    box = pen.glyph()
    builder.setupGlyf({name: blank if name == "u0020" else box for name in names})
    builder.setupHorizontalMetrics(dict.fromkeys(names, (500, 50)))
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable({"familyName": "Boxes", "styleName": "Regular"})
    builder.setupOS2(sxHeight=500, sCapHeight=500)
    builder.setupPost()
    builder.save(path)
    return path
