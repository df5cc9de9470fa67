"""Signals held back while something is put in order: what is half tidied up would be left so."""

from __future__ import annotations

import signal
import sys
from collections.abc import Iterator
from contextlib import contextmanager

__all__ = ["held_back"]


@contextmanager
def held_back() -> Iterator[None]:
    """Within the block no signal stops this thread; one that came meanwhile does as soon as it ends.

    Only what is short belongs here.
    """
    if sys.platform == "win32":  # it has no masks of signals
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT, signal.SIGTERM, signal.SIGHUP})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)
