"""Neighbours: what must stand on one page with what goes before it, or with what comes after it."""

from __future__ import annotations

from collections.abc import Sequence

from ..manuscripts.indents import CENTRED
from ..manuscripts.passage import Passage, Role
from .matter import Matter

__all__ = ["beside"]

APART = frozenset({Role.HEADING, Role.BREAK})
"""What ends a letter, a scene or a chapter before it."""


def beside(matter: Matter, passage: Passage, before: Passage | None, following: Sequence[Passage]) -> Matter:
    """Some matter with what keeps it to the passages before and after it."""
    if passage.role is Role.PLACED:
        return _placed(matter, passage, before, following)
    return _item(matter, before, following) if passage.role is Role.ITEM else matter


def _placed(matter: Matter, passage: Passage, before: Passage | None, following: Sequence[Passage]) -> Matter:
    """Lines in the middle or at the right with what they begin, or else with what they sign or end."""
    begins = before is None or before.role in APART
    goes_on = bool(following) and following[0].role not in {*APART, Role.PLACED}
    if goes_on and (begins or passage.mark == CENTRED):
        return matter._replace(stays=True)
    return matter._replace(signs=not begins)


def _item(matter: Matter, before: Passage | None, following: Sequence[Passage]) -> Matter:
    """An item: one of a single line that begins a list, or is the last but one of it, stands with the next."""
    items = [passage.role is Role.ITEM for passage in following[:2]]
    edge = before is None or before.role is not Role.ITEM or items != [True, True]
    return matter._replace(stays=True) if edge and len(matter.lines) == 1 and items[:1] == [True] else matter
