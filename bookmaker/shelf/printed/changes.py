"""What differs between what was printed and what would be printed now, in words, and why."""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import groupby

from ...ground.problems import near_match
from ...ground.quantities import counted, show
from .records import PieceRecord, Printed, ThingRecord

__all__ = ["Change", "Changes", "changes_between"]

LONGEST = 40
"""Characters of a fact that is shown as it was and as it is; of longer ones only the name is."""


NEW = "it is new"


@dataclass(frozen=True, slots=True)
class Change:
    """A piece that would come out otherwise than it was printed, or was never printed, and why."""

    piece: str
    owner: str
    thing: str
    name: str
    why: str


@dataclass(frozen=True, slots=True)
class Changes:
    """All that differs; `moved` are pieces that only lie elsewhere, `gone` the names of things that are no more.

    `remarks` say what else there is to know. `first` says that nothing was printed before.
    """

    changes: tuple[Change, ...] = ()
    moved: tuple[str, ...] = ()
    gone: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    first: bool = False

    def among(self, pieces: Iterable[str]) -> frozenset[str]:
        """Those of some pieces that differ, by their ids; all do where nothing was printed before."""
        return frozenset(pieces) if self.first else frozenset(pieces) & {change.piece for change in self.changes}

    def but_for(self, done: Container[str]) -> Changes:
        """Less what is ticked off as printed, of which is only told that it would differ."""
        mine = tuple(change for change in self.changes if change.owner not in done)
        others = dict.fromkeys((change.thing, change.why) for change in self.changes if change.owner in done)
        told = tuple(
            f"{thing} is ticked off as printed, but would differ now: {why}; make --again prints it once more"
            for thing, why in others
            if why != NEW
        )
        return replace(self, changes=mine, remarks=(*told, *self.remarks))

    def lines(self) -> Iterator[str]:
        """In words, a line for each thing and reason."""
        for (thing, why), of_one in groupby(self.changes, key=lambda change: (change.thing, change.why)):
            names = [change.name for change in of_one]
            parts = ", ".join(dict.fromkeys(names)) if len(set(names)) < 4 else counted(len(names), "piece")
            yield f"{thing}: {parts} {'differs' if len(names) == 1 else 'differ'}: {why}"
        for name in self.gone:
            yield f"{name} is on the shelf no more"
        if self.moved:
            one = len(self.moved) == 1
            yield "1 piece only lies elsewhere on its sheet" if one else f"{len(self.moved)} pieces only lie elsewhere"
        yield from self.remarks


def changes_between(before: Printed, now: Printed) -> Changes:
    """What differs; things that go by another id are recognised by their looks, or else by their names."""
    if not before.pieces:
        return Changes(first=True)
    renamed = _renamed(before.things, now.things)
    earlier = {(piece.owner, piece.which): piece for piece in before.pieces.values()}
    changes: list[Change] = []
    moved: list[str] = []
    for id, piece in now.pieces.items():
        owner = renamed.get(piece.owner, piece.owner)
        old = earlier.get((owner, piece.which))
        was, thing = before.things.get(owner), now.things[piece.owner]
        if old is None or was is None:
            why = "this part is new" if was else NEW
            changes.append(Change(id, piece.owner, thing.name, piece.name, why))
        elif old.fingerprint != piece.fingerprint:
            changes.append(
                Change(id, piece.owner, thing.name, piece.name, _why(old, piece, before.things[owner], thing))
            )
        elif old.place and piece.place and old.place != piece.place:
            moved.append(id)
    kept = {renamed.get(id, id) for id in now.things}
    gone = tuple(one.name for id, one in before.things.items() if id not in kept)
    return Changes(tuple(changes), tuple(moved), gone, tuple(_lost_looks(before.things, now.things, renamed)))


def _renamed(before: Mapping[str, ThingRecord], now: Mapping[str, ThingRecord]) -> dict[str, str]:
    """The earlier ids of things that go by new ones."""
    gone = {id: one for id, one in before.items() if id not in now}
    found: dict[str, str] = {}
    for id, one in now.items():
        if id in before or not gone:
            continue
        alike = [other for other, old in gone.items() if one.look and old.look == one.look]
        if len(alike) != 1:
            named = {old.name: other for other, old in gone.items()}
            meant = near_match(one.name, named)
            alike = [named[meant]] if meant else []
        if alike:
            found[id] = alike[0]
            del gone[alike[0]]
    return found


def _why(old: PieceRecord, new: PieceRecord, before: ThingRecord, now: ThingRecord) -> str:
    """What of its thing differs, or else what of the piece itself does."""
    if old.fingerprint[:2] == new.fingerprint[:2]:
        return "its paper, or the printer that it goes through"
    reasons = [*_facts(before.facts, now.facts)]
    if old.stock != new.stock:
        reasons.append(f"its paper ({show(old.stock)}, now {show(new.stock)})")
    if not reasons:
        reasons.append("what is drawn on it" if old.fingerprint.shape == new.fingerprint.shape else "its size or folds")
    return "; ".join(reasons)


def _facts(before: Mapping[str, str], now: Mapping[str, str]) -> Iterator[str]:
    for name in dict.fromkeys((*before, *now)):
        old, new = before.get(name, ""), now.get(name, "")
        if old != new:
            shown = max(len(old), len(new)) <= LONGEST
            yield f"{name} ({old or 'none'}, now {new or 'none'})" if shown else name


def _lost_looks(
    before: Mapping[str, ThingRecord], now: Mapping[str, ThingRecord], renamed: Mapping[str, str]
) -> Iterator[str]:
    """Things whose looks changed with their names, and what gives them back."""
    for id, old in renamed.items():
        was, one = before[old], now[id]
        if was.look != one.look:
            yield (
                f"{one.name} has another look than {was.name} had: write look: {was.look}, or id: {old}, to have it as "
                "it was printed"
            )
