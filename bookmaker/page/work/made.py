"""The sheets of a shelf: made, told of, and looked at."""

from __future__ import annotations

import io
from pathlib import Path

from ...ground.problems import CommandError, Problem
from ...workshop import Made
from ...writers.pdf_pixels import rendered_page
from ..last_made import last_plan, listed_files
from ..replies import Value

__all__ = ["made_told", "sheet_png"]

SHOWN_DPI = 100.0
"""Dots to the inch at which sheets are shown."""


def made_told(made: Made, folder: Path) -> Value:
    """What was made, which sheets have parts that differ from those printed before, and why."""
    pages: dict[str, set[int]] = {}
    changed: dict[str, set[int]] = {}
    for sheet in last_plan(folder).get("sheets", []):
        name, page = sheet["file"], int(sheet["page"])
        pages.setdefault(name, set()).add(page)
        if made.changes.among(piece["id"] for piece in sheet["pieces"]):
            changed.setdefault(name, set()).add(page)
    return {
        "folder": str(folder),
        "first": made.changes.first,
        "why": [] if made.changes.first else list(made.changes.lines()),
        "files": [
            {"name": one.name, "pages": sorted(pages.get(one.name, ())), "changed": sorted(changed.get(one.name, ()))}
            for one in made.files
        ],
        "sound": made.checked.sound,
    }


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
