"""A command is stopped by signals as by the keyboard: what it began is put back, and it ends without a word."""

from __future__ import annotations

import signal
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from types import FrameType

__all__ = ["Stop", "stoppable"]

STOPS = ("SIGINT", "SIGTERM", "SIGHUP")
"""Ctrl-C, a request to end, and a terminal that is closed; not every system has all of them."""

SIGNALLED = 128
"""Exit codes of commands that a signal ended are this much more than its number, as shells tell them."""


class _Stopped(KeyboardInterrupt):
    """Raised by a signal. Were it a plain one and met code that is made at run time, Python would end as if by Ctrl-C,
    whatever became of it.
    """


@dataclass
class Stop:
    """Which signal stopped a command; 0 if none did."""

    number: int = 0

    @property
    def code(self) -> int:
        """The exit code that says so; 0 if there is nothing to say."""
        return self.number and SIGNALLED + self.number

    def now(self, number: int, _: FrameType | None) -> None:
        """Stop what is going on."""
        self.number = number
        raise _Stopped


@contextmanager
def stoppable() -> Iterator[Stop]:
    """A block that signals stop: it puts back what it began and ends here; signals that are ignored stay so.

    Afterwards, signals end the process at once: there is nothing left to put back.
    """
    stop = Stop()
    numbers = [signal.Signals[name] for name in STOPS if name in signal.Signals.__members__]
    before = {number: signal.getsignal(number) for number in numbers}
    heard = [number for number in numbers if before[number] is not signal.SIG_IGN]
    try:
        for number in heard:
            signal.signal(number, stop.now)
        yield stop
    except KeyboardInterrupt:
        stop.number = stop.number or signal.SIGINT
    finally:
        for number in heard:
            signal.signal(number, before[number])
