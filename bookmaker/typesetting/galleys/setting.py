"""How a text is set: type, size, measure, lines to the page, and the manner of it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from ...ground.typefaces import Typeface
from ..lines.tracking import tracking_at
from ..page import PageFrame

__all__ = ["FEWEST_LETTERS", "NARROWEST", "Manner", "Setting", "reach"]

WIDEST_INDENT = 0.25
"""A paragraph is indented by one em, in a narrow measure by this share of it."""


NARROWEST, FEWEST_LETTERS = 11.0, 24
"""Ems; shorter lines, of fewer than about so many letters, are better left ragged (common practice)."""


@dataclass(frozen=True, slots=True)
class Manner:
    """What the maker may choose besides type and size.

    `justified` lines all end at the margin; None leaves that to the measure. With `hanging`, punctuation stands
    out into it. `drop_capital` is how many lines deep the first letter of a chapter is, 0 for none. With
    `new_pages` chapters begin on pages of their own, with `rectos` on such as lie on the right. With `foot_notes` notes
    stand at the foot of their page. Letters stand `tracking` ems further apart than usual; None leaves that to the
    size of type.
    """

    justified: bool | None = None
    hanging: bool = True
    drop_capital: int = 0
    new_pages: bool = True
    rectos: bool = False
    foot_notes: bool = False
    tracking: float | None = None


@dataclass(frozen=True, slots=True)
class Setting:
    """Type on pages: `size` (the em), `leading` (from line to line) and `measure` in mm.

    `above` is how far ink reaches over the first baseline, in mm: the first line hangs so from the top of
    the type area. Descenders of the last line stay inside it. All pages share these baselines.
    """

    typeface: Typeface
    size: float
    leading: float
    measure: float
    above: float
    lines_per_page: int

    @classmethod
    def of(cls, typeface: Typeface, size: float, leading: float, frame: PageFrame) -> Setting:
        """Type of a size on the pages of a frame; `leading` is a multiple of the size."""
        area = frame.type_area(1)
        above, below = reach(typeface)
        room = area.height - (above + below) * size
        lines = 1 + math.floor(room / (leading * size) + 1e-9) if room >= -1e-9 else 0
        return cls(typeface, size, leading * size, area.width, above * size, lines)

    @property
    def fit_to_justify(self) -> bool:
        """Whether lines are long enough to be filled without gaps; those of a typewriter end as they come."""
        return self.has_letters(self.measure) and not self.typewritten

    def has_letters(self, measure: float) -> bool:
        """Whether lines of a measure in mm have the letters they need to be filled."""
        return measure >= NARROWEST * self.size

    def fills(self, measure: float, manner: Manner) -> bool:
        """Whether lines of a measure in mm are filled in a justified text: short ones only if the maker says so."""
        return bool(manner.justified) or self.has_letters(measure)

    @property
    def typewritten(self) -> bool:
        """Whether all letters are equally wide."""
        narrow, wide = (self.typeface.shape(letter).width for letter in "im")
        return narrow >= wide and not self.typeface.missing("im")

    def tracking(self, manner: Manner) -> tuple[float, float]:
        """How far apart letters stand, in ems: in lines that are filled, before that, and in those that are not."""
        if manner.tracking is not None:
            return manner.tracking, manner.tracking
        return 0.0, 0.0 if self.typewritten else tracking_at(self.size)

    @property
    def indent(self) -> float:
        """Indent of a paragraph in mm."""
        return min(self.size, self.measure * WIDEST_INDENT)


def reach(typeface: Typeface) -> tuple[float, float]:
    """How far letters reach over and under the baseline, in ems: capitals and ascenders, descenders."""
    return max(typeface.cap_height, typeface.shape("dfl").top), max(0.0, -typeface.shape("gjpqy").bottom)
