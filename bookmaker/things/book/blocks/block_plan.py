"""What a text block is once it is worked out, whatever its kind."""

from __future__ import annotations

from dataclasses import dataclass

from ....ground.problems import Problem
from ....paper.thickness import Layer, Thickness
from ....sheets.cutting import CutPart
from ....sheets.flat import Flat

__all__ = ["BlockPlan", "Stretching"]


@dataclass(frozen=True, slots=True)
class Stretching:
    """How thin and how thick a block may become that takes what is left on its space, in mm; None for any.

    `about` is what it is to be about, `choices` all thicknesses it can have, if they are not any.
    """

    at_least: float
    at_most: float | None
    about: float | None = None
    choices: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class BlockPlan:
    """A text block worked out.

    `pages` counts printed pages, `panels` all page-sized parts with the blank ones; `bare` is the thickness of the
    block by itself, as it is measured; `pasted` are the films of glue that come when it is pasted into its cover;
    `flats` are the parts to print, in the order of the book. `thickness_of_a_page` is what one page more or less
    makes, in mm. `pastedowns` says whether its outermost panels are blank and made to be glued into the cover.
    `cut_list` is what is cut by hand. `stretch` says how thick a block may become that takes what is left on its space.
    """

    kind: str
    pages: int
    panels: int
    bare: Thickness
    flats: tuple[Flat, ...]
    thickness_of_a_page: float = 0.0
    pastedowns: bool = False
    pasted: tuple[Layer, ...] = ()
    cut_list: tuple[CutPart, ...] = ()
    notes: tuple[Problem, ...] = ()
    stretch: Stretching | None = None

    @property
    def thickness(self) -> Thickness:
        """Everything between the insides of the covers: the block as it is known, and the glue under its ends."""
        return self.bare.under(*self.pasted) if self.pasted else self.bare
