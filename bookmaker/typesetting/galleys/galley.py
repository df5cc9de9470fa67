"""Galleys: the passages of a text set in lines, before they are made up into pages.

Everything keeps to the grid of baselines: each piece of matter is so many rows deep.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import pairwise

from ..lines.box_sets import BoxSets
from ..lines.boxes import Boxes
from ..lines.fount import Fount
from ..lines.paragraphs import Lines, Measures
from ..lines.set_lines import SetLines, joined
from ..lines.tracking import LOOSENING, loosening_at
from ..manuscripts.indents import CENTRED, RIGHT
from ..manuscripts.passage import AFLOAT, Passage, Role
from ..manuscripts.ranks import Rank
from .foot_notes import NOTE_SIZE, with_notes
from .headings import Headings
from .initials import Opening, opening
from .matter import Initial, Matter, with_runs
from .mottoes import motto_lines
from .neighbours import beside
from .recasting import Recasting
from .remarks import UNREMARKABLE, Hindrance, Plain, Remarks, together
from .setting import Manner, Setting
from .tables import cells_of, in_columns
from .text_captions import Captions
from .verse import stanza, verse_places

__all__ = ["Galley"]

SPACED = 8
"""Pages of so many lines have room for space around quotations, lists and tables."""

SET_OFF = 0.5
"""Rows over and under a quotation, a list or a table."""

NO_PROSE = {
    Role.VERSE: Hindrance.VERSE,
    Role.TABLE: Hindrance.TABLE,
    Role.PLACED: Hindrance.PLACED,
}
"""What a chapter may begin with that has no drop capital."""

ONE_BLANK = frozenset({Role.VERSE, Role.MOTTO})
"""What has a blank row over it and under it."""

DASH = "-"
"""The mark of items in typefaces without bullets."""


class Galley:
    """Sets passages one after the other; the levels of headings are their ranks."""

    def __init__(self, fount: Fount, setting: Setting, manner: Manner) -> None:
        self.setting = setting
        self.manner = manner
        self.fount = fount
        self._justified = fount.solid or setting.fit_to_justify if manner.justified is None else manner.justified
        filled, unfilled = setting.tracking(manner)
        self._unfilled = Lines(fount.tracked(unfilled))
        self.lines = Lines(fount.tracked(filled)) if self._justified else self._unfilled
        self.recasting = Recasting(self.lines, setting.size)
        # rounding must not turn away a line that fills the measure exactly
        self.measure = setting.measure + 1e-9
        self._room = (self.measure - setting.indent) / setting.size
        loosening = max(LOOSENING, loosening_at(setting.size) - filled)
        self._filled = BoxSets(self.lines.fount, hanging=manner.hanging, loosening=loosening)
        self._ragged = BoxSets(self._unfilled.fount, hanging=manner.hanging)
        self.boxes = self._filled.filled(self._room) if self._justified else self._ragged.ragged(self._room)
        self._centred = self._sparing(self.measure)
        self._headings = Headings(setting, manner, self._unfilled, ())
        self._captions = Captions(setting, self._unfilled, ())
        self._set_in: Mapping[int, float] = {}
        self._before: Passage | None = None
        self._last: Passage | None = None
        self._opening = True
        self._hang = 0.0
        self._reached = 0

    def matter(self, passages: Sequence[Passage]) -> Iterator[Matter]:
        """The passages as matter, one piece each, stanzas and items too; notes for the foot go with it."""
        referring = with_notes(passages) if self.manner.foot_notes else ((passage, ()) for passage in passages)
        passages, notes = zip(*referring, strict=True) if passages else ((), ())
        self._last = passages[-1] if passages else None
        self._headings = Headings(self.setting, self.manner, self._unfilled, passages)
        self._captions = Captions(self.setting, self._unfilled, passages)
        self._set_in = verse_places(passages, self._unfilled.width, self.setting)
        apart, setters = list[Matter](), self._setters
        for place, passage in enumerate(passages):
            matter = setters[passage.role](passage).remarked(self._without_capital(passage))
            if aside := self._set_in.get(place):
                matter = matter._replace(lines=tuple(line._replace(x=line.x + aside) for line in matter.lines))
            if matter.reached != self._reached:
                matter = matter._replace(reached=self._reached)
            self._reached += passage.words
            matter = beside(matter, passage, self._before, passages[place + 1 : place + 3])
            if notes[place]:
                matter = matter._replace(notes=tuple(self._foot_notes(notes[place])))
            if passage.inset or passage.role is Role.TABLE or (apart and passage.role in AFLOAT):
                apart.append(matter)
            else:
                yield from with_runs(apart)
                apart = []
                yield matter
            if passage.role in AFLOAT:
                continue
            # a quotation may stand under the head of a chapter, and that of its first section
            if not (self._opening and (passage.inset or passage.level > Rank.CHAPTER)):
                self._opening = passage.role is Role.HEADING and passage.level == Rank.CHAPTER
            self._before = passage
        yield from with_runs(apart)

    @property
    def _setters(self) -> Mapping[Role, Callable[[Passage], Matter]]:
        """What sets each kind of passage; not kept, for a galley that held on to itself would outlive its text."""
        return {
            Role.BODY: self._body,
            Role.HEADING: self._heading,
            Role.VERSE: self._verse,
            Role.ITEM: self._item,
            Role.BREAK: self._pause,
            Role.PLATE: self._captions.plate,
            Role.FIGURE: self._captions.figure,
            Role.TABLE: self._table,
            Role.NOTE: self._note,
            Role.PLACED: self._placed,
            Role.MOTTO: self._motto,
        }

    def _without_capital(self, passage: Passage) -> Remarks:
        """A remark if a chapter begins with something that has no drop capital whatever its letters are."""
        if not (self._opening and self.manner.drop_capital and passage.role in NO_PROSE and passage.inset == 0):
            return UNREMARKABLE
        words = passage.text.replace("\n", " ").replace("\t", " ")
        return Remarks(plain=(Plain(words, NO_PROSE[passage.role]),))

    # ---- prose

    def _body(self, passage: Passage) -> Matter:
        before, setting, plain = self._before, self.setting, None
        if self._opening and self.manner.drop_capital and passage.inset == 0 and not self.fount.right_to_left:
            opened = self._opened(passage)
            if isinstance(opened, Opening):
                matter = self._prose(Role.BODY, opened.text, passage)
                return matter._replace(initials=opened.initials, together=max(2, self.manner.drop_capital))
            plain = Plain(passage.text, opened)
        continues = before is not None and before.role is Role.BODY and before.inset == passage.inset
        left, right = self._inset(passage)
        measures = Measures(left, (self.measure - left - right,), setting.indent if continues else 0.0)
        justified = self._justified and (self.fount.solid or setting.fills(measures.widths[0], self.manner))
        boxes = self._boxes_for(measures, setting.size, ragged=not justified)
        if justified:
            self.recasting.remember(self._reached, passage.text, measures, boxes)
        set_in = self.lines if justified else self._unfilled
        found = set_in.paragraph(passage.text, measures, boxes, setting.size, justified=justified)
        matter = self._prose(Role.BODY, found, passage)
        return matter.remarked(Remarks(plain=(plain,))) if plain else matter

    def _prose(self, role: Role, found: SetLines, passage: Passage) -> Matter:
        lines, wide, short = found
        before, size, step = self._blank_before(passage), self.setting.size, self.setting.leading
        matter = Matter(role, lines, len(lines), size, step, before=before, reached=self._reached)
        return matter.remarked(Remarks(wide, short)) if wide or short else matter

    def _inset(self, passage: Passage) -> tuple[float, float]:
        """How far a passage stands in from the left and, if it is a quotation, from the right."""
        step = min(self.setting.size, self.setting.measure / 10)
        depth = min(passage.inset, 4)
        return depth * step, (step if depth and passage.role is Role.BODY else 0.0)

    def _blank_before(self, passage: Passage) -> float:
        before = self._before
        if before is None or before.role is Role.HEADING:
            return 0
        if passage.role in ONE_BLANK or before.role in ONE_BLANK:
            return 1
        if Role.NOTE in (passage.role, before.role):
            return 0 if passage.role is before.role else 1
        changes = (before.inset == 0) is not (passage.inset == 0) or passage.apart
        changes = changes or Role.TABLE in (passage.role, before.role)
        return SET_OFF if changes and self.setting.lines_per_page >= SPACED else 0

    def _opened(self, passage: Passage) -> Opening | Hindrance:
        """A paragraph with a drop capital, or what stands against it."""
        depth, setting = self.manner.drop_capital, self.setting
        under_section = self._before is not None and self._before.level > Rank.CHAPTER
        headroom = setting.leading if self._before and not under_section else 0.0
        return opening(
            passage.text, depth, self.lines, self.boxes, setting, justified=self._justified, headroom=headroom
        )

    # ---- what is not prose

    def _verse(self, passage: Passage) -> Matter:
        """Lines as the author ended them; what is too wide is turned over, further in."""
        setting = self.setting
        left, _ = self._inset(passage)
        boxes = self._sparing(self.measure - left - setting.indent, hanging=self.manner.hanging)
        found, turned, first, widths = stanza(passage.text, left, self._unfilled, boxes, setting)
        half = setting.lines_per_page // 2
        together = len(found.lines) if len(found.lines) <= half else min(max(2, first), max(2, half))
        matter = self._prose(Role.VERSE, found, passage)
        step = min(setting.size, setting.measure / 10)
        marks = (Initial(self._mark(passage), left - step, setting.size),) if passage.mark else ()
        return matter._replace(together=together, bound=turned, initials=marks).remarked(Remarks(verses=widths))

    def _sparing(self, room: float, *, hanging: bool = False) -> Boxes:
        """Boxes of words that are hyphenated only where `room` mm are too narrow for them."""
        return self._ragged.sparing(room / self.setting.size, hanging=hanging)

    def _item(self, passage: Passage) -> Matter:
        setting = self.setting
        left, _ = self._inset(passage)
        left -= min(setting.size, setting.measure / 10)
        mark = self._mark(passage)
        if mark:
            self._hang = max(1.0, self.fount.width(mark) + 0.4 if mark[0].isdigit() else 0.0) * setting.size
            self._hang = min(self._hang, setting.measure / 3)
        start = left + self._hang
        measures = Measures(start, (self.measure - start,))
        boxes = self._boxes_for(measures, setting.size, ragged=True)
        lines = self._unfilled.paragraph(passage.text, measures, boxes, setting.size, justified=False)
        matter = self._prose(Role.ITEM, lines, passage)
        return matter._replace(initials=(Initial(mark, left, setting.size),) if mark else ())

    def _mark(self, passage: Passage) -> str:
        return DASH if self.fount.roman.missing(passage.mark) else passage.mark

    def _heading(self, passage: Passage) -> Matter:
        return self._headings.set(passage, last=passage is self._last)

    def _pause(self, passage: Passage) -> Matter:  # noqa: ARG002 (every passage is set alike)
        return Matter(Role.BREAK, (), 1, self.setting.size, self.setting.leading, together=1)

    def _placed(self, passage: Passage) -> Matter:
        """Lines in the middle or at the right, those too wide for the measure on several."""
        size, measure, texts = self.setting.size, self.setting.measure, passage.text.split("\n")
        parts = [self._unfilled.centred(words.split(" "), self._centred, size, measure) for words in texts]
        found, side = joined(parts), 2 if passage.mark == RIGHT else 1
        lines = tuple(line._replace(x=side * line.x) for line in found.lines)
        matter = self._prose(Role.PLACED, found._replace(lines=lines), passage)
        turned = (words for words, part in zip(texts, parts, strict=True) if len(part.lines) > 1)
        before = 1 if passage.mark == CENTRED and self._before else matter.before
        return matter._replace(together=len(lines), before=before).remarked(Remarks(placed=tuple(turned)))

    def _motto(self, passage: Passage) -> Matter:
        """Words of somebody else under a head: what they belong to begins after them."""
        found = motto_lines(passage.text, self._unfilled, self._sparing, self.setting)
        return self._prose(Role.MOTTO, found, passage)._replace(together=len(found.lines))

    def _note(self, passage: Passage) -> Matter:
        """A note after its chapter, its figure before it, in smaller type."""
        setting = self.setting
        size = NOTE_SIZE * setting.size
        hang = max(1.2, self.fount.width(passage.mark) + 0.4) * size
        measures = Measures(hang, (self.measure - hang,))
        boxes = self._boxes_for(measures, size, ragged=not self._justified)
        lines = self.lines.paragraph(passage.text, measures, boxes, size, justified=self._justified)
        matter = self._prose(Role.NOTE, lines, passage)
        return matter._replace(size=size, initials=(Initial(passage.mark, 0.0, size),) if passage.mark else ())

    def _foot_notes(self, passages: Sequence[Passage]) -> Iterator[Matter]:
        """Notes for the foot of a page, each with all its paragraphs."""
        begins = [place for place, passage in enumerate(passages) if passage.mark or place == 0]
        for start, end in pairwise([*begins, len(passages)]):
            parts = [self._note(passage) for passage in passages[start:end]]
            lines = joined(SetLines(part.lines) for part in parts).lines
            remarks = together(part.remarks for part in parts)
            step = NOTE_SIZE * self.setting.leading
            yield parts[0]._replace(lines=lines, rows=len(lines), step=step, reached=self._reached, remarks=remarks)
            self._reached += sum(passage.words for passage in passages[start:end])

    def _table(self, passage: Passage) -> Matter:
        """A table in columns, or one row after the other where they have no room."""
        setting = self.setting
        left, _ = self._inset(passage)
        table = in_columns(passage, self._unfilled, self._centred, setting.size, left, self.measure - left)
        if table is None:
            return self._rows_of_table(passage)
        short = len(table.lines) <= setting.lines_per_page // 2
        return self._prose(Role.TABLE, SetLines(table.lines, table.wide), passage)._replace(
            size=table.size,
            together=len(table.lines) if short else table.begin,
            bound=table.bound,
            rule=(table.heads, table.left, table.right),
        )

    def _rows_of_table(self, passage: Passage) -> Matter:
        rows = "\n".join("; ".join(filter(None, row)) for row in cells_of(passage))
        matter = self._verse(passage._replace(text=rows, mark=""))
        return matter._replace(remarks=matter.remarks._replace(verses=(), unfit=(passage.line,)))

    def _boxes_for(self, measures: Measures, size: float, *, ragged: bool) -> Boxes:
        """Boxes of which none is wider than any of some lines in type of a size in mm."""
        room = min(self._room, (min(measures.widths) - max(0.0, measures.indent)) / size)
        return self._ragged.ragged(room) if ragged else self._filled.filled(room)
