"""Fingerprints of pieces: equal for what is cut, printed and laid on paper alike, wherever on a sheet it lies."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterator, Sequence
from contextlib import AbstractContextManager, contextmanager, nullcontext
from dataclasses import replace
from itertools import chain
from struct import pack
from typing import NamedTuple

from ..ground.drawing import Art, Canvas, Colour, Pen, Tag
from ..ground.geometry import Path, Point, Rect, Transform
from ..ground.imported import ImportedPage
from ..ground.pictures import Picture
from ..ground.typefaces import Run, TextLine
from ..paper.stock import Stock, calibration
from ..typesetting.word_line import WordLine
from .flat import Face
from .piece import Piece

__all__ = ["Fingerprint", "Fingerprints"]

DIGITS = 16
"""Hexadecimal digits of each part: that two pieces of any shelf share them by chance is not to be expected."""


class Fingerprint(NamedTuple):
    """Digests of a piece: its outline, folds and panels; what is drawn on it; its paper and printer.

    Its label is not in it, for a label lies outside the piece: a book that goes by another number is the same.
    """

    shape: str
    art: str
    paper: str


class Fingerprints:
    """Takes the fingerprints of pieces, and draws no side twice for that: covers are long to draw.

    What is `watched` has its art looked at while it is drawn for others; the rest is drawn when it is asked for.
    """

    def __init__(self) -> None:
        self._runs = _Runs()
        self._sides: dict[tuple[str, Face], str] = {}

    def watched(self, piece: Piece) -> Piece:
        """The same piece, whose fingerprint costs next to nothing once it is drawn."""
        front = _Watched(piece.art, self._digest, self._noted(piece, Face.FRONT))
        if not piece.two_sided:
            return replace(piece, art=front)
        return replace(
            piece, art=front, reverse=_Watched(piece.reverse, self._digest, self._noted(piece, Face.REVERSE))
        )

    def of(self, piece: Piece, stock: Stock) -> Fingerprint:
        """The fingerprint of a piece that is printed on a stock."""
        art = self._side(piece, Face.FRONT, piece.art) + self._side(piece, Face.REVERSE, piece.reverse)
        return Fingerprint(_short(_shape(piece)), _short(art), _short(_paper(piece, stock)))

    def _side(self, piece: Piece, face: Face, art: Art) -> str:
        if (piece.id, face) not in self._sides:
            drawn = self._digest()
            art.draw(drawn)
            self._noted(piece, face)(drawn)
        return self._sides[piece.id, face]

    def _digest(self) -> _Digest:
        return _Digest(self._runs)

    def _noted(self, piece: Piece, face: Face) -> Callable[[_Digest], None]:
        def note(drawn: _Digest) -> None:
            self._sides[piece.id, face] = drawn.digest()

        return note


class _Watched:
    """Art of which the digest is taken while it is drawn."""

    def __init__(self, art: Art, digest: Callable[[], _Digest], note: Callable[[_Digest], None]) -> None:
        self._art = art
        self._digest = digest
        self._note = note

    def draw(self, canvas: Canvas) -> None:
        """Draw it, and note its digest."""
        drawn = self._digest()
        self._art.draw(_Both(canvas, drawn))
        self._note(drawn)


def _shape(piece: Piece) -> str:
    flat = piece.flat
    return repr((flat.kind, flat.outline, flat.folds, flat.panels, flat.grain, flat.bleed, flat.cuts, flat.trims,
                 flat.marks, flat.holes, flat.scores, flat.perforations))  # fmt: skip


def _paper(piece: Piece, stock: Stock) -> str:
    film = stock.film if piece.flat.finished else 0.0
    return repr((stock.name, film, stock.printed_on, calibration(stock.printer, stock.sheet)))


def _short(told: str) -> str:
    return hashlib.sha256(told.encode()).hexdigest()[:DIGITS]


def _packed(what: str, numbers: Sequence[float]) -> bytes:
    """A word and numbers as bytes that no others have: writing numbers out in digits takes many times as long."""
    told = what.encode("utf-8", "surrogatepass")
    return pack(f"<2I{len(numbers)}d", len(told), len(numbers), *numbers) + told


class _Runs:
    """The digests of runs: a word stands in a book again and again, and a typeface shapes it once."""

    def __init__(self) -> None:
        self._known: dict[int, bytes] = {}
        self._kept: list[Run] = []

    def digests(self, runs: Sequence[Run], between: Run | None = None) -> bytes:
        """Of the glyphs of each and their places, what stands `between` any two as well: what they say is no matter."""
        parted = self._digest(between) if between else b""
        try:
            return parted.join(map(self._known.get, map(id, runs)))  # type: ignore[arg-type]  # if none is None
        except TypeError:
            return parted.join(map(self._digest, runs))

    def _digest(self, run: Run) -> bytes:
        known = self._known.get(id(run))
        if known is None:
            numbers = [number for glyph in run.glyphs for number in glyph[:4]]
            known = self._known[id(run)] = hashlib.sha256(_packed(run.typeface.digest, numbers)).digest()
            self._kept.append(run)  # so that no other can take its id
        return known


class _Digest:
    """A canvas that takes the digest of all that is drawn on it."""

    def __init__(self, runs: _Runs) -> None:
        self._hash = hashlib.sha256()
        self._runs = runs

    def digest(self) -> str:
        """Of all so far."""
        return self._hash.hexdigest()[:DIGITS]

    def note(self, what: str, *numbers: float) -> None:
        """Take one more thing into account."""
        self._hash.update(_packed(what, numbers))

    def outline(self, path: Path) -> None:
        """The commands of a path, by their letters, which tell how many numbers each has, and their numbers."""
        # command[0] is a letter, all after it are numbers
        letters = "".join([command[0] for command in path.commands])  # type: ignore[misc]
        self.note(letters, *[number for command in path.commands for number in command[1:]])  # type: ignore[arg-type]

    def fill(self, path: Path, colour: Colour) -> None:
        """A filled outline."""
        self.note("fill", *colour)
        self.outline(path)

    def veil(self, path: Path, colour: Colour, cover: float) -> None:
        """An outline filled with thin ink."""
        self.note("veil", cover, *colour)
        self.outline(path)

    def stroke(self, path: Path, pen: Pen) -> None:
        """A line."""
        self.note("stroke", pen.width, *pen.colour, *pen.dash)
        self.outline(path)

    def text(self, line: TextLine, at: Point, colour: Colour) -> None:
        """A line of text, by its runs."""
        if isinstance(line, WordLine):  # the same in fewer steps
            places, runs = line.places, self._runs.digests(line.words, line.space)
        else:
            places, runs = [x for x, _ in line.runs], self._runs.digests([run for _, run in line.runs])
        self.note("text", line.size, line.tracking, *at, *colour, *places)
        self._hash.update(runs)

    def picture(self, picture: Picture, into: Rect) -> None:
        """A picture, by what its file holds."""
        self.note(f"picture {picture.key}", *into)

    def imported(self, page: ImportedPage, into: Rect) -> None:
        """A page of a PDF, by what its file holds."""
        self.note(f"imported {page.digest}", page.index, *into)

    def repeat(self, art: Art, bounds: Rect, places: Sequence[Point]) -> None:  # noqa: ARG002 (they follow from the art)
        """Repeated art, once, and its places."""
        self.note("repeat", *chain.from_iterable(places))
        art.draw(self)
        self.note("repeated")

    @contextmanager
    def placed(self, transform: Transform, clip: Path | None = None) -> Iterator[None]:
        """What stands elsewhere, or is clipped."""
        self.note("placed", *transform)
        if clip:
            self.outline(clip)
        yield
        self.note("end")

    @contextmanager
    def layer(self, title: str) -> Iterator[None]:
        """What belongs to a layer."""
        self.note(f"layer {title}")
        yield
        self.note("end")

    def tagged(self, tag: Tag) -> AbstractContextManager[None]:  # noqa: ARG002 (what is printed is the same)
        """What a file says of its text is no matter."""
        return nullcontext()


class _Both:
    """A canvas that hands on whatever is drawn, to two others."""

    def __init__(self, one: Canvas, other: Canvas) -> None:
        self._one = one
        self._other = other

    def fill(self, path: Path, colour: Colour) -> None:
        """A filled outline."""
        self._one.fill(path, colour)
        self._other.fill(path, colour)

    def veil(self, path: Path, colour: Colour, cover: float) -> None:
        """An outline filled with thin ink."""
        self._one.veil(path, colour, cover)
        self._other.veil(path, colour, cover)

    def stroke(self, path: Path, pen: Pen) -> None:
        """A line."""
        self._one.stroke(path, pen)
        self._other.stroke(path, pen)

    def text(self, line: TextLine, at: Point, colour: Colour) -> None:
        """A line of text."""
        self._one.text(line, at, colour)
        self._other.text(line, at, colour)

    def picture(self, picture: Picture, into: Rect) -> None:
        """A picture."""
        self._one.picture(picture, into)
        self._other.picture(picture, into)

    def imported(self, page: ImportedPage, into: Rect) -> None:
        """A page of a PDF."""
        self._one.imported(page, into)
        self._other.imported(page, into)

    def repeat(self, art: Art, bounds: Rect, places: Sequence[Point]) -> None:
        """Repeated art."""
        self._one.repeat(art, bounds, places)
        self._other.repeat(art, bounds, places)

    @contextmanager
    def placed(self, transform: Transform, clip: Path | None = None) -> Iterator[None]:
        """What stands elsewhere, or is clipped."""
        with self._one.placed(transform, clip), self._other.placed(transform, clip):
            yield

    @contextmanager
    def layer(self, title: str) -> Iterator[None]:
        """What belongs to a layer."""
        with self._one.layer(title), self._other.layer(title):
            yield

    @contextmanager
    def tagged(self, tag: Tag) -> Iterator[None]:
        """What is said of some text."""
        with self._one.tagged(tag), self._other.tagged(tag):
            yield
