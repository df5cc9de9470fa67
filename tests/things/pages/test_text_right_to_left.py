"""Books that are read from the right: set if the maker's typeface has the letters."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from bookmaker.ground.problems import ShelfFileError
from bookmaker.things.book.pages.prose.loaded_text import LoadedText
from bookmaker.things.book.pages.prose.text import TextInside
from bookmaker.typesetting.page import Inside, PageFrame
from tests.kit.fonts import LETTERS, font_of_boxes
from tests.kit.recording import Written, record

FRAME = PageFrame(24, 30, 4, right_to_left=True)
TEXT = "שומר המגדלור מדליק את המנורה עם רדת הלילה, ורושם את הרוח ואת הים. " * 3


def inside(folder: Path, text: str, frame: PageFrame = FRAME, **keys: str) -> Inside:
    font_of_boxes(folder / "boxes.ttf")
    (folder / "log.txt").write_text(text, encoding="utf-8")
    entry = TextInside.model_validate(
        {"file": "log.txt", "face": "boxes.ttf", "size": 0.5, "numbers": "no", "hanging": "no", **keys}
    )
    return entry.load(folder).compose(frame)


def lines(inside: Inside) -> list[Written]:
    return record(inside.pages[0]).texts


def test_lines_begin_at_the_right_and_fill_the_measure(tmp_path: Path) -> None:
    found = lines(inside(tmp_path, f"{TEXT}\n\n{TEXT}", justified="yes"))
    area = FRAME.type_area(1)
    indents = [round(area.right - line.end.x, 4) for line in found]
    assert sorted(set(indents)) == [0, 0.5]
    last = [number - 1 for number, indent in enumerate(indents) if indent] + [len(found) - 1]
    for number, line in enumerate(found):
        if number not in last:
            assert line.at.x == pytest.approx(area.x)


def test_words_stand_from_right_to_left_and_numbers_from_left_to_right(tmp_path: Path) -> None:
    [line] = lines(inside(tmp_path, "אבג דה 12 34 ו"))
    letters = [glyph.text for _, run in line.line.runs for glyph in run.glyphs]
    assert "".join(letters) == "ו 12 34 הד גבא"


@pytest.mark.parametrize(
    ("signs", "language", "shown"),
    [
        ("”’–—…′″״׳", "he", "”אבג” דו״ח ג׳ד – ה…"),
        ("”’–—…′″", "he", "”אבג” דו\"ח ג'ד – ה…"),
        ("", "he", '"אבג" דו"ח ג\'ד -- ה...'),
        ("“”‘’–—…′″״׳", "en", '"אבג" דו"ח ג\'ד -- ה...'),
    ],
)
def test_hebrew_has_its_own_marks_as_far_as_the_typeface_has_them(
    signs: str, language: str, shown: str, tmp_path: Path
) -> None:
    font_of_boxes(tmp_path / "boxes.ttf", LETTERS + "\"'" + signs)
    (tmp_path / "log.txt").write_text('"אבג" דו"ח ג\'ד -- ה...', encoding="utf-8")
    entry = TextInside.model_validate({"file": "log.txt", "face": "boxes.ttf", "size": 0.5, "language": language})
    source = entry.load(tmp_path).source
    assert source.manuscript.text == shown
    said = [
        problem for problem in map(str, LoadedText(entry, source).compose(FRAME).problems) if "left whole" in problem
    ]
    assert said == ["where Hebrew words can be hyphenated is not known here: they are left whole"][: language == "he"]


def test_a_book_that_opens_the_other_way_is_told(tmp_path: Path) -> None:
    [problem] = inside(tmp_path, TEXT, PageFrame(24, 30, 2)).problems
    assert str(problem) == (
        "log.txt is read from right to left, but its book from left to right; "
        "write direction: right-to-left in the book"
    )
    assert inside(tmp_path, TEXT, PageFrame(24, 30, 2, right_to_left=True)).problems == ()


def test_a_typeface_without_the_letters_is_refused(tmp_path: Path) -> None:
    (tmp_path / "log.txt").write_text(TEXT, encoding="utf-8")
    with pytest.raises(ShelfFileError, match="which the typeface Noto Serif does not have"):
        TextInside(file="log.txt").load(tmp_path)


ARABIC = "كان الحارس العجوز يصعد كل مساء إلى أعلى المنارة ليشعل المصباح قبل أن تغيب الشمس وراء البحر. " * 3
TATWEEL = "\u0640"
NARROW = PageFrame(15, 60, 4, right_to_left=True)


def arabic(folder: Path, signs: str, language: str) -> list[Written]:
    font_of_boxes(folder / "boxes.ttf", "".join(sorted(set(ARABIC) - {" "})) + signs)
    (folder / "log.txt").write_text(ARABIC, encoding="utf-8")
    entry = TextInside.model_validate(
        {"file": "log.txt", "face": "boxes.ttf", "size": 0.5, "numbers": "no", "hanging": "no", "language": language}
    )
    return lines(entry.load(folder).compose(NARROW))


@pytest.mark.parametrize("language", ["ar", "fa"])
def test_arabic_lines_are_filled_by_words_drawn_out(language: str, tmp_path: Path) -> None:
    """One place a word, twice at most, never between lam and alef nor after letters that join nothing (practice)."""
    *found, last = arabic(tmp_path, TATWEEL, language)
    area = NARROW.type_area(1)
    drawn_out = [line for line in found if TATWEEL in line.text]
    assert drawn_out
    assert TATWEEL not in last.text
    assert [line.at.x for line in found] == pytest.approx([area.x] * len(found))
    for line in drawn_out:
        read = "".join(glyph.text for _, run in line.line.runs for glyph in reversed(run.glyphs))
        for word in read.split(" "):
            assert word.count(TATWEEL) <= 2
            assert word.strip(TATWEEL) == word
            assert not re.search(f"[اأإدرزو]{TATWEEL}|ل{TATWEEL}+[اأإ]", word)


@pytest.mark.parametrize(("signs", "language"), [("", "ar"), (TATWEEL, "he"), (TATWEEL, "none")])
def test_words_are_drawn_out_in_arabic_only_and_where_the_typeface_has_the_sign(
    signs: str, language: str, tmp_path: Path
) -> None:
    assert not any(TATWEEL in line.text for line in arabic(tmp_path, signs, language))
