"""The words of a title as lines may break them, and how a title is shortened where the maker allows it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

__all__ = ["ends_well", "grace", "reads_upwards", "shortened", "units", "with_subtitle"]

ARTICLES = frozenset(
    {
        "the", "a", "an", "le", "la", "les", "un", "une", "der", "die", "das", "den", "dem", "ein", "eine", "el",
        "los", "las", "il", "lo", "gli", "i", "o", "os", "as", "uma", "um", "de", "het", "een",
        "ο", "η", "το", "οι", "τα", "του", "της", "των", "τον", "την", "τους", "τις", "στο", "στη", "στην", "στον",
    }
)  # fmt: skip
"""Words that never stand alone on a line nor end one: articles of languages of Europe."""

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
"""Words that rather begin a line than end it: conjunctions and prepositions."""

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

LONG_LINK = 5
"""Links of so many letters may stand alone on a line."""

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

    An article stays with the word it belongs to, initials with the name they are of, "No." with its number. A
    short link stays with what follows, unless the two would be the longest part of all.

    >>> units("The History of the Lamp")
    ('The History', 'of the Lamp')
    >>> units("Letters from A")
    ('Letters', 'from A')
    """
    parts = _joined(text.split(), ARTICLES | BEFORE_A_NAME, longest=None)
    longest = max((len(part) for part in parts), default=0)
    return tuple(_joined(parts, LINKS, longest))


def _joined(parts: list[str], small: frozenset[str], longest: int | None) -> list[str]:
    """Small words tied to the part after them, or a last one to the part before."""
    done: list[str] = []
    held = ""
    for part in parts:
        whole = f"{held} {part}" if held else part
        if held and longest is not None and len(whole) > longest:
            done.append(held)
            whole = part
        if part.casefold() in small or (longest is None and INITIAL.fullmatch(part)):
            held = whole
        else:
            done.append(whole)
            held = ""
    if held and done:
        done[-1] = f"{done[-1]} {held}"
    elif held:
        done.append(held)
    return done


def grace(lines: Sequence[str]) -> float:
    """How well lines break, from 1 down: a short link alone on a line costs 0.4 of the size, one at its end less.

    >>> grace(("Tales", "of the Sea")), grace(("Tales of", "Ice")), grace(("Tales", "of", "Ice"))
    (1.0, 0.65, 0.6)
    """
    worth = 1.0
    for line in lines[:-1]:
        words = line.split()
        if words and words[-1].casefold() in LINKS:
            worth *= 0.65 if len(words) > 1 else 0.9 if len(words[0]) >= LONG_LINK else 0.6
    return worth


def ends_well(text: str) -> float:
    """How good it is to end a line after a part of a text, 1 for most: better at a pause, worse at a link.

    >>> ends_well("Wind,"), ends_well("Wind"), ends_well("Wind and")
    (1.08, 1.0, 0.65)
    """
    return 1.08 if text.endswith(PAUSES) else grace((text, ""))


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
