"""Designs on the parts of a case: words stay on what shows, pictures reach the bleed, bare parts stay bare."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image

from bookmaker import check
from bookmaker.ground.art import NOTHING
from bookmaker.ground.drawing import Colour
from bookmaker.ground.geometry import Point, Rect
from bookmaker.sheets.flat import Flat, Role
from bookmaker.things.book.designs.artwork import NO_ARTWORK
from bookmaker.things.book.designs.design import Words
from bookmaker.things.book.designs.palettes import BONE
from bookmaker.things.book.designs.styles.half_leather import HalfLeather
from bookmaker.things.book.designs.styles.picture_cover import PictureCover
from bookmaker.things.book.designs.styles.plain import Plain
from bookmaker.things.book.designs.tones import apart
from tests.kit.by_kind import drafts_of
from tests.kit.cases import cased, holds
from tests.kit.flats import flat_of, panel
from tests.kit.recording import Filled, Placed, RecordingCanvas, ink_box, record
from tests.kit.styles import NO_FILES

SHELF = """\
shelf: The Salt Office
stocks:
  laid: {caliper: 75 um, glue: 15 um}
  cloth: {caliper: 160 um}
  board: {caliper: 1 mm}
books:
  - title: Tide Tables
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: laid, pages: 48}
    cover: {kind: case, stock: cloth, boards: board, binding: half, spine_stock: cloth, endpapers: laid,
      templates: laid}
"""


def drawn(flat: Flat) -> RecordingCanvas:
    return record(Plain().dress(Plain().load(NO_FILES), flat, Words("Tide Tables", "I. Marlow")).art)


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
    artwork = entry.load(tmp_path)
    made = cased(binding="quarter", spine_stock="leather", rtl=rtl)

    def pictures(name: str) -> list[Rect]:
        marks = record(entry.dress(artwork, made.part(name), Words("Tide Tables")).art).marks
        return [mark.bounds for mark in marks if type(mark).__name__ == "Placed"]

    (found,) = pictures("front side")
    face = panel(made.part("front side"), Role.FRONT)
    assert found.contains(face.grown(1.0))
    assert pictures("spine piece") == pictures("back side") == []


def broad(mark: Filled) -> bool:
    """Whether a mark is no mere rule or small tool."""
    return min(Rect.around(mark.path.points()).size) > 1


@pytest.mark.parametrize("binding", ["quarter", "half"])
@pytest.mark.parametrize("title", ["Orchards", "Bees", "Moths", "Salt", "Rope", "The Sound of Ice"])
def test_in_pieces_a_picture_cover_has_its_landscape_on_the_front_alone(binding: str, title: str) -> None:
    """Spine and corners are of plain cloth; the sun, or the window, is on the front."""
    entry = PictureCover.model_validate({"style": "picture", "wear": "none", "colour": "#2b3a5c"})
    made = cased(binding=binding, spine_stock="leather", corner=3.5 if binding == "half" else None)
    ground = Colour.from_hex("#2b3a5c")
    looks: dict[str, list[Filled]] = {}
    for flat in made.cover.flats:
        marks = record(entry.dress(entry.load(NO_FILES), flat, Words(title, "I. Marlow")).art).marks
        looks[flat.name] = [mark for mark in marks if isinstance(mark, Filled) and mark.clips]
        if flat.kind in ("case spine", "case corner"):
            large = [mark for mark in marks if isinstance(mark, Filled) and broad(mark)]
            assert large
            assert all(apart(mark.colour, ground) < 0.05 for mark in large if len(mark.path.commands) <= 6)
            assert not looks[flat.name]
    front, back = (
        {mark.path for mark in looks[name] if sum(step[0] == "C" for step in mark.path.commands) == 4}
        for name in ("front side", "back side")
    )
    assert looks["front side"]
    assert not back or len(front) > len(back)


@pytest.mark.parametrize("corner", [3.5, 5.0])
def test_a_front_picture_fills_all_that_shows_between_the_corners(tmp_path: Path, corner: float) -> None:
    """It is not mirrored before it is out of sight."""
    Image.new("RGB", (700, 1000), "#204060").save(tmp_path / "front.png")
    entry = PictureCover.model_validate({"style": "picture", "front_picture": "front.png"})
    side = cased(binding="half", spine_stock="leather", corner=corner).part("front side")
    marks = record(entry.dress(entry.load(tmp_path), side, Words("Tides")).art).marks
    upright = [mark for mark in marks if isinstance(mark, Placed) and mark.transform.a > 0 and mark.transform.d > 0]
    assert len(upright) == 1
    assert upright[0].bounds.contains(panel(side, Role.FRONT), 1e-6)


@pytest.mark.parametrize("size", [(17.0, 24.0), (17.0, 28.0), (11.0, 16.0)])
def test_the_label_of_half_leather_is_about_a_third_of_its_front(size: tuple[float, float]) -> None:
    flat = flat_of(5.0, *size)
    entry = HalfLeather.model_validate({"style": "half leather", "wear": "none"})
    for author in ("Gil Tarn", "The Lamp Committee of the Lower Gannow Harbour Office"):
        dress = entry.dress(NO_ARTWORK, flat, Words("The Sound of Ice", author))
        front = panel(flat, Role.FRONT)
        boxes = [
            Rect.around(mark.path.points())
            for mark in record(dress.art).marks
            if isinstance(mark, Filled) and mark.colour == BONE and not mark.clips
        ]
        plate = max((box for box in boxes if front.contains(box)), key=lambda box: box.width)
        assert 0.4 <= plate.width / front.width <= 0.6
        assert 0.27 <= plate.height / front.height <= 0.4
        # 5 dots at 600 to the inch
        assert all(line.x_height >= 5 * 25.4 / 600 for line in dress.lettering if line.on == "front")


def test_endpapers_and_templates_stay_bare(tmp_path: Path) -> None:
    (tmp_path / "shelf.yaml").write_text(SHELF, encoding="utf-8")
    (draft,) = drafts_of(check(tmp_path / "shelf.yaml"))
    bare = {piece.flat.kind for piece in draft.pieces if piece.art is NOTHING}
    assert bare == {"strip", "endpaper", "board template"}  # and the pages, which are blank here
    assert {"case spine", "case side", "case corner"} <= {piece.flat.kind for piece in draft.pieces}
