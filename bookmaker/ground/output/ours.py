"""What of a folder bookmaker wrote, by the plan in it, and what is the maker's."""

from __future__ import annotations

import hashlib
import json
import os
import stat
import sys
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from ..files import Wanted, read_file
from ..problems import OutputError, Problem, ShelfFileError
from ..visible import brief
from .seals import is_sealed

__all__ = ["PLAN_NAME", "check_ours", "digest_of", "made_before", "refused", "report_of", "state_of"]

PLAN_NAME = "plan.json"

ELSEWHERE = "choose a new or empty folder"

PLAN = Wanted("plan", 1_000_000_000, ELSEWHERE, instead=ELSEWHERE)
"""That of a thousand books has 28 MB. What is no file, such as a pipe, is none."""

MOST_NAMED = 3
"""So many foreign files are named; more would only fill the screen."""


def digest_of(path: Path) -> str:
    """The SHA-256 of a file, in hexadecimal."""
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def made_before(folder: Path) -> tuple[frozenset[str], Mapping[str, object]]:
    """The files in a folder that an earlier run wrote there, and its plan less its sheets, which take most of it."""
    report = report_of(folder)
    files = frozenset(name for name in _listed(report) if (folder / name).exists())
    return files, {key: value for key, value in report.items() if key != "sheets"}


def check_ours(folder: Path) -> None:
    """Refuse a folder with anything that bookmaker did not put there, or that was changed since; an empty one is free.

    Raises:
        OutputError: something there is the maker's.
        OSError: it cannot be read.
    """
    report = report_of(folder)
    listed = _listed(report)
    kept = {parent.as_posix() for name in listed for parent in Path(name).parents}
    present = dict(_entries(folder, ""))
    unexpected = [name for name, mode in present.items() if not _is_expected(name, mode, listed, kept)]
    # a folder is named if there is nothing in it to be named
    foreign = sorted(name for name in unexpected if not any(other.startswith(f"{name}/") for other in unexpected))
    if foreign:
        raise refused(f"{brief(folder)} holds files that bookmaker did not write: {_named(foreign)}", ELSEWHERE)
    protected = [folder / name for name in ("", *sorted(kept & present.keys())) if _is_protected(folder / name)]
    if protected:
        raise refused(f"{brief(protected[0])} is write-protected", "allow writing there, or choose another folder")
    digests = _digests(report)
    changed = sorted(
        name for name in listed & digests.keys() & present.keys() if not _is_as_written(folder, name, digests)
    )
    if changed:
        said = f"{brief(folder)} holds files that were changed since bookmaker wrote them: {_named(changed)}"
        raise refused(said, "move them to another folder, or they would be lost")


def state_of(folder: Path) -> Mapping[str, tuple[int, str]]:
    """The mode and the digest of everything in a folder, and of itself: equal as long as nothing there was changed.

    Raises:
        OSError: it cannot be read.
    """
    if not os.path.lexists(folder):
        return {}
    mode = folder.lstat().st_mode
    present = {"": mode, **dict(_entries(folder, "") if stat.S_ISDIR(mode) else ())}
    return {name: (mode, digest_of(folder / name) if stat.S_ISREG(mode) else "") for name, mode in present.items()}


def refused(message: str, remedy: str) -> OutputError:
    """A place that cannot be written to."""
    return OutputError((Problem(message, remedy),))


def _entries(folder: Path, above: str) -> Iterator[tuple[str, int]]:
    """Everything under a folder by its path there, with its mode; links are not followed."""
    with os.scandir(folder) as entries:
        for entry in sorted(entries, key=lambda one: one.name):
            mode, name = entry.stat(follow_symlinks=False).st_mode, above + entry.name
            yield name, mode
            if stat.S_ISDIR(mode):
                yield from _entries(folder / entry.name, f"{name}/")


def _is_expected(name: str, mode: int, listed: set[str], kept: set[str]) -> bool:
    """Whether something is a file that an earlier run lists, or a folder on the way to one."""
    return name in kept if stat.S_ISDIR(mode) else name in listed and stat.S_ISREG(mode)


def _is_protected(folder: Path) -> bool:
    """Whether the maker took the right to write from a folder. Windows marks folders so for other reasons."""
    return sys.platform != "win32" and not folder.stat().st_mode & stat.S_IWUSR


def _is_as_written(folder: Path, name: str, digests: dict[str, object]) -> bool:
    if name == PLAN_NAME:
        return is_sealed((folder / name).read_bytes())
    return digest_of(folder / name) == digests[name]


def _named(files: Sequence[str]) -> str:
    return ", ".join(files[:MOST_NAMED]) + (" and more" if len(files) > MOST_NAMED else "")


def report_of(folder: Path) -> dict[str, object]:
    """What an earlier run says of its output, its plan; nothing if it was not ours, or cannot be read."""
    try:
        report = json.loads(read_file(folder / PLAN_NAME, PLAN).data)
    except (ShelfFileError, ValueError, RecursionError):
        return {}
    return report if isinstance(report, dict) and report.get("made_by") == "bookmaker" else {}


def _listed(report: dict[str, object]) -> set[str]:
    """The files that an earlier run says it wrote."""
    files = report.get("files")
    return {name for name in files if isinstance(name, str)} if isinstance(files, list) else set()


def _digests(report: dict[str, object]) -> dict[str, object]:
    """What the files of an earlier run held when it wrote them."""
    digests = report.get("digests")
    return digests if isinstance(digests, dict) else {}
