"""A thing of the guide: what it is, what it tells of its making, where its parts are printed, what is wrong with it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..things.making import Chapter
from ..things.prints import Prints
from ..things.thing import Plan
from .shared import Shared, own_making

__all__ = ["Member"]


@dataclass(frozen=True, slots=True)
class Member:
    """One of the things that the guide tells of; `warned` is what spoils it, and what to do, each in a line."""

    id: str
    plan: Plan
    chapter: Chapter
    prints: Prints
    warned: tuple[str, ...] = ()

    def own(self, shared: Mapping[str, Shared]) -> list[tuple[str, ...]]:
        """The steps of its own, part by part."""
        return [tuple(own_making(one, shared)[1]) for one in self.chapter.makings]
