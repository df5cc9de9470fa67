"""Slips of the keyboard that YAML reads as something else: each is told with what to write."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import check
from tests.kit.shelves import ONE_BOOK, refused, written


@pytest.mark.parametrize(
    ("right", "wrong", "told"),
    [
        ("height: 21 mm", "height: 21,5 mm", ["write 21.5 mm: between braces a comma ends a value"]),
        ("height: 21 mm, width: 15 mm", "height: 21,5 mm, width: 15,5 mm",
         ["between braces a comma ends a value: write numbers with a point, as in 21.5 mm"]),
        ("    cover:", '    inside: {kind: text, file: "texts\\walk.txt"}\n    cover:', ["write / in paths"]),
        ("    cover:", "    inside: {kind: text, file: texts\\walk.txt}\n    cover:",
         ["write / in place of \\: texts/walk.txt"]),
        ("  - title: Tide Tables", '  - title: "A "Short" Walk"',
         ["put the whole text in single quotes: 'A \"Short\" Walk'"]),
        ("  - title: Tide Tables", "  -title: Tide Tables", ["write - title: with a blank after the dash"]),
    ],
)  # fmt: skip
def test_what_to_write_is_said(right: str, wrong: str, told: list[str], tmp_path: Path) -> None:
    assert right in ONE_BOOK
    said = "\n".join(refused(ONE_BOOK.replace(right, wrong, 1), tmp_path))
    for words in told:
        assert words in said


@pytest.mark.parametrize(
    ("right", "wrong"),
    [
        ("height: 21 mm", "height: 21,5 mm"),
        ("kind: wrap, stock: card", "kind: wrap, stok: card"),
        ("caliper: 75 um", "pile: 100 sheets = 0.9 mm"),
    ],
)
def test_one_slip_is_told_once(right: str, wrong: str, tmp_path: Path) -> None:
    """Not as a wrong value and a missing or an unknown key besides."""
    assert right in ONE_BOOK
    assert len(refused(ONE_BOOK.replace(right, wrong, 1), tmp_path)) == 1


@pytest.mark.parametrize(
    ("title", "told", "write", "meant"),
    [
        ("""'Don't stop'""", "the apostrophe ends the text", '''"Don't stop"''', "Don't stop"),
        ('''"Don't "stop" here"''', "marks within quotation marks", """'Don''t "stop" here'""", 'Don\'t "stop" here'),
        ('''"Don't" said "No"''', "after the first words ends", """'"Don''t" said "No"'""", '"Don\'t" said "No"'),
        ("Weather: a Diary", "a colon with a blank after it", '"Weather: a Diary"', "Weather: a Diary"),
        ("- An Index", "begins with a dash", '"- An Index"', "- An Index"),
    ],
)
def test_what_is_to_be_written_of_a_title_can_be_pasted(
    title: str, told: str, write: str, meant: str, tmp_path: Path
) -> None:
    [said] = refused(ONE_BOOK.replace("Tide Tables", title, 1), tmp_path)
    assert told in said and write in said
    [book] = check(written(ONE_BOOK.replace("Tide Tables", write, 1), tmp_path)).plan.plans.values()
    assert book.name == meant
