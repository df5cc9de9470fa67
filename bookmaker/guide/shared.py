"""What many things have alike in their making: told once before them, with its drawings, and only named in each."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from ..things.making import Chapter, Figure, Making
from .items import Beside, Heading, Illustration, Item, Paragraph, Tick

__all__ = ["Shared", "own_making", "shared_items", "shared_makings"]

MANY = 3
"""A step is shared if so many things have it word for word."""

MANY_DRAWN = 6
"""So many makings of one heading have one drawing for all, that of the first."""

PRINTS = re.compile(r"Print |Let the print dry, and lay the clear film")
"""What is done once to a whole sheet, however many books have parts on it."""

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
    return bool(PRINTS.match(step)) or not OWN_NUMBERS.search(step)


def _in_order(steps: Sequence[str], makings: Sequence[Making]) -> tuple[str, ...]:
    """Steps as they follow one another, by how far in they stand on the average."""
    places = {step: [making.steps.index(step) / len(making.steps) for making in makings if step in making.steps]
              for step in steps}  # fmt: skip
    return tuple(sorted(steps, key=lambda step: sum(places[step]) / len(places[step])))


def shared_items(shared: Mapping[str, Shared]) -> Iterator[Item]:
    """The chapter that tells it all once; nothing if there is nothing to tell."""
    if not shared:
        return
    yield Heading("What many books share", level=1)
    yield Paragraph(
        "These steps are the same for several books. Each book names them by their letter and number and adds its "
        "own steps between them. Print each sheet once, whatever is on it."
    )
    for one in shared.values():
        yield Heading(f"{one.letter}. {one.heading}")
        if one.figures:
            yield Beside(tuple(map(Illustration, one.figures)))
        yield from (Paragraph(f"{one.marked(step)}  {step}") for step in one.steps)


def own_making(making: Making, shared: Mapping[str, Shared]) -> tuple[tuple[Figure, ...], list[Tick]]:
    """The drawings and steps that are left to a thing, with one line for each run of steps that are told before."""
    if making.heading not in shared:
        return making.figures, [Tick(step) for step in making.steps]
    one = shared[making.heading]
    ticks = []
    for told, run in groupby(making.steps, key=one.steps.__contains__):
        steps = list(run)
        if not told:
            ticks += [Tick(step) for step in steps]
        elif named := [
            f"{one.marked(step)} {_opening(step)}" for step in steps if not step.startswith("Let the print dry")
        ]:
            ticks.append(Tick("; ".join(named)))
    return () if one.figures else making.figures, ticks


def _opening(step: str) -> str:
    """The first words of a step, by which one knows it again.

    >>> _opening("Press the book between boards under the weight, overnight.")
    'press the book between boards under the weight'
    """
    if printed := re.match(r"Print (.+?), (?:at|on) ", step):
        return f"take {printed[1]}, as printed"
    words = re.split(r"[,.:;(]", step, maxsplit=1)[0].strip()
    return words[:1].lower() + words[1:]
