"""Framed pictures as one kind of thing among others."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from ...ground.art import Filled
from ...ground.drawing import Art
from ...ground.geometry import Rect
from ...ground.problems import within
from ...ground.units import rounded
from ...sheets.flat import Flat
from ..book.designs.design import Words
from ..draft import Draft
from ..listed import ListedFamily, pieces_of
from ..surface import dress_surface
from ..thing import Around, Plan
from .entry import FrameEntry
from .jig import jig_art
from .plan import Frame, FramePlan
from .seen import framed
from .wrap import dressed_wrap

if TYPE_CHECKING:
    from ..making import Bench, Chapter

__all__ = ["FRAMES"]


class Frames(ListedFamily[FrameEntry, FramePlan]):
    """The framed pictures of a room."""

    noun, listed, made = "frame", FrameEntry, Frame

    def draw(self, plan: FramePlan, held: Sequence[Plan]) -> Draft:
        """The picture, and its mount in one colour."""
        size = plan.sizes.picture
        dress = dress_surface(plan.thing.shows, size, Rect(0, 0, *size), Words(plan.name))
        others = [self._part(plan, flat) for flat in plan.flats[1:]]
        seen = framed(plan, dress.art)
        problems = within(("shows",), dress.problems)
        return Draft(pieces_of(plan, [dress.art, *others]), problems, lying=seen, hanging=seen)

    def _part(self, plan: FramePlan, flat: Flat) -> Art:
        """The art of a flat besides the picture: the mount in one colour, the paper of a rail, the jig."""
        entry = plan.thing.entry
        if flat.kind == "mount" and entry.mount:
            return Filled(flat.inked(), entry.mount.colour)
        if flat.kind == "wrap" and entry.rails.wrap:
            net = next(net for net in plan.wraps if net.name == flat.name)
            return dressed_wrap(entry.rails.wrap, net, flat)
        mitred = entry.rails.corners == "mitre"
        return jig_art(plan.sizes, entry.rails.face + 2 * plan.sizes.layer, mitred=mitred)

    def chapter(self, plan: FramePlan, bench: Bench, around: Around) -> Chapter:
        """What it shows, and how it is framed."""
        from .chapter import frame_chapter

        return frame_chapter(plan, bench)

    def report(self, plan: FramePlan, draft: Draft, around: Around) -> dict[str, Any]:
        """What is seen of it, and its outside."""
        sizes = {"picture_mm": plan.sizes.picture, "sight_mm": plan.sizes.sight, "outside_mm": plan.sizes.outside}
        return {
            "name": plan.name,
            **{key: {side: rounded(value) for side, value in size._asdict().items()} for key, size in sizes.items()},
        }


FRAMES = Frames()
