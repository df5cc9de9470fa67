"""Words set into boxes of a cover: in a typeface that has their letters, with what is to be said about them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Literal

from .....ground.art import Group
from .....ground.drawing import Art, Colour, contrast
from .....ground.geometry import Path, Rect, Size
from .....ground.problems import Problem
from .....ground.typefaces import Typeface, bundled, vertical_of
from .....typesetting.capitals import has_capitals, in_capitals
from .....typesetting.lines.ideographs import has_ideographs
from ..design import Dress, Lettering, Titling
from .cut import Cut, Letters
from .titling import Breaking, Placed, TextBlock, breakings, fit_text, place_centred
from .wording import with_subtitle

__all__ = [
    "TURNS",
    "Hand",
    "Lettered",
    "Way",
    "What",
    "best_ink",
    "composed",
    "face_of",
    "fitted",
    "letter",
    "letter_height",
    "lettered",
    "letters_for",
    "settings",
    "together",
    "typeface_for",
    "written",
]

What = Literal["title", "author", "volume", "date"]
Way = Literal["down", "up", "across"]

TURNS: dict[Way, float] = {"down": -90.0, "up": 90.0, "across": 0.0}

STAND_INS = ("text", "text bold", "sans", "sans bold")
"""Typefaces with many letters, tried where a face lacks some; for a bold one the bold ones first."""

GAIN_OF_A_SECOND_LINE = 1.3
"""Along the spine a text stays on one line unless a second makes it so many times larger."""

CAPITALS_APART = 0.06
"""Capitals are set so many ems further apart than small letters (common practice: 5 to 8 %)."""

ENOUGH_CONTRAST = 4.5
"""The contrast at which titling is easily read (WCAG 2.x, level AA)."""


@dataclass(frozen=True, slots=True)
class Hand:
    """How the words of a cover are set: typefaces by their names, ink, the ground they stand on.

    `tracking` is how far letters are set apart, in ems; None for as far as is usual. `language` is a BCP 47 tag. What
    these typefaces lack is set in the book's `own`, if it has one that has more of it.
    """

    title: str
    author: str
    ink: Colour
    ground: Colour
    capitals: bool = False
    on: Literal["spine", "front"] = "spine"
    tracking: float | None = None
    language: str = ""
    own: Typeface | None = None

    def on_ground(self, ground: Colour, ink: Colour | None = None) -> Hand:
        """The same hand on another ground."""
        return replace(self, ground=ground, ink=ink or self.ink)

    def in_face(self, name: str | None) -> Hand:
        """The same hand in one typeface, if one is named."""
        return replace(self, title=name, author=name) if name else self

    def on_front(self) -> Hand:
        """The same hand on the front."""
        return replace(self, on="front")


@dataclass(frozen=True, slots=True)
class Lettered:
    """Set words: art, what came out, what is wrong."""

    art: tuple[Art, ...] = ()
    lettering: tuple[Lettering, ...] = ()
    problems: tuple[Problem, ...] = ()


def together(parts: Iterable[Lettered]) -> Lettered:
    """Several set words as one."""
    listed = list(parts)
    return Lettered(
        tuple(art for part in listed for art in part.art),
        tuple(line for part in listed for line in part.lettering),
        tuple(problem for part in listed for problem in part.problems),
    )


def composed(layers: Iterable[Art], words: Iterable[Lettered], hand: Hand, ornament: Path | None = None) -> Dress:
    """A flat's dress: the words over everything else; what else is titled with the book takes its hand."""
    done = together(words)
    titling = Titling(hand.title, hand.capitals, hand.ink, ornament, hand.tracking, hand.own)
    return Dress(Group((*layers, *done.art)), done.problems, done.lettering, titling)


def best_ink(ground: Colour, inks: Iterable[Colour]) -> Colour:
    """The first ink that is easily read on a ground, or the one that is read best."""
    listed = list(inks)
    good = (ink for ink in listed if contrast(ink, ground) >= ENOUGH_CONTRAST)
    return next(good, max(listed, key=lambda ink: contrast(ink, ground)))


@lru_cache(maxsize=4096)
def typeface_for(text: str, name: str, own: Typeface | None = None) -> tuple[Typeface, tuple[str, ...]]:
    """The typeface of a name, or one that has more of the letters; and the letters that are missing still.

    A book's `own` is the last that is looked at.
    """
    stand_ins = sorted(STAND_INS, key=lambda other: ("bold" in other) is not ("bold" in name))
    faces = [*(bundled(candidate) for candidate in (name, *stand_ins)), *([own] if own else [])]
    face = min(faces, key=lambda candidate: len(candidate.missing(text)))
    return face, tuple(face.missing(text))


@lru_cache(maxsize=4096)
def letters_for(what: What, text: str, hand: Hand, way: Way = "across") -> tuple[Letters, tuple[str, ...]]:
    """What a text is set in, as the hand writes it; and the letters that are missing.

    Signs of Chinese, Japanese and Korean stand upright where a text runs down. Capitals are set apart, and figures
    beside small letters are old-style, where the typeface has such.
    """
    said = written(text, hand)
    face, missing = typeface_for(said, face_of(what, hand), hand.own)
    if way == "down" and has_ideographs(said):
        return vertical_of(face), missing
    small = any(sign.islower() for sign in said)
    usual = 0.0 if small or not any(sign.isupper() for sign in said) else CAPITALS_APART
    tracking = (usual if hand.tracking is None else hand.tracking) if has_capitals(said) else 0.0
    features = ("onum",) if small and "onum" in face.features and any(sign.isdigit() for sign in said) else ()
    return (Cut(face, tracking, features) if tracking or features else face), missing


def fitted(what: What, text: str, box: Rect, hand: Hand, way: Way, largest: float) -> TextBlock:
    """A text as large as a box allows; the subtitle of a title stands under it, smaller."""
    letters, _ = letters_for(what, text, hand, way)
    room = Size(box.height, box.width) if TURNS[way] else box.size
    gain = GAIN_OF_A_SECOND_LINE if TURNS[way] else 1.0
    head, under = _parted(what, written(text, hand))
    apart = what == "title" and not TURNS[way]
    return fit_text(letters, head, room, largest, subtitle=under, gain=gain, small_lines=apart)


def _parted(what: What, text: str) -> tuple[str, str]:
    """A title and its subtitle; other texts are whole."""
    return with_subtitle(text) if what == "title" else (text, "")


def settings(what: What, text: str, hand: Hand, most_lines: int, way: Way) -> tuple[Breaking, ...]:
    """The ways to break a text into lines, those of fewer lines first; across the spine small words may stand apart."""
    letters, _ = letters_for(what, text, hand, way)
    head, under = _parted(what, written(text, hand))
    return breakings(letters, head, most_lines, under, small_lines=what == "title" and not TURNS[way])


def letter(what: What, text: str, box: Rect, hand: Hand, way: Way, largest: float) -> Lettered:
    """Set a text in the middle of a box, as large as box and `largest` (the em, in mm) allow."""
    return lettered(what, text, fitted(what, text, box, hand, way, largest), box, hand, way)


def lettered(what: What, text: str, setting: TextBlock, box: Rect, hand: Hand, way: Way) -> Lettered:
    """A text that was set already, in the middle of a box."""
    letters, missing = letters_for(what, text, hand, way)
    high = letter_height(letters, written(text, hand))
    found = Lettering(what, hand.on, way, text, setting.size * high, contrast(hand.ink, hand.ground))
    placed: Placed = place_centred(setting, box, hand.ink, TURNS[way])
    return Lettered((placed,), (found,), tuple(_missing(what, missing)))


def letter_height(letters: Letters, text: str) -> float:
    """How high most letters of a text are, in ems: its small ones, or the capitals if it has no others."""
    return letters.cap_height if text.isupper() or text.isdigit() else letters.x_height


def face_of(what: What, hand: Hand) -> str:
    """The name of a text's typeface.

    Numbers are set like the author where the title's letters would make them look like others: II as 33.
    """
    number = what in ("volume", "date")
    return hand.author if what == "author" or (number and hand.title == "blackletter") else hand.title


@lru_cache(maxsize=4096)
def written(text: str, hand: Hand) -> str:
    """In capitals, if the hand writes so and the script has them."""
    if not hand.capitals or not has_capitals(text):
        return text
    return in_capitals(text, hand.language, lambda sign: bundled(hand.title).covers(sign))


def _missing(what: What, missing: tuple[str, ...]) -> Iterator[Problem]:
    if missing:
        named = ", ".join(f"{sign} U+{ord(sign):04X}" for sign in missing[:5]) + (" …" if len(missing) > 5 else "")
        yield Problem(
            f"no typeface of the cover has the {what}'s {named}",
            f"write the {what} without such signs, or give the book a text whose face has them",
        )
