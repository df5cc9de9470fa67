"""A typeface without Latin letters: the text face stands in for Latin words, figures and points."""

from __future__ import annotations

import pickle
from pathlib import Path

import pytest

from bookmaker.ground.type_styles import Style
from bookmaker.ground.typefaces import Typeface, bundled, load_typeface
from bookmaker.typesetting.lines.fount import Fount
from bookmaker.typesetting.manuscripts.manuscript import read_manuscript
from bookmaker.typesetting.punctuation import punctuation_of
from bookmaker.typesetting.stand_ins import latin_stand_in
from tests.kit.fonts import font_of_boxes

HEBREW = "אבגדהוזחטיכלמנסעפצקרשת "
DEVANAGARI = "अआकखगतदनपबमयरलवसह "


def faced(folder: Path, letters: str) -> Typeface:
    return load_typeface(font_of_boxes(folder / "own.ttf", letters))


def fount_of(face: Typeface, *, right_to_left: bool = False) -> Fount:
    return Fount({Style.ROMAN: face}, None, right_to_left=right_to_left, stand_in=latin_stand_in(face))


def test_only_typefaces_without_any_latin_letter_are_stood_in_for(tmp_path: Path) -> None:
    assert latin_stand_in(faced(tmp_path, HEBREW)) is bundled("text")
    assert latin_stand_in(bundled("sans")) is latin_stand_in(faced(tmp_path, HEBREW + "a")) is None


def test_words_are_set_in_two_typefaces_as_they_are_read(tmp_path: Path) -> None:
    face = faced(tmp_path, DEVANAGARI)
    runs = fount_of(face).runs("कमल,Lamp“तन”")
    assert [(run.typeface.name, run.text) for run in runs] == [
        ("Boxes", "कमल"),
        ("Noto Serif", ",Lamp“"),
        ("Boxes", "तन"),
        ("Noto Serif", "”"),
    ]


def test_points_stand_at_the_left_of_words_that_are_read_from_the_right(tmp_path: Path) -> None:
    fount = fount_of(faced(tmp_path, HEBREW), right_to_left=True)
    assert [run.text for run in fount.runs("ספר,")] == [",", "ספר"]
    assert [run.text for run in fount.runs("Lamp,")] == ["Lamp,"]


def test_a_fount_in_another_process_has_the_same_typefaces(tmp_path: Path) -> None:
    fount = fount_of(faced(tmp_path, DEVANAGARI))
    again = pickle.loads(pickle.dumps(fount))
    assert again.key == fount.key != Fount(fount.faces, None).key


@pytest.mark.parametrize(("sign", "wanted"), [('कमल "a7" - तन.', []), ("कमल π", ["π"]), ("कमल च", ["च"])])
def test_a_text_is_refused_only_for_what_neither_has(tmp_path: Path, sign: str, wanted: list[str]) -> None:
    """Greek in Hindi is nothing that the text face is asked for."""
    path = tmp_path / "text.txt"
    path.write_text(sign, encoding="utf-8")
    read = read_manuscript(path, faced(tmp_path, DEVANAGARI), punctuation=punctuation_of("hi"))
    assert [problem.message.split(" has no glyph for ")[1][0] for problem in read.problems] == wanted
    if not wanted:
        assert read.text == "कमल “a7” – तन."
