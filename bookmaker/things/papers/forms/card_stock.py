"""Cards of one size, printed many to a sheet, their backs registered, and cut or torn apart."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Iterator, Sequence

from ....ground.geometry import Rect, Size
from ....ground.problems import Problem
from ....ground.units import print_mm
from ....paper.stock import Stock
from ..entry import BLEED, Leaf, PaperEntry, Press
from ..face import SetFace, together

__all__ = ["CardStock"]


class CardStock(PaperEntry):
    """Cards of which as many lie on one piece as the sheet takes; the fewest are blank."""

    @property
    def what(self) -> str:
        """They are several."""
        return f"{self.cards} {self.kind}"

    @property
    def copies(self) -> int:
        """All cards are on its leaves already."""
        return 1

    @property
    @abstractmethod
    def cards(self) -> int:
        """How many cards there are."""

    @property
    def torn(self) -> bool:
        """Whether they are torn apart."""
        return False

    @abstractmethod
    def card(self, number: int, area: Rect, press: Press) -> tuple[SetFace, SetFace]:
        """Front and back of a card, counted from 0, as each is seen, in the same area."""

    def leaves(self, size: Size, stock: Stock) -> tuple[Leaf, ...]:
        """Rows of cards, on the fewest pieces, with the fewest blanks."""
        most_across, most_down = _room_for(size, stock)
        across = min(range(1, min(self.cards, most_across) + 1), key=lambda n: self._waste(n, most_down))
        leaves: list[Leaf] = []
        rows = -(-self.cards // across)
        while rows:
            down = min(rows, most_down)
            whole = Size(across * size.width, down * size.height)
            leaves.append(Leaf(self.kind, whole, None, len(leaves), across, down, self.torn))
            rows -= down
        if len(leaves) == 1:
            return tuple(leaves)
        return tuple(
            Leaf(f"{leaf.name}, piece {n}", leaf.size, None, leaf.number, across, leaf.down, self.torn)
            for n, leaf in enumerate(leaves, start=1)
        )

    def _waste(self, across: int, most_down: int) -> tuple[int, int, int]:
        """How many pieces rows of so many cards make, how many places stay blank, and how short the rows are."""
        return -(-self.cards // (across * most_down)), -self.cards % across, -across

    def faults(self, size: Size, stock: Stock) -> Iterator[Problem]:
        """A sheet that does not take a single card; a fold."""
        if min(_room_for(size, stock)) < 1:
            yield Problem(
                f"a card of {print_mm(size.width, 1)} × {print_mm(size.height, 1)} "
                f"is too large for the sheet of {stock.name}",
                "write a smaller card, or name a stock with a larger sheet",
                field=("stock",),
            )
        if self.fold:
            yield Problem("cards cannot be folded", "leave fold out", field=("fold",))

    def printed(self, leaves: Sequence[Leaf], press: Press) -> Sequence[tuple[SetFace, SetFace]]:
        """Card after card; those of the back stand in mirrored places."""
        places = [(leaf.number, area, leaf.size.width) for leaf in leaves for area in leaf.parts][: self.cards]
        fronts: list[list[SetFace]] = [[] for _ in leaves]
        backs: list[list[SetFace]] = [[] for _ in leaves]
        upright = Rect(0, 0, *press.size)
        for number, (leaf, area, wide) in enumerate(places):
            front, back = self.card(number, upright, press)
            fronts[leaf].append(front.moved(area.x, area.y))
            backs[leaf].append(back.moved(wide - area.right, area.y))
        return [(together(*front), together(*back)) for front, back in zip(fronts, backs, strict=True)]


def _room_for(size: Size, stock: Stock) -> tuple[int, int]:
    """How many cards a sheet takes across and down, whichever way it lies."""
    rooms = [(room.width - 2 * BLEED, room.height - 2 * BLEED) for room in stock.openings(None)]
    counts = [(int(wide / size.width + 1e-9), int(high / size.height + 1e-9)) for wide, high in rooms]
    return max(counts, key=lambda count: count[0] * count[1])
