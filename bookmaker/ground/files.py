"""Files that are read: whole, at once, and only if they are files; else it is said why not, and what to do.

A pipe or a device is never opened: reading it may wait for ever, or never end.
"""

from __future__ import annotations

import errno
import hashlib
import os
import stat
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from contextvars import ContextVar
from dataclasses import dataclass, field, replace
from pathlib import Path
from types import MappingProxyType
from typing import NoReturn

from .demands import demand
from .lost_files import BESIDE, not_there
from .problems import FieldPath, Place, Problem, ShelfFileError
from .visible import brief

__all__ = [
    "SAVE_AGAIN",
    "Looked",
    "SourceFile",
    "Wanted",
    "files_in",
    "is_there",
    "look_again",
    "looking",
    "read_again",
    "read_file",
    "reason_of",
    "supposing",
]

SAVE_AGAIN = "save or copy it again from where it came"

NO_FILES = {
    stat.S_IFDIR: "a folder",
    stat.S_IFIFO: "a pipe",
    stat.S_IFSOCK: "a socket",
    stat.S_IFCHR: "a device",
    stat.S_IFBLK: "a device",
}
"""What else may stand under a name, by the format in its mode."""

NOWHERE = frozenset((errno.ENOENT, errno.ENOTDIR, errno.ENAMETOOLONG))
"""What the system says of a name under which nothing stands."""

REMEDIES = {
    errno.EACCES: "allow reading it, or copy it beside the shelf file",
    errno.ELOOP: "write the path of the file itself: the links lead round in a circle",
}
"""What to do about a file that cannot be read; about any other trouble, look at the path."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is wanted of a file: `what` it should be, and no more than `largest` bytes.

    `instead` says what to write in place of what is no file, `smaller` what to do about one that is too large, and
    `empty` about one that is empty; those that may be so have none.
    """

    what: str
    largest: int
    smaller: str
    instead: str
    empty: str = ""
    elsewhere: str = BESIDE


@dataclass(frozen=True, slots=True)
class SourceFile:
    """A file as it was read. `digest` is the SHA-256 of its bytes, in hexadecimal: two alike say the same."""

    path: Path
    digest: str
    data: bytes = field(repr=False, compare=False)

    @property
    def name(self) -> str:
        """Its name, without the folders on the way."""
        return self.path.name


@dataclass(frozen=True, slots=True)
class Looked:
    """What was found under a path: a file by the digest of its bytes, a folder by that of the names in it.

    `found` is empty where nothing could be read.
    """

    path: Path
    found: str
    folder: bool = False


_LOOKED: ContextVar[tuple[list[Looked], ...]] = ContextVar("looked", default=())


@contextmanager
def looking() -> Iterator[list[Looked]]:
    """A list of everything that is looked at on the disk from here on, kept up to the end."""
    found: list[Looked] = []
    token = _LOOKED.set((*_LOOKED.get(), found))
    try:
        yield found
    finally:
        _LOOKED.reset(token)


_SUPPOSED: ContextVar[Mapping[Path, bytes]] = ContextVar("supposed", default=MappingProxyType({}))


@contextmanager
def supposing(held: Mapping[Path, bytes]) -> Iterator[None]:
    """Read some files, within the block, as if they held these bytes: what would be said of them if they did.

    Nothing is written. Paths are those under which the files are read.
    """
    token = _SUPPOSED.set({**_SUPPOSED.get(), **held})
    try:
        yield
    finally:
        _SUPPOSED.reset(token)


def _note(looked: Looked) -> None:
    for found in _LOOKED.get():
        found.append(looked)


def look_again(looked: Looked) -> bool:
    """Whether the same is found again. Where nothing could be read, it is tried again in any case."""
    if not looked.found:
        return False
    try:
        if looked.folder:
            return _digest_of_names(files_in(looked.path)) == looked.found
        if looked.path in _SUPPOSED.get():
            return _digest(_SUPPOSED.get()[looked.path]) == looked.found
        return stat.S_ISREG(looked.path.stat().st_mode) and _digest(looked.path.read_bytes()) == looked.found
    except (OSError, ShelfFileError):
        return False


def is_there(path: Path) -> bool:
    """Whether anything stands under a path."""
    try:
        found = path.exists()
    except (OSError, ValueError):  # a name that no file can have
        found = False
    if not found:
        _note(Looked(path, ""))
    return found


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def _digest_of_names(paths: list[Path]) -> str:
    return _digest("\0".join(sorted(path.name for path in paths)).encode("utf-8", "surrogateescape"))


def read_file(
    path: Path, wanted: Wanted, written: str = "", field: FieldPath = (), place: Place | None = None
) -> SourceFile:
    """Read a file; `written` is its path as the shelf file has it, under `field` or at `place`.

    Raises:
        ShelfFileError: it is not there, no file, too large, empty although it must not be, or cannot be read.
    """

    def refuse(message: str, remedy: str) -> NoReturn:
        _note(Looked(path, ""))
        raise ShelfFileError((Problem(message, remedy, field=field, place=place),))

    supposed = _SUPPOSED.get().get(path)
    if supposed is not None:
        _note(Looked(path, _digest(supposed)))
        return SourceFile(path, _digest(supposed), supposed)
    name = brief(path.name or str(path))
    try:
        status = path.stat()
        size = status.st_size
        found = NO_FILES.get(stat.S_IFMT(status.st_mode), "no file")
        if not stat.S_ISREG(status.st_mode):
            refuse(f"{name} is {found}, not a {wanted.what}", wanted.instead)
        if size > wanted.largest:
            refuse(f"{name} has {_megabytes(size)} MB, more than {_megabytes(wanted.largest)} MB", wanted.smaller)
        if not size and wanted.empty:
            refuse(f"{name} is empty (0 bytes)", wanted.empty)
        demand("bytes", size, name=name, field=field, place=place)
        data = _read(path, size)
    except (OSError, ValueError) as trouble:
        if _is_of_nothing(trouble):
            refuse(*not_there(wanted.what, path, written, wanted.elsewhere))
        refuse(f"{name} cannot be read ({reason_of(trouble)})", _remedy(trouble))
    if len(data) != size:
        refuse(f"{name} is being changed", "wait until it is written, and run the command again")
    found = _digest(data)
    _note(Looked(path, found))
    return SourceFile(path, found, data)


def read_again(path: Path, wanted: Wanted, digest: str) -> SourceFile:
    """Read a file once more.

    Raises:
        ShelfFileError: it is not what it was.
    """
    with suppress(ShelfFileError):
        file = read_file(path, wanted)
        if file.digest == digest:
            return file
    raise ShelfFileError((Problem(f"{path.name} has changed since it was first read", "run the command again"),))


def files_in(folder: Path, written: str = "", field: FieldPath = ()) -> list[Path]:
    """What stands in a folder and is no folder itself, in no order; what is hidden is left out.

    Raises:
        ShelfFileError: there is no such folder, or it cannot be read.
    """
    name = brief(folder.name or str(folder))
    try:
        with os.scandir(folder) as entries:
            found = [folder / one.name for one in entries if not one.name.startswith(".") and not one.is_dir()]
    except NotADirectoryError:
        problem = Problem(f"{name} is a file, not a folder", "write the folder that holds the pictures")
    except (OSError, ValueError) as trouble:
        if _is_of_nothing(trouble):
            problem = Problem(*not_there("folder", folder, written))
        else:
            problem = Problem(f"the folder {name} cannot be read ({reason_of(trouble)})", _remedy(trouble))
    else:
        _note(Looked(folder, _digest_of_names(found), folder=True))
        return found
    _note(Looked(folder, "", folder=True))
    raise ShelfFileError((replace(problem, field=field),))


def reason_of(trouble: OSError | ValueError) -> str:
    """Why the system refuses a file, in small letters.

    >>> reason_of(FileNotFoundError(2, "No such file or directory")), reason_of(ValueError("embedded null byte"))
    ('no such file or directory', 'embedded null byte')
    """
    told = trouble.strerror if isinstance(trouble, OSError) else None
    return (told or str(trouble)).lower()


def _is_of_nothing(trouble: OSError | ValueError) -> bool:
    """Whether there is nothing of a name, or can be nothing: it is too long, or holds a null byte."""
    return not isinstance(trouble, OSError) or trouble.errno in NOWHERE


def _remedy(trouble: OSError | ValueError) -> str:
    return REMEDIES.get(trouble.errno or 0, BESIDE) if isinstance(trouble, OSError) else BESIDE


def _read(path: Path, size: int) -> bytes:
    """The bytes of a file of so many; one more, if it has grown. Files of the system that claim to have none do not
    tell what they have.
    """
    if not size:
        return b""
    with path.open("rb") as file:
        return file.read(size + 1)


def _megabytes(size: int) -> str:
    """A size in bytes as megabytes.

    >>> _megabytes(10_040_000), _megabytes(2_000_000)
    ('10.0', '2')
    """
    return f"{size / 1e6:.0f}" if size % 1_000_000 == 0 else f"{size / 1e6:.1f}"
