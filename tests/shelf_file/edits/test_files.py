"""Edited files: their own encoding and rights, and never over what somebody wrote meanwhile."""

from __future__ import annotations

import hashlib
import stat
from pathlib import Path

import pytest

from bookmaker.ground.output import exchange as exchange_module
from bookmaker.ground.problems import Problem
from bookmaker.shelf_file.edits.edit import SetValue
from bookmaker.shelf_file.edits.files import EditedFile, edit_file, undo
from bookmaker.shelf_file.edits.manner import AS_IT_COMES

KEYS = {"title": False, "author": False}
MADE = "books:\r\n- title: Fähre  # ß\r\n"


def edited(path: Path, value: str = "Öl", digest: str | None = None) -> EditedFile | Problem:
    place = (0, "title") if path.suffix == ".csv" else ("books", 0, "title")
    return edit_file(path, [SetValue(place, value)], KEYS, AS_IT_COMES, digest)


@pytest.mark.parametrize(
    ("name", "text", "encoding"),
    [
        ("shelf.yaml", MADE, "utf-8"),
        ("shelf.yaml", MADE, "utf-8-sig"),
        ("books.csv", "title;author\r\nFähre;ß\r\n", "utf-8"),
        ("books.csv", "title;author\r\nFähre;ß\r\n", "utf-8-sig"),
        ("books.csv", "title;author\r\nFähre;ß\r\n", "cp1252"),
        ("books.csv", "\ufefftitle\tauthor\r\nFähre\tß\r\n", "utf-16-le"),
        ("books.csv", "\ufefftitle\tauthor\nFähre\tß", "utf-16-be"),
    ],
)
def test_a_file_keeps_its_encoding_its_mark_and_its_line_ends(
    name: str, text: str, encoding: str, tmp_path: Path
) -> None:
    path = tmp_path / name
    path.write_bytes(text.encode(encoding))
    done = edited(path)
    assert isinstance(done, EditedFile)
    assert path.read_bytes() == text.replace("Fähre", "Öl").encode(encoding)
    assert done.digest == hashlib.sha256(path.read_bytes()).hexdigest()
    assert isinstance(undo(done), EditedFile)
    assert path.read_bytes() == text.encode(encoding)


def test_a_letter_that_the_encoding_has_not_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "books.csv"
    path.write_bytes("title;author\nFähre;\n".encode("cp1252"))
    refused = edited(path, "Маяк")
    assert isinstance(refused, Problem)
    assert refused.message == "books.csv is in the Windows encoding, cp1252, which has no 'Маяк'"
    assert path.read_bytes() == "title;author\nFähre;\n".encode("cp1252")


def test_a_file_that_was_changed_is_left_alone_or_edited_as_it_is_now(tmp_path: Path) -> None:
    path = tmp_path / "shelf.yaml"
    path.write_text(MADE, encoding="utf-8")
    seen = hashlib.sha256(path.read_bytes()).hexdigest()
    path.write_text(MADE + "more: 1\n", encoding="utf-8")
    refused = edited(path, digest=seen)
    assert isinstance(refused, Problem)
    assert refused.message == "shelf.yaml was changed since it was read"
    assert isinstance(edited(path), EditedFile)
    assert path.read_text(encoding="utf-8").endswith("more: 1\n")


def test_what_is_written_at_the_last_moment_stays(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "shelf.yaml"
    path.write_text(MADE, encoding="utf-8")
    write_new = exchange_module.write_new

    def write_slowly(beside: Path, data: bytes) -> None:
        write_new(beside, data)
        path.write_text("somebody: else\n", encoding="utf-8")

    monkeypatch.setattr(exchange_module, "write_new", write_slowly)
    refused = edited(path)
    assert isinstance(refused, Problem)
    assert refused.message == "shelf.yaml has changed since it was first read"
    assert path.read_text(encoding="utf-8") == "somebody: else\n"
    assert [found.name for found in tmp_path.iterdir()] == ["shelf.yaml"]


def test_a_file_keeps_its_rights_and_links_to_it_hold(tmp_path: Path) -> None:
    path = tmp_path / "shelf.yaml"
    path.write_text(MADE, encoding="utf-8")
    path.chmod(0o640)
    link = tmp_path / "link.yaml"
    link.symlink_to(path)
    assert isinstance(edited(link), EditedFile)
    assert link.is_symlink()
    assert stat.S_IMODE(path.stat().st_mode) == 0o640
    assert "Öl" in path.read_text(encoding="utf-8")


def test_what_cannot_be_read_or_written_says_so(tmp_path: Path) -> None:
    path = tmp_path / "shelf.yaml"
    missing = edited(path)
    assert isinstance(missing, Problem)
    assert missing.message == "there is no shelf file shelf.yaml"
    path.write_text(MADE, encoding="utf-8")
    path.chmod(0o444)
    protected = edited(path)
    assert isinstance(protected, Problem)
    assert "write-protected" in protected.message
    path.chmod(0o644)
    path.write_bytes(b"a: \xff\n")
    foreign = edited(path)
    assert isinstance(foreign, Problem)
    assert foreign.message == "shelf.yaml is not text in UTF-8"


def test_an_undone_edit_is_not_undone_over_a_later_change(tmp_path: Path) -> None:
    path = tmp_path / "shelf.yaml"
    path.write_text(MADE, encoding="utf-8")
    done = edited(path)
    assert isinstance(done, EditedFile)
    path.write_text("later: 1\n", encoding="utf-8")
    refused = undo(done)
    assert isinstance(refused, Problem)
    assert refused.message == "shelf.yaml was changed since the edit"
    assert path.read_text(encoding="utf-8") == "later: 1\n"
