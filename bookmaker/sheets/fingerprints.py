"""Fingerprints of pieces: equal for what is cut, printed and laid on paper alike, wherever on a sheet it lies."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from typing import NamedTuple

from ..ground.drawing import Art, Colour, Pen
from ..ground.geometry import Path, Point, Rect, Transform
from ..ground.imported import ImportedPage
from ..ground.pictures import Picture
from ..ground.typefaces import TextLine
from ..paper.stock import Stock, calibration
from .piece import Piece

__all__ = ["Fingerprint", "fingerprint_of"]

DIGITS = 16
"""Hexadecimal digits of each part: that two pieces of any shelf share them by chance is not to be expected."""


class Fingerprint(NamedTuple):
    """Digests of a piece: its outline, folds and panels; what is drawn on it; its paper and printer.

    Its label is not in it, for a label lies outside the piece: a book that goes by another number is the same.
    """

    shape: str
    art: str
    paper: str


def fingerprint_of(piece: Piece, stock: Stock) -> Fingerprint:
    """The fingerprint of a piece that is printed on a stock."""
    flat = piece.flat
    shape = repr((flat.kind, flat.outline, flat.folds, flat.panels, flat.grain, flat.bleed, flat.cuts, flat.trims,
                  flat.marks))  # fmt: skip
    drawn = _Digest()
    for side in (piece.art, piece.reverse):
        drawn.note("side")
        side.draw(drawn)
    paper = repr(
        (stock.name, stock.film if flat.finished else 0.0, stock.printed_on, calibration(stock.printer, stock.sheet))
    )
    return Fingerprint(_short(shape.encode()), drawn.digest(), _short(paper.encode()))


def _short(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()[:DIGITS]


class _Digest:
    """A canvas that takes the digest of all that is drawn on it."""

    def __init__(self) -> None:
        self._hash = hashlib.sha256()

    def digest(self) -> str:
        """Of all so far."""
        return self._hash.hexdigest()[:DIGITS]

    def note(self, *parts: object) -> None:
        """Take one more thing into account."""
        self._hash.update(repr(parts).encode("utf-8", "surrogatepass"))

    def fill(self, path: Path, colour: Colour) -> None:
        """A filled outline."""
        self.note("fill", path.commands, tuple(colour))

    def stroke(self, path: Path, pen: Pen) -> None:
        """A line."""
        self.note("stroke", path.commands, pen.width, tuple(pen.colour), pen.dash)

    def text(self, line: TextLine, at: Point, colour: Colour) -> None:
        """A line of text, by its glyphs: what it says is no matter."""
        runs = [(x, run.typeface.digest, [glyph[:4] for glyph in run.glyphs]) for x, run in line.runs]
        self.note("text", line.size, line.tracking, runs, tuple(at), tuple(colour))

    def picture(self, picture: Picture, into: Rect) -> None:
        """A picture, by what its file holds."""
        self.note("picture", picture.key, tuple(into))

    def imported(self, page: ImportedPage, into: Rect) -> None:
        """A page of a PDF, by what its file holds."""
        self.note("imported", page.digest, page.index, tuple(into))

    def repeat(self, art: Art, bounds: Rect, places: Sequence[Point]) -> None:  # noqa: ARG002 (they follow from the art)
        """Repeated art, once, and its places."""
        self.note("repeat", places)
        art.draw(self)
        self.note("repeated")

    @contextmanager
    def placed(self, transform: Transform, clip: Path | None = None) -> Iterator[None]:
        """What stands elsewhere, or is clipped."""
        self.note("placed", transform, clip and clip.commands)
        yield
        self.note("end")

    @contextmanager
    def layer(self, title: str) -> Iterator[None]:
        """What belongs to a layer."""
        self.note("layer", title)
        yield
        self.note("end")
