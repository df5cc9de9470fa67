"""One reader for all files: whole, at once, and only what is a file."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path

import pytest

from bookmaker.ground import files
from bookmaker.ground.files import SourceFile, Wanted, files_in, read_again, read_file
from bookmaker.ground.problems import Place, ShelfFileError
from tests.kit.special_files import NO_FILES, lay

SCROLL = Wanted("scroll", 1000, "roll it up tighter", instead="write the name of one scroll", empty="write on it")
BESIDE = "write its path as seen from the folder of the shelf file"


def refusal(path: Path, written: str = "") -> str:
    with pytest.raises(ShelfFileError) as caught:
        read_file(path, SCROLL, written)
    return str(caught.value)


def test_a_file_comes_whole_with_its_digest(tmp_path: Path) -> None:
    path = tmp_path / "a.scroll"
    path.write_bytes(b"\0\xff tar\r\n" * 100)
    read = read_file(path, SCROLL)
    assert (read.path, read.name, read.data) == (path, "a.scroll", path.read_bytes())
    assert read.digest == hashlib.sha256(path.read_bytes()).hexdigest()
    assert read == SourceFile(path, read.digest, b"") != read_file_of(path, b"other")


def read_file_of(path: Path, data: bytes) -> SourceFile:
    path.write_bytes(data)
    return read_file(path, SCROLL)


WORDS = {
    "a pipe": "a.scroll is a pipe, not a scroll; write the name of one scroll",
    "a socket": "a.scroll is a socket, not a scroll; write the name of one scroll",
    "a folder": "a.scroll is a folder, not a scroll; write the name of one scroll",
    "a circle of links": "a.scroll cannot be read (too many levels of symbolic links); "
    "write the path of the file itself: the links lead round in a circle",
    "a link to nothing": "a.scroll is a link to what is not there; write the path of the thing itself",
    "an endless device": "a.scroll is a device, not a scroll; write the name of one scroll",
}


@pytest.mark.parametrize("what", NO_FILES)
def test_what_is_no_file_is_refused_and_never_opened(
    tmp_path: Path, what: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "a.scroll"
    lay(what, path)
    monkeypatch.setattr(Path, "open", lambda *_: pytest.fail("was opened"))
    assert refusal(path) == WORDS[what]


def test_what_is_too_large_or_empty_is_refused_unread(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "a.scroll"
    monkeypatch.setattr(Path, "open", lambda *_: pytest.fail("was opened"))
    path.touch()
    assert refusal(path) == "a.scroll is empty (0 bytes); write on it"
    os.truncate(path, 40_123_456)
    assert refusal(path) == "a.scroll has 40.1 MB, more than 0.0 MB; roll it up tighter"


def test_a_file_of_the_system_that_tells_no_size_is_not_read() -> None:
    """What a process was started with must not come into a book."""
    path = Path("/proc/self/environ")
    if path.exists():
        assert refusal(path) == "environ is empty (0 bytes); write on it"


def test_names_that_no_file_can_have(tmp_path: Path) -> None:
    assert refusal(tmp_path / ("x" * 300)) == f"there is no scroll {'x' * 239}…; {BESIDE}"
    assert refusal(tmp_path / "a\0b") == f"there is no scroll a?b; {BESIDE}"
    assert refusal(tmp_path / "\x1b[2Jb", "\x1b[2Jb") == f"there is no scroll ?[2Jb; {BESIDE}"
    (tmp_path / "file").touch()
    assert refusal(tmp_path / "file" / "a", "file/a") == f"there is no scroll file/a; {BESIDE}"


def test_a_folder_that_is_gone_under_ones_feet_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    here = tmp_path / "here"
    here.mkdir()
    monkeypatch.chdir(here)
    here.rmdir()
    gone = "the folder you are in is no longer there; go to another one, and run the command again"
    assert refusal(Path("a.scroll")) == gone
    assert refusal(tmp_path / "a.scroll") == f"there is no scroll a.scroll; {BESIDE}"


def test_a_file_that_may_not_be_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def locked(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    path = tmp_path / "a.scroll"
    path.write_text("tar")
    locked_out = "a.scroll cannot be read (permission denied); allow reading it, or copy it beside the shelf file"
    with monkeypatch.context() as patched:
        patched.setattr(Path, "open", locked)
        assert refusal(path) == locked_out
    with monkeypatch.context() as patched:  # as in a folder that may not be searched
        patched.setattr(Path, "stat", locked)
        assert refusal(path) == locked_out


@pytest.mark.parametrize("grown", [b"", b"longer than it was"])
def test_a_file_that_changes_while_it_is_read_is_refused(
    tmp_path: Path, grown: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "a.scroll"
    path.write_bytes(b"short")
    plain = files._read

    def meanwhile(path: Path, size: int) -> bytes:
        path.write_bytes(grown)
        return plain(path, size)

    monkeypatch.setattr(files, "_read", meanwhile)
    assert refusal(path) == "a.scroll is being changed; wait until it is written, and run the command again"


def test_the_problem_bears_its_field_and_its_place(tmp_path: Path) -> None:
    with pytest.raises(ShelfFileError) as caught:
        read_file(tmp_path / "a", SCROLL, "a", ("books", 1, "file"), Place("shelf.yaml", 3, 7))
    assert caught.value.problems[0].field == ("books", 1, "file")
    assert str(caught.value).startswith("shelf.yaml:3:7: there is no scroll a;")


def test_a_file_is_read_again_only_if_it_is_what_it_was(tmp_path: Path) -> None:
    path = tmp_path / "a.scroll"
    first = read_file_of(path, b"tar")
    assert read_again(path, SCROLL, first.digest).data == b"tar"
    changed = "a.scroll has changed since it was first read; run the command again"
    for step in (lambda: path.write_bytes(b"rat"), path.unlink, lambda: os.mkfifo(path)):
        step()
        with pytest.raises(ShelfFileError) as caught:
            read_again(path, SCROLL, first.digest)
        assert str(caught.value) == changed


def test_a_folder_tells_what_stands_in_it_and_is_no_folder(tmp_path: Path) -> None:
    for name in ("b.png", "a.png", ".hidden"):
        (tmp_path / name).touch()
    (tmp_path / "below").mkdir()
    os.mkfifo(tmp_path / "c.png")
    assert sorted(path.name for path in files_in(tmp_path)) == ["a.png", "b.png", "c.png"]


@pytest.mark.parametrize(
    ("what", "told"),
    [
        ("a pipe", "here is a file, not a folder; write the folder that holds the pictures"),
        ("a circle of links", "the folder here cannot be read (too many levels of symbolic links); "
         "write the path of the file itself: the links lead round in a circle"),
        ("a link to nothing", "here is a link to what is not there; write the path of the thing itself"),
        ("an endless device", "here is a file, not a folder; write the folder that holds the pictures"),
    ],
)  # fmt: skip
def test_a_folder_that_is_none_is_refused(tmp_path: Path, what: str, told: str) -> None:
    lay(what, tmp_path / "here")
    with pytest.raises(ShelfFileError) as caught:
        files_in(tmp_path / "here", "here", ("folder",))
    assert str(caught.value) == told
    assert caught.value.problems[0].field == ("folder",)
