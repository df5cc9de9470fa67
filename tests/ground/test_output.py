"""The output folder: all or nothing, and never at the cost of someone else's files."""

from __future__ import annotations

import errno
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from bookmaker import make
from bookmaker.ground.output import file_names, locks, replaced_folder, single_file
from bookmaker.ground.problems import OutputError
from bookmaker.shelf.wishes import Wishes
from bookmaker.shelf_file.starter import write_starter
from bookmaker.writers import publishing
from tests.kit.shelves import ONE_BOOK

ONE_STOCK = ONE_BOOK.replace("stock: card", "stock: laid")


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    path = tmp_path / "salt.yaml"
    path.write_text(ONE_BOOK, encoding="utf-8")
    return path


def contents(folder: Path) -> dict[str, bytes]:
    """Every file under a folder, hidden ones too, and the folders as empty."""
    return {
        path.relative_to(folder).as_posix(): b"" if path.is_dir() else path.read_bytes() for path in folder.rglob("*")
    }


def refused(shelf: Path, out: Path) -> str:
    with pytest.raises(OutputError) as caught:
        make(shelf, out)
    return str(caught.value)


def test_a_new_folder_is_made_with_its_parents(shelf: Path, tmp_path: Path) -> None:
    make(shelf, tmp_path / "a" / "b")
    assert sorted(contents(tmp_path / "a")) == ["b", "b/card.pdf", "b/guide.pdf", "b/laid.pdf", "b/plan.json"]


def test_an_empty_folder_is_used(shelf: Path, tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    make(shelf, tmp_path / "out")
    assert sorted(contents(tmp_path / "out")) == ["card.pdf", "guide.pdf", "laid.pdf", "plan.json"]


def test_a_second_run_replaces_the_first_and_clears_its_files(shelf: Path, tmp_path: Path) -> None:
    make(shelf, tmp_path / "out")
    first = contents(tmp_path / "out")
    shelf.write_text(ONE_STOCK.replace("Tide", "Moon"), encoding="utf-8")
    make(shelf, tmp_path / "out")
    second = contents(tmp_path / "out")
    assert sorted(second) == ["guide.pdf", "laid.pdf", "plan.json"]
    assert second["plan.json"] != first["plan.json"]
    assert sorted(contents(tmp_path)) == ["out", "out/guide.pdf", "out/laid.pdf", "out/plan.json", "salt.yaml"]


def test_the_same_shelf_makes_the_same_bytes(shelf: Path, tmp_path: Path) -> None:
    make(shelf, tmp_path / "out")
    make(shelf, tmp_path / "elsewhere" / "again")
    assert contents(tmp_path / "out") == contents(tmp_path / "elsewhere" / "again")


@pytest.mark.parametrize("made_before", [False, True])
def test_foreign_files_are_named_and_stay(shelf: Path, tmp_path: Path, made_before: bool) -> None:
    out = tmp_path / "out"
    if made_before:
        make(shelf, out)
    (out / "notes").mkdir(parents=True)
    for name in ("letter.txt", "notes/a.txt", "notes/b.txt", "zebra.txt"):
        (out / name).write_text("mine", encoding="utf-8")
    before = contents(tmp_path)
    assert refused(shelf, out) == (
        f"{out} holds files that bookmaker did not write: letter.txt, notes/a.txt, notes/b.txt and more; "
        "choose a new or empty folder"
    )
    assert contents(tmp_path) == before


def test_a_cover_drawn_over_its_template_is_not_replaced(shelf: Path, tmp_path: Path) -> None:
    """The natural thing to do with a template is to draw on it and save it where it lies."""
    out = tmp_path / "out"
    make(shelf, out, wishes=Wishes(templates=True))
    drawn = out / "template-tide-tables.png"
    drawn.write_bytes(drawn.read_bytes() + b"hours of work")
    before = contents(tmp_path)
    assert refused(shelf, out) == (
        f"{out} holds files that were changed since bookmaker wrote them: template-tide-tables.png; "
        "move them to another folder, or they would be lost"
    )
    assert contents(tmp_path) == before
    drawn.rename(tmp_path / "cover.png")
    make(shelf, out)
    assert "template-tide-tables.pdf" not in contents(out)


@pytest.mark.parametrize("plan", ["{", "[]", '{"files": ["plan.json"]}', '{"made_by": "bookmaker", "files": 3}'])
def test_a_plan_of_another_program_opens_nothing(shelf: Path, tmp_path: Path, plan: str) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / "plan.json").write_text(plan, encoding="utf-8")
    before = contents(tmp_path)
    assert "plan.json; choose a new" in refused(shelf, out)
    assert contents(tmp_path) == before


def test_a_file_or_a_link_is_no_folder(shelf: Path, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine", encoding="utf-8")
    (tmp_path / "real").mkdir()
    (tmp_path / "link").symlink_to("real")
    (tmp_path / "astray").symlink_to("nowhere")
    for name in ("file", "link", "astray"):
        out = tmp_path / name
        assert refused(shelf, out) == f"{out} is not a folder; name a new or empty folder"
    assert (tmp_path / "file").read_text(encoding="utf-8") == "mine"
    assert contents(tmp_path / "real") == {}
    under = tmp_path / "file" / "out"
    assert refused(shelf, under) == (
        f"{under} cannot be written (not a directory); make room or choose another folder; nothing was changed"
    )


@pytest.mark.parametrize("name", [".", ".."])
def test_the_folder_one_is_in_is_not_replaced(
    shelf: Path, tmp_path: Path, name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "here" / "below").mkdir(parents=True)
    monkeypatch.chdir(tmp_path / "here" / "below")
    before = contents(tmp_path)
    assert refused(shelf, Path(name)) == (
        f"{name} is the folder you are in, or holds it; name a folder inside it, such as out"
    )
    assert contents(tmp_path) == before


def out_of_disk(*_: object, **__: object) -> None:
    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


def interrupted(*_: object, **__: object) -> None:
    raise KeyboardInterrupt


def forbidden(*_: object, **__: object) -> None:
    raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))


def forbidden_lock(*_: object) -> None:
    raise PermissionError(errno.EPERM, "Permission denied")


def broken_second_pdf(fault: Callable[..., None]) -> Callable[..., None]:
    """A writer of PDFs that works once."""
    whole, calls = publishing.write_sheets, iter(range(9))

    def write(path: Path, *args: object, **kwargs: object) -> None:
        if next(calls):
            path.write_bytes(b"%PDF half")
            fault()
        whole(path, *args, **kwargs)  # type: ignore[arg-type]

    return write


FULL = "cannot be written (no space left on device); make room or choose another folder; nothing was changed"
CLOSED = "cannot be written (permission denied); make room or choose another folder; nothing was changed"
OPEN = (
    "cannot be replaced (permission denied); "
    "close its files in other programs, such as a PDF viewer, and run the command again"
)


@pytest.mark.parametrize("made_before", [False, True])
@pytest.mark.parametrize("where", ["pdf", "plan", "temporary", "swap", "parent"])
def test_a_disk_that_fails_leaves_everything_as_it_was(
    shelf: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, made_before: bool, where: str
) -> None:
    out = tmp_path / "out"
    if made_before:
        make(shelf, out)
        shelf.write_text(ONE_BOOK.replace("Tide", "Moon"), encoding="utf-8")
    before = contents(tmp_path)
    with monkeypatch.context() as patch:
        match where:
            case "pdf":
                patch.setattr(publishing, "write_sheets", broken_second_pdf(out_of_disk))
            case "plan":
                patch.setattr(Path, "write_bytes", out_of_disk)
            case "temporary":
                patch.setattr(locks, "_lock", forbidden_lock)
            case "swap":
                patch.setattr(Path, "rename", failing_last(Path.rename, 2 if made_before else 1))
            case _:
                patch.setattr(Path, "mkdir", forbidden)
        reason = FULL if where in {"pdf", "plan"} else OPEN if where == "swap" and made_before else CLOSED
        assert refused(shelf, out) == f"{out} {reason}"
    assert contents(tmp_path) == before


def failing_last(rename: Callable[[Path, Path], Path], nth: int) -> Callable[[Path, Path], Path]:
    """Renaming that is refused the nth time."""
    calls = iter(range(1, 99))

    def attempt(path: Path, target: Path) -> Path:
        if next(calls) == nth:
            forbidden()
        return rename(path, target)

    return attempt


@pytest.mark.parametrize("made_before", [False, True])
def test_an_interrupt_midway_leaves_everything_as_it_was(
    shelf: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, made_before: bool
) -> None:
    out = tmp_path / "out"
    if made_before:
        make(shelf, out)
    before = contents(tmp_path)
    monkeypatch.setattr(publishing, "write_sheets", broken_second_pdf(interrupted))
    with pytest.raises(KeyboardInterrupt):
        make(shelf, out)
    assert contents(tmp_path) == before


def test_a_file_laid_into_the_folder_during_the_run_stays(tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    with pytest.raises(OutputError) as caught, replaced_folder(tmp_path / "out") as folder:
        (folder.path / "sheet").write_text("new", encoding="utf-8")
        (tmp_path / "out" / "letter.txt").write_text("mine", encoding="utf-8")
    assert "did not write: letter.txt" in str(caught.value)
    assert contents(tmp_path) == {"out": b"", "out/letter.txt": b"mine"}


def test_the_new_folder_takes_its_place_only_when_complete(tmp_path: Path) -> None:
    with replaced_folder(tmp_path / "out") as folder:
        assert folder.path.parents[1] == tmp_path
        assert not (tmp_path / "out").exists()
        (folder.path / "sheet").write_text("new", encoding="utf-8")
    assert contents(tmp_path) == {"out": b"", "out/sheet": b"new"}
    assert (tmp_path / "out").stat().st_mode & 0o777 == 0o755


def test_every_stock_gets_a_name_of_its_own() -> None:
    assert file_names(["Page paper", "page-paper", "Ж", "../etc", "plan.json", "con", "LPT1", "Conté"]) == [
        "page-paper.pdf",
        "page-paper-2.pdf",
        "stock.pdf",
        "etc.pdf",
        "plan-json.pdf",
        "stock-con.pdf",
        "stock-lpt1.pdf",
        "cont.pdf",
    ]
    crowd = [name for name in ("a", "a-2", "a 2", "A", "a-2-2", "a", "x" * 300, "x" * 400) for _ in range(3)]
    assert len(set(file_names(crowd))) == len(crowd)


def test_a_starter_that_cannot_be_finished_leaves_no_half(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    whole, calls = single_file.write_new, iter(range(9))

    def write(path: Path, data: bytes) -> None:
        whole(path, data)
        if next(calls):
            out_of_disk()

    monkeypatch.setattr(single_file, "write_new", write)
    with pytest.raises(OutputError) as caught:
        write_starter(tmp_path / "mine", "{}")
    assert str(caught.value) == (
        f"{tmp_path / 'mine'} cannot be written (no space left on device); "
        "make room or choose another folder; nothing was changed"
    )
    assert contents(tmp_path) == {}


def test_a_starter_takes_no_folder_that_holds_something(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine", encoding="utf-8")
    for folder in (tmp_path, tmp_path / "file"):
        with pytest.raises(OutputError) as caught:
            write_starter(folder, "{}")
        assert str(caught.value) == f"{folder} is not an empty folder; name a new one"
