"""An author's name as a spine has it: in full, or the surname alone where that is too long (common practice)."""

from __future__ import annotations

import re

__all__ = ["surname"]

PARTICLES = frozenset(
    {
        "af", "ap", "av", "da", "dal", "de", "de'", "degli", "dei", "del", "della", "den", "der", "des", "di", "do",
        "dos", "du", "el", "la", "le", "los", "san", "st", "st.", "te", "ten", "ter", "van", "vom", "von", "zu",
        "zum", "zur", "y",
    }
)  # fmt: skip
"""Words that belong to the surname after them."""

TITLES = frozenset(
    {
        "mr", "mr.", "mrs", "mrs.", "miss", "ms", "dr", "dr.", "sir", "dame", "lord", "lady", "the", "revd", "revd.",
        "rev.", "hon.", "rt", "prof.", "professor", "captain", "capt.", "admiral", "brother", "sister", "father",
        "mother", "saint", "king", "queen", "prince", "princess", "herr", "frau", "mme", "mlle", "madame", "monsieur",
    }
)  # fmt: skip
"""Words before a name. With nothing but them before it a name stays whole: Sister Agnes is not Agnes."""

BODIES = frozenset(
    {
        "academy", "admiralty", "association", "board", "bureau", "club", "commission", "commissioners", "committee",
        "company", "council", "department", "guild", "institute", "library", "ministry", "office", "press",
        "sons", "brothers", "society", "trust", "union", "university", "school", "others",
    }
)  # fmt: skip
"""Authors that are no persons have no surname."""

TOGETHER = re.compile(r"\s+(and|&|et|und|y|e|и|και)\s+|,\s+")
AFTER_A_NAME = re.compile(r"(?:jr|sr|junior|senior|[ivx]+|\W*)\.?", re.IGNORECASE)
"""Numbers and the like, by which kings and sons are told apart."""

SURNAME_FIRST = ("hu", "ja", "ko", "vi", "zh")


def surname(author: str, language: str = "") -> str:
    """The surname of an author, or the surnames of several; the whole text if it is no person's name.

    >>> surname("J.-P. van der Meer"), surname("Ida Marrow and T. Quay"), surname("The Lamp Committee")
    ('van der Meer', 'Marrow and Quay', 'The Lamp Committee')
    """
    if language.casefold().split("-")[0] in SURNAME_FIRST:
        return author
    pieces = TOGETHER.split(author)
    people, links = pieces[::2], pieces[1::2]
    if len(people) == 2 and links[0] is None:  # Pell, D.D. or Pell, Amos: no two authors
        people, links = people[:1], []
    found = [_of_one(name.split()) for name in people]
    if not all(found):
        return author
    between = [", " if link is None else f" {link} " for link in links]
    return "".join(part for pair in zip(found, [*between, ""], strict=True) for part in pair)


def _of_one(words: list[str]) -> str:
    """The surname in one person's name; empty if it cannot be told."""
    if not words or any(word.casefold() in BODIES or word.casefold() == "of" for word in words):
        return ""
    before = next((at for at, word in enumerate(words) if word.casefold() not in TITLES), len(words))
    given = words[before:]
    if len(given) < 2:
        return " ".join(words)
    described = [word.casefold() for word in words[:before]] == ["the"] or given[0].casefold() in {"a", "an"}
    if described or given[0].casefold() in PARTICLES or AFTER_A_NAME.fullmatch(given[-1]):
        return ""
    at = len(given) - 1
    while at > 1 and given[at - 1].casefold() in PARTICLES:
        at -= 1
    return " ".join(given[at:])
