"""A box as it was written, and worked out around its room."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Literal

from ...ground.geometry import Size
from ...ground.pictures import Picture, load_picture
from ...ground.problems import Problem, Severity, ShelfFileError, gathered
from ...ground.thin import print_caliper
from ...ground.units import print_mm
from ...paper.stock import Stock
from ...sheets.flat import Flat
from ...sheets.sheet_room import flat_too_large
from ..answers import Bulk, Named
from ..listed import ListedThing
from ..standing import Standing, Uncertainty
from ..surface import Surface, SurfaceEntry, read_surface
from ..terms import Terms
from ..thing import Plan
from .forms.form import BoxEntry, BoxSides, Folded, ThreeSides
from .net import Card, Net, Room

__all__ = ["Box", "BoxPlan", "DressedFaces"]

ASSEMBLY = 0.2
"""What folding and gluing may add to a side, ± mm (common practice)."""

THINNEST = 0.15
"""A box of thinner paper does not keep its shape, in mm (common practice)."""


@dataclass(frozen=True, slots=True)
class DressedFaces:
    """The sides of one net with what their files hold; `picture` is the one over the whole net."""

    entry: BoxSides
    sides: Mapping[str, Surface]
    picture: Picture | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Box(ListedThing[BoxEntry]):
    """A box as it was written, with what the files of its sides hold, by the names of its groups of sides."""

    faces: Mapping[str, DressedFaces] = field(default_factory=dict)

    @property
    def holds(self) -> tuple[Named, ...]:
        """What lies in it."""
        return tuple(Named(name, ("contents", place)) for place, name in enumerate(self.entry.contents))

    def read(self, folder: Path) -> tuple[Box, tuple[Problem, ...]]:
        """The box with the pictures of its sides."""
        problems: list[Problem] = []
        found = {
            key: _read_faces(written, folder, key, problems)
            for key, written in self.entry
            if isinstance(written, BoxSides)
        }
        return replace(self, faces=found), tuple(problems)

    def plan(self, terms: Terms, held: Sequence[Plan]) -> BoxPlan:
        """Work out its nets around its room."""
        entry, stock = self.entry, terms.stocks[self.entry.stock]
        card = Card.of(stock)
        room = self._room(terms.scale, held, card)
        problems = [*entry.faults(room, card), *self._too_small(room, held)]
        if problems:
            raise ShelfFileError(problems)
        folded = entry.nets(room, card)
        flats = tuple(net.flat(entry.kind, stock.name) for net in folded.nets)
        for flat in flats:
            problems += flat_too_large(f"the net of the {flat.name}", flat, stock, ("stock",))
        if problems:
            raise ShelfFileError(problems)
        return BoxPlan(
            thing=self,
            held=tuple(one.id for one in held),
            room=room,
            folded=folded,
            flats=flats,
            layers_across=_layers_across(entry, room, card, folded),
            notes=tuple(_notes(self, stock)),
        )

    def _room(self, scale: float, held: Sequence[Plan], card: Card) -> Room:
        """The room inside: as written, or what is left of the outside, or what the contents need.

        Raises:
            ShelfFileError: there is none.
        """
        entry = self.entry
        if entry.inside:
            return self._sides(entry.inside, scale)
        if entry.outside:
            outside = self._sides(entry.outside, scale)
            room = entry.around(outside, card)
            if min(room) <= 0:
                said = " × ".join(print_mm(side, 2) for side in outside)
                raise ShelfFileError(
                    [Problem(f"{said} outside leaves no room inside", "make it larger", field=("outside",))]
                )
            return room
        return entry.turned_to(_room_of(_bulks(held), entry.clearance))

    def _sides(self, sides: ThreeSides, scale: float) -> Room:
        return Room(*(self.entry.finished(side, scale) for side in (sides.length, sides.width, sides.height)))

    def _too_small(self, room: Room, held: Sequence[Plan]) -> Iterator[Problem]:
        """Contents that do not go into the room that was written."""
        if not held:
            return
        needed = self.entry.turned_to(_room_of(_bulks(held), 0.0))
        # whichever way they are turned: cards lie, and stand in their box
        if any(side > have + 1e-6 for side, have in zip(sorted(needed), sorted(room), strict=True)):
            sizes = (" × ".join(print_mm(side, 2) for side in sides) for sides in (needed, room))
            needs, has = sizes
            yield Problem(
                f"its contents are {needs}, larger than the room inside, which is {has}",
                f"leave {self.entry.sized_by[0]} out, and it is made around them",
                field=self.entry.sized_by,
            )


def _bulks(held: Sequence[Plan]) -> list[Bulk]:
    """How large everything that lies in a box is.

    Raises:
        ShelfFileError: something does not lie in boxes.
    """
    problems = [
        Problem(f"{one.name} has no size of its own", "write inside: with the room", field=("contents", n))
        for n, one in enumerate(held)
        if one.bulk is None
    ]
    if problems:
        raise ShelfFileError(problems)
    return [one.bulk for one in held if one.bulk]


def _room_of(bulks: Sequence[Bulk], clearance: float) -> Room:
    """The room for things that lie on one another, with some clearance for all together."""
    return Room(
        max(bulk.length for bulk in bulks) + clearance,
        max(bulk.width for bulk in bulks) + clearance,
        sum(bulk.thickness for bulk in bulks) + clearance,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxPlan(Plan):
    """A box worked out: its nets around the room inside; `layers_across` are the layers of card along its front."""

    thing: Box
    held: tuple[str, ...]
    room: Room
    folded: Folded
    flats: tuple[Flat, ...]
    layers_across: float
    notes: tuple[Problem, ...] = ()

    @property
    def entry(self) -> BoxEntry:
        """What the maker wrote."""
        return self.thing.entry

    @property
    def nets(self) -> tuple[Net, ...]:
        """Its nets, in the order of its flats."""
        return self.folded.nets

    @property
    def outside(self) -> Room:
        """Its size outside."""
        return self.folded.outside

    @property
    def made_as(self) -> str:
        """Its form."""
        return self.entry.kind

    @property
    def standing(self) -> Standing | None:
        """The closed box, its front to the fore."""
        if not self.entry.stands:
            return None
        return Standing(
            thing=self.id,
            title=f"the {self.entry.kind} {self.name}",
            thickness=self.outside.length,
            height=self.outside.height,
            depth=self.outside.width,
            uncertainty=Uncertainty({self.entry.stock: self.layers_across}, ASSEMBLY),
        )

    @property
    def bulk(self) -> Bulk:
        """It lies as it stands."""
        return Bulk(self.outside.length, self.outside.width, self.outside.height)

    @property
    def from_above(self) -> Size:
        """Its front to the fore."""
        return Size(self.outside.length, self.outside.width)

    @property
    def templates(self) -> Mapping[str, tuple[Flat, ...]]:
        """Its nets."""
        return {"": self.flats}

    def smaller(self, side: Literal["tall", "deep"]) -> str:
        """Its room makes it as large as it is."""
        return f"make its {'height' if side == 'tall' else 'width'} less"


def _read_faces(entry: BoxSides, folder: Path, key: str, problems: list[Problem]) -> DressedFaces:
    """The sides of a net with what their files hold; what is wrong with these is added to the problems."""
    sides: dict[str, Surface] = {}
    picture = None
    with gathered(problems, key, "picture"):
        picture = load_picture(folder / entry.picture, entry.picture) if entry.picture else None
    for name, written in entry:
        if isinstance(written, SurfaceEntry):
            with gathered(problems, key, name):
                sides[name] = read_surface(written, folder)
    return DressedFaces(entry, sides, picture)


def _layers_across(entry: BoxEntry, room: Room, card: Card, folded: Folded) -> float:
    """How much longer a box is in thicker card, in its calipers."""
    thicker = entry.nets(room, card._replace(caliper=card.caliper + 1.0)).outside
    return round(thicker.length - folded.outside.length, 6)


def _notes(box: Box, stock: Stock) -> Iterator[Problem]:
    """Thin paper makes a bag, not a box."""
    if box.entry.stands and stock.caliper < THINNEST - 1e-9:
        least = print_caliper(THINNEST)
        yield Problem(
            f"{stock.name} is {print_caliper(stock.caliper)} thick; a box under {least} does not stand",
            f"name a card of {least} or more",
            Severity.WARNING,
            field=("stock",),
        )
