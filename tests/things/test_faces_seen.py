"""The faces of a bound book as one looks at them, put together of as many pieces as cover them."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.ground.geometry import Rect
from bookmaker.sheets.flat import Role
from bookmaker.things.draft import Draft
from bookmaker.things.faces_seen import facsimile_of_face
from bookmaker.writers.svg import svg_picture
from tests.kit.by_kind import drafts_of
from tests.kit.pixels import svg_pixels
from tests.kit.recording import record

FACES = (Role.FRONT, Role.SPINE, Role.BACK)

SHELF = """\
shelf: The Salt Office
stocks:
  laid: {{caliper: 75 um, glue: 15 um}}
  cloth: {{caliper: 160 um}}
  board: {{caliper: 1 mm}}
books:
  - title: Tide Tables
    direction: {reads}
    size: {{height: 21 mm, width: 15 mm}}
    block: {{kind: accordion, stock: laid, pages: 48}}
    cover: {{kind: case, stock: cloth, boards: board, binding: {binding}{of}, endpapers: laid, templates: laid}}
    inside: {{kind: ruled, numbers: yes}}
    design: {{style: half leather, wear: none}}
"""


def drawn(folder: Path, binding: str, reads: str = "left-to-right") -> Draft:
    path = folder / "shelf.yaml"
    of = "" if binding == "full" else ", spine_stock: cloth"
    path.write_text(SHELF.format(binding=binding, of=of, reads=reads), encoding="utf-8")
    return drafts_of(check(path))[0]


@pytest.mark.parametrize("binding", ["full", "quarter", "half"])
@pytest.mark.parametrize("reads", ["left-to-right", "right-to-left"])
def test_the_sides_are_as_large_as_their_boards_and_covered_all_over(tmp_path: Path, binding: str, reads: str) -> None:
    found = drawn(tmp_path, binding, reads).pieces
    [board] = [piece.flat.size for piece in found if piece.flat.name == "front board"]
    for role in (Role.FRONT, Role.BACK):
        seen = facsimile_of_face(found, role)
        assert seen
        assert seen.box.size == pytest.approx(board.turned, abs=1e-6)
        pixels = svg_pixels(svg_picture(seen.art, seen.box), 254.0, 10.0, seen.box)
        # a label is paper, but no white comes through between the pieces
        assert (pixels.min(axis=2) > 252).mean() < 0.002


@pytest.mark.parametrize("binding", ["full", "quarter", "half"])
def test_words_stand_on_front_and_spine(tmp_path: Path, binding: str) -> None:
    """What of a whole covering lies beside a face is not seen of it."""
    found = drawn(tmp_path, binding).pieces
    words_on: dict[Role, str] = {}
    for role in FACES:
        seen = facsimile_of_face(found, role)
        assert seen
        words = (text for text in record(seen.art).texts if seen.box.contains(Rect(*text.at, 0, 0)))
        words_on[role] = " ".join(text.text for text in words)
    titled = {role for role, words in words_on.items() if "tide" in words.casefold()}
    assert titled == {Role.FRONT, Role.SPINE}


@pytest.mark.parametrize(("reads", "facing"), [("left-to-right", ["2", "3"]), ("right-to-left", ["3", "2"])])
def test_a_book_is_seen_from_all_sides_and_opens_the_way_it_reads(
    tmp_path: Path, reads: str, facing: list[str]
) -> None:
    draft = drawn(tmp_path, "full", reads)
    assert list(draft.faces) == list(FACES)
    assert [page.box.size for page in draft.pages] == [(15, 21)] * 48
    first, second, *_, last = draft.openings
    assert len(draft.openings) == 25
    assert [text.text for text in sorted(record(second.art).texts, key=lambda text: text.at)] == facing
    assert (first.box.width, second.box.width, last.box.width) == (15, 30, 15)


def test_what_is_not_covered_has_no_faces() -> None:
    assert facsimile_of_face((), Role.FRONT) is None
