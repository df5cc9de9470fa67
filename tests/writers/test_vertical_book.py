"""A Japanese book whose lines run down: its pages lie from the right, and its text is read off them in order."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path
from typing import Any

from pypdf import PdfReader

from tests.kit.fonts import LETTERS, font_of_boxes
from tests.kit.shelves import made
from tests.kit.strokes import POINT

SHELF = """\
shelf: Downwards
stocks:
  page: {caliper: 75 um, grain: long}
  cover: {caliper: 160 um}
books:
  - title: 島の灯台
    direction: right-to-left
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: page}
    cover: {kind: wrap, stock: cover}
    inside: {kind: text, file: a.txt, face: own.ttf, language: ja, setting: vertical, size: 3 pt, numbers: no}
"""
TEXT = "島の灯台守は、毎晩七時に「古い『ランプ』」を灯した（らしい）。12月の海は、Harbour 号だけが知っている……"


def begun(page: Any) -> list[tuple[float, float, str]]:
    """What is written on a sheet, each with the place where it begins, in points."""
    found: list[tuple[float, float, str]] = []

    def visit(text: str, cm: list[float], tm: list[float], *_: object) -> None:
        x, y = (tm[4] * cm[at] + tm[5] * cm[at + 2] + cm[at + 4] for at in (0, 1))
        if text.strip():
            found.append((x, y, text))

    page.extract_text(visitor_text=visit)
    return found


def test_pages_follow_one_another_from_the_right_and_say_the_text_in_order(tmp_path: Path) -> None:
    font_of_boxes(tmp_path / "own.ttf", "".join(dict.fromkeys(f"{LETTERS}H{TEXT}")))
    (tmp_path / "a.txt").write_text("\n\n".join([TEXT] * 8), encoding="utf-8")
    plan, out = made(SHELF, tmp_path)
    places, said = [], ""
    for sheet in plan["sheets"]:
        for piece in sheet["pieces"]:
            for panel in piece["panels"]:
                if panel["page"] is not None:
                    box = [value / POINT for value in panel["rect_mm"]]
                    places.append((panel["page"], sheet["file"], sheet["page"], box))
    places.sort()
    assert [page for page, *_ in places] == list(range(1, plan["books"][0]["pages"] + 1))
    for (_, *here, (x, y, width, _)), (_, *there, (after, level, *_)) in pairwise(places):
        if (here, y) == (there, level):  # of one strip
            assert after + width < x + 1e-3
    sheets: dict[tuple[str, int], list[tuple[float, float, str]]] = {}
    for _, file, number, (x, y, width, height) in places:
        if (file, number) not in sheets:
            sheets[file, number] = begun(PdfReader(out / file).pages[number - 1])
        inside = [text for at, up, text in sheets[file, number] if x < at < x + width and y < up < y + height]
        said += "".join(inside)
    assert "".join(said.split()) == "".join(TEXT.split()) * 8
