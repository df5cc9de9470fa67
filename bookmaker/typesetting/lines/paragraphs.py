"""Paragraphs as lines: broken, filled to the margin or left ragged, with what is remarkable about them."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from ..standing_type import standing_type
from .balance import LEANING, TIE, balanced, leans
from .bonds import boxed
from .boxes import LETTER_BREAK, Boxes
from .breaking import Glue, break_paragraph
from .fount import Fount, as_read
from .kashida import lengthened
from .set_lines import SetLine, SetLines
from .ties import tied

__all__ = ["Change", "Lines", "Measures"]

EMPTIEST = 9.0
"""Lines are left short if their spaces would be so many times as wide as usual: it is holes against a ragged edge."""


SPACES_FIRST = 0.5
"""How much of what spaces may gain at a ratio of 1 they do before words are drawn out (common practice: both share)."""

LOOSEST_SOLID = 0.5
"""Type that is set solid is left short where its signs would stand so many ems apart."""


class Measures(NamedTuple):
    """How the lines of a passage lie: mm from the left, the width of each, the last one for all that follow."""

    x: float
    widths: tuple[float, ...]
    indent: float = 0.0


class Change(NamedTuple):
    """What is asked of a paragraph: of how many lines it is, and the number of a word that is left whole."""

    lines: int | None = None
    whole: int | None = None


UNCHANGED = Change()


class Lines:
    """Sets paragraphs of a fount in lines; all lengths are in mm, and `size` is that of the type."""

    def __init__(self, fount: Fount) -> None:
        self.fount = fount

    def paragraph(self, text: str, measures: Measures, boxes: Boxes, size: float, *, justified: bool) -> SetLines:
        """A paragraph, set once in the same type on the same measure."""
        key = boxes.key, text, measures, size, justified
        glue = boxes.justified if justified else boxes.ragged
        return standing_type().paragraph(key, lambda: self.broken(text.split(" "), boxes, glue, measures, size))

    def recast(self, text: str, measures: Measures, boxes: Boxes, size: float, change: Change) -> SetLines | None:
        """A justified paragraph set in another way; None if that cannot be, or would be full of holes."""
        key, glue = (boxes.key, text, measures, size, change), boxes.justified
        other = standing_type().paragraph(
            key, lambda: self.broken(text.split(" "), boxes, glue, measures, size, change)
        )
        return other if other.lines and not other.short else None

    def centred(self, words: Sequence[str], boxes: Boxes, size: float, measure: float) -> SetLines:
        """Words on as few lines as a measure needs, about equally long, each in the middle."""
        found = self._balanced(words, boxes, measure / size + 1e-9)
        middle = (
            line._replace(
                x=max(0.0, (measure - self.width(line.words) * size) / 2),
                gap=0.0,
                tracking=self.fount.after(line.words) * size,
            )
            for line in found.lines
        )
        return found._replace(lines=tuple(middle))

    def _balanced(self, words: Sequence[str], boxes: Boxes, measure: float) -> SetLines:
        widths = [boxes[word].width for word in words]
        room = measure + self.fount.tracking  # the white after the last letter needs none
        if max(widths) > room:
            return self.broken(words, boxes, boxes.ragged, Measures(0.0, (measure,)))
        leaning = [
            TIE if tied(word, after) else LEANING if leans(as_read(word), first=place == 0) else 0.0
            for place, (word, after) in enumerate(zip(words, (*words[1:], ""), strict=True))
        ]
        ends = balanced(widths, self.fount.word_space, room, leaning)
        found = (SetLine(" ".join(words[start:end]), 0.0, 0.0, end) for start, end in pairwise((0, *ends)))
        return SetLines(tuple(found), boxes.parted(words))

    def broken(
        self,
        words: Sequence[str],
        boxes: Boxes,
        glue: Glue,
        measures: Measures,
        size: float = 1.0,
        change: Change = UNCHANGED,
    ) -> SetLines:
        """The lines of a paragraph; in type of size 1 all lengths are ems."""
        widths, indent = tuple(width / size for width in measures.widths), measures.indent / size
        placed_words = boxed(words, boxes, ragged=glue is boxes.ragged)
        if change.whole is not None:
            placed_words[change.whole] = placed_words[change.whole].whole
        lines = break_paragraph(placed_words, glue, widths, indent, change.lines)
        placed, short = list[SetLine](), list[str]()
        for number, line in enumerate(lines):
            text, last = boxes.text_of(line, words)
            opened = boxes.opened_hang(line, words) if line.opened is not None else placed_words[line.first].hang
            hang = 0.0 if number == 0 and indent else opened
            gap, tracking, apart = 0.0, 0.0, self.fount.after(text)
            if glue is boxes.justified:
                lacking = line.short
                untracked = self.fount.tracking and not apart
                if line.opened is not None or not last or untracked:
                    # the parts of a word have widths of their own: kerned anew, with a true hyphen
                    room = widths[min(number, len(widths) - 1)] - (indent if number == 0 else 0.0)
                    loose = (
                        number == len(lines) - 1 or boxes[words[line.last]].stops[line.closed].penalty >= LETTER_BREAK
                    )
                    lacking = self._lacking(text, boxes, room + hang, loose=loose)
                if self.fount.tatweel:
                    text, lacking = self._drawn_out(text, boxes, lacking)
                eased = self._eased(text, boxes, lacking)
                if eased is None:
                    short.append(text)
                gap, tracking = eased or (glue.stretch, 0.0)
            x = measures.x + (measures.indent if number == 0 else 0.0) - hang * size
            placed.append(SetLine(text, x, gap * size, line.last + last, (apart + tracking) * size))
        return SetLines(tuple(placed), boxes.parted(words), tuple(short))

    def _drawn_out(self, text: str, boxes: Boxes, lacking: float) -> tuple[str, float]:
        """An Arabic line with words drawn out by what its spaces need not take, and what it lacks then."""
        room = lacking - boxes.justified.stretch * text.count(" ") * SPACES_FIRST
        longer = lengthened(text, int(room / self.fount.tatweel)) if room > 0.0 else text
        return longer, lacking - (self.width(longer) - self.width(text)) if longer is not text else lacking

    def width(self, text: str) -> float:
        """How wide words are with the spaces between them, in ems."""
        return self.fount.line_width(text)

    def _eased(self, text: str, boxes: Boxes, short: float) -> tuple[float, float] | None:
        """What each space and each letter of a line gains, in ems, if it is to gain so much in all.

        Both gain alike, in shares of what they may. None if there would be more gap than words.
        """
        glue = boxes.justified
        spaces, letters = text.count(" "), self.fount.letters(text) - 1 if glue.loosening else 0
        if self.fount.solid and not spaces and letters > 0:
            tracking = short / letters
            return (0.0, tracking) if tracking <= LOOSEST_SOLID else None
        loose, tight = (glue.stretch, boxes.loosening), (glue.shrink, boxes.tightening)
        a_space, a_letter = loose if short > 0.0 else tight
        room = a_space * spaces + a_letter * max(0, letters)
        tracking = a_letter * max(-1.0, min(1.0, short / room)) if room and letters > 0 else 0.0
        gap = (short - tracking * letters) / spaces if spaces else 0.0
        return (gap, tracking) if gap <= glue.space * (EMPTIEST - 1.0) else None

    def _lacking(self, text: str, boxes: Boxes, room: float, *, loose: bool) -> float:
        """What a line lacks, in ems; one that need not reach the margin lacks nothing."""
        lacking = room + boxes.right_hang(text.rpartition(" ")[2]) - self.width(text)
        return min(lacking, 0.0) if loose else lacking
