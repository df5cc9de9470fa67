"""Ligatures in German stand within a stem only (Duden, Die deutsche Rechtschreibung, 2006, p. 112, as it is quoted)."""

from __future__ import annotations

import pytest

from bookmaker.ground.typefaces import bundled
from bookmaker.typesetting.lines.fount import Fount, Style


def glyphs(word: str, spoken: str) -> int:
    """How many glyphs a word has in a typeface with ligatures."""
    fount = Fount({Style.ROMAN: bundled("caslon")}, None, spoken)
    return sum(len(run.glyphs) for run in fount.runs(word))


@pytest.mark.parametrize(
    "word", ["Auflage", "auffallen", "Schifffahrt", "Stofflager", "käuflich", "Kaufinteresse", "höflich", "Laufleine"]
)
def test_no_ligature_joins_the_parts_of_a_compound(word: str) -> None:
    assert glyphs(word, "de") == glyphs(word, "de-AT") == len(word)


@pytest.mark.parametrize("word", ["Pflanze", "Waffel", "finden", "Affe", "fliegen", "Grafik", "pfiffig"])
def test_ligatures_stay_within_a_stem(word: str) -> None:
    assert glyphs(word, "de") < len(word)


@pytest.mark.parametrize("word", ["Auflage", "shelfful", "afflict"])
def test_other_languages_keep_theirs(word: str) -> None:
    assert glyphs(word, "en") < len(word)
