"""Drawings of how something is done, by their numbers: those that several things need stand together before all."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from ..things.making import Chapter, Figure, Making, Manner
from .items import Beside, Heading, Illustration, Item

__all__ = ["Drawings", "drawing_items", "numbered_drawings"]

NAMED = re.compile(r"\[([^\[\]:]+)(?:: ([^\[\]]+))?\]")
"""Where a step names a drawing, and some of its stages."""


@dataclass(frozen=True, slots=True)
class Drawings:
    """The drawings that are `shared`, in their order, and every chapter with numbers in its steps for names.

    A drawing that one thing alone needs stays with it.
    """

    shared: tuple[Figure, ...]
    chapters: Mapping[str, Chapter]


def numbered_drawings(chapters: Mapping[str, Chapter]) -> Drawings:
    """Number all drawings as they follow one another on the pages: those of several chapters first, the highest first.

    So those that stand side by side are of like height.
    """
    needed: dict[str, list[str]] = {}
    manners: dict[str, Manner] = {}
    for id, chapter in chapters.items():
        for name, manner in {one.name: one for making in chapter.makings for one in making.manners}.items():
            needed.setdefault(name, []).append(id)
            manners.setdefault(name, manner)
    several = [name for name, things in needed.items() if len(things) > 1]
    shared = sorted(several, key=lambda name: -manners[name].figure.size.height)
    alone = [name for name in needed if name not in shared]
    numbers = {name: number for number, name in enumerate([*shared, *alone], start=1)}
    figures = tuple(_captioned(manners[name], numbers) for name in shared)
    told = {id: replace(chapter, makings=tuple(_told(one, numbers, shared) for one in chapter.makings))
            for id, chapter in chapters.items()}  # fmt: skip
    return Drawings(figures, told)


def _captioned(manner: Manner, numbers: Mapping[str, int]) -> Figure:
    return replace(manner.figure, caption=f"Drawing {numbers[manner.name]}. {manner.figure.caption}")


def _told(making: Making, numbers: Mapping[str, int], shared: Sequence[str]) -> Making:
    """A part of the work with the numbers of its drawings, and only those drawings that no other thing needs."""
    own = tuple(replace(one, figure=_captioned(one, numbers)) for one in making.manners if one.name not in shared)
    return replace(making, steps=tuple(_with_numbers(step, numbers) for step in making.steps), manners=own)


def _with_numbers(step: str, numbers: Mapping[str, int]) -> str:
    def number(found: re.Match[str]) -> str:
        name, stages = found.groups()
        if name not in numbers:
            return found[0]
        return f"(drawing {numbers[name]}{', ' + stages if stages else ''})"

    return NAMED.sub(number, step)


def drawing_items(shared: Sequence[Figure]) -> Iterator[Item]:
    """The drawings two by two."""
    if shared:
        yield Heading("How it is done, in drawings")
    for at in range(0, len(shared), 2):
        yield Beside(tuple(map(Illustration, shared[at : at + 2])))
