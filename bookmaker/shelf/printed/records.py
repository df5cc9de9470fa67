"""What was printed of a shelf: every piece with its fingerprint, and what its thing was then, as plan.json keeps it."""

from __future__ import annotations

from collections.abc import Container, Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Annotated, Any, NamedTuple

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from ...sheets.fingerprints import Fingerprint, Fingerprints
from ...sheets.piece import Piece
from ..plan import ShelfPlan

if TYPE_CHECKING:
    # nobody who only checks a shelf waits for what lays out
    from ...sheets.layout import Sheet

__all__ = ["KEY", "PieceRecord", "Place", "Printed", "ThingRecord", "records_of"]

KEY = "printed"
"""Under which the plan has it."""


class Place(NamedTuple):
    """Where a piece lies: the file, the page in it, its corner there in mm, and whether it was turned."""

    file: str
    page: int
    x: float
    y: float
    turned: bool


@dataclass(frozen=True, slots=True)
class PieceRecord:
    """A piece as it was printed: which of its thing's it is, what it is called, its stock, its fingerprint, its place.

    `place` is None where it is not known, as before the sheets are laid out.
    """

    owner: str
    which: str
    name: str
    stock: str
    fingerprint: Fingerprint
    place: Place | None = None


@dataclass(frozen=True, slots=True)
class ThingRecord:
    """A thing as it was when it was printed: its name, its look, 0 if it has none, and what its print follows from."""

    name: str
    look: int
    facts: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Printed:
    """All pieces by their ids, and all things by theirs."""

    pieces: Mapping[str, PieceRecord] = field(default_factory=dict)
    things: Mapping[str, ThingRecord] = field(default_factory=dict)

    def report(self) -> dict[str, Any]:
        """As the plan has it, pieces and things one by one."""
        pieces = (
            {
                "id": id,
                "owner": piece.owner,
                "which": piece.which,
                "name": piece.name,
                "stock": piece.stock,
                "fingerprint": piece.fingerprint._asdict(),
                "place": piece.place and piece.place._asdict(),
            }
            for id, piece in self.pieces.items()
        )
        things = (
            {"id": id, "name": one.name, "look": one.look, "facts": dict(one.facts)} for id, one in self.things.items()
        )
        return {"pieces": pieces, "things": things}

    @classmethod
    def read(cls, report: Mapping[str, object]) -> Printed:
        """What an earlier plan says; nothing, if it says nothing that can be understood."""
        try:
            read = _Report.model_validate(report.get(KEY) or {})
        except ValidationError:
            return cls()
        pieces = {
            one.id: PieceRecord(one.owner, one.which, one.name, one.stock, one.fingerprint, one.place)
            for one in read.pieces
        }
        return cls(pieces, {one.id: ThingRecord(one.name, one.look, one.facts) for one in read.things})

    def then(self, now: Printed, fresh: Container[str]) -> Printed:
        """What is printed once the pieces that are `fresh` are: `now` has all there are, others stay as they were.

        What is on the shelf no more is forgotten; so is what was never printed and is not fresh.
        """
        pieces = {id: piece if id in fresh else self.pieces.get(id) for id, piece in now.pieces.items()}
        kept = {id: piece for id, piece in pieces.items() if piece}
        old = {piece.owner for id, piece in kept.items() if id not in fresh}
        owners = dict.fromkeys(piece.owner for piece in kept.values())
        things = {id: self.things[id] if id in old and id in self.things else now.things[id] for id in owners}
        return Printed(kept, things)

    def lying(self, printed: Printed) -> Printed:
        """With the places that the same pieces have in another record."""
        places = {id: one.place for id, one in printed.pieces.items()}
        return Printed({id: replace(one, place=places.get(id)) for id, one in self.pieces.items()}, self.things)

    def placed(self, sheets: Iterable[tuple[str, int, Sheet]]) -> Printed:
        """With the place of each piece; each sheet comes with its file and its page there."""
        places = {
            placement.piece.id: Place(file, page, round(placement.at.x, 3), round(placement.at.y, 3), placement.turned)
            for file, page, sheet in sheets
            for placement in sheet.placements
        }
        pieces = {id: replace(one, place=places.get(id, one.place)) for id, one in self.pieces.items()}
        return Printed(pieces, self.things)


class _Form(BaseModel):
    model_config = ConfigDict(frozen=True, extra="ignore", strict=False)


class _Piece(_Form):
    id: str
    owner: str
    which: str
    name: str
    stock: str
    fingerprint: Fingerprint
    place: Place | None = None


class _Thing(_Form):
    id: str
    name: str
    look: int
    facts: dict[str, str]


class _Report(_Form):
    pieces: Annotated[tuple[_Piece, ...], Field(default=())]
    things: Annotated[tuple[_Thing, ...], Field(default=())]


def records_of(plan: ShelfPlan, pieces: Iterable[Piece], fingerprints: Fingerprints) -> Printed:
    """Pieces as they would be printed now, and their things; where they lie is told later."""
    records = {
        piece.id: PieceRecord(
            owner=piece.owner,
            which=piece.id.removeprefix(piece.owner),
            name=piece.label[1],
            stock=piece.flat.stock,
            fingerprint=fingerprints.of(piece, plan.stocks[piece.flat.stock]),
        )
        for piece in pieces
    }
    owners = [plan.plans[id] for id in dict.fromkeys(one.owner for one in records.values())]
    return Printed(records, {one.id: ThingRecord(one.name, one.look, one.family.facts(one)) for one in owners})
