"""Shelves of many books: time and memory of whole commands, each in a process of its own, and how they grow.

    python -m tests.bench.bench_size [BOOKS ...]

Checks and makes shelves of BOOKS (250, 500, 1000) books of 48 mock pages, with covers of all styles, in two hundred
to a space, and prints seconds of the processor, the peak of memory, and both for each book beyond the fewest.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import NamedTuple

STYLES = ("cloth", "leather", "half leather", "paper boards", "paperback", "ledger", "atlas", "school", "pamphlet")

COMMANDS = {"check": ("check", "--quiet"), "make": ("make", "--quiet", "--into", "out")}


class Taken(NamedTuple):
    """Seconds of the processor, which other work on the machine hardly changes, and the most megabytes held at once."""

    seconds: float
    megabytes: float


def write_shelf(folder: Path, books: int) -> None:
    """A shelf of so many books, no two of which are alike."""
    spaces = -(-books // 200)
    listed = (
        f"  - {{title: Records of the Salt Office {n}, author: A. Keeper, space: s{n // 200}, "
        f"design: {{style: {STYLES[n % len(STYLES)]}}}}}\n"
        for n in range(books)
    )
    (folder / "shelf.yaml").write_text(
        "shelf: Many Books\n"
        "stocks:\n  page: {caliper: 75 um, grain: long}\n  cover: {caliper: 160 um, grain: long}\n"
        f"spaces: {{{', '.join(f's{n}: {{width: 2 m, height: 40 mm, depth: 40 mm}}' for n in range(spaces))}}}\n"
        "defaults:\n  size: {height: 21 mm, width: 15 mm}\n"
        "  block: {kind: accordion, stock: page, pages: 48}\n  cover: {kind: wrap, stock: cover}\n"
        "books:\n" + "".join(listed),
        encoding="utf-8",
    )


def taken(folder: Path, *arguments: str) -> Taken:
    """What a command takes."""
    process = subprocess.Popen([sys.executable, "-m", "bookmaker", *arguments], cwd=folder)
    _, code, used = os.wait4(process.pid, 0)
    if os.waitstatus_to_exitcode(code) not in (0, 1):
        raise SystemExit(f"bookmaker {' '.join(arguments)} failed")
    return Taken(used.ru_utime + used.ru_stime, used.ru_maxrss / 1024)


def main() -> None:
    """Run the benchmark and print what was measured."""
    counts = sorted(map(int, sys.argv[1:])) or [250, 500, 1000]
    print("books  command   seconds    MB   ms and kB for each book more")
    fewest: dict[str, Taken] = {}
    for books in counts:
        with tempfile.TemporaryDirectory() as name:
            write_shelf(Path(name), books)
            for command, arguments in COMMANDS.items():
                found = taken(Path(name), *arguments)
                first, more = fewest.setdefault(command, found), books - counts[0]
                each = [1000 * (a - b) / more for a, b in zip(found, first, strict=True)] if more else []
                grows = "".join(f"{one:9.1f}" for one in each)
                print(f"{books:5}  {command:7} {found.seconds:9.1f} {found.megabytes:5.0f}{grows}", flush=True)


if __name__ == "__main__":
    main()
