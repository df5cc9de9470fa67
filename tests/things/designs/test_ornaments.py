"""Group ornaments: many, unlike one another, bold enough for a spine."""

from __future__ import annotations

import io
from itertools import combinations
from random import Random
from typing import get_args

import pypdfium2
import pytest
from PIL import Image, ImageChops, ImageFilter, ImageStat

from bookmaker.ground.art import Filled
from bookmaker.ground.drawing import BLACK
from bookmaker.ground.geometry import Path, Rect, Size, Transform
from bookmaker.things.book.designs.ornament.corners import CORNERS, corner_pieces
from bookmaker.things.book.designs.ornament.fleurons import FLEURONS, OrnamentName, choose_fleuron
from bookmaker.writers.pdf import PdfFile

DOTS = 96
"""Pixels across the square of a motif."""


def drawn(motif: Path) -> Image.Image:
    """A motif in its square, white on black."""
    file = io.BytesIO()
    with PdfFile(file, title="motif") as pdf, pdf.page(Size(10, 10)) as canvas:
        Filled(motif.transformed(Transform.stretch(10, 10).moved(5, 5)), BLACK).draw(canvas)
    with pypdfium2.PdfDocument(file.getvalue()) as document:
        seen = document[0].render(scale=DOTS / 10 * 25.4 / 72).to_pil().convert("L")
    return ImageChops.invert(seen).resize((DOTS, DOTS)).point(lambda tone: 255 if tone > 127 else 0)


def ink(image: Image.Image) -> float:
    return ImageStat.Stat(image).sum[0]


@pytest.mark.parametrize("name", FLEURONS)
def test_ornaments_hold_at_four_fifths_of_a_millimetre(name: str) -> None:
    """What is thinner than a sixteenth, a dot at 600 to the inch, is less than an eighth of the ink.

    Ink that spreads by 20 µm on either side closes few of the gaps.
    """
    seen = drawn(FLEURONS[name])  # type: ignore[index]
    opened = seen.filter(ImageFilter.MinFilter(5)).filter(ImageFilter.MaxFilter(5))
    assert ink(opened) > 0.875 * ink(seen)
    closed = seen.filter(ImageFilter.MaxFilter(5)).filter(ImageFilter.MinFilter(5))
    assert ink(closed) < 1.12 * ink(seen)
    assert 0.12 < ink(seen) / (255 * DOTS * DOTS) < 0.6


def test_no_two_ornaments_look_alike() -> None:
    seen = {name: drawn(motif) for name, motif in FLEURONS.items()}
    for one, other in combinations(seen, 2):
        assert ink(ImageChops.difference(seen[one], seen[other])) > 0.25 * ink(seen[one]), (one, other)


def test_every_ornament_is_offered_and_chosen() -> None:
    assert set(get_args(OrnamentName)) == {"auto", "none", *FLEURONS}
    chosen = [choose_fleuron("auto", Random(seed)) for seed in range(600)]
    assert {id(motif) for motif in chosen} == {id(motif) for motif in FLEURONS.values()}


def test_two_books_in_five_keep_the_ornament_they_had_of_eight() -> None:
    first = list(FLEURONS.values())[:8]
    kept = [choose_fleuron("auto", Random(seed)) is first[int(Random(seed).random() * 8)] for seed in range(2000)]
    assert 0.36 < sum(kept) / len(kept) < 0.44


@pytest.mark.parametrize("kin", range(0, 3 * len(CORNERS), 3))
def test_corner_pieces_stand_within_their_frame_alike_in_all_corners(kin: int) -> None:
    frame = Rect(2.0, 3.0, 12.0, 18.0)
    boxes = [frame.moved(x, y) for x, y in ((-6, -9), (6, -9), (6, 9), (-6, 9))]
    points = corner_pieces(frame, 2.0, BLACK, kin).path.points()
    parts = [[point for point in points if box.contains(Rect(*point, 0.0, 0.0))] for box in boxes]
    assert len({len(part) for part in parts}) == 1
    assert frame.grown(0.15).contains(Rect.around(points))
