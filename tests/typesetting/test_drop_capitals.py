"""Drop capitals: no ink of theirs meets that of the text, in any of the typefaces here."""

from __future__ import annotations

import string
from pathlib import Path

import pytest

from bookmaker.ground.geometry import Rect
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


def meet(one: Rect, other: Rect) -> bool:
    across = min(one.right, other.right) - max(one.x, other.x)
    return across > 1e-6 and min(one.top, other.top) - max(one.y, other.y) > 1e-6


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
        for line in page:
            if line is not capital:
                assert not [letter for one in ink(capital) for other in ink(line) if meet(one, other)], line.text
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
