"""Some of the small files that ask for much, each made in a process of its own; the command beside this tries all."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from tests.kit.bombs import laid_and_taken

MOST_MEGABYTES = 600

QUICK = (
    "pdf: twenty pages of 70 MB",
    "picture: PNG, 99 million, opacity",
    "font: calls upon calls",
    "text: a pile of marks",
    "shelf: names for names",
)


@pytest.mark.skipif(sys.platform == "win32", reason="what a process took is told by other systems")
@pytest.mark.parametrize("name", QUICK)
def test_what_asks_for_much_is_refused_in_little_memory(name: str, tmp_path: Path) -> None:
    found = laid_and_taken(name, tmp_path)
    assert found.code == 2
    assert "Traceback" not in found.said
    assert found.megabytes < MOST_MEGABYTES
