"""Values kept on disk: whole or not there, whatever others do to the folder, and never too many."""

from __future__ import annotations

import os
import pickle
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from bookmaker.ground.kept.disk import KeptOnDisk

KEY, OTHER = "a" * 32, "b" * 32

WRITER = """\
import sys
from pathlib import Path
from bookmaker.ground.kept.disk import KeptOnDisk
kept = KeptOnDisk(Path(sys.argv[1]), 10**6)
for number in range(300):
    value = bytes([number % 251]) * (1 + 7919 * number % 20000)
    kept.put("c" * 32, value)
    found = kept.get("c" * 32)
    assert found is None or len(set(found)) == 1, number  # None if it was put anew just then
"""


class Bomb:
    """What leaves a trace if somebody unpickles it."""

    def __init__(self, trace: Path) -> None:
        self.trace = trace

    def __reduce__(self) -> tuple[object, ...]:
        return Path.touch, (self.trace,)


@pytest.fixture
def kept(tmp_path: Path) -> KeptOnDisk:
    return KeptOnDisk(tmp_path / "far" / "down", 10_000)


def file_in(folder: Path) -> Path:
    [file] = (folder / "far" / "down").iterdir()
    return file


def test_what_was_put_is_found_by_the_next_one(tmp_path: Path, kept: KeptOnDisk) -> None:
    assert kept.get(KEY) is None
    kept.put(KEY, b"fog\nbell\0")
    again = KeptOnDisk(tmp_path / "far" / "down", 10_000)
    assert (again.get(KEY), again.get(OTHER)) == (b"fog\nbell\0", None)
    kept.put(KEY, b"rain")
    assert again.get(KEY) == b"rain"
    assert file_in(tmp_path).name == f"{KEY}.kept"


@given(data=st.data())
@settings(max_examples=80, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_a_file_that_was_changed_anywhere_is_as_good_as_none(tmp_path: Path, data: st.DataObject) -> None:
    kept = KeptOnDisk(tmp_path / "far" / "down", 10_000)
    kept.put(KEY, b"the keeper trims the lamp")
    file = file_in(tmp_path)
    whole = file.read_bytes()
    start = data.draw(st.integers(0, len(whole)))
    end = data.draw(st.integers(start, len(whole)))
    changed = whole[:start] + data.draw(st.binary(max_size=80)) + whole[end:]
    file.write_bytes(changed)
    assert kept.get(KEY) == (b"the keeper trims the lamp" if changed == whole else None)
    kept.put(KEY, b"and again")
    assert kept.get(KEY) == b"and again"


def test_foreign_files_are_neither_read_nor_run(tmp_path: Path, kept: KeptOnDisk) -> None:
    kept.put(KEY, b"fog")
    file = file_in(tmp_path)
    trace = tmp_path / "trace"
    file.write_bytes(pickle.dumps(Bomb(trace)))
    assert kept.get(KEY) is None
    assert not trace.exists()
    file.unlink()
    os.mkfifo(file)
    assert kept.get(KEY) is None


def test_a_folder_that_cannot_be_written_is_no_matter(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    kept = KeptOnDisk(tmp_path / "file" / "folder", 10_000)
    kept.put(KEY, b"fog")
    assert kept.get(KEY) is None
    (tmp_path / "folder" / f"{KEY}.kept").mkdir(parents=True)
    beside = KeptOnDisk(tmp_path / "folder", 10_000)
    beside.put(KEY, b"fog")
    assert beside.get(KEY) is None
    assert [file.name for file in (tmp_path / "folder").iterdir()] == [f"{KEY}.kept"]


def test_those_used_longest_ago_go_and_nothing_else(tmp_path: Path, kept: KeptOnDisk) -> None:
    folder = tmp_path / "far" / "down"
    for number in range(4):
        kept.put(f"{number:032x}", bytes(3000))
        os.utime(folder / f"{number:032x}.kept", (1000 + number, 1000 + number))
    # three of 3082 bytes are all there is room for; the first was used again
    assert kept.get(f"{1:032x}") is not None
    (folder / "letter.txt").write_bytes(bytes(50_000))
    (folder / "broken-off.new").write_bytes(b"half")
    os.utime(folder / "broken-off.new", (1000, 1000))
    (folder / "at-work.new").write_bytes(b"half")
    kept.put(f"{9:032x}", bytes(3000))
    left = sorted(file.name for file in folder.iterdir())
    assert left == sorted([f"{1:032x}.kept", f"{3:032x}.kept", f"{9:032x}.kept", "letter.txt", "at-work.new"])


def test_a_value_too_large_for_the_folder_is_not_kept(kept: KeptOnDisk) -> None:
    kept.put(KEY, b"fog")
    kept.put(OTHER, bytes(20_000))
    assert kept.get(OTHER) is None
    assert kept.get(KEY) == b"fog"


def test_two_processes_write_at_once(tmp_path: Path) -> None:
    writers = [subprocess.Popen([sys.executable, "-c", WRITER, str(tmp_path / "kept")]) for _ in range(2)]
    assert [writer.wait() for writer in writers] == [0, 0]
    assert [file.name for file in (tmp_path / "kept").iterdir()] == ["c" * 32 + ".kept"]
