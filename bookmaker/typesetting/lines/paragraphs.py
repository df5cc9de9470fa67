"""Paragraphs as lines: broken, filled to the margin or left ragged, with an account of what is set."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..galleys.matter import SetLine
from ..galleys.remarks import Remarks
from .balance import LEANING, TIE, balanced, leans
from .bonds import boxed
from .boxes import LETTER_BREAK, LOOSENING, TIGHTENING, Boxes
from .breaking import Glue, break_paragraph
from .fount import Fount, as_read
from .ties import tied

__all__ = ["Lines", "Measures"]

EMPTIEST = 8.0
"""Lines of a greater stretch ratio are left short: their spaces would be five times as wide as usual."""


@dataclass
class Measures:
    """How the lines of a passage lie: mm from the left, the width of each, the last one for all that follow."""

    x: float
    widths: tuple[float, ...]
    indent: float = 0.0


class Lines:
    """Sets paragraphs in lines, one after the other.

    `done` counts the words that are set; `remarks` what was remarkable about them.
    """

    def __init__(self, fount: Fount, remarks: Remarks) -> None:
        self.fount = fount
        self.remarks = remarks
        self.done = 0

    def paragraph(
        self, text: str, measures: Measures, boxes: Boxes, size: float, *, justified: bool
    ) -> tuple[SetLine, ...]:
        """A paragraph in type of a size in mm."""
        glue = boxes.justified if justified else boxes.ragged
        widths = tuple(width / size for width in measures.widths)
        found = self.broken(text.split(" "), boxes, glue, widths, measures.indent / size)
        x, placed = measures.x, []
        for number, line in enumerate(found):
            indent = measures.indent if number == 0 else 0.0
            left, gap, tracking = x + indent + line.x * size, line.gap * size, line.tracking * size
            placed.append(line._replace(x=left, gap=gap, tracking=tracking))
        return tuple(placed)

    def centred(self, words: Sequence[str], boxes: Boxes, size: float, measure: float) -> tuple[SetLine, ...]:
        """Words on as few lines as `measure` mm need, about equally long, each in the middle."""
        return tuple(
            line._replace(x=max(0.0, (measure - self.width(line.words) * size) / 2), gap=0.0)
            for line in self._balanced(words, boxes, measure / size + 1e-9)
        )

    def _balanced(self, words: Sequence[str], boxes: Boxes, measure: float) -> Iterator[SetLine]:
        widths = [boxes[word].width for word in words]
        if max(widths) > measure:
            yield from self.broken(words, boxes, boxes.ragged, (measure,))
            return
        leaning = [
            TIE if tied(word, after) else LEANING if leans(as_read(word), first=place == 0) else 0.0
            for place, (word, after) in enumerate(zip(words, (*words[1:], ""), strict=True))
        ]
        start, done = 0, self.done
        for end in balanced(widths, self.fount.space.width, measure, leaning):
            yield SetLine(" ".join(words[start:end]), 0.0, 0.0, done + end)
            start = end
        self.done = done + len(words)

    def broken(
        self, words: Sequence[str], boxes: Boxes, glue: Glue, widths: tuple[float, ...], indent: float = 0.0
    ) -> Iterator[SetLine]:
        """The lines of a paragraph, in ems."""
        lines = break_paragraph(boxed(words, boxes, ragged=glue is boxes.ragged), glue, widths, indent)
        done = self.done
        for number, line in enumerate(lines):
            text, last = boxes.text_of(line, words)
            hang = 0.0 if (number == 0 and indent) or line.opened is not None else boxes[words[line.first]].hang
            short = line.short
            if glue is boxes.justified and (line.opened is not None or not last):
                # the parts of a word have widths of their own: kerned anew, with a true hyphen
                room = widths[min(number, len(widths) - 1)] - (indent if number == 0 else 0.0)
                loose = number == len(lines) - 1 or boxes[words[line.last]].stops[line.closed].penalty >= LETTER_BREAK
                short = self._short(text, boxes, room + hang, loose=loose)
            gap, tracking = self._eased(text, boxes, short) if glue is boxes.justified else (0.0, 0.0)
            yield SetLine(text, -hang, gap, done + line.last + last, tracking)
        self.done = done + len(words)

    def width(self, text: str) -> float:
        """How wide words are with the spaces between them, in ems."""
        words = text.split(" ")
        return sum(map(self.fount.width, words)) + self.fount.space.width * (len(words) - 1)

    def _eased(self, text: str, boxes: Boxes, short: float) -> tuple[float, float]:
        """What each space and each letter of a line gains, in ems, if it is to gain so much in all.

        Letters help where spaces alone would be too wide or too narrow. A line that would have more gap than
        words is kept short.
        """
        glue, spaces = boxes.justified, text.count(" ")
        most = (glue.stretch if short > 0.0 else -glue.shrink) * spaces
        over, tracking = short - most, 0.0
        if over * short > 0.0 and glue.loosening:
            letters = self.fount.letters(text) - 1
            if letters > 0:
                tracking = min(max(over / letters, -TIGHTENING), LOOSENING)
                short -= tracking * letters
        gap = short / spaces if spaces else 0.0
        if gap > glue.stretch * EMPTIEST:
            self.remarks.short.append(text)
            return glue.stretch, 0.0
        return gap, tracking

    def _short(self, text: str, boxes: Boxes, room: float, *, loose: bool) -> float:
        """What a line lacks, in ems; one that need not reach the margin lacks nothing."""
        lacking = room + boxes.right_hang(text.rpartition(" ")[2]) - self.width(text)
        return min(lacking, 0.0) if loose else lacking
