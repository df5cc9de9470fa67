"""What a shelf takes, all together: sheets, film, board, thread and glue. Sums only."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil, cos, radians
from typing import NamedTuple

from ..ground.geometry import Size
from ..paper.glue import GLUES
from ..paper.stock import Stock
from ..sheets.cutting import CutPart, Stick
from ..sheets.layout import Sheet
from ..sheets.strip_layout import laid_on_lengths
from ..things.making import Supply, Unit
from ..things.prints import SheetOfFile

__all__ = [
    "PACKS",
    "BoardNeed",
    "PaperNeed",
    "StripNeed",
    "boards_needed",
    "packs_needed",
    "papers_needed",
    "strips_needed",
    "supplies_needed",
    "wet_glue_ml",
]

FOR_CUTS = 4 / 3
"""Board is bought a third larger than the parts cut from it (common practice)."""

KERF = 1.0
"""A cut of a fine saw and what is sanded off it, in mm, along a square end (common practice)."""

WET = 3.0
"""Glue taken from the pot for a dry film: half of it is water, and a third stays on brush and waste paper
(common practice)."""


class Pack(NamedTuple):
    """What a glue is bought in, and how many mm² it covers."""

    noun: str
    covers: float


PACKS = {GLUES["spray"]: Pack("can", 2e6), GLUES["glue stick"]: Pack("stick", 2e5)}
"""A can of 400 ml or a stick of 20 g covers somewhat more, thinly laid (from memory)."""


@dataclass(frozen=True, slots=True)
class PaperNeed:
    """So many printed sheets of a stock; `film` is the area of the film over them in mm², 0 without one."""

    stock: Stock
    sheets: int
    film: float


@dataclass(frozen=True, slots=True)
class BoardNeed:
    """Parts cut by hand from one material of one thickness in mm, and their area in mm².

    `sheets` is how many sheets of it to buy, or None if it is no stock of the shelf file. `sanded` are the thicknesses
    in mm of the blocks that wood is sanded down to.
    """

    material: str
    thickness: float
    parts: int
    area: float
    sheets: int | None
    sanded: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class StripNeed:
    """Sticks sawn from strip of one section in mm: how many, the longest, and all lengths with a saw cut for each.

    `layout` are the sticks of each length in which the strip is `sold`, if that is known.
    """

    material: str
    width: float
    thickness: float
    sticks: int
    longest: float
    length: float
    sold: float = 0.0
    layout: tuple[tuple[float, ...], ...] = ()


def papers_needed(sheets: Iterable[SheetOfFile]) -> Iterator[PaperNeed]:
    """The sheets of each stock and size in the order in which they are printed."""
    alike: dict[tuple[str, Size], list[Sheet]] = {}
    for _, _, sheet in sheets:
        alike.setdefault((sheet.stock.name, sheet.size), []).append(sheet)
    for (_, (width, height)), some in alike.items():
        yield PaperNeed(some[0].stock, len(some), sum(sheet.filmed for sheet in some) * width * height)


def boards_needed(parts: Iterable[CutPart], stocks: Mapping[str, Stock]) -> Iterator[BoardNeed]:
    """What is cut by hand, by material and thickness in alphabetical order, the thickest first."""
    found: dict[tuple[str, float], list[CutPart]] = {}
    for part in parts:
        layers, thickness = part.as_sold or (1, part.thickness)
        found.setdefault((part.material, round(thickness, 4)), []).append(replace(part, count=part.count * layers))
    for (material, thickness), alike in sorted(found.items(), key=lambda item: (item[0][0], -item[0][1])):
        area = sum(part.count * part.height * part.width for part in alike)
        pieces = sum(part.count for part in alike)
        sanded = tuple(sorted({part.thickness for part in alike if part.as_sold}))
        yield BoardNeed(material, thickness, pieces, area, _sheets_to_buy(area, stocks.get(material)), sanded)


def strips_needed(sticks: Iterable[Stick]) -> Iterator[StripNeed]:
    """What is sawn by hand, by material and section; two rails of 30 mm take 62 mm of strip."""
    found: dict[tuple[str, float, float], list[Stick]] = {}
    for stick in sticks:
        found.setdefault((stick.material, -round(stick.width, 4), -round(stick.thickness, 4)), []).append(stick)
    for (material, width, thickness), alike in sorted(found.items()):
        length = sum(stick.count * (stick.length + KERF) for stick in alike)
        count = sum(stick.count for stick in alike)
        sold = max((stick.sold for stick in alike if stick.sold), default=0.0)
        layout = _layout(alike, sold)
        longest = max(stick.length for stick in alike)
        yield StripNeed(material, -width, -thickness, count, longest, length, sold, layout)


def _layout(sticks: Sequence[Stick], sold: float) -> tuple[tuple[float, ...], ...]:
    """The lengths over all to saw from each length that is sold; none if one is too long for it."""
    takes: dict[float, list[float]] = {}
    for stick in sticks:
        takes.setdefault(stick.length + _slant(stick), []).extend([stick.length] * stick.count)
    if max(takes) > sold:
        return ()
    laid = laid_on_lengths([taken for taken, alike in takes.items() for _ in alike], sold, KERF)
    return tuple(tuple(takes[taken].pop() for taken in filling) for filling in laid)


def _slant(stick: Stick) -> float:
    """What a saw cut at a slant takes more of the strip than a square one: at 45° 1.41 kerfs for one."""
    return KERF * (1 / cos(radians(max(map(abs, stick.bevels)))) - 1)


def _sheets_to_buy(area: float, stock: Stock | None) -> int | None:
    if stock is None:
        return None
    width, height = stock.sheet.size
    return ceil(area * FOR_CUTS / (width * height))


def supplies_needed(supplies: Iterable[Supply]) -> tuple[Supply, ...]:
    """The same thing for the same use added up.

    >>> thread = Supply("thread", 200.0, Unit.LENGTH)
    >>> supplies_needed([thread, thread])[0].amount
    400.0
    """
    sums: dict[tuple[str, Unit, float], Supply] = {}
    for supply in supplies:
        key = (supply.what, supply.unit, supply.film)
        known = sums.get(key)
        sums[key] = supply if known is None else replace(known, amount=known.amount + supply.amount)
    return tuple(sums.values())


def packs_needed(supply: Supply) -> int | None:
    """How many cans or sticks of glue an area takes; None for what is bought otherwise.

    >>> packs_needed(Supply("glue stick", 40000.0, Unit.AREA, GLUES["glue stick"]))
    1
    """
    if supply.unit is not Unit.AREA or supply.film not in PACKS:
        return None
    return ceil(supply.amount / PACKS[supply.film].covers)


def wet_glue_ml(supply: Supply) -> float | None:
    """How much paste or PVA an area takes, in ml; None for what comes from a can, as a stick or on a roll.

    200 cm² of paste, 0.03 mm when dry, take 200 · 0.003 · 3 = 1.8 ml:

    >>> round(wet_glue_ml(Supply("paste or PVA", 20000.0, Unit.AREA, 0.03)), 6)
    1.8
    """
    if supply.unit is not Unit.AREA or supply.film in (*PACKS, GLUES["double-sided film"]):
        return None
    return supply.amount * supply.film * WET / 1000
