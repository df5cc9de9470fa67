"""Drop capitals: no ink of theirs meets that of the text, in any of the typefaces here."""

from __future__ import annotations

import io
import string
from collections.abc import Iterator
from math import comb
from pathlib import Path

import pytest
from fontTools.pens.basePen import decomposeQuadraticSegment
from fontTools.pens.recordingPen import DecomposingRecordingPen
from fontTools.ttLib import TTFont

from bookmaker.ground.geometry import Point, Rect
from bookmaker.ground.typefaces import bundled
from bookmaker.ground.typefaces.names import BUNDLED
from bookmaker.typesetting.page import Inside
from tests.kit.recording import Written
from tests.kit.text_pages import FACE, FRAME, PROSE, SIZE, inside, lines

LETTERS = string.ascii_uppercase + "ÀÉÅÇÑÖØŞÞ" + "ΑΈΞΩ" + "ЙЁЩФД"


def ink(line: Written) -> list[Rect]:
    """The boxes around the ink of the glyphs of a line, in mm."""
    found = []
    for start, run in line.line.runs:
        x = line.at.x + start
        for glyph in run.glyphs:
            bottom, top = run.typeface.extent(glyph.gid)
            left, right = run.typeface.breadth(glyph.gid)
            size = line.line.size
            if right > left:
                at = x + (glyph.dx + left) * size, line.at.y + (glyph.dy + bottom) * size
                found.append(Rect(*at, (right - left) * size, (top - bottom) * size))
            x += glyph.advance * size + line.line.tracking
    return found


CHORDS = 40


def outline_of(line: Written) -> list[tuple[float, float]]:
    """Points close to one another all along the outlines of a line, in mm, as fontTools reads them.

    A capital may be several glyphs: where a typeface has no such letter, its accent is a glyph of its own.
    """
    found: list[tuple[float, float]] = []
    [(start, run)] = line.line.runs
    x, size = line.at.x + start, line.line.size
    with TTFont(io.BytesIO(run.typeface.data)) as font:
        glyphs, scale = font.getGlyphSet(), size / run.typeface.units_per_em
        for glyph in run.glyphs:
            pen = DecomposingRecordingPen(glyphs)
            glyphs[font.getGlyphName(glyph.gid)].draw(pen)
            left, up = x + glyph.dx * size, line.at.y + glyph.dy * size
            found += [(left + px * scale, up + py * scale) for px, py in along(pen.value)]
            x += glyph.advance * size
    return found


def along(commands: list[tuple[str, tuple[tuple[float, float], ...]]]) -> Iterator[tuple[float, float]]:
    at = begin = (0.0, 0.0)
    for kind, points in commands:
        if kind == "moveTo":
            at = begin = points[0]
        parts = decomposeQuadraticSegment(points) if kind == "qCurveTo" else [points or (begin,)]
        for part in parts if kind != "moveTo" else []:
            for step in range(CHORDS + 1):
                yield on_curve((at, *part), step / CHORDS)
            at = part[-1]


def on_curve(points: tuple[tuple[float, float], ...], share: float) -> tuple[float, float]:
    """Bernstein's polynomials."""
    n = len(points) - 1
    weights = [comb(n, k) * share**k * (1 - share) ** (n - k) for k in range(n + 1)]
    x, y = (sum(weight * point[axis] for weight, point in zip(weights, points, strict=True)) for axis in (0, 1))
    return x, y


def lies_in(at: tuple[float, float], box: Rect) -> bool:
    return box.x + 1e-6 < at[0] < box.right - 1e-6 and box.y + 1e-6 < at[1] < box.top - 1e-6


@pytest.mark.parametrize("face", BUNDLED)
@pytest.mark.parametrize("depth", ["2", "3", "5"])
def test_no_capital_meets_any_line(tmp_path: Path, face: str, depth: str) -> None:
    for letter in LETTERS:
        if bundled(face).missing(letter + letter.lower()):
            continue
        text = f"# Fogs by Day\n\n{letter}egypten by night. {PROSE}{PROSE}"
        page = lines(inside(tmp_path, text, face=face, drop_capital=depth).pages[0])
        capital = max(page, key=lambda line: line.line.size)
        assert capital.text == letter
        left = min(box.x for box in ink(capital))
        outline = outline_of(capital)
        around = Rect.around([Point(*at) for at in outline])
        for line in page:
            if line is not capital:
                near = [box for box in ink(line) if box.overlaps(around)]
                assert not [at for at in outline for box in near if lies_in(at, box)], line.text
        assert left == pytest.approx(FRAME.type_area(1).x)


@pytest.mark.parametrize("letter", "JQ")
def test_a_letter_with_a_tail_stands_with_it_on_the_last_baseline(tmp_path: Path, letter: str) -> None:
    capital, *rest = lines(inside(tmp_path, f"# Fog\n\n{letter}uite. {PROSE}", drop_capital="3").pages[0])[1:]
    bottom = capital.at.y + FACE.shape(letter).bottom * capital.line.size
    top = capital.at.y + FACE.shape(letter).top * capital.line.size
    assert bottom == pytest.approx(rest[2].at.y)
    assert top == pytest.approx(rest[0].at.y + FACE.cap_height * SIZE)


def test_accents_stand_over_the_first_line_where_a_heading_leaves_room(tmp_path: Path) -> None:
    plain, accented = (
        lines(inside(tmp_path, f"# Fog\n\n{letter}lan. {PROSE}", drop_capital="3").pages[0])[1] for letter in "EÉ"
    )
    assert plain.line.size == accented.line.size
    first = lines(inside(tmp_path, f"Élan. {PROSE}", drop_capital="3").pages[0])[0]
    assert first.text == "É"
    assert first.at.y + FACE.shape("É").top * first.line.size <= FRAME.type_area(1).top + 1e-6


def plain_note(found: Inside) -> list[str]:
    return [str(problem) for problem in found.problems if "drop capital" in problem.message]


def test_a_chapter_that_begins_with_a_table_is_noted(tmp_path: Path) -> None:
    table = "| Oil | Wick |\n|---|---|\n| one | two |"
    [note] = plain_note(inside(tmp_path, f"# Fog\n\n{table}\n\n# Rain\n\n{PROSE}", drop_capital="3"))
    assert note.startswith("1 chapter of log.md begins without a drop capital; the first text, 'Oil")
    assert "is a table" in note


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("Thick.", "the first text, 'Thick.', is shorter than it is deep"),
        (f"1887 was a year. {PROSE}", "does not begin with a capital letter"),
        (f"— No. {PROSE}", "does not begin with a capital letter"),
        (f"the fog. {PROSE}", "does not begin with a capital letter"),
        ("The lamp is lit,\\\nthe glass is wiped.", "is verse"),
    ],
)
def test_chapters_without_a_capital_are_noted(tmp_path: Path, text: str, why: str) -> None:
    found = inside(tmp_path, f"# Fog\n\n{text}\n\n# Rain\n\n{PROSE}", drop_capital="3")
    [note] = plain_note(found)
    assert note.startswith("1 chapter of log.md begins without a drop capital; the first text, '")
    assert why in note
    assert lines(found.pages[0])[1].text.startswith(text.partition(" ")[0])
    assert lines(found.pages[1])[1].text == "T"


@pytest.mark.parametrize(
    ("text", "capital", "beside"),
    [
        ("*Never* was", "N", "ever was"),
        ("“You’ll see", "Y", "ou’ll see"),
        ("’Tis so", "T", "is so"),
        ("NOBODY came", "N", "OBODY came"),
        ("¿Quién es", "Q", "uién es"),
        ("A lamp", "A", "lamp"),
        ("O’Dell said", "O", "’Dell said"),
    ],
)
def test_beginnings_that_have_a_capital(tmp_path: Path, text: str, capital: str, beside: str) -> None:
    found = inside(tmp_path, f"# Fog\n\n{text} {PROSE}", drop_capital="2", punctuation="as written")
    page = lines(found.pages[0])
    assert not plain_note(found)
    place = next(place for place, line in enumerate(page) if line.text == capital)
    assert page[place + 1].text.startswith(beside)


def test_lines_beside_a_capital_are_quoted_with_it(tmp_path: Path) -> None:
    text = "# Fog\n\nNobody straightforwardnessly, uninterruptedly acknowledges unextraordinarily x"
    found = inside(tmp_path, text, drop_capital="2", language="none", justified="yes")
    [told] = [problem.message for problem in found.problems if "short of the margin" in problem.message]
    assert told.endswith("the first one 'Nobody straightforwardnessly,'")


def lefts(found: Inside, depth: int) -> list[float]:
    """Where the lines beside the capital of the first page begin, and those under it, in ems from the margin."""
    page = lines(found.pages[0])
    size = page[-1].line.size
    return [(line.at.x - FRAME.type_area(1).x) / size for line in page[2 : 3 + depth]]


@pytest.mark.parametrize("letter", "LQAR")
def test_lines_over_a_long_foot_follow_the_contour_of_their_capital(tmp_path: Path, letter: str) -> None:
    """The long tails of EB Garamond: without that a hole of most of an em stands over them."""
    found = inside(tmp_path, f"# Fog\n\n{letter}ate. {PROSE}", face="old style", drop_capital="3")
    first, second, third, below = lefts(found, 3)
    assert below == pytest.approx(0)
    assert first <= second <= third
    assert third - first > 0.4
    assert 0.15 < first - max(x for x, y in sides(found, 1)) < 0.7


def sides(found: Inside, line: int) -> list[tuple[float, float]]:
    """The outline of the capital at the height of one of its lines, in ems from the margin and its baseline."""
    page = lines(found.pages[0])
    capital, beside = page[1], page[1 + line]
    size = page[-1].line.size
    at = [((x - FRAME.type_area(1).x) / size, (y - beside.at.y) / size) for x, y in outline_of(capital)]
    return [(x, y) for x, y in at if 0 < y < FACE.cap_height]


@pytest.mark.parametrize("letter", "BCDEHMNTVWY")
def test_lines_beside_what_is_as_wide_above_begin_under_one_another(tmp_path: Path, letter: str) -> None:
    first, second, third, _ = lefts(inside(tmp_path, f"# Fog\n\n{letter}ate. {PROSE}", drop_capital="3"), 3)
    assert first == pytest.approx(second) == pytest.approx(third)


SPOKEN = f"# Rain\n\n{PROSE}\n\n## Drops\n\nSome fell. {PROSE}\n\n"
"""A chapter whose head stands over text and a section: so others are chapters too, whatever follows them."""


def test_a_chapter_that_begins_with_the_head_of_a_section_has_its_capital_under_it(tmp_path: Path) -> None:
    text = f"{SPOKEN}# Fog\n\n## Banks\n\n{PROSE}\n\n## Bells\n\nSome rang. {PROSE}"
    found = inside(tmp_path, text, drop_capital="3")
    pages = [[line.text for line in lines(page)] for page in found.pages]
    opens = next(page for page in pages if page[:1] == ["Fog"])
    assert opens[:3] == ["Fog", "Banks", "T"]
    assert sum(line == "T" for page in pages for line in page) == 2
    assert not any(line == "S" for page in pages for line in page)
    assert not plain_note(found)


def test_text_under_the_title_of_all_has_no_capital(tmp_path: Path) -> None:
    found = inside(tmp_path, f"# Fogs\n\n## Banks\n\n{PROSE}\n\n## Bells\n\n{PROSE}", drop_capital="3")
    assert [line.text for line in lines(found.pages[1])][:2] == ["Banks", "T"]


def test_an_accent_under_the_head_of_a_section_keeps_clear_of_it(tmp_path: Path) -> None:
    found = inside(tmp_path, f"{SPOKEN}# Fog\n\n## Banks\n\nÉlan. {PROSE}", drop_capital="3")
    page = next(page for page in map(lines, found.pages) if page and page[0].text == "Fog")
    _, section, capital, *_ = page
    foot = section.at.y + FACE.shape("g").bottom * section.line.size
    assert capital.at.y + FACE.shape("É").top * capital.line.size < foot
