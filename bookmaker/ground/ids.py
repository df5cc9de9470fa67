"""What a thing goes by wherever it must be found again: made of what it is called, never of where it stands."""

from __future__ import annotations

import hashlib
import unicodedata
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from .visible import composed

__all__ = ["LONGEST", "Called", "ids_of", "slug"]

LONGEST = 60
"""Characters of an id; of more words the end gives way to a digest."""

DIGITS = 6
"""So many hexadecimal digits of a digest tell alike things apart."""

APOSTROPHES = "'’ʼ"
"""Signs that belong to the word they stand in."""


@dataclass(frozen=True, slots=True)
class Called:
    """What an id is made of: the words something goes by, and all that is written of it; or the id that is given."""

    words: Sequence[str]
    written: object = ""
    given: str = ""


def slug(*words: str) -> str:
    """Letters and digits of any script in small letters, and hyphens for what stands between them.

    >>> slug("The Keeper’s Almanac", "", "vol. II")
    'the-keepers-almanac-vol-ii'
    """
    text = composed(" ".join(words), "NFKC").casefold()
    kept = "".join(sign if _in_a_word(sign) else " " for sign in text if sign not in APOSTROPHES)
    return "-".join(kept.split()) or "unnamed"


def ids_of(called: Sequence[Called]) -> list[str]:
    """An id for each of several things, no two alike, whatever their order.

    It is the one given, or else the slug of its words. Things of the same words have a digest of all that is written
    of each besides; only of those that are the same in everything the second is numbered.

    >>> ids_of([Called(["Salt"]), Called(["Fog"], "4 mm"), Called(["Fog"], "6 mm"), Called([], given="tide")])
    ['salt', 'fog-ad24ac', 'fog-566e9b', 'tide']
    """
    slugs = [one.given or _short(slug(*one.words)) for one in called]
    often = Counter(slugs)
    wanted = (
        name if one.given or often[name] == 1 else f"{name}-{_digest(repr(one.written))}"
        for name, one in zip(slugs, called, strict=True)
    )
    return list(_numbered(wanted))


def _in_a_word(sign: str) -> bool:
    """Whether a sign is a letter, a digit, or a mark on one."""
    return unicodedata.category(sign)[0] in "LNM"


def _short(name: str) -> str:
    return name if len(name) <= LONGEST else f"{name[: LONGEST - DIGITS - 1].rstrip('-')}-{_digest(name)}"


def _digest(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()[:DIGITS]


def _numbered(names: Iterator[str]) -> Iterator[str]:
    """The names, a number after each that stood there before."""
    taken: set[str] = set()
    for name in names:
        number, free = 1, name
        while free in taken:
            number += 1
            free = f"{name}-{number}"
        taken.add(free)
        yield free
