"""Locks that a process holds on a file while it lives: they end with it, however it ends."""

from __future__ import annotations

import errno
import os
import sys
from pathlib import Path

__all__ = ["UNLOCKABLE", "lock_file", "unlock_file"]

FLAGS = os.O_RDWR | os.O_CREAT

UNLOCKABLE = frozenset((errno.ENOLCK, errno.ENOSYS, errno.EOPNOTSUPP, errno.EINVAL))
"""What it says where nothing can be locked, as on some drives of a network."""

BUSY = frozenset((errno.EAGAIN, errno.EACCES, errno.EDEADLK))
"""What the system says of a file that another process has locked."""

if sys.platform == "win32":
    import msvcrt

    FLAGS |= os.O_NOINHERIT

    def _lock(number: int) -> None:
        msvcrt.locking(number, msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    FLAGS |= os.O_NOFOLLOW | os.O_CLOEXEC

    def _lock(number: int) -> None:
        fcntl.flock(number, fcntl.LOCK_EX | fcntl.LOCK_NB)


def lock_file(path: Path, *, is_ours: bool) -> int | None:
    """Make a file, if it is not there, and lock it; its number, or None if another process has it or takes it away.

    Where nothing can be locked, one that nobody else knows of `is_ours` all the same.

    Raises:
        OSError: it cannot be made, or nothing can be locked there.
    """
    number = os.open(path, FLAGS, 0o666)
    try:
        if _is_locked(number, is_ours=is_ours) and os.path.samestat(os.fstat(number), path.stat()):
            return number
    except FileNotFoundError:  # whoever had it took it away at this moment
        pass
    except BaseException:
        os.close(number)
        raise
    os.close(number)
    return None


def _is_locked(number: int, *, is_ours: bool) -> bool:
    try:
        _lock(number)
    except OSError as trouble:
        if trouble.errno in BUSY:
            return False
        if not (is_ours and trouble.errno in UNLOCKABLE):
            raise
    return True


def unlock_file(path: Path, number: int) -> None:
    """Take a file away whose lock is held, and end the lock."""
    if sys.platform == "win32":  # what is open cannot be taken away there
        os.close(number)
        path.unlink(missing_ok=True)
    else:
        try:
            path.unlink(missing_ok=True)
        finally:
            os.close(number)
