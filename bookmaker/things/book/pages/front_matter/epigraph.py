"""The epigraph: lines of another writer before the text, with who wrote them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from .....ground.art import Group, Written
from .....ground.geometry import Point, Rect, Size
from .....shelf_file.fields.words import Lines, Title
from .....typesetting.book_type import Family
from .....typesetting.chosen_faces import family_for
from .....typesetting.display import LEADING
from .....typesetting.lines.fount import Style, as_read
from .....typesetting.manuscripts.markdown import emphasised
from .....typesetting.page import Inside, PageFrame
from .few_lines import FewLines, few_lines, few_lines_problems
from .lettered import LetteredPart

__all__ = ["Epigraph"]

SIZE = 1 / 30
"""Size of type (the em) as a share of the page's height: 0.7 mm on a page of 21 mm."""

SUNK = 3 / 9
"""From the head of the page down to the first line, as a share of its height (common practice)."""

HANGING = 1.0
"""Ems by which the rest of a verse that is too long for a line is set in; a single line is prose."""


SOURCE_ASIDE, SOURCE_BELOW = 2.0, 0.4
"""How far the source stands in at least from where the lines begin, in ems, and below them, in lines."""


class Epigraph(LetteredPart):
    """Words of somebody else that the book begins with."""

    kind: Literal["epigraph"] = "epigraph"
    text: Lines = Field(description="what it says, line by line; asterisks are emphasis")
    source: Title | None = Field(None, description="who said it, or where it stands")

    def compose(self, typefaces: Family | None, frame: PageFrame) -> Inside:
        """The lines, and blank pages after them if there are more."""
        said, area = emphasised(self.text), frame.type_area(1)
        named = emphasised(self.source) if self.source else []
        written = (*said, *named)
        family = family_for(typefaces, frame, as_read("".join(written)))
        roman, top = family[Style.ROMAN], frame.height * (1 - SUNK)
        hanging = HANGING if len(said) > 1 else 0.0
        few = few_lines(
            written,
            family,
            frame.upright.height * SIZE,
            Size(area.width, top - area.y - SOURCE_BELOW * LEADING * frame.upright.height * SIZE),
            frame,
            hanging=hanging,
        )
        baseline = top - roman.cap_height * few.size
        block = Group(tuple(_placed(few, bool(named), area, baseline, hanging, frame.right_to_left)))
        problems = few_lines_problems("epigraph", written, self.text, few.size, family, frame)
        return Inside(frame.with_blanks(block), problems)


def _placed(
    few: FewLines, named: bool, area: Rect, baseline: float, hanging: float, right_to_left: bool
) -> Iterator[Written]:
    """The lines ranged along the side at which they begin, as a block in the middle; the source at its other side.

    With `named` the last line as it was written is the source; it may have been turned over.
    """
    indents = [hanging * few.size if number in few.turned else 0.0 for number in range(len(few.lines))]
    starts = [number for number in range(len(few.lines)) if number not in few.turned]
    source = starts[-1] if named else len(few.lines)
    indents[source:] = [SOURCE_ASIDE * few.size] * (len(few.lines) - source)
    width = min(area.width, max(line.width + indent for line, indent in zip(few.lines, indents, strict=True)))
    left = area.centre.x - width / 2
    for number, (line, indent) in enumerate(zip(few.lines, indents, strict=True)):
        aside = width - line.width if number >= source else indent
        x = left + width - line.width - aside if right_to_left else left + aside
        if line.runs:
            below = number + (SOURCE_BELOW if number >= source else 0.0)
            yield Written(line, Point(x, baseline - below * LEADING * few.size))
