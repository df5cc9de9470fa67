"""Dummy words: words that no language has, in the measure of prose, for what shall look like text and is not read.

Every seed has a tongue of its own: a few small words that come again and again, and many longer ones that come seldom,
as the words of any text do (Zipf 1935: the nth word comes about 1/n as often as the first). So two volumes differ as
two texts differ, and one volume keeps its voice.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate, islice
from random import Random

__all__ = ["SENTENCE", "DummyTongue", "dummy_titles", "punctuated"]

INNER = tuple("bcdfghllmmnnprrssttv")
ONSETS = ("", "", *INNER, "br", "cl", "dr", "fl", "gr", "pl", "pr", "st", "th", "tr")
NUCLEI = (*"aaaeeeeiiioou", "ea", "ou")
CODAS = ("", "", "", "n", "r", "s", "l", "t", "m", "nd", "rn", "st", "ll")

SMALL, LARGE = 14, 160
"""How many small words a tongue has, of one syllable, and how many others."""

SENTENCE = (5, 17)
"""Words in a sentence."""

COMMA = 0.11
"""How often one follows a word within a sentence."""


@dataclass(frozen=True)
class DummyTongue:
    """A tongue that is nobody's, grown from a seed."""

    seed: int | str

    def bare(self, page: int = 0) -> Iterator[str]:
        """Its words without end, none of them one of the two before it; each page has others."""
        own, chance = _vocabulary(self.seed), Random(f"{self.seed} {page}")
        often = tuple(accumulate(1 / (1.6 + place) for place in range(len(own))))
        before: tuple[str, ...] = ()
        while True:
            word = chance.choices(own, cum_weights=often)[0]
            if word not in before:
                yield word
                before = (*before, word)[-2:]

    def words(self, page: int = 0) -> Iterator[str]:
        """Its words without end, with capitals and stops where sentences have them."""
        bare, chance = self.bare(page), Random(f"{self.seed} {page} stops")
        while True:
            last = chance.randint(*SENTENCE) - 1
            for place, word in enumerate(islice(bare, last + 1)):
                shown = word.capitalize() if place == 0 else word
                yield shown + ("." if place == last else "," if chance.random() < COMMA else "")

    def text(self, count: int) -> str:
        """So many words of it.

        >>> DummyTongue(3).text(6) == DummyTongue(3).text(6) != DummyTongue(4).text(6)
        True
        """
        return " ".join(islice(self.words(), count))


def punctuated(words: Sequence[str], left: int, chance: Random, *, closes: bool) -> tuple[list[str], int]:
    """The words of a line with capitals, commas and stops, and how many more words its last sentence has.

    So many words were `left` of a sentence begun before, 0 where the line begins one. A line that `closes` a paragraph
    ends with a stop. Elsewhere a sentence ends only if two words follow, so none is left with a single word.
    """
    shown: list[str] = []
    for after, word in zip(range(len(words) - 1, -1, -1), words, strict=True):
        begun = word if left else word.capitalize()
        left = (left or chance.randint(*SENTENCE)) - 1
        if (closes and not after) or (left <= 0 and after > 1):
            mark, left = ".", 0
        else:
            mark, left = "," if chance.random() < COMMA and after else "", max(left, 1)
        shown.append(begun + mark)
    return shown, left


def dummy_titles(seed: int | str, count: int) -> tuple[str, ...]:
    """So many titles of books that there are not."""
    own, chance = _vocabulary(seed), Random(seed)
    return tuple(
        " ".join(word.capitalize() for word in chance.choices(own[SMALL:], k=chance.randint(1, 2)))
        for _ in range(count)
    )


@lru_cache(maxsize=64)
def _vocabulary(seed: int | str) -> tuple[str, ...]:
    """Each word once, the small ones first; a tongue likes some sounds better than others."""
    chance = Random(seed)
    liking = [chance.random() ** 2 + 0.04 for _ in ONSETS]
    small = dict.fromkeys(_word(chance, liking, 1)[:4] for _ in range(SMALL * 3))
    large = dict.fromkeys(_word(chance, liking, 1 + (part > 0.45) + (part > 0.85) + 1)
                          for part in (chance.random() for _ in range(LARGE)))  # fmt: skip
    return (*islice(small, SMALL), *large)


def _word(chance: Random, liking: list[float], syllables: int) -> str:
    parts = []
    for place in range(syllables):
        coda = chance.choice(CODAS) if place == syllables - 1 or chance.random() < 0.1 else ""
        onset = (
            chance.choices(ONSETS, liking)[0] if place == 0 else chance.choices(INNER, liking[2 : 2 + len(INNER)])[0]
        )
        parts.append(onset + chance.choice(NUCLEI) + coda)
    return "".join(parts)
