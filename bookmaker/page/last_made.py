"""What was made last: the folder, its plan, and the files that the plan lists."""

from __future__ import annotations

from pathlib import Path

from ..ground.output import report_of
from .replies import Value

__all__ = ["last_plan", "listed_files", "made_folder"]


def made_folder(shelf: Path) -> Path:
    """The folder into which sheets are made, if nobody says otherwise."""
    return shelf.with_name(f"{shelf.stem}-to-print")


def last_plan(folder: Path) -> Value:
    """The plan that was made last; nothing, if there is none that can be read."""
    return report_of(folder)


def listed_files(folder: Path) -> tuple[str, ...]:
    """The files that were made last, as their plan lists them: nothing else in the folder is shown."""
    files = last_plan(folder).get("files", [])
    return tuple(name for name in files if isinstance(name, str)) if isinstance(files, list) else ()
