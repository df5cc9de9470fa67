"""The demo binds forty books in every way there is; plan.json alone is enough to put each of them together."""

from __future__ import annotations

import json
from itertools import groupby
from pathlib import Path
from typing import Any

import pytest

from bookmaker import make
from bookmaker.ground.geometry import Point, Rect
from bookmaker.sheets.flat import Face, Flat, Fold, FoldKind, Panel, Role, Stroke
from bookmaker.things.book.blocks.kinds import KINDS as BLOCKS
from bookmaker.things.book.covers.kinds import KINDS as COVERS
from tests.kit import hands

DEMO = Path(__file__).parents[3] / "demo" / "shelf.yaml"

Plan = dict[str, Any]


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> tuple[Plan, Path]:
    folder = tmp_path_factory.mktemp("demo") / "out"
    assert make(DEMO, folder).checked.sound
    return json.loads((folder / "plan.json").read_text(encoding="utf-8")), folder


def flat_of(piece: Plan) -> Flat:
    """A piece taken off its sheet and laid upright again, with its lower left corner at the origin."""
    xs, ys = zip(*piece["outline_mm"], strict=True)
    left, right, foot = min(xs), max(xs), min(ys)

    def point(at: list[float]) -> Point:
        if piece["turned_deg"]:
            return Point(at[1] - foot, right - at[0])
        return Point(at[0] - left, at[1] - foot)

    def rect(sides: list[float]) -> Rect:
        x, y, width, height = sides
        return Rect.around([point([x, y]), point([x + width, y + height])])

    def stroke(line: Plan) -> Stroke:
        return Stroke(point(line["from_mm"]), point(line["to_mm"]))

    folds = tuple(Fold(FoldKind(fold["kind"]), *_straight(stroke(fold))) for fold in piece["folds"])
    panels = tuple(
        Panel(
            Role(panel["role"]),
            rect(panel["rect_mm"]),
            panel["page"],
            Face(panel["face"]),
            panel["head_down"],
            panel["creep_mm"],
        )
        for panel in piece["panels"]
    )
    cuts = tuple(map(stroke, piece["cuts"]))
    outline = tuple(map(point, piece["outline_mm"]))
    return Flat(piece["kind"], piece["name"], "", outline, folds, panels, cuts=tuple(map(_straight, cuts)))


def _straight(line: Stroke) -> Stroke:
    """The line as it was before its ends were rounded: exactly upright or level."""
    (ax, ay), (bx, by) = line
    return Stroke(Point(ax, ay), Point(ax, by)) if abs(ax - bx) < 1e-3 else Stroke(Point(ax, ay), Point(bx, ay))


def pieces_of(plan: Plan, book: int, *kinds: str) -> list[Flat]:
    """The flats of a book in the order of their numbers."""
    pieces = [piece for sheet in plan["sheets"] for piece in sheet["pieces"] if piece["book"] == book]
    pieces = [piece for piece in pieces if piece["kind"] in kinds]
    return [flat_of(piece) for piece in sorted(pieces, key=lambda piece: int(piece["id"].rsplit("-", 1)[1]))]


def read(plan: Plan, book: int, right_to_left: bool) -> list[int]:
    """The pages of a book put together from its flats, blank ones left out."""
    strips = pieces_of(plan, book, "strip")
    if strips:
        return [page for flat in strips for page in _along(flat, right_to_left)]
    leaves = pieces_of(plan, book, "leaves")
    if leaves:
        found = [
            page
            for spot in hands.piled(leaves, right_to_left)
            for page in hands.open_leaf(hands.alone(*spot), right_to_left)
        ]
    else:
        sections = groupby(pieces_of(plan, book, "section sheet"), key=lambda flat: flat.name.split(",")[0])
        found = hands.gathered(
            [
                hands.nested([hands.leaf_through(*hands.fold_up(flat), right_to_left) for flat in flats])
                for _, flats in sections
            ]
        )
    assert all(page.upright for page in found if page.panel and page.panel.page)
    return [page.panel.page for page in found if page.panel and page.panel.page]


def _along(flat: Flat, right_to_left: bool) -> list[int]:
    """A strip from its first panel to its last; its folds alternate, valleys first."""
    ordered = sorted(flat.panels, key=lambda panel: panel.rect.x, reverse=right_to_left)
    folds = sorted(flat.folds, key=lambda fold: fold.start.x, reverse=right_to_left)
    assert [fold.kind for fold in folds] == [list(FoldKind)[(number + 1) % 2] for number in range(len(folds))]
    return [panel.page for panel in ordered if panel.page]


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
