"""Galleys: the passages of a text set in lines, before they are made up into pages.

Everything keeps to the grid of baselines: each piece of matter is so many rows deep.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from .boxes import LETTER_BREAK, LOOSENING, TIGHTENING, Boxes
from .breaking import Glue, break_paragraph
from .fount import Fount, Style, as_read
from .matter import Initial, Matter, SetLine
from .passage import Passage, Role
from .setting import Manner, Setting

__all__ = ["Galley"]

TITLE, CHAPTER = 1.6, 1.3
"""Sizes of headings, as multiples of the size of the text."""

HEADING_LEADING = 1.2
"""From line to line of a heading, as a multiple of its size."""

ROOMY = 16
"""Pages of so many lines have room for blank lines around quotations and lists."""


DASH = "-"
"""The mark of items in typefaces without bullets."""

EMPTIEST = 8.0
"""Lines of a greater stretch ratio are left short: their spaces would be five times as wide as usual."""


@dataclass
class _Measures:
    """How the lines of a passage lie: mm from the left, the width of each, the last one for all that follow."""

    x: float
    widths: tuple[float, ...]
    indent: float = 0.0


class Galley:
    """Sets passages one after the other.

    `done` counts the words that are set; `short` are the lines that do not reach the margin, though they should.
    """

    def __init__(self, fount: Fount, setting: Setting, manner: Manner, chapters: int) -> None:
        self.setting = setting
        self.manner = manner
        self.chapters = chapters
        self.done = 0
        self.fount = fount
        self._justified = setting.fit_to_justify if manner.justified is None else manner.justified
        # rounding must not turn away a line that fills the measure exactly
        self.measure = setting.measure + 1e-9
        room = (self.measure - setting.indent) / setting.size
        self.boxes = Boxes(fount, room, hanging=manner.hanging)
        unparted = Fount(fount.faces, None, right_to_left=fount.right_to_left)
        self._verses = Boxes(unparted, room, hanging=manner.hanging)
        self._heads = {
            scale: Boxes(unparted, self.measure / setting.size / scale, hanging=False)
            for scale in (TITLE, CHAPTER, 1.0)
        }
        self.short: list[str] = []
        self._before: Passage | None = None
        self._opening = True

    def matter(self, passages: Sequence[Passage]) -> Iterator[Matter]:
        """The passages as matter, one piece each, stanzas and items too."""
        for passage in passages:
            yield self._set(passage)
            if passage.role is Role.PLATE:
                continue  # it waits for a page of its own: the text goes on as if it were not there
            self._opening = passage.role is Role.HEADING and passage.level <= self.chapters
            self._before = passage

    def _set(self, passage: Passage) -> Matter:
        match passage.role:
            case Role.HEADING:
                return self._heading(passage)
            case Role.VERSE:
                return self._verse(passage)
            case Role.ITEM:
                return self._item(passage)
            case Role.BREAK:
                return Matter(Role.BREAK, (), 1, self.setting.size, self.setting.leading, together=1)
            case Role.PLATE:
                return self._plate(passage)
            case _:
                return self._body(passage)

    # ---- prose

    def _body(self, passage: Passage) -> Matter:
        before, setting = self._before, self.setting
        if self._opening and self.manner.drop_capital and passage.inset == 0 and not self.fount.right_to_left:
            dropped = self._with_initial(passage)
            if dropped:
                return dropped
        continues = before is not None and before.role is Role.BODY and before.inset == passage.inset
        left, right = self._inset(passage)
        indent = setting.indent if continues else 0.0
        lines = self._lines(passage.text, _Measures(left, (self.measure - left - right,), indent))
        return self._prose(Role.BODY, lines, passage)

    def _prose(self, role: Role, lines: tuple[SetLine, ...], passage: Passage) -> Matter:
        return Matter(
            role, lines, len(lines), self.setting.size, self.setting.leading, before=self._blank_before(passage)
        )

    def _inset(self, passage: Passage) -> tuple[float, float]:
        """How far a passage stands in from the left and, if it is a quotation, from the right."""
        step = min(self.setting.size, self.setting.measure / 10)
        depth = min(passage.inset, 4)
        return depth * step, (step if depth and passage.role is Role.BODY else 0.0)

    def _blank_before(self, passage: Passage) -> int:
        before = self._before
        if before is None or before.role is Role.HEADING:
            return 0
        if passage.role is Role.VERSE or before.role is Role.VERSE:
            return 1
        changes = (before.inset == 0) is not (passage.inset == 0)
        return 1 if changes and self.setting.lines_per_page >= ROOMY else 0

    def _with_initial(self, passage: Passage) -> Matter | None:
        """A paragraph with a drop capital, if it is long enough for one."""
        setting, face = self.setting, self.fount.roman
        depth = self.manner.drop_capital
        first, _, rest = passage.text.partition(" ")
        quote = len(first) - len(first.lstrip("\u2018\u201c\u00ab\u201e"))
        initial, ending = first[: quote + 1], first[quote + 1 :]
        if not rest or not initial[-1:].isalpha():
            return None
        drop = (depth - 1) * setting.leading
        size = setting.size + drop / face.cap_height
        width = self.fount.width(initial) * size + 0.12 * setting.size
        small = Style.SMALL_CAPITALS + ending if "smcp" in face.features and ending.isalpha() else ending
        text = f"{small} {rest}" if ending else rest
        measures = _Measures(0.0, (*(self.measure - width,) * depth, self.measure))
        if width > setting.measure / 2:
            return None
        before = self.done
        self.done += not ending
        lines = self._lines(text, measures)
        if len(lines) < depth:
            self.done = before
            return None
        shifted = tuple(
            line._replace(x=line.x + width) if number < depth else line for number, line in enumerate(lines)
        )
        matter = self._prose(Role.BODY, shifted, passage)
        return matter._replace(initial=Initial(initial, 0.0, size, drop), together=max(2, depth))

    # ---- what is not prose

    def _verse(self, passage: Passage) -> Matter:
        """Lines as the author ended them; what is too wide is turned over, further in."""
        setting = self.setting
        lines: list[SetLine] = []
        turned: set[int] = set()
        left, _ = self._inset(passage)
        for line in passage.text.split("\n"):
            begins = len(lines)
            measures = _Measures(left + setting.indent, (self.measure - left - setting.indent,), -setting.indent)
            lines += self._lines(line, measures, self._verses, ragged=True)
            turned.update(range(begins + 1, len(lines)))
        together = len(lines) if len(lines) <= setting.lines_per_page // 2 else 2
        matter = self._prose(Role.VERSE, tuple(lines), passage)
        step = min(setting.size, setting.measure / 10)
        initial = Initial(self._mark(passage), left - step, setting.size) if passage.mark else None
        return matter._replace(together=together, bound=frozenset(turned), initial=initial)

    def _item(self, passage: Passage) -> Matter:
        setting = self.setting
        left, _ = self._inset(passage)
        left -= min(setting.size, setting.measure / 10)
        mark = self._mark(passage)
        hang = max(1.0, self.fount.width(mark) + 0.4 if mark[0].isdigit() else 0.0) * setting.size
        hang = min(hang, setting.measure / 3)
        lines = self._lines(passage.text, _Measures(left + hang, (self.measure - left - hang,)), ragged=True)
        matter = self._prose(Role.ITEM, lines, passage)
        return matter._replace(initial=Initial(mark, left, setting.size))

    def _mark(self, passage: Passage) -> str:
        return DASH if self.fount.roman.missing(passage.mark) else passage.mark

    def _heading(self, passage: Passage) -> Matter:
        setting, level = self.setting, passage.level
        scale = TITLE if level < self.chapters else CHAPTER if level == self.chapters else 1.0
        chapter = level <= self.chapters
        size, style = setting.size * scale, "" if chapter else self._section_style()
        words = [style + word for word in passage.text.split(" ")]
        lines = self._centred(words, self._heads[scale], size)
        step = max(setting.leading, size * HEADING_LEADING)
        taller = (size - setting.size) * setting.typeface.cap_height
        rows = 1 + math.ceil(((len(lines) - 1) * step + taller) / setting.leading - 1e-9)
        many = setting.lines_per_page
        begins = chapter and self.manner.new_pages
        return Matter(
            Role.HEADING,
            lines,
            rows,
            size,
            step,
            drop=(rows - 1) * setting.leading - (len(lines) - 1) * step,
            before=2 if chapter else 1,
            after=(2 if many >= ROOMY else 1) if chapter else 0,
            together=len(lines),
            stays=True,
            opens=begins,
            sink=many // 5 if begins else 0,
            heading=as_read(passage.text) if chapter else "",
        )

    def _section_style(self) -> str:
        faces = self.fount.faces
        return next((style for style in (Style.BOLD, Style.ITALIC) if style in faces), Style.ROMAN)

    def _centred(self, words: list[str], boxes: Boxes, size: float) -> tuple[SetLine, ...]:
        lines = []
        for line in self._broken(words, boxes, boxes.ragged, (self.measure / size,), 0.0):
            width = self._width(line.words) * size
            lines.append(line._replace(x=max(0.0, (self.setting.measure - width) / 2), gap=0.0))
        return tuple(lines)

    def _plate(self, passage: Passage) -> Matter:
        words = [word if word[0] in set(Style) else Style.ITALIC + word for word in passage.text.split(" ") if word]
        lines = self._centred(words, self._heads[1.0], self.setting.size) if words else ()
        setting = self.setting
        return Matter(
            Role.PLATE, lines, setting.lines_per_page, setting.size, setting.leading, together=len(lines),
            picture=passage.mark,
        )

    # ---- lines

    def _lines(
        self, text: str, measures: _Measures, boxes: Boxes | None = None, *, ragged: bool = False
    ) -> tuple[SetLine, ...]:
        """A paragraph in lines of the text's own size."""
        size, boxes = self.setting.size, self.boxes if boxes is None else boxes
        glue = boxes.justified if self._justified and not ragged else boxes.ragged
        widths = tuple(width / size for width in measures.widths)
        found = self._broken(text.split(" "), boxes, glue, widths, measures.indent / size)
        x, placed = measures.x, []
        for number, line in enumerate(found):
            indent = measures.indent if number == 0 else 0.0
            left, gap, tracking = x + indent + line.x * size, line.gap * size, line.tracking * size
            placed.append(line._replace(x=left, gap=gap, tracking=tracking))
        return tuple(placed)

    def _broken(
        self, words: list[str], boxes: Boxes, glue: Glue, widths: tuple[float, ...], indent: float
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
                short = self._short(text, room + hang, loose=loose)
            gap, tracking = self._eased(text, short) if glue is boxes.justified else (0.0, 0.0)
            yield SetLine(text, -hang, gap, done + line.last + last, tracking)
        self.done = done + len(words)

    def _eased(self, text: str, short: float) -> tuple[float, float]:
        """What each space and each letter of a line gains, in ems, if it is to gain so much in all.

        Letters help where spaces alone would be too wide or too narrow. A line that would have more gap than
        words is kept short.
        """
        glue, spaces = self.boxes.justified, text.count(" ")
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

    def _short(self, text: str, room: float, *, loose: bool) -> float:
        """What a line lacks, in ems; one that need not reach the margin lacks nothing."""
        lacking = room + self.boxes.right_hang(text.rpartition(" ")[2]) - self._width(text)
        return min(lacking, 0.0) if loose else lacking

    def _width(self, text: str) -> float:
        words = text.split(" ")
        return sum(map(self.fount.width, words)) + self.fount.space.width * (len(words) - 1)
