"""A framed picture worked out: the flats to print, the parts to cut and the sticks to saw."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from ...ground.geometry import Rect, Size
from ...ground.problems import Problem, Severity, ShelfFileError, gathered
from ...ground.units import print_mm
from ...sheets.cutting import CutPart, Stick
from ...sheets.flat import Flat, Panel, Role
from ...sheets.sheet_room import flat_too_large
from ..listed import FlatPlan, ListedThing
from ..surface import PLAIN_SURFACE, Surface, read_surface
from ..terms import Terms
from ..thing import Plan
from .entry import FrameEntry
from .sizes import FrameSizes, frame_sizes

__all__ = ["Frame", "FramePlan"]

NARROWEST_SIGHT = 3.0
"""Less of a picture is none, in mm (no source)."""

ACETATE = "clear acetate"


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame(ListedThing[FrameEntry]):
    """A framed picture as it was written, with what the picture shows."""

    shows: Surface = PLAIN_SURFACE

    def read(self, folder: Path) -> tuple[Frame, tuple[Problem, ...]]:
        """The frame with its picture."""
        problems: list[Problem] = []
        shows = PLAIN_SURFACE
        with gathered(problems, "shows"):
            shows = read_surface(self.entry.shows, folder)
        return replace(self, shows=shows), tuple(problems)

    def plan(self, terms: Terms, held: Sequence[Plan]) -> FramePlan:
        """Work it out from the picture outwards."""
        entry, sizes = self.entry, frame_sizes(self.entry, terms.scale)
        flats = tuple(_flats(entry, sizes))
        problems = [*_faults(entry, sizes), *_behind(entry, terms)]
        for flat, field in zip(flats, (("stock",), ("mount", "stock")), strict=False):
            problems += flat_too_large(f"the {flat.kind}", flat, terms.stocks[flat.stock], field)
        if any(problem.severity is Severity.ERROR for problem in problems):
            raise ShelfFileError(problems)
        return FramePlan(
            thing=self,
            made_as=f"frame, {entry.rails.corners}",
            flats=flats,
            cut_list=tuple(_parts(entry, sizes)),
            sticks=tuple(_sticks(entry, sizes)),
            notes=tuple(problems),
            sizes=sizes,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FramePlan(FlatPlan[Frame]):
    """A framed picture worked out."""

    sizes: FrameSizes

    @property
    def on_wall(self) -> Size:
        """The outside of its rails."""
        return self.sizes.outside

    @property
    def from_above(self) -> Size:
        """The same: it lies on its back."""
        return self.sizes.outside


def _flats(entry: FrameEntry, sizes: FrameSizes) -> Iterator[Flat]:
    whole = Rect(0, 0, *sizes.picture)
    yield Flat("picture", "picture", entry.stock, whole.corners, (), (Panel(Role.FRONT, whole),))
    if entry.mount and sizes.window:
        card = Rect(0, 0, *sizes.framed)
        yield Flat("mount", "mount", entry.mount.stock, card.corners, (), (), holes=(sizes.window.corners,))


def _parts(entry: FrameEntry, sizes: FrameSizes) -> Iterator[CutPart]:
    """What is cut from sheet: a backing behind rails without a step reaches under them, and is glued to them."""
    behind = sizes.framed if entry.rails.rebate else Size(*(side - entry.rails.face / 2 for side in sizes.outside))
    if entry.glazing:
        yield CutPart("glazing", ACETATE, sizes.framed.height, sizes.framed.width, entry.glazing)
    if entry.backing:
        yield CutPart("backing", "card", behind.height, behind.width, entry.backing)


def _sticks(entry: FrameEntry, sizes: FrameSizes) -> Iterator[Stick]:
    rails, mitred = entry.rails, entry.rails.corners == "mitre"
    bevels = (45.0, 45.0) if mitred else (0.0, 0.0)
    for what, length in sizes.rails(rails.face, mitred=mitred):
        yield Stick(what, rails.material, length, rails.face, rails.depth, bevels, 2, sold=rails.sold)


def _faults(entry: FrameEntry, sizes: FrameSizes) -> Iterator[Problem]:
    """What cannot be built, whatever it is built of."""
    rails = entry.rails
    if rails.covers >= rails.face:
        most = print_mm(rails.face / 2, 2)
        yield Problem(
            f"the rails cover {print_mm(rails.covers, 2)} and are only {print_mm(rails.face, 2)} wide",
            f"write at most {most}, or a wider face",
            field=("rails", "covers"),
        )
    if min(sizes.sight) < NARROWEST_SIGHT:
        yield Problem(
            f"only {print_mm(max(0.0, min(sizes.sight)), 2)} of it is seen between the rails",
            "write a larger picture, or rails that cover less of it",
            field=("rails", "covers"),
        )
    if sizes.window and min(sizes.window.size) <= 0:
        yield Problem(
            "the mount covers the whole picture",
            f"write covers: of less than {print_mm(min(sizes.picture) / 2, 2)}",
            field=("mount", "covers"),
        )
    if entry.mount and rails.covers >= entry.mount.border:
        yield Problem(
            f"the rails cover {print_mm(rails.covers, 2)}, and the border of the mount is no wider",
            f"write a border: of more than {print_mm(rails.covers, 2)}",
            field=("mount", "border"),
        )
    if entry.space:
        yield Problem("a frame hangs, and stands in no space", "leave space out", field=("space",))
    longest = max(length for _, length in sizes.rails(rails.face, mitred=rails.corners == "mitre"))
    if longest > rails.sold:
        yield Problem(
            f"its longest rail has {print_mm(longest, 1)}, and the strip is sold by {print_mm(rails.sold, 1)}",
            f"write sold: of at least {print_mm(longest, 1)}",
            field=("rails", "sold"),
        )


def _behind(entry: FrameEntry, terms: Terms) -> Iterator[Problem]:
    """A step that is too shallow for what lies in it."""
    papers = [entry.stock, *([entry.mount.stock] if entry.mount else [])]
    thick = sum(terms.stocks[name].caliper for name in papers) + entry.glazing + entry.backing
    if entry.rails.rebate and thick > entry.rails.rebate + 1e-9:
        yield Problem(
            f"what lies in the rebate of {print_mm(entry.rails.rebate, 2)} is {print_mm(thick, 2)} thick",
            f"it sticks out behind; a rebate: of {print_mm(thick, 2)} holds it",
            Severity.NOTE,
            field=("rails", "rebate"),
        )
    if entry.rails.rebate >= entry.rails.depth:
        yield Problem(
            f"the rebate is as deep as the strip is thick, {print_mm(entry.rails.depth, 2)}",
            "write a shallower rebate, or a deeper strip",
            field=("rails", "rebate"),
        )
