"""Thousands of damaged files, for the night: says which of them went wrong.

    python -m tests.guard [EACH] [FIRST]

Runs EACH (1000) cases of every kind of damage, numbered from FIRST (0) on. A case that is told can be run alone:
its number and its kind are all it grows from.
"""

from __future__ import annotations

import sys

from tests.kit.damage import KINDS
from tests.kit.guarded import failures


def main() -> int:
    """Run all cases; 1 if one of them went wrong."""
    each, first = (*map(int, sys.argv[1:]), *(1000, 0)[len(sys.argv) - 1 :])
    found = 0
    for line in failures((kind, number) for number in range(first, first + each) for kind in KINDS):
        print(line, flush=True)
        found += 1
    print(f"{each * len(KINDS)} cases, {found} went wrong")
    return min(found, 1)


if __name__ == "__main__":
    raise SystemExit(main())
