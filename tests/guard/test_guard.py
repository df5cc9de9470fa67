"""A hundred damaged files: no traceback, no hang, no loss; `python -m tests.guard` tries thousands of others."""

from __future__ import annotations

import sys

import pytest

from tests.kit.damage import KINDS
from tests.kit.guarded import failures

EACH = 17


@pytest.mark.skipif(sys.platform == "win32", reason="limits are those of other systems")
@pytest.mark.parametrize("kind", KINDS)
def test_damaged_files_end_in_messages(kind: str) -> None:
    assert list(failures((kind, number) for number in range(EACH))) == []
