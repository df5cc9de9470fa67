"""A pack of playing cards: four suits, courts that look both ways, one back for all."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Literal

from pydantic import Field

from ....ground.art import Filled, Group, Stroked
from ....ground.drawing import Art, Colour, Pen
from ....ground.geometry import ORIGIN, Path, Point, Rect, Transform, polygon
from ....shelf_file.fields.counts import Count
from ....shelf_file.fields.words import Ink
from ...book.designs.design import TypefaceName
from ...book.designs.ornament.ornaments import frame
from ...book.designs.ornament.repeats import printed_paper
from ...book.designs.ornament.shapes import gathered
from ...book.designs.tones import mixed
from ...lettering import line_of
from ..entry import Press
from ..face import FaceEntry, SetFace, dress_face
from .card_stock import CardStock
from .pips import PLACES, RANKS, SUITS, pip

__all__ = ["PlayingCards"]

BORDER = 0.055
"""White round the back, as a share of the width: what a cut is off by does not show there."""

SAFE, MOST_SAFE = 0.4, 0.1
"""The figures in the corners keep so many mm from the cut, which may be off by as much, but on the smallest cards no
more than such a share of the width."""

INDEX_HIGH, INDEX_WIDE = 0.13, 0.145
"""The em of a figure as a share of the height, and the room it has as a share of the width."""

GOLD, CLOTH = Colour.from_hex("#d9a441"), Colour.from_hex("#2d4a7a")


class PlayingCards(CardStock):
    """A pack of 52 and its jokers."""

    kind: Literal["playing cards"] = "playing cards"
    jokers: Count = Field(0, description="how many jokers there are besides the 52")
    back: FaceEntry = Field(FaceEntry(), description="the back of all; a small repeat, if not given")
    back_ink: Ink = Field(Colour.from_hex("#8c2f2b"), description="colour of the repeat")
    index_face: TypefaceName = Field("clarendon bold", description="typeface of the figures in the corners")
    usual_format = "poker card"

    @property
    def cards(self) -> int:
        """All packs."""
        return (52 + self.jokers) * self.count

    def card(self, number: int, area: Rect, press: Press) -> tuple[SetFace, SetFace]:
        """Suit by suit, and the jokers."""
        return SetFace(tuple(self._front(number % (52 + self.jokers), area))), self._back(area, press)

    def _back(self, area: Rect, press: Press) -> SetFace:
        inner = area.grown(-BORDER * area.width)
        if "back" in self.model_fields_set:
            return dress_face(press.face("back"), inner, inner, press.words, press.dpi, self.paper).told_of("back")
        pattern = tuple(printed_paper(inner, self.back_ink, Random(press.words.seed)))
        ground = Filled.box(inner, mixed(self.back_ink, Colour(1, 1, 1), 0.82))
        lines = frame(inner.grown(-0.06), self.back_ink, 0.1, second=0.0)
        return SetFace((ground, Group(pattern, clip=Path.rectangle(inner)), *lines))

    def _front(self, number: int, area: Rect) -> Iterator[Art]:
        if number >= 52:
            yield from self._joker(area)
            return
        suit, rank = [*SUITS][number // 13], RANKS[number % 13]
        colour = SUITS[suit][1]
        half = (*self._index(suit, rank, area),)
        yield Group(half)
        yield Group(half, Transform.turn(180, area.centre))
        if rank in PLACES:
            yield Filled(gathered(self._pips(suit, rank, area)), colour)
        else:
            yield from _court(suit, rank, area)

    def _index(self, suit: str, rank: str, area: Rect) -> Iterator[Art]:
        """Figure and sign in the upper left corner, safe from the cut; a broad figure is condensed, as 10 always is."""
        safe, wide = min(SAFE, MOST_SAFE * area.width), INDEX_WIDE * area.width
        size, x = area.height * INDEX_HIGH, area.x + safe + wide / 2
        figure = line_of(rank, self.index_face, size, ORIGIN, SUITS[suit][1], align="middle")
        runs = [run for _, run in figure.line.runs]
        y = area.top - safe - size * max(run.top for run in runs)
        below = y + size * min(0.0, *(run.bottom for run in runs)) - area.height * 0.058
        yield Group((figure,), Transform.stretch(min(1.0, wide / figure.line.width), 1.0).moved(x, y))
        yield Filled(pip(suit, Point(x, below), area.height * 0.08), SUITS[suit][1])

    def _pips(self, suit: str, rank: str, area: Rect) -> Iterator[Path]:
        high = area.height * (0.34 if rank == "A" else 0.14)
        across, up = area.width * 0.165, area.height * 0.32
        for x, y in PLACES[rank]:
            yield pip(suit, area.centre.plus(x * across, y * up), high, head_down=y < 0)

    def _joker(self, area: Rect) -> Iterator[Art]:
        size = area.height * 0.1
        yield line_of("JOKER", self.index_face, size, Point(area.centre.x, area.top - area.height * 0.2),
                      align="middle", room=area.width * 0.8)  # fmt: skip
        yield Filled(_star(Point(area.centre.x, area.centre.y - area.height * 0.04), area.height * 0.2), GOLD)


def _star(middle: Point, radius: float) -> Path:
    corners = [
        Transform.turn(90 + 36 * n, middle).apply(middle.plus(radius * (0.42 if n % 2 else 1.0), 0)) for n in range(10)
    ]
    return polygon(corners)


def _court(suit: str, rank: str, area: Rect) -> Iterator[Art]:
    """A panel with the upper half of a figure, and the same the other way up."""
    panel = area.grown(-area.width * 0.24, -area.height * 0.1, -area.width * 0.24, -area.height * 0.1)
    colour = SUITS[suit][1]
    yield Filled.box(panel, mixed(GOLD, Colour(1, 1, 1), 0.72))
    half = tuple(_figure(suit, rank, panel))
    clip = Path.rectangle(Rect(panel.x, panel.centre.y, panel.width, panel.height / 2))
    yield Group(half, clip=clip)
    yield Group(half, Transform.turn(180, panel.centre), clip)
    yield Filled.box(Rect(panel.x, panel.centre.y - 0.05, panel.width, 0.1), colour)
    yield Stroked(Path.rectangle(panel), Pen(0.07, colour))


def _figure(suit: str, rank: str, panel: Rect) -> Iterator[Art]:
    """Shoulders, a head, a crown or a cap, and the sign beside it."""
    unit, x, foot = panel.width, panel.centre.x, panel.centre.y
    colour = SUITS[suit][1]
    shoulders = [(-0.46, 0.0), (-0.4, 0.3), (-0.16, 0.46), (0.16, 0.46), (0.4, 0.3), (0.46, 0.0)]
    yield Filled(
        polygon([Point(x + u * unit, foot + v * unit) for u, v in shoulders]), CLOTH if rank == "Q" else colour
    )
    stripe = [(-0.1, 0.0), (-0.07, 0.46), (0.07, 0.46), (0.1, 0.0)]
    yield Filled(polygon([Point(x + u * unit, foot + v * unit) for u, v in stripe]), GOLD)
    head = Point(x, foot + 0.6 * unit)
    if rank == "Q":
        yield Filled(Path.circle(head, 0.23 * unit), Colour.from_hex("#6b4a2f"))
    yield Filled(Path.circle(head, 0.17 * unit), Colour.from_hex("#f2d9bd"))
    top = head.y + 0.1 * unit
    points = {"K": 5, "Q": 3}.get(rank)
    if points:
        step = 0.44 * unit / (points * 2)
        corners = [
            Point(x - 0.22 * unit + n * step, top + (0.2 if n % 2 else 0.1) * unit) for n in range(points * 2 + 1)
        ]
        yield Filled(polygon([Point(x - 0.22 * unit, top), *corners, Point(x + 0.22 * unit, top)]), GOLD)
    else:
        cap = [(-0.2, 0.0), (0.2, 0.0), (0.16, 0.1), (-0.26, 0.2)]
        yield Filled(polygon([Point(x + u * unit, top + v * unit) for u, v in cap]), CLOTH)
    yield Filled(pip(suit, Point(panel.x + 0.16 * unit, panel.top - 0.18 * unit), 0.24 * unit), colour)
