"""What makers read: README.md and the chapters of the manual, in the order in which they are read."""

from __future__ import annotations

import re
from pathlib import Path

__all__ = ["CHAPTERS", "EVERYTHING", "MANUAL", "README"]

ROOT = Path(__file__).parents[2]

MANUAL = ROOT / "bookmaker" / "manual"

README = (ROOT / "README.md").read_text(encoding="utf-8")

CHAPTERS = {
    name: (MANUAL / name).read_text(encoding="utf-8")
    for name in re.findall(r"^- \[[^]]+\]\((\S+\.md)\)", (MANUAL / "contents.md").read_text(encoding="utf-8"), re.M)
}
"""Text by file name, in the order of the table of contents."""

EVERYTHING = "\n".join((README, *CHAPTERS.values()))
