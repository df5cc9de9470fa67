"""Designs on the parts of a case: words stay on what shows, pictures reach the bleed, bare parts stay bare."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image

from bookmaker.designs import Words, dress_flat, load_design
from bookmaker.designs.plain import Plain
from bookmaker.drawing import NOTHING
from bookmaker.flat import Flat, Role
from bookmaker.geometry import Point, Rect
from bookmaker.pipeline import check
from tests.recording import RecordingCanvas, record
from tests.test_case import cased, holds, panel
from tests.test_designs import NO_FILES, ink_box

SHELF = """\
shelf: The Salt Office
stocks:
  laid: {caliper: 75 um, glue: 15 um}
  cloth: {caliper: 160 um}
  board: {caliper: 1 mm}
books:
  - title: Tide Tables
    size: {height: 21 mm, width: 15 mm}
    block: {kind: concertina, stock: laid, pages: 48}
    cover: {kind: case, stock: cloth, boards: board, binding: half, spine_stock: cloth, endpapers: laid,
      templates: laid}
"""


def drawn(flat: Flat) -> RecordingCanvas:
    return record(dress_flat(Plain(), load_design(Plain(), NO_FILES), flat, Words("Tide Tables", "I. Marlow")).art)


@pytest.mark.parametrize("binding", ["full", "quarter", "half"])
@pytest.mark.parametrize("rtl", [False, True])
def test_spine_and_front_are_lettered_once(binding: str, rtl: bool) -> None:
    made = cased(binding=binding, spine_stock="leather", rtl=rtl, corner=3.5 if binding == "half" else None)
    on: dict[str, int] = {}
    for flat in made.cover.flats:
        for text in drawn(flat).texts:
            box = ink_box(text)
            (role,) = {panel.role for panel in flat.panels if panel.rect.contains(box)}
            on[role] = on.get(role, 0) + 1
            if binding == "half" and role is Role.FRONT:
                # what shows of the side: its corner pieces lie over nothing of the words
                assert all(holds(flat, corner) for corner in box.corners)
    # the title on two lines of the front, and the author, on front and spine
    assert on == {Role.SPINE: 2, Role.FRONT: on[Role.FRONT]}
    assert on[Role.FRONT] >= 2


def test_no_words_stand_where_a_corner_is_cut() -> None:
    side = cased(binding="half", spine_stock="leather", corner=5.0).part("front side")
    face = panel(side, Role.FRONT)
    clear = side.clear_of_cuts(face)
    assert clear == pytest.approx(Rect(face.x, face.y + 5, face.width, face.height - 10), abs=1e-3)
    assert not holds(side, Point(clear.right, clear.y - 0.01))
    for text in drawn(side).texts:
        assert clear.contains(ink_box(text))


def test_a_covering_without_cuts_in_its_faces_is_clear() -> None:
    flat = cased().part("covering")
    for role in (Role.FRONT, Role.BACK, Role.SPINE):
        assert flat.clear_of_cuts(panel(flat, role)) == panel(flat, role)


@pytest.mark.parametrize("rtl", [False, True])
def test_a_front_picture_fills_the_side_and_spares_the_spine_piece(tmp_path: Path, rtl: bool) -> None:
    Image.new("RGB", (700, 1000), "#204060").save(tmp_path / "front.png")
    entry = Plain(front_picture="front.png")
    artwork = load_design(entry, tmp_path)
    made = cased(binding="quarter", spine_stock="leather", rtl=rtl)

    def pictures(name: str) -> list[Rect]:
        marks = record(dress_flat(entry, artwork, made.part(name), Words("Tide Tables")).art).marks
        return [mark.bounds for mark in marks if type(mark).__name__ == "Placed"]

    (found,) = pictures("front side")
    face = panel(made.part("front side"), Role.FRONT)
    assert found.contains(face.grown(1.0))
    assert pictures("spine piece") == pictures("back side") == []


def test_endpapers_and_templates_stay_bare(tmp_path: Path) -> None:
    (tmp_path / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    (draft,) = check(tmp_path / "shelf.yaml").drafts
    bare = {piece.flat.kind for piece in draft.pieces if piece.art is NOTHING}
    assert bare == {"strip", "endpaper", "board template"}  # and the pages, which are blank here
    assert {"case spine", "case side", "case corner"} <= {piece.flat.kind for piece in draft.pieces}
