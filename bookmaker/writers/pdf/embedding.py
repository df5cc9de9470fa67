"""The font objects of a PDF: the program cut down to what was set, its measures, and the way back to text."""

from __future__ import annotations

import io
import zlib
from collections.abc import Iterable
from typing import Any

from fontTools.fontBuilder import FontBuilder
from fontTools.pens.filterPen import DecomposingFilterPen
from fontTools.pens.t2CharStringPen import T2CharStringPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from reportlab.pdfbase.pdfdoc import PDFArrayCompact, PDFDictionary, PDFName, PDFStream, PDFString

from ...ground.problems import Problem, ShelfFileError
from ...ground.typefaces import Commands
from .fonts import EmbeddedFont

__all__ = ["compressed", "embed"]

TO_UNICODE = """/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <FFFF>
endcodespacerange
{blocks}
endcmap
CMapName currentdict /CMap defineresource pop
end
end
"""


def embed(document: Any, font: EmbeddedFont, name: str) -> None:
    """Add a font to reportlab's document under the name that the pages use."""
    base, is_truetype = PDFName(_postscript_name(font)), _is_truetype(font)
    descriptor = PDFDictionary(
        _measures(font)
        | {
            "Type": PDFName("FontDescriptor"),
            "FontName": base,
            "FontBBox": PDFArrayCompact(_box(font)),
            "FontFile2" if is_truetype else "FontFile3": document.Reference(_program_stream(font)),
        }
    )
    widths = [font.width(use[0]) if use else 0 for use in font.uses]
    descendant = {
        "Type": PDFName("Font"),
        "Subtype": PDFName("CIDFontType2" if is_truetype else "CIDFontType0"),
        "BaseFont": base,
        "CIDSystemInfo": PDFDictionary(
            {"Registry": PDFString("Adobe"), "Ordering": PDFString("Identity"), "Supplement": 0}
        ),
        "FontDescriptor": document.Reference(descriptor),
        "W": PDFArrayCompact([0, PDFArrayCompact(widths)]),
    }
    if is_truetype:
        descendant["CIDToGIDMap"] = PDFName("Identity")
    entries = {
        "Type": PDFName("Font"),
        "Subtype": PDFName("Type0"),
        "BaseFont": base,
        "Encoding": PDFName("Identity-H"),
        "DescendantFonts": PDFArrayCompact([document.Reference(PDFDictionary(descendant))]),
        "ToUnicode": document.Reference(compressed(_to_unicode(font))),
    }
    document.Reference(PDFDictionary(entries), name)


def compressed(content: bytes, **entries: Any) -> PDFStream:
    """A stream with its content deflated at once, so that nothing is kept at full length."""
    return PDFStream(PDFDictionary(entries | {"Filter": PDFName("FlateDecode")}), zlib.compress(content))


def _is_truetype(font: EmbeddedFont) -> bool:
    return "glyf" in font.tables


def _program_stream(font: EmbeddedFont) -> PDFStream:
    """The font program to embed, glyphs in the order of their codes: a TrueType file, or a bare CFF table.

    A CFF without CIDs of its own takes them for glyph numbers (ISO 32000-1, 9.7.4.2), which they are.

    Raises:
        ShelfFileError: the outlines cannot be read.
    """
    try:
        return _built(font)
    except Exception:  # damaged outlines can make their reader raise anything
        remedy = "fetch the font file again from where it came"
        raise ShelfFileError((Problem(f"{font.typeface.path.name} is damaged", remedy),)) from None


def _built(font: EmbeddedFont) -> PDFStream:
    names = [".notdef", *(f"c{code}" for code in range(1, len(font.uses)))]
    builder = FontBuilder(font.typeface.units_per_em, isTTF=_is_truetype(font))
    builder.setupGlyphOrder(names)
    if _is_truetype(font):
        program = _truetype(builder, font, names)
        return compressed(program, Length1=len(program))
    return compressed(_cff(builder, font, names), Subtype=PDFName("CIDFontType0C"))


def _truetype(builder: FontBuilder, font: EmbeddedFont, names: list[str]) -> bytes:
    pens = {name: TTGlyphPen(None) for name in names}
    _draw(font, pens.values())
    drawn = {name: pen.glyph() for name, pen in pens.items()}
    builder.setupGlyf(drawn)
    metrics = {}
    for name, use in zip(names, font.uses, strict=True):
        metrics[name] = (round(font.typeface.advance(use[0])) if use else 0, drawn[name].xMin)
    builder.setupHorizontalMetrics(metrics)
    header = font.tables["hhea"]
    builder.setupHorizontalHeader(ascent=header.ascent, descent=header.descent)
    # The dates of the font itself, for nothing may depend on today's.
    builder.updateHead(created=font.tables["head"].created, modified=font.tables["head"].modified)
    file = io.BytesIO()
    builder.font.save(file)
    return file.getvalue()


def _cff(builder: FontBuilder, font: EmbeddedFont, names: list[str]) -> bytes:
    pens = {name: T2CharStringPen(None, None) for name in names}
    _draw(font, pens.values())
    drawn = {name: pen.getCharString() for name, pen in pens.items()}
    builder.setupCFF(_postscript_name(font), {}, drawn, {})
    table: bytes = builder.font["CFF "].compile(builder.font)
    return table


def _draw(font: EmbeddedFont, pens: Iterable[Any]) -> None:
    """Draw the glyph of every code with the pen of its turn, composed ones as plain outlines."""
    glyphs = font.tables.getGlyphSet()
    for use, pen in zip(font.uses, pens, strict=True):
        if use and font.typeface.redrawn:
            _trace(font.typeface.outline(use[0]), pen)
        elif use:
            glyphs[font.tables.getGlyphName(use[0])].draw(DecomposingFilterPen(pen, glyphs))


def _trace(outline: Commands, pen: Any) -> None:
    """Draw an outline that is not the one in the font file with a pen of fontTools."""
    draw = {"M": pen.moveTo, "L": pen.lineTo, "Q": pen.qCurveTo, "C": pen.curveTo}
    for kind, *numbers in outline:
        if kind == "Z":
            pen.closePath()
        else:
            draw[str(kind)](*zip(numbers[::2], numbers[1::2], strict=True))


def _postscript_name(font: EmbeddedFont) -> str:
    """The name of the embedded font: the typeface's own after a tag made of what is in it (9.6.4)."""
    cut = font.typeface.digest if font.typeface.redrawn or font.typeface.wider else ""
    letters, rest = "", zlib.crc32(f"{font.uses!r}{cut}".encode())
    for _ in range(6):
        rest, letter = divmod(rest, 26)
        letters += chr(ord("A") + letter)
    own = font.tables["name"].getDebugName(6) or font.typeface.name
    return f"{letters}+" + "".join(char for char in own if char.isascii() and (char.isalnum() or char == "-"))


def _measures(font: EmbeddedFont) -> dict[str, Any]:
    """The numbers of a font descriptor (9.8): thousandths of the em, and flags."""
    face, tables = font.typeface, font.tables
    slant = round(tables["post"].italicAngle) if "post" in tables else 0
    weight = tables["OS/2"].usWeightClass if "OS/2" in tables else 400
    return {
        # A font with codes of its own counts as symbolic (4); italic adds 64.
        "Flags": 68 if slant else 4,
        "Ascent": round(1000 * face.ascent),
        "Descent": round(1000 * face.descent),
        "CapHeight": round(1000 * face.cap_height),
        "XHeight": round(1000 * face.x_height),
        "ItalicAngle": slant,
        # No table holds the stem; a fifth of the weight is near it: 80 for a roman, 140 for a bold.
        "StemV": round(weight / 5 + 2000 * face.thicker),
    }


def _box(font: EmbeddedFont) -> list[int]:
    """The rectangle around all glyphs, in thousandths of the em: of the whole typeface, if it is as in its file."""
    face = font.typeface
    if not face.redrawn:
        head = font.tables["head"]
        return [round(1000 / face.units_per_em * side) for side in (head.xMin, head.yMin, head.xMax, head.yMax)]
    used = [use[0] for use in font.uses if use]
    (left, right), (bottom, top) = (list(zip(*map(of, used), strict=True)) for of in (face.breadth, face.extent))
    return [round(1000 * side) for side in (min(left), min(bottom), max(right), max(top))]


def _to_unicode(font: EmbeddedFont) -> bytes:
    """The CMap that gives the text back (9.10.3), at most 100 codes a block.

    A glyph that adds nothing to the text of the one before is given no characters, rather than left out:
    readers would make something up for it.
    """
    said = [(code, use[1]) for code, use in enumerate(font.uses) if use]
    lines = []
    for start in range(0, len(said), 100):
        block = said[start : start + 100]
        lines.append(f"{len(block)} beginbfchar")
        lines += [f"<{code:04X}> <{text.encode('utf-16-be').hex().upper()}>" for code, text in block]
        lines.append("endbfchar")
    return TO_UNICODE.format(blocks="\n".join(lines)).encode()
