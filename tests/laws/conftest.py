"""Random shelves, each made once for all laws."""

from __future__ import annotations

import pytest

from tests.kit.random_shelves import NUMBERS, RandomShelf, random_shelf
from tests.kit.shelves import made


@pytest.fixture(scope="session", params=NUMBERS)
def shelf(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> RandomShelf:
    """A random shelf that was made."""
    text = random_shelf(request.param)
    return RandomShelf(text, *made(text, tmp_path_factory.mktemp("shelf")))
