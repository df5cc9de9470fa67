"""Paper round rails folded in space, and the jig on which frames come out square."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.ground.geometry import Rect, Size
from bookmaker.ground.outlines import area_within
from bookmaker.ground.problems import ShelfFileError
from bookmaker.sheets.flat import MarkKind
from bookmaker.things.box.folding import folded
from bookmaker.things.box.net import Card
from bookmaker.things.frame.sizes import joints
from bookmaker.things.frame.wrap import Core, wrap_net
from tests.kit.pixels import pdf_pixels
from tests.kit.shelves import written
from tests.kit.slabs import brick, deepest, overlap, slab_of

LAST = 99

cores = st.builds(Core, st.floats(20, 60), st.floats(1.5, 6), st.floats(1, 4))
cards = st.builds(Card, st.floats(0.06, 0.2), st.floats(0.0, 0.04))


@settings(max_examples=25, deadline=None)
@given(core=cores, card=cards)
def test_the_paper_lies_on_the_core_a_film_apart(core: Core, card: Card) -> None:
    """The core lies under the paper, its face up: within the mitres it is a brick."""
    net = wrap_net(core, card, "wrap")
    poses = folded(net, LAST)
    slabs = {panel.name: slab_of(panel, poses[panel.name], card.caliper) for panel in net.panels}
    off = card.caliper / 2 + card.glue
    low = [off, core.face + off, -off - core.depth]
    high = [off + core.face, core.length - core.face - off, -off]
    strip = brick(low, high)
    for name, slab in slabs.items():
        assert overlap(slab, strip) == pytest.approx(-card.glue, abs=1e-6), name
    hang = {frozenset((panel.name, panel.hinge.to)) for panel in net.panels if panel.hinge}
    assert deepest(slabs, hang)[0] < 1e-6


@settings(max_examples=25, deadline=None)
@given(core=cores, card=cards)
def test_the_paper_is_mitred_with_the_core(core: Core, card: Card) -> None:
    """At 45° on the face, and as long as the rail is on either side of it, paper and all."""
    face = wrap_net(core, card, "wrap").by_name["face"].outline
    off = card.caliper / 2 + card.glue
    (x0, y0), (x1, y1), (_, y2), (_, y3) = face
    assert y0 - y1 == pytest.approx(x1 - x0)
    assert y2 - y3 == pytest.approx(x1 - x0)
    assert y2 - y1 == pytest.approx(core.length + 2 * off)
    assert y3 - y0 == pytest.approx(core.length - 2 * core.face - 2 * off)


SHELF = """\
shelf: The Captain's Wall
stocks:
  photo paper: {caliper: 200 um}
  wood paper: {caliper: 90 um, glue: 10 um}
things:
  - id: pilot
    kind: frame
    stock: photo paper
    width: 20 mm
    height: 30 mm
    shows: {colour: "#2f4f46"}
    rails: {corners: mitre, face: 3 mm, covers: 0.5 mm, wrap: {stock: wood paper, profile: beaded, gilt: "#c9a24a"}}
    jig: photo paper
"""


def test_a_wrapped_frame_is_larger_by_its_paper_and_its_core_is_not(tmp_path: Path) -> None:
    (plan,) = check(written(SHELF, tmp_path)).plan.plans.values()
    assert [flat.kind for flat in plan.flats] == ["picture", *["wrap"] * 4, "jig"]
    # opening 20.25, and on each side the strip, twice 0.1 mm of paper and glue, less what it covers
    outside = 20.25 + 2 * (3 + 0.2 - 0.5)
    assert [stick.length for stick in plan.sticks] == pytest.approx([outside - 0.2, outside + 10 - 0.2])
    jig = plan.flats[-1]
    assert jig.size == pytest.approx(Size(outside + 12, outside + 10 + 12))
    pricks = [mark.rect.centre for mark in jig.marks if mark.kind is MarkKind.HOLE]
    corners = [*Rect(6, 6, outside, outside + 10).corners, *Rect(6, 6, outside, outside + 10).grown(-3.2).corners]
    assert np.array(pricks) == pytest.approx(np.array(corners))


def test_gilt_comes_to_the_picture(tmp_path: Path) -> None:
    wrap = check(written(SHELF, tmp_path)).drafts["pilot"].pieces[1]
    row = pdf_pixels(wrap.art, 254, 10, Rect(0, wrap.flat.size.height / 2, wrap.flat.size.width, 1.0))[4]
    golden = [n for n, (red, green, blue) in enumerate(row) if red > 180 and green > 140 and blue < 120]
    assert golden
    assert max(golden) / 10 < 2.0 + 0.12 * 3.3 + 0.2  # the side at the picture and an eighth of the face


@pytest.mark.parametrize("mitred", [True, False])
def test_joints_part_the_frame_into_four_rails(mitred: bool) -> None:
    outer = Rect(0, 0, 30, 40)
    lines = joints(outer, outer.grown(-4), mitred=mitred)
    assert len(lines) == 4
    for out, into in lines:
        assert (abs(out.x - into.x), abs(out.y - into.y)) == pytest.approx((4, 4 if mitred else 0))
    assert area_within(outer.corners) > 0


@pytest.mark.parametrize(
    ("right", "wrong", "told"),
    [
        ("corners: mitre", "corners: butt", "rails in paper need mitred corners"),
        ("covers: 0.5 mm,", "covers: 0.5 mm, rebate: 1 mm,", "paper cannot go around rails with a step"),
        ("height: 30 mm", "height: 275 mm", "the jig is"),
        ("jig: photo paper", "jig: wod paper", "there is no stock 'wod paper'; did you mean 'wood paper'?"),
    ],
)
def test_what_cannot_be_wrapped_is_said(tmp_path: Path, right: str, wrong: str, told: str) -> None:
    assert right in SHELF
    with pytest.raises(ShelfFileError) as caught:
        check(written(SHELF.replace(right, wrong), tmp_path))
    assert any(told in str(problem) for problem in caught.value.problems), [str(one) for one in caught.value.problems]
