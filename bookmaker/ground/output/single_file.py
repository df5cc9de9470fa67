"""Single files: put in their place whole, and never over what is the maker's."""

from __future__ import annotations

import os
import secrets
import stat
import sys
from collections.abc import Mapping
from pathlib import Path

from ..files import Wanted, read_file
from ..lost_files import GONE, is_anywhere
from ..problems import ShelfFileError
from ..visible import brief
from .folder import cannot_write
from .held_back import held_back
from .ours import refused
from .parents import parents_of
from .seals import has_seal, is_sealed, with_seal

__all__ = ["check_replaceable", "new_files", "put_file", "write_new"]

OURS = Wanted("file that bookmaker wrote", 50_000_000, "name another file", instead="name a file to write")
"""What may be replaced; bookmaker writes no single file as large as that."""

FIRST = 5
"""Bytes by which a PDF is told from a profile."""

NEW = os.O_WRONLY | os.O_CREAT | os.O_EXCL
if sys.platform == "win32":
    NEW |= os.O_BINARY | os.O_NOINHERIT
else:
    NEW |= os.O_NOFOLLOW | os.O_CLOEXEC


def put_file(target: Path, data: bytes) -> None:
    """Write a PDF, HTML or YAML file with a seal, whole or not at all; only one with an unbroken seal is replaced.

    Raises:
        OutputError: something else stands there, or it cannot be written.
    """
    try:
        _check(target, data[:FIRST])
        with parents_of(target):
            beside = target.with_name(f".{target.name[:40]}-{secrets.token_hex(8)}")
            try:
                write_new(beside, with_seal(data))
                _check(target, data[:FIRST])
                beside.replace(target)
            except BaseException:
                with held_back():
                    beside.unlink(missing_ok=True)
                raise
    except (OSError, ValueError) as trouble:
        raise cannot_write(target, trouble) from None


def new_files(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write files into a new or empty folder: all of them or none.

    Raises:
        OutputError: the folder holds something, or cannot be written.
    """
    written: list[Path] = []
    try:
        with parents_of(folder / "any"):
            if not folder.is_dir() or any(folder.iterdir()):
                raise refused(f"{brief(folder)} is not an empty folder", "name a new one")
            try:
                for name, data in files.items():
                    written.append(folder / name)
                    write_new(folder / name, data)
            except BaseException:
                with held_back():
                    for path in written:
                        path.unlink(missing_ok=True)
                raise
    except (OSError, ValueError) as trouble:
        raise cannot_write(folder, trouble) from None


def check_replaceable(target: Path, start: bytes) -> None:
    """Refuse a file that bookmaker did not write, or that was changed since, or that does not begin with `start` as
    what replaces it does; what is not there may be written.

    Raises:
        OutputError: it must not be replaced, or cannot be looked at.
    """
    try:
        _check(target, start)
    except (OSError, ValueError) as trouble:
        raise cannot_write(target, trouble) from None


def _check(target: Path, start: bytes) -> None:
    try:
        mode = target.lstat().st_mode
    except FileNotFoundError:
        if not target.is_absolute() and not is_anywhere():
            raise refused(*GONE) from None
        return
    if stat.S_ISLNK(mode):
        raise refused(f"{brief(target)} is a link, which is not followed", "name the file itself, or another one")
    try:
        data = read_file(target, OURS).data
    except ShelfFileError as refusal:
        [problem] = refusal.problems
        raise refused(problem.message, problem.remedy) from None
    told = ""
    if not is_sealed(data):
        told = "was changed since bookmaker wrote it" if has_seal(data) else "is not a file that bookmaker wrote"
    elif not data.startswith(start):
        told = "is a file of another sort"
    if told:
        raise refused(f"{brief(target)} {told}", "name another file: this one would be lost")
    if not mode & stat.S_IWUSR:
        raise refused(f"{brief(target)} is write-protected", "allow writing to it, or name another file")


def write_new(path: Path, data: bytes) -> None:
    """Write a file under a name that nothing has, with the rights that new files get."""
    with os.fdopen(os.open(path, NEW, 0o666), "wb") as file:
        file.write(data)
