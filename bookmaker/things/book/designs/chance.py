"""What is left to chance: which of several, and whether. The same chance always settles it alike."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random
from typing import TypeVar

__all__ = ["happens", "one_of"]

Option = TypeVar("Option")


def one_of(offered: Sequence[Option], chance: Random) -> Option:
    """One of several that chance picks; nothing is left to chance where there is but one.

    >>> one_of("rook", Random(3)), one_of(["raven"], Random(3))
    ('r', 'raven')
    """
    return offered[int(chance.random() * len(offered))] if len(offered) > 1 else offered[0]


def happens(share: float, chance: Random) -> bool:
    """Whether something happens that does so in a share of all cases; always, with 1, and never, with 0."""
    return share > 0 and (share >= 1 or chance.random() < share)
