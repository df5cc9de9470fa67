"""What cannot be folded, and what cannot stand: stock of the wrong thickness gets one message each."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.ground.problems import ShelfFileError

SHELF = """\
shelf: The Salt Office
stocks:
  laid: {caliper: 75 um, glue: 15 um, grain: long}
  card: {caliper: 160 um, film: 50 um, grain: long}
  limit: {caliper: 450 um, grain: long}
  strip: {caliper: 250 um, grain: long}
  stout: {caliper: 260 um, grain: long}
  board: {caliper: 0.8 mm, grain: long}
  tissue: {caliper: 60 um, grain: long}
books:
  - title: Tide Tables
    size: {height: 42 mm, width: 30 mm}
    block: {kind: accordion, stock: laid, pages: 48}
    cover: {kind: wrap, stock: card}
"""
BLOCK, COVER = "{kind: accordion, stock: laid, pages: 48}", "{kind: wrap, stock: card}"

EVEN = "cannot be folded even when scored"

REFUSED = [
    (
        (COVER, "{kind: wrap, stock: board}"),
        f"14:32: board is 0.8 mm thick; a wrap over 0.45 mm {EVEN}; name a paper of 0.45 mm or less",
    ),
    (
        (COVER, f"{COVER}\n    jacket: {{stock: board}}"),
        f"15:21: board is 0.8 mm thick; a jacket over 0.45 mm {EVEN}; name a paper of 0.45 mm or less",
    ),
    (
        (COVER, "{kind: case, stock: board, boards: board}"),
        f"14:32: board is 0.8 mm thick; a covering over 0.45 mm {EVEN}; name a paper of 0.45 mm or less",
    ),
    (
        (COVER, "{kind: case, stock: card, boards: board, endpapers: stout}"),
        f"14:64: stout is 0.26 mm thick; an endpaper over 0.25 mm {EVEN}; name a paper of 0.25 mm or less",
    ),
    (
        (BLOCK, "{kind: dummy, thickness: 4 mm, edges: gilt, edge_stock: stout}"),
        f"13:68: stout is 0.26 mm thick; an edge strip over 0.25 mm {EVEN}; name a paper of 0.25 mm or less",
    ),
]


def written(folder: Path, *changes: tuple[str, str]) -> Path:
    text = SHELF
    for old, new in changes:
        assert text.count(old) == 1
        text = text.replace(old, new)
    path = folder / "salt.yaml"
    path.write_text(text, encoding="utf-8")
    return path


@pytest.mark.parametrize(("change", "message"), REFUSED, ids=[message for _, message in REFUSED])
def test_what_cannot_be_folded_is_refused(tmp_path: Path, change: tuple[str, str], message: str) -> None:
    with pytest.raises(ShelfFileError) as caught:
        check(written(tmp_path, change))
    assert str(caught.value) == f"salt.yaml:{message}"


@pytest.mark.parametrize(
    "change",
    [
        (COVER, "{kind: wrap, stock: limit}"),
        (COVER, f"{COVER}\n    jacket: {{stock: limit}}"),
        (COVER, "{kind: case, stock: limit, boards: board, square: 0.5 mm, endpapers: strip}"),
        (COVER, "{kind: case, stock: card, boards: board, binding: quarter, spine_stock: board}"),  # leather yields
        (BLOCK, "{kind: dummy, thickness: 4 mm, edges: gilt, edge_stock: strip}"),
    ],
    ids=str,
)
def test_what_can_just_be_folded_is_taken(tmp_path: Path, change: tuple[str, str]) -> None:
    check(written(tmp_path, change))


@pytest.mark.parametrize(
    ("stock", "told"),
    [
        (
            "tissue",
            [
                "salt.yaml:16:28: tissue is 0.06 mm thick; a slipcase under 0.15 mm has no stand; "
                "name a card of 0.15 mm or more"
            ],
        ),
        ("card", []),
    ],
)
def test_a_slipcase_of_thin_paper_is_warned_of(tmp_path: Path, stock: str, told: list[str]) -> None:
    box = f"slipcases:\n  one: {{books: [1], stock: {stock}}}\n"
    found = check(written(tmp_path, (COVER + "\n", COVER + "\n" + box))).problems
    assert [str(problem) for problem in found if "stand" in problem.message] == told
