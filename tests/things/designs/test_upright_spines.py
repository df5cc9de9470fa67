"""Titles in Chinese, Japanese and Korean: in the typeface of the book's text, upright down the spine."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.ground.typefaces import Typeface, Vertical, load_typeface
from bookmaker.things.book.designs.design import DrawnDesign, Words
from bookmaker.things.book.designs.styles.cloth import Cloth
from tests.kit.flats import flat_of
from tests.kit.fonts import font_of_boxes
from tests.kit.recording import Written
from tests.kit.shelves import changed
from tests.kit.styles import drawn, every_style

TITLE, AUTHOR = "島の灯台", "波野"


@pytest.fixture(scope="module")
def own(tmp_path_factory: pytest.TempPathFactory) -> Typeface:
    return load_typeface(font_of_boxes(tmp_path_factory.mktemp("wide") / "own.ttf", f" I{TITLE}{AUTHOR}등대"))


def runs_down(text: Written) -> bool:
    """Whether it was turned clockwise by a quarter."""
    return (text.transform.a, text.transform.b) == pytest.approx((0.0, -1.0))


@every_style
@pytest.mark.parametrize("title", [TITLE, "등대"])
def test_signs_stand_upright_down_the_spine_and_run_across_the_front(
    model: type[DrawnDesign], title: str, own: Typeface
) -> None:
    words = Words(title, AUTHOR, "I", own=own)
    canvas = drawn(model, flat_of(5.0), words)
    wide = [text for text in canvas.texts if text.text in (title, AUTHOR)]
    assert any(map(runs_down, wide))
    for text in wide:
        for _, run in text.line.runs:
            assert isinstance(run.typeface, Vertical) is runs_down(text)
            assert run.typeface.path == own.path


@pytest.mark.parametrize("way", ["auto", "down"])
def test_a_spine_so_wide_that_others_are_lettered_across_is_lettered_down(way: str, own: Typeface) -> None:
    def ways(words: Words, **keys: str) -> set[bool]:
        texts = drawn(Cloth, flat_of(16.0), words, front_title="no", **keys).texts
        return {runs_down(text) for text in texts if text.text == words.title}

    assert ways(Words("Salt")) == {False}
    assert ways(Words(TITLE, own=own), spine_title=way) == {True}
    assert ways(Words(TITLE, own=own), spine_title="across") == {False}


def test_latin_titles_stay_in_the_typefaces_of_covers(own: Typeface) -> None:
    texts = drawn(Cloth, flat_of(5.0), Words("I", own=own)).texts
    assert own.path not in {run.typeface.path for text in texts for _, run in text.line.runs}


def test_the_typeface_is_that_of_the_text(tmp_path: Path) -> None:
    font_of_boxes(tmp_path / "own.ttf", f" {TITLE}{AUTHOR}")
    (tmp_path / "a.txt").write_text(TITLE * 40, encoding="utf-8")
    inside = "inside: {kind: text, file: a.txt, face: own.ttf, language: ja, numbers: no}"
    for part, wrong in (("", ["title"]), (f"\n    {inside}", [])):
        text = changed(("title: Tide Tables", f"title: {TITLE}{part}"))
        (tmp_path / "shelf.yaml").write_text(text, encoding="utf-8")
        problems = check(tmp_path / "shelf.yaml").problems
        found = [problem for problem in map(str, problems) if "no typeface of the cover has the" in problem]
        assert len(found) == len(wrong)
