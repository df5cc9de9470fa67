"""Small shelves written down, checked and made for tests, and what their maker is told."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from bookmaker import check, make
from bookmaker.ground.problems import Severity, ShelfFileError
from bookmaker.shelf.wishes import ALL_OF_IT
from bookmaker.shelf_file.defaults import with_defaults
from bookmaker.shelf_file.yaml_tree import Plain, parse_tree
from bookmaker.workshop import Checked, Wishes
from bookmaker.writers.plan_json import check_report, dump

__all__ = [
    "ONE_BOOK",
    "changed",
    "checked",
    "errors",
    "made",
    "merged",
    "on_two_papers",
    "refused",
    "reported",
    "told",
    "written",
]

ONE_BOOK = """\
shelf: The Salt Office
stocks:
  laid: {caliper: 75 um, glue: 15 um, grain: long}
  card: {caliper: 160 um, film: 50 um, grain: long}
spaces:
  upper: {width: 60 mm, height: 27 mm, depth: 22 mm}
books:
  - title: Tide Tables
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: laid, pages: 48}
    cover: {kind: wrap, stock: card}
    space: upper
"""


def on_two_papers(books: str, *, printer: str, grain: str = "long", off_cuts: str = "[]") -> str:
    """A shelf of the listed books on a page paper and a cover paper, ``page`` and ``cover``; margins are 5 mm."""
    return f"""\
shelf: On Two Papers
printer: {{margins: 5 mm, {printer}}}
stocks:
  page: {{caliper: 75 um, glue: 15 um, grain: {grain}, off_cuts: {off_cuts}}}
  cover: {{caliper: 160 um, film: 50 um, grain: {grain}}}
books:
{books}
"""


def changed(*slips: tuple[str, str], text: str = ONE_BOOK) -> str:
    """A shelf with each first text, which must stand in it, replaced by the second."""
    for right, wrong in slips:
        assert right in text
        text = text.replace(right, wrong)
    return text


def written(text: str | bytes, folder: Path, name: str = "shelf.yaml") -> Path:
    """The text as a shelf file in a folder, which is made if it is not there."""
    folder.mkdir(parents=True, exist_ok=True)
    (folder / name).write_bytes(text if isinstance(text, bytes) else text.encode())
    return folder / name


def checked(text: str | bytes, folder: Path) -> Checked:
    """The shelf written down and checked."""
    return check(written(text, folder))


def reported(text: str | bytes, folder: Path) -> dict[str, Any]:
    """What `check --json` says of the shelf."""
    found = checked(text, folder)
    report: dict[str, Any] = json.loads(dump(check_report(found)))
    return report


def refused(text: str | bytes, folder: Path, name: str = "shelf.yaml") -> list[str]:
    """Why the shelf is refused, message by message."""
    with pytest.raises(ShelfFileError) as caught:
        check(written(text, folder, name))
    return [str(problem) for problem in caught.value.problems]


def told(text: str | bytes, folder: Path, name: str = "shelf.yaml") -> list[str]:
    """What is wrong with the shelf, message by message, whether or not it is refused."""
    try:
        return [str(problem) for problem in check(written(text, folder, name)).problems]
    except ShelfFileError as refusal:
        return [str(problem) for problem in refusal.problems]


def errors(found: Checked) -> list[str]:
    """What is wrong, without warnings and notes."""
    return [str(problem) for problem in found.problems if problem.severity is Severity.ERROR]


def made(text: str | bytes, folder: Path, wishes: Wishes = ALL_OF_IT) -> tuple[dict[str, Any], Path]:
    """The shelf written down and made: plan.json and the folder of the output."""
    make(written(text, folder), folder / "out", wishes=wishes)
    return json.loads((folder / "out" / "plan.json").read_text(encoding="utf-8")), folder / "out"


def merged(defaults: str, book: str) -> Plain:
    """The one book of a shelf with these defaults."""
    tree = with_defaults(parse_tree(f"defaults: {defaults}\nbooks: [{book}]\n", "t.yaml")).plain()
    assert isinstance(tree, dict)
    assert set(tree) == {"books"}
    books = tree["books"]
    assert isinstance(books, list)
    return books[0]
