"""Typefaces: text shaped by HarfBuzz, measured in ems.

A run is a stretch of text in one typeface, shaped: kerned, with ligatures, every glyph in place. It is free
of size; a line of text gives it one. Each glyph keeps the characters it stands for, so that what is printed
can be searched and copied again.
"""

from __future__ import annotations

import hashlib
import math
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import chain, groupby, pairwise
from operator import attrgetter
from pathlib import Path
from typing import Any, NamedTuple, NoReturn

import uharfbuzz as hb
from fontTools.ttLib import TTFont

from ..problems import Problem, ShelfFileError
from ..quantities import show
from ..scripts import in_visual_order, stretches
from ..visible import composed
from .clusters import shared
from .contours import outlining

__all__ = ["FETCH_AGAIN", "Glyph", "Run", "TextLine", "Typeface", "set_line"]

X_HEIGHT, CAP_HEIGHT = 0.5, 0.7
"""Shares of the ascent where a font has no Latin letters and does not say (common practice, no source)."""

HIGHEST = 2.0
"""No letter is higher than so many ems."""

GROWTH = 20
"""So many glyphs a character may become; for the letters of India there are five or six."""

FETCH_AGAIN = "fetch the font file again from where it came"

MOST_RUNS = 20_000
"""Runs a typeface remembers; a book's vocabulary fits, its whole text need not."""


class Glyph(NamedTuple):
    """One glyph in its place: number in the typeface, advance and shift in ems, and what it stands for (`clusters`)."""

    gid: int
    advance: float
    dx: float
    dy: float
    text: str


@dataclass(frozen=True, slots=True)
class Run:
    """Shaped text in one typeface, glyphs from left to right; `width` in ems."""

    typeface: Typeface
    text: str
    glyphs: tuple[Glyph, ...]
    width: float

    @property
    def top(self) -> float:
        """The highest ink over the baseline, in ems; 0 for a blank."""
        return max((top for _, top in self._inked()), default=0.0)

    @property
    def bottom(self) -> float:
        """The lowest ink, in ems, negative under the baseline; 0 for a blank."""
        return min((bottom for bottom, _ in self._inked()), default=0.0)

    @property
    def left(self) -> float:
        """Where its ink begins, in ems from its left end; 0 for a blank."""
        return min((left for left, _ in self._inked_across()), default=0.0)

    @property
    def right(self) -> float:
        """Where its ink ends, in ems from its left end; 0 for a blank."""
        return max((right for _, right in self._inked_across()), default=0.0)

    def _inked(self) -> Iterator[tuple[float, float]]:
        for glyph in self.glyphs:
            bottom, top = self.typeface.extent(glyph.gid)
            if top > bottom:
                yield bottom + glyph.dy, top + glyph.dy

    def _inked_across(self) -> Iterator[tuple[float, float]]:
        x = 0.0
        for glyph in self.glyphs:
            left, right = self.typeface.breadth(glyph.gid)
            if right > left:
                yield x + glyph.dx + left, x + glyph.dx + right
            x += glyph.advance


@dataclass(frozen=True, slots=True)
class TextLine:
    """Runs on one baseline: `size` is the em in mm, each run comes with the x of its left end in mm.

    Within a run the glyphs after the first stand `tracking` mm further from the one before than usual.
    """

    size: float
    runs: tuple[tuple[float, Run], ...]
    tracking: float = 0.0

    @property
    def width(self) -> float:
        """How far the line reaches, in mm."""
        track = self.tracking
        return max((x + run.width * self.size + track * (len(run.glyphs) - 1) for x, run in self.runs), default=0.0)

    @property
    def text(self) -> str:
        """What the line says."""
        return "".join(run.text for _, run in self.runs)


class Typeface:
    """A usable TrueType or OpenType font file. Measures are in ems; `descent` is negative.

    `features` are the tags of its glyph substitutions: ``smcp`` where it has small capitals. `characters` are those it
    has, as numbers of Unicode, in their order. Its edges lie `thicker` ems outside those of its file, and its letters
    are `wider` than there (`cuts`); its outlines may be `redrawn`.
    """

    thicker, wider, redrawn = 0.0, 0.0, False

    def __init__(self, path: Path, data: bytes, tables: TTFont) -> None:
        self.path = path
        self.data = data
        self.name: str = tables["name"].getBestFullName() or path.stem
        self.units_per_em: int = tables["head"].unitsPerEm
        self.ascent: float = tables["hhea"].ascent / self.units_per_em
        self.descent: float = tables["hhea"].descent / self.units_per_em
        found = tables["GSUB"].table.FeatureList if "GSUB" in tables else None
        self.features = frozenset[str](record.FeatureTag for record in (found.FeatureRecord if found else ()))
        face = hb.Face(hb.Blob(data))
        self._font: Any = hb.Font(face)
        self.characters: tuple[int, ...] = tuple(sorted(face.unicodes))
        self._characters = frozenset(self.characters)
        self._runs: dict[tuple[str, tuple[str, ...], str, bool], Run] = {}
        self._extents: dict[int, tuple[float, float]] = {}
        self._glyphs: dict[Glyph, Glyph] = {}
        self.x_height: float = self._height("sxHeight", "x", X_HEIGHT, tables)
        self.cap_height: float = self._height("sCapHeight", "H", CAP_HEIGHT, tables)

    @cached_property
    def digest(self) -> str:
        """What tells its file from all others (SHA-256)."""
        return hashlib.sha256(self.data).hexdigest()

    def __repr__(self) -> str:
        return f"Typeface({self.name!r})"

    def covers(self, char: str) -> bool:
        """Whether the typeface can print a character; spaces and invisible signs can always be set.

        An accented letter is covered if its parts are.
        """
        if ord(char) in self._characters or char.isspace() or unicodedata.category(char) == "Cf":
            return True
        parts = unicodedata.normalize("NFD", char)
        return len(parts) > 1 and all(ord(part) in self._characters for part in parts)

    def missing(self, text: str) -> list[str]:
        """The characters of a text that cannot be printed, each once, in their order."""
        lost = {char for char in composed(text) if not self.covers(char)}
        # A mark without a glyph of its own does no harm where it joins its letter.
        lost.update(part for char in tuple(lost) for part in unicodedata.normalize("NFD", char))
        return [char for char in dict.fromkeys(text) if char in lost and not self.covers(char)]

    def shape(
        self, text: str, *, features: tuple[str, ...] = (), language: str = "", right_to_left: bool = False
    ) -> Run:
        """Set a text with kerning and ligatures.

        `features` are OpenType tags to switch on, or off with a leading hyphen: ``("smcp", "-liga")``.
        `language` is a BCP 47 tag. With `right_to_left` the text reads from the right; Latin words and
        numbers in it still run from left to right.

        Raises:
            ShelfFileError: the typeface makes glyphs without end of it.
        """
        key = (text, features, language, right_to_left)
        run = self._runs.get(key)
        if run is None:
            if len(self._runs) >= MOST_RUNS:
                self._runs.clear()
            run = self._runs[key] = self._shaped(*key)
        return run

    def advance(self, gid: int) -> float:
        """The usual advance of a glyph, in the units of the typeface."""
        advance: int = self._font.get_glyph_h_advance(gid)
        return advance

    def extent(self, gid: int) -> tuple[float, float]:
        """The lowest and the highest ink of a glyph, in ems; equal for a blank."""
        found = self._extents.get(gid)
        if found is None:
            ink = self._font.get_glyph_extents(gid)
            top = ink.y_bearing / self.units_per_em if ink else 0.0
            found = self._extents[gid] = (top + (ink.height / self.units_per_em if ink else 0.0), top)
        return found

    def draws(self, gid: int) -> bool:
        """Whether a glyph can be drawn within the bounds that HarfBuzz sets to programs of outlines; blanks can."""
        return self._font.get_glyph_extents(gid) is not None

    def breadth(self, gid: int) -> tuple[float, float]:
        """Where the ink of a glyph begins and ends, in ems from its left; equal for a blank."""
        ink = self._font.get_glyph_extents(gid)
        left = ink.x_bearing / self.units_per_em if ink else 0.0
        return left, left + (ink.width / self.units_per_em if ink else 0.0)

    def outline(self, gid: int) -> list[tuple[str | float, ...]]:
        """The outline of a glyph in the units of the typeface, y up: a path's commands, and ``Q x1 y1 x y`` besides."""
        commands: list[tuple[str | float, ...]] = []
        self._font.draw_glyph(gid, outlining(), commands)
        return commands

    def _height(self, field: str, letter: str, usual: float, tables: TTFont) -> float:
        """The height by the OS/2 table, or that of the letter itself, or a usual share of the ascent; never nought."""
        given: int = getattr(tables["OS/2"], field, 0) if "OS/2" in tables else 0
        if 0 < given <= HIGHEST * self.units_per_em:
            return given / self.units_per_em
        drawn = self.shape(letter).top if ord(letter) in self._characters else 0.0
        return drawn if 0 < drawn <= HIGHEST else usual * self.ascent

    def _shaped(self, text: str, features: tuple[str, ...], language: str, right_to_left: bool) -> Run:
        switches = {tag.removeprefix("-"): not tag.startswith("-") for tag in features}
        parts = stretches(text, right_to_left)
        shaped = [
            self._shape_part(text[start:end], script, "rtl" if level % 2 else "ltr", language, switches)
            for start, end, script, level in parts
        ]
        glyphs = tuple(glyph for place in in_visual_order([part.level for part in parts]) for glyph in shaped[place])
        return Run(self, text, glyphs, sum(glyph.advance for glyph in glyphs))

    def _shape_part(
        self, text: str, script: str, direction: str, language: str, features: dict[str, bool]
    ) -> list[Glyph]:
        buffer = hb.Buffer()
        buffer.cluster_level = hb.BufferClusterLevel.MONOTONE_CHARACTERS
        buffer.add_codepoints([ord(char) for char in text])
        buffer.script = script
        buffer.direction = direction
        if language:
            buffer.language = language
        try:
            hb.shape(self._font, buffer, features)
        except MemoryError:  # HarfBuzz has bounds of its own
            self._refuse(text)
        if len(buffer.glyph_infos) > GROWTH * len(text):
            self._refuse(text)
        return self._glyphs_of(text, buffer)

    def _refuse(self, text: str) -> NoReturn:
        told = f"{self.path.name} is damaged: it makes glyphs without end of {show(text)!r}"
        raise ShelfFileError((Problem(told, FETCH_AGAIN),))

    def _glyphs_of(self, text: str, buffer: Any) -> list[Glyph]:
        """The glyphs of a shaped buffer, each with the characters it stands for."""
        infos = buffer.glyph_infos
        starts = sorted({info.cluster for info in infos})
        said = {start: text[start:end] for start, end in pairwise([*starts, len(text)])}
        own, from_right = [said[info.cluster] for info in infos], buffer.direction == "rtl"
        if from_right or len(starts) < len(infos):
            together = [(its, [one.codepoint for one in some]) for its, some in groupby(infos, attrgetter("cluster"))]
            shares = (shared(said[start], gids, self._font.get_nominal_glyph, from_right) for start, gids in together)
            own = [*chain.from_iterable(shares)]
        glyphs = []
        for info, place, its in zip(infos, buffer.glyph_positions, own, strict=True):
            glyph = self._placed(info.codepoint, place, its)
            glyphs.append(self._glyphs.setdefault(glyph, glyph))
        return glyphs

    def _placed(self, gid: int, place: Any, said: str) -> Glyph:
        """A glyph where HarfBuzz placed it, and what it stands for."""
        em = self.units_per_em
        return Glyph(gid, place.x_advance / em, place.x_offset / em, place.y_offset / em, said)


def set_line(typeface: Typeface, size_mm: float, text: str, room: float = math.inf) -> TextLine:
    """A text on one line in one typeface; `size_mm` is the em, which becomes smaller if the line is longer than a room.

    >>> from .files import bundled
    >>> round(set_line(bundled("sans"), 2.0, "one mast", room=4.0).width, 6)
    4.0
    """
    run = typeface.shape(text)
    return TextLine(min(size_mm, room / run.width) if run.width else size_mm, ((0.0, run),))
