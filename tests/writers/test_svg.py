"""SVG pictures: well formed, of true size, with everything in themselves, and the same as the PDF."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise
from pathlib import Path as FilePath
from typing import Any
from xml.etree import ElementTree

import numpy as np
import pytest
from fontTools.pens.areaPen import AreaPen
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.recordingPen import RecordingPen
from fontTools.svgLib.path import parse_path
from fontTools.ttLib import TTFont
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from bookmaker.ground.art import Filled, Group, Imported, Layer, Pictured, Repeated, Stroked, Veiled, Written
from bookmaker.ground.drawing import Art, Colour, Pen
from bookmaker.ground.geometry import Path, Point, Rect, Size, Transform, polygon
from bookmaker.ground.imported import load_pages
from bookmaker.ground.pictures import load_picture
from bookmaker.ground.typefaces import TextLine, bundled, set_line
from bookmaker.writers.pdf import PdfFile
from bookmaker.writers.svg import svg_picture
from bookmaker.writers.svg.outlines import glyph_outline
from bookmaker.writers.svg.paths import path_data
from tests.kit.pixels import apart, svg_pixels

SVG, DPI = "{http://www.w3.org/2000/svg}", 254.0
BOX = Rect(-2, -3, 30, 20)
RED, BLUE = Colour(0.8, 0.1, 0.1), Colour(0.1, 0.2, 0.7)

STAR = polygon([Point(5, 9), Point(8, 1), Point(0, 6), Point(10, 6), Point(2, 1)])
LEAF = Path((("M", 1.0, 1.0), ("C", 4.0, 9.0, 9.0, 8.0, 11.0, 3.0), ("L", 6.0, 2.0), ("Z",)))


def words(text: str, size: float = 3.0, face: str = "text") -> TextLine:
    return set_line(bundled(face), size, text)


def spaced(text: str) -> TextLine:
    """Words set 0.4 mm apart letter by letter, in two typefaces."""
    first, second = (bundled(face).shape(text) for face in ("sans bold", "old style italic"))
    return TextLine(3.0, ((0.0, first), (first.width * 3.0 + 0.4 * len(first.glyphs), second)), tracking=0.4)


HOLE = Path((*polygon(BOX.corners).commands, *polygon(Rect(3, 3, 9, 6).corners[::-1]).commands))
SMALL_LEAF = LEAF.transformed(Transform.stretch(0.3, 0.3))

EXAMPLES: dict[str, Art] = {
    "veils": Group((Filled(STAR, RED), Veiled(LEAF, BLUE, 0.4))),
    "outlines": Group((Filled(STAR, RED), Filled(LEAF.transformed(Transform.move(12, 2)), BLUE))),
    "lines": Group(
        (Stroked(STAR, Pen(0.4, BLUE)), Stroked.line(Point(0, 12), Point(25, 13), Pen(0.6, RED, (2.0, 1.0))))
    ),
    "words": Group(
        (Written(words("Kelp & Tides"), Point(1, 5)), Written(words("AVAST", 5.0, "sans"), Point(1, 10), RED))
    ),
    "spaced words": Written(spaced("Weed"), Point(0, 6)),
    "words turned": Group(
        (Written(words("Upright"), Point(4, 2), quarters=1), Written(words("Over"), Point(25, 12), RED, 2))
    ),
    "marks over letters": Written(words("Ǻ é̂ ﬁ fi Ö", 4.0, "text italic"), Point(0, 5)),
    "a clip": Group(
        (Filled.box(Rect(0, 0, 20, 12), RED), Filled(STAR, BLUE)), Transform.turn(20), Path.circle(Point(7, 6), 5)
    ),
    "clips in clips": Group(
        (Group((Filled.box(BOX, BLUE),), Transform.stretch(1.5, 0.7), STAR), Filled(LEAF, RED)),
        Transform.move(3, 2),
        LEAF,
    ),
    "a hole in a clip": Group((Filled.box(BOX, RED),), clip=HOLE),
    "a mirror": Group((Filled(LEAF, BLUE), Written(words("Glass"), Point(2, 9))), Transform(a=-1.0, e=20.0)),
    "a slant": Group((Filled(STAR, RED), Stroked(LEAF, Pen(0.5))), Transform(1.0, 0.2, 0.5, 0.8, 1.0, 0.0)),
    "layers": Group((Layer("art", (Filled(STAR, RED),)), Layer("cuts & folds", (Stroked(LEAF, Pen(0.4)),)))),
    "repeats": Repeated(
        (Filled(SMALL_LEAF, BLUE), Stroked.line(Point(0, 0), Point(3, 0), Pen(0.3, RED))),
        tuple(Point(4.0 * x, 4.0 * y) for x in range(-2, 9) for y in range(-2, 5)),
    ),
}


@pytest.mark.parametrize("art", EXAMPLES.values(), ids=EXAMPLES)
def test_svg_and_pdf_are_the_same_picture(art: Art) -> None:
    """Averaged over 0.2 mm; renderers differ in the edges of shapes, and PDFium puts each glyph on a whole pixel."""
    found = apart(art, BOX, 2032.0, 5.0)
    assert found.max() <= 16
    assert found.mean() <= 0.5


def test_pictures_are_the_same(tmp_path: FilePath) -> None:
    """Upright, turned, mirrored and stretched; one corner of the picture is red."""
    image = Image.new("RGB", (60, 40), "#336699")
    image.paste("#cc2200", (0, 0, 20, 10))
    image.save(tmp_path / "flag.png")
    flag = Pictured(load_picture(tmp_path / "flag.png"), Rect(0, 0, 9, 6))
    art = Group(
        (
            flag,
            Group((flag,), Transform.quarter_turn(1).moved(18, 2)),
            Group((flag,), Transform(a=-1.0, e=28.0), Path.rectangle(Rect(1, 1, 6, 4))),
        )
    )
    found = apart(art, BOX, 1016.0, 2.0)
    assert found.max() <= 32  # where pixels are enlarged one renderer blurs and the other does not
    assert found.mean() <= 1
    whole = svg_pixels(svg_picture(flag, Rect(0, 0, 9, 6)), DPI, 2.0, Rect(0, 0, 9, 6))
    assert whole[0, 0] == pytest.approx((0xCC, 0x22, 0x00), abs=2)
    assert whole[-1, 0] == pytest.approx((0x33, 0x66, 0x99), abs=2)


def test_pages_of_pdf_files_are_the_same(tmp_path: FilePath) -> None:
    """What a page leaves bare is clear: the ground shows."""
    path = tmp_path / "page.pdf"
    with PdfFile(path, title="page") as pdf, pdf.page(Size(12, 8)) as canvas:
        EXAMPLES["words"].draw(canvas)
    ((page,), _) = load_pages(path)
    art = Group((Filled.box(Rect(0, 0, 14, 10), Colour(0.9, 0.9, 0.5)), Imported(page, Rect(1, 1, 12, 8))))
    found = apart(art, BOX, 1016.0, 2.0)
    assert found.max() <= 40  # pixels of the page are seen one by one where vectors are not
    assert found.mean() <= 1


ATTRIBUTES = {
    *(
        "id",
        "href",
        "d",
        "fill",
        "fill-opacity",
        "stroke",
        "stroke-width",
        "stroke-dasharray",
        "stroke-miterlimit",
        "transform",
        "clip-path",
    ),
    *("transform", "clip-path", "class", "x", "y", "width", "height", "viewBox", "preserveAspectRatio"),
}


def elements(svg: str) -> list[ElementTree.Element]:
    return list(ElementTree.fromstring(svg).iter())


@pytest.mark.parametrize("art", EXAMPLES.values(), ids=EXAMPLES)
def test_a_picture_is_plain_and_holds_all_it_needs(art: Art) -> None:
    svg = svg_picture(art, BOX, title="Salt & <Weed>")
    found = elements(svg)
    tags = {element.tag.removeprefix(SVG) for element in found}
    assert tags <= {"svg", "title", "defs", "g", "path", "use", "clipPath", "image"}
    ids = [element.attrib["id"] for element in found if "id" in element.attrib]
    assert len(set(ids)) == len(ids)
    hrefs = [element.attrib["href"] for element in found if "href" in element.attrib]
    clips = [element.attrib["clip-path"] for element in found if "clip-path" in element.attrib]
    assert {href.removeprefix("#") for href in hrefs} | {clip[5:-1] for clip in clips} == set(ids)
    assert {name for element in found for name in element.attrib} <= ATTRIBUTES
    assert found[1].text == "Salt & <Weed>"
    assert svg == svg_picture(art, BOX, title="Salt & <Weed>")


def test_it_is_as_large_as_what_it_shows() -> None:
    root = elements(svg_picture(EXAMPLES["outlines"], Rect(-1.5, 2, 12.345, 7)))[0]
    assert root.attrib == {"width": "12.345mm", "height": "7mm", "viewBox": "0 0 12.345 7"}


def test_nothing_is_drawn_of_nothing() -> None:
    """No outline, no line, no words, and a clip that leaves nothing."""
    nothing = (Filled(Path(), RED), Stroked(Path(), Pen(1.0)), Written(words("")), Repeated((Filled(STAR, RED),), ()))
    art = Group((*nothing, Group((Filled(STAR, RED),), clip=Path())))
    assert svg_picture(art, BOX) == svg_picture(Group(), BOX)


def test_what_is_flattened_is_not_seen_and_control_characters_are_not_told() -> None:
    flat = Group((EXAMPLES["outlines"], EXAMPLES["words"]), Transform.stretch(0.0, 1.0))
    assert svg_picture(flat, BOX) == svg_picture(Group(), BOX)
    assert elements(svg_picture(flat, BOX, title="Rum\0\a & \x1blemons"))[1].text == "Rum & lemons"


def test_no_two_pictures_share_a_name() -> None:
    """Many of them stand in one page of a browser, which looks for a name in all of it."""
    names = [{e.attrib["id"] for e in elements(svg_picture(art, BOX)) if "id" in e.attrib} for art in EXAMPLES.values()]
    assert sum(map(len, names)) == len(set().union(*names)) > 20


def test_what_comes_again_is_written_once() -> None:
    line = Written(words("eee eee"), Point(0, 0))
    svg = svg_picture(Group((line, Group((line,), Transform.move(0, 5)), EXAMPLES["repeats"])), BOX)
    assert len(re.findall(r"<path id=", svg)) == 1
    # twelve letters, and nine columns and six rows of repeats that reach into the box
    assert len(re.findall(r"<use ", svg)) == 12 + 9 * 6
    assert len(re.findall(r"<g id=", svg)) == 1


def test_layers_are_classes_that_a_page_may_hide() -> None:
    classes = [element.attrib.get("class") for element in elements(svg_picture(EXAMPLES["layers"], BOX))]
    assert list(filter(None, classes)) == ["art", "cuts & folds"]


numbers = st.floats(-40, 40).map(lambda value: round(value, 4))
points = st.tuples(numbers, numbers)


@st.composite
def paths(draw: st.DrawFn) -> Path:
    """Some subpaths of lines and curves, most of them closed."""
    commands: list[tuple[str | float, ...]] = []
    for _ in range(draw(st.integers(1, 4))):
        commands.append(("M", *draw(points)))
        for _ in range(draw(st.integers(1, 5))):
            curved = draw(st.booleans())
            commands.append(("C", *draw(points), *draw(points), *draw(points)) if curved else ("L", *draw(points)))
        if draw(st.booleans()):
            commands.append(("Z",))
    return Path(tuple(commands))


Step = tuple[str, Any]
"""What a pen is told, and the numbers that go with it, in mm."""


def read_back(data: str) -> Iterator[Step]:
    pen = RecordingPen()
    parse_path(data, pen)
    yield from ((name, np.array(places).ravel() / 1000) for name, places in pen.value if name != "endPath")


def unclosed(steps: Sequence[Step]) -> Iterator[Step]:
    """Without lines that only go back to where a path is closed: a reader may add them."""
    first = np.zeros(2)
    for (name, at), (following, _) in pairwise((*steps, ("", None))):
        first = at if name == "moveTo" else first
        if not (name == "lineTo" and following == "closePath" and np.abs(at - first).max() < 1e-3):
            yield name, at


@given(paths())
def test_path_data_read_by_another_reader_is_the_path(path: Path) -> None:
    """To half a thousandth of a millimetre, however many steps there are."""
    names = {"M": "moveTo", "L": "lineTo", "C": "curveTo", "Z": "closePath"}
    told = [(names[str(command[0])], np.array(command[1:], dtype=float)) for command in path.commands]
    found = list(read_back(path_data(path)))
    for (name, places), (wanted, at) in zip(unclosed(found), unclosed(told), strict=True):
        assert name == wanted
        assert places == pytest.approx(at, abs=5.001e-4)


@settings(max_examples=25)
@given(paths(), st.booleans())
def test_what_is_left_out_was_not_seen(path: Path, filled: bool) -> None:
    """A window of a large picture is the picture of that window."""
    art: Art = Filled(path, RED) if filled else Stroked(path, Pen(0.5, BLUE))
    window, large = Rect(-5, -5, 12, 10), Rect(-45, -45, 90, 90)
    seen = svg_pixels(svg_picture(art, window), 25.4 * 4, 4.0, window)
    whole = svg_pixels(svg_picture(art, large), 25.4 * 4, 4.0, large)
    left, above = 40 * 4, (45 - 5) * 4
    assert (
        np.abs(seen - whole[above : above + 40, left : left + 48]).max() <= 96
    )  # of 200; edges are rounded where they lie


def test_a_window_leaves_out_what_lies_beyond_it() -> None:
    """Shapes, words, repeats and whole groups: of a shelf only what is looked at is written."""
    far = Group((*EXAMPLES.values(),), Transform.move(500, 0))
    assert svg_picture(far, BOX) == svg_picture(Group(), BOX)
    assert len(svg_picture(Group((far, EXAMPLES["outlines"])), BOX)) == len(svg_picture(EXAMPLES["outlines"], BOX))


@pytest.mark.parametrize("face", ["text", "sans bold", "old style italic", "blackletter", "script"])
def test_glyphs_have_the_outlines_of_their_typeface(face: str) -> None:
    """Read by fontTools from the file itself."""
    typeface = bundled(face)
    font = TTFont(typeface.path)
    glyphs, order = font.getGlyphSet(), font.getGlyphOrder()
    for gid in range(1, 120):
        ours, theirs = BoundsPen(None), BoundsPen(glyphs)
        parse_path(glyph_outline(typeface, gid), ours)
        glyphs[order[gid]].draw(theirs)
        assert (ours.bounds or (0, 0, 0, 0)) == pytest.approx(theirs.bounds or (0, 0, 0, 0), abs=0.6)
        area, true_area = AreaPen(None), AreaPen(glyphs)
        parse_path(glyph_outline(typeface, gid), area)
        glyphs[order[gid]].draw(true_area)
        assert area.value == pytest.approx(true_area.value, rel=0.01, abs=50)
