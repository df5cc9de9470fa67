"""The skeleton of drawn styles: covering, spine, wear, front, words over all; a style is a table of what differs."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from copy import copy
from dataclasses import dataclass, replace
from random import Random
from typing import ClassVar

from .....ground.art import Awaited
from .....ground.drawing import BLACK, WHITE, Art, Colour
from .....ground.geometry import Path, Rect
from .....sheets.flat import Flat
from ..artwork import Artwork
from ..chance import happens, one_of
from ..colouring import Colours, colours_of
from ..design import DrawnDesign, Dress, Words
from ..faces import Faces, read_faces
from ..grounds.wear import rubbed, sunned
from ..letters.eras import of_its_time, sturdy
from ..letters.lettering import Hand, Lettered, composed
from ..letters.spine import Spine, as_narrowest
from ..ornament.devices import DEVICES
from ..ornament.fleurons import choose_fleuron
from ..palettes import Material

__all__ = ["ArtAndWords", "Dressing", "Look", "SkeletonDesign", "Stuff", "chosen_hand"]

ArtAndWords = tuple[Sequence[Art], Sequence[Lettered]]
"""What is drawn on a spine or a front, and the words that stand over everything."""


NARROW = 4.0
"""On spines narrower than this, in mm, letters are small."""


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

    def hand_on_label(self, title: str, author: str, ink: Colour, paper: Colour) -> Hand:
        """The hand of a label, in typefaces of its own unless the maker names one."""
        ((title, author),) = of_its_time([(title, author)], self.words.dated)
        return replace(self.hand, title=title, author=author).in_face(self.entry.face).on_ground(paper, ink)

    @property
    def bleached(self) -> Colour:
        """The covering on the spine, as light has left it."""
        return sunned(self.ground, self.entry.wear)


def rubbed_all_over(dressing: Dressing, material: Material, ground: Colour) -> Art:
    """The wear of a covering of one colour, or of that and the stuff of the sides."""
    sides = (dressing.sides.material, dressing.sides.colours[0]) if dressing.sides else None
    return rubbed(dressing.faces, material, ground, dressing.entry.wear, dressing.words.seed, sides)


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
        covering = Awaited(lambda: self.covering(dressing, copy(chance)))
        on_spine, spine_words = self.spine(dressing, faces.spine) if faces.spine else ((), ())
        wear = rubbed_all_over(dressing, self.rubs or entry.material, self.worn(dressing.ground))
        on_front, front_words = self.front(dressing, faces.front) if faces.front and entry.front_title else ((), ())
        under = (wear, *on_spine) if self.labelled else (*on_spine, wear)
        return composed((covering, *under, *on_front), (*spine_words, *front_words), dressing.hand, dressing.fleuron)

    def _dressing(self, entry: DrawnDesign, faces: Faces, words: Words, chance: Random) -> Dressing:
        """What chance has a say in comes in an order that never changes, for the same book to look the same."""
        colours = colours_of(entry, words.kin, entry.material, self.second)
        ground = self.ground(colours)
        hand = chosen_hand(entry, words, self.typefaces, self.capitals, chance)
        hand = hand.on_ground(ground, self.ink(entry, colours))
        fleuron = choose_fleuron(entry.ornament, chance) if self.ornamented else None
        on_spine = fleuron if happens(self.spine_ornament, chance) else None
        narrow = faces.spine is not None and not entry.face and as_narrowest(faces.spine, words).width < NARROW
        title, author = sturdy((hand.title, hand.author), words.dated) if narrow else (hand.title, hand.author)
        small = replace(hand, title=title, author=author)
        spine = Spine(small.on_ground(sunned(ground, entry.wear)), entry.spine_title, entry.abbreviate, on_spine,
                      DEVICES.get(entry.device), rules=self.rules)  # fmt: skip
        sides = self.sides(entry, colours, chance) if self.sides else None
        return Dressing(entry, faces, words, colours, ground, hand, spine, fleuron, sides)


def chosen_hand(
    entry: DrawnDesign, words: Words, typefaces: Sequence[tuple[str, str]], capitals: float, chance: Random
) -> Hand:
    """One of the typefaces that are of the age of the book, unless the maker names one; in black, on white."""
    title, author = one_of(of_its_time(typefaces, words.dated), chance)
    in_capitals = happens(capitals, chance) if entry.case == "by style" else entry.case == "capitals"
    hand = Hand(title, author, BLACK, WHITE, in_capitals, tracking=entry.tracking, language=words.language)
    return replace(hand.in_face(entry.face), own=words.own)


class SkeletonDesign(DrawnDesign):
    """A drawn style that has the skeleton of all."""

    look: ClassVar[Look]

    def dress(self, _artwork: Artwork, flat: Flat, words: Words) -> Dress:
        """Draw one flat."""
        return self.look.dress(self, flat, words)
