"""Everything that the demo prints, as SVG and as PDF, piece by piece: the same pictures."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.sheets.facsimiles import facsimile_of_piece
from bookmaker.sheets.flat import Face
from bookmaker.workshop import Checked
from tests.kit.pixels import Broad, apart
from tests.kit.recording import record

DEMO = Path(__file__).parents[2] / "demo" / "shelf.yaml"
DPI = 254.0


@pytest.fixture(scope="module")
def demo() -> Checked:
    return check(DEMO)


@pytest.mark.parametrize("tenth", range(10))
def test_every_piece_is_the_same_picture_as_svg_and_as_pdf(demo: Checked, tenth: int) -> None:
    """Of 255 levels, averaged over half a millimetre: at most 5 apart all over, at most 85 at any place.

    They do not agree better because PDFium sets every glyph on whole pixels, a tenth of a millimetre here, and
    because it blurs what pictures are enlarged in another way. With finer pixels both come closer: see
    `test_svg_and_pdf_are_the_same_picture`. A letter of a text that is missing is 120 and more.
    """
    pieces = [piece for draft in demo.drafts.values() for piece in draft.pieces]
    sides = [(piece, face) for piece in pieces for face in Face if face is Face.FRONT or piece.two_sided]
    for piece, face in sides[tenth::10]:
        seen = facsimile_of_piece(piece, face, bleed=True)
        found = apart(Broad(seen.art, 25.4 / DPI), seen.box, DPI, 2.0)
        assert found.mean() <= 5, (piece.id, face)
        assert found.max() <= 85, (piece.id, face)


def test_nothing_that_is_printed_is_thin_ink(demo: Checked) -> None:
    """Veils are for pictures: printers and cutters' programs would lay them out each in its own way."""
    for draft in demo.drafts.values():
        for piece in draft.pieces:
            marks = (*record(piece.art).fills, *record(piece.reverse).fills)
            assert {mark.cover for mark in marks} <= {1.0}, piece.id
