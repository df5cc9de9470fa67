"""Stops at any call to the file system: what a signal, a full disk or the end of a process does midway."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from typing import Any

__all__ = ["Killed", "Watch", "stopped"]

CALLS = ("open", "mkdir", "rename", "replace", "unlink", "rmdir", "chmod", "lstat", "stat", "scandir", "fstat")
"""Calls that look at the file system or change it."""


class Killed(BaseException):
    """The process is gone: nothing it tries after this has any effect, and its locks are gone with it."""


@dataclass
class Watch:
    """Counts calls, and raises `trouble` at one of them, before it is done or after; `Killed` at all later ones too."""

    at: int = 0
    trouble: BaseException | None = None
    after: bool = False
    count: int = 0
    locks: list[int] = field(default_factory=list)

    def wrapped(self, call: Callable[..., Any]) -> Callable[..., Any]:
        """A call that is watched."""

        def watched(*args: Any, **kwargs: Any) -> Any:
            self.count += 1
            late = isinstance(self.trouble, Killed) and self.count > self.at > 0
            now = self.trouble is not None and self.count == self.at
            if late or (now and not self.after):
                self._stop()
            done = call(*args, **kwargs)
            if call.__name__ == "open" and str(args[0]).endswith("lock"):
                self.locks.append(done)
            if now:
                _close(done)  # nobody learns of it
                self._stop()
            return done

        return watched

    def _stop(self) -> None:
        assert self.trouble is not None
        raise self.trouble


def _close(done: object) -> None:
    """Close what a call opened."""
    if isinstance(done, int):
        os.close(done)
    elif isinstance(done, Iterator):
        getattr(done, "close", lambda: None)()


@contextmanager
def stopped(at: int = 0, trouble: BaseException | None = None, *, after: bool = False) -> Iterator[Watch]:
    """Watch the calls of a block; without trouble they are only counted."""
    watch = Watch(at, trouble, after)
    plain = {name: getattr(os, name) for name in CALLS}
    for name, call in plain.items():
        setattr(os, name, watch.wrapped(call))
    try:
        yield watch
    finally:
        for name, call in plain.items():
            setattr(os, name, call)
        if trouble is not None:
            for number in watch.locks:  # as the end of the process does
                with suppress(OSError):
                    os.close(number)
