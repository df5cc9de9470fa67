"""A printer that stretches, leans and misses its reverse is measured through the ruler page and put right."""

from __future__ import annotations

import itertools
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, dist, radians, sin
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.ground.geometry import Point, Size
from bookmaker.ground.problems import Problem, ShelfFileError
from bookmaker.ground.told import Units, told_in
from bookmaker.paper.papers import FORMATS
from bookmaker.paper.printer_entry import PrinterEntry
from bookmaker.paper.profiles import read_printer
from bookmaker.paper.reverse import correction
from bookmaker.paper.stock import calibration, distortion, lean
from bookmaker.ruler import measure, profile_text, write_ruler
from bookmaker.shelf.reading import read_shelf
from tests.kit.command_line import bookmaker
from tests.kit.strokes import Stroke, strokes_of

A4 = FORMATS["A4"]
WIDTH, HEIGHT = A4.size
XY = tuple[float, float]


@dataclass(frozen=True)
class Printer:
    """What a printer does to a page: stretch, lean and turn about the middle, then a shift; the reverse has its own."""

    across: float = 1.0
    up: float = 1.0
    lean_deg: float = 0.0
    turn_deg: float = 0.0
    shift: XY = (0.0, 0.0)
    reverse_shift: XY = (0.0, 0.0)
    reverse_turn_deg: float = 0.0

    def put(self, point: XY, *, reverse: bool = False) -> XY:
        """Where a point of the page comes out."""
        x, y = (point[0] - WIDTH / 2) * self.across, (point[1] - HEIGHT / 2) * self.up
        x, y = x + y * sin(radians(self.lean_deg)), y * cos(radians(self.lean_deg))
        turned = radians(self.reverse_turn_deg if reverse else self.turn_deg)
        sine, cosine = sin(turned), cos(turned)
        dx, dy = self.reverse_shift if reverse else self.shift
        return WIDTH / 2 + x * cosine - y * sine + dx, HEIGHT / 2 + x * sine + y * cosine + dy


def level(stroke: Stroke) -> bool:
    return abs(stroke.start[1] - stroke.end[1]) < 1e-6


def length(stroke: Stroke) -> float:
    return dist(stroke.start, stroke.end)


def middle_of(stroke: Stroke) -> XY:
    return (stroke.start[0] + stroke.end[0]) / 2, (stroke.start[1] + stroke.end[1]) / 2


def places_on_the_page(file: Path) -> dict[str, tuple[XY, XY]]:
    """The pairs of points to measure between, found among the lines of the page."""
    strokes = strokes_of(file, 1)
    long = [stroke for stroke in strokes if length(stroke) > 140]
    (across,), (up,) = [s for s in long if level(s)], [s for s in long if not level(s)]
    arms = [s for s in strokes if abs(length(s) - 8) < 0.2 and not s.dashed and abs(s.width - 0.12) < 0.01]
    crossings = {
        middle_of(a)
        for a in arms
        for b in arms
        if level(a) and not level(b) and dist(middle_of(a), middle_of(b)) < 0.01
    }
    low_left, high_left, low_right, high_right = sorted(crossings, key=lambda at: (round(at[0]), at[1]))
    return {
        "across": (across.start, across.end),
        "up": (up.start, up.end),
        "rising": (low_left, high_right),
        "falling": (high_left, low_right),
    }


def readings(printer: Printer, file: Path, to: float = 0.02) -> dict[str, float]:
    """What a careful maker reads off the printed page, in mm, to the nearest `to`."""
    found = {key: dist(printer.put(a), printer.put(b)) for key, (a, b) in places_on_the_page(file).items()}
    middle, upper, lower = (hole_on_grid(printer, HEIGHT / 2 + up) for up in (0, 60, -60))
    found |= {"right": middle[0], "above": middle[1], "farther": upper[0] - lower[0]}
    return {key: round(value / to) * to for key, value in found.items()}


def hole_on_grid(printer: Printer, height: float) -> XY:
    """Where a pin through a dot of the front comes out on the grid of the reverse, left and right exchanged."""
    x, y = printer.put((WIDTH / 2, height))
    grid = printer.put((WIDTH / 2, height), reverse=True)
    return WIDTH - x - grid[0], y - grid[1]


def measured(printer: Printer, file: Path) -> PrinterEntry:
    """The profile of a printer, through the questions and the file."""
    read = readings(printer, file)
    words = {"rule across": "across", "rule up": "up", "lower left": "rising", "upper left": "falling"}
    words |= {"to the right of": "right", "above": "above", "farther": "farther"}

    def ask(question: str, usual: str) -> str:
        key = next((key for part, key in words.items() if part in question), None)
        return "a trial" if "printer and paper path" in question else f"{read[key]:.2f} mm" if key else usual

    def say(problem: Problem) -> None:
        raise AssertionError(str(problem))

    profile = file.with_name("trial.yaml")
    profile.write_text(profile_text(measure(A4, ask, say)), encoding="utf-8")
    return read_printer(profile)


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Path:
    file = tmp_path_factory.mktemp("ruler") / "ruler.pdf"
    write_ruler(file, A4)
    return file


def test_the_page_has_what_is_to_be_measured(page: Path) -> None:
    found = {key: dist(*ends) for key, ends in places_on_the_page(page).items()}
    assert found == pytest.approx({"across": 150, "up": 150, "rising": 141.421, "falling": 141.421}, abs=0.001)


small = st.floats(-1, 1)


@given(
    across=st.floats(0.98, 1.02),
    up=st.floats(0.98, 1.02),
    lean_deg=st.floats(-0.5, 0.5),
    turn_deg=st.floats(-0.4, 0.4),
    shift=st.tuples(small, small),
    reverse_shift=st.tuples(small, small),
    reverse_turn_deg=st.floats(-0.2, 0.2),
)
@settings(max_examples=60, deadline=None)
def test_a_simulated_printer_is_corrected_to_within_a_twentieth_of_a_millimetre_over_200(
    page: Path,
    across: float,
    up: float,
    lean_deg: float,
    turn_deg: float,
    shift: XY,
    reverse_shift: XY,
    reverse_turn_deg: float,
) -> None:
    """A square of 200 mm comes out as one, and the reverse within 0.1 mm of the front."""
    printer = Printer(across, up, lean_deg, 0.0, shift, reverse_shift)
    turned = Printer(across, up, lean_deg, turn_deg, shift, reverse_shift, reverse_turn_deg)
    profile = measured(printer, page)
    assert measured(turned, page).rules == profile.rules  # a sheet that is fed askew has the same lengths
    undo = calibration(profile, A4)
    corners = [(5.0, 20.0), (205.0, 20.0), (205.0, 220.0), (5.0, 220.0)]
    printed = [turned.put(undo.apply(Point(*corner))) for corner in corners]
    for (a, b), (p, q) in zip(itertools.combinations(corners, 2), itertools.combinations(printed, 2), strict=True):
        assert dist(p, q) == pytest.approx(dist(a, b), abs=0.05 * dist(a, b) / 200)
    for one, tolerance in ((printer, 0.1), (turned, 0.12)):
        profile = measured(one, page)
        undo = calibration(profile, A4)
        back = correction(profile, Size(WIDTH, HEIGHT)).then(undo)
        for corner in corners:
            x, y = one.put(undo.apply(Point(*corner)))
            behind = one.put(back.apply(Point(WIDTH - corner[0], corner[1])), reverse=True)
            # what leans to the right on the front leans to the left seen from behind, but the lean is undone
            assert dist((WIDTH - x, y), behind) < tolerance


@given(st.floats(0.98, 1.02), st.floats(0.98, 1.02), st.floats(-0.5, 0.5), st.tuples(small, small))
@settings(max_examples=15, deadline=None)
def test_the_proof_page_measures_true(page: Path, across: float, up: float, lean_deg: float, off: XY) -> None:
    printer = Printer(across, up, lean_deg, reverse_shift=off)
    profile = measured(printer, page)
    with tempfile.TemporaryDirectory() as name:
        proof = Path(name) / "proof.pdf"
        write_ruler(proof, A4, profile)
        # found among lines that are askew: by their ends, not by their direction
        undo = calibration(profile, A4)
        for key, ends in places_on_the_page(page).items():
            drawn = [undo.apply(Point(*end)) for end in ends]
            if key in ("across", "up"):
                assert any(
                    dist(s.start, drawn[0]) < 0.01 and dist(s.end, drawn[1]) < 0.01 for s in strokes_of(proof, 1)
                )
            true = {"across": 150, "up": 150}.get(key, 141.421)
            assert dist(printer.put(drawn[0]), printer.put(drawn[1])) == pytest.approx(true, abs=0.05)


entries = st.builds(
    lambda across, up, off: PrinterEntry.model_validate(
        {
            "rules": {"across": across * 150, "up": up * 150},
            "diagonals": {
                "rising": ((across**2 + up**2) ** 0.5) * 100 + off,
                "falling": ((across**2 + up**2) ** 0.5) * 100 - off,
            },
        }
    ),
    st.floats(0.98, 1.02),
    st.floats(0.98, 1.02),
    st.floats(-0.6, 0.6),
)


@given(entries, st.floats(0, 210), st.floats(0, 297))
def test_calibration_and_distortion_are_opposites(printer: PrinterEntry, x: float, y: float) -> None:
    there, back = calibration(printer, A4), distortion(printer, A4)
    for both in (there.then(back), back.then(there)):
        assert both.apply(Point(x, y)) == pytest.approx((x, y), abs=1e-9)


def test_lean_by_the_law_of_cosines() -> None:
    """A rhombus of sides 100 that leans by 0.2°: diagonals 200·cos 44.9° and 200·sin 44.9° (worked by hand)."""
    printer = PrinterEntry.model_validate({"diagonals": {"rising": "141.668 mm", "falling": "141.174 mm"}})
    assert lean(printer) == pytest.approx(sin(radians(0.2)), abs=1e-5)
    moved = calibration(printer, A4).apply(Point(WIDTH / 2, HEIGHT / 2 + 100))
    assert moved.x - WIDTH / 2 == pytest.approx(-0.349, abs=0.001)  # 100 mm · tan 0.2°


def test_without_diagonals_nothing_leans() -> None:
    printer = PrinterEntry.model_validate({"rules": {"across": "149.4 mm", "up": "150.3 mm"}})
    assert calibration(printer, A4).c == 0 and calibration(printer, A4).b == 0


# Slips


FAR_OFF = "printer.rules: across is more than 3 % off the 150 mm drawn"


def answers(*typed: str) -> Iterator[str]:
    yield "office laser"
    yield from typed
    yield from itertools.repeat("")


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        (["14.96 mm", "149.6 mm"], [f"{FAR_OFF}; did you mean 14.96 cm?"]),
        (["5.89 mm", "5.89 in"], [f"{FAR_OFF}; did you mean 5.89 in?"]),
        (
            ["141.3 mm", "149.6 mm"],
            [f"{FAR_OFF}; measure again, in mm, from end mark to end mark, and see that no two readings are swapped"],
        ),
        (["149.6", "149.6 mm"], ["printer.rules.across: 149.6 has no unit; write 149.6 mm"]),
        (
            ["149.6 mm", "150.2 mm", "143 mm", "142 mm", "149.6 mm", "150.2 mm", "141.3 mm", "141.5 mm"],
            [
                "printer: the diagonals are 142.5 mm on average, where the rules make them 141.3 mm; "
                "measure both rules and both diagonals of one print again"
            ],
        ),
    ],
)
def test_a_slip_is_asked_again(typed: list[str], told: list[str]) -> None:
    said: list[str] = []
    answer = answers(*typed)
    printer = measure(A4, lambda *_: next(answer), lambda problem: said.append(str(problem)))
    assert said == told
    assert printer.rules.across in (pytest.approx(149.6), pytest.approx(149.606))


def test_ink_spread_is_what_white_loses_beyond_a_dot_and_kept_in_the_profile(tmp_path: Path) -> None:
    """At 1200 dpi a dot is 21.2 µm: of 80 µm ink has taken 58.8 if a dot is left, half of it from either side."""
    typed = iter(["laser", *[""] * 8, "1200 dpi", "80", "80 um"])
    said: list[str] = []
    printer = measure(A4, lambda *_: next(typed, ""), lambda problem: said.append(str(problem)))
    assert printer.ink_spread == pytest.approx(0.029, abs=5e-4)
    assert len(said) == 1
    assert said[0].startswith("80 has no unit")
    (tmp_path / "p.yaml").write_text(profile_text(printer), encoding="utf-8")
    assert read_printer(tmp_path / "p.yaml").ink_spread == pytest.approx(0.029, abs=5e-4)
    with told_in(Units.INCHES):
        typed = iter(["laser", *[""] * 9, "3.2 mil"])
        printer = measure(FORMATS["letter"], lambda *_: next(typed, ""), lambda problem: said.append(str(problem)))
    assert printer.ink_spread == pytest.approx(0.0195, abs=6e-4)


def test_a_white_edge_beyond_the_lines_of_the_page_is_asked_again() -> None:
    said: list[str] = []
    typed = iter(["office laser", *["149.6 mm"] * 2, *["141.2 mm"] * 2, "90 mm", "6 mm"])
    printer = measure(A4, lambda *_: next(typed, ""), lambda problem: said.append(str(problem)))
    assert printer.margins.left == 6
    assert said == [
        "90 mm cannot be the white edge of this page: its lines stand 0 to 14 mm from the edge; "
        "read the number of the first line that is printed whole"
    ]


def test_readings_in_inches_correct_the_page_as_those_in_millimetres_do(tmp_path: Path) -> None:
    """A rule of 6 in that measures 5.976 is 0.4 % short, as one of 150 mm that measures 149.4 mm."""
    letter = FORMATS["letter"]
    typed = iter(["porch laser", "5.976 in", "6 in", "5.646 in", "5.646 in", "0.15 in"])
    with told_in(Units.INCHES):
        printer = measure(letter, lambda *_: next(typed, ""), lambda problem: pytest.fail(str(problem)))
        written = profile_text(printer)
    (tmp_path / "p.yaml").write_text(written, encoding="utf-8")
    assert "drawn: 6 in" in written
    assert "drawn: 4 in" in written
    assert " mm" not in written
    read = read_printer(tmp_path / "p.yaml")
    metric = PrinterEntry.model_validate({"sheet": "letter", "rules": {"across": "149.4 mm", "up": "150 mm"}})
    assert calibration(read, letter).a == pytest.approx(calibration(metric, letter).a, abs=1e-6)
    assert (read.rules.up, read.margins.left) == (pytest.approx(152.4), pytest.approx(3.81))


def test_a_profile_reads_back_as_it_was_written(tmp_path: Path) -> None:
    printer = PrinterEntry.model_validate(
        {
            "name": 'the "good" one: rear tray # 2',
            "sheet": "letter",
            "margins": {"left": "4 mm", "right": "3.5 mm", "top": "3 mm", "bottom": "12.7 mm"},
            "resolution": "1200 dpi",
            "rules": {"across": "149.62 mm", "up": "150.2 mm"},
            "diagonals": {"rising": "141.3 mm", "falling": "141.56 mm"},
            "reverse_offset": {"right": "-0.4 mm", "up": "0.25 mm"},
        }
    )
    path = tmp_path / "p.yaml"
    path.write_text(profile_text(printer), encoding="utf-8")
    assert read_printer(path) == printer


# Profiles and shelves


SHELF = """\
shelf: By profile
printer: {printer}
stocks:
  page: {{caliper: 75 um, grain: long}}
  cover: {{caliper: 160 um}}
books:
  - title: Volume One
    size: {{height: 21 mm, width: 15 mm}}
    block: {{kind: accordion, stock: page, pages: 24}}
    cover: {{kind: wrap, stock: cover}}
"""

PROFILE = """\
name: office laser
sheet: letter
margins: 4 mm
rules: {across: 149.6 mm}
"""


def write(folder: Path, printer: str, profile: str = PROFILE) -> Path:
    (folder / "laser.yaml").write_text(profile, encoding="utf-8")
    (folder / "shelf.yaml").write_text(SHELF.format(printer=printer), encoding="utf-8")
    return folder / "shelf.yaml"


def test_a_shelf_takes_the_profile_and_its_own_word_wins(tmp_path: Path) -> None:
    plain = read_shelf(write(tmp_path, "laser.yaml")).spec.printer
    assert (plain.name, plain.sheet.name) == ("office laser", "letter")
    assert (plain.margins.left, plain.rules.across) == (4, 149.6)
    own = read_shelf(write(tmp_path, "{profile: laser.yaml, sheet: A4, gap_between_pieces: 3 mm}")).spec.printer
    assert (own.sheet.name, own.margins.left, own.gap_between_pieces, own.profile) == ("A4", 4, 3, "laser.yaml")
    assert check(write(tmp_path, "{profile: laser.yaml, name: office laser}")).sound


@pytest.mark.parametrize(
    ("printer", "profile", "told"),
    [
        (
            "{profile: laser.yaml, name: study inkjet}",
            PROFILE,
            "shelf.yaml:2:38: laser.yaml is the profile of 'office laser', not of 'study inkjet'; "
            "name the other profile, or leave name out",
        ),
        (
            "lost.yaml",
            PROFILE,
            "shelf.yaml:2:10: there is no profile lost.yaml; "
            "write one with bookmaker ruler --measured, or write the keys of the printer here",
        ),
        (
            f"'{'laser' * 60}.yaml'",
            PROFILE,
            f"shelf.yaml:2:10: there is no profile {('laser' * 60)[:239]}…; "
            "write one with bookmaker ruler --measured, or write the keys of the printer here",
        ),
        (
            "laser.yaml",
            "shelf: Another\nbooks: []\n",
            "laser.yaml:1:1: this is a shelf file; "
            "write one with bookmaker ruler --measured, or begin it with name: and the printer and its paper path",
        ),
        (
            "laser.yaml",
            "- 1\n- 2\n",
            "laser.yaml:1:1: this is no profile of a printer; "
            "write one with bookmaker ruler --measured, or begin it with name: and the printer and its paper path",
        ),
        (
            "laser.yaml",
            PROFILE.replace("149.6 mm", "14.96 mm"),
            "laser.yaml:4:8: printer.rules: across is more than 3 % off the 5.906 in drawn; did you mean 14.96 cm?",
        ),
        (
            "laser.yaml",
            PROFILE + "diagonals: {rising: 143 mm, falling: 142 mm}\n",
            "shelf.yaml:2:10: printer: the diagonals are 5.61 in on average, where the rules make them 5.56 in; "
            "measure both rules and both diagonals of one print again",
        ),
        (
            "laser.yaml",
            PROFILE + "diagonals: {rising: 141.3 mm}\n",
            "laser.yaml:5:12: printer.diagonals has no falling; "
            "add falling: from the upper left corner to the lower right, as measured",
        ),
        (
            "laser.yaml",
            PROFILE.replace("margins: 4 mm", "margins: 120 mm"),
            "laser.yaml:3:10: printer.margins: 120 mm is out of range; write a length from 0 in to 3.937 in",
        ),
    ],
)
def test_profiles_that_cannot_be_used(tmp_path: Path, printer: str, profile: str, told: str) -> None:
    with pytest.raises(ShelfFileError) as refusal:
        read_shelf(write(tmp_path, printer, profile))
    assert str(refusal.value) == told


def test_readings_are_typed_on_the_command_line(tmp_path: Path) -> None:
    file = tmp_path / "laser.yaml"
    typed = "office laser\n149.6 mm\n150.2 mm\n141.3 mm\n141.5 mm\n4 mm\n\n\n\n\n80 um\n0.4 mm\n-0.2 mm\n0.3 mm\n"
    said = bookmaker("ruler", "--measured", str(file), typed=typed)
    assert said.code == 0
    *lines, seal = file.read_text(encoding="utf-8").splitlines(keepends=True)
    assert seal.startswith("# bookmaker seal ")
    assert "".join(lines) == (
        "# Printer profile, measured on the ruler page. A shelf file names it: printer: and the name of this file.\n"
        'name: "office laser"\n'
        "sheet: A4\n"
        "margins: {left: 4 mm, right: 5 mm, top: 5 mm, bottom: 5 mm}\n"
        "resolution: 600 dpi\n"
        "ink_spread: 19 µm\n"
        "rules: {across: 149.6 mm, up: 150.2 mm}\n"
        "diagonals: {rising: 141.3 mm, falling: 141.5 mm}\n"
        "reverse_offset: {right: -0.4 mm, up: 0.2 mm, skew: 0.04 mm}\n"
    )
    assert said.out.endswith(f"prove it: bookmaker ruler --into proof.pdf --printer {file}\n")
    assert bookmaker("ruler", "--into", str(tmp_path / "proof.pdf"), "--printer", str(file)).code == 0
    before = file.read_bytes()
    said = bookmaker("ruler", "--measured", str(file), typed="office laser\n149.6 mm\n")
    assert said.code == 2
    assert said.err.endswith("the readings end here; run it again and answer every question\n")
    assert file.read_bytes() == before


def test_a_file_that_is_no_profile_is_not_written_over(tmp_path: Path) -> None:
    file = tmp_path / "shelf.yaml"
    file.write_text("shelf: Mine\n", encoding="utf-8")
    said = bookmaker("ruler", "--measured", str(file), typed="x\n" * 12)
    assert said.code == 2
    assert said.err == f"{file} is not a file that bookmaker wrote; name another file: this one would be lost\n"
    assert file.read_text(encoding="utf-8") == "shelf: Mine\n"
    said = bookmaker("ruler")
    assert said.code == 2
    assert said.err == (
        "ruler needs either --into or --measured; "
        "write --into ruler.pdf to get the page, or --measured printer.yaml to write down what it measures\n"
    )
