"""A hundred damaged files: no traceback, no hang, no loss; `python -m tests.guard` tries thousands of others."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from tests.kit.damage import KINDS
from tests.kit.guarded import failures
from tests.kit.killed import losses

EACH = 17


@pytest.mark.skipif(sys.platform == "win32", reason="limits are those of other systems")
@pytest.mark.parametrize("kind", KINDS)
def test_damaged_files_end_in_messages(kind: str) -> None:
    assert list(failures((kind, number) for number in range(EACH))) == []


@pytest.mark.skipif(sys.platform == "win32", reason="signals are those of other systems")
def test_runs_that_are_stopped_lose_nothing(tmp_path: Path) -> None:
    assert list(losses(tmp_path, 5)) == []
