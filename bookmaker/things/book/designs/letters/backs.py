"""What stands on the back of a cover: a blurb in dummy words, a list of a series, a device, a border, a blind frame."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import accumulate
from random import Random
from typing import Literal

from pydantic import Field

from .....ground.art import Written
from .....ground.drawing import Art
from .....ground.geometry import Point, Rect
from .....ground.typefaces import TextLine, Typeface, set_line
from .....typesetting.dummy_words import DummyTongue, dummy_titles
from ..chance import one_of
from ..design import DrawnDesign, Words
from ..ornament.devices import DEVICES
from ..ornament.fleurons import FLEURONS
from ..ornament.ornaments import frame, rule, stamp
from ..tones import mixed
from .eras import year_in
from .front import inside
from .lettering import Hand, typeface_for

__all__ = ["PART", "BackName", "BackedDesign", "back_matter"]

BackName = Literal["auto", "plain", "frame", "border", "device", "blurb", "list"]

EM = 0.52
"""Dummy words on a back has this em in mm: its small letters have five dots at 600 to the inch."""

LEADING = 1.24
"""From line to line, in ems."""

DECIMAL_SINCE = 1971
"""Prices were in shillings and pence before that year, in Britain (Decimal Currency Act 1969)."""


class BackedDesign(DrawnDesign):
    """The keys of styles whose back shows something of its own."""

    back: BackName = Field("auto", description="what stands on the back: a device, a blurb, a list, a border, a frame")


WHOLE: tuple[BackName, ...] = ("frame", "border", "device", "blurb", "list")
PART: tuple[BackName, ...] = ("device", "blurb", "list")
"""What may stand on a whole back, and what on a part of one."""


def back_matter(
    asked: BackName, side: Rect, words: Words, hand: Hand, device: str = "none", offered: Sequence[BackName] = WHOLE
) -> Iterator[Art]:
    """What stands on a back, in the ink of the hand: what was asked for, or what of all offered the look has.

    A set has one kind throughout; the dummy words of each volume are its own.
    """
    chance = Random(words.kin + 11)
    kind = one_of(offered, chance) if asked == "auto" else asked
    mark = DEVICES.get(device if device != "none" else one_of(tuple(DEVICES), chance))  # type: ignore[call-overload]
    fleuron = one_of(tuple(FLEURONS.values()), chance)
    blind = mixed(hand.ground, hand.ink, 0.42)
    if kind in ("frame", "border"):
        edge = side.grown(-side.width * 0.075)
        yield from frame(edge, hand.ink if kind == "border" else blind, 0.14, second=side.width * 0.028)
        if kind == "border":
            yield stamp(fleuron, _square(side, 0.5, 0.22), hand.ink)
    elif kind == "device":
        yield stamp(mark, _square(side, 0.5, 0.2), hand.ink)
    elif kind in ("blurb", "list"):
        room = inside(side, 0.14, 0.12)
        yield from (_blurb if kind == "blurb" else _list)(room, words, hand)
        yield stamp(mark, _square(side, 0.17, 0.12), hand.ink)
        yield from _price(inside(side, 0.08, 0.05), words, hand, chance)


def _square(side: Rect, up: float, share: float) -> Rect:
    """A square about a place up a side, as wide as a share of it."""
    wide = side.width * share
    return Rect(side.centre.x - wide / 2, side.y + side.height * up - wide / 2, wide, wide)


def _face(words: Words, hand: Hand) -> Typeface:
    """The typeface of small print on a back: the author's, but none that is a script or slopes."""
    name = hand.author.removesuffix(" italic").removesuffix(" bold")
    return typeface_for(words.title, "text" if name in ("script", "blackletter") else name, words.own)[0]


def _blurb(room: Rect, words: Words, hand: Hand) -> Iterator[Art]:
    """A paragraph or two in the upper half, or as much as goes in."""
    face, tongue = _face(words, hand), DummyTongue(words.seed)
    rows = max(2, int(room.height * 0.6 / (EM * LEADING)))
    said, y, length = tongue.words(), room.top - EM, 0
    held, ends = "", {round(rows * share) for share in (0.45, 1.0)}
    for row in range(1, rows + 1):
        line = held or next(said)
        while (length := length + 1) and face.shape(f"{line} {(held := next(said))}").width * EM <= room.width:
            line = f"{line} {held}"
        if row in ends:
            line = line[: max(8, len(line) * 2 // 3)].rpartition(" ")[0].rstrip(",.") + "."
            held = ""
        if face.shape(line).width * EM <= room.width:
            yield Written(set_line(face, EM, line), Point(room.x, y), hand.ink)
        y -= EM * LEADING * (1.6 if row in ends else 1.0)


def _list(room: Rect, words: Words, hand: Hand) -> Iterator[Art]:
    """The volumes of its set, or books of which there are none, one under another between two rules."""
    face = _face(words, hand)
    titles = words.titles if len(words.titles) > 2 else dummy_titles(words.kin, 9)
    most = max(3, int(room.height * 0.58 / (EM * LEADING * 1.25)))
    lines = [set_line(face, EM, title) for title in titles[:most]]
    drops = list(accumulate((EM * LEADING * 1.25 for _ in lines), initial=EM * 1.6))
    for y in (room.top, room.top - drops[-1]):
        yield rule(y, room.centre.x - room.width * 0.3, room.centre.x + room.width * 0.3, 0.08, hand.ink)
    for line, drop in zip(lines, drops, strict=False):
        if line.width <= room.width:
            yield _centred(line, room.centre.x, room.top - drop, hand)


def _centred(line: TextLine, x: float, y: float, hand: Hand) -> Art:
    return Written(line, Point(x - line.width / 2, y), hand.ink)


def _price(room: Rect, words: Words, hand: Hand, chance: Random) -> Iterator[Art]:
    """In the lower corner: shillings and pence before there were others, or a plain number; not before 1900."""
    year = year_in(words.dated)
    if year is not None and year < 1900:
        return
    whole = 1 + int(chance.random() * 11)
    old = year is not None and year < DECIMAL_SINCE
    said = f"{whole}/{one_of(('–', '6'), chance)}" if old else f"{whole}.{one_of(('25', '50', '95'), chance)}"
    line = set_line(_face(words, hand), EM * 1.1, said)
    yield Written(line, Point(room.right - line.width, room.y), hand.ink)
