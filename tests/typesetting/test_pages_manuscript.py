"""Text files: what is read from them and what is refused."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bookmaker.ground.problems import Severity, ShelfFileError
from bookmaker.ground.typefaces import bundled
from bookmaker.typesetting.manuscripts.manuscript import TEXT, Manuscript, read_manuscript


def read(tmp_path: Path, data: bytes | str, *, checked: bool = True) -> Manuscript:
    path = tmp_path / "log.txt"
    path.write_bytes(data if isinstance(data, bytes) else data.encode())
    return read_manuscript(path, bundled("text") if checked else None)


def refusal(path: Path) -> str:
    with pytest.raises(ShelfFileError) as caught:
        read_manuscript(path)
    [problem] = caught.value.problems
    assert problem.field == ("file",)
    return str(problem)


def refusal_of(tmp_path: Path, data: bytes | str) -> str:
    path = tmp_path / "log.txt"
    path.write_bytes(data if isinstance(data, bytes) else data.encode())
    return refusal(path)


# ---- what is read


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_line_ends_and_byte_order_marks_make_no_difference(tmp_path: Path, end: str, mark: str) -> None:
    text = mark + end.join(["", "The first", "  paragraph. ", "", " ", "The second.", "", ""])
    manuscript = read(tmp_path, text)
    assert manuscript == Manuscript.plain("log.txt", "The first paragraph.\nThe second.")
    assert manuscript.words == 5


@given(paragraphs=st.lists(st.lists(st.text("abc.é", min_size=1), min_size=1), min_size=1), data=st.data())
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
def test_all_words_are_kept_whatever_stands_between_them(
    tmp_path: Path, paragraphs: list[list[str]], data: st.DataObject
) -> None:
    between = st.sampled_from([" ", "  ", "\n", " \r\n", "\r", "\u2003", "\x0c"])
    gaps = st.sampled_from(["\n\n", "\r\n\r\n", "\n \n", "\n\n\n"])
    written = ""
    for words in paragraphs:
        written += "".join(word + data.draw(between) for word in words) + data.draw(gaps)
    manuscript = read(tmp_path, written)
    assert [part.split(" ") for part in manuscript.text.split("\n")] == paragraphs
    assert manuscript.words == sum(map(len, paragraphs))


def test_no_break_spaces_hold_words_together(tmp_path: Path) -> None:
    manuscript = read(tmp_path, "10\u00a0km  of\u202ffog \u00a0 end\n\u00a0\n\nnext")
    assert manuscript.text == "10\u00a0km of\u202ffog end\nnext"
    assert manuscript.words == 4


def test_tabs_are_spaces_and_noted(tmp_path: Path) -> None:
    manuscript = read(tmp_path, "wind\tnorth")
    assert manuscript.text == "wind north"
    assert [(p.message, p.severity, p.field) for p in manuscript.problems] == [
        ("log.txt has tabs, set as spaces", Severity.NOTE, ("file",))
    ]


def test_control_characters_are_left_out_and_said(tmp_path: Path) -> None:
    manuscript = read(tmp_path, "wind\n\nno\x07rth\x1b and\x07 by")
    assert manuscript.text == "wind\nnorth and by"
    assert [(p.message, p.severity) for p in manuscript.problems] == [
        ("log.txt has 3 control characters, left out; the first is U+0007 in line 3", Severity.WARNING)
    ]
    [one] = read(tmp_path, "a\x08b").problems
    assert one.message == "log.txt has 1 control character, left out; the first is U+0008 in line 1"


def test_invisible_characters_are_left_out_quietly_but_joiners_stay(tmp_path: Path) -> None:
    manuscript = read(tmp_path, "light\u00adhouse zero\u200bwidth join\u200der", checked=False)
    assert manuscript == Manuscript.plain("log.txt", "light\u00adhouse zerowidth join\u200der")
    assert manuscript.text == "lighthouse zerowidth join\u200der"


def test_letters_and_loose_accents_are_joined(tmp_path: Path) -> None:
    assert read(tmp_path, "e\u0301").text == "\u00e9"


def test_missing_glyphs_are_named_with_code_point_and_line(tmp_path: Path) -> None:
    [problem] = read(tmp_path, "wind ☂\n\nand ⚓ and ☂").problems
    assert str(problem) == (
        "log.txt: the typeface Noto Serif has no glyph for ☂ U+2602, line 1; ⚓ U+2693, line 3; "
        "write face: with the path of a typeface that has them, or write the text without them"
    )
    assert (problem.severity, problem.field) == (Severity.ERROR, ("file",))
    signs = "".join(chr(0x2600 + number) for number in range(26))
    [problem] = read(tmp_path, signs[:24]).problems
    assert "; ☗ U+2617, line 1; write" in str(problem)
    [problem] = read(tmp_path, signs).problems
    assert "; ☗ U+2617, line 1; and 2 more; write" in str(problem)


def test_a_bundled_typeface_that_has_all_letters_is_named(tmp_path: Path) -> None:
    (tmp_path / "log.txt").write_text("Ὁ λύχνος", encoding="utf-8")
    [problem, *_] = read_manuscript(tmp_path / "log.txt", bundled("typewriter")).problems
    assert problem.remedy == "write face: text, which has them all, or write the text without them"
    assert read(tmp_path, "☂", checked=False).problems == ()


# ---- what is refused


def test_files_that_are_no_text_are_refused_each_in_its_words(tmp_path: Path) -> None:
    (tmp_path / "logs").mkdir()
    os.mkfifo(tmp_path / "pipe.txt")
    missing = "there is no text gone.txt; write its path as seen from the folder of the shelf file"
    assert refusal(tmp_path / "gone.txt") == missing
    (tmp_path / "log.txt").write_text("x")
    assert refusal(tmp_path / "log.txt" / "gone.txt") == missing
    assert refusal(tmp_path / "logs") == "logs is a folder, not a text; write the name of one text file"
    assert refusal(tmp_path / "pipe.txt") == "pipe.txt is a pipe, not a text; write the name of one text file"
    assert refusal(tmp_path / "a\0b") == missing.replace("gone.txt", "a?b")


def test_an_unreadable_file_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "log.txt").write_text("x")

    def locked(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", locked)
    assert refusal(tmp_path / "log.txt") == (
        "log.txt cannot be read (permission denied); allow reading it, or copy it beside the shelf file"
    )


SAVE = "save it as plain text in UTF-8"


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "log.txt has no words in it; write a text into it, or choose kind: blank"),
        (b"\xef\xbb\xbf", "log.txt has no words in it; write a text into it, or choose kind: blank"),
        (b" \n\t\n", "log.txt has no words in it; write a text into it, or choose kind: blank"),
        (
            b"wind\nno\xe4rth",
            "log.txt is not UTF-8: byte 8 (line 2) is 0xE4; save it as plain text in UTF-8",
        ),
        (b"\xff\xfew\0", "log.txt is saved as UTF-16; save it as plain text in UTF-8"),
        (b"\xfe\xff\0w", "log.txt is saved as UTF-16; save it as plain text in UTF-8"),
        (b"PK\x03\x04\x14", f"log.txt is a word processor's document or an archive, not plain text; {SAVE}"),
        (b"{\\rtf1 wind}", f"log.txt is a word processor's document, not plain text; {SAVE}"),
        (b"%PDF-1.7 wind", f"log.txt is a PDF, not plain text; {SAVE}, or write kind: pdf"),
        (b"\xff\xd8\xff\xe0", f"log.txt is a picture, not plain text; {SAVE}"),
        (
            b"wind\n\0",
            "log.txt has a null byte in line 2: it is not plain text; save it as plain text in UTF-8",
        ),
    ],
)
def test_contents_that_are_no_plain_text_are_refused(tmp_path: Path, data: bytes, said: str) -> None:
    assert refusal_of(tmp_path, data) == said


def test_letters_read_from_the_right_are_refused_if_the_typeface_lacks_them(tmp_path: Path) -> None:
    (tmp_path / "log.txt").write_text("wind\nרוח", encoding="utf-8")
    with pytest.raises(ShelfFileError) as caught:
        read_manuscript(tmp_path / "log.txt", bundled("text"))
    assert str(caught.value) == (
        "log.txt has letters read from right to left (ר U+05E8, line 2), which the typeface Noto Serif does not have; "
        "write face: with the path of a typeface that has them, or give these pages as pictures"
    )


def test_a_byte_order_mark_counts_in_the_position_of_a_wrong_byte(tmp_path: Path) -> None:
    said = refusal_of(tmp_path, b"\xef\xbb\xbfa\xff")
    assert said == "log.txt is not UTF-8: byte 5 (line 1) is 0xFF; save it as plain text in UTF-8"


def test_a_file_of_more_than_20_mb_is_refused_unread(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "log.txt"
    with path.open("wb") as file:
        file.truncate(TEXT.largest + 100_000)
    monkeypatch.setattr(Path, "open", lambda _: pytest.fail("was read"))
    assert refusal(path) == "log.txt has 20.1 MB, more than 20 MB; split it into volumes, one book each"
