"""What a shelf asks for, summed over all that is on it, and refused before the work is begun if it is too much.

Each file and each book keeps its own limits, but a thousand that keep them may still ask for days, or for more memory
than there is. Whoever reads a file says what it asks for as soon as that is known, and before the work.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field
from typing import Literal, NamedTuple

from .problems import FieldPath, Place, Problem, ShelfFileError

__all__ = ["LIMITS", "Demand", "Limit", "demand", "demanded", "exhausted", "summed", "unsummed"]

SHARE = "share the books out among several shelf files"


@dataclass(frozen=True, slots=True)
class Limit:
    """The `most` that a whole shelf may ask for of something; `what` it is told in, `one` of which is that many."""

    what: str
    most: int
    remedy: str = SHARE
    one: int = 1

    def passed(self, amount: int, name: str = "this") -> str:
        """That an amount is too much, which it is with what goes by a name.

        >>> Limit("MB of files", 4_000_000_000, one=1_000_000).passed(4_200_300_000, "quay.png")
        'with quay.png, the shelf asks for 4 201 MB of files, more than 4 000'
        """
        asked, most = -(-amount // self.one), self.most // self.one
        return f"with {name}, the shelf asks for {asked:_} {self.what}, more than {most:_}".replace("_", " ")


Summed = Literal["things", "pages", "bytes", "letters", "pixels", "pages of PDFs", "operators", "fonts"]

# common practice, no source: what a home computer of 8 GB does in some minutes, as tests/bench measures it
LIMITS: dict[Summed, Limit] = {
    "things": Limit("books and other things", 10_000),
    "pages": Limit("printed pages and faces", 500_000),
    "bytes": Limit("MB of files", 4_000_000_000, one=1_000_000),
    "letters": Limit("KB of text", 30_000_000, one=1_000),
    "pixels": Limit("million pixels", 10_000_000_000, f"scale the pictures down, or {SHARE}", one=1_000_000),
    "pages of PDFs": Limit("pages of PDF files", 20_000),
    "operators": Limit(
        "MB of drawing in PDF files", 400_000_000, f"save drawings as pictures, or {SHARE}", one=1_000_000
    ),
    "fonts": Limit("typefaces of your own", 50, "use fewer typefaces"),
}
"""What is summed. A thousand books of 48 pages take 350 MB and less than a minute, 5 million words 3 GB and two."""


class Demand(NamedTuple):
    """So much of something that is summed; what goes by a `key` counts once, however often it is asked for."""

    of: Summed
    amount: int
    key: Hashable = None
    name: str = "this"


@dataclass(slots=True)
class _Sums:
    """What was asked for so far."""

    amounts: dict[Summed, int] = field(default_factory=dict)
    known: set[Hashable] = field(default_factory=set)
    exhausted: bool = False

    def with_this(self, one: Demand) -> int:
        """How much it is with a demand."""
        if one.key is None or (one.of, one.key) not in self.known:
            self.known.add((one.of, one.key))
            self.amounts[one.of] = self.amounts.get(one.of, 0) + one.amount
        return self.amounts[one.of]


_SUMS: ContextVar[_Sums | None] = ContextVar("sums", default=None)

_DEMANDED: ContextVar[tuple[list[Demand], ...]] = ContextVar("demanded", default=())


@contextmanager
def summed() -> Iterator[None]:
    """Within the block, all that is asked for is summed from nothing on, and refused where it is too much."""
    token = _SUMS.set(_Sums())
    try:
        yield
    finally:
        _SUMS.reset(token)


@contextmanager
def demanded() -> Iterator[list[Demand]]:
    """A list of all that is asked for within the block, so that it can be asked for again without the work."""
    found: list[Demand] = []
    token = _DEMANDED.set((*_DEMANDED.get(), found))
    try:
        yield found
    finally:
        _DEMANDED.reset(token)


@contextmanager
def unsummed() -> Iterator[None]:
    """Within the block nothing is summed: it belongs to bookmaker, and to no shelf."""
    sums, heard = _SUMS.set(None), _DEMANDED.set(())
    try:
        yield
    finally:
        _DEMANDED.reset(heard)
        _SUMS.reset(sums)


def demand(
    of: Summed,
    amount: int = 1,
    key: Hashable = None,
    name: str = "this",
    *,
    field: FieldPath = (),
    place: Place | None = None,
) -> None:
    """Say what the work that follows asks for, and for what, by its name; where nothing is summed, nobody minds.

    What is refused is told of a field, or of a place.

    Raises:
        ShelfFileError: it is too much, together with all that was asked for before.
    """
    one = Demand(of, amount, key, name)
    for found in _DEMANDED.get():
        found.append(one)
    sums, limit = _SUMS.get(), LIMITS[of]
    if sums and (amount := sums.with_this(one)) > limit.most:
        sums.exhausted = True
        raise ShelfFileError((Problem(limit.passed(amount, name), limit.remedy, field=field, place=place),))


def exhausted() -> bool:
    """Whether too much was asked for: what is found since then hangs on what came before, and is not to be kept."""
    sums = _SUMS.get()
    return sums is not None and sums.exhausted
