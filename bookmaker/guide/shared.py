"""What many things have alike in their making: told once before them, with its drawings, and only named in each."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from ..things.making import CAUTION, Chapter, Figure, Making
from .drawings import drawing_items
from .items import Beside, Caution, Heading, Illustration, Item, Paragraph, Tick

__all__ = ["Shared", "own_making", "shared_items", "shared_makings", "step_item"]

MANY = 3
"""A step is shared if so many things have it word for word."""

MANY_DRAWN = 6
"""So many makings of one heading have one drawing for all, that of the first."""

OWN_NUMBERS = re.compile(r"\d\.\d|\bpages? \d|\bstrip \d+ to|\bSection \d")
"""Measures, and the numbers of pages and strips: those of one book, even if another has the same."""


@dataclass(frozen=True, slots=True)
class Shared:
    """The steps of one heading that many makings have, under a letter, and a drawing if it does for all of them."""

    letter: str
    heading: str
    steps: tuple[str, ...]
    figures: tuple[Figure, ...] = ()

    def marked(self, step: str) -> str:
        """The step by its mark: A3."""
        return f"{self.letter}{self.steps.index(step) + 1}"


def shared_makings(chapters: Iterable[Chapter]) -> dict[str, Shared]:
    """What is shared, by heading, in the order of the work."""
    makings = [making for chapter in chapters for making in chapter.makings]
    found: dict[str, Shared] = {}
    for heading in dict.fromkeys(making.heading for making in makings):
        alike = [making for making in makings if making.heading == heading]
        counts = Counter(step for making in alike for step in dict.fromkeys(making.steps))
        steps = tuple(step for step, count in counts.items() if count >= MANY and _is_of_all(step))
        if steps and len(found) < 26:
            figures = alike[0].figures if len(alike) >= MANY_DRAWN else ()
            found[heading] = Shared(chr(ord("A") + len(found)), heading, _in_order(steps, alike), figures)
    return found


def _is_of_all(step: str) -> bool:
    """Whether a step holds for whoever reads it: one with measures of its own is told where it belongs."""
    return not step.startswith(CAUTION) and not OWN_NUMBERS.search(step)


def _in_order(steps: Sequence[str], makings: Sequence[Making]) -> tuple[str, ...]:
    """Steps as they follow one another in most makings; what others do instead stands together beside it."""
    merged: list[str] = []
    for making in makings:
        at = 0
        for step in dict.fromkeys(making.steps):
            if step in merged:
                at = max(at, merged.index(step) + 1)
            elif step in steps:
                merged.insert(at, step)
                at += 1
    return tuple(merged)


def shared_items(shared: Mapping[str, Shared], drawings: Sequence[Figure] = ()) -> Iterator[Item]:
    """The chapter that tells it all once; nothing if there is nothing to tell."""
    if not shared and not drawings:
        return
    yield Heading("What many books share" if shared else "What many things share", level=1)
    if shared:
        yield Paragraph(
            "These steps are the same for several books. Each book names those that it has by their letter and number, "
            "and adds its own between them: follow these, not all. The drawings are named by their numbers.",
            leads=True,
        )
    yield from drawing_items(drawings)
    for one in shared.values():
        yield Heading(f"{one.letter}. {one.heading}")
        if one.figures:
            yield Beside(tuple(map(Illustration, one.figures)))
        yield from (Paragraph(f"{one.marked(step)}  {step}", strong=True) for step in one.steps)


def own_making(making: Making, shared: Mapping[str, Shared]) -> tuple[tuple[Figure, ...], list[str]]:
    """The drawings and steps that are left to a thing, with one line for each run of steps that are told before."""
    if making.heading not in shared:
        return making.drawings, list(making.steps)
    one = shared[making.heading]
    steps: list[str] = []
    for told, run in groupby(making.steps, key=one.steps.__contains__):
        named = list(run)
        steps += ["; ".join(f"{one.marked(step)} {_opening(step)}" for step in named)] if told else named
    return making.drawings[len(making.figures) :] if one.figures else making.drawings, steps


def step_item(step: str) -> Item:
    """A step to tick, or a caution, which is read."""
    return Caution(step) if step.startswith(CAUTION) else Tick(step)


def _opening(step: str) -> str:
    """The first words of a step, by which one knows it again.

    >>> _opening("Press the book between boards under the weight, overnight.")
    'press the book between boards under the weight'
    """
    words = re.split(r"[,.:;(]", step, maxsplit=1)[0].strip()
    return words[:1].lower() + words[1:]
