"""`bookmaker manual`: a word in the terminal, all of it as a file."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.kit.command_line import bookmaker


@pytest.mark.parametrize("columns", [60, 80])
@pytest.mark.parametrize("words", [(), ("accordion",), ("surround",), ("commands",), ("slack",), ("tuck", "box")])
def test_it_fits_the_terminal(words: tuple[str, ...], columns: int) -> None:
    said = bookmaker("manual", *words, columns=columns)
    assert (said.code, said.err) == (0, "")
    examples = [line for line in said.out.splitlines() if line.startswith("  ")]
    assert max(len(line) for line in said.out.splitlines() if line not in examples) <= columns


def test_words_that_no_section_is_about_are_shown_where_they_stand() -> None:
    said = bookmaker("manual", "tuck", "box")
    assert "Boxes (chapter things)" in said.out and "a tube whose ends are tucked in" in said.out
    assert "key of a tray" not in said.out


def test_what_to_read_besides_can_be_typed_as_it_stands() -> None:
    said = bookmaker("manual", "accordion", columns=400)
    _, _, places = said.out.partition("See also (type bookmaker manual and one of these):\n")
    shown = [line.strip() for line in places.splitlines() if not line.strip().startswith("and ")]
    assert len(shown) > 4
    for place in shown:
        chapter = place.split()[0]
        assert f"(chapter {chapter})" in bookmaker("manual", *place.split()).out.splitlines()[0]


def test_signs_of_markup_that_are_meant_are_shown() -> None:
    section = "every-message pages of text"
    said = bookmaker("manual", *section.split(), columns=400)
    shown = " ".join(said.out.split())
    assert r"write *…* for italic, **…** for bold" in shown
    assert r"or \# for the sign itself" in shown


def test_one_s_more_or_less_does_not_matter_and_a_slip_is_met_with_the_word() -> None:
    assert bookmaker("manual", "accordions").out == bookmaker("manual", "accordion").out
    assert bookmaker("manual", "accordeon").err.startswith(
        "the manual does not have accordeon; did you mean accordion?"
    )


def test_an_unknown_word_is_refused() -> None:
    said = bookmaker("manual", "gramophone")
    assert (said.code, said.out) == (2, "")
    assert said.err.startswith("the manual does not have gramophone; run bookmaker manual")


def test_the_page_is_written_and_written_again_but_over_nothing_else(tmp_path: Path) -> None:
    page = tmp_path / "manual.html"
    for _ in range(2):
        assert bookmaker("manual", "--into", str(page)).code == 0
    assert page.read_text(encoding="utf-8").startswith("<!doctype html>")
    page.write_text("<!doctype html>\nmine", encoding="utf-8")
    assert bookmaker("manual", "--into", str(page)).code == 2
    assert page.read_text(encoding="utf-8").endswith("mine")
