"""What of a text can be seen, its marks on their letters; and how it is shown: no sign steers a terminal."""

from __future__ import annotations

import re
import unicodedata
from functools import cache
from pathlib import PurePath
from typing import Literal

__all__ = ["HIGHEST_PILE", "STEERING", "brief", "composed", "high_pile", "is_seen", "one_line", "printable"]

MOST_MARKS = 30
"""So many marks on a letter are put in order (UAX #15, Stream-Safe Text Format); no language has more."""

HIGHEST_PILE = 60
"""More marks on a letter are no joke any more: a million of them take a gigabyte to set."""

LONGEST_PATH = 240
"""Characters of a path that a message shows; more would hide what it says."""

UNSEEN = frozenset(("Cc", "Cf", "Cs", "Cn", "Zs", "Zl", "Zp"))
"""General categories (UAX #44) of signs that leave no ink: controls, joiners, blanks, what is no sign at all."""

BLANK = re.compile("[\u034f\u115f\u1160\u17b4\u17b5\u180b-\u180f\u2800\u3164\ufe00-\ufe0f\uffa0\U000e0100-\U000e01ef]")
"""Signs of other categories that leave none: fillers, selectors of variants, the empty cell of Braille (UAX #44,
Default_Ignorable_Code_Point; the names of the signs)."""

STEERING = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ud800-\udfff]")
"""Signs that move, colour or turn round what a terminal shows, and halves of signs."""


def is_seen(text: str) -> bool:
    """Whether anything of a text can be seen.

    >>> is_seen("A"), is_seen("\\u00ad\\u200d \\u00a0"), is_seen("\\u2800"), is_seen("")
    (True, False, False, False)
    """
    return any(unicodedata.category(sign) not in UNSEEN and not BLANK.match(sign) for sign in text)


def composed(text: str, form: Literal["NFC", "NFKC"] = "NFC") -> str:
    """A text with its marks on their letters, in a normal form of Unicode.

    Sorting a pile of marks takes time with the square of its height; of higher ones only so many are sorted together.

    >>> len(composed("e\u0301")), len(composed("q" + "\u0301\u0323" * 100))
    (1, 201)
    """
    if unicodedata.is_normalized(form, text):
        return text
    return "".join(unicodedata.normalize(form, part) for part in _above(MOST_MARKS).split(text))


def high_pile(text: str) -> int | None:
    """Where a letter has more marks than may be set, as a place in the text; None if none has.

    >>> high_pile("e" + "\u0301" * 100), high_pile("e\u0301")
    (61, None)
    """
    if text.isascii() or _marks().isdisjoint(text):
        return None  # most texts have none at all, and looking for piles takes ten times as long
    found = _above(HIGHEST_PILE).search(text)
    return found.start() if found else None


@cache
def _marks() -> frozenset[str]:
    """All signs that stand on a letter."""
    return frozenset(sign for sign in map(chr, range(0x300, 0x1F000)) if unicodedata.combining(sign))


@cache
def _above(height: int) -> re.Pattern[str]:
    """Where a pile of marks is higher than that."""
    marks = "".join(sorted(_marks()))
    return re.compile(f"(?<=[{marks}]{{{height}}})(?=[{marks}])")


def printable(text: str) -> str:
    """A text fit for a terminal: whatever it quotes, it stays in its lines.

    >>> printable("plates/1\\x1b[2J.png"), printable("two\\nlines")
    ('plates/1?[2J.png', 'two\\nlines')
    """
    return STEERING.sub("?", text)


def one_line(text: str | PurePath) -> str:
    """A text fit for a terminal, or a path, on one line.

    >>> one_line("a\\nb")
    'a?b'
    """
    return re.sub("[\n\t]", "?", printable(str(text)))


def brief(path: str | PurePath) -> str:
    """A path as a message shows it: on one line, and not longer than a line or two.

    >>> brief("a\\nb"), len(brief("x" * 300))
    ('a?b', 240)
    """
    seen = one_line(str(path)[: LONGEST_PATH + 1])
    return seen if len(seen) <= LONGEST_PATH else f"{seen[: LONGEST_PATH - 1]}…"
