"""Tiny type: hairlines and counters in printer dots, the floor of each face, type made as heavy as a printer needs."""

from __future__ import annotations

from pathlib import Path

import pytest
from pydantic import ValidationError

from bookmaker.ground.problems import Severity
from bookmaker.ground.typefaces import bundled
from bookmaker.ground.typefaces.strokes import Strokes, strokes_of
from bookmaker.ground.units import from_pt
from bookmaker.paper.eyesight import Legibility
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.page import BookWords, Inside, PageFrame
from tests.kit.fonts import font_of_boxes
from tests.kit.text_pages import PROSE, inside, lines

DOT = 25.4 / 600
FRAME = PageFrame(24, 30, 12, book=BookWords("Fog"))


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path


def of(found: Inside, key: str) -> list[str]:
    return [str(problem) for problem in found.problems if problem.field == (key,)]


def fits(folder: Path, frame: PageFrame, **keys: object) -> float:
    """The smallest size, in mm, to which a text is fitted."""
    (folder / "log.txt").write_text(PROSE, encoding="utf-8")
    loaded = TextInside.model_validate({"file": "log.txt", "size": "fit", **keys}).load(folder)
    bounds = loaded.sizes(frame)
    assert bounds
    return bounds.smallest


# ---- what is counted


def test_ink_closes_counters_from_both_sides() -> None:
    drawn = Strokes(stem=3 * DOT, hairline=DOT, counters={"a": 4 * DOT, "e": 2.5 * DOT})
    dry, wet, flooded = (Legibility(0.4, 600, strokes=drawn, ink_spread=dots * DOT) for dots in (0.0, 1.0, 2.0))
    assert [dry.stem, dry.hairline, dry.counter] == pytest.approx([3, 1, 2.5])
    assert [wet.stem, wet.hairline, wet.counter] == pytest.approx([3, 1, 0.5])
    assert (dry.clogged, wet.clogged, flooded.clogged, flooded.counter) == ("", "e", "ae", 0.0)


def test_hairlines_under_a_dot_are_told(folder: Path) -> None:
    # EB Garamond's hairlines are 0.027 em: at 2 pt half a dot of 600 to the inch, at 1200 one
    [note] = [
        problem for problem in inside(folder, PROSE, face="old style", size="2 pt").problems if "dot" in str(problem)
    ]
    assert (str(note), note.severity, note.field) == (
        "the hairlines of EB Garamond in 2 pt type are 0.5 of a printer's dot and may print broken; write weight: 1 "
        "dot, a larger size, or a sturdier face, such as sans",
        Severity.NOTE,
        ("face",),
    )
    assert not of(inside(folder, PROSE, face="sans", size="2.2 pt"), "face")
    assert not of(
        inside(folder, PROSE, PageFrame(24, 30, 12, resolution_dpi=1300.0), face="old style", size="2 pt"), "face"
    )


# ---- the floor of a face


def test_no_face_is_fitted_smaller_than_a_printer_keeps_its_counters_open(folder: Path) -> None:
    wet = PageFrame(24, 30, 12, book=BookWords("Fog"), ink_spread=0.02)
    for face, narrowest in (("text", 0.176), ("old style", 0.097), ("sans", 0.16)):
        assert fits(folder, wet, face=face) == pytest.approx((DOT + 0.04) / narrowest, rel=0.01)
    assert fits(folder, FRAME) == from_pt(1.2)
    assert fits(folder, FRAME, face="old style") == pytest.approx(DOT / 0.097, rel=0.01)


def test_makers_may_go_lower(folder: Path) -> None:
    wet = PageFrame(24, 30, 12, ink_spread=0.02)
    assert fits(folder, wet, face="old style", smallest="1 pt") == pytest.approx(from_pt(1))
    assert fits(folder, wet, face="old style", largest="1.1 pt") == pytest.approx(from_pt(1.1))


# ---- weight


@pytest.mark.parametrize(("face", "size"), [("old style", 2.2), ("text", 2.2), ("caslon", 3.0)])
def test_hairlines_become_as_thick_as_asked(folder: Path, face: str, size: float) -> None:
    plain, heavy = (inside(folder, PROSE, face=face, size=f"{size} pt", **more) for more in ({}, {"weight": "1 dot"}))
    assert plain.strokes
    assert heavy.strokes
    assert plain.strokes.hairline < DOT
    # measured on the outlines that are printed
    assert heavy.strokes.hairline == pytest.approx(DOT, rel=0.04)
    thicker = heavy.strokes.hairline - plain.strokes.hairline
    assert heavy.strokes.stem - plain.strokes.stem == pytest.approx(thicker, rel=0.1)
    assert not of(heavy, "face")
    used = {run.typeface for line in lines(heavy.pages[0]) for _, run in line.line.runs}
    assert [face.thicker for face in used] == pytest.approx([(DOT / from_pt(size) - hairline(face)) / 2], abs=2e-4)


def hairline(face: str) -> float:
    found = strokes_of(bundled(face))
    assert found
    return found.hairline


def test_type_that_is_heavy_enough_stays_as_it_is(folder: Path) -> None:
    for keys in ({"face": "sans", "size": "3 pt"}, {"face": "text bold", "size": "4 pt"}):
        plain, heavy = inside(folder, PROSE, **keys), inside(folder, PROSE, **keys, weight="1 dot")
        assert [line.line for page in heavy.pages for line in lines(page)] == [
            line.line for page in plain.pages for line in lines(page)
        ]


def test_every_style_and_every_line_is_made_heavier(folder: Path) -> None:
    text = "# Fog\n\nA *wet* and **cold** morning.[^1] " + PROSE + "\n\n[^1]: Noted later.\n"
    frame = PageFrame(24, 30, 8, book=BookWords("Fog"))
    found = inside(folder, text, frame, size="2 pt", weight="1 dot", running_heads="yes", numbers="yes", drop_capital=2)
    used = {run.typeface for page in found.pages for line in lines(page) for _, run in line.line.runs}
    # the bold has hairlines of a dot at 2 pt by itself
    assert {face.name for face in used if not face.thicker} <= {"Noto Serif Bold"}


def test_latin_words_in_a_typeface_without_them_are_made_heavier_too(folder: Path) -> None:
    font_of_boxes(folder / "own.ttf", "कमलतन ")
    found = inside(folder, "कमल Lamp तन", face="own.ttf", size="2 pt", weight="1 dot")
    used = [run for line in lines(found.pages[0]) for _, run in line.line.runs if run.text.strip()]
    faces = ["Boxes", "Noto Serif", "Boxes"]
    assert [(run.typeface.name, run.text) for run in used] == [*zip(faces, ["कमल", "Lamp", "तन"], strict=True)]
    assert used[1].typeface.thicker > 0


def test_counters_stay_open(folder: Path) -> None:
    wet = PageFrame(24, 30, 12, book=BookWords("Fog"), ink_spread=0.02)
    found = inside(folder, PROSE, wet, face="old style", size="3 pt", weight="2 dots")
    assert found.strokes
    printed = Legibility(0.4, 600, strokes=found.strokes, ink_spread=0.02)
    assert (printed.clogged, printed.counter) == ("", pytest.approx(1.0, abs=0.03))
    assert of(found, "weight") == [
        "the hairlines of EB Garamond in 3 pt type are made 1.2 dots thick, not 2: more would close the white in its "
        "letters; write a larger size, or choose a face with wider letters and sturdier hairlines, such as sans"
    ]


@pytest.mark.parametrize("written", ["1", "1 pt", "9 dots", "0 dots", "heavy"])
def test_other_weights_are_refused(written: str) -> None:
    with pytest.raises(ValidationError, match=r"\bdots?\b"):
        TextInside.model_validate({"file": "log.txt", "weight": written})


# ---- how far letters stand apart


def tracked(folder: Path, text: str, **keys: object) -> list[float]:
    """How far apart the letters of the lines of the first page stand, in ems."""
    return [line.line.tracking / line.line.size for line in lines(inside(folder, text, FRAME, **keys).pages[0])]


VERSE = "Fog in the north,\\\nrain in the west."


@pytest.mark.parametrize(("size", "share"), [("1 pt", 0.025), ("2.2 pt", 0.019), ("3.5 pt", 0.0125), ("6 pt", 0.0)])
def test_verse_of_small_type_is_set_wider(folder: Path, size: str, share: float) -> None:
    """From 6 pt down to 1 pt, in proportion, letters go up to 2.5 % of the em apart (common practice: 2 to 5 %)."""
    found = tracked(folder, VERSE, size=size)
    assert found == pytest.approx([share] * len(found))


def test_typewriters_keep_their_distances(folder: Path) -> None:
    assert tracked(folder, VERSE, face="typewriter") == [0.0, 0.0]
    assert tracked(folder, "`fog  in the north`\n\n" + VERSE, size="2.2 pt") == pytest.approx([0.0, 0.019, 0.019])


def test_tracking_is_the_makers_own_in_filled_lines_too_and_these_end_at_the_margin(folder: Path) -> None:
    found = inside(folder, PROSE, FRAME, tracking="4 %", hanging="no", justified="yes")
    area, written = FRAME.type_area(1), lines(found.pages[0])
    assert [line.end.x for line in written[:-1]] == pytest.approx([area.right] * (len(written) - 1))
    assert all(0.03 - 1e-9 <= line.line.tracking / line.line.size <= 0.07 + 1e-9 for line in written)
    assert tracked(folder, VERSE, tracking="4 %") == pytest.approx([0.04, 0.04])
    assert min(tracked(folder, PROSE, justified="yes")) < 0.02


def test_a_line_with_marks_that_must_keep_their_places_is_not_tracked_and_ends_at_the_margin(folder: Path) -> None:
    marked = PROSE.replace("keeper", "q\u0301eeper")
    found = inside(folder, marked, FRAME, tracking="4 %", hanging="no", justified="yes")
    area, written = FRAME.type_area(1), lines(found.pages[0])
    with_marks = [line for line in written[:-1] if "\u0301" in line.text]
    assert with_marks
    assert [line.line.tracking for line in with_marks] == [0.0] * len(with_marks)
    assert [line.end.x for line in with_marks] == pytest.approx([area.right] * len(with_marks))
