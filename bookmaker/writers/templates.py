"""Templates for covers that the maker draws: each flat at its exact size, with its folds and what is safe."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path as FilePath

from ..ground.art import Filled, Group, Stroked, Written
from ..ground.drawing import WHITE, Art, Colour, Pen
from ..ground.geometry import Path, Point, Rect, Size, Transform
from ..ground.typefaces import bundled, set_line
from ..ground.units import print_mm
from ..sheets.flat import Flat, Role
from ..sheets.marks import CUT, FOLD_PENS, PERFORATION, SCORE
from ..typesetting.stand_ins import face_with
from .pdf import PdfFile
from .pdf_pixels import rendered_page

__all__ = ["write_template"]

TEMPLATE_DPI = 600.0
"""Dots per inch of the PNG: as fine as the print."""

SAFE_FROM_FOLD, SAFE_FROM_EDGE = 0.5, 1.0
"""Nothing that matters should lie nearer to a fold or an edge, in mm: a fold may be off, a cut may be too."""

IN_BLEED = 0.7
"""How large the type in the bleed is, as a share of it."""

TOLD = 1.0
"""Size of the lines that say whose template it is, in mm."""

BLEED, NOTE = Colour(0.9, 0.9, 0.9), Colour(0.25, 0.25, 0.25)
SAFE = Pen(0.06, NOTE, (0.06, 0.3))
"""Round what is safe: dots far apart, like no other line."""

FACES = (Role.FRONT, Role.SPINE, Role.BACK)


def write_template(folder: FilePath, stem: str, title: str, flats: list[Flat]) -> list[str]:
    """Write a PDF with a page for each flat, and a PNG of each page; returns their names.

    A page is as large as the print: the flat and its bleed. Where there are several, each says in its bleed which
    piece it is.
    """
    name = f"{stem}.pdf"
    with PdfFile(folder / name, title=f"{title}: template") as pdf:
        for number, flat in enumerate(flats, start=1):
            outline = Rect(0, 0, *flat.size).moved(flat.bleed, flat.bleed)
            size = Size(outline.width + 2 * flat.bleed, outline.height + 2 * flat.bleed)
            parts = [*_drawn(flat), *_told(flat, (title, f"{flat.name}, {_measures(size)} with its bleed"))]
            if len(flats) > 1:
                parts.append(_number(f"{number} of {len(flats)}: {flat.name}", flat))
            with pdf.page(size, trim=outline) as canvas:
                Group(tuple(parts), Transform.move(flat.bleed, flat.bleed)).draw(canvas)
    return [name, *_pictures(folder, name, stem, len(flats))]


def _drawn(flat: Flat) -> Iterator[Art]:
    """The bleed grey, cuts and folds in the marks of the sheets, safe areas dotted, and the name of each panel."""
    outline = flat.shape()
    yield Filled(flat.inked(), BLEED)
    yield Filled(outline, WHITE)
    yield Stroked(outline, CUT)
    for panel in flat.panels:
        if panel.role in FACES:
            safe = Stroked(Path.rectangle(_safe(panel.rect)), SAFE)
            yield Group((safe,), clip=outline)  # a cut corner may take some of the panel
        yield from _name(str(panel.role), panel.rect)
    for fold in flat.folds:
        yield Stroked.line(fold.start, fold.end, FOLD_PENS[fold.kind])
    for pen, strokes in ((SCORE, flat.scores), (PERFORATION, flat.perforations)):
        yield from (Stroked.line(*stroke, pen) for stroke in strokes)


def _number(text: str, flat: Flat) -> Written:
    """Which piece this is, in the bleed at the foot."""
    line = set_line(bundled("sans"), flat.bleed * IN_BLEED, text, flat.size.width)
    return Written(line, Point(0, -flat.bleed * (1 + IN_BLEED) / 2 + line.size * 0.2), NOTE)


def _told(flat: Flat, lines: Sequence[str]) -> Iterator[Written]:
    """Whose template it is and how large, small at the foot of the largest face, where it is soon drawn over.

    Pieces without a face are too small for it.
    """
    faces = [panel.rect for panel in flat.panels if panel.role in FACES]
    if not faces:
        return
    room = _safe(max(faces, key=lambda rect: rect.width * rect.height)).grown(-0.6, -0.6, -0.6, -0.6)
    for number, text in enumerate(reversed(lines)):
        line = set_line(face_with(text, "sans"), TOLD, text, room.width)
        yield Written(line, Point(room.x, room.y + number * TOLD * 1.3), NOTE)


def _measures(size: Size) -> str:
    return f"{print_mm(size.width, 2)} × {print_mm(size.height, 2)}"


def _safe(rect: Rect) -> Rect:
    aside, above = min(SAFE_FROM_FOLD, rect.width * 0.2), min(SAFE_FROM_EDGE, rect.height * 0.2)
    return rect.grown(-aside, -above, -aside, -above)


def _name(text: str, rect: Rect) -> Iterator[Art]:
    """The panel's name in its middle, turned where the panel is narrow."""
    upright = rect.height > rect.width * 1.6
    size = min(1.6, (rect.width if upright else rect.height) * 0.7)
    line = set_line(bundled("sans"), size, text)
    if line.width <= (rect.height if upright else rect.width):
        turned = Transform.quarter_turn(3 if upright else 0).moved(*rect.centre)
        yield Group((Written(line, Point(-line.width / 2, -size * 0.25), NOTE),), turned)


def _pictures(folder: FilePath, name: str, stem: str, pages: int) -> Iterator[str]:
    for number in range(pages):
        picture = f"{stem}.png" if pages == 1 else f"{stem}-{number + 1}.png"
        rendered_page(folder / name, number, TEMPLATE_DPI).save(folder / picture, dpi=(TEMPLATE_DPI, TEMPLATE_DPI))
        yield picture
