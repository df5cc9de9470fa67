"""Fingerprints are equal exactly for what is cut and printed alike."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path as FilePath

import pytest

from bookmaker.ground.art import Filled, Group, Imported, Layer, Repeated, Stroked, Written
from bookmaker.ground.drawing import BLACK, WHITE, Art, Canvas, Pen
from bookmaker.ground.geometry import Path, Point, Rect, Transform
from bookmaker.ground.imported import ImportedPage
from bookmaker.ground.typefaces import Run, TextLine, bundled
from bookmaker.sheets.fingerprints import Fingerprint, Fingerprints
from bookmaker.sheets.flat import Stroke
from bookmaker.sheets.piece import Piece
from bookmaker.typesetting.word_line import WordLine
from tests.kit.flats import CARD, part
from tests.kit.recording import record

FACE = bundled("text")
LAMP, OIL, SPACE = FACE.shape("lamp"), FACE.shape("oil"), FACE.shape(" ")
WORDS = WordLine(2.0, (LAMP, OIL), SPACE, 0.3)
SLANT = Path.line(Point(0, 0), Point(3, 4))
DOTS = Repeated((Filled.box(Rect(0, 0, 0.1, 0.1)),), (Point(0, 0), Point(1, 0)))
PAGE = ImportedPage(FilePath("leaf.pdf"), "4f", 0, Rect(0, 0, 10, 10))
PIECE = Piece("one", "one", ("One", "part"), part())


def fingerprint(piece: Piece) -> Fingerprint:
    return Fingerprints().of(piece, CARD)


def silent(run: Run) -> Run:
    """A run of the same glyphs that says nothing."""
    return replace(run, text="", glyphs=tuple(glyph._replace(text="") for glyph in run.glyphs))


def written(line: TextLine, x: float = 1.0) -> Written:
    return Written(line, Point(x, 1.0))


DIFFERENT: tuple[Art, ...] = (
    Group(()),
    Stroked(SLANT, Pen(0.1)),
    Stroked(SLANT, Pen(0.1, dash=(1.0,))),
    Stroked(SLANT, Pen(1.0, dash=(0.1,))),
    Stroked(Path.line(Point(0, 0), Point(3, 4.001)), Pen(0.1)),
    Filled(SLANT),
    Filled(SLANT, WHITE),
    Filled(Path((("M", 0.0, 0.0), ("M", 3.0, 4.0)))),
    Filled(Path((*SLANT.commands, ("Z",)))),
    Group((Filled(SLANT), Filled(SLANT))),
    Layer("score", (Filled(SLANT),)),
    Layer("cut", (Filled(SLANT),)),
    written(WORDS),
    written(WORDS, 1.001),
    written(WordLine(2.0, (LAMP, OIL), SPACE, 0.31)),
    written(WordLine(2.0, (OIL, LAMP), SPACE, 0.3)),
    written(WordLine(2.0, (LAMP, OIL), SPACE, 0.3, 0.01)),
    written(WordLine(2.1, (LAMP, OIL), SPACE, 0.3)),
    written(WordLine(2.0, (LAMP, replace(OIL, typeface=bundled("sans"))), SPACE, 0.3)),
    written(WordLine(2.0, (LAMP, replace(OIL, glyphs=(*OIL.glyphs[:-1], OIL.glyphs[0]))), SPACE, 0.3)),
)


def test_whatever_is_drawn_otherwise_has_another() -> None:
    fronts = [fingerprint(replace(PIECE, art=art)).art for art in DIFFERENT]
    backs = [fingerprint(replace(PIECE, reverse=art)).art for art in DIFFERENT[1:]]
    assert len({*fronts, *backs}) == len(fronts) + len(backs)


def test_equal_glyphs_are_equal_whoever_shaped_them_and_whatever_they_say() -> None:
    again = TextLine(2.0, tuple((x, silent(run)) for x, run in WORDS.runs))
    pieces = [replace(PIECE, id=str(n), art=written(line)) for n, line in enumerate((WORDS, again, WORDS))]
    taken = Fingerprints()
    assert len({taken.of(piece, CARD) for piece in pieces}) == 1
    assert fingerprint(pieces[1]) == fingerprint(pieces[0]), "what was drawn before is no matter"


def test_numbers_are_equal_however_they_are_written() -> None:
    whole, broken = (Filled(Path.line(Point(0, 0), Point(*end)), BLACK) for end in ((3, 4), (3.0, 4.0)))
    assert fingerprint(replace(PIECE, art=whole)) == fingerprint(replace(PIECE, art=broken))


@pytest.mark.parametrize("what", ["cuts", "trims", "scores", "perforations", "holes"])
def test_whatever_is_cut_otherwise_has_another_shape_only(what: str) -> None:
    hole = Rect(2, 2, 3, 3).corners
    lines = (hole,) if what == "holes" else (Stroke(hole[0], hole[1]),)
    one, other = fingerprint(PIECE), fingerprint(replace(PIECE, flat=replace(PIECE.flat, **{what: lines})))
    assert (one.art, one.paper) == (other.art, other.paper)
    assert one.shape != other.shape


class Once:
    """Art that may be drawn once."""

    def __init__(self, art: Art) -> None:
        self.left = [art]

    def draw(self, canvas: Canvas) -> None:
        self.left.pop().draw(canvas)


@pytest.mark.parametrize("art", DIFFERENT)
def test_what_is_watched_is_drawn_as_it_is_and_not_again_for_its_fingerprint(art: Art) -> None:
    plain = replace(PIECE, art=art, reverse=Group((Imported(PAGE, Rect(0, 0, 1, 1)), DOTS, art), Transform(a=2.0)))
    taken = Fingerprints()
    once = replace(plain, art=Once(plain.art), reverse=Once(plain.reverse))
    watched = taken.watched(once)
    assert record(watched.art) == record(plain.art)
    assert record(watched.reverse) == record(plain.reverse)
    assert taken.of(once, CARD) == fingerprint(plain)
    assert watched.two_sided
    assert not taken.watched(PIECE).two_sided
