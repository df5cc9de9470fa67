"""What to say of a file that is not where the shelf file says: its path as written, and the file that may be meant."""

from __future__ import annotations

from pathlib import Path

from .problems import near_match
from .visible import brief, composed

__all__ = ["BESIDE", "GONE", "is_anywhere", "meant_file", "not_there"]

BESIDE = "write its path as seen from the folder of the shelf file"

SHELF_FILES = frozenset({".yaml", ".yml"})
"""What ends so is meant by nothing that ends otherwise."""

ADDED = ".txt"
"""What some programs add to the name that was typed; Windows hides it."""

MOST_LOOKED_AT = 2000
"""So many names of a folder are compared with the one written."""

GONE = ("the folder you are in is no longer there", "go to another one, and run the command again")


def not_there(what: str, path: Path, written: str = "", remedy: str = BESIDE) -> tuple[str, str]:
    """The message of a file that is missing, and its remedy: the file that is probably meant, if one has a like name.

    `what` it should be; `written` is its path in the shelf file, the end of `path`.
    """
    written = written or path.name
    if not path.is_absolute() and not is_anywhere():
        return GONE
    if _is_link(path):
        return f"{brief(written)} is a link to what is not there", "write the path of the thing itself"
    if "\\" in written:
        return f"there is no {what} {brief(written)}", f"write / in place of \\: {brief(written.replace(chr(92), '/'))}"
    if _is_there(path.with_name(f"{path.name}{ADDED}")):
        what_there_is = f"there is no {what} {brief(written)}, but {brief(written)}{ADDED}"
        return what_there_is, f"take {ADDED} off its name; in Notepad choose All files as the type when you save"
    meant = meant_file(path, written)
    return f"there is no {what} {brief(written)}", f"did you mean {meant}?" if meant else remedy


def _is_link(path: Path) -> bool:
    try:
        return path.is_symlink()
    except (OSError, ValueError):  # a name that no file can have
        return False


def is_anywhere() -> bool:
    """Whether the folder from which paths start is there; it may have been taken away meanwhile."""
    try:
        return Path.cwd().exists()
    except OSError:
        return False


def meant_file(path: Path, written: str) -> str:
    """The path that was probably meant, as it would be written; an empty text if nothing has a name like it.

    The folders on the way may be misspelt as well.
    """
    parts = Path(written).parts
    folder = Path(*path.parts[: len(path.parts) - len(parts)])
    meant: list[str] = []
    for part in parts:
        name = part if _is_there(folder / part) else _like(folder, part)
        if not name:
            return ""
        folder /= name
        meant.append(name)
    return Path(*meant).as_posix()


def _is_there(path: Path) -> bool:
    try:
        return path.exists()
    except (OSError, ValueError):  # a name that no file can have
        return False


def _like(folder: Path, name: str) -> str:
    """The name in a folder that differs in its capitals only, or else is like it, or else has another ending."""
    try:
        found = sorted(entry.name for entry in folder.iterdir() if not entry.name.startswith("."))[:MOST_LOOKED_AT]
    except (OSError, ValueError):
        return ""
    stem, ending = _folded(Path(name).stem), _folded(Path(name).suffix)
    # what follows the dot is alike in many names, and says nothing
    alike = {Path(other).stem: other for other in found if _folded(Path(other).suffix) == ending}
    same_stem = (other for other in found if _folded(Path(other).stem) == stem and _may_be_meant(other))
    capitals = next((other for other in found if _folded(other) == _folded(name)), "")
    return capitals or alike.get(near_match(stem, alike), "") or next(same_stem, "")


def _may_be_meant(other: str) -> bool:
    return Path(other).suffix.casefold() not in SHELF_FILES


def _folded(name: str) -> str:
    """A name as people compare it, whatever a file system makes of accents and capitals."""
    return composed(name).casefold()
