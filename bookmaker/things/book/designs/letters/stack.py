"""The words and marks of a spine, one under another: how large they can be, and where each stands.

All sizes hang on that of the title, the em s: the author has a share of it, the gap between any two things is at
least the height of its capitals, so that nothing looks like part of the title that is not. A thing that would be
wider than the spine stays as large as the spine allows. So what a stack needs in height grows with s, in straight
pieces, ever slower: the largest s that a room allows is found by going down the tangents.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal, NamedTuple

from .....ground.drawing import Colour
from .....ground.geometry import Size
from .lettering import TURNS, Hand, Way, letter_height, letters_for, settings, written
from .titling import Breaking, fewest_lines

__all__ = [
    "NUMBERS",
    "PAD",
    "READABLE",
    "SMALLEST_NUMBER",
    "WIDE_AUTHOR",
    "Name",
    "Order",
    "Stack",
    "breadth_of",
    "stacked",
]

Name = Literal["title", "author", "volume", "date", "ornament", "rule", "device"]

READABLE = 0.436
"""Letters of this height in mm are read by sharp eyes at 300 mm: 5 minutes of arc (Snellen)."""

PAD = 0.45
"""Words keep so many ems of the title from the ends of their room, at least: rules and bands lie beyond."""

NUMBER_SHARE, SMALLEST_NUMBER = 1.1, 0.65
"""A volume number stands upright, a little larger than the title: by it a volume is found. If its letters would have
to be smaller than that share of the title's to stand so, it runs along the spine as the title does."""

ORNAMENT_SHARE, LARGEST_ORNAMENT, SMALLEST_ORNAMENT = 1.15, 2.2, 0.7
"""Ornaments have this share of the title's size; they are no larger or smaller, in mm."""

DEVICE_SHARE, LARGEST_DEVICE, NARROWEST_FOR_DEVICE = 0.13, 3.2, 1.1
"""A device takes this share of the room's height; there is none on a narrower room, in mm."""

MODEST = 0.55
"""Titles along the spine are no larger than this share of the room's width, on any but thin spines."""

ON_THIN = 1.3
"""On thin spines titles may have this em, in mm, if there is room for it."""

BOLD, FULL = 0.9, 0.6
"""Few and short words are larger, up to the first share of the room's width, until all takes the second share of its
height."""

GAIN_OF_A_SECOND_NAME = 1.25
"""An author's name is set on one line more if that makes the title so many times larger."""

NO_LOSS = 0.95
"""A title that keeps this share of its size has lost nothing."""

SHORT_NAME = 16
"""Names of so many letters stay on one line along the spine, whatever size that gives the title."""

WIDE_AUTHOR, SMALL_AUTHOR, LEAST_AUTHOR = 1.1, 0.34, 0.5
"""Across the spine an author is no wider than so many times the title, in no less than that share of its size; in no
less than the last share where that would make an em smaller than `SMALL_EM`."""

SMALL_EM = 0.6
"""In mm: its small letters are about 0.3 mm high."""

GAIN_OF_A_LINE, GAIN_WHERE_SMALL = 1.3, 1.12
"""A line more along the spine makes the title so many times larger; less will do for the second line of one that is
hard to read."""

NUMBERS: tuple[Name, ...] = ("volume", "date")

BLACK = Colour.from_hex("#000000")


@dataclass(frozen=True, slots=True)
class Order:
    """What is to stand in a room of a spine. `most` is the largest em in mm of some of it, the title's at least.

    `author_share` is the author's size as a share of the title's; `turned` are the numbers that run as the title.
    """

    room: Size
    way: Way
    hand: Hand
    title: str
    author: str = ""
    author_share: float = 0.72
    volume: str = ""
    date: str = ""
    ornament: bool = False
    rule: bool = False
    device: bool = False
    author_first: bool = False
    most: tuple[tuple[Name, float], ...] = ()
    turned: tuple[Name, ...] = ()

    def way_of(self, name: Name) -> Way:
        """Which way a text runs: volume number and date stand upright, unless they are turned."""
        return "across" if name in NUMBERS and name not in self.turned else self.way

    @property
    def names(self) -> tuple[Name, ...]:
        """What stands there, from the head down."""
        between: tuple[Name, ...] = ()
        if self.ornament and min(self.room.width * 0.8, LARGEST_ORNAMENT) >= SMALLEST_ORNAMENT:
            between = ("ornament",)
        elif self.rule and self.author and self.way == "across":
            between = ("rule",)
        body: tuple[Name, ...] = ("title",)
        if self.author:
            body = ("author", *between, "title") if self.author_first else ("title", *between, "author")
        elif self.way == "across":
            body = ("title", *between)
        device = self.device and self.room.width >= NARROWEST_FOR_DEVICE
        foot: tuple[tuple[Name, object], ...] = (("volume", self.volume), ("date", self.date), ("device", device))
        return (*body, *(name for name, there in foot if there))


@dataclass(frozen=True, slots=True)
class Stack:
    """Things of settled size: `ems` and `lengths`, the room each takes along the stack, in mm; texts are broken.

    `clear` is the least gap between any two of them, `worth` the title's size, less where it or the author is set
    in a way that does not please, `letters` the height of the title's letters, all in mm.
    """

    order: Order
    ems: Mapping[Name, float]
    lengths: Mapping[Name, float]
    texts: Mapping[Name, Breaking]
    clear: float
    worth: float
    letters: float


class Thing(NamedTuple):
    """A thing that has a share of the title's em, at most so many mm; `length` is along the stack, in ems.

    `bold` is what it may have at most where there is room to spare.
    """

    name: Name
    share: float
    most: float
    length: float
    bold: float

    def em(self, size: float) -> float:
        """Its own em where the title's is `size`."""
        return min(self.share * size, self.most)


def stacked(order: Order) -> Stack:
    """The best stack for an order, its title as large as may be; a line more must be worth it."""
    colourless = replace(order.hand, ink=BLACK, ground=BLACK, on="spine")
    return _stacked(replace(order, hand=colourless))


@lru_cache(maxsize=4096)
def _stacked(order: Order) -> Stack:
    along = bool(TURNS[order.way])
    titles = settings("title", order.title, order.hand, 3 if along else 6, order.way)
    lines = 3 if not along else 1 if len(order.author) <= SHORT_NAME else 2
    authors: Sequence[Breaking | None] = settings("author", order.author, order.hand, lines, order.way) or (None,)
    said: tuple[tuple[Name, str], ...] = (("volume", order.volume), ("date", order.date))
    numbers = {name: settings("volume", text, order.hand, 1, order.way_of(name))[0] for name, text in said if text}
    stacks = []
    for title in titles:
        ways = [_of(order, title, author, numbers) for author in authors]
        stacks.append(_named(ways, along=along))
    if not along:
        return stacks[fewest_lines([stack.worth for stack in stacks], 1.0)]
    small = stacks[0].letters < READABLE
    first = stacks[fewest_lines([stack.worth for stack in stacks[:2]], GAIN_WHERE_SMALL if small else GAIN_OF_A_LINE)]
    return (first, *stacks[2:])[fewest_lines([stack.worth for stack in (first, *stacks[2:])], GAIN_OF_A_LINE)]


def _named(ways: Sequence[Stack], *, along: bool) -> Stack:
    """Of a title with the author's name on more and more lines: on as few as serve the title.

    Across the spine a long name would be tiny on one line; it takes another if that makes it much larger and costs
    the title next to nothing.
    """
    chosen = ways[fewest_lines([way.worth for way in ways], GAIN_OF_A_SECOND_NAME)]
    for way in () if along else ways:
        larger = way.ems.get("author", 0.0) >= GAIN_OF_A_SECOND_NAME * chosen.ems.get("author", 1.0)
        if larger and way.ems["title"] >= NO_LOSS * chosen.ems["title"]:
            chosen = way
    return chosen


def _of(order: Order, title: Breaking, author: Breaking | None, numbers: Mapping[Name, Breaking]) -> Stack:
    """The stack of texts that are broken, as large as may be."""
    texts: dict[Name, Breaking] = {"title": title, **({"author": author} if author else {}), **numbers}
    stack = _sized(order, texts, SMALL_AUTHOR)
    return stack if stack.ems.get("author", SMALL_EM) >= SMALL_EM else _sized(order, texts, LEAST_AUTHOR)


def _sized(order: Order, texts: Mapping[Name, Breaking], least: float) -> Stack:
    """The same, with an author in no less than a share of the title's size."""
    title, author = texts["title"], texts.get("author")
    things = [_thing(name, order, texts, least) for name in order.names]
    size = _largest(things, order, order.room.height)
    bold = [thing._replace(most=thing.bold) for thing in things]
    if TURNS[order.way] and (larger := _largest(bold, order, order.room.height * FULL)) > size:
        things, size = bold, larger
    ems = {thing.name: thing.em(size) for thing in things}
    worth = size * title.worth
    if author:
        wanted = next(thing.share for thing in things if thing.name == "author")
        worth *= author.worth * (ems["author"] / (wanted * size)) ** 0.25
    face, _ = letters_for("title", order.title, order.hand)
    return Stack(
        order=order,
        ems=ems,
        lengths={thing.name: thing.em(size) * thing.length for thing in things},
        texts=texts,
        clear=size * face.cap_height,
        worth=worth,
        letters=size * letter_height(face, written(order.title, order.hand)),
    )


def breadth_of(stack: Stack) -> float:
    """How broad the words of a stack are across the spine, in mm."""
    order = stack.order

    def broad(name: Name, text: Breaking) -> float:
        return stack.ems[name] * (text.tall if TURNS[order.way_of(name)] else text.wide)

    return max(broad(name, text) for name, text in stack.texts.items())


def _thing(name: Name, order: Order, texts: Mapping[Name, Breaking], least: float) -> Thing:
    """What is known of a thing before the title's size is."""
    room, along, text = order.room, bool(TURNS[order.way]), texts.get(name)
    most = dict(order.most).get(name, float("inf"))
    if text is None:
        sizes: dict[Name, tuple[float, float]] = {
            "ornament": (ORNAMENT_SHARE, min(room.width * 0.8, LARGEST_ORNAMENT)),
            "device": (float("inf"), min(room.width, DEVICE_SHARE * room.height, LARGEST_DEVICE)),
            "rule": (0.07, float("inf")),
        }
        share, largest = sizes[name]
        return Thing(name, share, min(most, largest), 1.0, min(most, largest))
    turned = bool(TURNS[order.way_of(name)])
    length, broad = (text.wide, text.tall) if turned else (text.tall, text.wide)
    share = _share(name, order, texts, least)
    most = min(most, room.width / max(broad, 1e-6))
    bold = min(most, max(ON_THIN, BOLD * room.width))
    if name == "title" and along:
        most = min(most, max(ON_THIN, MODEST * room.width))
    return Thing(name, share, most, length, bold)


def _share(name: Name, order: Order, texts: Mapping[Name, Breaking], least: float) -> float:
    """The size of a text as a share of the title's."""
    if name != "author":
        return NUMBER_SHARE if name in NUMBERS else 1.0
    if TURNS[order.way]:
        return order.author_share
    as_wide = WIDE_AUTHOR * texts["title"].wide / max(texts["author"].wide, 1e-6)
    return min(order.author_share, max(least, as_wide))


def _largest(things: Sequence[Thing], order: Order, high: float) -> float:
    """The largest em of the title at which a stack is no higher than so many mm, in mm.

    The height of the stack is a concave function of the em: from an em that is too large the first tangent leads to
    one that is not, and every further one up to the em sought, in as many steps as there are things.
    """
    face, _ = letters_for("title", order.title, order.hand)
    gaps = face.cap_height * (len(things) - 1) + 2 * PAD
    size = next(thing.most for thing in things if thing.name == "title")
    if _height(things, size, gaps) <= high:
        return size
    for _ in range(len(things) + 1):
        growing = [thing for thing in things if thing.share * size < thing.most]
        slope = gaps + sum(thing.share * thing.length for thing in growing)
        still = sum(thing.most * thing.length for thing in things if thing not in growing)
        size = max((high - still) / slope, 1e-3)
    return size


def _height(things: Sequence[Thing], size: float, gaps: float) -> float:
    return gaps * size + sum(thing.em(size) * thing.length for thing in things)
