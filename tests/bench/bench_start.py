"""How long a command takes to begin, against another version of bookmaker, in one run.

    python -m tests.bench.bench_start PYTHON [ROUNDS]

PYTHON is the interpreter of an environment in which the other version is installed. Both run the same commands in
turn, ROUNDS (9) times each, each on the starter that it writes itself, for one may refuse what the other knows, after
one run that compiles what they import; what counts is the processor time of the whole process. Prints medians, and for
how much of the other's time ours takes.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path
from statistics import median

COMMANDS = {("--help",): 1 / 3, ("--version",): 1 / 3, ("check", "shelf.yaml"): 0.6}
"""What is run, and the most it may take of the other's time."""


def seconds(python: str, arguments: tuple[str, ...], folder: Path) -> float:
    """Processor time of one command in a folder, in seconds."""
    compiled = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    environment = compiled | {"PYTHONPYCACHEPREFIX": str(folder / "compiled")}
    before = os.times()
    command = [python, "-m", "bookmaker", *arguments]
    subprocess.run(command, cwd=folder, env=environment, capture_output=True, check=False)
    after = os.times()
    return after.children_user + after.children_system - before.children_user - before.children_system


def main() -> None:
    """Run the benchmark and print what was measured."""
    other, rounds = sys.argv[1], int(sys.argv[2]) if len(sys.argv) > 2 else 9
    with tempfile.TemporaryDirectory() as name:
        folders = {python: Path(name) / str(number) for number, python in enumerate((other, sys.executable))}
        for python, folder in folders.items():
            subprocess.run([python, "-m", "bookmaker", "new", str(folder)], capture_output=True, check=True)
        for arguments, most in COMMANDS.items():
            taken: dict[str, list[float]] = {other: [], sys.executable: []}
            for python in taken:
                seconds(python, arguments, folders[python])  # compiles what is imported
            for _ in range(rounds):
                for python, times in taken.items():
                    times.append(seconds(python, arguments, folders[python]))
            before, now = (median(times) for times in taken.values())
            verdict = "good" if now <= most * before else "TOO LONG"
            print(f"{' '.join(arguments):18} {before:.3f} s before, {now:.3f} s now: {now / before:.2f}, {verdict}")


if __name__ == "__main__":
    main()
