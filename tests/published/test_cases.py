"""Cases against what handbooks say of boards, joints, stiffeners and squares."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from bookmaker import check
from bookmaker.workshop import Checked
from tests.kit.by_kind import books_of

SHELF = """\
shelf: Handbooks
scale: 1:1
printer: {sheet: 1000 x 1000 mm}
stocks:
  paper: {caliper: 100 um, glue: 0 mm}
  cloth: {caliper: 0.3 mm}
  leather: {caliper: 1 mm}
  board: {caliper: BOARD}
books:
  - title: A Case
    size: {height: 9 3/4 in, width: 6 1/8 in}
    block: {kind: accordion, stock: paper, pages: 198, measured_thickness: 20 mm}
    cover: {kind: case, stock: cloth, boards: board, square: 1/8 in, turn_in: TURN, KEYS}
"""


def checked(folder: Path, keys: str = "lap: 1 mm", board: str = "2.5 mm", turn_in: str = "12 mm") -> Checked:
    path = folder / "shelf.yaml"
    text = SHELF.replace("KEYS", keys).replace("BOARD", board).replace("TURN", turn_in)
    path.write_text(text, encoding="utf-8")
    return check(path)


def parts(folder: Path, keys: str = "lap: 1 mm") -> dict[str, Any]:
    """The parts of the cutting list of a life-size royal octavo in boards of 2.5 mm, by name."""
    return {part.what: part for part in books_of(checked(folder, keys).plan)[0].cover.cut_list}


@pytest.mark.parametrize(
    ("keys", "width"),
    [
        ("stiffener: sections and boards", 25.0),  # Johnson: the sections and both boards, 20 + 2 · 2.5
        ("stiffener: sections", 20.0),  # Adam: as wide as the back of the block
    ],
)
def test_stiffeners(keys: str, width: float, tmp_path: Path) -> None:
    """A. W. Johnson, "A Joint Venture", Skin Deep 15 (2003); P. Adam, *Practical Bookbinding* (1903), ch. VI.

    In both it is as high as the boards.
    """
    found = parts(tmp_path, keys)
    assert found["stiffener"].width == pytest.approx(width)
    assert found["stiffener"].height == found["board"].height


@pytest.mark.parametrize(
    ("keys", "joint"),
    [
        ("lap: 1 mm", 3.75),  # Johnson, and the usual one here: 1.5 boards of 2.5 mm
        ("joint: 1.5 boards", 3.75),
        ("joint: 1 board", 2.5),  # Adam: one board under cloth
        ("joint: 1/8 in", 3.175),  # Cockerell's French joint
    ],
)
def test_joints(keys: str, joint: float, tmp_path: Path) -> None:
    """Adam 1903, ch. VI; D. Cockerell, *Bookbinding, and the Care of Books* (1901), ch. XIII; Johnson 2003.

    The board is as wide as page and square less the joint: 155.575 + 3.175 − joint.
    """
    assert parts(tmp_path, keys)["board"].width == pytest.approx(158.75 - joint)


def test_squares_give_back_what_trimming_takes(tmp_path: Path) -> None:
    """M. Roberts & D. Etherington, *Bookbinding and the Conservation of Books* (1982), "case binding sizes".

    Royal octavo: 10 in before trimming, 9¾ in after 1/8 in at head and tail, 10 in again with squares of 1/8 in.
    """
    assert parts(tmp_path)["board"].height == pytest.approx(10 * 25.4)


@pytest.mark.parametrize("turn_in", ["10 mm", "15 mm", "5/8 in"])
def test_turn_ins_at_life_size(turn_in: str, tmp_path: Path) -> None:
    """Adam 1903, ch. VI: 10 to 15 mm; Roberts & Etherington 1982, "turn-in": 5/8 in in library binding."""
    assert checked(tmp_path, turn_in=turn_in).problems == ()


@pytest.mark.parametrize(("board", "notes"), [("0.0125 in", 0), ("0.012 in", 0), ("0.011 in", 1)])
def test_what_is_a_board(board: str, notes: int, tmp_path: Path) -> None:
    """Roberts & Etherington 1982: binder's board has at least 0.012 in, paper under 0.006 in."""
    found = checked(tmp_path, board=board).problems
    assert len(found) == notes
    assert all("binder's board has at least 0.305 mm" in problem.message for problem in found)


@pytest.mark.parametrize(("binding", "share"), [("quarter", 1 / 8), ("half", 1 / 4)])
def test_how_much_of_the_boards_the_spine_piece_takes(binding: str, share: float, tmp_path: Path) -> None:
    """Roberts & Etherington 1982, "quarter binding", "half binding"; from memory."""
    cover = books_of(checked(tmp_path, f"binding: {binding}, spine_stock: leather").plan)[0].cover
    strip = next(panel for panel in cover.flats[0].panels if panel.role == "front")
    assert strip.rect.width == pytest.approx(155.0 * share)


def test_worked_case(tmp_path: Path) -> None:
    """Derived by hand: 48 pages of 75 µm, boards of 1 mm, covering 160 + 50 µm, square 0.4, turn-ins of 5 mm.

    Board 15 + 0.4 − 1.5 = 13.9 wide and 21 + 0.8 = 21.8 high; stiffener 4.14 + 2 = 6.14 wide; the book
    4.14 + 2 · (1 + 0.21) = 6.56 thick. From stiffener to board 1.5 + 1 + π/4 · 0.21 = 2.665, so the covering is
    2 · (13.9 + 2.665) + 6.14 + 2 · 5 = 49.27 wide and 31.8 high.
    """
    path = tmp_path / "shelf.yaml"
    path.write_text(
        "shelf: Worked case\n"
        "stocks:\n"
        "  page: {caliper: 75 um, glue: 15 um, grain: long}\n"
        "  cover: {caliper: 160 um, film: 50 um, grain: long}\n"
        "  board: {caliper: 1 mm}\n"
        "books:\n"
        "  - title: Worked case\n"
        "    size: {height: 21 mm, width: 15 mm}\n"
        "    block: {kind: accordion, stock: page, pages: 48}\n"
        "    cover: {kind: case, stock: cover, boards: board}\n",
        encoding="utf-8",
    )
    cover = books_of(check(path).plan)[0].cover
    assert [(part.what, part.width, part.height, part.thickness, part.count) for part in cover.cut_list] == [
        ("board", pytest.approx(13.9), pytest.approx(21.8), 1.0, 2),
        ("stiffener", pytest.approx(6.14), pytest.approx(21.8), 1.0, 1),
    ]
    assert cover.thickness.value - cover.turned_in == pytest.approx(6.56)
    assert cover.flats[0].size == pytest.approx((49.2699, 31.8), abs=1e-4)
