"""A page of set text: its lines, the signs between them, its picture."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from .....ground.art import Pictured
from .....ground.drawing import BLACK, Canvas, Pen
from .....ground.geometry import Path, Point, Rect, polygon
from .....ground.pictures import Picture, fitting
from .....ground.typefaces import TextLine
from .....ground.units import MM_PER_INCH
from .....typesetting.galleys.made_pages import MadePage, Slot
from .....typesetting.galleys.matter import Matter
from .....typesetting.galleys.setting import Setting, reach
from .....typesetting.galleys.text_captions import CAPTION_WHITE, GAP, depth_of
from .....typesetting.lines.fount import Fount
from .....typesetting.manuscripts.passage import Role
from .....typesetting.page import PageFrame

__all__ = ["SetPage"]

PAUSE_SIZE, PAUSE_PITCH = 0.26, 1.1
"""Height of the lozenges that part two scenes, and from middle to middle, in ems.

They are seen at the head and at the foot of a page too, where a blank line would vanish and a rule look like one
that belongs to the running head or to a note.
"""

NOTE_RULE, SHORT_RULE = 0.45, 1 / 4
"""From the top of the first note up to the rule over it, in ems of it, and how long that is, as a share of the measure
(common practice).
"""


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
            elif slot.matter.role is Role.FIGURE:
                self._draw_figure(canvas, area, slot, top)
            else:
                self._draw_lines(canvas, area, slot, top)

        for number, slot in enumerate(self.made.notes):
            top = first - slot.row * self.setting.leading
            if number == 0:
                self._draw_note_rule(canvas, area, slot, top)
            self._draw_lines(canvas, area, slot, top)

    @property
    def _hairline(self) -> Pen:
        """The pen of fine rules."""
        return Pen(max(MM_PER_INCH / self.frame.resolution_dpi, self.setting.size / 20))

    def _draw_lines(self, canvas: Canvas, area: Rect, slot: Slot, top: float) -> None:
        matter = slot.matter
        if matter.rule and slot.start and slot.row:
            # a table that goes on has its heads again
            heads = matter.rule[0]
            self._draw_lines(canvas, area, Slot(matter, 0, heads, 0), top + heads * matter.step)
        for initial in matter.initials if slot.start == 0 else ():
            self._draw_words(canvas, area, initial.words, initial.size, Point(initial.x, top - initial.drop))
        baseline = top - matter.drop
        for line in matter.lines[slot.start : slot.end]:
            if line.words:  # an empty cell has none
                words = self.fount.line(line.words, matter.size, line.gap, line.tracking)
                self._draw_line(canvas, area, words, Point(line.x, baseline))
            for cell in line.more:
                self._draw_words(canvas, area, cell.words, matter.size, Point(cell.x, baseline), cell.tracking)
            baseline -= matter.step
        if matter.rule and slot.start == 0:
            heads, left, right = matter.rule
            self._draw_rule(canvas, area, top - (heads - 1) * matter.step - self._between(matter), left, right)

    def _draw_words(
        self, canvas: Canvas, area: Rect, words: str, size: float, at: Point, tracking: float = 0.0
    ) -> None:
        """Words with their usual spaces; an empty cell has none."""
        if words:
            self._draw_line(canvas, area, self.fount.line(words, size, tracking=tracking), at)

    def _draw_line(self, canvas: Canvas, area: Rect, line: TextLine, at: Point) -> None:
        """A line `at.x` from the margin at which lines begin."""
        x = area.right - at.x - line.width if self.fount.right_to_left else area.x + at.x
        canvas.text(line, Point(x, at.y), BLACK)

    def _draw_break(self, canvas: Canvas, area: Rect, baseline: float) -> None:
        """Three lozenges, half an x-height over the baseline."""
        size = self.setting.size
        y, half = baseline + self.setting.typeface.x_height * size / 2, PAUSE_SIZE * size / 2
        for place in (-1, 0, 1):
            x = area.centre.x + place * PAUSE_PITCH * size
            corners = (Point(x - half, y), Point(x, y + half), Point(x + half, y), Point(x, y - half))
            canvas.fill(polygon(corners), BLACK)

    def _between(self, matter: Matter) -> float:
        """How far under a baseline the middle of the white between two lines lies."""
        above, below = reach(self.setting.typeface)
        return (matter.step - (above - below) * matter.size) / 2

    def _draw_rule(self, canvas: Canvas, area: Rect, y: float, left: float, right: float) -> None:
        """A level rule from left to right, counted in mm from the margin at which lines begin."""
        ends = (area.right - right, area.right - left) if self.fount.right_to_left else (area.x + left, area.x + right)
        canvas.stroke(Path.line(Point(ends[0], y), Point(ends[1], y)), self._hairline)

    def _draw_note_rule(self, canvas: Canvas, area: Rect, slot: Slot, top: float) -> None:
        """The rule over notes: short, and as long as their lines over one that goes on from the page before."""
        y = top + (reach(self.setting.typeface)[0] + NOTE_RULE) * slot.matter.size
        self._draw_rule(canvas, area, y, 0.0, area.width if slot.start else area.width * SHORT_RULE)

    def _draw_plate(self, canvas: Canvas, area: Rect, matter: Matter) -> None:
        """The picture as large as the type area allows, its caption under it."""
        below = (len(matter.lines) + GAP) * matter.step if matter.lines else 0.0
        picture = self.plates[matter.picture]
        into = self._fitting(picture, Rect(area.x, area.y + below, area.width, area.height - below))
        self._draw_picture(canvas, picture, into)
        above, under = (ems * matter.size for ems in reach(self.setting.typeface))
        # where lines are close together, the last one must not go below the page
        white = min(CAPTION_WHITE * matter.step, (1 + GAP) * matter.step - above - under)
        self._draw_caption(canvas, area, matter, into.y - above - white)

    def _draw_figure(self, canvas: Canvas, area: Rect, slot: Slot, top: float) -> None:
        """The picture and its caption from the top of capitals on its first row to the baseline of its last.

        What that is deeper than both is shared between over and under them, but for the head and the foot of a page.
        """
        matter, setting = slot.matter, self.setting
        above, count = reach(setting.typeface)[0] * matter.size, len(matter.lines)
        caption = CAPTION_WHITE * matter.step + above + (count - 1) * matter.step if count else 0.0
        depth, head = depth_of(matter.rows, setting), top + setting.typeface.cap_height * setting.size
        picture = self.plates[matter.picture]
        size = self._fitting(picture, Rect(area.x, area.y, area.width, depth - caption)).size
        slack = depth - caption - size.height
        at_foot = slot.row + matter.rows > setting.lines_per_page - 0.75
        head -= slack if at_foot else slack / 2 if slot.row else 0.0
        self._draw_picture(canvas, picture, Rect(area.centre.x - size.width / 2, head - size.height, *size))
        self._draw_caption(canvas, area, matter, head - size.height - CAPTION_WHITE * matter.step - above)

    def _fitting(self, picture: Picture, area: Rect) -> Rect:
        return fitting(picture, area, turned=self.frame.standing is not None)

    def _draw_picture(self, canvas: Canvas, picture: Picture, into: Rect) -> None:
        """A picture, which stands upright on the page whichever way lines run."""
        page = self.frame.standing
        if page:
            into = Rect(into.y, page.height - into.right, into.height, into.width)
        self.frame.laid_down(Pictured(picture, into)).draw(canvas)

    def _draw_caption(self, canvas: Canvas, area: Rect, matter: Matter, baseline: float) -> None:
        """The lines of a caption, from the baseline of the first down."""
        for line in matter.lines:
            self._draw_words(canvas, area, line.words, matter.size, Point(line.x, baseline), line.tracking)
            baseline -= matter.step
