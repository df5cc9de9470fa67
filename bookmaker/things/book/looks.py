"""Looks: the number from which grows everything about a cover that is left to chance.

It hangs on what a book goes by, or on what the maker wrote; never on its place or its neighbours.
"""

from __future__ import annotations

import hashlib

__all__ = ["LAST_LOOK", "look_of"]

LAST_LOOK = 99_999
"""Looks are numbered from 1 to this: far more than there are books on a shelf."""


def look_of(*called: str) -> int:
    """The look of what goes by an id or by some words, as long as the maker writes no other.

    >>> look_of("salt-roads"), look_of("salt-roads"), look_of("tide-tables")
    (74307, 74307, 12619)
    """
    return 1 + int.from_bytes(hashlib.sha256("\0".join(called).encode()).digest()[:8]) % LAST_LOOK
