"""The streams a command speaks on: one that is closed, full or no longer read stops no work and shows no traceback."""

from __future__ import annotations

import io
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Literal, TextIO

if TYPE_CHECKING:
    from _typeshed import ReadableBuffer

__all__ = ["Outlet", "outlets"]

NOBODY_READS = (BrokenPipeError, ConnectionResetError)
"""What is raised where the reader of a pipe is gone, as `head` is after its lines."""


class _Mouth(io.RawIOBase):
    """Bytes on their way out: after the first trouble the others go nowhere."""

    def __init__(self, below: io.RawIOBase) -> None:
        super().__init__()
        self._below = below
        self._shut = False
        self.trouble = ""

    def writable(self) -> bool:
        return True

    def isatty(self) -> bool:
        return self._below.isatty()

    def fileno(self) -> int:
        return self._below.fileno()

    def write(self, data: ReadableBuffer) -> int | None:
        if not self._shut:
            try:
                return self._below.write(data)
            except NOBODY_READS:
                self._shut = True
            except OSError as error:
                self._shut, self.trouble = True, error.strerror or str(error)
        return memoryview(data).nbytes


class Outlet(io.TextIOWrapper):
    """A stream of text that never stops who writes to it.

    `trouble` says in words of the system why not all of it could be written; it is no trouble that nobody reads on.
    """

    def __init__(self, stream: io.TextIOWrapper, below: io.RawIOBase) -> None:
        self._stream = stream  # which would close what is below it if it were given up
        self._mouth = _Mouth(below)
        super().__init__(
            io.BufferedWriter(self._mouth),
            encoding=stream.encoding,
            errors="replace",  # a terminal of an old code page shows ? for a sign it lacks; it is no reason to stop
            line_buffering=stream.line_buffering,
        )

    @property
    def trouble(self) -> str:
        return self._mouth.trouble


@contextmanager
def outlets() -> Iterator[list[str]]:
    """Within the block what is written to the standard streams goes through outlets; yields what troubled the first.

    Streams that were closed lead nowhere: else the next file that is opened would get their number. Streams that
    no bytes go through, as those of tests, stay what they are. The list is filled at the end of the block.
    """
    before = sys.stdin, sys.stdout, sys.stderr
    troubles: list[str] = []
    sys.stdin, sys.stdout, sys.stderr = _opened(sys.stdin, "r"), _opened(sys.stdout, "w"), _opened(sys.stderr, "w")
    out, err = map(_outlet, (sys.stdout, sys.stderr))
    sys.stdout, sys.stderr = out, err
    try:
        yield troubles
    finally:
        out.flush()
        if isinstance(out, Outlet) and out.trouble:
            troubles.append(out.trouble)
            print(f"what there is to say cannot be written: {out.trouble}; write it to another place", file=err)
        err.flush()
        sys.stdin, sys.stdout, sys.stderr = before


def _opened(stream: TextIO | None, mode: Literal["r", "w"]) -> TextIO:
    return stream or Path(os.devnull).open(mode, encoding="utf-8")


def _outlet(stream: TextIO) -> TextIO:
    """An outlet before a stream; Python may be told to leave out the buffer before its bytes."""
    if isinstance(stream, io.TextIOWrapper):
        below: object = stream.buffer.raw if isinstance(stream.buffer, io.BufferedWriter) else stream.buffer
        if isinstance(below, io.RawIOBase):
            return Outlet(stream, below)
    return stream
