"""Heavier cuts of typefaces: outlines against strokes that another renderer draws; advances; PDF and SVG alike."""

from __future__ import annotations

import io
import math
import pickle
from itertools import pairwise
from pathlib import Path

import numpy as np
import pypdf
import pytest
import resvg_py
from PIL import Image

from bookmaker.ground.art import Written
from bookmaker.ground.geometry import Point, Rect, Size
from bookmaker.ground.typefaces import Commands, Typeface, bundled, cut_of, load_typeface, set_line
from bookmaker.ground.typefaces.names import BUNDLED
from bookmaker.ground.typefaces.thickening import thickened
from bookmaker.writers.pdf import PdfFile
from tests.kit.fonts import cff_font
from tests.kit.pixels import apart

WORDS = "Hamburgefonstiv aekqwxyz &?§ 0123456789 ÄßQRW@%"


def area(outline: Commands) -> float:
    """The area within an outline of straight lines."""
    spots = [complex(*map(float, numbers)) for _, *numbers in outline if numbers]
    return sum((one.conjugate() * other).imag for one, other in pairwise([*spots, spots[0]])) / 2


def test_a_regular_polygon_grows_by_its_margin() -> None:
    # an n-gon of inradius r has the area n r² tan(π/n)
    corners = [(100 * math.cos(turn * math.tau / 8), 100 * math.sin(turn * math.tau / 8)) for turn in range(8)]
    octagon: Commands = [("M", *corners[0]), *(("L", *corner) for corner in corners[1:]), ("Z",)]
    inner = 100 * math.cos(math.pi / 8)
    for by in (1.0, 7.5):
        assert area(thickened(octagon, by)) == pytest.approx(8 * (inner + by) ** 2 * math.tan(math.pi / 8), rel=1e-5)


def path_data(outline: Commands) -> str:
    return " ".join(f"{kind}{' '.join(f'{number:.6g}' for number in numbers)}" for kind, *numbers in outline)


def white(outline: Commands) -> float:
    """How much of a square of 100 units is left white, by resvg, in square units."""
    head = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100" width="400" height="400">'
    svg = f'{head}<path d="{path_data(outline)}"/></svg>'
    png = resvg_py.svg_to_bytes(svg_string=svg, background="#fff")
    return float(np.asarray(Image.open(io.BytesIO(bytes(png))).convert("L"), dtype=np.float64).sum() / 255 / 16)


def test_holes_shrink_and_close_whichever_way_they_run() -> None:
    square: Commands = [("M", 0, 0), ("L", 100, 0), ("L", 100, 100), ("L", 0, 100), ("Z",)]
    hole: Commands = [("M", 40, 40), ("L", 40, 60), ("L", 60, 60), ("L", 60, 40), ("Z",)]
    turned: Commands = [("M", 0, 0), ("L", 0, 100), ("L", 100, 100), ("L", 100, 0), ("Z",)]
    back: Commands = [("M", 40, 40), ("L", 60, 40), ("L", 60, 60), ("L", 40, 60), ("Z",)]
    for ring in ([*square, *hole], [*turned, *back]):
        assert white(ring) == pytest.approx(400, abs=1)
        assert white(thickened(ring, 4)) == pytest.approx(144, abs=1)
        assert white(thickened(ring, 10)) == white(thickened(ring, 15)) == 0
    # ink upon ink is no hole
    assert white(thickened([*square, *back], 4)) == 0


def drawn(face: Typeface, by: float, *, stroked: bool) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    """Words by resvg: with a stroke of its own around the plain letters, or as ours are outlined."""
    em, x, paths = face.units_per_em, 0.0, []
    for glyph in face.shape(WORDS).glyphs:
        outline = face.outline(glyph.gid)
        data = path_data(outline if stroked else thickened(outline, by * em))
        pen = f' stroke="#000" stroke-width="{2 * by * em}" stroke-miterlimit="1.6"' if stroked else ""
        paths.append(f'<path transform="translate({x + glyph.dx * em} {glyph.dy * em})"{pen} d="{data}"/>')
        x += glyph.advance * em
    width, height = x + 0.4 * em, 1.7 * em
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{-0.2 * em} {-1.1 * em} {width} {height}" '
        f'width="{60 * width / em}" height="{60 * height / em}"><g transform="scale(1 -1)">{"".join(paths)}</g></svg>'
    )
    png = resvg_py.svg_to_bytes(svg_string=svg, background="#fff")
    return np.asarray(Image.open(io.BytesIO(bytes(png))).convert("L"), dtype=np.float64)


@pytest.mark.parametrize("name", BUNDLED)
def test_a_heavier_letter_looks_as_if_it_had_a_stroke_around_it(name: str) -> None:
    face = bundled(name)
    ours, stroked, plain = (
        drawn(face, 0.015, stroked=False),
        drawn(face, 0.015, stroked=True),
        drawn(face, 0.0, stroked=False),
    )
    # only what reaches beyond sharp corners differs, a few hundredths of what is added
    assert np.abs(ours - stroked).mean() < 0.03 * np.abs(plain - stroked).mean()


def test_white_between_letters_and_places_of_marks_stay() -> None:
    plain, by = bundled("text"), 0.02
    heavy = cut_of(plain, thicker=by)
    for word in ("lamp oil", "e\u0301q\u0323"):
        before, after = plain.shape(word), heavy.shape(word)
        inked = [glyph for glyph in before.glyphs if glyph.advance]
        assert after.width == pytest.approx(before.width + 2 * by * len(inked), abs=1e-3)
    # the ink of the accent lies in the middle of its letter as it did
    [_, accent], [letter, heavy_accent] = plain.shape("q\u0323").glyphs, heavy.shape("q\u0323").glyphs
    assert letter.advance + heavy_accent.dx == pytest.approx(plain.shape("q").width + accent.dx, abs=1e-3)
    assert (heavy.shape("x").left, heavy.shape("x").right) == pytest.approx(
        (plain.shape("x").left, plain.shape("x").right + 2 * by)
    )


def test_cuts_are_found_again_in_another_process_and_told_apart() -> None:
    plain = bundled("old style")
    cut = cut_of(plain, ("onum",), 0.01)
    assert pickle.loads(pickle.dumps(cut)) is cut
    assert cut_of(plain) is plain
    assert cut_of(cut_of(plain, ("onum",)), thicker=0.01) is cut
    assert len({plain.digest, cut.digest, cut_of(plain, thicker=0.01).digest}) == 3


@pytest.mark.parametrize("kind", ["TrueType", "CFF"])
def test_pdf_and_svg_show_heavier_letters_alike_and_give_their_text_back(kind: str, tmp_path: Path) -> None:
    letters = "Hamburgefonts 1889"
    plain = bundled("old style") if kind == "TrueType" else load_typeface(cff_font(tmp_path / "own.otf", letters))
    both = [cut_of(plain, thicker=0.015), plain]
    box = Rect(0, 0, 34, 6)
    # two renderers differ at every edge by a little; heavier letters have about as many edges as plain ones
    heavy_off, plain_off = (apart(Written(set_line(face, 3.0, letters), Point(2, 2)), box, 1200, 12) for face in both)
    assert heavy_off.mean() < 1.2 * plain_off.mean()
    data = io.BytesIO()
    with PdfFile(data, title="heavy") as pdf, pdf.page(Size(34, 12)) as canvas:
        for row, face in enumerate(both):
            Written(set_line(face, 3.0, letters), Point(2, 8 - 5 * row)).draw(canvas)
    page = pypdf.PdfReader(data).pages[0]
    assert page.extract_text().split("\n") == [letters, letters]
    fonts = page["/Resources"]["/Font"].values()  # type: ignore[index]
    assert len({font.get_object()["/BaseFont"] for font in fonts}) == 2
