"""Whole runs of `bookmaker make` that are stopped at random moments, find no room, or meet: what was lost by it."""

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
    """Two shelves are made in turn into one folder: what went wrong, each time it did.

    Each run is stopped; after every eighth, one finds no room for its files, and both are begun at once.
    """
    chance = Random(seed)
    whole: dict[str, Tree] = {}
    longest = 0.0
    for word, text in SHELVES.items():
        (folder / f"{word}.yaml").write_text(text, encoding="utf-8")
        start = time.perf_counter()
        assert _begun(folder, word).wait() == 0
        longest = time.perf_counter() - start
        whole[word] = contents(folder / "out")
    (folder / "bad.yaml").write_text("shelf: Bad\n", encoding="utf-8")
    there = {path.name for path in folder.iterdir()}
    largest = {word: max(map(len, tree.values())) for word, tree in whole.items()}
    for number in range(count):
        word = ("old", "new")[number % 2]
        happened = _stopped(folder, word, chance.uniform(0, 1.1 * longest), chance.choice(STOPS))
        yield from (f"{happened}: {wrong}" for wrong in _wrong(folder, whole, there))
        if number % 8 == 0:
            happened = _without_room(folder, word, chance.randrange(largest[word]))
            yield from (f"{happened}: {wrong}" for wrong in _wrong(folder, whole, there))
            happened = _met(folder, chance.uniform(0, longest / 2))
            yield from (f"{happened}: {wrong}" for wrong in _wrong(folder, whole, there))


def _wrong(folder: Path, whole: dict[str, Tree], there: set[str]) -> Iterator[str]:
    """What is not as it should be when all runs are over; one that is refused has looked at what they left."""
    assert _begun(folder, "bad").wait() == 2
    if contents(folder / "out") not in whole.values():
        yield "the folder is neither as it was nor as it was to be"
    if left := {path.name for path in folder.iterdir()} - there:
        yield f"{', '.join(sorted(left))} is left"


def _stopped(folder: Path, word: str, moment: float, stop: signal.Signals) -> str:
    """A run that is stopped after so many seconds."""
    run = _begun(folder, word)
    time.sleep(moment)
    run.send_signal(stop)
    run.wait()
    return f"{word} stopped by {stop.name} after {moment:.3f} s"


def _without_room(folder: Path, word: str, room: int) -> str:
    """A run that cannot write a file of more than so many bytes."""
    ended = _begun(folder, word, room).wait()
    return f"{word} with room for files of {room} bytes" + (f" ended with {ended}" if ended != 2 else "")


def _met(folder: Path, later: float) -> str:
    """Two runs, one begun so many seconds after the other."""
    one = _begun(folder, "old")
    time.sleep(later)
    other = _begun(folder, "new")
    ended = (one.wait(), other.wait())
    return f"new begun {later:.3f} s after old" + (f", ended with {ended}" if not {*ended} <= {0, 2} else "")


LIMITED = (
    "import resource, runpy, sys\n"
    "room = int(sys.argv.pop(1))\n"
    "resource.setrlimit(resource.RLIMIT_FSIZE, (room, room))\n"
    "runpy.run_module('bookmaker', run_name='__main__', alter_sys=True)\n"
)


def _begun(folder: Path, word: str, room: int | None = None) -> subprocess.Popen[bytes]:
    start = ["-m", "bookmaker"] if room is None else ["-c", LIMITED, str(room)]
    command = [sys.executable, *start, "make", f"{word}.yaml", "--into", "out", "--quiet", "--no-cache"]
    around = os.environ | {"PYTHONPATH": str(HOUSE)}
    return subprocess.Popen(command, cwd=folder, env=around, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
