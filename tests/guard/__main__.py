"""Thousands of damaged files and hundreds of stopped runs, for the night: says which of them went wrong.

    python -m tests.guard [EACH] [FIRST] [STOPS]

Runs EACH (1000) cases of every kind of damage, numbered from FIRST (0) on, and stops STOPS (200) runs at random
moments. A case that is told can be run alone: its number and its kind are all it grows from.
"""

from __future__ import annotations

import sys
import tempfile
from itertools import chain
from pathlib import Path

from tests.kit.damage import KINDS
from tests.kit.guarded import failures
from tests.kit.killed import losses


def main() -> int:
    """Run all cases; 1 if one of them went wrong."""
    each, first, stops = (*map(int, sys.argv[1:]), *(1000, 0, 200)[len(sys.argv) - 1 :])
    cases = ((kind, number) for number in range(first, first + each) for kind in KINDS)
    found = 0
    with tempfile.TemporaryDirectory() as name:
        for line in chain(failures(cases), losses(Path(name), stops)):
            print(line, flush=True)
            found += 1
    print(f"{each * len(KINDS)} cases and {stops} stops, {found} went wrong")
    return min(found, 1)


if __name__ == "__main__":
    raise SystemExit(main())
