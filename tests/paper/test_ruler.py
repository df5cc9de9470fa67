"""The ruler page: two rules of exactly 150 mm, and the calibration that follows from what they measure."""

from __future__ import annotations

import io
from pathlib import Path

import numpy as np
import pypdfium2
import pytest
from pypdf import PdfReader

from bookmaker.ground.geometry import Point, Size
from bookmaker.ground.problems import CommandError
from bookmaker.ground.told import Units, told_in
from bookmaker.paper.papers import FORMATS, find_format
from bookmaker.paper.printer_entry import PrinterEntry
from bookmaker.paper.stock import calibration
from bookmaker.ruler import write_ruler
from bookmaker.ruler.ladders import white_wedge
from bookmaker.writers.pdf import PdfFile
from tests.kit.strokes import strokes_of

DPI = 1200


@pytest.fixture(scope="module")
def dark(tmp_path_factory: pytest.TempPathFactory) -> np.ndarray:
    """The A4 ruler page at 1200 dots per inch: true where there is ink, top row first."""
    path = tmp_path_factory.mktemp("ruler") / "ruler.pdf"
    write_ruler(path, FORMATS["A4"])
    page = pypdfium2.PdfDocument(path)[0]
    return page.render(scale=DPI / 72, grayscale=True).to_numpy().squeeze() < 128


def longest_run(ink: np.ndarray) -> int:
    """The longest run of inked pixels along any row."""
    longest = 0
    for row in ink[ink.sum(axis=1) > 100 / 25.4 * DPI]:
        edges = np.flatnonzero(np.diff(np.concatenate(([0], row.astype(np.int8), [0]))))
        longest = max(longest, int((edges[1::2] - edges[::2]).max()))
    return longest


def test_both_rules_measure_150_mm_on_the_page(dark: np.ndarray) -> None:
    pixel = 25.4 / DPI
    assert longest_run(dark) * pixel == pytest.approx(150, abs=2 * pixel)
    assert longest_run(dark.T) * pixel == pytest.approx(150, abs=2 * pixel)


@pytest.mark.parametrize("name", ["A4", "A3", "letter", "legal", "tabloid"])
def test_usual_sheets_hold_the_rules(tmp_path: Path, name: str) -> None:
    write_ruler(tmp_path / "ruler.pdf", find_format(name))
    assert (tmp_path / "ruler.pdf").stat().st_size > 1000


def test_a_sheet_too_small_for_the_rules_is_refused(tmp_path: Path) -> None:
    with pytest.raises(CommandError) as refusal:
        write_ruler(tmp_path / "ruler.pdf", FORMATS["A5"])
    assert (
        str(refusal.value)
        == "the rules of 150 mm do not fit on A5; use a sheet of at least 180 mm × 270 mm, such as A4"
    )
    assert not (tmp_path / "ruler.pdf").exists()


def test_calibration_undoes_what_the_rules_measure() -> None:
    printer = PrinterEntry.model_validate({"rules": {"across": "149.4 mm", "up": "150.3 mm"}})
    undo = calibration(printer, FORMATS["A4"])
    left, right = (undo.apply(Point(x, 100)) for x in (30.0, 180.0))
    printed = (right.x - left.x) * 149.4 / 150
    assert printed == pytest.approx(150)
    low, high = (undo.apply(Point(50, y)) for y in (60.0, 210.0))
    assert (high.y - low.y) * 150.3 / 150 == pytest.approx(150)
    middle = Point(105, 148.5)
    assert undo.apply(middle) == pytest.approx(middle)


def test_stairs_stand_every_millimetre_from_each_edge(tmp_path: Path) -> None:
    write_ruler(tmp_path / "ruler.pdf", FORMATS["A4"])
    strokes = strokes_of(tmp_path / "ruler.pdf", 1)
    upright = [s.start[0] for s in strokes if abs(s.start[0] - s.end[0]) < 1e-6 and s.start[1] < 105]
    level = [s.start[1] for s in strokes if abs(s.start[1] - s.end[1]) < 1e-6]
    for step in range(15):
        for places, edge, inward in ((upright, 0, 1), (upright, 210, -1), (level, 0, 1), (level, 297, -1)):
            assert any(abs(place - edge - inward * step) < 0.001 for place in places), (edge, step)


def test_gratings_have_lines_and_gaps_of_one_dot(tmp_path: Path) -> None:
    write_ruler(tmp_path / "ruler.pdf", FORMATS["A4"])
    strokes = strokes_of(tmp_path / "ruler.pdf", 1)
    for dpi in (150, 300, 600, 1200):
        dot = 25.4 / dpi
        places = sorted(
            s.start[0]
            for s in strokes
            if abs(s.width - dot) < 1e-4 and abs(s.start[0] - s.end[0]) < 1e-6 and abs(s.start[1] - s.end[1]) > 7
        )
        steps = np.diff(places)
        assert len(places) > 20
        assert steps == pytest.approx(np.full(len(steps), 2 * dot), abs=1e-3)


def unbroken_from(dpi: int, spread: float) -> float:
    """The width in mm from which on the white wedge is unbroken, printed in whole dots whose ink spreads so many mm."""
    data, over, fine = io.BytesIO(), 4, 6
    with PdfFile(data, title="wedge") as pdf, pdf.page(Size(60, 20)) as canvas:
        for art in white_wedge(Point(5, 7)):
            art.draw(canvas)
    grey = pypdfium2.PdfDocument(data.getvalue())[0].render(scale=dpi * over / 72, grayscale=True).to_numpy().squeeze()
    rows, columns = grey.shape[0] // over, grey.shape[1] // over
    dots = grey[: rows * over, : columns * over].reshape(rows, over, columns, over).mean((1, 3)) < 128
    printed = np.kron(dots, np.ones((fine, fine), bool))
    pixel, ink = 25.4 / dpi / fine, printed.copy()
    reach = round(spread / pixel)
    for down in range(-reach, reach + 1):
        side = int((reach**2 - down**2) ** 0.5)
        for right in range(-side, side + 1, max(1, side)):
            ink |= np.roll(printed, (down, right), (0, 1))
    along, turned = np.linspace(0, 48, 481), np.radians(7)
    closed = 0.0
    for x in along:
        # across the white, and a little more
        t = np.linspace(-0.05, 0.05 + 0.2 * x / 48, 60)
        right, up = 5 + x * np.cos(turned) - t * np.sin(turned), 7 + x * np.sin(turned) + t * np.cos(turned)
        if ink[((20 - up) / pixel).astype(int), (right / pixel).astype(int)].all():
            closed = 0.2 * float(x) / 48
    return closed


@pytest.mark.parametrize("dpi", [600, 1200])
@pytest.mark.parametrize("spread", [0.0, 0.02, 0.04])
def test_what_is_read_on_the_wedge_is_how_far_ink_spreads(dpi: int, spread: float) -> None:
    """As the readings have it: half of what is closed beyond a dot; true to a quarter of a dot of 600 to the inch."""
    found = (unbroken_from(dpi, spread) - 25.4 / dpi) / 2
    assert found == pytest.approx(spread, abs=0.0106)


def test_words_of_the_ladders_can_be_found_on_the_page(tmp_path: Path) -> None:
    write_ruler(tmp_path / "ruler.pdf", FORMATS["letter"])
    front, reverse = (page.extract_text() for page in PdfReader(tmp_path / "ruler.pdf").pages)
    for words in ("across", "up", "rising", "falling", "smallest type you can read", "thinnest line", "fold and cut"):
        assert words in front
    assert front.count("The keeper trimmed the lamp") == 8
    assert "Prick a pin through the three dots" in reverse


def test_a_page_in_inches_has_rules_of_six(tmp_path: Path) -> None:
    """432 pt, with a tick every sixteenth; the square is 4 in wide."""
    path = tmp_path / "ruler.pdf"
    with told_in(Units.INCHES):
        write_ruler(path, FORMATS["letter"])
    level = [stroke for stroke in strokes_of(path, 1) if abs(stroke.start[1] - stroke.end[1]) < 1e-3]
    assert max(abs(stroke.end[0] - stroke.start[0]) for stroke in level) == pytest.approx(152.4, abs=0.01)
    words = PdfReader(path).pages[0].extract_text()
    assert "A true rule measures 6 in" in words
    assert " mm" not in words
