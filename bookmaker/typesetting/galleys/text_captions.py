"""Pictures in a text, and their captions in the middle under them, all of one size.

A plate has a page of its own, a figure whole rows of one. A picture has at least half its room: where a caption would
leave it less, all captions are made smaller.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from itertools import count

from ..display import largest
from ..lines.boxes import Boxes
from ..lines.fount import Style
from ..lines.paragraphs import Lines
from ..lines.set_lines import SetLines
from ..manuscripts.passage import AFLOAT, Passage, Role
from .matter import Matter
from .remarks import Remarks
from .setting import Setting, reach

__all__ = ["CAPTION_WHITE", "GAP", "Captions", "depth_of", "most_rows"]

CAPTION_SIZE = 0.85
"""Size of captions, as a share of that of the text, if all have room."""

GAP = 0.5
"""Clear height between a plate and its caption, in lines of it."""

CAPTION_WHITE = 0.4
"""Between a picture and its caption, in lines of it."""

MOST = 1 / 2
"""No caption with the gap over it takes a greater share of its picture's room."""

MOST_ROWS, SMALL_PAGE = 0.6, 6
"""A figure takes no greater share of the rows of a page; on a page of so few rows it may take all."""

NARROWER = 0.9
"""Rather than take one more row, a figure is narrower than the text, down to this share of it."""

SPACED = 8
"""Pages of so many lines have room for half a row over and under a figure."""


def most_rows(setting: Setting) -> int:
    """How many rows of a page a figure takes at most."""
    page = setting.lines_per_page
    return max(min(SMALL_PAGE, page), int(page * MOST_ROWS))


def depth_of(rows: int, setting: Setting) -> float:
    """How high so many rows are, in mm: from the top of capitals on the first to the baseline of the last."""
    return (rows - 1) * setting.leading + setting.typeface.cap_height * setting.size


class Captions:
    """Sets the pictures among some passages, and their captions."""

    def __init__(self, setting: Setting, lines: Lines, passages: Sequence[Passage]) -> None:
        self._fount, self._setting, self._lines = lines.fount, setting, lines
        self._usual = CAPTION_SIZE * setting.size
        self.size = self._usual
        for passage in passages:
            if passage.role in AFLOAT and passage.text:
                self.size = largest(self.size, partial(self._has_room, passage))
        self._boxes = self._boxes_at(self.size)

    def plate(self, passage: Passage) -> Matter:
        """A picture that takes a page, with the lines of its caption."""
        return self._matter(passage, self._set(passage))

    def figure(self, passage: Passage) -> Matter:
        """A picture in the text, with the lines of its caption: as wide as the text, if that is not too high."""
        setting, found = self._setting, self._set(passage)
        caption = self._depth(found, self.size)
        high = NARROWER * setting.measure * passage.shape + caption
        rows = next(rows for rows in count(1) if depth_of(rows, setting) >= high or rows >= most_rows(setting))
        white = 0.5 if setting.lines_per_page >= SPACED else 0.0
        return self._matter(passage, found)._replace(rows=rows, run=rows, before=white, after=white)

    def _matter(self, passage: Passage, found: SetLines) -> Matter:
        smaller = (self.size,) if self.size < self._usual else ()
        return Matter(
            passage.role,
            found.lines,
            self._setting.lines_per_page,
            self.size,
            self._step(self.size),
            together=len(found.lines),
            picture=passage.mark,
            remarks=Remarks(wide=found.wide, captions=smaller),
        )

    def _set(self, passage: Passage) -> SetLines:
        words = self._words(passage)
        return self._lines.centred(words, self._boxes, self.size, self._setting.measure) if words else SetLines(())

    def _step(self, size: float) -> float:
        """From line to line of captions in a size, in mm."""
        return self._setting.leading * size / self._setting.size

    def _depth(self, found: SetLines, size: float) -> float:
        """From the foot of a figure to the last baseline of its caption, in mm."""
        above, step = reach(self._setting.typeface)[0] * size, self._step(size)
        return CAPTION_WHITE * step + above + (len(found.lines) - 1) * step if found.lines else 0.0

    def _boxes_at(self, size: float) -> Boxes:
        return Boxes(self._fount, self._setting.measure / size + 1e-9, hanging=False, sparing=True)

    def _has_room(self, passage: Passage, size: float) -> bool:
        """Whether a caption in a size, in mm, leaves its picture enough room."""
        setting = self._setting
        found = self._lines.centred(self._words(passage), self._boxes_at(size), size, setting.measure)
        if passage.role is Role.FIGURE:
            return self._depth(found, size) <= MOST * depth_of(most_rows(setting), setting)
        return (len(found.lines) + GAP) * self._step(size) <= MOST * setting.lines_per_page * setting.leading

    def _words(self, passage: Passage) -> list[str]:
        """The words of a caption, in italic, if there is one, where nothing else is asked for."""
        usual = Style.ITALIC if self._fount.slanted else ""
        return [word if word[0] in set(Style) else usual + word for word in passage.text.split(" ") if word]
