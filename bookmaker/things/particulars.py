"""What a plan answers for itself, whatever else there is on its shelf."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Mapping
from typing import Literal

from ..ground.drawing import Colour
from ..ground.geometry import Size
from ..ground.problems import Problem
from ..paper.stock import Stock
from ..paper.thickness import Thickness
from ..sheets.cutting import CutPart, Stick
from ..sheets.flat import Flat
from .answers import Advice, Bulk, Clothes, Measurable, Stretch
from .standing import Standing
from .terms import Terms

__all__ = ["Particulars"]


class Particulars(ABC):
    """What is to be printed and cut for a thing, how large it stands, and what may be done about that; in mm."""

    __slots__ = ()

    @property
    @abstractmethod
    def flats(self) -> tuple[Flat, ...]:
        """Everything to print for it."""

    @property
    @abstractmethod
    def made_as(self) -> str:
        """What it is, in a few words."""

    @property
    def cut_list(self) -> tuple[CutPart, ...]:
        """Everything to cut by hand for it."""
        return ()

    @property
    def sticks(self) -> tuple[Stick, ...]:
        """Everything to saw by hand from strip for it."""
        return ()

    @property
    def standing(self) -> Standing | None:
        """The finished thing as a shelf sees it; None if it stands nowhere."""
        return None

    @property
    def bulk(self) -> Bulk | None:
        """The room it takes as it lies, in a box say; None if it goes into none."""
        if stands := self.standing:
            return Bulk(max(stands.height, stands.depth), min(stands.height, stands.depth), stands.thickness)
        return None

    @property
    def from_above(self) -> Size | None:
        """Its width and its depth as it stands or lies on a desk, seen from above; None if it does not."""
        if stands := self.standing:
            return Size(stands.across.length if stands.stance.opened else stands.depth, stands.height)
        return Size(self.bulk.length, self.bulk.width) if self.bulk else None

    @property
    def on_wall(self) -> Size | None:
        """Its width and its height as it hangs on a wall; None if it does not hang."""
        return None

    @property
    def held(self) -> tuple[str, ...]:
        """The ids of the things that stand in it."""
        return ()

    @property
    def notes(self) -> tuple[Problem, ...]:
        """What there is to say about its making."""
        return ()

    @property
    def stretch(self) -> Stretch | None:
        """How thick it may become, if it is to take what is left on its space."""
        return None

    @property
    def layers(self) -> tuple[tuple[str, Thickness], ...]:
        """Where its thickness comes from: what it is at each step of the making, each with all that lies in it."""
        return ()

    @property
    def flat_lengths(self) -> Mapping[str, float]:
        """Lengths on its flats that follow from its thickness, by what they are."""
        return {}

    @property
    def computed(self) -> float:
        """How thick it is, whatever was measured, in mm."""
        return self.layers[-1][1].computed if self.layers else 0.0

    @property
    def measurable(self) -> tuple[Measurable, ...]:
        """Its parts that may be measured."""
        return ()

    @property
    def templates(self) -> Mapping[str, tuple[Flat, ...]]:
        """What the maker may draw over, by the word that tells it from the rest; the first needs none."""
        return {}

    @property
    def paged_on(self) -> frozenset[str]:
        """The stocks its pages are printed on."""
        return frozenset()

    @property
    def lettered_on(self) -> frozenset[str]:
        """The stocks its titles are printed on."""
        return frozenset()

    @property
    def look(self) -> int:
        """The number on which all hangs about it that is left to chance; 0 if nothing is."""
        return 0

    @property
    def tone(self) -> Colour | None:
        """The colour in which it is seen, on the whole, if it has one."""
        return None

    @property
    def style(self) -> str:
        """The style in which it is seen, if that has a name."""
        return ""

    @property
    def filed_under(self) -> str:
        """Its author, the surname first, as a list of authors has it; empty if it has none."""
        return ""

    def thinner(self, missing: float) -> Advice | None:
        """How it can be made thinner by so many mm."""
        return None

    def smaller(self, side: Literal["tall", "deep"]) -> str:
        """What makes it less tall or deep."""
        return "make it smaller"

    def onto(self, off_cut: Stock, terms: Terms) -> Advice | None:
        """How its parts can be made to go on an off-cut that is too small for them."""
        return None

    def covering_for(self, flat: Flat) -> Clothes:
        """What covers a flat of something else that is to look like this thing, without its words."""
        return Clothes()

    def punctuated(self, text: str) -> str:
        """A text with the marks that this thing is punctuated with."""
        return text
