"""A command begins at once: it loads nothing that another command needs."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from bookmaker.shelf_file.starter import write_starter

PRINTS = {"reportlab", "pypdf", "pypdfium2", "PIL", "markdown_it", "bookmaker.writers", "bookmaker.guide"}
"""What only those need who write sheets, or have pictures, pages of PDF files or Markdown."""

LAYS_OUT = {"bookmaker.sheets.packing", "bookmaker.sheets.layout", "bookmaker.things.making", "bookmaker.things.views"}
"""What only those need who lay out sheets and tell how things are made."""

LISTED = {f"bookmaker.things.{folder}" for folder in ("box", "frame", "papers", "surface")}
"""What only shelves need that have a list of things."""

READS = {"pydantic", "pydantic_core", "ruamel", "fontTools", "uharfbuzz", "pyphen", "rich"}
"""What only those need who read a shelf file."""

OURS = {"bookmaker.things", "bookmaker.shelf", "bookmaker.shelf_file", "bookmaker.typesetting", "bookmaker.workshop"}

CODE = """\
import runpy, sys
sys.argv = ["bookmaker", *sys.argv[1:]]
try:
    runpy.run_module("bookmaker", run_name="__main__")
finally:
    print(*sys.modules, file=sys.stderr)
"""


def loaded(folder: Path, *arguments: str) -> set[str]:
    """The libraries, and the rooms of bookmaker, that a command loads in a process of its own."""
    run = subprocess.run(
        [sys.executable, "-c", CODE, *arguments], cwd=folder, capture_output=True, text=True, check=True
    )
    names = run.stderr.splitlines()[-1].split()
    return {".".join(name.split(".")[:depth]) for name in names for depth in range(1, name.count(".") + 2)}


@pytest.mark.parametrize("option", ["--help", "-h", "--version"])
def test_help_and_version_load_next_to_nothing(tmp_path: Path, option: str) -> None:
    assert loaded(tmp_path, option) & (PRINTS | READS | OURS) == set()


def test_the_help_of_a_command_loads_no_more(tmp_path: Path) -> None:
    """But for pydantic, with which typer reads what is written after options."""
    assert loaded(tmp_path, "make", "--help") & (PRINTS | READS | OURS) <= {"pydantic", "pydantic_core"}


def test_a_check_loads_nothing_that_prints(tmp_path: Path) -> None:
    write_starter(tmp_path, "{}")
    found = loaded(tmp_path, "check", "shelf.yaml")
    assert found & (PRINTS | LAYS_OUT | LISTED) == set()
    assert {"bookmaker.things", "bookmaker.workshop", "pydantic"} <= found


def test_bookmaker_imported_loads_nothing_but_itself(tmp_path: Path) -> None:
    run = [sys.executable, "-c", "import bookmaker, sys; print(*sys.modules)"]
    names = subprocess.run(run, cwd=tmp_path, capture_output=True, text=True, check=True).stdout.split()
    assert [name for name in names if name.startswith("bookmaker.")] == []
