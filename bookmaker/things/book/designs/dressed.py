"""The art of covers, of which a shelf has more than fits into memory: it is drawn again when it was given up."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from ....ground.drawing import Art, Canvas
from ....ground.kept.memory import Kept
from ....sheets.flat import Flat
from .artwork import Artwork
from .design import Design, Dress, Words

__all__ = ["Dressed", "dressed"]

MOST_HELD = 75_000.0
"""The art of flats of so many mm² in all is held: a hundred small covers, of which an old one with its weave and wear
takes a fifth of a megabyte, or a few as large as atlases.
"""


class _Drawn(NamedTuple):
    """Art, and the mm² that it covers."""

    art: Art
    area: float


_held = Kept[_Drawn](MOST_HELD, lambda drawn: drawn.area)


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
        _held.get(self, lambda: _drawn(self.design.dress(self.artwork, self.flat, self.words), self.flat)).art.draw(
            canvas
        )


def dressed(design: Design, artwork: Artwork, flat: Flat, words: Words) -> tuple[Dressed, Dress]:
    """The art of a flat, and what came of drawing it, which is held no longer than there is room."""
    dress, art = design.dress(artwork, flat, words), Dressed(design, artwork, flat, words)
    _held.put(art, _drawn(dress, flat))
    return art, dress


def _drawn(dress: Dress, flat: Flat) -> _Drawn:
    return _Drawn(dress.art, flat.size.width * flat.size.height)
