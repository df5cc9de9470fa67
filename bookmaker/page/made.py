"""The sheets of a shelf: made, looked at, and compared with those that were made before."""

from __future__ import annotations

import hashlib
import io
import json
from collections.abc import Mapping
from pathlib import Path

from ..ground.output import PLAN_NAME
from ..ground.problems import CommandError, Problem
from ..workshop import Made
from ..writers.pdf_pixels import rendered_page
from .shown import Value, problem_shown

__all__ = ["last_plan", "listed_files", "made_folder", "made_told", "pages_seen", "sheet_png"]

COMPARED_DPI, SHOWN_DPI = 72.0, 100.0
"""Dots to the inch at which pages are compared, and shown."""


def made_folder(shelf: Path) -> Path:
    """The folder into which sheets are made, if nobody says otherwise."""
    return shelf.with_name(f"{shelf.stem}-to-print")


def last_plan(folder: Path) -> Value:
    """The plan that was made last; nothing, if there is none that can be read."""
    try:
        found = json.loads((folder / PLAN_NAME).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return found if isinstance(found, dict) else {}


def listed_files(folder: Path) -> tuple[str, ...]:
    """The files that were made last, as their plan lists them: nothing else in the folder is shown."""
    files = last_plan(folder).get("files", [])
    return tuple(name for name in files if isinstance(name, str)) if isinstance(files, list) else ()


def pages_seen(folder: Path) -> Mapping[str, list[str]]:
    """How every page of the PDFs looks that were made last, by digests of its pixels."""
    found: dict[str, list[str]] = {}
    counts: dict[str, int] = {}
    for sheet in last_plan(folder).get("sheets", []):
        counts[sheet["file"]] = max(counts.get(sheet["file"], 0), int(sheet["page"]))
    for name, count in counts.items():
        if (folder / name).is_file():
            found[name] = [_digest(folder / name, page) for page in range(count)]
    return found


def _digest(path: Path, page: int) -> str:
    return hashlib.sha256(rendered_page(path, page, COMPARED_DPI).tobytes()).hexdigest()


def made_told(made: Made, folder: Path, before: Mapping[str, list[str]]) -> Value:
    """What was made, and which pages look otherwise than those made before."""
    now = pages_seen(folder)
    changed = {
        name: [at + 1 for at, page in enumerate(pages) if page not in before.get(name, [])]
        for name, pages in now.items()
    }
    return {
        "folder": str(folder),
        "first": not before,
        "files": [
            {"name": name, "pages": len(now.get(name, [])), "changed": changed.get(name, [])} for name, _ in made.files
        ],
        "gone": list(made.gone),
        "sound": made.checked.sound,
        "problems": [problem_shown(one) for one in made.checked.problems if str(one.severity) == "error"],
    }


def _changed(now: list[str], before: list[str]) -> list[int]:
    """The pages, from 1, that look like none before."""
    return [number for number, page in enumerate(now, start=1) if page not in before]


def sheet_png(folder: Path, file: str, page: int) -> bytes:
    """A page of a PDF that was made, as PNG.

    Raises:
        CommandError: there is no such page.
    """
    if file not in listed_files(folder) or not file.endswith(".pdf"):
        raise CommandError((Problem("there is no such sheet", "make the sheets again"),))
    try:
        image = rendered_page(folder / file, page, SHOWN_DPI)
    except (OSError, IndexError, RuntimeError):
        raise CommandError((Problem("the sheet cannot be shown", "make the sheets again"),)) from None
    data = io.BytesIO()
    image.convert("RGB").quantize(128).save(data, "PNG")
    return data.getvalue()
