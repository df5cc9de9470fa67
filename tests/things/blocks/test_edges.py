"""The art of edge strips: out to the bleed, never finer than the printer, the same for the same book."""

from __future__ import annotations

from math import cos, hypot, isclose, pi, sin
from pathlib import Path
from typing import get_args

import pypdfium2
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.ground.drawing import Colour, contrast, luminance
from bookmaker.ground.geometry import Path as Outline
from bookmaker.ground.geometry import Point, Rect
from bookmaker.sheets.flat import Flat
from bookmaker.things.book.bath import pushed
from bookmaker.things.book.blocks.dummy import Dummy
from bookmaker.things.book.edges.kinds import edge_art
from bookmaker.things.book.edges.strip import Layout
from tests.kit.by_kind import drafts_of
from tests.kit.flats import signed_area
from tests.kit.recording import RecordingCanvas, record
from tests.kit.shelves import made

KINDS = ["lines", "gilt", "stained", "marbled"]
RED = Colour.from_hex("#8c3b2e")


def strip(length: float, thickness: float) -> Flat:
    outline = Rect(0, 0, length, thickness).corners
    return Flat("edge strip", "edge strip", "laid", outline, folds=(), panels=(), bleed=1.0)


def drawn(
    kind: str, thickness: float = 6.0, seed: str = "x", dpi: float = 600, length: float = 50, colour: Colour = RED
) -> RecordingCanvas:
    return record(edge_art(kind, Layout.on(strip(length, thickness), seed, dpi, colour)))


@pytest.mark.parametrize("kind", KINDS)
def test_it_runs_to_the_bleed_and_no_further(kind: str) -> None:
    canvas = drawn(kind)
    whole = Outline.rectangle(Rect(-1, -1, 52, 8))
    assert canvas.fills[0].path == whole
    assert {mark.clips for mark in canvas.marks} == {(whole,)}


@pytest.mark.parametrize("kind", ["lines", "gilt", "stained"])
@settings(max_examples=20)
@given(thickness=st.floats(1, 30), length=st.floats(10, 120), dpi=st.sampled_from([300, 600, 1200, 4800]))
def test_leaves_cover_the_strip_and_print(kind: str, thickness: float, length: float, dpi: float) -> None:
    """Lines run the whole length, no further apart than real leaves, and none is finer than a dot."""
    canvas = drawn(kind, thickness, dpi=dpi, length=length)
    dot = 25.4 / dpi
    pens = {stroke.pen.width for stroke in canvas.strokes}
    assert min(pens) >= dot
    through = [
        stroke.path.points()
        for stroke in canvas.strokes
        if isclose(stroke.path.points()[0].x, -1) and isclose(stroke.path.points()[-1].x, length + 1)
    ]
    heights = sorted(points[0].y for points in through)
    assert heights[0] < -0.5 and heights[-1] > thickness + 0.5
    leaf = max(0.12, 4 * dot)
    leaves = len(heights) / (thickness + 2) * leaf
    assert 0.8 < leaves < 1.8  # a band for each leaf, and the lines between sections


@pytest.mark.parametrize("kind", KINDS)
def test_the_same_book_has_the_same_edges_and_another_has_others(kind: str) -> None:
    assert drawn(kind).marks == drawn(kind).marks
    assert drawn(kind).marks != drawn(kind, seed="y").marks


def test_every_kind_that_can_be_written_is_drawn() -> None:
    assert set(get_args(Dummy.model_fields["edges"].annotation)) == {"none", *KINDS}


def test_spots_are_small_and_many_on_small_edges_and_no_more_on_large_ones() -> None:
    """About 0.9 mm² a spot as long as the strip is small; a folio is not drawn with a hundred times as many."""
    small, large = drawn("marbled").fills[1:], drawn("marbled", 60, length=700).fills[1:]
    assert 0.7 < 52 * 8 / len(small) < 1.4
    assert len(large) < 5 * len(small)


def test_stained_edges_have_their_colour() -> None:
    """On the average of the ground, and nowhere far from it."""
    blue = Colour.from_hex("#2f4f7a")
    canvas = drawn("stained", colour=blue)
    colours = [canvas.fills[0].colour, *(stroke.pen.colour for stroke in canvas.strokes)]
    assert all(contrast(colour, blue) < 2.2 and colour.blue > colour.red for colour in colours)
    assert drawn("lines", colour=blue).marks == drawn("lines").marks


def test_gilt_is_warm_and_bright() -> None:
    red, green, blue = drawn("gilt").fills[0].colour
    assert red > green > blue
    assert luminance(Colour(red, green, blue)) > 0.3


def test_paint_pushed_aside_keeps_its_area() -> None:
    """A disc of radius 2 that takes a drop of radius 1.5 in its middle has one of 2.5: π·(2² + 1.5²) = π·2.5²."""
    disc = [Point(2 * cos(pi * step / 500), 2 * sin(pi * step / 500)) for step in range(1000)]
    assert all(isclose(hypot(*point), 2.5) for point in pushed(disc, Point(0, 0), 1.5))
    for aside, holds_the_drop in ((2.1, False), (4.0, False), (1.0, True)):
        moved = pushed([point.plus(aside, 0) for point in disc], Point(0, 0), 1.5)
        assert isclose(abs(signed_area(moved)), pi * (2**2 + 1.5**2 * holds_the_drop), rel_tol=2e-3)


SHELF = """\
shelf: Edges
stocks:
  laid: {caliper: 100 um, glue: 30 um, grain: long}
  card: {caliper: 160 um, grain: long}
books:
  - size: {height: 21 mm, width: 15 mm}
    block: {kind: dummy, thickness: 6 mm, edge_stock: laid}
    cover: {kind: wrap, stock: card}
    row:
      - {title: A, block: {edges: lines}}
      - {title: B, block: {edges: gilt}}
      - {title: C, block: {edges: stained}}
      - {title: D, block: {edges: marbled}}
"""


def test_books_of_other_looks_have_edges_of_their_own(tmp_path: Path) -> None:
    """A look that is written, or that hangs on title and author."""
    titles = ("A, look: 5", "A, author: X", "B", "C, look: 5")
    row = "".join(f"      - {{title: {title}, block: {{edges: lines}}}}\n" for title in titles)
    (tmp_path / "shelf.yaml").write_text(SHELF.partition("      - {title: A")[0] + row, encoding="utf-8")
    first, other_author, other_title, again = (
        record(draft.pieces[0].art).marks for draft in drafts_of(check(tmp_path / "shelf.yaml"))
    )
    assert first == again
    assert first != other_author != other_title != first


def test_printed_strips_have_ink_to_the_bleed_and_the_same_bytes(tmp_path: Path) -> None:
    """Seen on the sheet: no white anywhere within the bleed, and white beyond it."""
    report, folder = made(SHELF, tmp_path / "one")
    _, again = made(SHELF, tmp_path / "two")
    assert (folder / "laid.pdf").read_bytes() == (again / "laid.pdf").read_bytes()
    image = pypdfium2.PdfDocument(folder / "laid.pdf")[0].render(scale=300 / 72, no_smoothtext=True).to_pil()
    dots = 300 / 25.4

    def whitest(left: float, bottom: float, right: float, top: float) -> int:
        box = (left * dots, image.height - top * dots, right * dots, image.height - bottom * dots)
        low, _ = image.crop(tuple(map(round, box))).convert("L").point(lambda tone: 255 - tone).getextrema()
        return 255 - int(low)

    strips = [piece for sheet in report["sheets"] for piece in sheet["pieces"] if piece["kind"] == "edge strip"]
    assert len(strips) == 4
    for piece in strips:
        (left, bottom), (right, top) = piece["outline_mm"][0], piece["outline_mm"][2]
        inner = 1 - 1.5 / dots  # the row of dots at the very edge is blended with the paper
        assert whitest(left - inner, bottom - inner, right + inner, top + inner) < 250
        assert whitest(left + 2, top + 1.1, left + 6, top + 1.25) == 255
