"""Captions of the plates in a text: in the middle under their pictures, all of one size.

A picture has at least half its page: where a caption would leave it less, all captions are made smaller.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from ..display import largest
from ..lines.boxes import Boxes
from ..lines.fount import Fount, Style
from ..lines.paragraphs import Lines
from ..lines.set_lines import SetLines
from ..manuscripts.passage import Passage, Role
from .matter import Matter
from .remarks import Remarks
from .setting import Setting

__all__ = ["GAP", "Captions"]

GAP = 0.5
"""Clear height between a picture and its caption, in lines of it."""

MOST = 1 / 2
"""No caption with the gap over it takes a greater share of the page."""


class Captions:
    """Sets the captions among some passages."""

    def __init__(self, fount: Fount, setting: Setting, lines: Lines, passages: Sequence[Passage]) -> None:
        self._fount, self._setting, self._lines = fount, setting, lines
        plates = [passage for passage in passages if passage.role is Role.PLATE and passage.text]
        self.size = self._fitted(plates) if plates else setting.size
        self._boxes = self._boxes_at(self.size)

    def plate(self, passage: Passage) -> Matter:
        """A picture that takes a page, with the lines of its caption."""
        setting, words = self._setting, _words(passage)
        found = self._lines.centred(words, self._boxes, self.size, setting.measure) if words else SetLines(())
        smaller = (self.size,) if self.size < setting.size else ()
        return Matter(
            Role.PLATE,
            found.lines,
            setting.lines_per_page,
            self.size,
            self._step(self.size),
            together=len(found.lines),
            picture=passage.mark,
            remarks=Remarks(wide=found.wide, captions=smaller),
        )

    def _step(self, size: float) -> float:
        """From line to line of captions in a size, in mm."""
        return self._setting.leading * size / self._setting.size

    def _boxes_at(self, size: float) -> Boxes:
        return Boxes(self._fount, self._setting.measure / size + 1e-9, hanging=False, sparing=True)

    def _fitted(self, plates: Sequence[Passage]) -> float:
        """The largest size, in mm, in which each caption leaves its picture enough of the page."""
        size = self._setting.size
        for passage in plates:
            size = largest(size, partial(self._has_room, _words(passage)))
        return size

    def _has_room(self, words: Sequence[str], size: float) -> bool:
        setting = self._setting
        found = self._lines.centred(words, self._boxes_at(size), size, setting.measure)
        return (len(found.lines) + GAP) * self._step(size) <= MOST * setting.lines_per_page * setting.leading


def _words(passage: Passage) -> list[str]:
    """The words of a caption, in italic where nothing else is asked for."""
    return [word if word[0] in set(Style) else Style.ITALIC + word for word in passage.text.split(" ") if word]
