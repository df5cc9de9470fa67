"""How a strip of panels is folded flat: which panel lies over which, in which order, and which is made shorter."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["GATE", "LETTER", "ONE_PANEL", "Chain", "zigzag"]


@dataclass(frozen=True, slots=True)
class Chain:
    """Panels in a row, from the left or from the head, folded up from the one that stays, its print up.

    `levels` tell how high each lies in the packet, `steps` when the fold after each is made, `shares` how long each is
    beside the longest, and `short` by how many allowances it is shorter than that.
    """

    levels: tuple[int, ...]
    steps: tuple[int, ...]
    shares: tuple[float, ...]
    short: tuple[float, ...]

    @property
    def root(self) -> int:
        """The panel that stays where it is: the lowest."""
        return self.levels.index(min(self.levels))

    @property
    def flipped(self) -> tuple[bool, ...]:
        """Which panels lie with their print the other way up than the one that stays."""
        return tuple(abs(panel - self.root) % 2 == 1 for panel in range(len(self.levels)))

    @property
    def deep(self) -> int:
        """How many layers the packet has."""
        return max(self.levels) + 1

    @property
    def climbs(self) -> tuple[int, ...]:
        """How many levels the fold after each panel climbs."""
        return tuple(abs(low - high) for low, high in zip(self.levels, self.levels[1:], strict=False))

    def longest(self, room: float, allowance: float) -> float:
        """How long the longest panel is when all have so much room, in mm."""
        return (room + sum(self.short) * allowance) / sum(self.shares)

    def lengths(self, longest: float, allowance: float) -> list[float]:
        """How long each is, beside the longest."""
        return [share * longest - short * allowance for share, short in zip(self.shares, self.short, strict=True)]


def zigzag(panels: int) -> Chain:
    """Panels folded to and fro, all alike: the folds of a map, a leaflet, a screen."""
    return Chain(tuple(range(panels)), tuple(range(1, panels)), (1.0,) * panels, (0.0,) * panels)


ONE_PANEL = zigzag(1)
"""A sheet that is not folded."""

LETTER = Chain((2, 0, 1), (2, 1), (1.0, 1.0, 1.0), (0.0, 0.0, 1.0))
"""Thirds, the last folded in first and therefore shorter ("C-folds", ThoughtCo: 11 in = 3 11/16 + 3 11/16 + 3 5/8)."""

GATE = Chain((1, 0, 1), (1, 2), (0.5, 1.0, 0.5), (0.5, 0.0, 0.5))
"""Two wings that meet in the middle."""
