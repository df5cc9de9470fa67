"""Commands run on damaged files, in processes with limits: what went wrong, case by case."""

from __future__ import annotations

import os
import resource
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterable, Iterator
from pathlib import Path

from tests.kit.command_line import bookmaker
from tests.kit.damage import lay
from tests.kit.output_runs import contents, run

__all__ = ["failures"]

LONGEST = 10
"""Seconds of work until a case has hung."""

MOST_MEMORY = 1_500_000_000
"""Bytes of addresses; half of them are those of libraries."""

HOUSE = Path(__file__).parents[2]


def failures(cases: Iterable[tuple[str, int]]) -> Iterator[str]:
    """Each case is a kind of damage and a number; what is yielded says which went wrong, and how."""
    waiting = list(cases)
    while waiting:
        lines = "".join(f"{kind} {number}\n" for kind, number in waiting)
        command = [sys.executable, "-m", "tests.kit.guarded"]
        said = subprocess.run(command, input=lines, stdout=subprocess.PIPE, text=True, cwd=HOUSE, check=False)
        ended = said.stdout.splitlines()
        yield from (line for line in ended if not line.endswith(" well"))
        waiting = waiting[len(ended) :]
        if waiting and said.returncode:
            kind, number = waiting.pop(0)
            yield f"{kind} {number} ended the process: {said.returncode}"


def main() -> None:
    """Run the cases that are read from the standard input, a line for each on the standard output."""
    resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY, MOST_MEMORY))
    spoken = os.fdopen(os.dup(1), "w")
    os.dup2(2, 1)
    for line in sys.stdin:
        kind, number = line.split()
        print(kind, number, _outcome(kind, int(number)), file=spoken, flush=True)


def _outcome(kind: str, number: int) -> str:
    """How one case went: `well`, or what was wrong, on one line."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        lay(kind, number, folder)
        run(folder / "out", "before")
        before = contents(folder / "out")
        os.chdir(folder)
        signal.signal(signal.SIGPROF, _late)
        signal.setitimer(signal.ITIMER_PROF, LONGEST)
        start = time.process_time()
        try:
            said = bookmaker("make", "--into", "out", "--quiet", "--no-cache")
        except BaseException as trouble:
            where = trouble.__traceback__
            while where and where.tb_next:
                where = where.tb_next
            at = f"{where.tb_frame.f_code.co_filename}:{where.tb_lineno}" if where else ""
            return f"{type(trouble).__name__}: {trouble} at {at} after {time.process_time() - start:.1f} s".replace(
                "\n", " "
            )
        finally:
            signal.setitimer(signal.ITIMER_PROF, 0)
            os.chdir(HOUSE)
        if said.code not in (0, 1, 2) or (said.code == 2 and not said.err):
            return f"ended with {said.code}: {said.err!r}"
        if said.code == 2 and contents(folder / "out") != before:
            return "lost what was made before"
        return "well"


def _late(_: int, __: object) -> None:
    raise TimeoutError("it hangs")


if __name__ == "__main__":
    main()
