"""Choosing what to make: some things only, one thing once more, one paper only."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable, Iterator, Sequence
from dataclasses import dataclass

from ..ground.problems import CommandError, Problem, near_match
from ..ground.quantities import show
from ..sheets.piece import Piece
from ..shelf_file.book_names import LISTED, UnknownBook
from ..things.thing import Thing
from .plan import ShelfPlan

__all__ = ["EVERYTHING", "Choice", "Chosen"]


@dataclass(frozen=True, slots=True)
class Choice:
    """What the maker asked for, as it was written: some things, one thing once more, papers; nothing is all.

    `changed`: of these only what differs from what was printed.
    """

    only: tuple[str, ...] = ()
    again: str | None = None
    stocks: tuple[str, ...] = ()
    changed: bool = False

    @property
    def is_sparing(self) -> bool:
        """Whether little is asked for, on as little paper as possible."""
        return self.changed or self.again is not None

    def of(self, plan: ShelfPlan) -> Chosen:
        """The choice on a shelf.

        Raises:
            CommandError: with every name that is not on the shelf.
        """
        problems: list[Problem] = []
        owners: set[str] = set()
        if self.only and self.again is not None:
            problems.append(
                Problem("--only and --again cannot be used together", "use --again for one book after a slip")
            )
        if self.changed and self.again is not None:
            problems.append(
                Problem("--changed and --again cannot be used together", "use --again for one book after a slip")
            )
        asked = [("--only", name) for name in self.only] + ([("--again", self.again)] if self.again is not None else [])
        for option, name in asked:
            try:
                owners.update(plan.register.find(name, LISTED, one=option == "--again"))
            except UnknownBook as unknown:
                problems.append(Problem(f"{option}: {unknown.message}", unknown.remedy))
        stocks = {_stock(name, plan, problems) for name in self.stocks}
        if problems:
            raise CommandError(problems)
        return Chosen(frozenset(owners) if asked else None, frozenset(stocks) if self.stocks else None)


EVERYTHING = Choice()


@dataclass(frozen=True, slots=True)
class Chosen:
    """Whose parts are made, on which stocks; None stands for all."""

    owners: frozenset[str] | None
    stocks: frozenset[str] | None

    def pieces(self, pieces: Iterable[Piece], done: Container[str] = ()) -> Sequence[Piece]:
        """The chosen ones among all pieces; of things that are `done` only if they were asked for.

        Raises:
            CommandError: there are none.
        """
        mine = [piece for piece in pieces if self.holds(piece.owner, piece.flat.stock)]
        if not mine and (self.owners is not None or self.stocks is not None):
            raise CommandError((Problem("nothing is printed for this choice", "choose another book or stock"),))
        return mine if self.owners is not None else [piece for piece in mine if piece.owner not in done]

    def has(self, owner: str) -> bool:
        """Whether a thing belongs to the choice."""
        return self.owners is None or owner in self.owners

    def holds(self, owner: str, stock: str) -> bool:
        """Whether what belongs to a thing and is printed on a stock belongs to the choice."""
        return self.has(owner) and (self.stocks is None or stock in self.stocks)

    def problems(self, problems: Iterable[Problem], concerns: Callable[[Problem, str], bool]) -> Iterator[Problem]:
        """The problems of what is chosen, and those of no thing; `concerns` tells whose a problem is."""
        for problem in problems:
            if not problem.thing or self.owners is None or any(concerns(problem, owner) for owner in self.owners):
                yield problem

    def by_hand(self, thing: Thing) -> bool:
        """Whether what is cut by hand for a thing belongs to the choice: a choice of paper leaves it out.

        What is cut already does only if it was asked for.
        """
        return self.stocks is None and (thing.id in self.owners if self.owners is not None else "cut" not in thing.done)


def _stock(name: str, plan: ShelfPlan, problems: list[Problem]) -> str:
    if name not in plan.stocks:
        meant = near_match(name, plan.stocks)
        remedy = f"did you mean {meant!r}?" if meant else "write one of " + ", ".join(plan.stocks)
        problems.append(Problem(f"--stock: there is no stock {show(name)!r}", remedy))
    return name
