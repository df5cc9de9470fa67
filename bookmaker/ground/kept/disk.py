"""Values kept on disk from one run to the next, each in a file under a key that holds all it depends on.

Nothing that is found there is trusted. A file is whole or it is not there: it is written beside its place under a
name of its own and then put in it, so that several programs may write at once. It begins with a checksum of what
follows; one that was cut short, altered, or written by somebody else is as good as none. What a folder cannot take
is not kept, and nobody has to hear of it. The files that were used longest ago go when all together are too large.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import stat
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

from ..files import Wanted, read_file
from ..problems import ShelfFileError

__all__ = ["KeptOnDisk"]

FIRST_LINE = b"bookmaker kept 1 "
"""What every file begins with; its checksum (BLAKE2b) and a line feed follow."""

ENDING, UNFINISHED = ".kept", ".new"

WANTED = Wanted("kept value", 64_000_000, "", "")
"""Nothing that is kept here comes near so many bytes; what is larger is not read."""

FORSAKEN = 24 * 3600.0
"""Seconds after which an unfinished file is taken for one whose writer was broken off."""


class KeptOnDisk:
    """Values in a folder, which all together take no more than `most` bytes; the folder is made when it is needed."""

    def __init__(self, folder: Path, most: int) -> None:
        self._folder = folder
        self._most = most

    def get(self, key: str) -> bytes | None:
        """The value under a key, which is a digest; None if there is none, or none that can be used."""
        path = self._folder / (key + ENDING)
        try:
            whole = read_file(path, WANTED).data
            os.utime(path)  # the younger, the longer it stays
        except (ShelfFileError, OSError):
            return None
        head, _, value = whole.partition(b"\n")
        return value if head == FIRST_LINE + _checksum(value) else None

    def put(self, key: str, value: bytes) -> None:
        """Keep a value, if that can be done."""
        with contextlib.suppress(OSError):
            self._folder.mkdir(mode=0o700, parents=True, exist_ok=True)
            handle, name = tempfile.mkstemp(suffix=UNFINISHED, dir=self._folder)
            try:
                with os.fdopen(handle, "wb") as file:
                    file.write(FIRST_LINE + _checksum(value) + b"\n" + value)
                Path(name).replace(self._folder / (key + ENDING))
            except OSError:
                Path(name).unlink()
                raise
            self._make_room()

    def _make_room(self) -> None:
        """Let those go that were used longest ago, until the others are small enough, and what was left unfinished."""
        files = sorted(self._files(), reverse=True)
        total = 0
        for used, size, path in files:
            forsaken = path.suffix == UNFINISHED and time.time() - used > FORSAKEN
            total += size
            if total > self._most or forsaken:
                total -= size
                path.unlink(missing_ok=True)

    def _files(self) -> Iterator[tuple[float, int, Path]]:
        """When each of our files was used last, how large it is, and the file."""
        for path in self._folder.iterdir():
            with contextlib.suppress(OSError):
                status = path.lstat()
                if path.suffix in (ENDING, UNFINISHED) and stat.S_ISREG(status.st_mode):
                    yield status.st_mtime, status.st_size, path


def _checksum(value: bytes) -> bytes:
    return hashlib.blake2b(value, digest_size=32).hexdigest().encode("ascii")
