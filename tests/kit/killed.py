"""Whole runs of `bookmaker make` that are stopped at random moments: what was lost by it, if anything was."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from random import Random

from tests.kit.output_runs import Tree, contents
from tests.kit.shelves import ONE_BOOK

__all__ = ["losses"]

STOPS = (signal.SIGKILL, signal.SIGKILL, signal.SIGTERM, signal.SIGINT)

HOUSE = Path(__file__).parents[2]

SHELVES = {"old": ONE_BOOK, "new": ONE_BOOK.replace("Tide Tables", "Ebb Tables").replace("pages: 48", "pages: 24")}


def losses(folder: Path, count: int, seed: int = 18) -> Iterator[str]:
    """Two shelves are made in turn into one folder, and each run is stopped: what went wrong, each time it did."""
    chance = Random(seed)
    whole: dict[str, Tree] = {}
    longest = 0.0
    for word, text in SHELVES.items():
        (folder / f"{word}.yaml").write_text(text, encoding="utf-8")
        start = time.perf_counter()
        assert _begun(folder, word, "out").wait() == 0
        longest = time.perf_counter() - start
        whole[word] = contents(folder / "out")
    (folder / "bad.yaml").write_text("shelf: Bad\n", encoding="utf-8")
    there = {path.name for path in folder.iterdir()}
    for number in range(count):
        run = _begun(folder, ("old", "new")[number % 2], "out")
        moment, stop = chance.uniform(0, 1.1 * longest), chance.choice(STOPS)
        time.sleep(moment)
        run.send_signal(stop)
        run.wait()
        assert _begun(folder, "bad", "out").wait() == 2  # refused, but it finds what the other left
        where = f"stop {number} ({stop.name} after {moment:.3f} s)"
        if contents(folder / "out") not in whole.values():
            yield f"{where}: the folder is neither as it was nor as it was to be"
        if left := {path.name for path in folder.iterdir()} - there:
            yield f"{where}: {', '.join(sorted(left))} is left"


def _begun(folder: Path, word: str, into: str) -> subprocess.Popen[bytes]:
    command = [sys.executable, "-m", "bookmaker", "make", f"{word}.yaml", "--into", into, "--quiet", "--no-cache"]
    around = os.environ | {"PYTHONPATH": str(HOUSE)}
    return subprocess.Popen(command, cwd=folder, env=around, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
