"""The collection of garbage, held off while much is made that stays.

Lines, pages and operators hardly ever refer to one another in circles, yet the collector looks through all of them
again and again: a fifth of the time that a long text takes. What little there is waits until the work is done.
"""

from __future__ import annotations

import atexit
import gc
from collections.abc import Iterator
from contextlib import contextmanager

__all__ = ["uncollected", "uncollected_at_the_end"]


@contextmanager
def uncollected() -> Iterator[None]:
    """Within the block, or the function it decorates, nothing is collected; afterwards as before, whatever happens.

    Blocks may lie in one another: the outermost ends it.

    >>> with uncollected():
    ...     gc.isenabled()
    False
    >>> gc.isenabled()
    True
    """
    collecting = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if collecting:
            gc.enable()


def uncollected_at_the_end() -> None:
    """Let this process end without a last look at all there is, which takes as long as it took to import it."""
    atexit.register(gc.freeze)
