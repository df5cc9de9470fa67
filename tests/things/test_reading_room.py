"""The demo's reading room: every kind of thing besides books, made whole, on the sheets that its chapter promises."""

from __future__ import annotations

import json
from pathlib import Path

from pypdf import PdfReader

import bookmaker
from bookmaker import make
from bookmaker.shelf.wishes import Wishes
from bookmaker.things.box.family import BOXES
from bookmaker.things.papers.family import PAPERS

ROOM = Path(bookmaker.__file__).parent.parent / "demo" / "reading-room.yaml"

SHEETS, MOCK_UP = 5, 1
"""One of each of its papers, and one of plain stand-ins, as the manual says."""


def test_the_reading_room_is_made_on_five_sheets(tmp_path: Path) -> None:
    out = tmp_path / "out"
    make(ROOM, out, wishes=Wishes(mock_up=True))
    plan = json.loads((out / "plan.json").read_text(encoding="utf-8"))
    assert not [problem for problem in plan["problems"] if problem["severity"] != "note"]
    assert len(plan["sheets"]) == SHEETS
    kinds = {thing.get("kind", "frame") for thing in plan["things"]}
    assert kinds == {family.noun for family in (*BOXES, *PAPERS)} | {"frame"}
    owners = {piece["owner"] for sheet in plan["sheets"] for piece in sheet["pieces"]}
    assert owners == {thing["id"] for thing in plan["things"]}
    guide = " ".join(" ".join(page.extract_text().split()) for page in PdfReader(out / "guide.pdf").pages)
    for thing in plan["things"]:
        assert thing["name"] in guide
    assert len(PdfReader(out / "mock-up.pdf").pages) == MOCK_UP
    walls = " ".join(" ".join(page.extract_text().split()) for page in PdfReader(out / "walls-and-desks.pdf").pages)
    for name in (
        "The third wave",
        "The founder",
        "The Drowned Bell",
        "A tray for papers",
        "The envelope of the letter",
    ):
        assert name in walls
