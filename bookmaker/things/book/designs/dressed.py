"""The art of covers, of which a shelf has more than fits into memory: it is drawn again when it was given up."""

from __future__ import annotations

from dataclasses import dataclass

from ....ground.drawing import Art, Canvas
from ....ground.kept.memory import Kept
from ....sheets.flat import Flat
from .artwork import Artwork
from .design import Design, Dress, Words

__all__ = ["Dressed", "dressed"]

MOST_HELD = 100
"""The art of so many flats is held; that of an old cover with its weave and wear takes a fifth of a megabyte."""

_held = Kept[Art](MOST_HELD)


@dataclass(frozen=True)
class Dressed:
    """A flat of a cover in its design: whenever it is drawn, it looks the same."""

    design: Design
    artwork: Artwork
    flat: Flat
    words: Words

    def __hash__(self) -> int:
        """Soon told, for pictures have none."""
        return hash((self.words.seed, self.flat.name))

    def draw(self, canvas: Canvas) -> None:
        """Draw it, from what is held or anew."""
        _held.get(self, lambda: self.design.dress(self.artwork, self.flat, self.words).art).draw(canvas)


def dressed(design: Design, artwork: Artwork, flat: Flat, words: Words) -> tuple[Dressed, Dress]:
    """The art of a flat, and what came of drawing it, which is held no longer than there is room."""
    dress, art = design.dress(artwork, flat, words), Dressed(design, artwork, flat, words)
    _held.put(art, dress.art)
    return art, dress
