"""Every book of a random shelf, put together from plan.json by hands that know nothing else, reads from page 1 on."""

from __future__ import annotations

import pytest

from tests.kit import hands
from tests.kit.bound import read
from tests.kit.random_shelves import RandomShelf


def test_every_book_can_be_read(shelf: RandomShelf, monkeypatch: pytest.MonkeyPatch) -> None:
    """Numbers in plan.json are rounded to a ten-thousandth of a millimetre."""
    monkeypatch.setattr(hands, "NEAR", 1e-3)
    for number, book in enumerate(shelf.plan["books"]):
        pages = read(shelf.plan, number, right_to_left=book["direction"] == "right-to-left")
        assert pages == list(range(1, book["pages"] + 1)), book["title"]
