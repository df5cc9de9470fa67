"""A hundred damaged files: no traceback, no hang, no loss; `python -m tests.guard` tries thousands of others."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

import pytest

from bookmaker.ground.problems import ShelfFileError
from tests.kit.damage import KINDS
from tests.kit.every_key import lay_key, places
from tests.kit.guarded import failures
from tests.kit.killed import losses
from tests.kit.shelves import checked, errors

EACH, SHARES = 17, 4


@pytest.mark.skipif(sys.platform == "win32", reason="limits are those of other systems")
@pytest.mark.parametrize("kind", [kind for kind in KINDS if kind != "key"])
def test_damaged_files_end_in_messages(kind: str) -> None:
    assert list(failures((kind, number) for number in range(EACH))) == []


@pytest.mark.skipif(sys.platform == "win32", reason="limits are those of other systems")
@pytest.mark.parametrize("share", range(SHARES))
def test_whatever_a_key_holds_ends_in_messages_or_a_shelf(share: int) -> None:
    """Every key there is, each with one of the odd values; night tries each with each."""
    assert list(failures(("key", number) for number in range(share, len(tuple(places())), SHARES))) == []


def test_keys_stand_in_shelves_that_are_sound(tmp_path: Path) -> None:
    """What an odd value does is found only where all else is in order.

    A few groups cannot be written out, or not beside others: `joint`, `pile`, `glue_tolerances`, two sizes of a book.
    """
    lay_key(0, tmp_path)
    shelves = {place.way[:-1]: place.shelf for place in places()}
    refused = [way for way, shelf in shelves.items() if not _sound(shelf, tmp_path)]
    assert len(refused) < len(shelves) / 5, refused


def _sound(shelf: dict[str, Any], folder: Path) -> bool:
    try:
        return not errors(checked(json.dumps(shelf), folder))
    except ShelfFileError:
        return False


@pytest.mark.skipif(sys.platform == "win32", reason="signals are those of other systems")
def test_runs_that_are_stopped_lose_nothing(tmp_path: Path) -> None:
    assert list(losses(tmp_path, 5)) == []
