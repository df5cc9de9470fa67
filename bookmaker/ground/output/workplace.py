"""Where a folder is written before it takes its place: a hidden folder beside it, which one run at a time owns.

It holds the `new` folder while it is written, the `old` one while the new one takes its place, and a lock that ends
with the process. A run that was killed leaves it as it was; the next one puts right what it finds.
"""

from __future__ import annotations

import os
import shutil
import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path

from ..problems import BookmakerError, Problem, Severity
from ..visible import brief
from .held_back import held_back
from .locks import UNLOCKABLE, lock_file, unlock_file
from .ours import refused

__all__ = ["Workplace", "workplace_of"]

LOCK, NEW, OLD = "lock", "new", "old"

MOST_BYTES = 60
"""Of the name of what is written; file systems take 255 in all."""


@dataclass(slots=True)
class Workplace:
    """The hidden folder of a target, owned by this run; `remarks` say what an earlier run had left there."""

    target: Path
    folder: Path
    remarks: tuple[Problem, ...] = ()

    @property
    def new(self) -> Path:
        """Where the new folder is written."""
        return self.folder / NEW

    @property
    def old(self) -> Path:
        """Where the old folder lies while the new one takes its place."""
        return self.folder / OLD

    def put_back(self) -> bool:
        """Put the old folder back if nothing stands in its place; whether there was something to put back."""
        if not os.path.lexists(self.old) or os.path.lexists(self.target):
            return False
        self.old.rename(self.target)
        return True

    def swap(self) -> None:
        """Put the new folder into its place; if that fails, or is stopped, the old one stands there again.

        Raises:
            OSError: it cannot be done.
        """
        try:
            if os.path.lexists(self.target):
                self.target.rename(self.old)
            self.new.rename(self.target)
        except BaseException:
            self.put_back()
            raise

    def clear(self) -> bool:
        """Take away what was begun, and what has been replaced; whether there was anything."""
        left = [path for path in (self.new, self.old) if os.path.lexists(path)]
        for path in left:
            shutil.rmtree(path, ignore_errors=True)
        return bool(left)


@contextmanager
def workplace_of(target: Path, said: Path) -> Iterator[Workplace]:
    """The workplace of a target, which the maker calls `said`; it is gone after the block, unless a replaced
    folder lies there still.

    Raises:
        OutputError: another run is at work there, or something of the maker's stands in its place.
        OSError: it cannot be made.
    """
    stem = target.name.encode()[:MOST_BYTES].decode("utf-8", "ignore")
    folder = target.with_name(f".{stem}.bookmaker")
    number: int | None = None
    work = Workplace(target, folder)
    try:
        with held_back():  # what is taken is known to be
            number = _taken(folder, said)
        if work.put_back():
            work.remarks = (
                _remark(f"{brief(said)} was being replaced when an earlier run was cut off: it is as it was"),
            )
        yield work
    except BookmakerError as refusal:
        refusal.problems = (*work.remarks, *refusal.problems)
        raise
    finally:
        if number is not None:
            with held_back():
                _give_back(work, number)


def _give_back(work: Workplace, number: int) -> None:
    shutil.rmtree(work.new, ignore_errors=True)
    with suppress(OSError):
        unlock_file(work.folder / LOCK, number)
        work.folder.rmdir()


def _remark(message: str) -> Problem:
    return Problem(message, severity=Severity.NOTE)


def _taken(folder: Path, said: Path) -> int:
    """Make the folder, or take over what a killed run left, and lock it; the number of the lock."""
    try:
        folder.mkdir()
    except FileExistsError:
        if not stat.S_ISDIR(folder.lstat().st_mode) or {one.name for one in folder.iterdir()} - {LOCK, NEW, OLD}:
            raise refused(
                f"{brief(folder)} stands where {brief(said)} is first written", "move it to another place"
            ) from None
        number = _next_lock(folder, said)
    else:
        number = _first_lock(folder)
    if number is None:
        remedy = "wait until it is done, or choose another folder"
        raise refused(f"another run of bookmaker is writing into {brief(said)}", remedy)
    return number


def _first_lock(folder: Path) -> int | None:
    """Lock a folder that was just made; it is gone again if that fails."""
    try:
        return lock_file(folder / LOCK, is_ours=True)
    except BaseException:
        shutil.rmtree(folder, ignore_errors=True)
        raise


def _next_lock(folder: Path, said: Path) -> int | None:
    """Lock a folder that was there already."""
    try:
        return lock_file(folder / LOCK, is_ours=False)
    except FileNotFoundError:  # whoever had it took it away at this moment
        return None
    except OSError as trouble:
        if trouble.errno not in UNLOCKABLE:
            raise
        told = f"{brief(folder)} is what another run left on its way to {brief(said)}, or is still writing to"
        raise refused(told, "delete it, if no other run is going on") from None
