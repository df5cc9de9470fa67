"""Fonts that no book can be set in, or that ask for hours: refused with what is wrong, before they are used."""

from __future__ import annotations

import time
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

import pytest
from fontTools.feaLib.builder import addOpenTypeFeaturesFromString
from fontTools.ttLib import TTFont
from fontTools.ttLib.tables.DefaultTable import DefaultTable

from bookmaker.ground.problems import ShelfFileError
from bookmaker.ground.typefaces import bundled, load_typeface
from bookmaker.ground.typefaces.names import BUNDLED
from bookmaker.ground.typefaces.soundness import look_over
from bookmaker.ground.typefaces.trial import FAILED, MOST_TRIED
from tests.kit.fonts import LETTERS, calls_upon_calls, font_of_boxes, without_end
from tests.kit.shelves import ONE_BOOK, checked, errors, refused

MANY = "".join(map(chr, range(0x4E00, 0x4E00 + MOST_TRIED)))

UNTRIED = "".join(map(chr, range(0xE000, 0xE008)))

ICONS = "\ue000\ue001\ue002"


def with_table(path: Path, change: Callable[[TTFont], None]) -> Path:
    """A font of boxes with a table that says something else."""
    font_of_boxes(path)
    tables = TTFont(path, recalcBBoxes=False)
    change(tables)
    tables.save(path)
    return path


def raw(path: Path, tag: str, change: Callable[[bytearray], None]) -> Path:
    """A font of boxes with other bytes in a table, as no program for fonts would write them."""
    font_of_boxes(path)
    place = TTFont(path).reader.tables[tag]
    data = bytearray(path.read_bytes())
    table = data[place.offset : place.offset + place.length]
    change(table)
    data[place.offset : place.offset + place.length] = table
    path.write_bytes(data)
    return path


def set_at(at: int, value: int) -> Callable[[bytearray], None]:
    def change(table: bytearray) -> None:
        table[at : at + 2] = value.to_bytes(2, "big", signed=value < 0)

    return change


def no_width(tables: TTFont) -> None:
    tables["hmtx"].metrics = dict.fromkeys(tables["hmtx"].metrics, (0, 0))


def no_blank(tables: TTFont) -> None:
    tables["hmtx"].metrics["u0020"] = (0, 0)


def growing(tables: TTFont) -> None:
    """Every letter becomes ten, each of which becomes ten, and so on."""
    names = [f"u{ord(letter):04X}" for letter in "abcdefg"]
    steps = [f"sub {one} by {' '.join([two] * 10)};" for one, two in pairwise(names)]
    rules = "\n".join(f"lookup L{number} {{ {step} }} L{number};" for number, step in enumerate(steps))
    used = "\n".join(f"lookup L{n};" for n in range(len(steps)))
    addOpenTypeFeaturesFromString(tables, f"{rules}\nfeature ccmp {{ {used} }} ccmp;")


UNSOUND: dict[str, tuple[Callable[[Path], Path], str]] = {
    "letters without end": (without_end, "is damaged: a letter is made of too many parts"),
    "parts of parts": (lambda path: without_end(path, 30, 1), "a letter is made of itself, or of parts of parts"),
    "an em of nothing": (lambda path: raw(path, "head", set_at(18, 0)), "is damaged: an em of 0 units"),
    "no ascent": (lambda path: raw(path, "hhea", set_at(4, 0)), "its letters reach from -200 to 0 units"),
    "a deep descent": (lambda path: raw(path, "hhea", set_at(6, -30000)), "its letters reach from -30000 to 800"),
    "no widths": (lambda path: raw(path, "hhea", set_at(34, 0)), "0 widths for "),
    "too many widths": (lambda path: raw(path, "hhea", set_at(34, 999)), "999 widths for "),
    "more glyphs than widths": (lambda path: raw(path, "maxp", set_at(4, 9999)), "how wide all letters are"),
    "names without end": (lambda path: raw(path, "name", set_at(2, 60000)), "is damaged: a table ends too soon"),
    "icons": (lambda path: font_of_boxes(path, ICONS), "has no letters that can be seen"),
    "blanks": (lambda path: font_of_boxes(path, " "), "has no letters that can be seen"),
    "letters of no width": (lambda path: with_table(path, no_width), "has no letters that can be seen"),
    "a blank of no width": (lambda path: with_table(path, no_blank), "has no width for the blank between words"),
    "calls upon calls": (calls_upon_calls, FAILED),
    "calls too deep": (lambda path: calls_upon_calls(path, 12, 1), FAILED),
    "letters that grow": (lambda path: with_table(path, growing), FAILED),
}


@pytest.mark.parametrize("what", UNSOUND)
def test_an_unsound_font_is_refused_soon(what: str, tmp_path: Path) -> None:
    make, told = UNSOUND[what]
    path = make(tmp_path / "own.ttf")
    start = time.process_time()
    with pytest.raises(ShelfFileError) as refusal:
        load_typeface(path)
    assert time.process_time() - start < 3
    (problem,) = refusal.value.problems
    assert problem.message.startswith("own.ttf ")
    assert told in problem.message
    assert problem.remedy


def grown_where_they_meet(tables: TTFont, times: int) -> None:
    """An h turns a t before it into ten of the first sign that no trial reaches, and so on: none grows alone."""
    names = ["u0074", *(f"u{ord(sign):04X}" for sign in UNTRIED[:times])]
    steps = [
        f"lookup L{at} {{ sub {one} by {' '.join([two] * 10)}; }} L{at};"
        for at, (one, two) in enumerate(pairwise(names))
    ]
    met = "lookup met { sub u0074' lookup L0 u0068; } met;"
    used = " ".join(f"lookup L{at};" for at in range(1, len(steps)))
    rules = "\n".join((steps[0], met, *steps[1:]))
    addOpenTypeFeaturesFromString(tables, f"{rules}\nfeature liga {{ lookup met; {used} }} liga;")


@pytest.mark.parametrize("times", [3, 6])
def test_what_no_trial_finds_is_refused_where_it_is_set(tmp_path: Path, times: int) -> None:
    """A thousand glyphs, or more than HarfBuzz has room for."""
    path = font_of_boxes(tmp_path / "own.ttf", LETTERS + MANY + UNTRIED)
    tables = TTFont(path)
    grown_where_they_meet(tables, times)
    tables.save(path)
    text = ONE_BOOK + "    inside: {kind: text, file: a.txt, face: ./own.ttf}\n"
    (tmp_path / "a.txt").write_text("at a tide", encoding="utf-8")
    assert load_typeface(path).shape("at").width == 1
    assert not errors(checked(text, tmp_path))
    (tmp_path / "a.txt").write_text("at the tide", encoding="utf-8")
    (problem,) = refused(text, tmp_path)
    assert "own.ttf is damaged: it makes glyphs without end of 'the'" in problem


def test_names_that_share_their_bytes_are_counted_each(tmp_path: Path) -> None:
    """Five thousand records of one text of sixty thousand bytes: 300 megabytes in an eighth of one."""
    path = font_of_boxes(tmp_path / "own.ttf")
    tables = TTFont(path)
    records = b"\0\3\0\1\4\t\0\4\xea\x60\0\0" * 5_000
    tables["name"] = named = DefaultTable("name")
    named.data = b"\0\0" + (5_000).to_bytes(2) + (6 + len(records)).to_bytes(2) + records + b"\0x" * 30_000
    tables.save(path)
    with pytest.raises(ShelfFileError, match=r"own\.ttf is damaged: its names have no end"):
        load_typeface(path)


@pytest.mark.parametrize("name", BUNDLED)
def test_the_typefaces_that_come_with_it_are_sound(name: str) -> None:
    look_over(bundled(name).data)


def test_a_face_without_latin_letters_has_heights(tmp_path: Path) -> None:
    path = font_of_boxes(tmp_path / "own.ttf", LETTERS[:27])
    tables = TTFont(path)
    tables["OS/2"].sxHeight = tables["OS/2"].sCapHeight = 0
    tables.save(path)
    typeface = load_typeface(path)
    assert (typeface.x_height, typeface.cap_height) == (pytest.approx(0.4), pytest.approx(0.56))  # of 0.8 em


def test_the_shelf_says_where_an_unsound_font_is_named(tmp_path: Path) -> None:
    font_of_boxes(tmp_path / "own.ttf", ICONS)
    (tmp_path / "a.txt").write_text("Tide.", encoding="utf-8")
    text = ONE_BOOK + "    inside: {kind: text, file: a.txt, face: ./own.ttf}\n"
    (problem,) = refused(text, tmp_path)
    assert problem.endswith("own.ttf has no letters that can be seen; choose another typeface")


def test_the_typefaces_that_come_with_it_are_not_tried_out(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    tried: list[bytes] = []
    monkeypatch.setattr("bookmaker.ground.typefaces.files.try_out", tried.append)
    load_typeface(bundled("sans").path)
    assert tried == []
    load_typeface(font_of_boxes(tmp_path / "own.ttf"))
    assert len(tried) == 1
