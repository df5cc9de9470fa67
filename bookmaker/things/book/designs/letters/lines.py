"""How the words of a title are shared out among its lines: by their sense first, then as even as they come."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from .cut import Letters
from .wording import breaks_well, of_small_words, small_words_apart

__all__ = ["Lines", "balanced"]

SMALL_CAPITALS, SMALL_LETTERS = 0.58, 0.7
"""Small words on a line of their own are set in this share of the size (common practice on title pages)."""


@dataclass(frozen=True, slots=True)
class Lines:
    """Lines, each with its share of the size: how wide the widest is, in ems, how well they break, how uneven."""

    texts: tuple[str, ...] = ()
    shares: tuple[float, ...] = ()
    wide: float = 0.0
    worth: float = 1.0
    uneven: float = 0.0

    def longer(self, text: str, share: float, wide: float, worth: float) -> Lines:
        """With one line more, which is so wide."""
        return Lines((*self.texts, text), (*self.shares, share), max(self.wide, wide), self.worth * worth,
                     self.uneven + wide * wide)  # fmt: skip

    @property
    def cost(self) -> tuple[float, float]:
        """The narrower it would be if it broke well, the better; then the more alike its lines are."""
        return self.wide / self.worth, self.uneven


@lru_cache(maxsize=4096)
def balanced(letters: Letters, parts: tuple[str, ...], most: int, *, small_lines: bool = False) -> tuple[Lines, ...]:
    """The parts of a text on one line, on two and so on: the widest as narrow as can be where lines break well.

    Where `small_lines` are allowed, small words may have a line of their own, smaller; at no end of the text.
    """
    atoms = small_words_apart(parts) if small_lines else parts
    small = [small_lines and 0 < at < len(atoms) - 1 and of_small_words(atom) for at, atom in enumerate(atoms)]
    so_far: list[list[Lines]] = [[Lines()], *([] for _ in atoms)]
    done: list[Lines] = []
    for _ in range(min(most, len(atoms))):
        longer: list[list[Lines]] = [[] for _ in so_far]
        for start, ways in enumerate(so_far[:-1]):
            for end in range(start + 1, len(atoms) + 1) if ways else ():
                if small[end - 1] and start < end - 1:
                    continue
                text, share = " ".join(atoms[start:end]), _share(atoms[start]) if small[end - 1] else 1.0
                wide = letters.shape(text).width * share
                worth = breaks_well(text, atoms[end]) if end < len(atoms) else 1.0
                longer[end] += [way.longer(text, share, wide, worth) for way in ways]
        so_far = [_undominated(ways) for ways in longer]
        if so_far[-1]:
            done.append(min(so_far[-1], key=lambda way: way.cost))
    return tuple(done)


def _share(text: str) -> float:
    return SMALL_CAPITALS if text.isupper() else SMALL_LETTERS


def _undominated(ways: Sequence[Lines]) -> list[Lines]:
    """Those ways that no other beats in both width and worth."""
    kept: list[Lines] = []
    for way in sorted(ways, key=lambda way: (way.wide, -way.worth, way.uneven)):
        if not kept or way.worth > kept[-1].worth:
            kept.append(way)
    return kept
