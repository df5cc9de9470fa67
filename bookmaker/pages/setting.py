"""How a text is set: type, size, measure, lines to the page; and the page that is set so."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from ..drawing import BLACK, Canvas
from ..geometry import Point
from ..typefaces import TextLine, Typeface
from .page import PageFrame
from .wrapping import INDENTED, Line, Widths, word_runs, wrap

__all__ = ["Setting", "TextPage", "reach"]

WIDEST_INDENT = 0.25
"""A paragraph is indented by one em, in a narrow measure by this share of it."""


@dataclass(frozen=True, slots=True)
class Setting:
    """Type on pages: `size` (the em), `leading` (from line to line) and `measure` in mm.

    `above` is how far ink reaches over the first baseline, in mm: the first line hangs so from the top of
    the type area. Descenders of the last line stay inside it.
    """

    typeface: Typeface
    size: float
    leading: float
    measure: float
    above: float
    lines_per_page: int

    @classmethod
    def of(cls, typeface: Typeface, size: float, leading: float, frame: PageFrame) -> Setting:
        """Type of a size on the pages of a frame; `leading` is a multiple of the size."""
        area = frame.type_area(1)
        above, below = reach(typeface)
        room = area.height - (above + below) * size
        lines = 1 + math.floor(room / (leading * size) + 1e-9) if room >= -1e-9 else 0
        return cls(typeface, size, leading * size, area.width, above * size, lines)

    @property
    def indent(self) -> float:
        """Indent of a paragraph in mm."""
        return min(self.size, self.measure * WIDEST_INDENT)

    def lines(self, text: str) -> Iterator[Line]:
        """A manuscript's text in lines of this setting."""
        # the slack lets a line that fills the measure exactly pass in spite of rounding
        measure = self.measure / self.size + 1e-9
        return wrap(text, Widths(self.typeface), measure, self.indent / self.size)

    def text_line(self, words: str) -> TextLine:
        """The words of a line, shaped, each word and each space a run of its own."""
        runs, size = word_runs(self.typeface), self.size
        space = runs[" "]
        gap = space.width * size
        x, placed = 0.0, []
        for word in words.split(" "):
            run = runs[word]
            placed += [(x, run), (x := x + run.width * size, space)]
            x += gap
        return TextLine(size, tuple(placed[:-1]))


def reach(typeface: Typeface) -> tuple[float, float]:
    """How far letters reach over and under the baseline, in ems: capitals and ascenders, descenders."""
    return max(typeface.cap_height, typeface.shape("dfl").top), max(0.0, -typeface.shape("gjpqy").bottom)


@dataclass(frozen=True, slots=True)
class TextPage:
    """One page of set text: its lines as plain text, a line of print each, shaped when they are drawn.

    Shelves of hundreds of books are held in memory, so a page is one string and three references.
    """

    setting: Setting
    frame: PageFrame
    number: int
    lines: str

    def draw(self, canvas: Canvas) -> None:
        """Set the lines from the top of the type area down."""
        setting, area = self.setting, self.frame.type_area(self.number)
        baseline = area.top - setting.above
        for line in self.lines.split("\n"):
            indent = setting.indent if line.startswith(INDENTED) else 0.0
            words = setting.text_line(line.removeprefix(INDENTED))
            canvas.text(words, Point(area.x + indent, baseline), BLACK)
            baseline -= setting.leading
