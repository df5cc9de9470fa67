"""A page of set text: its lines, its picture, and the running head over it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..drawing import BLACK, Canvas, Pen
from ..geometry import Path, Point, Rect
from ..pictures import Picture, fitting
from ..typefaces import TextLine
from ..units import MM_PER_INCH
from .fount import Fount, Style
from .makeup import MadePage, Slot
from .matter import Matter
from .page import PageFrame
from .passage import Role
from .setting import Setting

__all__ = ["RunningHead", "SetPage"]

BREAK_WIDTH = 1 / 5
"""Width of the rule that parts two scenes, as a share of the measure."""

HEAD_SIZE = 0.85
"""Size of running heads, as a share of the size of the text."""

CAPITALS_SIZE = 0.65
"""The same where the typeface has no small capitals, and its capitals stand in for them."""

HEAD_GAP = 1.5
"""From the first line of the text up to the running head, in lines."""


@dataclass(frozen=True, slots=True)
class SetPage:
    """Page `number` of a frame. Lines are shaped when they are drawn, so that many books fit into memory."""

    setting: Setting
    frame: PageFrame
    number: int
    fount: Fount
    made: MadePage
    plates: Mapping[str, Picture]

    def draw(self, canvas: Canvas) -> None:
        """Set the page on its grid, from the top of the type area down."""
        area = self.frame.type_area(self.number)
        first = area.top - self.setting.above
        for slot in self.made.slots:
            top = first - slot.row * self.setting.leading
            if slot.matter.role is Role.BREAK:
                self._draw_break(canvas, area, top)
            elif slot.matter.role is Role.PLATE:
                self._draw_plate(canvas, area, slot.matter)
            else:
                self._draw_lines(canvas, area, slot, top)

    def _draw_lines(self, canvas: Canvas, area: Rect, slot: Slot, top: float) -> None:
        matter = slot.matter
        if matter.initial and slot.start == 0:
            initial = matter.initial
            self._draw_words(canvas, area, initial.words, initial.size, Point(initial.x, top - initial.drop))
        baseline = top - matter.drop
        for line in matter.lines[slot.start : slot.end]:
            words = self.fount.line(line.words, matter.size, line.gap, line.tracking)
            self._draw_line(canvas, area, words, Point(line.x, baseline))
            baseline -= matter.step

    def _draw_words(self, canvas: Canvas, area: Rect, words: str, size: float, at: Point) -> None:
        """Words with their usual spaces."""
        self._draw_line(canvas, area, self.fount.line(words, size), at)

    def _draw_line(self, canvas: Canvas, area: Rect, line: TextLine, at: Point) -> None:
        """A line `at.x` from the margin at which lines begin."""
        x = area.right - at.x - line.width if self.fount.right_to_left else area.x + at.x
        canvas.text(line, Point(x, at.y), BLACK)

    def _draw_break(self, canvas: Canvas, area: Rect, baseline: float) -> None:
        """A short rule, half an x-height over the baseline."""
        y = baseline + self.setting.typeface.x_height * self.setting.size / 2
        half = area.width * BREAK_WIDTH / 2
        pen = Pen(max(MM_PER_INCH / self.frame.resolution_dpi, self.setting.size / 20))
        canvas.stroke(Path.line(Point(area.centre.x - half, y), Point(area.centre.x + half, y)), pen)

    def _draw_plate(self, canvas: Canvas, area: Rect, matter: Matter) -> None:
        """The picture as large as the type area allows, its caption under it."""
        setting = self.setting
        below = (len(matter.lines) + 0.5) * setting.leading if matter.lines else 0.0
        picture = self.plates[matter.picture]
        into = fitting(picture, Rect(area.x, area.y + below, area.width, area.height - below))
        canvas.picture(picture, into)
        baseline = into.y - setting.above - 0.4 * setting.leading
        for line in matter.lines:
            self._draw_words(canvas, area, line.words, matter.size, Point(line.x, baseline))
            baseline -= matter.step


@dataclass(frozen=True, slots=True)
class RunningHead:
    """A line over the text that says where the reader is: the book on the left, the chapter on the right."""

    setting: Setting
    frame: PageFrame
    number: int
    fount: Fount
    words: str

    def draw(self, canvas: Canvas) -> None:
        """Set the line, centred; it is shortened if it has no room."""
        area = self.frame.type_area(self.number)
        small = "smcp" in self.fount.roman.features
        size = self.setting.size * (HEAD_SIZE if small else CAPITALS_SIZE)
        baseline = area.top - self.setting.above + HEAD_GAP * self.setting.leading
        if baseline + self.setting.above * HEAD_SIZE > self.frame.height:
            return
        words = (self.words if small else self.words.upper()).split(" ")
        line = self.fount.line(self._styled(words), size)
        while line.width > area.width and len(words) > 1:
            words = [*words[:-2], words[-2].rstrip(".,;:\u2026") + "\u2026"]
            line = self.fount.line(self._styled(words), size)
        if line.width <= area.width:
            canvas.text(line, Point(area.centre.x - line.width / 2, baseline), BLACK)

    def _styled(self, words: list[str]) -> str:
        return " ".join(Style.SMALL_CAPITALS + word for word in words)
