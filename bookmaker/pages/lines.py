"""Paragraphs as lines: broken, filled to the margin or left ragged, with an account of what is set."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from .boxes import LETTER_BREAK, LOOSENING, TIGHTENING, Boxes
from .breaking import Glue, break_paragraph
from .fount import Fount
from .matter import SetLine

__all__ = ["Lines", "Measures"]

EMPTIEST = 8.0
"""Lines of a greater stretch ratio are left short: their spaces would be five times as wide as usual."""

EVENING_STEPS = 8
"""Halvings in the search for the narrowest measure of lines that are to be alike."""


@dataclass
class Measures:
    """How the lines of a passage lie: mm from the left, the width of each, the last one for all that follow."""

    x: float
    widths: tuple[float, ...]
    indent: float = 0.0


class Lines:
    """Sets paragraphs in lines, one after the other.

    `done` counts the words that are set; `short` are the lines that do not reach the margin, though they should.
    """

    def __init__(self, fount: Fount) -> None:
        self.fount = fount
        self.done = 0
        self.short: list[str] = []

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
        narrowest = self._evened(words, boxes, measure / size)
        lines = []
        for line in self.broken(words, boxes, boxes.ragged, (narrowest,), 0.0):
            width = self.width(line.words) * size
            lines.append(line._replace(x=max(0.0, (measure - width) / 2), gap=0.0))
        return tuple(lines)

    def broken(
        self, words: Sequence[str], boxes: Boxes, glue: Glue, widths: tuple[float, ...], indent: float = 0.0
    ) -> Iterator[SetLine]:
        """The lines of a paragraph, in ems."""
        lines = break_paragraph([boxes[word] for word in words], glue, widths, indent)
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

    def _evened(self, words: Sequence[str], boxes: Boxes, measure: float) -> float:
        """The narrowest measure, in ems, of no more lines than the whole measure needs."""
        placed = [boxes[word] for word in words]

        def count(width: float) -> int:
            return len(break_paragraph(placed, boxes.ragged, (width,)))

        fewest = count(measure)
        narrow, wide = max(box.width for box in placed), measure
        for _ in range(EVENING_STEPS if fewest > 1 and narrow < wide else 0):
            middle = (narrow + wide) / 2
            if count(middle) <= fewest:
                wide = middle
            else:
                narrow = middle
        return wide

    def _eased(self, text: str, boxes: Boxes, short: float) -> tuple[float, float]:
        """What each space and each letter of a line gains, in ems, if it is to gain so much in all.

        Letters help where spaces alone would be too wide or too narrow. A line that would have more gap than
        words is kept short.
        """
        glue, spaces = boxes.justified, text.count(" ")
        over = max(short - glue.stretch * spaces, min(0.0, short + glue.shrink * spaces))
        tracking = 0.0
        if over and glue.loosening:
            letters = self.fount.letters(text) - 1
            if letters > 0:
                tracking = min(max(over / letters, -TIGHTENING), LOOSENING)
                short -= tracking * letters
        gap = short / spaces if spaces else 0.0
        if gap > glue.stretch * EMPTIEST:
            self.short.append(text)
            return glue.stretch, 0.0
        return gap, tracking

    def _short(self, text: str, boxes: Boxes, room: float, *, loose: bool) -> float:
        """What a line lacks, in ems; one that need not reach the margin lacks nothing."""
        lacking = room + boxes.right_hang(text.rpartition(" ")[2]) - self.width(text)
        return min(lacking, 0.0) if loose else lacking
