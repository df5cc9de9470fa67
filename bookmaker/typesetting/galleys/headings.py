"""Headings: how large those of each rank are, and the lines they stand on.

All headings of a rank look alike: where one of them has a word too wide for the measure, or takes more than half
the lines of a page, all are set smaller, down to a bound. What is too wide even then is hyphenated, and no other word
of a heading is; what is longer than a page even then goes on on the next one, like a paragraph.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from itertools import pairwise

from ..lines.balance import balanced, leans
from ..lines.boxes import Boxes
from ..lines.fount import NOTE_FIGURES, Style, as_read
from ..lines.paragraphs import Lines
from ..manuscripts.passage import Passage, Role
from ..manuscripts.ranks import Rank
from .matter import Matter
from .remarks import Remarks
from .setting import Manner, Setting, reach

__all__ = ["Headings"]

SIZES = {Rank.TITLE: (1.6, 1.2), Rank.PART: (1.6, 1.2), Rank.CHAPTER: (1.3, 1.0), Rank.SECTION: (1.0, 0.85)}
"""Sizes of headings, as multiples of the size of the text: the usual one, and the least."""

LEADING = 1.2
"""From line to line of a heading, as a multiple of its size."""

ROOMY = 16
"""On pages of so many lines two blank lines stand under the head of a chapter."""

MOST_ROWS = 1 / 2
"""No heading takes a greater share of a page's lines, if it can be set smaller."""

STEP = 0.05
"""Sizes of headings are tried in such steps, as multiples of the size of the text."""

BELOW = 2
"""So many lines of text stand under the head of a chapter: it is sunk less where they would have no room."""

SUNK = {Rank.TITLE: 1 / 5, Rank.PART: 1 / 3, Rank.CHAPTER: 1 / 5}
"""How far down a new page headings stand, as a share of its lines."""

FEWER_LINES = 0.95
"""All headings of a rank are set smaller, down to this share, if that saves a line of one of them."""

PIECES = re.compile(r"(?<=[-\u2010\u2013\u2014/])")
"""Where a word may be parted without a hyphen."""


class Headings:
    """Sets the headings among some passages."""

    def __init__(self, setting: Setting, manner: Manner, lines: Lines, passages: Sequence[Passage]) -> None:
        self._setting, self._manner, self._lines, self._fount = setting, manner, lines, lines.fount
        self._measure = setting.measure / setting.size + 1e-9
        self._scales = self._fitted([passage for passage in passages if passage.role is Role.HEADING])
        self._boxes = {scale: self._boxes_at(scale) for scale in set(self._scales.values())}

    def set(self, passage: Passage, *, last: bool = False) -> Matter:
        """A heading in the middle, so many rows deep that what follows is back on the grid.

        The `last` words of a text may stand at the foot of a page: their letters must not reach below it.
        """
        setting, rank = self._setting, _rank(passage)
        scale = self._scales[rank]
        size, chapter, page = setting.size * scale, rank < Rank.SECTION, setting.lines_per_page
        found = self._lines.centred(self._words(passage), self._boxes[scale], size, setting.measure)
        lines, remarks = found.lines, Remarks(wide=found.wide)
        foot = reach(setting.typeface)[1] * max(0.0, size - setting.size) if last else 0.0
        step, rows = self._depth(len(lines), scale, foot)
        if rows > page:
            # it is parted like a paragraph
            step, rows, foot = setting.leading, len(lines), 0.0
            remarks = remarks._replace(long=(passage.text,))
        after = (2 if page >= ROOMY else 1) if chapter else 0
        begins = rank is Rank.PART or (chapter and self._manner.new_pages)
        return Matter(
            Role.HEADING,
            lines,
            rows,
            size,
            step,
            drop=(rows - 1) * setting.leading - (len(lines) - 1) * step - foot,
            before=2 if chapter else 1,
            after=after,
            together=len(lines),
            stays=True,
            opens=begins,
            recto=begins and self._manner.rectos,
            sink=max(0, min(int(page * SUNK[rank]), page - rows - after - BELOW)) if begins else 0,
            heading=as_read(NOTE_FIGURES.sub("", passage.text)) if chapter else "",
            title=rank is Rank.TITLE,
            part=rank is Rank.PART,
            within=passage.within,
            short=passage.short,
            remarks=remarks,
        )

    def _depth(self, count: int, scale: float, foot: float = 0.0) -> tuple[float, int]:
        """From line to line of a heading, in mm, and how many rows its lines take with `foot` mm under them."""
        setting, size = self._setting, self._setting.size * scale
        step = max(setting.leading, size * LEADING)
        taller = max(0.0, size - setting.size) * setting.typeface.cap_height
        return step, 1 + math.ceil(((count - 1) * step + taller + foot) / setting.leading - 1e-9)

    def _boxes_at(self, scale: float) -> Boxes:
        return Boxes(self._fount, self._measure / scale, hanging=False, sparing=True)

    def _words(self, passage: Passage) -> list[str]:
        style = self._section_style(passage.level - Rank.CHAPTER) if passage.level >= Rank.SECTION else ""
        return [style + word for word in passage.text.split(" ")]

    def _section_style(self, depth: int) -> str:
        """Bold for sections, italic for what is below them, as far as there are faces for it."""
        styles = [Style.BOLD] if Style.BOLD in self._fount.faces else []
        styles += [Style.ITALIC] if self._fount.slanted else []
        return next(iter(styles if depth == 1 else styles[::-1]), Style.ROMAN)

    def _fitted(self, headings: Sequence[Passage]) -> dict[Rank, float]:
        """How large each rank is set, none larger than the one above it."""
        scales: dict[Rank, float] = {}
        above = math.inf
        for rank, (usual, least) in SIZES.items():
            own = [passage for passage in headings if _rank(passage) is rank]
            room = [self._measure / width for passage in own for width in self._widths(passage)]
            largest = min([above, usual, *(scale for scale in room if scale >= least)])
            scale = self._of_fewest_lines(self._measure, largest, max(least, largest * FEWER_LINES), own)
            scales[rank] = self._shortened(scale, min(1.0, least), own)
            if own:
                above = scales[rank]
        return scales

    def _shortened(self, scale: float, least: float, headings: Sequence[Passage]) -> float:
        """A size at which no heading takes more than its share of a page, or the least."""
        page = self._setting.lines_per_page
        most = max(int(page * MOST_ROWS), min(2, page - 1), 1)
        while scale > least and headings:
            boxes, size = self._boxes_at(scale), self._setting.size * scale
            counts = [
                len(self._lines.centred(self._words(heading), boxes, size, self._setting.measure).lines)
                for heading in headings
            ]
            if self._depth(max(counts), scale)[1] <= most:
                break
            scale = max(least, scale - STEP)
        return scale

    def _of_fewest_lines(self, measure: float, largest: float, smallest: float, headings: Sequence[Passage]) -> float:
        """The largest scale at which no heading has more lines than at the smallest."""
        scale = largest
        for passage in headings:
            usual, fewer = (self._line_widths(passage, measure / bound) for bound in (largest, smallest))
            if len(fewer) < len(usual):
                scale = min(scale, max(smallest, measure / max(fewer)))
        return scale

    def _line_widths(self, passage: Passage, measure: float) -> list[float]:
        """How wide the lines of a heading are on as few of them as a measure allows, in ems."""
        words, space = [self._fount.width(word) for word in self._words(passage)], self._fount.word_space
        ends, after = balanced(words, space, measure + self._fount.tracking, [False] * len(words)), self._fount.tracking
        return [sum(words[start:end]) + space * (end - start - 1) - after for start, end in pairwise([0, *ends])]

    def _widths(self, passage: Passage) -> Iterator[float]:
        """The widths of what should stand on one line: words, with articles and the like before them."""
        words, space = self._words(passage), self._fount.tracking + self._fount.word_space
        before = 0.0
        for place, word in enumerate(words):
            pieces = [self._fount.line_width(piece) for piece in PIECES.split(word) if piece]
            yield from pieces
            if before:
                yield before + pieces[0]
            before = pieces[0] + space if leans(as_read(word), first=place == 0) else 0.0


def _rank(passage: Passage) -> Rank:
    return Rank(min(passage.level, Rank.SECTION))
