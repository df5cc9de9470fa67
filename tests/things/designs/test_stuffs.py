"""Cloth, leather and marbled paper at the true scale of a twelfth; bands and rules on spines."""

from __future__ import annotations

from math import isclose
from random import Random

import numpy as np
import numpy.typing as npt
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.art import Group
from bookmaker.ground.drawing import Colour
from bookmaker.ground.geometry import Point, Rect
from bookmaker.sheets.flat import Role
from bookmaker.things.book.designs.design import DrawnDesign, Words
from bookmaker.things.book.designs.grounds.combs import after
from bookmaker.things.book.designs.grounds.marbling import COMBED, HIGH, MARBLINGS, TOOTH, CombedKind, Marbling, marbled
from bookmaker.things.book.designs.grounds.textures import grain, weave
from bookmaker.things.book.designs.palettes import PALETTES
from bookmaker.things.book.designs.styles.cloth import Cloth
from bookmaker.things.book.designs.styles.half_leather import HalfLeather
from bookmaker.things.book.designs.styles.leather import Leather
from bookmaker.things.book.designs.styles.ledger import LedgerDesign
from bookmaker.things.book.designs.styles.picture_cover import PictureCover
from bookmaker.things.book.designs.styles.school import School
from bookmaker.things.book.designs.tones import apart
from tests.kit.flats import flat_of, panel
from tests.kit.pixels import pdf_pixels
from tests.kit.recording import Filled, Stroked, record
from tests.kit.styles import drawn

AREA = Rect(0, 0, 12, 9)
COLOUR = Colour.from_hex("#6e2428")
BATH = PALETTES["library"].marbling
every_kind = pytest.mark.parametrize("kind", MARBLINGS)


@pytest.mark.parametrize("seed", range(8))
def test_cloth_has_threads_as_fine_as_book_cloth_at_a_twelfth(seed: int) -> None:
    """0.02 to 0.04 mm wide, and mostly a tone: none of them far from the colour of the cloth."""
    threads = [mark for art in weave(AREA, COLOUR, Random(seed)) for mark in record(art).strokes]
    assert threads
    for mark in threads:
        assert 0.02 <= mark.pen.width <= 0.04
        assert apart(mark.pen.colour, COLOUR) < 0.06


@pytest.mark.parametrize("seed", range(8))
def test_the_grain_of_leather_is_finer_than_a_tenth_of_a_millimetre(seed: int) -> None:
    for art in grain(AREA, COLOUR, Random(seed)):
        for mark in record(art).marks:
            if isinstance(mark, Stroked):
                assert mark.pen.width < 0.1
                assert max(mark.pen.dash) < 0.1
            elif isinstance(mark, Filled):
                assert max(Rect.around(piece).width for piece in _pieces(mark)) < 0.3


def _pieces(mark: Filled) -> list[list[Point]]:
    found: list[list[Point]] = []
    for command in mark.path.commands:
        if command[0] == "M":
            found.append([])
        if len(command) > 1:
            found[-1].append(Point(float(command[-2]), float(command[-1])))
    return found


@every_kind
def test_marbled_paper_covers_its_area_in_the_colours_of_its_bath(kind: Marbling) -> None:
    marks = [mark for art in marbled(AREA, BATH, Random(3), kind) for mark in record(art).marks]
    assert isinstance(marks[0], Filled)
    assert Rect.around(marks[0].path.points()).contains(AREA)
    colours = {mark.colour for mark in marks if isinstance(mark, Filled)}
    assert set(BATH) <= colours
    if kind != "Spanish wave":  # its folds are shaded
        assert colours == set(BATH)


@every_kind
def test_the_same_chance_marbles_the_same_sheet(kind: Marbling) -> None:
    one, other = ([record(art).marks for art in marbled(AREA, BATH, Random(5), kind)] for _ in range(2))
    assert one == other


@pytest.mark.parametrize(("kind", "most"), [("stone", 0.4), ("Spanish wave", 0.65)])
def test_spots_do_not_repeat_within_a_board(kind: Marbling, most: float) -> None:
    """Moved by any way of more than a millimetre, the paper of a board of 32 mm is unlike itself."""
    board = Rect(0, 0, 21, 32)
    sheet = Group(tuple(marbled(board, BATH, Random(3), kind)))
    grey = pdf_pixels(sheet, 508.0, 10.0, board).mean(axis=2)
    assert _most_alike(grey - grey.mean(), 10) < most


def _most_alike(grey: npt.NDArray[np.float64], away: int) -> float:
    """The greatest autocorrelation at ways longer than `away` pixels, of which half the picture is left to compare."""
    high, wide = grey.shape
    alike, overlap = (
        np.fft.irfft2(np.abs(np.fft.rfft2(each, (2 * high, 2 * wide))) ** 2, (2 * high, 2 * wide))
        for each in (grey, np.ones_like(grey))
    )
    down, across = (np.abs(np.fft.fftfreq(2 * side) * 2 * side) for side in (high, wide))
    far = np.hypot(down[:, None], across[None, :]) > away
    told = far & (down[:, None] < high / 2) & (across[None, :] < wide / 2)
    return float((alike[told] / overlap[told]).max() / (alike[0, 0] / overlap[0, 0]))


@pytest.mark.parametrize("kind", COMBED)
@given(x=st.floats(-3, 3), y=st.floats(-3, 3))
def test_passes_repeat_with_the_column(kind: CombedKind, x: float, y: float) -> None:
    """A column beside a column, one over the other: what flows out of one flows into the next."""
    passes, wide = COMBED[kind].passes, COMBED[kind].wide
    here = after(passes, Point(x, y))
    for across, up in ((wide, 0.0), (0.0, HIGH)):
        there = after(passes, Point(x + across, y + up))
        assert isclose(there.x - across, here.x, abs_tol=1e-6)
        assert isclose(there.y - up, here.y, abs_tol=1e-6)


def test_a_tooth_takes_along_most_what_it_meets() -> None:
    """Half a tooth aside the bath has moved less than a tenth as far; a fine comb has teeth of 3 to 4 mm, in life."""
    (comb,) = COMBED["nonpareil"].passes
    met, beside = (comb(Point(x, 0.0)).y for x in (TOOTH, 1.5 * TOOTH))
    assert met < 0
    assert abs(beside) < 0.1 * abs(met)
    assert 3.0 <= 12 * TOOTH <= 4.0


def test_two_sides_of_a_book_are_of_one_sheet() -> None:
    flat = flat_of(5.0)
    sides = [mark for mark in drawn(HalfLeather, flat, wear="none").marks if isinstance(mark, Filled) and mark.clips]
    by_clip: dict[object, set[Colour]] = {}
    for mark in sides:
        by_clip.setdefault(mark.clips, set()).add(mark.colour)
    assert len(by_clip) == 2
    assert len({frozenset(colours) for colours in by_clip.values()}) == 1


@pytest.mark.parametrize("model", [Leather, HalfLeather, LedgerDesign])
def test_bands_end_bluntly_in_the_joints(model: type[DrawnDesign]) -> None:
    """No shape on the spine runs to a point, and none goes on over the sides."""
    flat = flat_of(5.0)
    spine = panel(flat, Role.SPINE)
    for mark in drawn(model, flat, Words("Salt", "M. Ray"), wear="none", ornament="none").fills:
        box = Rect.around(mark.path.points())
        if box.width > spine.width + 0.01 and box.height < 1.0 and spine.grown(1.0).contains(box):
            assert len(set(mark.path.points())) == 4
            assert box.width <= spine.width + 0.8


@pytest.mark.parametrize("model", [School, LedgerDesign, PictureCover, Cloth])
@pytest.mark.parametrize("title", ["Salt", "Rope", "Weather", "Small Hours"])
@pytest.mark.parametrize("volume", ["", "II"])
def test_spines_end_in_thin_rules(model: type[DrawnDesign], title: str, volume: str) -> None:
    """Nothing as broad as the spine and in the ink of its title is higher than a thin rule."""
    flat = flat_of(5.0)
    spine, canvas = panel(flat, Role.SPINE), drawn(model, flat, Words(title, "M. Ray", volume), wear="none")
    inks = {text.colour for text in canvas.texts}
    for mark in canvas.fills:
        box = Rect.around(mark.path.points())
        if mark.colour in inks and abs(box.width - spine.width) < 0.01:
            assert box.height <= 0.13
