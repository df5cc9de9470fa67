"""Kinds of equal items, and blocks: one item, or items joined edge to edge with hardly any waste.

Inside the search, lengths are whole millionths of a millimetre and every item has the gap between pieces added to
its width and height, as has the bin: then neighbours may touch. Lengths of items are rounded up and those of
bins down, so nothing that fits here fails to fit in truth.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from .items import ROUNDING, Bin, Item

__all__ = ["UNITS", "Block", "Kinds", "Size", "areas_in_units", "kinds_of", "make_blocks"]

UNITS = 1_000_000
"""Units in a millimetre."""

Size = tuple[int, int]


class Block(NamedTuple):
    """What is placed in one go: outer size, area of its items, the items as a code, and how it is built.

    `parts` is empty for a single item of kind `kind`. Otherwise it holds two blocks, the second to the
    right of the first when `beside`, or else above it.
    """

    width: int
    height: int
    area: int
    code: int
    kind: int = -1
    parts: tuple[Block, ...] = ()
    beside: bool = False


@dataclass(frozen=True, slots=True)
class Kinds:
    """Equal items counted together, and the code that says in one number how many of each are left.

    Each kind has a field of bits for its number, with one guard bit above. `needed` is contained in `left`
    when no guard bit is lost in ``(left | guards) - needed``: one subtraction compares all fields at once.
    """

    items: tuple[tuple[Item, ...], ...]
    ways: tuple[tuple[Size, ...], ...]
    units: tuple[int, ...]
    guards: int
    full: int
    area: int

    def singles(self) -> list[Block]:
        """Every kind in every way it may lie."""
        return [Block(w, h, w * h, self.units[kind], kind) for kind, ways in enumerate(self.ways) for w, h in ways]


def _up(length: float) -> int:
    return math.ceil((length - ROUNDING) * UNITS)


def _down(length: float) -> int:
    return math.floor((length + ROUNDING) * UNITS)


def areas_in_units(bins: Iterable[Bin], gap: float) -> list[Size]:
    """Bins with one gap added, rounded down to whole units."""
    return [(_down(area.width + gap), _down(area.height + gap)) for area in bins]


def kinds_of(items: Sequence[Item], gap: float) -> Kinds:
    """Sort items into kinds of equal size; a piece that may be turned equals its turned twin."""
    found: dict[tuple[Size, ...], list[Item]] = {}
    for item in items:
        ways = tuple(sorted((_up(w + gap), _up(h + gap)) for w, h, _ in item.ways()))
        found.setdefault(ways, []).append(item)
    units, full, guards, bit = [], 0, 0, 0
    for members in found.values():
        units.append(1 << bit)
        full |= len(members) << bit
        bit += len(members).bit_length()
        guards |= 1 << bit
        bit += 1
    area = sum(ways[0][0] * ways[0][1] * len(members) for ways, members in found.items())
    return Kinds(tuple(map(tuple, found.values())), tuple(found), tuple(units), guards, full, area)


def make_blocks(kinds: Kinds, largest: Size, depth: int, waste: float, limit: int) -> list[Block]:
    """Single items, rows of one kind, and what joining up to `depth` single items gives, largest area first.

    A joint block may waste the share `waste` of its area, and must fit into `largest`. At each depth the
    `limit` largest are kept.
    """
    singles = kinds.singles()
    known = {(block.width, block.height, block.code): block for block in singles}
    level = singles
    for block in _rows_of_one_kind(kinds, largest) if depth > 1 else ():
        known.setdefault((block.width, block.height, block.code), block)
    for _ in range(depth - 1):
        made: dict[tuple[int, int, int], Block] = {}
        for joint in _joined(level, singles, kinds, largest, waste):
            key = (joint.width, joint.height, joint.code)
            if key not in known:
                made.setdefault(key, joint)
        level = sorted(made.values(), key=lambda block: -block.area)[:limit]
        known.update(((block.width, block.height, block.code), block) for block in level)
    return sorted(known.values(), key=lambda block: -block.area)


def _rows_of_one_kind(kinds: Kinds, largest: Size) -> Iterator[Block]:
    """Rows and columns of equal items: a book's strips are often all alike."""
    for single in kinds.singles():
        for beside in (True, False):
            row = single
            for _ in range(len(kinds.items[single.kind]) - 1):
                row = _join(row, single, beside)
                if row.width > largest[0] or row.height > largest[1]:
                    break
                yield row


def _join(first: Block, second: Block, beside: bool) -> Block:
    if beside:
        width, height = first.width + second.width, max(first.height, second.height)
    else:
        width, height = max(first.width, second.width), first.height + second.height
    area, code = first.area + second.area, first.code + second.code
    return Block(width, height, area, code, parts=(first, second), beside=beside)


def _joined(
    level: Sequence[Block], singles: Sequence[Block], kinds: Kinds, largest: Size, waste: float
) -> Iterator[Block]:
    """Each block of a level with each single item beside or above it, if hardly any room is lost."""
    guards, left = kinds.guards, kinds.full | kinds.guards
    for first in level:
        width, height, area, code = first[:4]
        for second in singles:
            wide, high = second.width, second.height
            least = (1 - waste) * (1 / (area + second.area)) if area else 0.0
            beside = (width + wide) * max(height, high) * least <= 1
            above = max(width, wide) * (height + high) * least <= 1
            if not (beside or above) or (left - code - second.code) & guards != guards:
                continue
            if beside and width + wide <= largest[0] and max(height, high) <= largest[1]:
                yield _join(first, second, beside=True)
            if above and max(width, wide) <= largest[0] and height + high <= largest[1]:
                yield _join(first, second, beside=False)
