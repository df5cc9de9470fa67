"""Ties between two words that a line should not part: titles and names, numbers and units, days and months.

What is tied is common practice; where languages differ, the words of all are known, for they meet no others.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from .fount import MOST_WORDS, as_read

__all__ = ["is_one_letter", "may_tie", "tied"]


TITLE, NAME, LABEL, NUMBER, NUMERAL, UNIT, FRACTION, GROUP, DAY, MONTH, DEGREES, SCALE, POUNDS, SHILLINGS, PENCE = (
    1 << n for n in range(15)
)
"""What a word may be to its neighbours; plain numbers are the quickest, for every word of a text is asked for them."""

TIES = (
    (TITLE, NAME),
    (LABEL, NUMBER | NUMERAL),
    (NUMBER, UNIT | FRACTION | GROUP),
    (FRACTION, UNIT),
    (DAY, MONTH),
    (MONTH, DAY),
    (DEGREES, SCALE),
    (NAME, NUMERAL),
    (POUNDS, SHILLINGS),
    (SHILLINGS, PENCE),
)
"""What is tied to what follows it."""


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


TITLES = _words(
    "Mr Mrs Ms Dr Prof St Ste Mme Mlle Mgr Rev Revd Capt Col Gen Lt Sgt Maj Messrs Sir Hr Frl Sra Srta Sig Hrn "
    "\u0433-\u043d \u0433-\u0436\u0430"
)
"""Before names, with a point or without."""

DOTTED_TITLES = _words("Hon Sr Jr Fr Ing Mag Dott Don Esq")
LABELS = _words("\u00a7 \u00a7\u00a7 \u2116 \u00b6 \u00a3 $ \u20ac \u00a5 Nr N\u00b0 n\u00b0 N\u00ba n\u00ba")
"""Before numbers."""

DOTTED_LABELS = _words(
    "No Nos Nr Nrn p pp S s fol f ch chap Ch Chap vol vols Vol Vols bk Bk pt Pt art Art Fig Figs fig figs Plate pl "
    "Pl tab Tab Abb Bd Kap Taf Ziff c ca cap lib A.D n n\u00fam N\u00fam "
    "\u0441\u0442\u0440 \u0433\u043b \u0442 \u0440\u0438\u0441 \u043f \u0441\u0442"
)
"""The same, if they end in a point."""

UNITS = _words(
    "mm cm dm m km g kg mg t lb lbs oz ft yd dwt cwt gr pt qt gal l ml cl hl ha % \u2030 \u00b0 \u00b0C \u00b0F "
    "\u00b0R a.m p.m am pm h hr hrs min sec Uhr uur BC AD BCE CE B.C A.D hp V W Hz dpi "
    "\u043c\u043c \u0441\u043c \u043c \u043a\u043c \u0433 \u043a\u0433 \u043b \u0440\u0443\u0431 \u043a\u043e\u043f "
    "\u0433\u0433 \u0447 \u043c\u0438\u043d"
)
"""After numbers, with a point or without."""

DOTTED_UNITS = _words("in ins")
"""The same, if they end in a point: without one, "in" is another word."""

MONTHS = _words(
    "january february march april may june july august september october november december "
    "jan feb mar apr jun jul aug sept sep oct nov dec "
    "janvier f\u00e9vrier mars avril mai juin juillet ao\u00fbt septembre octobre novembre d\u00e9cembre "
    "januar j\u00e4nner februar m\u00e4rz juni juli oktober dezember "
    "enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre "
    "gennaio febbraio aprile maggio giugno luglio settembre ottobre dicembre "
    "januari februari maart mei augustus marts maj "
    "\u044f\u043d\u0432\u0430\u0440\u044f \u0444\u0435\u0432\u0440\u0430\u043b\u044f \u043c\u0430\u0440\u0442\u0430 "
    "\u0430\u043f\u0440\u0435\u043b\u044f \u043c\u0430\u044f \u0438\u044e\u043d\u044f \u0438\u044e\u043b\u044f "
    "\u0430\u0432\u0433\u0443\u0441\u0442\u0430 \u0441\u0435\u043d\u0442\u044f\u0431\u0440\u044f "
    "\u043e\u043a\u0442\u044f\u0431\u0440\u044f \u043d\u043e\u044f\u0431\u0440\u044f "
    "\u0434\u0435\u043a\u0430\u0431\u0440\u044f"
)
"""In small letters; which are also other words matters little beside a day."""

OPENING, CLOSING = "(\u201c\u2018\u00ab\u201e\u201a\"'[", ",;:!?)\u201d\u2019\u00bb\"']\u2026"

MOST_BESIDE_ONE = 4
"""A word of one letter has no more signs than these, with those of style and opening marks."""

DEGREE = "\u00b0"
NUMBERS = re.compile(r"[\u00a3$\u20ac+\u2212\u00b1~]?\d[\d.,:/\u2013-]*[\u00bc-\u00be\u2150-\u215e]?[sd]?\u00b0?")
POUNDS_OF, SHILLINGS_OF, PENCE_OF = (
    re.compile(sum_of)
    for sum_of in (r"\u00a3\d[\d,]*|\d[\d,]*l\.?", r"\d{1,2}s\.?", r"(?:\d{1,2}[\u00bc-\u00be]?|[\u00bc-\u00be])d")
)
"""Sums of money as they were printed until 1971: £4 15s. 1½d."""

FRACTIONS = re.compile(r"\d{1,2}[/\u2044]\d{1,3}|[\u00bc-\u00be\u2150-\u215e]")
GROUPS = re.compile(r"\d{3}")
DAYS = re.compile(r"(?:[12]?\d|3[01])(?:st|nd|rd|th|\.|er)?")
NUMERALS = re.compile(r"(?=[IVX]{2}|[VX])X{0,3}(?:IX|IV|V?I{0,3})")
SCALES = frozenset("CFR")


class _Kinds(dict[str, int]):
    """The kinds of words, each found once."""

    def __init__(self, kind_of: Callable[[str], int]) -> None:
        super().__init__()
        self._kind_of = kind_of

    def __missing__(self, word: str) -> int:
        if len(self) >= MOST_WORDS:
            self.clear()
        kind = self[word] = self._kind_of(as_read(word).lstrip(OPENING))
        return kind


def may_tie(word: str) -> bool:
    """Whether a word is one of the few that may be tied to the next one, or as a numeral to the one before it."""
    return LEADS[word] & ~NAME != 0 or TRAILS[word] & NUMERAL != 0


def is_one_letter(word: str) -> bool:
    """Whether a word is one small letter, or one that begins a sentence or stands after an opening mark.

    >>> is_one_letter("w"), is_one_letter("(в"), is_one_letter("V"), is_one_letter("a,"), is_one_letter("ku")
    (True, True, True, False, False)
    """
    if len(word) > MOST_BESIDE_ONE:
        return False
    letter = as_read(word).lstrip(OPENING)
    return len(letter) == 1 and letter.isalpha()


def tied(before: str, after: str) -> bool:
    """Whether a line should not end between two words.

    >>> tied("Mrs", "Quill"), tied("20", "kg,"), tied("5", "March"), tied("George", "V"), tied("said", "Mrs")
    (True, True, True, True, False)
    """
    leading = LEADS[before]
    return leading != 0 and any(leading & first and TRAILS[after] & following for first, following in TIES)


def _leading(word: str) -> int:
    """What a word is to the next one; nothing if a phrase ends with it."""
    if not word or word[-1] in CLOSING:
        return 0
    stem, dotted = word.rstrip("."), word[-1] == "."
    number = not dotted and NUMBERS.fullmatch(word) is not None
    return _all_of(
        (TITLE, stem in TITLES or (dotted and stem in DOTTED_TITLES)),
        (LABEL, stem in LABELS or (dotted and stem in DOTTED_LABELS)),
        (NUMBER, number),
        (POUNDS, POUNDS_OF.fullmatch(word) is not None),
        (SHILLINGS, SHILLINGS_OF.fullmatch(word) is not None),
        (DEGREES, number and word[-1] == DEGREE),
        (FRACTION, FRACTIONS.fullmatch(word) is not None),
        (DAY, DAYS.fullmatch(word) is not None),
        (MONTH, stem.casefold() in MONTHS),
        (NAME, word[0].isupper() and word[-1].islower()),
    )


def _trailing(word: str) -> int:
    """What a word is to the one before it."""
    body = word.rstrip(CLOSING)
    stem = body.rstrip(".")
    return _all_of(
        (NAME, stem[:1].isupper()),
        (NUMBER, NUMBERS.fullmatch(stem) is not None),
        (NUMERAL, NUMERALS.fullmatch(stem) is not None),
        (UNIT, stem in UNITS or (body != stem and stem in DOTTED_UNITS)),
        (SHILLINGS, SHILLINGS_OF.fullmatch(stem) is not None),
        (PENCE, PENCE_OF.fullmatch(stem) is not None),
        (FRACTION, FRACTIONS.fullmatch(stem) is not None),
        (GROUP, GROUPS.fullmatch(stem) is not None),
        (DAY, DAYS.fullmatch(stem) is not None),
        (MONTH, stem.casefold() in MONTHS),
        (SCALE, stem in SCALES),
    )


def _all_of(*kinds: tuple[int, bool]) -> int:
    return sum(kind for kind, is_one in kinds if is_one)


LEADS, TRAILS = _Kinds(_leading), _Kinds(_trailing)
