"""What in an output folder is the maker's stays, and keeps the folder from being replaced."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from bookmaker.ground.output import ours, replaced_folder, report_of
from bookmaker.ground.problems import OutputError
from tests.kit.output_runs import contents, run
from tests.kit.special_files import lay


def _edited_plan(out: Path) -> None:
    plan = out / "plan.json"
    plan.write_text(plan.read_text().replace('"files"', ' "files"'))


def _relabelled_plan(out: Path) -> None:
    plan = out / "plan.json"
    plan.write_text(plan.read_text().replace("bookmaker", "I myself"))


def _link_to_a_folder(out: Path) -> None:
    (out / "photos").symlink_to(out.parent)


def _link_in_the_place_of_a_file(out: Path) -> None:
    (out / "guide.pdf").rename(out.parent / "guide.pdf")
    (out / "guide.pdf").symlink_to("../guide.pdf")


def _link_in_the_place_of_a_folder(out: Path) -> None:
    (out / "machine").rename(out.parent / "machine")
    (out / "machine").symlink_to("../machine")


def _folder_in_the_place_of_a_file(out: Path) -> None:
    (out / "guide.pdf").unlink()
    (out / "guide.pdf").mkdir()


MAKERS: dict[str, tuple[Callable[[Path], None], str]] = {
    "an edited plan": (
        _edited_plan,
        "holds files that were changed since bookmaker wrote them: plan.json; "
        "move them to another folder, or they would be lost",
    ),
    "a plan of his own": (
        _relabelled_plan,
        "holds files that bookmaker did not write: guide.pdf, machine/a.svg, old.pdf and more; "
        "choose a new or empty folder",
    ),
    "an empty folder": (lambda out: (out / "notes").mkdir(), "did not write: notes; choose a new or empty folder"),
    "a folder below": (lambda out: (out / "machine" / "old").mkdir(), "did not write: machine/old; choose a"),
    "a link to a folder": (_link_to_a_folder, "did not write: photos; choose a new or empty folder"),
    "a link to a file": (_link_in_the_place_of_a_file, "did not write: guide.pdf; choose a new or empty folder"),
    "a link for a folder": (_link_in_the_place_of_a_folder, "did not write: machine; choose a new or empty folder"),
    "a folder for a file": (_folder_in_the_place_of_a_file, "did not write: guide.pdf; choose a new or empty folder"),
    "a hidden file": (lambda out: (out / ".notes").touch(), "did not write: .notes; choose a new or empty folder"),
    "a pipe": (lambda out: os.mkfifo(out / "pipe"), "did not write: pipe; choose a new or empty folder"),
    "no right to write": (lambda out: out.chmod(0o555), "is write-protected; allow writing there, or choose another"),
    "none below": (lambda out: (out / "machine").chmod(0o555), "machine is write-protected; allow writing there, or"),
}


@pytest.mark.parametrize("what", MAKERS)
def test_what_the_maker_put_there_stays(tmp_path: Path, what: str) -> None:
    out = tmp_path / "out"
    run(out, "old")
    change, told = MAKERS[what]
    change(out)
    before = contents(tmp_path), out.stat().st_mode
    with pytest.raises(OutputError) as caught:
        run(out, "new")
    assert told in str(caught.value)
    assert (contents(tmp_path), out.stat().st_mode) == before


@pytest.mark.parametrize("what", ["a pipe", "a socket", "a circle of links", "an endless device"])
def test_a_plan_that_is_no_file_is_not_waited_for(tmp_path: Path, what: str) -> None:
    out = tmp_path / "out"
    run(out, "old")
    (out / "plan.json").unlink()
    lay(what, out / "plan.json")
    with pytest.raises(OutputError, match=r"did not write: guide\.pdf, "):
        run(out, "new")
    assert report_of(out) == {}
    assert (out / "plan.json").is_symlink() or not (out / "plan.json").is_file()


def test_a_folder_that_cannot_be_looked_into_stays(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    out = tmp_path / "out"
    run(out, "old")
    scan = os.scandir

    def locked(path: Path) -> object:
        if str(path).endswith("machine"):
            raise PermissionError(13, "Permission denied")
        return scan(path)

    with monkeypatch.context() as patched:
        patched.setattr(os, "scandir", locked)
        with pytest.raises(OutputError, match=r"out cannot be written \(permission denied\)"):
            run(out, "new")
    assert (out / "old.pdf").exists()


def test_files_of_an_earlier_run_that_are_gone_do_not_matter(tmp_path: Path) -> None:
    out = tmp_path / "out"
    run(out, "old")
    (out / "old.pdf").unlink()
    (out / "machine" / "a.svg").unlink()
    with replaced_folder(out) as folder:
        assert folder.before == {"guide.pdf", "plan.json"}
    assert contents(out) == {}


@pytest.mark.parametrize(("mask", "rights"), [(0o022, 0o755), (0o077, 0o700), (0o002, 0o775)])
def test_a_new_folder_has_the_rights_that_new_folders_get(tmp_path: Path, mask: int, rights: int) -> None:
    before = os.umask(mask)
    try:
        run(tmp_path / "out", "new")
    finally:
        os.umask(before)
    assert (tmp_path / "out").stat().st_mode & 0o7777 == rights


def test_a_folder_that_was_there_keeps_its_rights(tmp_path: Path) -> None:
    out = tmp_path / "out"
    out.mkdir()
    out.chmod(0o700)
    run(out, "old")
    run(out, "new")
    assert out.stat().st_mode & 0o7777 == 0o700


def test_a_refused_run_leaves_no_folder_above_it(tmp_path: Path) -> None:
    (tmp_path / "shelf").mkdir()
    with pytest.raises(KeyboardInterrupt), replaced_folder(tmp_path / "shelf" / "a" / "b" / "out"):
        raise KeyboardInterrupt
    assert contents(tmp_path) == {"shelf": b""}
    with pytest.raises(KeyboardInterrupt), replaced_folder(tmp_path / "shelf" / "a" / "b" / "out"):
        (tmp_path / "shelf" / "a" / "letter.txt").write_text("mine")
        raise KeyboardInterrupt
    assert contents(tmp_path) == {"shelf": b"", "shelf/a": b"", "shelf/a/letter.txt": b"mine"}


@pytest.mark.parametrize("name", ["x" * 255, "ж" * 127])
def test_a_folder_of_the_longest_name(tmp_path: Path, name: str) -> None:
    run(tmp_path / name, "new")
    assert [path.name for path in tmp_path.iterdir()] == [name]


@pytest.mark.parametrize("name", ["x" * 256, "a\0b"])
def test_a_name_that_no_folder_can_have_is_refused(tmp_path: Path, name: str) -> None:
    with pytest.raises(OutputError, match="cannot be written"):
        run(tmp_path / name, "new")
    assert contents(tmp_path) == {}


def test_a_working_folder_that_is_gone_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    here = tmp_path / "here"
    here.mkdir()
    monkeypatch.chdir(here)
    here.rmdir()
    with pytest.raises(OutputError) as caught:
        run(Path("out"), "new")
    assert str(caught.value) == (
        "the folder you are in is no longer there; go to another one, and run the command again"
    )


def test_a_digest_is_that_of_the_file(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"abc")
    assert ours.digest_of(tmp_path / "a") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"


@pytest.mark.parametrize("what", [*MAKERS, "a file of another sort"])
def test_what_the_maker_lays_there_while_it_is_written_stays(tmp_path: Path, what: str) -> None:
    out = tmp_path / "out"
    run(out, "old")
    change = MAKERS[what][0] if what in MAKERS else _file_in_the_place_of_all
    with pytest.raises(OutputError), replaced_folder(out) as folder:
        (folder.path / "new.pdf").write_bytes(b"new")
        change(out)
        before = contents(tmp_path / "out") if out.is_dir() else out.read_bytes()
    assert before == (contents(tmp_path / "out") if out.is_dir() else out.read_bytes())


def _file_in_the_place_of_all(out: Path) -> None:
    shutil.rmtree(out)
    out.write_text("mine", encoding="utf-8")
