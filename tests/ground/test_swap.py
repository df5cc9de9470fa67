"""The new folder takes the place of the old one: stopped at any call, by anything, it loses neither."""

from __future__ import annotations

import errno
import random
import subprocess
import sys
import time
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import pytest

from bookmaker.ground.output import replaced_folder
from bookmaker.ground.problems import OutputError, Problem, ShelfFileError
from tests.kit.output_runs import Tree, contents, run, write
from tests.kit.stops import Killed, stopped


def refused_run(out: Path) -> list[str]:
    with pytest.raises(ShelfFileError) as caught, replaced_folder(out):
        raise ShelfFileError((Problem("no"),))
    return [problem.message for problem in caught.value.problems]


def laid_out(place: Path, *, made_before: bool) -> Path:
    """A folder with something of the maker's, and perhaps what an earlier run wrote; where the next one writes."""
    place.mkdir()
    (place / "letter.txt").write_text("mine", encoding="utf-8")
    out = place / "out"
    if made_before:
        run(out, "old")
    return out


@pytest.fixture(scope="module")
def trees(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Tree]:
    place = tmp_path_factory.mktemp("trees")
    for word in ("old", "new"):
        run(place / word, word)
    return {word: contents(place / word) for word in ("old", "new")}


TROUBLES: dict[str, Callable[[], BaseException]] = {
    "a signal": KeyboardInterrupt,
    "a full disk": lambda: OSError(errno.ENOSPC, "No space left on device"),
    "a refusal": lambda: PermissionError(errno.EACCES, "Permission denied"),
    "no memory": MemoryError,
    "its end": Killed,
}


@pytest.mark.parametrize("after", [False, True], ids=["before", "after"])
@pytest.mark.parametrize("made_before", [False, True], ids=["new", "replaced"])
@pytest.mark.parametrize("what", TROUBLES)
def test_a_stop_at_any_call_loses_neither_the_old_folder_nor_the_new(
    tmp_path: Path, trees: dict[str, Tree], what: str, made_before: bool, after: bool
) -> None:
    out = laid_out(tmp_path / "counted", made_before=made_before)
    with stopped() as watch:
        run(out, "new")
    assert watch.count > 40
    before: list[Tree] = [trees["old"]] if made_before else [{}]
    for at in range(1, watch.count + 1):
        place = tmp_path / str(at)
        out = laid_out(place, made_before=made_before)
        stops = stopped(at, TROUBLES[what](), after=after)
        with suppress(KeyboardInterrupt, MemoryError, Killed, OutputError), stops:
            run(out, "new")
        if what != "its end":
            assert contents(out) in [*before, trees["new"]], at
        refused_run(out)  # what was cut off is put right, whatever becomes of the next run
        assert contents(out) in [*before, trees["new"]], at
        run(out, "new")
        assert contents(out) == trees["new"], at
        assert sorted(path.name for path in place.iterdir()) == ["letter.txt", "out"], at


def killed(out: Path, word: str, at: int) -> None:
    with pytest.raises(Killed), stopped(at, Killed()):
        run(out, word)


def cut_offs(tmp_path: Path) -> dict[str, Path]:
    """Places where a run was killed at each call, by what it left."""
    found: dict[str, Path] = {}
    out = laid_out(tmp_path / "counted", made_before=True)
    with stopped() as watch:
        run(out, "new")
    for at in range(1, watch.count):
        place = tmp_path / str(at)
        out = laid_out(place, made_before=True)
        killed(out, "new", at)
        work = place / ".out.bookmaker"
        left = [path.name for path in sorted(work.iterdir())] if work.exists() else []
        found.setdefault(" ".join([*left, "no out"] if not out.exists() else left), place)
    return found


def test_what_was_cut_off_is_told_and_taken_away(tmp_path: Path) -> None:
    places = cut_offs(tmp_path)
    assert set(places) == {"", "lock", "lock new", "lock old", "lock new old no out"}
    told = {left: run(place / "out", "later") for left, place in places.items()}
    cleared = "an earlier run into {} was cut off; what it had begun has been taken away"
    assert told[""] == told["lock"] == []
    for left in ("lock new", "lock old"):
        assert told[left] == [cleared.format(places[left] / "out")]
    out = places["lock new old no out"] / "out"
    assert told["lock new old no out"] == [f"{out} was being replaced when an earlier run was cut off: it is as it was"]


def test_what_a_run_put_back_is_told_even_if_it_is_refused(tmp_path: Path, trees: dict[str, Tree]) -> None:
    out = cut_offs(tmp_path)["lock new old no out"] / "out"
    assert refused_run(out) == [f"{out} was being replaced when an earlier run was cut off: it is as it was", "no"]
    assert contents(out) == trees["old"]


def test_the_old_folder_is_kept_while_the_maker_has_another_in_its_place(
    tmp_path: Path, trees: dict[str, Tree]
) -> None:
    place = cut_offs(tmp_path)["lock new old no out"]
    out = place / "out"
    out.mkdir()
    (out / "diary.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(OutputError, match=r"did not write: diary\.txt"):
        run(out, "later")
    assert contents(out) == {"diary.txt": b"mine"}
    assert contents(place / ".out.bookmaker" / "old") == trees["old"]
    (out / "diary.txt").rename(place / "diary.txt")
    out.rmdir()
    refused_run(out)
    assert contents(out) == trees["old"]


def test_two_runs_do_not_write_into_one_folder(tmp_path: Path, trees: dict[str, Tree]) -> None:
    out = laid_out(tmp_path / "place", made_before=True)
    with replaced_folder(out) as folder:
        before = contents(folder.path.parent)
        with pytest.raises(OutputError) as caught:
            run(out, "other")
        assert str(caught.value) == (
            f"another run of bookmaker is writing into {out}; wait until it is done, or choose another folder"
        )
        assert contents(folder.path.parent) == before
        write(folder.path, "new")
    assert contents(out) == trees["new"]


def test_a_folder_of_the_maker_in_the_place_of_ours_stays(tmp_path: Path) -> None:
    work = tmp_path / ".out.bookmaker"
    work.mkdir()
    (work / "diary.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(OutputError) as caught:
        run(tmp_path / "out", "new")
    assert str(caught.value) == f"{work} stands where {tmp_path / 'out'} is first written; move it to another place"
    assert contents(tmp_path) == {".out.bookmaker": b"", ".out.bookmaker/diary.txt": b"mine"}


@pytest.mark.parametrize("is_left", [False, True])
def test_where_nothing_can_be_locked_one_run_writes_and_what_it_left_is_told(
    tmp_path: Path, trees: dict[str, Tree], is_left: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    def unable(_: int) -> None:
        raise OSError(errno.ENOLCK, "No locks available")

    out = tmp_path / "out"
    monkeypatch.setattr("bookmaker.ground.output.locks._lock", unable)
    if not is_left:
        run(out, "new")
        assert contents(tmp_path) == {"out": b""} | {f"out/{name}": data for name, data in trees["new"].items()}
        return
    (tmp_path / ".out.bookmaker").mkdir()
    with pytest.raises(OutputError) as caught:
        run(out, "new")
    told = f"{tmp_path / '.out.bookmaker'} is what another run left on its way to {out}, or is still writing to"
    assert str(caught.value) == f"{told}; delete it, if no other run is going on"


KILLS = 6
"""How often a running process is killed; at random moments, not at chosen ones as above."""


def test_a_process_that_is_killed_loses_neither(tmp_path: Path, trees: dict[str, Tree]) -> None:
    out = tmp_path / "out"
    endless = (
        f"from tests.kit.output_runs import *\nout = Path({str(out)!r})\nwhile True: run(out, 'old'); run(out, 'new')"
    )
    chance = random.Random(18)
    run(out, "old")
    for _ in range(KILLS):
        with subprocess.Popen([sys.executable, "-c", endless], cwd=Path(__file__).parents[2]) as process:
            changed = (tmp_path / "out").stat().st_ino
            while changed == (out.stat().st_ino if out.exists() else changed):  # until it is at work
                time.sleep(0.01)
            time.sleep(chance.uniform(0, 0.05))
            process.kill()
        refused_run(out)
        assert contents(out) in trees.values()
        assert [path.name for path in tmp_path.iterdir()] == ["out"]
