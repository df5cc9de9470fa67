"""Papers the whole way: sheets, registered sides, plan, guide, alone by name, in boxes; and what cannot be made."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from PIL import Image
from pypdf import PdfReader

from bookmaker import check, make
from bookmaker.ground.geometry import Axis, Rect, Size
from bookmaker.ground.problems import ShelfFileError
from bookmaker.shelf.choice import Choice
from bookmaker.shelf.wishes import Wishes
from bookmaker.things.papers.formats import FORMATS
from tests.kit.pixels import pdf_pixels
from tests.kit.shelves import written

SHELF = """\
shelf: The Keeper's Desk
stocks:
  letter paper: {caliper: 80 um, grain: long}
  box card: {caliper: 250 um}
  filmed card: {caliper: 260 um, film: 40 um}
things:
  - id: from-aldous
    kind: letter
    title: From Aldous
    stock: letter paper
    age: 40 %
    front: {inside: {kind: text, file: letter.txt, size: fit}}
  - id: chart
    kind: map
    title: The Sound
    stock: letter paper
    count: 2
    front: {colour: "#2a4057"}
    cover: {colour: "#c84a2a"}
  - id: top
    kind: print
    stock: filmed card
    width: 120 mm
    height: 70 mm
    front: {colour: "#7a4630"}
  - {id: post, kind: folder, stock: box card, contents: [from-aldous]}
"""

LETTER = "The gale has gone round to the north at last, and I can write with a steady hand.\n\n" * 4


def shelf(folder: Path, text: str = SHELF) -> Path:
    path = written(text, folder)
    (folder / "letter.txt").write_text(LETTER, encoding="utf-8")
    return path


def made(folder: Path, wishes: Wishes = Wishes()) -> tuple[dict[str, Any], Path]:  # noqa: B008 (a frozen value)
    make(shelf(folder), folder / "out", wishes=wishes)
    return json.loads((folder / "out" / "plan.json").read_text(encoding="utf-8")), folder / "out"


def text_of(path: Path) -> str:
    return " ".join(" ".join(page.extract_text().split()) for page in PdfReader(path).pages)


def test_they_are_on_the_sheets_in_the_plan_and_in_the_guide(tmp_path: Path) -> None:
    plan, out = made(tmp_path)
    letter, chart, top, post = plan["things"]
    assert letter["flat_mm"] == {"width": 17.5, "height": 24.75}
    assert letter["kind"] == "letter"
    # three layers of 80 µm; thirds of 24.75 mm less the strips of the folds, three levels, and the allowance
    assert letter["lying_mm"]["thickness"] == pytest.approx(0.24)
    assert letter["lying_mm"]["width"] == pytest.approx((24.75 - 3 * 0.08 + 0.2) / 3 + 0.08, abs=1e-3)
    assert chart["count"] == 2
    pieces = [piece for sheet in plan["sheets"] for piece in sheet["pieces"]]
    assert [piece["owner"] for piece in pieces].count("chart") == 2
    folds = next(piece["folds"] for piece in pieces if piece["owner"] == "chart")
    assert len(folds) == 1 + 2 * 3
    assert post["contents"] == ["from-aldous"]
    assert post["inside_mm"]["length"] == pytest.approx(17.5 + 0.3)
    guide = text_of(out / "guide.pdf")
    assert "Letter: From Aldous" in guide
    assert "first the rows (fold 1), then the columns (folds 2 to 4)" in guide
    assert "Lay the clear film over the whole sheet" in guide
    assert "steady hand" in text_of(out / "letter-paper.pdf")
    assert top["lying_mm"]["thickness"] == pytest.approx(0.3)


def test_one_is_made_alone(tmp_path: Path) -> None:
    plan, _ = made(tmp_path, Wishes(choice=Choice(only=("The Sound",))))
    assert {piece["owner"] for sheet in plan["sheets"] for piece in sheet["pieces"]} == {"chart"}


def test_the_cover_of_a_map_lies_behind_its_outer_panel(tmp_path: Path) -> None:
    """Turned over about its upright axis, the first panel of the front is the last of the reverse."""
    piece = check(shelf(tmp_path)).drafts["chart"].pieces[0]
    size = piece.flat.size
    box = piece.flat.panels[0].rect
    front, back = (pdf_pixels(art, 72, 1, box) for art in (piece.art, piece.reverse))
    high, wide = back.shape[:2]
    assert tuple(front[high // 4, wide // 8]) == pytest.approx((0x2A, 0x40, 0x57), abs=3)
    assert tuple(back[high // 4, wide - wide // 8]) == pytest.approx((0xC8, 0x4A, 0x2A), abs=3)
    assert tuple(back[high // 4, wide // 8]) == (255, 255, 255)
    assert tuple(back[high * 3 // 4, wide - wide // 8]) == (255, 255, 255)
    assert size == pytest.approx(Size(800 / 12, 800 / 12))
    bleed = pdf_pixels(piece.reverse, 254, 10, box.grown(0.8))
    for beyond in (bleed[150, -3], bleed[3, -100]):  # at the right and over the head
        assert tuple(beyond) == pytest.approx((0xC8, 0x4A, 0x2A), abs=3)


def test_it_looks_as_old_each_time_and_older_by_degrees(tmp_path: Path) -> None:
    def tone(age: str, folder: str) -> float:
        draft = check(shelf(tmp_path / folder, SHELF.replace("age: 40 %", f"age: {age}"))).drafts["from-aldous"]
        piece = draft.pieces[0]
        return float(pdf_pixels(piece.art, 72, 1, piece.flat.panels[0].rect).mean())

    tones = [tone(age, f"{n}") for n, age in enumerate(("0 %", "20 %", "60 %", "100 %"))]
    assert tones == sorted(tones, reverse=True)
    assert len(set(tones)) == 4
    assert tone("60 %", "again") == tones[2]


@pytest.mark.parametrize(
    ("name", "at_twelfth"),
    [
        # ISO 216; ANSI/ASME Y14.1 (from memory); a poster restorer's list; common practice
        ("A4", (17.5, 24.75)),
        ("US letter", (17.992, 23.283)),
        ("broadsheet", (50.0, 62.5)),
        ("one sheet", (57.15, 86.783)),
        ("double crown", (42.333, 63.5)),
        ("poker card", (5.292, 7.408)),
        ("cabinet card", (8.996, 13.758)),
    ],
)
def test_formats_are_those_of_life(name: str, at_twelfth: tuple[float, float]) -> None:
    sizes = {str(key): size for key, size in FORMATS.items()}
    assert [side / 12 for side in sizes[name]] == pytest.approx(at_twelfth, abs=1e-3)


@pytest.mark.parametrize(
    ("right", "wrong", "told"),
    [
        ("    count: 2", "    fold: {kind: map, panels: 16, rows: 8}", "cannot be folded so often: a panel has"),
        ("    count: 2", "    width: 2 mm\n    height: 2 mm", "cannot be folded so often"),
        ("    width: 120 mm", "    format: A5\n    width: 120 mm", "top has both format and width; write one of them"),
        ("    height: 70 mm", "", "top has a width and no height; write height: too"),
        (
            "    width: 120 mm",
            "    width: 420 mm",
            "420 mm × 70 mm is too large for one sheet of filmed card; write strips: 3",
        ),
        ("    height: 70 mm", "    height: 420 mm", "the print with its bleed is 122 mm × 422 mm"),
        (
            "    width: 120 mm",
            "    strips: 2\n    fold: {kind: half}\n    width: 120 mm",
            "a print in strips cannot be folded",
        ),
        ("age: 40 %", "age: 140 %", "age"),
        ("kind: print", "kind: prnt", "'prnt' is not known"),
        ("    count: 2", "    count: 2\n    space: desk", "a paper stands in no space; leave space out"),
        ("file: letter.txt", "file: lost.txt", "lost.txt"),
    ],
)
def test_what_cannot_be_made_is_said(tmp_path: Path, right: str, wrong: str, told: str) -> None:
    assert right in SHELF
    text = SHELF.replace(right, wrong).replace(
        "things:", "spaces: {desk: {width: 60 mm, height: 60 mm, depth: 20 mm}}\nthings:"
    )
    with pytest.raises(ShelfFileError) as caught:
        check(shelf(tmp_path, text))
    assert any(told in str(problem) for problem in caught.value.problems), [str(one) for one in caught.value.problems]
    assert all(problem.place and problem.place.line > 1 for problem in caught.value.problems)


def test_a_text_that_finds_no_room_is_told(tmp_path: Path) -> None:
    text = SHELF.replace("size: fit", "size: 6 pt")
    problems = [str(problem) for problem in check(shelf(tmp_path, text)).problems]
    assert problems == [
        "shelf.yaml:12:40: 54 words of the 72 of letter.txt do not fit in 1 page; write a larger paper or size: 3.2 pt"
    ]


def test_thick_paper_and_film_at_folds_are_noted(tmp_path: Path) -> None:
    text = SHELF.replace(
        "kind: map\n    title: The Sound\n    stock: letter paper", "kind: map\n    stock: filmed card"
    )
    said = [problem.message for problem in check(shelf(tmp_path, text)).problems]
    assert any("cracks and springs open" in one for one in said)
    assert any("whitens where the print comes outside a fold" in one for one in said)


def test_a_floor_is_printed_in_strips_that_join(tmp_path: Path) -> None:
    """Side by side they show what one piece would; behind them, too."""
    faces = "front: {design: {style: leather}}\n    back: {text: under the floor}"
    wide = SHELF.replace('front: {colour: "#7a4630"}', faces)
    (whole,) = check(shelf(tmp_path / "a", wide)).drafts["top"].pieces
    parts = (
        check(shelf(tmp_path / "b", wide.replace("    width: 120", "    strips: 3\n    width: 120")))
        .drafts["top"]
        .pieces
    )
    assert [part.flat.size for part in parts] == [Size(40, 70)] * 3
    for face in ("art", "reverse"):
        joined = [
            pdf_pixels(art, 127, 2, Rect(0, 0, 40, 70))
            for art in ([part.art for part in parts] if face == "art" else [part.reverse for part in reversed(parts)])
        ]
        once = pdf_pixels(whole.art if face == "art" else whole.reverse, 127, 2, Rect(0, 0, 120, 70))
        assert np.abs(np.hstack(joined) - once).mean() < 1.0


def test_folds_across_the_fibres_are_noted_where_the_sheet_takes_it_no_other_way(tmp_path: Path) -> None:
    """A sheet of A4, its fibres along it: rows of a tall letter are folded across them only where it must be."""
    large = SHELF.replace("age: 40 %", "width: 190 mm\n    height: 260 mm")
    assert any("these may crack" in problem.message for problem in check(shelf(tmp_path / "a", large)).problems)
    assert not any("these may crack" in problem.message for problem in check(shelf(tmp_path / "b")).problems)
    letter = check(shelf(tmp_path / "b")).plan.plans["from-aldous"].flats[0]
    assert letter.grain is Axis.X  # its folds are level


def test_only_what_changed_is_printed_again(tmp_path: Path) -> None:
    made(tmp_path)
    (tmp_path / "letter.txt").write_text(LETTER.replace("gale", "storm"), encoding="utf-8")
    make(tmp_path / "shelf.yaml", tmp_path / "out", wishes=Wishes(choice=Choice(changed=True)))
    plan = json.loads((tmp_path / "out" / "plan.json").read_text(encoding="utf-8"))
    assert {piece["owner"] for sheet in plan["sheets"] for piece in sheet["pieces"]} == {"from-aldous"}


@pytest.mark.parametrize(("part", "tone"), [("head", 255), ("middle", 128), ("foot", 0)])
def test_a_picture_is_cropped_as_it_is_told(tmp_path: Path, part: str, tone: int) -> None:
    """A tall picture, white above, grey in its middle, black below, on a low print."""
    Image.frombytes("L", (1, 3), bytes((255, 128, 0))).resize((60, 360), Image.Resampling.NEAREST).save(
        tmp_path / "p.png"
    )
    text = SHELF.replace('front: {colour: "#7a4630"}', f"front: {{picture: p.png, keeps: {part}}}")
    (piece,) = check(shelf(tmp_path, text.replace("width: 120 mm", "width: 60 mm"))).drafts["top"].pieces
    pixels = pdf_pixels(piece.art, 72, 1, Rect(0, 0, 60, 70))
    edge = pixels[4 if part == "head" else -5 if part == "foot" else 35, 30]
    assert tuple(edge) == pytest.approx((tone, tone, tone), abs=6)
