"""The half title: the book's title alone, on the leaf before the title page."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from .....ground.drawing import BLACK
from .....shelf_file.fields.words import Ink
from .....typesetting.book_type import Family
from .....typesetting.chosen_faces import family_for, missing_glyphs
from .....typesetting.display import centred, titled
from .....typesetting.lines.fount import Style
from .....typesetting.page import Inside, PageFrame
from ..prose.sizes import type_too_small
from .lettered import LetteredPart

__all__ = ["HalfTitle"]

SIZE = 1 / 18
"""Size of type (the em) as a share of the page's height: 1.17 mm on a page of 21 mm."""

SUNK = 3 / 9
"""From the head of the page down to the title, as a share of its height (common practice)."""

MOST_LINES = 5


class HalfTitle(LetteredPart):
    """The title of the book and nothing else."""

    kind: Literal["half title"] = "half title"
    begins: Literal["new page", "recto"] = Field("recto", description="on which page it begins")
    ink: Ink = Field(BLACK, description="colour of the title")

    def compose(self, typefaces: Family | None, frame: PageFrame) -> Inside:
        """The title, and blank pages after it if there are more."""
        title, area = frame.book.title, frame.type_area(1)
        face = family_for(typefaces, frame, title)[Style.ROMAN]
        said = frame.printed(title, face)
        lines = titled(
            face, said, frame.upright.height * SIZE, area.width, MOST_LINES, right_to_left=frame.right_to_left
        )
        problems = list(missing_glyphs("half title", face, title))
        if not lines:
            return Inside(frame.with_blanks(), tuple(problems))
        size = lines[0].size
        problems += type_too_small("the half title", face, size, frame, "leave this part out, or make the page larger")
        page = centred(lines, area.centre.x, frame.height * (1 - SUNK) - face.cap_height * size, self.ink)
        return Inside(frame.with_blanks(page), tuple(problems))
