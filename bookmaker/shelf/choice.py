"""Choosing what to make: some books or boxes only, one book once more, one paper only."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from ..ground.problems import CommandError, FieldPath, Problem, near_match
from ..ground.quantities import show
from ..sheets.piece import Piece
from ..shelf_file.book_names import LISTED, UnknownBook, find_book, find_books
from .plan import ShelfPlan

__all__ = ["EVERYTHING", "Choice", "Chosen"]


@dataclass(frozen=True, slots=True)
class Choice:
    """What the maker asked for, as it was written: books or slipcases, one book once more, papers; nothing is all."""

    only: tuple[str, ...] = ()
    again: str | None = None
    stocks: tuple[str, ...] = ()

    def of(self, plan: ShelfPlan) -> Chosen:
        """The choice on a shelf.

        Raises:
            CommandError: with every name that is not on the shelf.
        """
        problems: list[Problem] = []
        owners: set[FieldPath] = set()
        if self.only and self.again is not None:
            problems.append(Problem("--only and --again exclude each other", "use --again for one book after a slip"))
        asked = [("--only", name) for name in self.only] + ([("--again", self.again)] if self.again is not None else [])
        for option, name in asked:
            try:
                owners.update(_owners(name, plan, one=option == "--again"))
            except UnknownBook as unknown:
                problems.append(Problem(f"{option}: {unknown.message}", unknown.remedy))
        stocks = {_stock(name, plan, problems) for name in self.stocks}
        if problems:
            raise CommandError(problems)
        return Chosen(frozenset(owners) if asked else None, frozenset(stocks) if self.stocks else None)


EVERYTHING = Choice()

OWNERS = (("books",), ("slipcases",))
"""Keys of the shelf under which stands what can be chosen."""


@dataclass(frozen=True, slots=True)
class Chosen:
    """Whose parts are made, on which stocks; None stands for all."""

    owners: frozenset[FieldPath] | None
    stocks: frozenset[str] | None

    def pieces(self, pieces: Iterable[Piece]) -> Sequence[Piece]:
        """The chosen ones among all pieces.

        Raises:
            CommandError: there are none.
        """
        mine = [piece for piece in pieces if self.holds(piece.owner, piece.flat.stock)]
        if not mine and (self.owners is not None or self.stocks is not None):
            raise CommandError((Problem("nothing is printed for this choice", "choose another book or stock"),))
        return mine

    def holds(self, owner: FieldPath, stock: str) -> bool:
        """Whether what belongs to a book or a slipcase and is printed on a stock belongs to the choice."""
        return (self.owners is None or owner in self.owners) and (self.stocks is None or stock in self.stocks)

    def problems(
        self, problems: Iterable[Problem], concerns: Callable[[Problem, FieldPath], bool]
    ) -> Iterator[Problem]:
        """The problems of what is chosen, and those of no book or slipcase; `concerns` tells whose a problem is."""
        for problem in problems:
            owned = problem.field[:1] in OWNERS and self.owners is not None
            if not owned or any(concerns(problem, owner) for owner in self.owners or ()):
                yield problem

    def by_hand(self, book: int) -> bool:
        """Whether what is cut by hand for a book belongs to the choice: a choice of paper leaves it out."""
        return self.stocks is None and (self.owners is None or ("books", book) in self.owners)


def _owners(name: str, plan: ShelfPlan, *, one: bool) -> list[FieldPath]:
    """The books or the slipcase with this name, at most one of them if so asked; books go before a slipcase."""
    books = [book.entry.name for book in plan.books]
    boxes = [box.name for box in plan.slipcases]
    try:
        found = (find_book(name, books, LISTED),) if one else find_books(name, books, LISTED)
        return [("books", number) for number in found]
    except UnknownBook:
        if name in boxes:
            return [("slipcases", name)]
        meant = near_match(name, boxes)
        if meant and not near_match(name, map(str, books)):
            message = f"there is no book or slipcase {show(name)!r}"
            raise UnknownBook(message, f"did you mean {meant!r}?") from None
        raise


def _stock(name: str, plan: ShelfPlan, problems: list[Problem]) -> str:
    if name not in plan.stocks:
        meant = near_match(name, plan.stocks)
        remedy = f"did you mean {meant!r}?" if meant else "write one of " + ", ".join(plan.stocks)
        problems.append(Problem(f"--stock: there is no stock {show(name)!r}", remedy))
    return name
