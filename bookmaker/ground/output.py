"""The output folder: all or nothing, and never at the cost of someone else's files.

Everything is written into a new folder beside the target; only when that is complete does it take the
target's place. A folder is ours to replace when it is empty, or when its ``plan.json`` says that bookmaker
made it and lists every file in it, and none was changed since: a cover drawn over a template is the maker's.
"""

from __future__ import annotations

import hashlib
import json
import re
import shutil
import tempfile
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from .problems import OutputError, Problem

__all__ = ["PLAN_NAME", "digest_of", "file_names", "made_before", "replaced_file", "replaced_folder"]

PLAN_NAME = "plan.json"

MOST_NAMED = 3
"""So many foreign files are named; more would only fill the screen."""


def file_names(stocks: Sequence[str], taken: Sequence[str] = ()) -> list[str]:
    """A PDF name for each stock, fit for any file system and no two alike, nor like one that is taken.

    >>> file_names(["Page paper", "page-paper", "Ж"])
    ['page-paper.pdf', 'page-paper-2.pdf', 'stock.pdf']
    """
    names = list(taken)
    for stock in stocks:
        stem = re.sub(r"[^a-z0-9]+", "-", stock.lower()).strip("-")[:60] or "stock"
        number = sum(name == f"{stem}.pdf" or re.fullmatch(rf"{stem}-\d+\.pdf", name) is not None for name in names) + 1
        names.append(f"{stem}.pdf" if number == 1 else f"{stem}-{number}.pdf")
    return names[len(taken) :]


def made_before(target: Path) -> frozenset[str]:
    """The files in a folder that an earlier run wrote there."""
    return frozenset(name for name in _listed(_report(target)) if (target / name).exists())


def digest_of(path: Path) -> str:
    """The SHA-256 of a file, in hexadecimal."""
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def _refused(message: str, remedy: str) -> OutputError:
    return OutputError((Problem(message, remedy),))


@contextmanager
def replaced_folder(target: Path) -> Iterator[Path]:
    """A folder to write into that becomes `target` if the block ends well, and leaves no trace if not.

    Raises:
        OutputError: the target holds files that are not ours, or cannot be written, or the disk is full.
    """
    _check_ours(target)
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        beside = Path(tempfile.mkdtemp(prefix=f".{target.name}-", dir=target.parent))
    except OSError as trouble:
        raise _cannot_write(target, trouble) from None
    try:
        beside.chmod(0o755)
        yield beside
        _swap(beside, target)
    except OSError as trouble:
        raise _cannot_write(target, trouble) from None
    finally:
        shutil.rmtree(beside, ignore_errors=True)


@contextmanager
def replaced_file(target: Path) -> Iterator[Path]:
    """A file to write to that becomes `target` if the block ends well.

    Raises:
        OutputError: the target cannot be written.
    """
    if target.is_dir():
        raise _refused(f"{target} is a folder", "name a file to write, such as ruler.pdf")
    beside = target.with_name(f".{target.name}.part")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        yield beside
        beside.replace(target)
    except OSError as trouble:
        raise _cannot_write(target, trouble) from None
    finally:
        beside.unlink(missing_ok=True)


def _cannot_write(target: Path, trouble: OSError) -> OutputError:
    reason = (trouble.strerror or str(trouble)).lower()
    return _refused(f"{target} cannot be written ({reason})", "make room or choose another folder; nothing was changed")


def _check_ours(target: Path) -> None:
    """Refuse a target that is a file, or a folder with anything we did not put there."""
    if Path.cwd().is_relative_to(target.resolve()):
        raise _refused(f"{target} is the folder you are in, or holds it", "name a folder inside it, such as out")
    if target.is_symlink() or (target.exists() and not target.is_dir()):
        raise _refused(f"{target} is not a folder", "name a new or empty folder")
    if not target.exists():
        return
    report = _report(target)
    try:
        present = {path.relative_to(target).as_posix() for path in target.rglob("*") if not path.is_dir()}
        foreign = sorted(present - _listed(report))
        digests = _digests(report)
        changed = sorted(name for name in present & digests.keys() if digest_of(target / name) != digests[name])
    except OSError as trouble:
        raise _cannot_write(target, trouble) from None
    if foreign:
        said = f"{target} holds files that bookmaker did not write: {_named(foreign)}"
        raise _refused(said, "choose a new or empty folder")
    if changed:
        said = f"{target} holds files that were changed since bookmaker wrote them: {_named(changed)}"
        raise _refused(said, "move them to another folder, or they would be lost")


def _named(files: Sequence[str]) -> str:
    return ", ".join(files[:MOST_NAMED]) + (" and more" if len(files) > MOST_NAMED else "")


def _report(target: Path) -> dict[str, object]:
    """What an earlier run says of its output; nothing if it was not ours."""
    try:
        report = json.loads((target / PLAN_NAME).read_text(encoding="utf-8"))
    except (OSError, ValueError, RecursionError):
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


def _swap(beside: Path, target: Path) -> None:
    """Put the new folder in the place of the old one, which is kept until the new one stands there."""
    if not target.exists():
        beside.rename(target)
        return
    _check_ours(target)  # again: something may have been laid there meanwhile
    old = beside.with_name(beside.name + "-old")
    target.rename(old)
    try:
        beside.rename(target)
    except OSError:
        old.rename(target)
        raise
    shutil.rmtree(old, ignore_errors=True)
