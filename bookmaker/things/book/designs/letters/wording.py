"""The words of a title as lines may break them, and how a title is shortened where the maker allows it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

__all__ = ["breaks_well", "of_small_words", "reads_upwards", "shortened", "small_words_apart", "units", "with_subtitle"]

ARTICLES = frozenset(
    {
        "the", "a", "an", "le", "la", "les", "un", "une", "der", "die", "das", "den", "dem", "ein", "eine", "el",
        "los", "las", "il", "lo", "gli", "i", "o", "os", "as", "uma", "um", "de", "het", "een",
        "einer", "eines", "einem", "einen",
        "ο", "η", "το", "οι", "τα", "του", "της", "των", "τον", "την", "τους", "τις", "στο", "στη", "στην", "στον",
    }
)  # fmt: skip
"""Words that never stand alone on a line nor end one: articles of languages of Europe."""

OWNERS = frozenset(
    {
        "my", "your", "his", "her", "its", "our", "their", "this", "these", "those", "every", "no", "each", "mon", "ma",
        "mes", "ton", "ta", "tes", "sa", "ses", "notre", "nos", "votre", "vos", "leur", "leurs", "ce", "cet", "cette",
        "ces", "mein", "meine", "meiner", "dein", "deine", "sein", "seine", "seiner", "seinen", "ihr", "ihre", "ihrer",
        "unser", "unsere", "unserer", "dieser", "diese", "dieses", "kein", "keine", "jeder", "jede", "jedes",
    }
)  # fmt: skip
"""Words that stand where an article may, and go with what follows as it does."""

LINKS = frozenset(
    {
        "of", "and", "&", "in", "on", "to", "for", "by", "at", "from", "with", "or", "et", "du", "des", "von",
        "zu", "und", "e", "y", "di", "da", "van", "en", "upon", "into", "under", "over", "between", "among",
        "through", "against", "without", "before", "after", "about", "near", "off", "than", "but", "nor",
        "dans", "sur", "sous", "pour", "par", "avec", "sans", "au", "aux", "im", "am", "vom", "zum", "zur", "für",
        "mit", "auf", "aus", "bei", "oder", "del", "con", "por", "para", "sin", "della", "dei", "nel",
        "и", "в", "на", "о", "об", "от", "до", "из", "с", "к", "у", "за", "под", "над", "для", "или", "και", "σε",
    }
)  # fmt: skip
"""Conjunctions and prepositions, before which a title may be cut."""

LEADING = LINKS | frozenset(
    {
        "nach", "über", "unter", "um", "an", "ans", "ins", "beim", "durch", "gegen", "ohne", "zwischen", "neben",
        "hinter", "vor", "seit", "als", "wie", "bis", "within", "towards", "toward", "beyond", "behind", "beside",
        "below", "above", "across", "along", "around", "round", "during", "until", "till", "as", "that", "which", "who",
        "if", "when", "where", "chez", "vers", "entre", "depuis", "ou", "à", "où", "qui", "que", "contre", "pendant",
        "de",
    }
)  # fmt: skip
"""These and more that lead a phrase, though a title may not be cut before all of them."""

JOINING = frozenset({"and", "&", "or", "et", "und", "oder", "e", "y", "en", "but", "nor", "than", "и", "или", "και"})
"""Links between equals: what follows them is no mere addition."""

ALSO = frozenset({"and", "et", "und", "e", "y", "en"})
"""Words for which & may stand in a title."""

OF = frozenset({"of", "de", "du", "des", "von", "van", "di", "da", "del", "della", "dei"})
"""Links between a thing and what it is of: of two in a row the second may go."""

ASKING = frozenset(
    {
        "guide", "introduction", "companion", "key", "manual", "handbook", "treatise", "history", "account", "study",
        "notes", "essay", "essays", "story", "book", "report", "reports", "index", "man", "one", "we", "you", "on",
        "je", "wir", "ich", "wie", "how",
    }
)  # fmt: skip
"""Words after which a title says nothing yet: what a guide is to, what one does."""

SMALL = ARTICLES | OWNERS | LEADING
"""Words that say nothing by themselves: a line begins with them, if it is not made of them."""

LONG_LINK = 5
"""A link of so many letters may be the first line of a title."""

BEFORE_A_NAME = frozenset(
    {
        "no.", "nos.", "nr.", "vol.", "vols.", "pt.", "st", "st.", "mr", "mr.", "mrs", "mrs.", "miss", "dr", "dr.",
        "mme", "mlle", "volume", "part", "№",
    }
)  # fmt: skip
"""Words that stay on one line with the name or the number after them."""

PAUSES = (",", ";", ":", "–", "—", ".")
"""Signs after which a line ends best."""

INITIAL = re.compile(r"(?:[^\W\d_]\.-?)+")
"""Letters that stand for names: A. or J.-P."""

SUBTITLE_SIGNS = (": ", " – ", " — ", "; ")
"""What stands between a title and its subtitle."""

UPWARDS = ("fr", "de", "es", "it", "pl", "cs", "ro", "ru", "hu", "sk", "ca", "pt", "el", "uk", "bg")
"""Languages whose books are mostly lettered up the spine (common practice; ISO 6357 asks for downwards)."""

CYRILLIC = range(0x400, 0x530)


def units(text: str) -> tuple[str, ...]:
    """The parts of a text that a line holds whole.

    An article, a preposition, a conjunction stays with the word after it, initials with the name they are of, "No."
    with its number.

    >>> units("The History of the Lamp"), units("Letters from A")
    (('The History', 'of the Lamp'), ('Letters from A',))
    """
    done: list[str] = []
    held: list[str] = []
    for at, word in enumerate(text.split()):
        held.append(word)
        tied = word.casefold() in SMALL | BEFORE_A_NAME or INITIAL.fullmatch(word)
        if not tied or (at == 0 and _opens(word)):
            done.append(" ".join(held))
            held = []
    return (*done[:-1], " ".join((*done[-1:], *held))) if held else tuple(done)


def _opens(word: str) -> bool:
    """Whether a first word may be a line, though it is a link: *Under / the Ash*."""
    return word.casefold() in LEADING and len(word) >= LONG_LINK


def of_small_words(text: str) -> bool:
    """Whether a text is of small words alone, and may be a line; an article by itself is too little for one.

    >>> of_small_words("of the"), of_small_words("the"), of_small_words("of Salt")
    (True, False, False)
    """
    words = [word.casefold() for word in text.split()]
    return all(word in SMALL for word in words) and any(word in LEADING for word in words)


def small_words_apart(parts: Sequence[str]) -> tuple[str, ...]:
    """The parts of a text, small words at the beginning of a later part by themselves where they may be a line.

    >>> small_words_apart(("The Annals", "of the Low", "Tide"))
    ('The Annals', 'of the', 'Low', 'Tide')
    """
    found = list(parts[:1])
    for part in parts[1:]:
        words = part.split()
        first = next((at for at, word in enumerate(words) if word.casefold() not in SMALL), 0)
        few, others = " ".join(words[:first]), " ".join(words[first:])
        found += [few, others] if of_small_words(few) else [part]
    return tuple(found)


def breaks_well(line: str, after: str) -> float:
    """How good it is to break a title between a line and what follows it, 1 for most.

    Best is a pause. Phrases begin with small words: before one a line may end, within one it should not. Small words
    on a line of their own are a way of the trade, at the end of one they are a fault.

    >>> breaks_well("Wind,", "Rain"), breaks_well("Annals", "of the Low Tide"), breaks_well("of the", "Low Tide")
    (1.08, 1.0, 0.93)
    >>> breaks_well("of the Low", "Tide"), breaks_well("The Low", "Tide"), breaks_well("Low", "Tide")
    (0.72, 0.82, 0.85)
    >>> breaks_well("Wind and", "Rain")
    0.4
    """
    words = [word.casefold() for word in line.split()]
    if line.endswith(PAUSES):
        return 1.08
    if of_small_words(line):
        return 0.93
    if words[-1] in SMALL:
        return 0.4
    if after.split(maxsplit=1)[0].casefold() in SMALL:
        return 1.0
    phrase = words[max((at + 1 for at, word in enumerate(words) if word.endswith(PAUSES)), default=0) :]
    return 0.72 if any(word in LEADING for word in phrase) else 0.82 if any(word in SMALL for word in phrase) else 0.85


def with_subtitle(title: str) -> tuple[str, str]:
    """A title and its subtitle, parted at the first colon, dash or semicolon; without one the second is empty.

    >>> with_subtitle("Salt: A Life; with Maps"), with_subtitle("Salt")
    (('Salt', 'A Life; with Maps'), ('Salt', ''))
    """
    places = [(title.index(sign), len(sign)) for sign in SUBTITLE_SIGNS if sign in title]
    if not places:
        return title, ""
    at, length = min(places)
    head, tail = title[:at].strip(), title[at + length :].strip()
    return (head, tail) if head and tail else (title, "")


def shortened(title: str) -> Iterator[str]:
    """The title, then shorter and shorter ways to say it: no subtitle, no article in front, fewer phrases at the end;
    and last, & for a word that joins. Words are never cut short: no binder lettered a spine so.

    >>> list(shortened("The Wonderful Adventures of a Small Whistle: A Tale"))[1:]
    ['The Wonderful Adventures of a Small Whistle', 'Wonderful Adventures of a Small Whistle', 'Wonderful Adventures']
    >>> list(shortened("Weather and Other Arguments"))
    ['Weather and Other Arguments', 'Weather & Other Arguments']
    """
    yield title
    while (shorter := with_subtitle(title)[0]) != title:
        title = shorter
        yield title
    words = title.split()
    if len(words) > 1 and words[0].casefold() in ARTICLES:
        words = words[1:]
        yield " ".join(words)
    for end in _phrase_ends(words):
        words = words[:end]
        yield " ".join(words).rstrip(",;:–—")
    joined = ["&" if word in ALSO else word for word in words]
    if joined != words:
        yield " ".join(joined)


def _phrase_ends(words: Sequence[str]) -> Iterator[int]:
    """After how many words a title may end, the longest way first: before a preposition, with two words left at least.

    One word alone says too little: "History" of what? So do two of which the last joins, or is of the kind that asks
    for more: a guide, to what? "for the Conduct of Ferries" goes as a whole or not at all.
    """
    for at in range(len(words) - 1, 1, -1):
        before, here = words[at - 1].casefold(), words[at].casefold()
        if here not in LINKS - JOINING or before in LINKS | ARTICLES | ASKING or before.endswith("."):
            continue
        earlier = [word for word in map(str.casefold, words[1:at]) if word in LINKS - JOINING]
        if here not in OF or not earlier or earlier[-1] in OF:
            yield at


def reads_upwards(language: str, text: str) -> bool:
    """Whether a spine in this language is mostly lettered from tail to head; the letters tell, if nobody did."""
    if language:
        return language.casefold().split("-")[0] in UPWARDS
    return any(ord(sign) in CYRILLIC for sign in text)
