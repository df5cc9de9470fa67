"""Text in lines, word by word: every word is shaped once, however often the guide says it."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from functools import lru_cache

from ..ground.typefaces import Run, TextLine, Typeface, bundled, set_line
from ..typesetting.stand_ins import face_with

__all__ = ["wrapped"]

TOGETHER = re.compile(
    r"(?<=[\d_]) (?=(?:mm|cm²|g/m²|ml|m|in|sq|fl|mil|lb|%)(?:\W|$))|(?<=\d) (?=×)|(?<=×) (?=\d)|(?<=page) (?=\d)"
)
"""Blanks between a number and its unit, and around a sign between numbers: there no line ends."""


MEASURE = re.compile(r"\d\.\d|\d\N{NO-BREAK SPACE}(?:mm|cm|in|mil)\b|^\([a-z]\)|^Caution:")
"""A word that says how long something is, or stands for it, or that warns."""


@lru_cache(maxsize=4096)
def wrapped(text: str, face: str, size: float, width: float, strong: str = "") -> tuple[TextLine, ...]:
    """A text in lines no wider than `width` mm, each as full as it goes; `face` is a bundled typeface.

    A word that is wider than the line by itself is broken where the line ends. Measures are set in the typeface
    `strong`, if one is named.
    """
    typeface = bundled(face)
    measures = bundled(strong or face)
    lines: list[TextLine] = []
    words: list[str] = []
    reached = 0.0
    for word in _short_enough(text, typeface, width / size):
        inked = measures if MEASURE.search(word) else typeface
        wide = _shaped(word, inked).width * size
        if words and reached + wide > width:
            lines.append(_line(words, typeface, measures, size))
            words, reached = [], 0.0
        words.append(word)
        reached += _shaped(f"{word} ", inked).width * size
    return (*lines, _line(words, typeface, measures, size))


def _shaped(word: str, typeface: Typeface) -> Run:
    """A word in its typeface, or in another that has its letters."""
    return (face_with(word, "sans") if typeface.missing(word) else typeface).shape(word)


def _line(words: list[str], typeface: Typeface, measures: Typeface, size: float) -> TextLine:
    """Words side by side; where some read from the right the line is set as a whole, for the sake of their order."""
    if any(unicodedata.bidirectional(char) in ("R", "AL") for word in words for char in word):
        whole = " ".join(words)
        return set_line(face_with(whole, "sans") if typeface.missing(whole) else typeface, size, whole)
    runs: list[tuple[float, Run]] = []
    x = 0.0
    for word in [*(f"{word} " for word in words[:-1]), *words[-1:]]:
        run = _shaped(word, measures if MEASURE.search(word) else typeface)
        runs.append((x, run))
        x += run.width * size
    return TextLine(size, tuple(runs))


def _short_enough(text: str, typeface: Typeface, most: float) -> Iterator[str]:
    """The words, those wider than `most` ems in parts."""
    for word in TOGETHER.sub("\N{NO-BREAK SPACE}", text).split(" "):
        rest = word
        while len(rest) > 1 and typeface.shape(rest).width > most:
            kept = max(1, int(len(rest) * most / typeface.shape(rest).width))
            while kept > 1 and typeface.shape(rest[:kept]).width > most:
                kept -= 1
            yield rest[:kept]
            rest = rest[kept:]
        yield rest
