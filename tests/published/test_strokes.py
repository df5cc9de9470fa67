"""Stems and counters measured on outlines, against pixels of another renderer and what makers of typefaces publish."""

from __future__ import annotations

import io

import numpy as np
import pytest
import resvg_py
from fontTools.ttLib import TTFont
from PIL import Image, ImageDraw

from bookmaker.ground.typefaces import Typeface, bundled
from bookmaker.ground.typefaces.strokes import strokes_of

PIXELS = 1000
"""To the em."""

Ink = np.ndarray[tuple[int, ...], np.dtype[np.bool_]]


def inked(face: Typeface, letter: str) -> Ink:
    """A letter in pixels, True where there is ink; the first row is the highest."""
    em, [glyph] = face.units_per_em, face.shape(letter).glyphs
    data = " ".join(
        f"{kind}{' '.join(f'{number:.6g}' for number in numbers)}" for kind, *numbers in face.outline(glyph.gid)
    )
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{-0.2 * em} {-em} {1.4 * em} {1.4 * em}" '
        f'width="{1.4 * PIXELS}" height="{1.4 * PIXELS}"><path transform="scale(1 -1)" d="{data}"/></svg>'
    )
    png = resvg_py.svg_to_bytes(svg_string=svg, background="#fff")
    return np.asarray(Image.open(io.BytesIO(bytes(png))).convert("L")) < 128


def widest_shut_in(ink: Ink) -> float:
    """The diameter, in ems, of the largest disc that fits into the white that is shut in."""
    image = Image.fromarray(np.where(ink, 0, 255).astype(np.uint8)).copy()
    ImageDraw.floodfill(image, (0, 0), 0)
    white, radius = np.asarray(image) > 0, 0
    while white.any():
        inner = white.copy()
        # by turns a diamond and a square: an octagon, nearly a disc
        steps = ((1, 0), (-1, 0), (0, 1), (0, -1))
        for step in steps if radius % 5 in (0, 2, 4) else (*steps, (1, 1), (1, -1), (-1, 1), (-1, -1)):
            inner &= np.roll(white, step, (0, 1))
        white, radius = inner, radius + 1
    return 2 * radius / PIXELS


@pytest.mark.parametrize("name", ["text", "sans", "old style", "caslon", "clarendon", "didone", "humanist"])
def test_stems_are_as_thick_as_the_printed_letter(name: str) -> None:
    face = bundled(name)
    measured = strokes_of(face)
    assert measured
    row = inked(face, "l")[round(PIXELS * (1 - face.x_height * 0.6))]
    assert measured.stem == pytest.approx(row.sum() / PIXELS, rel=0.12)
    assert measured.hairline < measured.stem


@pytest.mark.parametrize("name", ["text", "text bold", "old style", "didone", "geometric"])
@pytest.mark.parametrize("letter", "aeo")
def test_counters_are_as_wide_as_the_white_that_is_shut_in(name: str, letter: str) -> None:
    measured = strokes_of(bundled(name))
    assert measured
    if letter in measured.counters:
        assert measured.counters[letter] == pytest.approx(widest_shut_in(inked(bundled(name), letter)), rel=0.12)


def test_of_typefaces_those_known_for_thin_hairlines_have_the_greatest_contrast() -> None:
    """A Didone has more contrast than an old style, that more than a Clarendon, a sans hardly any (from memory)."""
    contrasts = []
    for name in ("didone", "old style", "clarendon", "sans"):
        measured = strokes_of(bundled(name))
        assert measured
        contrasts.append(measured.stem / measured.hairline)
    assert contrasts == sorted(contrasts, reverse=True)
    assert contrasts[0] > 4
    assert contrasts[-1] < 2


def test_heavier_fonts_have_heavier_stems_in_the_order_of_their_own_weight_class() -> None:
    """The weight class of the OS/2 table (OpenType specification) is its maker's."""
    for plain, heavy in (("text", "text bold"), ("sans", "sans bold"), ("clarendon", "clarendon bold")):
        classes = [TTFont(bundled(name).path)["OS/2"].usWeightClass for name in (plain, heavy)]
        one, other = strokes_of(bundled(plain)), strokes_of(bundled(heavy))
        assert one and other
        assert classes == sorted(classes)
        assert one.stem < other.stem
        assert one.counters["e"] > other.counters["e"]
