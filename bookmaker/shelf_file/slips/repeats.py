"""Keys that stand twice in a group."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ...ground.problems import Place, Problem
from .marks import AFTER_COMMA, COMMA_ENDS

__all__ = ["Again", "repeated"]


class Again(NamedTuple):
    """A key, where it stands first, and where it stands once more."""

    key: str
    first: Place
    place: Place

    def begins_item(self, begun: str) -> bool:
        """Whether the next item of a list may begin here: with the key, further down, with which this one had begun."""
        return self.key == begun and self.first.column > 1 and self.place.line > self.first.line


def repeated(begun: str, again: Sequence[Again]) -> Iterator[Problem]:
    """What is said of the keys of a group that stand twice; `begun` is the first key of the group.

    Where that one is the first to come again, a new item begins there without its dash, so that is all to be said.
    """
    new_item = bool(again) and again[0].begins_item(begun)
    for key, first, place in again[:1] if new_item else again:
        message = f"the key {key!r} stands here a second time; it is on line {first.line} already"
        if new_item:
            remedy = f"if the next item of a list begins here, write - {key}: with a dash; or else keep one of the two"
        elif AFTER_COMMA.match(key):
            remedy = f"{COMMA_ENDS}: write numbers with a point, as in 21.{key}"
        else:
            remedy = "keep one of the two"
        yield Problem(message, remedy, place=place)
