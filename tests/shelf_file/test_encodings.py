"""Encodings of text files, told by marks and bytes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.shelf_file.encodings import NotText, decoded

TEXT = "Fähre; Öl, ß\r\n"


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16-le", "utf-16-be", "utf-16"])
def test_a_foreign_text_is_read_and_written_back(encoding: str) -> None:
    data = TEXT.encode(encoding)
    found = decoded(data, foreign=True)
    assert (found.text, found.data()) == (TEXT, data)


@pytest.mark.parametrize("encoding", ["cp1252", "utf-16-le", "utf-16"])
def test_only_utf_8_is_read_where_nothing_foreign_is(encoding: str) -> None:
    with pytest.raises(NotText):
        decoded(TEXT.encode(encoding))


@pytest.mark.parametrize("data", [b"\xff\xfea", b"a\0b\0\0\0\0c", b"\x81\x8d\xff", b"\0" * 8, b"PK\x03\x04\0\0\x81"])
def test_what_is_no_text(data: bytes) -> None:
    with pytest.raises(NotText):
        decoded(data, foreign=True)


@given(st.binary(max_size=60))
def test_any_bytes_are_text_and_come_back_or_are_refused(data: bytes) -> None:
    try:
        assert decoded(data, foreign=True).data() == data
    except NotText as refusal:
        assert 0 <= refusal.at <= len(data)
