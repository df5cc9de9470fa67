"""The demo binds forty books in every way there is; plan.json alone is enough to put each of them together."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from bookmaker import make
from bookmaker.things.book.blocks.kinds import KINDS as BLOCKS
from bookmaker.things.book.covers.kinds import KINDS as COVERS
from tests.kit import hands
from tests.kit.bound import read

DEMO = Path(__file__).parents[3] / "demo" / "shelf.yaml"

Plan = dict[str, Any]


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> tuple[Plan, Path]:
    folder = tmp_path_factory.mktemp("demo") / "out"
    assert make(DEMO, folder).checked.sound
    return json.loads((folder / "plan.json").read_text(encoding="utf-8")), folder


def test_forty_books_of_every_kind(made: tuple[Plan, Path]) -> None:
    plan, _ = made
    assert len(plan["books"]) == 40
    written = DEMO.read_text(encoding="utf-8")
    for kind in (*BLOCKS, *COVERS):
        assert f"kind: {kind.model_fields['kind'].default}" in written
    for word in ("jacket:", "slipcases:", "row:", "thickness: fill", "fold: octavo", "fold: quarto", "one side"):
        assert word in written
    assert {space["verdict"] for space in plan["spaces"]} == {"fits"}


def test_every_book_can_be_read_from_the_plan(made: tuple[Plan, Path], monkeypatch: pytest.MonkeyPatch) -> None:
    """Numbers in plan.json are rounded to a ten-thousandth of a millimetre."""
    monkeypatch.setattr(hands, "NEAR", 1e-3)
    plan, _ = made
    for number, book in enumerate(plan["books"]):
        pages = read(plan, number, right_to_left=book["title"].startswith("Backwards"))
        assert pages == list(range(1, book["pages"] + 1)), book["title"]


def test_every_part_is_on_a_sheet_or_on_the_cutting_list(made: tuple[Plan, Path]) -> None:
    plan, folder = made
    for number, book in enumerate(plan["books"]):
        kinds = {piece["kind"] for sheet in plan["sheets"] for piece in sheet["pieces"] if piece["book"] == number}
        assert kinds & {"wrap", "case", "case spine"}, book["title"]
        assert book["pages"] or [part["what"] for part in book["cut_list"]] == ["block"], book["title"]
    assert "cutting-list.pdf" in plan["files"] and (folder / "cutting-list.pdf").stat().st_size > 1000
    pieces = [piece for sheet in plan["sheets"] for piece in sheet["pieces"]]
    assert [piece["kind"] for piece in pieces if piece["book"] is None] == ["slipcase"]
