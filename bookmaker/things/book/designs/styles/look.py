"""The skeleton of drawn styles: covering, spine, wear, front, words over all; a style is a table of what differs."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from random import Random
from typing import ClassVar

from .....ground.drawing import Art, Colour
from .....ground.geometry import Path, Rect
from .....sheets.flat import Flat
from ..artwork import Artwork
from ..chance import happens, one_of
from ..colouring import Colours, colours_of
from ..design import DrawnDesign, Dress, Words
from ..faces import Faces, read_faces
from ..grounds.wear import rubbed, sunned
from ..letters.lettering import Hand, Lettered, composed
from ..letters.spine import Spine
from ..ornament.devices import DEVICES
from ..ornament.ornaments import choose_fleuron
from ..palettes import Material

__all__ = ["ArtAndWords", "Dressing", "Look", "SkeletonDesign", "Stuff"]

ArtAndWords = tuple[Sequence[Art], Sequence[Lettered]]
"""What is drawn on a spine or a front, and the words that stand over everything."""


@dataclass(frozen=True, slots=True)
class Stuff:
    """What sides are made of where spine and corners are of something else: the first colour is that of the whole."""

    material: Material
    colours: tuple[Colour, ...]


@dataclass(frozen=True, slots=True)
class Dressing:
    """One flat while it is dressed: what was asked for, where it goes, in what colours and in what hand.

    `ground` is the colour of the covering as it was new, `fleuron` the ornament that the book has.
    """

    entry: DrawnDesign
    faces: Faces
    words: Words
    colours: Colours
    ground: Colour
    hand: Hand
    spine: Spine
    fleuron: Path | None
    sides: Stuff | None

    @property
    def bleached(self) -> Colour:
        """The covering on the spine, as light has left it."""
        return sunned(self.ground, self.entry.wear)


def rubbed_all_over(dressing: Dressing, material: Material, ground: Colour) -> Iterator[Art]:
    """The wear of a covering of one colour, or of that and the stuff of the sides."""
    sides = (dressing.sides.material, dressing.sides.colours[0]) if dressing.sides else None
    return rubbed(dressing.faces, material, ground, dressing.entry.wear, Random(dressing.words.seed), sides)


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """What is peculiar to a style; `second` is the material of its second colour.

    `typefaces` are pairs for title and author, one of which the book takes; `capitals`, `spine_ornament` say how often
    titles are in capitals, and the ornament stands on the spine as well; `rules`, whether rules part title and author.
    `rubs` is the material that is rubbed off. Where spine and front bear labels, these lie over the wear: `labelled`.
    """

    second: Material
    typefaces: Sequence[tuple[str, str]]
    covering: Callable[[Dressing, Random], Iterable[Art]]
    spine: Callable[[Dressing, Rect], ArtAndWords]
    front: Callable[[Dressing, Rect], ArtAndWords]
    capitals: float = 0.0
    spine_ornament: float = 0.0
    rules: bool = True
    ornamented: bool = True
    labelled: bool = False
    rubs: Material | None = None
    ground: Callable[[Colours], Colour] = lambda colours: colours.ground
    worn: Callable[[Colour], Colour] = lambda ground: ground
    ink: Callable[[DrawnDesign, Colours], Colour] = lambda _, colours: colours.ink
    sides: Callable[[DrawnDesign, Colours, Random], Stuff] | None = None

    def dress(self, entry: DrawnDesign, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        chance = Random(words.kin)
        dressing = self._dressing(entry, read_faces(flat), words, chance)
        faces = dressing.faces
        covering = [*self.covering(dressing, chance)]
        on_spine, spine_words = self.spine(dressing, faces.spine) if faces.spine else ((), ())
        wear = [*rubbed_all_over(dressing, self.rubs or entry.material, self.worn(dressing.ground))]
        on_front, front_words = self.front(dressing, faces.front) if faces.front and entry.front_title else ((), ())
        under = (*wear, *on_spine) if self.labelled else (*on_spine, *wear)
        return composed((*covering, *under, *on_front), (*spine_words, *front_words), dressing.hand, dressing.fleuron)

    def _dressing(self, entry: DrawnDesign, faces: Faces, words: Words, chance: Random) -> Dressing:
        """What chance has a say in comes in an order that never changes, for the same book to look the same."""
        colours = colours_of(entry, words.kin, entry.material, self.second)
        ground = self.ground(colours)
        title, author = one_of(self.typefaces, chance)
        hand = Hand(title, author, self.ink(entry, colours), ground, capitals=happens(self.capitals, chance))
        fleuron = choose_fleuron(entry.ornament, chance) if self.ornamented else None
        on_spine = fleuron if happens(self.spine_ornament, chance) else None
        spine = Spine(hand.on_ground(sunned(ground, entry.wear)), entry.spine_title, entry.abbreviate, on_spine,
                      DEVICES.get(entry.device), rules=self.rules)  # fmt: skip
        sides = self.sides(entry, colours, chance) if self.sides else None
        return Dressing(entry, faces, words, colours, ground, hand, spine, fleuron, sides)


class SkeletonDesign(DrawnDesign):
    """A drawn style that has the skeleton of all."""

    look: ClassVar[Look]

    def dress(self, _artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return self.look.dress(self, flat, words)
