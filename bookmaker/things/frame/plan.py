"""A framed picture worked out: the flats to print, the parts to cut and the sticks to saw."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from ...ground.geometry import Rect, Size
from ...ground.problems import FieldPath, Problem, Severity, ShelfFileError, gathered
from ...ground.units import print_mm
from ...sheets.cutting import CutPart, Stick
from ...sheets.flat import Flat, Panel, Role
from ...sheets.sheet_room import flat_too_large
from ..box.net import Card, Net
from ..listed import FlatPlan, ListedThing
from ..surface import PLAIN_SURFACE, Surface, read_surface
from ..terms import Terms
from ..thing import Plan
from .entry import FrameEntry, RailsEntry
from .jig import jig_flat
from .sizes import FrameSizes, frame_sizes
from .wrap import Core, wrap_net

__all__ = ["Frame", "FramePlan"]

NARROWEST_SIGHT = 3.0
"""Less of a picture is none, in mm (no source)."""

ACETATE = "clear acetate"
BACKING = "backing card"

STOCK_KEYS: Mapping[str, FieldPath] = {
    "picture": ("stock",),
    "mount": ("mount", "stock"),
    "wrap": ("rails", "wrap", "stock"),
    "jig": ("jig",),
}
"""The field that names the stock of each kind of flat."""


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
        entry, wrap = self.entry, self.entry.rails.wrap
        card = Card.of(terms.stocks[wrap.stock]) if wrap else None
        sizes = frame_sizes(entry, terms.scale, card.layer if card else 0.0)
        wraps = tuple(_wraps(entry, sizes, card)) if card else ()
        flats = tuple(_flats(entry, sizes, wraps))
        problems = [*_faults(entry, sizes), *_behind(entry, terms)]
        for flat in flats:
            problems += flat_too_large(f"the {flat.kind}", flat, terms.stocks[flat.stock], STOCK_KEYS[flat.kind])
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
            wraps=wraps,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FramePlan(FlatPlan[Frame]):
    """A framed picture worked out."""

    sizes: FrameSizes
    wraps: tuple[Net, ...] = ()

    @property
    def on_wall(self) -> Size:
        """The outside of its rails."""
        return self.sizes.outside

    @property
    def from_above(self) -> Size:
        """The same: it lies on its back."""
        return self.sizes.outside


def _wraps(entry: FrameEntry, sizes: FrameSizes, card: Card) -> Iterator[Net]:
    """The paper round each rail, two of each."""
    rails = entry.rails
    for what, length in sizes.rails(rails.face, mitred=True):
        yield from [wrap_net(Core(length, rails.face, rails.depth), card, f"wrap of the {what}")] * 2


def _flats(entry: FrameEntry, sizes: FrameSizes, wraps: Sequence[Net]) -> Iterator[Flat]:
    whole = Rect(0, 0, *sizes.picture)
    yield Flat("picture", "picture", entry.stock, whole.corners, (), (Panel(Role.FRONT, whole),))
    if entry.mount and sizes.window:
        card = Rect(0, 0, *sizes.framed)
        yield Flat("mount", "mount", entry.mount.stock, card.corners, (), (), holes=(sizes.window.corners,))
    if entry.rails.wrap:
        yield from (net.flat("wrap", entry.rails.wrap.stock) for net in wraps)
    if entry.jig:
        yield jig_flat(sizes, entry.rails.face + 2 * sizes.layer, entry.jig)


def _parts(entry: FrameEntry, sizes: FrameSizes) -> Iterator[CutPart]:
    """What is cut from sheet: a backing behind rails without a step reaches under them, and is glued to them."""
    behind = sizes.framed if entry.rails.rebate else Size(*(side - entry.rails.face / 2 for side in sizes.outside))
    if entry.glazing:
        yield CutPart("glazing", ACETATE, sizes.framed.height, sizes.framed.width, entry.glazing)
    if entry.backing:
        yield CutPart("backing", BACKING, behind.height, behind.width, entry.backing)


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
    yield from _mount_faults(entry, sizes)
    yield from _wrap_faults(entry.rails)
    if entry.space:
        yield Problem("a frame hangs, and stands in no space", "leave space out", field=("space",))
    longest = max(length for _, length in sizes.rails(rails.face, mitred=rails.corners == "mitre"))
    if longest > rails.sold:
        yield Problem(
            f"its longest rail is {print_mm(longest, 1)} long, "
            f"but the strip is sold in lengths of {print_mm(rails.sold, 1)}",
            f"write sold: of at least {print_mm(longest, 1)}",
            field=("rails", "sold"),
        )


def _mount_faults(entry: FrameEntry, sizes: FrameSizes) -> Iterator[Problem]:
    """A mount that covers all, or is covered itself."""
    if sizes.window and min(sizes.window.size) <= 0:
        yield Problem(
            "the mount covers the whole picture",
            f"write covers: of less than {print_mm(min(sizes.picture) / 2, 2)}",
            field=("mount", "covers"),
        )
    if entry.mount and entry.rails.covers >= entry.mount.border:
        yield Problem(
            f"the rails cover {print_mm(entry.rails.covers, 2)}, but the border of the mount is not wider",
            f"write a border: of more than {print_mm(entry.rails.covers, 2)}",
            field=("mount", "border"),
        )


def _wrap_faults(rails: RailsEntry) -> Iterator[Problem]:
    """Paper round rails that it does not go round."""
    if rails.wrap and rails.corners != "mitre":
        yield Problem(
            "rails in paper need mitred corners: the ends of others would be bare",
            "write corners: mitre",
            field=("rails", "corners"),
        )
    if rails.wrap and rails.rebate:
        yield Problem(
            "paper cannot go around rails with a step",
            "leave rebate out, or wrap",
            field=("rails", "rebate"),
        )


def _behind(entry: FrameEntry, terms: Terms) -> Iterator[Problem]:
    """A step that is too shallow for what lies in it."""
    papers = [entry.stock, *([entry.mount.stock] if entry.mount else [])]
    thick = sum(terms.stocks[name].caliper for name in papers) + entry.glazing + entry.backing
    if entry.rails.rebate and thick > entry.rails.rebate + 1e-9:
        yield Problem(
            f"the rebate is {print_mm(entry.rails.rebate, 2)} deep, but what lies in it is {print_mm(thick, 2)} thick",
            f"write rebate: {print_mm(thick, 2)}, or let it stick out behind",
            Severity.NOTE,
            field=("rails", "rebate"),
        )
    if entry.rails.rebate >= entry.rails.depth:
        yield Problem(
            f"the rebate is as deep as the strip is thick, {print_mm(entry.rails.depth, 2)}",
            "write a shallower rebate, or a deeper strip",
            field=("rails", "rebate"),
        )
