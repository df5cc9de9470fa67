"""Set texts on disk: what is read is what was written, to the last digit; what has another form is nothing."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.typesetting import set_text_files
from bookmaker.typesetting.lines.set_lines import SetLine, SetLines
from bookmaker.typesetting.set_text_files import lines_read, lines_written, number_read, number_written

FLOATS = st.floats(allow_nan=False, allow_infinity=False)
TEXTS = st.text(st.characters(exclude_categories=("Cs",)), max_size=20)
LINES = st.tuples(TEXTS, FLOATS, FLOATS, st.integers(0, 10**6), FLOATS).map(lambda parts: SetLine(*parts))
PARAGRAPHS = st.builds(SetLines, *(st.lists(one, max_size=3).map(tuple) for one in (LINES, TEXTS, TEXTS)))


@given(paragraphs=st.dictionaries(TEXTS, PARAGRAPHS, max_size=3))
def test_what_is_read_is_what_was_written(paragraphs: dict[str, SetLines]) -> None:
    found = lines_read(lines_written(paragraphs))
    assert found == paragraphs
    assert repr(found) == repr(paragraphs)  # 0.0 is no −0.0 and no 0


@given(number=FLOATS)
def test_numbers_too(number: float) -> None:
    assert repr(number_read(number_written(number))) == repr(number)


GOOD = [[["fog", 0.0, 0.1, 1, 0.0]], ["fog"], []]


@pytest.mark.parametrize(
    "value",
    [
        [],
        {"a": GOOD[:2]},
        {"a": [[["fog", 0.0, 0.1, 1]], [], []]},
        {"a": [[["fog", 0.0, 0.1, 1, 0.0, []]], [], []]},
        {"a": [[["fog", "0.0", 0.1, 1, 0.0]], [], []]},
        {"a": [[[7, 0.0, 0.1, 1, 0.0]], [], []]},
        {"a": [[["fog", 0.0, 0.1, 1.5, 0.0]], [], []]},
        {"a": [[["fog", float("nan"), 0.1, 1, 0.0]], [], []]},
        {"a": [[["fog", 0.0, float("inf"), 1, 0.0]], [], []]},
        {"a": [[], [1], []]},
        {"a": GOOD, "b": None},
    ],
)
def test_another_form_is_nothing(value: object) -> None:
    assert lines_read(lines_written({}) if value == {} else json.dumps(value).encode()) == {}


def test_the_good_form_is_something() -> None:
    assert lines_read(json.dumps({"a": GOOD}).encode()) == {"a": SetLines((SetLine("fog", 0.0, 0.1, 1),), ("fog",))}


@pytest.mark.parametrize("value", [b"", b"{", b"\xff", b"[" * 100_000, b'"1"', b"null", b"1e999", b"nan", b"[1]"])
def test_what_is_no_json_or_no_number_is_nothing(value: bytes) -> None:
    assert lines_read(value) == {}
    assert number_read(value) is None


def test_other_code_has_another_digest(monkeypatch: pytest.MonkeyPatch) -> None:
    here = set_text_files.code_digest()
    set_text_files.code_digest.cache_clear()
    monkeypatch.setattr(set_text_files, "version", lambda library: f"{library} 99")
    assert set_text_files.code_digest() not in ("", here)
    set_text_files.code_digest.cache_clear()
    monkeypatch.undo()
    assert set_text_files.code_digest() == here
