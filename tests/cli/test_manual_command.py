"""`bookmaker manual`: a word in the terminal, all of it as a file."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.kit.command_line import bookmaker


@pytest.mark.parametrize("columns", [60, 80])
@pytest.mark.parametrize("words", [(), ("accordion",), ("surround",), ("commands",), ("slack",)])
def test_it_fits_the_terminal(words: tuple[str, ...], columns: int) -> None:
    said = bookmaker("manual", *words, columns=columns)
    assert (said.code, said.err) == (0, "")
    examples = [line for line in said.out.splitlines() if line.startswith("  ")]
    assert max(len(line) for line in said.out.splitlines() if line not in examples) <= columns


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
