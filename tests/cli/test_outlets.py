"""Output that is closed, full or no longer read, and commands that are stopped: the right code and no traceback."""

from __future__ import annotations

import json
import os
import random
import signal
import subprocess
import sys
import time
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from tests.kit.command_line import bookmaker
from tests.kit.output_runs import contents
from tests.kit.shelves import ONE_BOOK, written

pytestmark = pytest.mark.skipif(os.name != "posix", reason="shells of other systems close no streams")

COMMAND = f"{sys.executable} -m bookmaker"

TOO_NARROW = ONE_BOOK.replace("width: 60 mm", "width: 4 mm")

HOUSE = Path(__file__).parents[2]


@pytest.fixture(autouse=True)
def heard() -> Iterator[None]:
    """Signals that the shell behind the tests may have told them to ignore, which commands would then do as well."""
    before = {number: signal.signal(number, signal.SIG_DFL) for number in (signal.SIGHUP, signal.SIGTERM)}
    before[signal.SIGINT] = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    for number, handler in before.items():
        signal.signal(number, handler)


def shell(line: str, folder: Path, unbuffered: str = "") -> subprocess.CompletedProcess[str]:
    """A line of a shell, in which the command's own exit code counts."""
    environment: Mapping[str, str] = os.environ | {"PYTHONPATH": str(HOUSE), "PYTHONUNBUFFERED": unbuffered}
    return subprocess.run(
        ["bash", "-o", "pipefail", "-c", line.replace("bookmaker", COMMAND)],
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )


@pytest.mark.parametrize(
    ("text", "code", "unbuffered"), [(ONE_BOOK, 0, ""), (TOO_NARROW, 1, "1")], ids=["sound", "too narrow"]
)
@pytest.mark.parametrize("where", [">&-", "| true", "| head -c 1", ">&- 2>&- <&-", "2>/dev/full", "2>&-"])
def test_a_reader_who_leaves_changes_nothing(tmp_path: Path, where: str, text: str, code: int, unbuffered: str) -> None:
    written(text, tmp_path)
    said = shell(f"bookmaker check --json {where}", tmp_path, unbuffered=unbuffered)
    assert said.returncode == code
    assert "Traceback" not in said.stderr
    assert "Exception" not in said.stderr


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="a device that is always full")
@pytest.mark.parametrize("command", ["check --json", "check", "make --json", "schema", "--version", "--help"])
def test_a_full_disk_under_the_output_is_told(tmp_path: Path, command: str) -> None:
    written(ONE_BOOK, tmp_path)
    said = shell(f"bookmaker {command} >/dev/full", tmp_path)
    assert said.returncode == 2
    *_, last = said.stderr.splitlines()
    assert last == "what there is to say cannot be written: No space left on device; write it to another place"
    assert "Traceback" not in said.stderr


def test_files_get_no_number_of_a_closed_stream(tmp_path: Path) -> None:
    """What is said must never land in a file that was opened under the number of the output."""
    written(ONE_BOOK, tmp_path)
    assert shell("bookmaker make --into plain", tmp_path).returncode == 0
    assert shell("bookmaker make --into closed >&- 2>&- <&-", tmp_path).returncode == 0
    assert contents(tmp_path / "plain") == contents(tmp_path / "closed")


def test_names_steer_no_terminal(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    name = "a\x1b[2J\x07\u202eb"
    written(TOO_NARROW, tmp_path, f"{name}.yaml")
    said = bookmaker("check", f"{name}.yaml")
    made = bookmaker("make", f"{name}.yaml", "--into", f"{name}-out", "--json")
    told = bookmaker("make", f"{name}.yaml", "--into", f"{name}-out")
    lost = bookmaker("check", f"{name}.yml")
    assert [said.code, made.code, told.code, lost.code] == [1, 1, 1, 2]
    for text in (*said[1:], *made[1:], *told[1:], *lost[1:]):
        assert not set(text.replace("\n", "")) & set("\x1b\x07\u202e")
    assert "a?[2J??b.yaml:" in said.err
    assert json.loads(made.out)["problems"][0]["file"] == f"{name}.yaml"


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_a_stop_during_start_is_quiet(tmp_path: Path, number: signal.Signals) -> None:
    """A library that is loaded first stops the process: there is no quicker hand."""
    (tmp_path / "typer.py").write_text(f"import os\nos.kill(os.getpid(), {int(number)})\n", encoding="utf-8")
    begin = "import sys; from bookmaker.__main__ import main; main()"
    environment = os.environ | {"PYTHONPATH": f"{tmp_path}:{HOUSE}"}
    ended = subprocess.run([sys.executable, "-c", begin], env=environment, capture_output=True, check=False)
    assert (ended.returncode, ended.stdout, ended.stderr) == (-number, b"", b"")


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_a_stop_while_it_makes_puts_everything_back(tmp_path: Path, number: signal.Signals) -> None:
    written(ONE_BOOK, tmp_path)
    assert shell("bookmaker make --into out", tmp_path).returncode == 0
    before = contents(tmp_path)
    chance = random.Random(8)
    command = [sys.executable, "-m", "bookmaker", "make", "--into", "out"]
    with subprocess.Popen(command, cwd=tmp_path, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as process:
        at_work = time.monotonic() + 20
        while not (tmp_path / ".out.bookmaker").exists() and time.monotonic() < at_work:
            time.sleep(0.002)
        time.sleep(chance.uniform(0, 0.05))
        process.send_signal(number)
        out, err = process.communicate()
    assert (process.returncode, out, err) == (128 + number, b"", b"")
    assert contents(tmp_path) == before


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_a_stop_while_a_refused_run_tidies_up_leaves_nothing(tmp_path: Path, number: signal.Signals) -> None:
    """It comes as the first thing is taken away, and ends the command when all is."""
    written(TOO_NARROW.replace("60 mm", "no"), tmp_path)
    begin = (
        "import os, shutil\n"
        "plain = shutil.rmtree\n"
        f"shutil.rmtree = lambda *a, **k: (os.kill(os.getpid(), {int(number)}), plain(*a, **k))\n"
        "from bookmaker.__main__ import main\n"
        "main()"
    )
    command = [sys.executable, "-c", begin, "make", "none.yaml", "--into", "new/deep/out"]
    environment = os.environ | {"PYTHONPATH": str(HOUSE)}
    ended = subprocess.run(command, cwd=tmp_path, env=environment, capture_output=True, check=False)
    assert (ended.returncode, ended.stdout) == (128 + number, b"")
    assert [path.name for path in tmp_path.iterdir()] == ["shelf.yaml"]


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP])
def test_a_stop_in_code_made_at_run_time_is_told_as_what_it_was(tmp_path: Path, number: signal.Signals) -> None:
    """Of a plain KeyboardInterrupt in such code Python says that it was Ctrl-C."""
    (tmp_path / "typer.py").write_text(f"exec('import os; os.kill(os.getpid(), {int(number)})')\n", encoding="utf-8")
    begin = (
        "import sys\nfrom bookmaker.cli.stopping import stoppable\n"
        "with stoppable() as stop:\n    import typer\nsys.exit(stop.code)"
    )
    environment = os.environ | {"PYTHONPATH": f"{tmp_path}:{HOUSE}"}
    ended = subprocess.run([sys.executable, "-c", begin], env=environment, capture_output=True, check=False)
    assert (ended.returncode, ended.stderr) == (128 + number, b"")
