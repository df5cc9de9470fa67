"""The front of a shelf: what is seen of it, space by space, and how that is cut into rows that fit a page."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from ..ground.geometry import Rect, Transform
from ..sheets.facsimiles import Facsimile
from ..sheets.flat import Role
from ..sheets.piece import Piece
from ..shelf.arrangement import Stood, arranged, leaning
from ..shelf.plan import ShelfPlan
from ..things.draft import Draft, Head
from ..things.stance import Way
from ..things.thing import Plan
from .open_book import open_book

__all__ = ["Front", "Row", "Shown", "fronts", "rows_of"]

FACES = {Way.FRONT: Role.FRONT, Way.BACK: Role.BACK}
"""The faces of a book that may be turned to the room."""

CLOSE = 0.2
"""Books that have no space stand so close, in mm."""


@dataclass(frozen=True, slots=True)
class Shown:
    """What is seen in a rectangle of a space: a part of a piece, or a face; without either plain card.

    `thing` is the id of what it belongs to. It may lie, or stand on its head. Then it leans so many degrees, its head
    to the left, about the lower left corner of the rectangle, or with less than 0 about the lower right one.
    `pulled_out` is how far it stands before the others, in mm; `deep` how far it goes back, and `head` what is seen
    of it from above, where that is its leaves.
    """

    rect: Rect
    thing: str
    spine: tuple[Piece, Rect] | None = None
    lies: bool = False
    face: Facsimile | None = None
    upside_down: bool = False
    lean: float = 0.0
    pulled_out: float = 0.0
    head: Head | None = None
    deep: float = 0.0

    @property
    def to_shelf(self) -> Transform:
        """The turn that takes the rectangle to where it leans."""
        return leaning(self.rect, self.lean) if self.lean else Transform()

    @property
    def box(self) -> Rect:
        """The upright rectangle around all that is seen."""
        return self.to_shelf.apply_to(self.rect) if self.lean else self.rect


@dataclass(frozen=True, slots=True)
class Front:
    """One space: its clear width and height in mm, and from the left what belongs together in each place."""

    name: str
    width: float
    height: float
    places: tuple[tuple[Shown, ...], ...]


@dataclass(frozen=True, slots=True)
class Row:
    """A part of a front as it stands on a page, in mm of the space: from `left` on, `width` wide.

    `begins` and `ends` say whether it has the uprights of the space.
    """

    name: str
    left: float
    width: float
    height: float
    shown: tuple[Shown, ...]
    begins: bool
    ends: bool


def fronts(plan: ShelfPlan, drafts: Mapping[str, Draft]) -> Iterator[Front]:
    """Every space with something on it, as the shelf file lists them; last what stands nowhere.

    What is not drawn yet is plain card.
    """
    placed = {id for surface in plan.room for one in surface.things for id in (one.thing, *_held(one.thing, plan))}
    for fit in plan.spaces:
        places: list[tuple[Shown, ...]] = []
        for _, together in groupby(arranged(fit, plan), key=lambda one: one.place):
            first, *others = together
            held = plan.plans[first.who.thing].held
            stack = tuple(_shown(one, drafts) for one in (first, *others))
            places += [*_filled(first, plan, drafts)] or [stack]
            placed.update((first.who.thing, *(one.who.thing for one in others), *held))
        if places:
            space = plan.spec.spaces[fit.name]
            yield Front(fit.name, space.width, space.height, tuple(places))
    stray = [one.standing for id, one in plan.plans.items() if id not in placed and one.standing and _closed(one, plan)]
    if stray:
        yield _row_of([Stood(Rect(0, 0, one.across.length, one.up.length), one) for one in stray], drafts)


def _held(thing: str, plan: ShelfPlan) -> tuple[str, ...]:
    return plan.plans[thing].held if thing else ()


def _closed(one: Plan, plan: ShelfPlan) -> bool:
    """Whether nothing is seen of what it holds."""
    return not one.niches(plan.held_by(one))


def _shown(one: Stood, drafts: Mapping[str, Draft]) -> Shown:
    id, stance = one.who.thing, one.who.stance
    faces = drafts[id].faces if id in drafts else {}
    face = faces.get(FACES[stance.way]) if stance.way in FACES else None
    if stance.opened:
        face = open_book(one.rect.size, stance.opened, faces)
    head = drafts[id].head if id in drafts and stance.way is Way.SPINE and not (one.lies or one.lean) else None
    return Shown(one.rect, id, _front_of(id, drafts), one.lies, face, stance.upside_down, one.lean, stance.pulled_out,
                 head, one.who.depth)  # fmt: skip


def _front_of(thing: str, drafts: Mapping[str, Draft]) -> tuple[Piece, Rect] | None:
    return drafts[thing].front if thing in drafts else None


def _row_of(books: Sequence[Stood], drafts: Mapping[str, Draft]) -> Front:
    places: list[tuple[Shown, ...]] = []
    x = 0.0
    for one in books:
        places.append((_shown(one._replace(rect=one.rect.moved(x, 0)), drafts),))
        x += one.rect.width + CLOSE
    return Front("", x - CLOSE, max(one.rect.height for one in books), tuple(places))


def _filled(holder: Stood, plan: ShelfPlan, drafts: Mapping[str, Draft]) -> Iterator[tuple[Shown, ...]]:
    """What holds other things from the front: its edges around them, each place with its share of these."""
    one = plan.plans[holder.who.thing]
    for niche in one.niches(plan.held_by(one)):
        x, y = holder.rect.x, holder.rect.y
        edges = (Shown(edge.moved(x, y), holder.who.thing) for edge in niche.edges)
        yield (*edges, Shown(niche.rect.moved(x, y), niche.thing, _front_of(niche.thing, drafts)))


def rows_of(front: Front, room: float) -> Iterator[Row]:
    """A front in rows at most as wide as the room, in mm of the space; a place wider than that has one of its own."""
    used = max(shown.box.right for place in front.places for shown in place)
    whole = max(front.width, used)
    height = max(front.height, *(shown.box.top for place in front.places for shown in place))
    left = right = 0.0
    row: list[Shown] = []
    for place in front.places:
        low, high = min(shown.box.x for shown in place), max(shown.box.right for shown in place)
        if row and high - left > room:
            yield Row(front.name, left, right - left, height, tuple(row), begins=left == 0, ends=False)
            left, row = low, []
        row += place
        right = high
    width = min(whole - left, max(room, used - left))
    yield Row(front.name, left, width, height, tuple(row), begins=left == 0, ends=width >= whole - left - 1e-6)
