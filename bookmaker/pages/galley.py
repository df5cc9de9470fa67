"""Galleys: the passages of a text set in lines, before they are made up into pages.

Everything keeps to the grid of baselines: each piece of matter is so many rows deep.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence

from .boxes import Boxes
from .fount import NOTE_FIGURES, Fount, Style, as_read
from .initials import opening
from .lines import Lines, Measures
from .matter import Initial, Matter, SetLine
from .passage import Passage, Role
from .setting import Manner, Setting
from .tables import cells_of, in_columns

__all__ = ["Galley"]

TITLE, CHAPTER = 1.6, 1.3
"""Sizes of headings, as multiples of the size of the text."""

HEADING_LEADING = 1.2
"""From line to line of a heading, as a multiple of its size."""

ROOMY = 16
"""On pages of so many lines two blank lines stand under the head of a chapter."""

SPACED = 8
"""Pages of so many lines have room for space around quotations, lists and tables."""

SET_OFF = 0.5
"""Rows over and under a quotation, a list or a table."""

NOTE_SIZE = 0.85
"""Size of notes, as a multiple of the size of the text."""


DASH = "-"
"""The mark of items in typefaces without bullets."""


class Galley:
    """Sets passages one after the other.

    `lines` knows what is set, and which lines do not reach the margin though they should; `unfit` are the lines of
    the source in which tables begin that have no room for their columns.
    """

    def __init__(self, fount: Fount, setting: Setting, manner: Manner, chapters: int) -> None:
        self.setting = setting
        self.manner = manner
        self.chapters = chapters
        self.lines = Lines(fount)
        self.unfit: list[int] = []
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
        self._before: Passage | None = None
        self._opening = True
        self._setters: Mapping[Role, Callable[[Passage], Matter]] = {
            Role.BODY: self._body,
            Role.HEADING: self._heading,
            Role.VERSE: self._verse,
            Role.ITEM: self._item,
            Role.BREAK: self._pause,
            Role.PLATE: self._plate,
            Role.TABLE: self._table,
            Role.NOTE: self._note,
        }

    def matter(self, passages: Sequence[Passage]) -> Iterator[Matter]:
        """The passages as matter, one piece each, stanzas and items too."""
        apart: list[Matter] = []
        for passage in passages:
            matter = self._setters[passage.role](passage)
            if passage.inset or passage.role is Role.TABLE or (apart and passage.role is Role.PLATE):
                apart.append(matter)
            else:
                yield from _counted(apart)
                apart = []
                yield matter
            if passage.role is Role.PLATE:
                continue  # it waits for a page of its own: the text goes on as if it were not there
            if not (self._opening and passage.inset):  # a quotation may stand under the head of a chapter
                self._opening = passage.role is Role.HEADING and passage.level == self.chapters
            self._before = passage
        yield from _counted(apart)

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
        lines = self._lines(passage.text, Measures(left, (self.measure - left - right,), indent))
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

    def _blank_before(self, passage: Passage) -> float:
        before = self._before
        if before is None or before.role is Role.HEADING:
            return 0
        if passage.role is Role.VERSE or before.role is Role.VERSE:
            return 1
        if Role.NOTE in {passage.role, before.role}:
            return 0 if passage.role is before.role else 1
        changes = (before.inset == 0) is not (passage.inset == 0) or passage.apart
        changes = changes or Role.TABLE in {passage.role, before.role}
        return SET_OFF if changes and self.setting.lines_per_page >= SPACED else 0

    def _with_initial(self, passage: Passage) -> Matter | None:
        """A paragraph with a drop capital, if it is long enough for one."""
        depth = self.manner.drop_capital
        found = opening(passage.text, depth, self.lines, self.boxes, self.setting, justified=self._justified)
        if found is None:
            return None
        matter = self._prose(Role.BODY, found.lines, passage)
        return matter._replace(initials=found.initials, together=max(2, depth))

    # ---- what is not prose

    def _verse(self, passage: Passage) -> Matter:
        """Lines as the author ended them; what is too wide is turned over, further in."""
        setting = self.setting
        lines: list[SetLine] = []
        turned: set[int] = set()
        left, _ = self._inset(passage)
        for line in passage.text.split("\n"):
            begins = len(lines)
            measures = Measures(left + setting.indent, (self.measure - left - setting.indent,), -setting.indent)
            lines += self._lines(line, measures, self._verses, ragged=True)
            turned.update(range(begins + 1, len(lines)))
        together = len(lines) if len(lines) <= setting.lines_per_page // 2 else 2
        matter = self._prose(Role.VERSE, tuple(lines), passage)
        step = min(setting.size, setting.measure / 10)
        marks = (Initial(self._mark(passage), left - step, setting.size),) if passage.mark else ()
        return matter._replace(together=together, bound=frozenset(turned), initials=marks)

    def _item(self, passage: Passage) -> Matter:
        setting = self.setting
        left, _ = self._inset(passage)
        left -= min(setting.size, setting.measure / 10)
        mark = self._mark(passage)
        hang = max(1.0, self.fount.width(mark) + 0.4 if mark[0].isdigit() else 0.0) * setting.size
        hang = min(hang, setting.measure / 3)
        lines = self._lines(passage.text, Measures(left + hang, (self.measure - left - hang,)), ragged=True)
        matter = self._prose(Role.ITEM, lines, passage)
        return matter._replace(initials=(Initial(mark, left, setting.size),))

    def _mark(self, passage: Passage) -> str:
        return DASH if self.fount.roman.missing(passage.mark) else passage.mark

    def _heading(self, passage: Passage) -> Matter:
        """A heading in the size of its level, or of a lower one if a word or the whole has no room in that."""
        setting, level = self.setting, passage.level
        chapter, many = level <= self.chapters, setting.lines_per_page
        style = "" if chapter else self._section_style(level - self.chapters)
        words = [style + word for word in passage.text.split(" ")]
        wanted = TITLE if level < self.chapters else CHAPTER if chapter else 1.0
        longest, before = max(map(self.fount.width, words)), self.lines.done
        for scale in (scale for scale in self._heads if scale <= wanted):
            size = setting.size * scale
            self.lines.done = before
            lines = self.lines.centred(words, self._heads[scale], size, setting.measure)
            step = max(setting.leading, size * HEADING_LEADING) if scale > 1.0 else setting.leading
            taller = (size - setting.size) * setting.typeface.cap_height
            rows = 1 + math.ceil(((len(lines) - 1) * step + taller) / setting.leading - 1e-9)
            if rows <= many and longest * size <= self.measure:
                break
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
            heading=as_read(NOTE_FIGURES.sub("", passage.text)) if chapter else "",
            title=level < self.chapters,
        )

    def _section_style(self, depth: int) -> str:
        """Bold for sections, italic for what is below them, as far as there are faces for it."""
        faces, styles = self.fount.faces, (Style.BOLD, Style.ITALIC)
        return next((style for style in (styles if depth == 1 else styles[::-1]) if style in faces), Style.ROMAN)

    def _pause(self, passage: Passage) -> Matter:  # noqa: ARG002 (every passage is set alike)
        return Matter(Role.BREAK, (), 1, self.setting.size, self.setting.leading, together=1)

    def _plate(self, passage: Passage) -> Matter:
        words = [word if word[0] in set(Style) else Style.ITALIC + word for word in passage.text.split(" ") if word]
        setting = self.setting
        lines = self.lines.centred(words, self._heads[1.0], setting.size, setting.measure) if words else ()
        return Matter(
            Role.PLATE, lines, setting.lines_per_page, setting.size, setting.leading, together=len(lines),
            picture=passage.mark,
        )

    def _note(self, passage: Passage) -> Matter:
        """A note after its chapter, its figure before it, in smaller type."""
        setting = self.setting
        size = NOTE_SIZE * setting.size
        hang = max(1.2, self.fount.width(passage.mark) + 0.4) * size
        measures = Measures(hang, (self.measure - hang,))
        lines = self.lines.paragraph(passage.text, measures, self.boxes, size, justified=self._justified)
        matter = self._prose(Role.NOTE, lines, passage)
        return matter._replace(size=size, initials=(Initial(passage.mark, 0.0, size),) if passage.mark else ())

    def _table(self, passage: Passage) -> Matter:
        """A table in columns, or one row after the other where they have no room."""
        setting = self.setting
        left, _ = self._inset(passage)
        table = in_columns(passage, self.lines, self._heads[1.0], setting.size, left, self.measure - left)
        if table is None:
            return self._rows_of_table(passage)
        short = len(table.lines) <= setting.lines_per_page // 2
        return self._prose(Role.TABLE, table.lines, passage)._replace(
            size=table.size,
            together=len(table.lines) if short else table.heads + 1,
            bound=table.bound,
            rule=(table.heads, table.left, table.right),
        )

    def _rows_of_table(self, passage: Passage) -> Matter:
        self.unfit.append(passage.line)
        before = self.lines.done
        rows = "\n".join("; ".join(filter(None, row)) for row in cells_of(passage))
        matter = self._verse(passage._replace(text=rows, mark=""))
        self.lines.done = before + passage.words
        return matter

    def _lines(
        self, text: str, measures: Measures, boxes: Boxes | None = None, *, ragged: bool = False
    ) -> tuple[SetLine, ...]:
        """A paragraph in type of the text's own size."""
        boxes, justified = self.boxes if boxes is None else boxes, self._justified and not ragged
        return self.lines.paragraph(text, measures, boxes, self.setting.size, justified=justified)


def _counted(apart: list[Matter]) -> Iterator[Matter]:
    """Matter set apart from the text around it, each piece with the rows from its beginning to the end of all."""
    run, following = 0.0, 0.0
    counted: list[Matter] = []
    for matter in reversed(apart):
        if matter.role is Role.PLATE:
            counted.append(matter)
            continue
        run += matter.rows + max(following, matter.after) if run else matter.rows
        following = matter.before
        counted.append(matter._replace(run=run))
    return reversed(counted)
