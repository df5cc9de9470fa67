"""What a command tells, whoever listens: closed, full or cut-off streams end it with a code, not with a traceback."""

from __future__ import annotations

import errno
import io
import os
import signal
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from types import FrameType
from typing import TYPE_CHECKING, TextIO

if TYPE_CHECKING:
    from typing_extensions import Buffer

__all__ = ["UNUSABLE", "ended"]

UNUSABLE, INTERRUPTED, BY_SIGNAL = 2, 130, 128
"""Exit codes: nothing could be done; Ctrl-C; and what is added to the number of a signal, as shells do."""

GONE = frozenset((errno.EPIPE, errno.ESHUTDOWN, errno.EINVAL if sys.platform == "win32" else errno.EPIPE))
"""What the system says when the reader of our output has gone, as `head` does: not worth a word."""

ENDING = ("SIGTERM", "SIGHUP")
"""Signals that end a command; what it has begun is taken back before."""


class _Outlet(io.RawIOBase):
    """A stream that swallows what cannot be written, and remembers why."""

    raw: io.RawIOBase
    trouble: OSError | None = None

    def writable(self) -> bool:
        return True

    def fileno(self) -> int:
        return self.raw.fileno()

    def isatty(self) -> bool:
        return self.raw.isatty()

    def write(self, data: Buffer, /) -> int | None:
        if self.trouble is None:
            try:
                return self.raw.write(data)
            except OSError as trouble:
                self.trouble = trouble
        return memoryview(data).nbytes


def ended(command: Callable[[], object]) -> int:
    """Run a command to its end, whatever becomes of what it tells; its exit code.

    What is told into a pipe that nobody reads is dropped; if it cannot be written for any other reason, that is
    said, and the code is 2. A signal ends the command as Ctrl-C does, so that what it has begun is taken back.
    """
    _fill_gaps()
    with _replaced_streams() as outlet:
        with _signals_as_exits():
            code = _code_of(command)
        for stream in (sys.stdout, sys.stderr):
            with suppress(OSError, ValueError):
                stream.flush()
        trouble = outlet.trouble
        if trouble is None or trouble.errno in GONE:
            return code
        with suppress(OSError):
            reason = (trouble.strerror or str(trouble)).lower()
            sys.stderr.write(f"what is to be told cannot be written ({reason}); make room, or send it elsewhere\n")
            sys.stderr.flush()
        return UNUSABLE


def _code_of(command: Callable[[], object]) -> int:
    try:
        command()
    except SystemExit as end:
        return end.code if isinstance(end.code, int) else UNUSABLE if end.code else 0
    except KeyboardInterrupt:
        return INTERRUPTED
    return 0


def _fill_gaps() -> None:
    """Put something in the place of streams that are closed, or the next file that is opened would take it."""
    with suppress(OSError):
        number = os.open(os.devnull, os.O_RDWR)
        while number <= 2:
            number = os.open(os.devnull, os.O_RDWR)
        os.close(number)
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:
            setattr(sys, name, Path(os.devnull).open(mode, encoding="utf-8"))  # noqa: SIM115 (it stays open)


@contextmanager
def _replaced_streams() -> Iterator[_Outlet]:
    """Streams that never fail; what is written to stdout goes through the outlet that is given, if it is a file."""
    before = sys.stdout, sys.stderr
    outlet = _Outlet()
    sys.stdout, sys.stderr = _safe(sys.stdout, outlet), _safe(sys.stderr, _Outlet())
    try:
        yield outlet
    finally:
        sys.stdout, sys.stderr = before


def _safe(stream: TextIO, outlet: _Outlet) -> TextIO:
    if not isinstance(stream, io.TextIOWrapper):
        return stream
    # A terminal of an old code page shows ? for a sign it lacks; it is no reason to stop.
    stream.reconfigure(errors="replace")
    if not isinstance(stream.buffer, io.BufferedWriter):
        return stream
    outlet.raw = stream.buffer.raw
    return io.TextIOWrapper(
        io.BufferedWriter(outlet), stream.encoding, "replace", None, stream.line_buffering, stream.write_through
    )


@contextmanager
def _signals_as_exits() -> Iterator[None]:
    """Signals that would end the process at once end it as an exception does; those that are ignored stay so."""
    numbers = [number for name in ENDING if (number := getattr(signal, name, None)) is not None]
    ours = [number for number in numbers if signal.getsignal(number) is signal.SIG_DFL]
    try:
        for number in ours:
            signal.signal(number, _exit)
    except ValueError:  # not in the main thread, which alone hears signals
        ours = []
    try:
        yield
    finally:
        for number in ours:
            signal.signal(number, signal.SIG_DFL)


def _exit(number: int, _: FrameType | None) -> None:
    raise SystemExit(BY_SIGNAL + number)
