"""The output folder: written beside its place, and put there when it is complete."""

from __future__ import annotations

import errno
import os
import stat
import sys
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from ..files import reason_of
from ..lost_files import GONE, is_anywhere
from ..problems import OutputError, Problem, Severity
from ..visible import brief
from .ours import check_ours, made_before, refused, state_of
from .parents import parents_of
from .workplace import Workplace, workplace_of

__all__ = ["NewFolder", "cannot_write", "replaced_folder"]


@dataclass(frozen=True, slots=True)
class NewFolder:
    """A folder to write into. `before` are the files of an earlier run that it replaces, `plan` is what that planned,
    `remarks` what to tell.
    """

    path: Path
    before: frozenset[str]
    plan: Mapping[str, object]
    remarks: Sequence[Problem] = ()


@contextmanager
def replaced_folder(target: Path) -> Iterator[NewFolder]:
    """A folder to write into that becomes `target` if the block ends well, and leaves no trace if not.

    Raises:
        OutputError: the target holds what is not ours, another run writes there, it cannot be written, or the disk
            is full.
    """
    try:
        place = _place_of(target)
        with parents_of(place), workplace_of(place, target) as work:
            _check_target(target)
            _tell_what_is_cleared(work, target)
            work.new.mkdir()
            state = state_of(target)
            yield NewFolder(work.new, *made_before(target), work.remarks)
            if (
                state_of(target) != state
            ):  # something was laid there meanwhile; the plan is too long to be read for less
                _check_target(target)
            _put_in_place(work, target)
            work.clear()
    except OSError as trouble:
        raise cannot_write(target, trouble) from None


def cannot_write(target: Path, trouble: OSError | ValueError) -> OutputError:
    """Why a place cannot be written to."""
    if not is_anywhere():
        return refused(*GONE)
    if sys.platform == "win32" and isinstance(trouble, PermissionError):
        remedy = "close the PDF viewer that shows one of its files, then run it again; nothing was changed"
        return refused(f"{brief(target)} cannot be replaced: another program has it open", remedy)
    remedy = "make room or choose another folder; nothing was changed"
    return refused(f"{brief(target)} cannot be written ({reason_of(trouble)})", remedy)


def _place_of(target: Path) -> Path:
    """Where a target is, from the root on."""
    if "\0" in str(target):
        raise OSError(errno.EINVAL, "null byte in its name")
    if target.name in {"", ".."}:
        return _real(target)
    return _real(target.parent) / target.name


def _real(path: Path) -> Path:
    """A path without links, from the root on; links that lead round in a circle stay."""
    return Path(os.path.realpath(path))


def _check_target(target: Path) -> None:
    """Refuse a target that is no folder, or holds what is not ours, or oneself."""
    if Path.cwd().is_relative_to(_real(target)):
        raise refused(f"{brief(target)} is the folder you are in, or holds it", "name a folder inside it, such as out")
    if target.is_symlink() or (target.exists() and not target.is_dir()):
        raise refused(f"{brief(target)} is not a folder", "name a new or empty folder")
    if target.exists():
        check_ours(target)


def _tell_what_is_cleared(work: Workplace, target: Path) -> None:
    if work.clear() and not work.remarks:
        said = f"an earlier run into {brief(target)} was cut off; what it had begun has been taken away"
        work.remarks = (Problem(said, severity=Severity.NOTE),)


def _put_in_place(work: Workplace, target: Path) -> None:
    """Put the new folder in the place of the old one, whose rights it keeps."""
    if target.exists():
        work.new.chmod(stat.S_IMODE(target.stat().st_mode))
    try:
        work.swap()
    except PermissionError as trouble:
        if not target.exists():
            raise
        remedy = "close its files in other programs, such as a PDF viewer, and run the command again"
        raise refused(f"{brief(target)} cannot be replaced ({reason_of(trouble)})", remedy) from None
