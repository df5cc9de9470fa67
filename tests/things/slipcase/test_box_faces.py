"""The faces of a slipcase: each is inked beyond its folds and edges, pictures stand upright, the title stays inside."""

from __future__ import annotations

from pathlib import Path as FilePath

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from bookmaker.ground.drawing import Colour, contrast
from bookmaker.ground.geometry import Point, Rect
from bookmaker.ground.problems import ShelfFileError
from bookmaker.paper.papers import FORMATS
from bookmaker.paper.stock import Stock
from bookmaker.paper.stock_entry import Grain
from bookmaker.sheets.flat import Flat, Role
from bookmaker.things.slipcase.faces import BoxFaces, dress_box, load_faces
from bookmaker.things.slipcase.net import BoxSize, slipcase_net, tabs_of
from tests.kit.folding import panel_of
from tests.kit.recording import RecordingCanvas, ink_box, record

FACES = (Role.LEFT, Role.RIGHT, Role.BACK, Role.TOP, Role.BOTTOM)
COLOURS = dict(zip(FACES, ("#112233", "#445566", "#778899", "#aa2233", "#44bb66"), strict=True))
NO_FILES = FilePath()
SIDES = st.builds(BoxSize, st.floats(4, 60), st.floats(12, 45), st.floats(10, 30))


def net(inside: BoxSize, caliper: float = 0.3) -> Flat:
    card = Stock("card", caliper, 0.0, 0.03, 0.03, Grain.LONG, FORMATS["A4"], Rect(5, 5, 200, 287))
    return slipcase_net("slipcase", inside, card, tabs_of(inside, None), 4.0)


def painted(**keys: object) -> BoxFaces:
    """Faces of five colours."""
    faces: dict[str, object] = {role.value: {"colour": colour} for role, colour in COLOURS.items()}
    return BoxFaces.model_validate(faces | keys)


def colour_at(canvas: RecordingCanvas, point: Point) -> Colour | None:
    """The last colour laid on a point; all fills are upright rectangles."""
    found = None
    for fill in canvas.fills:
        if Rect.around(fill.path.points()).contains(Rect(*point, 0, 0), 0):
            found = fill.colour
    return found


@given(inside=SIDES, caliper=st.floats(0.1, 0.8))
@settings(max_examples=50, deadline=None)
def test_no_white_shows_where_a_fold_or_a_cut_is_half_a_millimetre_off(inside: BoxSize, caliper: float) -> None:
    flat = net(inside, caliper)
    canvas = record(dress_box(painted(), {}, flat).art)
    for role in FACES:
        rect = panel_of(flat, role).rect
        assert colour_at(canvas, rect.centre) == Colour.from_hex(COLOURS[role])
        for corner in rect.grown(0.5).corners:
            assert colour_at(canvas, corner) is not None


def test_a_box_that_asks_for_nothing_is_not_printed() -> None:
    assert record(dress_box(None, {}, net(BoxSize(12, 21, 15))).art).marks == []


def test_one_colour_serves_the_faces_that_have_none() -> None:
    flat = net(BoxSize(12, 21, 15))
    entry = BoxFaces.model_validate({"colour": "#223344", "top": {"colour": "#ddccbb"}})
    canvas = record(dress_box(entry, {}, flat).art)
    for role in FACES:
        wanted = "#ddccbb" if role is Role.TOP else "#223344"
        assert colour_at(canvas, panel_of(flat, role).rect.centre) == Colour.from_hex(wanted)


def test_pictures_fill_their_faces_and_are_upright_to_who_sees_the_spines(tmp_path: FilePath) -> None:
    Image.new("RGB", (900, 900), "#204060").save(tmp_path / "face.png")
    entry = BoxFaces.model_validate({role.value: {"picture": "face.png"} for role in FACES})
    flat = net(BoxSize(12, 21, 15))
    dress = dress_box(entry, load_faces(entry, tmp_path), flat)
    pictures = record(dress.art).pictures
    assert len(pictures) == 5
    for role in FACES:
        face = panel_of(flat, role).rect
        (picture,) = (mark for mark in pictures if Rect.around(mark.clips[-1].points()).contains(face))
        assert picture.bounds.contains(face)
        # The head of a picture is up on the net, but on the top towards the back, which lies below it there.
        upright = picture.transform.apply(Point(0.5, 1)).y > picture.transform.apply(Point(0.5, 0)).y
        assert upright is (role is not Role.TOP)
    # a square loses 9 of 21 on the back, 6 of 21 on a side, and hardly more than 3 of 15 on the top
    told = {problem.field[0] for problem in dress.problems if "of it is cropped" in str(problem)}
    assert told == {"left", "right", "back"}
    assert len(dress.problems) == 3


@given(inside=SIDES, title=st.text(st.characters(categories=("L", "N", "P")), min_size=1, max_size=60))
@settings(max_examples=60, deadline=None)
def test_the_title_stays_on_the_back(inside: BoxSize, title: str) -> None:
    flat = net(inside)
    canvas = record(dress_box(BoxFaces(title=title), {}, flat).art)
    back = panel_of(flat, Role.BACK).rect
    for line in canvas.texts:
        assert back.grown(-0.5).contains(ink_box(line))


@pytest.mark.parametrize(("inside", "turned"), [(BoxSize(30, 24, 15), False), (BoxSize(12, 24, 15), True)])
def test_the_title_runs_down_a_tall_back(inside: BoxSize, turned: bool) -> None:
    (line,) = record(dress_box(BoxFaces(title="Tides"), {}, net(inside)).art).texts
    assert (abs(line.at.x - line.end.x) < 1e-6) is turned
    assert not turned or line.at.y > line.end.y


@pytest.mark.parametrize("ground", ["#101010", "#808080", "#f0f0f0"])
def test_the_title_stands_out_from_its_ground(ground: str) -> None:
    entry = BoxFaces.model_validate({"title": "Tides", "colour": "#ffffff", "back": {"colour": ground}})
    (line,) = record(dress_box(entry, {}, net(BoxSize(30, 24, 15))).art).texts
    assert contrast(line.colour, Colour.from_hex(ground)) >= 3
    given_ink = entry.model_copy(update={"ink": Colour.from_hex("#ff0000")})
    (line,) = record(dress_box(given_ink, {}, net(BoxSize(30, 24, 15))).art).texts
    assert line.colour == Colour(1.0, 0.0, 0.0)


def test_a_coarse_picture_and_a_title_too_long_are_warnings(tmp_path: FilePath) -> None:
    Image.new("RGB", (70, 100)).save(tmp_path / "side.png")
    entry = BoxFaces.model_validate({"title": "x" * 200, "left": {"picture": "side.png"}})
    dress = dress_box(entry, load_faces(entry, tmp_path), net(BoxSize(12, 21, 15)))
    assert [(problem.severity, problem.field) for problem in dress.problems] == [
        ("warning", ("left", "picture")),
        ("warning", ("title",)),
    ]
    coarse, small = map(str, dress.problems)
    # The face and its bleed: 21 + 2 · 0.33 + π/4 · 0.3 + 2 · 1 = 23.896 mm high, which 100 pixels fill.
    assert coarse == "side.png prints at only 106 dots per inch; use a picture of at least 198 × 283 pixels"
    assert small.endswith("too small to print; write a shorter title")


def test_every_missing_picture_is_named() -> None:
    entry = BoxFaces.model_validate({"back": {"picture": "a.png"}, "top": {"picture": "b.png"}})
    with pytest.raises(ShelfFileError) as refusal:
        load_faces(entry, NO_FILES)
    assert [problem.field for problem in refusal.value.problems] == [("back", "picture"), ("top", "picture")]
