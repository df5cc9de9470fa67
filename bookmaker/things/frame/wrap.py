"""Mouldings of printed paper: a strip folded round the core of each rail, glued on its back, mitred with it.

Like boxes, it is reckoned in the middle of the paper: half a caliper and a film of glue off the core on every side.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import pi, sin
from typing import Literal, NamedTuple

from pydantic import Field

from ...ground.art import Filled, Group
from ...ground.drawing import BLACK, WHITE, Art, Colour
from ...ground.geometry import Axis, Path, Point, Rect
from ...sheets.flat import Flat, Role
from ...shelf_file.fields.entry import Entry
from ...shelf_file.fields.words import Ink, StockName
from ..book.designs.ornament.shapes import gathered
from ..book.designs.tones import mixed
from ..box.net import Card, Hinge, Net, NetPanel

__all__ = ["Core", "WrapEntry", "dressed_wrap", "wrap_net"]

BACK = 0.6
"""The flap on the back covers such a share of it (common practice)."""

BEAD = 0.75
"""From bead to bead, in their widths."""

Profile = Literal["plain", "stepped", "hollow", "round", "beaded"]


class WrapEntry(Entry):
    """Printed paper folded round the rails."""

    stock: StockName = Field(description="name of the paper, as under stocks")
    colour: Ink = Field(Colour.from_hex("#5a3a22"), description="its colour")
    profile: Profile = Field("stepped", description="what is shaded on it: plain, stepped, hollow, round, beaded")
    gilt: Ink | None = Field(
        None, description="colour of its edge beside the picture, such as gold; none, if not given"
    )


class Core(NamedTuple):
    """The strip in a rail, in mm: its length at the outside, the width that is seen, and how deep it is."""

    length: float
    face: float
    depth: float


def wrap_net(core: Core, card: Card, name: str) -> Net:
    """The paper of a rail, its length upright and the side at the picture on the left.

    The face is mitred with the core; the side at the picture is as long as the rail is there, the outer one as long as
    the whole; a flap goes on round the back.
    """
    off = card.caliper / 2 + card.glue
    wide, deep, flap = core.face + 2 * off, core.depth + 2 * off, core.face * BACK
    low, high, inner = -off, core.length + off, core.face + off
    left, right = Point(0, inner), Point(0, core.length - inner)
    foot, head = Point(wide, low), Point(wide, high)
    out, up = Point(wide + deep, low), Point(wide + deep, high)
    side = deep - off
    panels = (
        NetPanel("face", Role.JOINT, (left, foot, head, right)),
        NetPanel("picture side", Role.TURN_IN, (Point(-side, inner), left, right, Point(-side, core.length - inner)),
                 Hinge("face", left, right, 1)),
        NetPanel("outer side", Role.TURN_IN, (foot, out, up, head), Hinge("face", foot, head, 2)),
        NetPanel("back flap", Role.TAB, (out, out.plus(flap, flap), up.plus(flap, -flap), up),
                 Hinge("outer side", out, up, 3)),
    )  # fmt: skip
    return Net(name, panels, grain=Axis.Y)


def dressed_wrap(entry: WrapEntry, net: Net, flat: Flat) -> Art:
    """Its colour, and on its face the light and the shade of the profile, all along."""
    face = net.by_name["face"].rect.moved(-net.corner.x, -net.corner.y)
    layers: list[Art] = [Filled(flat.inked(), entry.colour)]
    layers += [Filled.box(Rect(face.x + x * face.width, 0, wide * face.width, flat.size.height).grown(0, 2), tone)
               for x, wide, tone in _bands(entry)]  # fmt: skip
    if entry.profile == "beaded":
        layers.append(Filled(_beads(face, flat.size.height), mixed(entry.colour, WHITE, 0.35)))
    if entry.gilt:
        layers.append(
            Filled.box(Rect(0, 0, face.x + 0.12 * face.width, flat.size.height).grown(2, 2, 0, 2), entry.gilt)
        )
    return Group(tuple(layers), clip=flat.inked())


def _bands(entry: WrapEntry) -> Iterator[tuple[float, float, Colour]]:
    """Bands from the picture outwards: where each begins and how wide it is, as shares of the face, and its tone."""
    light, dark = (mixed(entry.colour, towards, 0.3) for towards in (WHITE, BLACK))
    match entry.profile:
        case "stepped":
            yield from (
                (0.12, 0.03, dark),
                (0.15, 0.05, light),
                (0.55, 0.03, dark),
                (0.58, 0.05, light),
                (0.9, 0.1, dark),
            )
        case "hollow" | "round":
            steps = 14
            for n in range(steps):
                way = sin(pi * (n + 0.5) / steps)
                share = way if entry.profile == "round" else 1 - way
                yield 0.12 + 0.8 * n / steps, 0.8 / steps + 0.002, mixed(dark, light, share)
        case "beaded":
            yield from ((0.12, 0.22, dark), (0.34, 0.04, light), (0.92, 0.08, dark))
        case "plain":
            pass


def _beads(face: Rect, length: float) -> Path:
    """A row of beads beside the picture."""
    radius = face.width * 0.075
    step = 2 * radius / BEAD
    count = int(length / step) + 1
    return gathered(Path.circle(Point(face.x + 0.23 * face.width, (n + 0.5) * step), radius) for n in range(count))
