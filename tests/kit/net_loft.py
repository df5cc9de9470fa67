"""A shelf of two boards, a stack and a table, for what is done on the page: its text, its books there, what changed."""

from __future__ import annotations

import difflib
import re
from pathlib import Path

from playwright.sync_api import Locator, Page

__all__ = ["SHELF", "TABLE", "book", "changed"]

SHELF = """\
# two boards and a stack; every note stays
shelf: The Net Loft
stocks:
  page paper: {caliper: 90 um, glue: spray}
  cover paper: {caliper: 160 um}
spaces:
  upper board: {width: 60 mm, height: 27 mm, depth: 22 mm}
  lower board: {width: 60 mm, height: 27 mm, depth: 22 mm}
defaults:
  size: {height: 20 mm, width: 14 mm}
  block: {kind: accordion, stock: page paper, pages: 32}
  cover: {kind: wrap, stock: cover paper}
books:
  - title: Tarred Twine      # the first
    space: upper board
    design: {style: cloth, colour: "#2f4f46"}
  - title: Floats of Cork
    space: upper board
    design: {style: leather}
  # this one has a note
  - {title: Weights of Lead, space: upper board}
  - {title: A Drying Rack, space: lower board, stack: pile}
  - {title: Hooks, space: lower board, stack: pile}
  - from more.csv
"""

TABLE = "title;space;pages;design.style\nHerring by the Cran;lower board;24;cloth\nSalt;lower board;16;plain\n"


def book(page: Page, name: str) -> Locator:
    """A book on the shelf."""
    return page.get_by_role("button", name=re.compile(f"^{name}, "))


def changed(folder: Path, name: str = "shelf.yaml", old: str = SHELF) -> list[str]:
    """The lines of a file that were taken out or put in."""
    now = (folder / name).read_text(encoding="utf-8")
    found = difflib.unified_diff(old.splitlines(), now.splitlines(), lineterm="", n=0)
    return [line for line in found if line[:1] in "+-" and line[:3] not in ("+++", "---")]
