"""A fount: the typefaces of a text in its styles, and its words, each shaped once.

A word is a string. A sign of `Style` in it says how the letters after it are set; every word begins in roman.
So ``\\x01lamp\\x00,`` is a lamp in italic with a roman comma. Widths are ems: one fount serves every size.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import cached_property, partial
from itertools import accumulate, groupby

from ...ground.kept import digest
from ...ground.scripts import in_visual_order
from ...ground.type_styles import Style
from ...ground.typefaces import Run, TextLine, Typeface, is_dotted
from ..word_line import WordLine
from .hyphens import SOFT_HYPHEN, Parting, has_seam, partings, partings_at_blanks
from .kashida import DRAWN_OUT_IN, TATWEEL
from .solid import closed_up, is_solid

__all__ = ["ADDED_HYPHEN", "KEPT_BLANK", "MOST_WORDS", "NOTE_FIGURES", "SIGNS", "Fount", "Style", "as_read"]


SIGNS = re.compile("[" + "".join(Style) + "]")

NOTE_FIGURES = re.compile(Style.SUPERIOR + r"[^\x00-\x06 ]*")
"""What tells of a note."""

FEATURES = {Style.SMALL_CAPITALS: "smcp", Style.SUPERIOR: "sups"}
"""The glyphs of a typeface that serve a style (OpenType tags)."""

UNSEEN = re.compile(f"[{''.join(Style)}{SOFT_HYPHEN}]+")

ADDED_HYPHEN = SOFT_HYPHEN * 2
"""The end of a part of a word: printed as a hyphen, but a soft one to whoever copies the text and wants words whole."""

KEPT_BLANK = "\u00a0"
"""A blank of a line of typewriting that is kept as it is: as wide as its letters, and a place to part it."""

MOST_WORDS = 50_000
"""So many shaped words are kept: the vocabulary of a large shelf, but not endless lists."""


def as_read(text: str) -> str:
    """A text without the signs for styles and the soft hyphens."""
    return UNSEEN.sub("", text)


class Fount:
    """Type in the styles of a text; `language` is a tag of `hyphens`, or None for words that are left whole.

    `spoken` is the tag (BCP 47) of the language that letters and ligatures are chosen for, hyphens or none. A typeface
    may `stand_in` for what others lack. What it is `known_as` tells it from others, if its typefaces alone do not.
    Letters and spaces may be `tracked` apart.
    """

    tracking = 0.0

    def __init__(
        self,
        faces: Mapping[Style, Typeface],
        language: str | None,
        spoken: str = "",
        *,
        right_to_left: bool = False,
        stand_in: Typeface | None = None,
        known_as: str = "",
    ) -> None:
        self.faces = faces
        self.language = language
        self.spoken = spoken
        self.right_to_left = right_to_left
        self.stand_in = stand_in
        self.known_as = known_as
        self.solid = is_solid(spoken)
        self.roman = faces[Style.ROMAN]
        drawn_out = spoken.partition("-")[0] in DRAWN_OUT_IN and self.roman.covers(TATWEEL)
        self.tatweel = self.roman.shape(TATWEEL).width if drawn_out else 0.0
        self.space = self.roman.shape(" ")
        self.hyphen = "-" if self.roman.covers("-") else "\u2010"
        self._runs: dict[str, tuple[Run, ...]] = {}
        self._plain = _PlainWords(self)
        self._letters = _Letters(self)
        self._partings: dict[str, list[Parting]] = {}
        self._signs: dict[str, list[tuple[int, str]]] = {}

    def tracked(self, tracking: float) -> Fount:
        """The same type, shaped once, set wider by so many ems; not if its letters must keep their distances."""
        if not tracking or self.right_to_left or self.solid:
            return self
        fount = object.__new__(Fount)
        fount.__dict__ |= {name: value for name, value in self.__dict__.items() if name != "key"}
        fount.tracking = tracking
        return fount

    @cached_property
    def key(self) -> str:
        """What stands for all that words set in it depend on."""
        if self.known_as:
            return digest(self.known_as, self.tracking)
        faces = sorted((str(style), face.digest) for style, face in self.faces.items())
        stand_in = self.stand_in and self.stand_in.digest
        return digest(faces, self.language, self.spoken, self.right_to_left, stand_in, self.tracking)

    @cached_property
    def slanted(self) -> bool:
        """Whether there is an italic; dots beside letters are for stress alone."""
        return Style.ITALIC in self.faces and not is_dotted(self.faces[Style.ITALIC])

    def __reduce__(self) -> tuple[Callable[..., Fount], tuple[object, ...], dict[str, float]]:
        """A fount in another process: its words are shaped anew there."""
        right_to_left, stand_in, known_as = self.right_to_left, self.stand_in, self.known_as
        again = partial(Fount, right_to_left=right_to_left, stand_in=stand_in, known_as=known_as)
        return again, (self.faces, self.language, self.spoken), {"tracking": self.tracking}

    @property
    def word_space(self) -> float:
        """How wide the space between two words is, in ems."""
        return self.space.width + self.tracking

    def runs(self, word: str) -> tuple[Run, ...]:
        """The parts of a word, each in one style, as they stand from left to right."""
        runs = self._runs.get(word)
        if runs is None:
            if len(self._runs) >= MOST_WORDS:
                self._runs.clear()
            runs = self._runs[word] = tuple(self._shaped(word))
        return runs

    def width(self, word: str) -> float:
        """How wide a word is, in ems, with the white after its last letter if it is `tracked`."""
        runs = self.runs(word)
        width = runs[0].width if len(runs) == 1 else sum(run.width for run in runs)
        return width + self.after(word) * self._letters[word] if self.tracking else width

    def after(self, words: str) -> float:
        """How far apart the letters of a line of words are tracked, in ems: as much white is after the last one.

        What is typewritten stands letter under letter.
        """
        return self.tracking if self.tracking and Style.TYPEWRITER not in words and self.letters(words) else 0.0

    def line_width(self, words: str) -> float:
        """How wide words are with the spaces between them, in ems."""
        parts = words.split(" ")
        width = sum(run.width for word in parts for run in self.runs(word)) + self.space.width * (len(parts) - 1)
        return width + self.after(words) * (self.letters(words) - 1) if self.tracking else width

    def partings(self, word: str) -> Sequence[Parting]:
        """Where a word may be parted."""
        found = self._partings.get(word)
        if found is None:
            if len(self._partings) >= MOST_WORDS:
                self._partings.clear()
            if word.startswith(Style.TYPEWRITER) and KEPT_BLANK in word:
                found = list(partings_at_blanks(word, KEPT_BLANK))
            else:
                found = [] if self.right_to_left else partings(word, self.language)
            self._partings[word] = found
        return found

    def offset(self, word: str, at: int) -> float:
        """How far from its left the character `at` of a word begins, in ems."""
        run, *others = self.runs(word)
        if not others and len(run.text) == len(word):
            reached, x, apart = 0, 0.0, self.after(word)
            for glyph in run.glyphs:
                if reached >= at:
                    break
                reached += len(glyph.text)
                x += glyph.advance + apart
            if reached == at:
                return x
        return self.width(word[:at])  # inside a ligature, or styled

    def reaches(self, word: str) -> dict[int, float]:
        """How far from its left the characters of a word begin, in ems, all at once: words may be long as a paragraph.

        Those that begin no glyph are left out; of a word in several styles, or read from the right, all are.
        """
        runs = () if self.right_to_left else self.runs(word)
        glyphs = [glyph for run in runs for glyph in run.glyphs]
        reached = accumulate((len(glyph.text) for glyph in glyphs), initial=0)
        apart = self.after(word)
        across = accumulate((glyph.advance + apart for glyph in glyphs), initial=0.0)
        return dict(zip(reached, across, strict=True)) if sum(len(run.text) for run in runs) == len(word) else {}

    def part(self, word: str, start: int, end: int, *, hyphened: bool = False) -> str:
        """The characters from `start` to before `end` as a word of their own; an added hyphen is a soft one."""
        signs = self._signs.get(word)
        if signs is None:
            signs = self._signs[word] = [(found.end(), found[0]) for found in SIGNS.finditer(word)]
        style = next((sign for at, sign in reversed(signs) if at <= start), "")
        return style + word[start:end] + (ADDED_HYPHEN if hyphened else "")

    def letters(self, words: str) -> int:
        """How many glyphs a line of words has, spaces too; 0 if they must keep their distances.

        Marks stand on the letter before them, and letters read from the right may be joined.
        """
        counts = list(map(self._letters.__getitem__, words.split(" ")))
        return sum(counts) + len(counts) - 1 if all(counts) else 0

    def line(self, words: str, size: float, gap: float = 0.0, tracking: float = 0.0) -> TextLine:
        """Words parted by single spaces, set on a line from x = 0; each space is `gap` mm wider than usual.

        Every glyph but the last is followed by `tracking` mm besides.
        """
        if not self.right_to_left:
            plain = tuple(map(self._plain.__getitem__, words.split(" ")))
            if all(plain):
                return WordLine(size, plain, self.space, gap, tracking)  # type: ignore[arg-type]  # none of them is None
        space, x = self.space, 0.0
        step = space.width * size + gap + tracking
        placed: list[tuple[float, Run]] = []
        for word in self._from_left(words.split(" ")):
            for run in self.runs(word):
                placed.append((x, run))
                x += run.width * size + tracking * len(run.glyphs)
            placed.append((x, space))
            x += step
        return TextLine(size, tuple(placed[:-1]), tracking)

    def _from_left(self, words: list[str]) -> list[str]:
        """The words in the order in which they stand on the line."""
        if not self.right_to_left:
            return words
        return [words[place] for place in in_visual_order([_level(word) for word in words])]

    def _run(self, face: Typeface, text: str, features: tuple[str, ...]) -> Run:
        """A part of a word in one style."""
        softly = text.endswith(ADDED_HYPHEN)
        text = text.replace(SOFT_HYPHEN, "") + (self.hyphen if softly else "")
        if has_seam(text, self.spoken):
            features = (*features, "-liga")
        run = face.shape(text, features=features, language=self.spoken, right_to_left=self.right_to_left)
        run = closed_up(run) if self.solid else run
        return replace(run, glyphs=(*run.glyphs[:-1], run.glyphs[-1]._replace(text=SOFT_HYPHEN))) if softly else run

    def _runs_of(self, face: Typeface, text: str, features: tuple[str, ...]) -> Iterator[Run]:
        """A part of a word in one style; what the typeface lacks of it is set in the one that stands in for it."""
        if self.stand_in is None or all(map(face.covers, text)):
            yield self._run(face, text, features)
            return
        stretches = [(own, "".join(signs)) for own, signs in groupby(text, face.covers)]
        for own, signs in reversed(stretches) if self.right_to_left and _level(text) == 1 else stretches:
            yield self._run(face if own else self.stand_in, signs, features)

    def _shaped(self, word: str) -> Iterator[Run]:
        if not SIGNS.search(word):
            features = ("-rlig",) if "^" in word else ()  # some faces raise the figure after it
            yield from self._runs_of(self.roman, word, features)
            return
        style = Style.ROMAN
        for part in re.split(f"({SIGNS.pattern})", word):
            if SIGNS.fullmatch(part):
                style = Style(part)
            elif part:
                face, feature = self.faces.get(style, self.roman), FEATURES.get(style)
                features = (feature,) if feature in self.roman.features else ()
                text = f"[{part}]" if style is Style.SUPERIOR and not features else part
                yield from self._runs_of(face, text, features)


class _PlainWords(dict[str, Run | None]):
    """The words that are one run of the roman; None for those in other styles."""

    def __init__(self, fount: Fount) -> None:
        super().__init__()
        self._fount = fount

    def __missing__(self, word: str) -> Run | None:
        if len(self) >= MOST_WORDS:
            self.clear()
        first, *others = self._fount.runs(word)
        plain = self[word] = first if not others and first.typeface is self._fount.roman else None
        return plain


class _Letters(dict[str, int]):
    """How many glyphs each word has; 0 for those that must keep their distances."""

    def __init__(self, fount: Fount) -> None:
        super().__init__()
        self._fount = fount

    def __missing__(self, word: str) -> int:
        if len(self) >= MOST_WORDS:
            self.clear()
        glyphs = [glyph for run in self._fount.runs(word) for glyph in run.glyphs]
        loose = not self._fount.right_to_left and all(glyph.advance for glyph in glyphs)
        count = self[word] = len(glyphs) if loose else 0
        return count


def _level(word: str) -> int:
    """The level of a word in a line that reads from the right: 2 if it reads from the left itself (UAX #9)."""
    sides = {unicodedata.bidirectional(sign) for sign in word}
    return 1 if sides & {"R", "AL"} or not sides & {"L", "EN", "AN"} else 2
