"""Text set in a PDF: the codes of its glyphs, and the moves between them.

Text is addressed by codes of our own, one for every pair of a glyph and the characters it stands for, so
that searching and copying always give the text back (ISO 32000-1, 9.10): a ligature all its letters, and a
glyph shared by two characters whichever was meant. The embedded font holds its glyphs in the order of their
codes, which makes code, CID and glyph number one and the same (9.7.4); see ``embedding``.
"""

from __future__ import annotations

import io
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache

from fontTools.ttLib import TTFont

from ...ground.typefaces import Glyph, Run, Typeface
from .numbers import number

__all__ = ["EmbeddedFont", "SetText"]

MOST_RUNS = 20_000
"""Runs whose operands are remembered."""

ESCAPED = frozenset(b"()\\\r")
"""Bytes that would need an escape in a PDF string (7.3.4.2); codes with one of them are left out."""

LEAST_MOVE = 0.5
"""Glyphs may stand off by as much as the rounding of their widths, in thousandths of the em."""

Piece = tuple[float, bytes]
"""A piece of a TJ array, and how far it is raised, in ems."""

SetText = tuple[tuple[str, tuple[Piece, ...]], ...]
"""A run as stretches of pieces, nearly always one of one piece, not raised.

Each stretch has what it says, if its glyphs do not say that one after the other (ISO 32000-1, 14.9.4), else nothing.
"""


@lru_cache(maxsize=32)
def _tables_of(typeface: Typeface) -> TTFont:
    """The tables of a typeface, only read here, and unpacked once for all documents."""
    return TTFont(io.BytesIO(typeface.data), lazy=True)


class EmbeddedFont:
    """One typeface of a document and the codes given to its glyphs so far.

    `uses` holds for every code the glyph's number in the typeface and the characters it stands for; None
    where a code is left out.
    """

    def __init__(self, typeface: Typeface) -> None:
        self.typeface = typeface
        self.uses: list[tuple[int, str] | None] = [(0, "")]
        self.tables = _tables_of(typeface)
        self._codes: dict[tuple[int, str], tuple[bytes, int]] = {}
        self._set: dict[int, tuple[Run, SetText]] = {}
        self._level: dict[int, bytes] = {}

    def set_text(self, run: Run) -> SetText:
        """The operands that show a run: strings of codes with the moves that keep every glyph in place."""
        # Found again by identity, for a run is long to hash; holding on to the run keeps its id its own.
        known = self._set.get(id(run))
        if known is None:
            if len(self._set) >= MOST_RUNS:
                self._set.clear()
                self._level.clear()
            known = self._set[id(run)] = (run, self._encode(run.glyphs))
        return known[1]

    def level_text(self, words: Sequence[Run], space: Run, moved: bytes) -> bytes | None:
        """The operands that show words on the baseline, a space and a move between them; None if parts are raised."""
        known = self._level.get
        try:
            return (known(id(space)) + moved).join(map(known, map(id, words)))  # type: ignore[operator,arg-type]
        except TypeError:  # one of them is shown for the first time, or raised
            shown = [*map(self._on_baseline, words), self._on_baseline(space)]
        return None if None in shown else (shown.pop() + moved).join(shown)  # type: ignore[operator,arg-type]

    def _on_baseline(self, run: Run) -> bytes | None:
        stretches = self.set_text(run)
        if len(stretches) > 1 or (stretches and stretches[0][0]):
            return None
        pieces = stretches[0][1] if stretches else ()
        if len(pieces) > 1 or (pieces and pieces[0][0]):
            return None
        shown = self._level[id(run)] = pieces[0][1] if pieces else b""
        return shown

    def _encode(self, glyphs: Sequence[Glyph]) -> SetText:
        """The pieces of stretches that speak for themselves, and of those that do not."""
        return tuple((said, self._pieces(some)) for said, some in _stretches(glyphs))

    def _pieces(self, glyphs: Iterable[Glyph]) -> tuple[Piece, ...]:
        """Moves are in thousandths of the em, against the direction of writing (9.4.3)."""
        pieces: list[Piece] = []
        shown: list[bytes] = []
        codes, rise, behind = b"", 0.0, 0.0
        for glyph in glyphs:
            code, width = self._code_of(glyph)
            behind += 1000 * glyph.dx
            if glyph.dy != rise:
                shown += _string(codes)
                pieces += _piece(rise, shown)
                shown, codes, rise = [], b"", glyph.dy
            if abs(behind) > LEAST_MOVE:
                shown += (*_string(codes), number(-behind, 3))
                codes, behind = b"", 0.0
            codes += code
            behind += 1000 * (glyph.advance - glyph.dx) - width
        shown += _string(codes)
        if abs(behind) > 1e-6:
            # The space keeps it apart from a number that may follow.
            shown.append(number(-behind, 3) + b" ")
        return (*pieces, *_piece(rise, shown))

    def _code_of(self, glyph: Glyph) -> tuple[bytes, int]:
        """A glyph's code and the width of it that the document states."""
        use = (glyph.gid, glyph.text)
        known = self._codes.get(use)
        if known is None:
            while not ESCAPED.isdisjoint(len(self.uses).to_bytes(2)):
                self.uses.append(None)
            known = self._codes[use] = (len(self.uses).to_bytes(2), self.width(glyph.gid))
            self.uses.append(use)
        return known

    def width(self, gid: int) -> int:
        """A glyph's advance in thousandths of the em; whole, as some viewers read nothing finer."""
        return round(1000 * self.typeface.advance(gid) / self.typeface.units_per_em)


def _string(codes: bytes) -> tuple[bytes, ...]:
    return (b"(" + codes + b")",) if codes else ()


def _piece(rise: float, shown: list[bytes]) -> list[Piece]:
    return [(rise, b"".join(shown))] if shown else []


def _stretches(glyphs: Sequence[Glyph]) -> Iterator[tuple[str, Sequence[Glyph]]]:
    """The glyphs in stretches, each with the characters that several of them stand for together, if they do."""
    if all(glyph.text for glyph in glyphs):
        if glyphs:
            yield "", glyphs
        return
    start = 0
    for place, glyph in enumerate(glyphs):
        if glyph.text or place == 0:
            continue
        if glyphs[place - 1].text:  # the first of several
            if start < place - 1:
                yield "", glyphs[start : place - 1]
            start = place - 1
        if place + 1 == len(glyphs) or glyphs[place + 1].text:
            yield glyphs[start].text, glyphs[start : place + 1]
            start = place + 1
    if start < len(glyphs):
        yield "", glyphs[start:]
