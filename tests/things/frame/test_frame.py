"""Framed pictures: published sizes, rails that close, parts that go together, the whole way, bad input."""

from __future__ import annotations

import json
import re
from math import cos, radians, sin
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pypdf import PdfReader

from bookmaker import check, make
from bookmaker.ground.problems import ShelfFileError
from bookmaker.sheets.cutting import Stick
from bookmaker.shelf.choice import Choice
from bookmaker.shelf.wishes import Wishes
from bookmaker.things.frame.entry import FrameEntry
from bookmaker.things.frame.plan import FramePlan
from bookmaker.things.frame.sizes import frame_sizes
from tests.kit.shelves import written

SHELF = """\
shelf: The Captain's Wall
stocks:
  photo paper: {caliper: 200 um}
  mount card: {caliper: 400 um}
things:
  - id: harbour
    kind: frame
    title: The Harbour at Dusk
    stock: photo paper
    width: 20 mm
    height: 25 mm
    shows: {colour: "#2f4f46"}
    mount: {stock: mount card, border: 6 mm}
    rails: {corners: mitre, face: 4 mm, covers: 1 mm}
    glazing: 0.2 mm
  - {id: pilot, kind: frame, stock: photo paper, width: 30 mm, height: 18 mm, shows: {text: The Pilot}}
"""


def entry(**keys: object) -> FrameEntry:
    return FrameEntry.model_validate({"id": "a", "stock": "paper", **keys})


def plans(folder: Path, text: str = SHELF) -> list[FramePlan]:
    found = list(check(written(text, folder)).plan.plans.values())
    assert all(isinstance(plan, FramePlan) for plan in found)
    return [plan for plan in found if isinstance(plan, FramePlan)]


INCH = 25.4


@pytest.mark.parametrize(
    ("picture", "allowance", "face", "covers", "sight", "outside", "unit"),
    [
        # "Find the length of any picture frame molding", Fine Woodworking 275: 16 × 20 in, play 1/8 in
        ((16, 20), 0.125, 2, 0.25, (15.625, 19.625), (19.625, 23.625), INCH),
        # derived from the same formula
        ((8, 10), 0.125, 1, 0.25, (7.625, 9.625), (9.625, 11.625), INCH),
        ((20, 25), 0.25, 4, 1, (18.25, 23.25), (26.25, 31.25), 1.0),
        ((16, 20), 0, 2, 0, (16, 20), (20, 24), INCH),
    ],
)
def test_sizes_are_those_of_the_published_formula(
    picture: tuple[float, float],
    allowance: float,
    face: float,
    covers: float,
    sight: tuple[float, float],
    outside: tuple[float, float],
    unit: float,
) -> None:
    # the formula is the same at any scale; a twelfth keeps the sides within what may be written
    small = unit / 12 if unit == INCH else unit
    written = entry(
        width=f"{picture[0] * small} mm",
        height=f"{picture[1] * small} mm",
        allowance=f"{allowance * small} mm",
        rails={"face": f"{face * small} mm", "covers": f"{covers * small} mm"},
    )
    sizes = frame_sizes(written, 12.0)
    assert tuple(sizes.sight) == pytest.approx(tuple(side * small for side in sight))
    assert tuple(sizes.outside) == pytest.approx(tuple(side * small for side in outside))
    butt = dict(sizes.rails(face * small, mitred=False))
    mitre = dict(sizes.rails(face * small, mitred=True))
    assert 2 * (sum(mitre.values()) - sum(butt.values())) == pytest.approx(4 * face * small)


def corners(rail: Stick) -> list[tuple[float, float]]:
    """A rail that lies level, outside down, its ends cut as it says."""
    first, last = (rail.width * sin(radians(bevel)) / cos(radians(bevel)) for bevel in rail.bevels)
    return [(0, 0), (rail.length, 0), (rail.length - last, rail.width), (first, rail.width)]


SIDES = st.floats(10, 60)


@given(SIDES, SIDES, st.floats(1.5, 6), st.floats(0.1, 1.4), st.sampled_from(["butt", "mitre"]), st.booleans())
def test_four_rails_close_around_what_is_seen(
    width: float, height: float, face: float, covers: float, joint: str, mounted: bool
) -> None:
    """Turned by quarters and pushed together, the rails cover the frame once: their areas are outside less sight."""
    rails = {"face": f"{face} mm", "covers": f"{covers} mm", "corners": joint}
    mount = {"stock": "card", "border": "7 mm"} if mounted else None
    sizes = frame_sizes(entry(width=f"{width} mm", height=f"{height} mm", rails=rails, mount=mount), 12.0)
    mitred = joint == "mitre"
    bevels = (45.0, 45.0) if mitred else (0.0, 0.0)
    sticks = [Stick(what, "wood", length, face, 2.0, bevels) for what, length in sizes.rails(face, mitred=mitred)]
    area = sum(
        sum(x * high - far * y for (x, y), (far, high) in zip(points, points[1:] + points[:1], strict=True))
        for points in map(corners, sticks)
    )  # twice half the doubled area: two rails of each
    assert area == pytest.approx(
        sizes.outside.width * sizes.outside.height - sizes.sight.width * sizes.sight.height, rel=1e-9
    )
    assert sizes.opening.width - sizes.framed.width == pytest.approx(0.25)
    if sizes.window:
        assert sizes.window.width < width
        foot, top = sizes.window.y, sizes.framed.height - sizes.window.top
        assert foot / top == pytest.approx(4 / 3)  # US Navy, Illustrator Draftsman, "Matting": 3 to 4
        assert sizes.window.x == pytest.approx(top)


def test_parts_are_flats_sheets_and_sticks(tmp_path: Path) -> None:
    harbour, pilot = plans(tmp_path)
    picture, mount = harbour.flats
    assert tuple(picture.size) == (20, 25)
    assert tuple(mount.size) == pytest.approx((20 - 0.8 + 12, 25 - 0.8 + 6 + 8))
    assert len(mount.holes) == 1
    assert [part.what for part in harbour.cut_list] == ["glazing", "backing"]
    assert [(stick.count, stick.bevels) for stick in harbour.sticks] == [(2, (45.0, 45.0))] * 2
    assert [part.what for part in pilot.cut_list] == ["backing"]
    (backing,) = pilot.cut_list
    # a backing behind strip without a step reaches half under the rails on either side
    assert (backing.height, backing.width) == pytest.approx((18.25 + 6 - 1.2 - 1.5, 30.25 + 6 - 1.2 - 1.5))


def test_life_size_is_divided_by_the_scale(tmp_path: Path) -> None:
    text = SHELF.replace("width: 30 mm, height: 18 mm", "sizes: life size, width: 360 mm, height: 216 mm")
    assert plans(tmp_path / "a", text)[1].sizes == plans(tmp_path / "b")[1].sizes


def test_it_goes_the_whole_way(tmp_path: Path) -> None:
    out = tmp_path / "out"
    make(written(SHELF, tmp_path), out)
    plan = json.loads((out / "plan.json").read_text(encoding="utf-8"))
    harbour, pilot = plan["things"]
    assert harbour["outside_mm"] == {"width": 37.45, "height": 44.45}
    assert [stick["length_mm"] for stick in harbour["sticks"]] == [37.45, 44.45]
    assert pilot["name"] == "pilot"
    guide = " ".join(" ".join(page.extract_text().split()) for page in PdfReader(out / "guide.pdf").pages)
    assert "Frame: The Harbour at Dusk" in guide
    assert "Saw two rails of 37.45 mm and two of 44.45 mm, both ends at 45°" in guide
    assert "buy 1 length of 600 mm, and saw from each: 44.45, 44.45, 37.45, 37.45" in guide
    assert "level rail both 45° 2 37.45" in guide
    assert re.search(r"What is made, in mm title made as thick high deep page The Harbour at Dusk frame", guide)
    assert "material for part pieces" in guide
    make(written(SHELF, tmp_path), out, wishes=Wishes(choice=Choice(only=("pilot",))))
    chosen = json.loads((out / "plan.json").read_text(encoding="utf-8"))
    assert {piece["owner"] for sheet in chosen["sheets"] for piece in sheet["pieces"]} == {"pilot"}


@pytest.mark.parametrize(
    ("right", "wrong", "told"),
    [
        ("covers: 1 mm", "covers: 4 mm", "the rails cover 4 mm and are only 4 mm wide; write at most 2 mm"),
        ("border: 6 mm", "border: 1 mm", "the rails cover 1 mm, but the border of the mount is not wider"),
        ("border: 6 mm", "border: 6 mm, covers: 10 mm", "the mount covers the whole picture; write covers: of less"),
        (
            "face: 4 mm,",
            "face: 4 mm, sold: 40 mm,",
            "its longest rail is 44.5 mm long, but the strip is sold in lengths of 40 mm",
        ),
        ("face: 4 mm,", "face: 4 mm, rebate: 2 mm,", "the rebate is as deep as the strip is thick, 2 mm"),
        ("    glazing", "    space: shelf\n    glazing", "a frame hangs, and stands in no space"),
        ("width: 20 mm", "width: 320 mm", "the picture is 320 mm × 25 mm"),
        ("corners: mitre", "corners: mitred", "The Harbour at Dusk: rails.corners: 'mitred' is not known"),
    ],
)
def test_what_cannot_be_framed_is_said(tmp_path: Path, right: str, wrong: str, told: str) -> None:
    assert right in SHELF
    text = SHELF.replace(right, wrong).replace(
        "things:", "spaces: {shelf: {width: 60 mm, height: 60 mm, depth: 20 mm}}\nthings:"
    )
    with pytest.raises(ShelfFileError) as caught:
        check(written(text, tmp_path))
    assert any(told in str(problem) for problem in caught.value.problems), [str(one) for one in caught.value.problems]
    assert all(problem.place and problem.place.line > 1 for problem in caught.value.problems)


def test_what_sticks_out_behind_is_noted(tmp_path: Path) -> None:
    text = SHELF.replace("face: 4 mm,", "face: 4 mm, rebate: 1 mm,")
    (note,) = [problem for problem in check(written(text, tmp_path)).problems if "rebate" in problem.message]
    # paper 0.2, card 0.4, glazing 0.2, backing 0.5
    assert "is 1.3 mm thick" in note.message
