"""What is seen of things in a room: of what is folded its outer panel, of a box its top, of a frame all of it."""

from __future__ import annotations

from pathlib import Path

from PIL import Image
from pytest import approx

from bookmaker import check
from bookmaker.ground.drawing import Colour
from bookmaker.ground.geometry import Size
from bookmaker.things.draft import Draft
from bookmaker.writers.shelf_front import fronts
from tests.kit.recording import record
from tests.kit.shelves import written

ROOM = """\
shelf: Over the Stove
stocks:
  card: {caliper: 300 um}
  paper: {caliper: 80 um}
surfaces:
  wall: {width: 300 mm, height: 200 mm}
  desk: {width: 200 mm, depth: 150 mm}
defaults: {}
things:
  - id: harbour
    kind: frame
    stock: paper
    width: 40 mm
    height: 30 mm
    shows: {colour: "#102030"}
    mount: {stock: card, border: 5 mm, covers: 0.5 mm, colour: "#e0d0c0"}
  - id: chart
    kind: map
    stock: paper
    width: 60 mm
    height: 50 mm
    front: {text: The whole Sound}
    cover: {text: Folded}
  - {id: tickets, kind: cards, stock: card, width: 12 mm, height: 6 mm, count: 4, front: {text: Ferry}}
  - id: tea
    kind: lidded box
    stock: card
    inside: {length: 20 mm, width: 12 mm, height: 9 mm}
    faces: {top: {text: Tea}, front: {text: Leaf}}
  - {id: tray, kind: tray, stock: card, inside: {length: 20 mm, width: 12 mm, height: 4 mm}}
"""


def drafts(folder: Path) -> tuple[dict[str, Draft], dict[str, Size]]:
    found = check(written(ROOM, folder))
    return dict(found.drafts), {id: plan.from_above for id, plan in found.plan.plans.items() if plan.from_above}


def words(draft: Draft, *, hanging: bool = False) -> set[str]:
    seen = draft.hanging if hanging else draft.lying
    assert seen
    return {text.text for text in record(seen.art).texts}


def test_each_is_as_large_as_it_takes_room_but_for_what_folds_take(tmp_path: Path) -> None:
    found, sizes = drafts(tmp_path)
    for id, draft in found.items():
        if draft.lying:
            assert tuple(draft.lying.box.size) == approx(sizes[id], abs=0.7), id
    assert found["tray"].lying is None, "an open box shows no printed side"


def test_a_map_lies_folded_and_hangs_open(tmp_path: Path) -> None:
    chart = drafts(tmp_path)[0]["chart"]
    assert "Folded" in words(chart)
    assert chart.hanging and tuple(chart.hanging.box.size) == approx((60, 50))
    assert any("Sound" in text for text in words(chart, hanging=True))


def test_one_card_of_many_and_the_top_of_a_box_are_seen(tmp_path: Path) -> None:
    found, _ = drafts(tmp_path)
    assert found["tickets"].lying and tuple(found["tickets"].lying.box.size) == approx((12, 6))
    assert words(found["tea"]) >= {"Tea"}


def test_a_frame_is_seen_with_its_rails_and_its_mount(tmp_path: Path) -> None:
    harbour = drafts(tmp_path)[0]["harbour"]
    assert harbour.hanging and harbour.hanging == harbour.lying
    colours = {fill.colour for fill in record(harbour.hanging.art).fills}
    assert colours >= {Colour.from_hex("#102030"), Colour.from_hex("#e0d0c0")}


BOXED = ROOM.replace(
    "defaults: {}",
    """\
defaults: {block: {kind: dummy, thickness: 6 mm}, cover: {kind: wrap, stock: paper}}
books:
  - {title: Kettles, size: {height: 21 mm, width: 15 mm}}
  - {title: Pans, size: {height: 20 mm, width: 14 mm}}
slipcases:
  stove:
    books: [Kettles, Pans]
    stock: card
    place: {on: desk, left: 150 mm, front: 20 mm}
    faces: {top: {picture: top.png}}
""",
)


def test_a_slipcase_stands_on_a_desk_with_its_spines_to_the_front(tmp_path: Path) -> None:
    """From above is seen its top, upright for who looks at the spines; its books stand in it and nowhere else."""
    Image.new("RGB", (400, 600), "#306090").save(tmp_path / "top.png")
    found = check(written(BOXED, tmp_path))
    box = found.plan.plans["slipcase-stove"]
    (there,) = [one for surface in found.plan.room for one in surface.things if one.thing == box.id]
    assert box.standing
    assert tuple(there.rect) == approx((150, 20, box.standing.thickness, box.standing.depth))
    seen = found.drafts[box.id].lying
    assert seen and tuple(seen.box.size) == approx(there.rect.size, abs=0.7)
    (picture,) = record(seen.art).pictures
    assert (picture.transform.a > 0, picture.transform.d > 0) == (True, True), "not on its head"
    (row,) = fronts(found.plan, found.drafts)
    assert [shown.thing for place in row.places for shown in place] == ["tea", "tray"]
