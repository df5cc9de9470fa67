"""A number and its unit as makers write them, read exactly.

Numbers are whole, decimal with a point or comma, fractions, or mixed: 21, 2.5, 2,5, 7/8, 1 1/8, 1-1/8, 1⅛.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from .problems import near_match

__all__ = ["Kind", "NotAMeasure", "counted", "read_number", "read_quantity", "show", "split_number", "tidy"]

LONGEST_TEXT = 80
"""No measure is longer than this many characters; it also keeps a stray novel from being searched."""

MOST_DIGITS = 20
"""More digits than these are no measurement; Python writes a float with 17 at most."""

_LOOKALIKES = str.maketrans(
    dict.fromkeys("µμ", "u")  # the micro sign and the Greek letter
    | dict.fromkeys("″“”„‟〃＂", '"')
    | dict.fromkeys("′‘’‛", "'")
    | dict.fromkeys("−–—‐‑‒", "-")
    | dict.fromkeys("⁄∕", "/")
)
_NUMERIC = frozenset("0123456789., /-")
_DECIMAL = re.compile(r"(?P<whole>[0-9]*)(?:[.,](?P<rest>[0-9]+))?")
_FRACTION = re.compile(r"(?:(?P<whole>[0-9]+)(?: | ?- ?))?(?P<over>[0-9]+) ?/ ?(?P<under>[0-9]+)")
_RANGE = re.compile(r"[0-9.,/ ]+-[0-9.,/ ]+")
_GROUPED = re.compile(r"[1-9][0-9]{0,2}(?:(?P<sign>[., ])[0-9]{3})(?:(?P=sign)[0-9]{3})*(?:[.,][0-9]+)?")


class NotAMeasure(ValueError):  # noqa: N818 - said as makers would say it
    """A text that cannot be read as the measure it should be; `remedy` says what to write instead."""

    def __init__(self, message: str, remedy: str) -> None:
        super().__init__(message, remedy)
        self.message = message
        self.remedy = remedy

    def __str__(self) -> str:
        return f"{self.message}; {self.remedy}"


def show(text: str) -> str:
    """A text fit to be quoted in a message: printable, on one line, not long.

    >>> show("21\\tkg\\x00")
    '21 kg?'
    """
    line = " ".join(text[: 2 * LONGEST_TEXT].split())
    seen = "".join(char if char.isprintable() else "?" for char in line)
    return seen if len(seen) <= LONGEST_TEXT // 2 else seen[: LONGEST_TEXT // 2] + "…"


def tidy(text: str, example: str) -> str:
    """The text with plain signs, single blanks, and fractions of one character spelled out.

    `example` shows, in a refusal, what could have been written.

    >>> tidy(" 1⅛\\u202f″", "21 mm")
    '1 1/8 "'

    Raises:
        NotAMeasure: the text is empty or far too long.
    """
    if len(text) > LONGEST_TEXT:
        raise NotAMeasure(f"{show(text)} is too long for a measure", f"write it like {example}")
    spelled = "".join(_spell_fraction(char) for char in text).translate(_LOOKALIKES).replace("''", '"')
    plain = " ".join(spelled.split())
    if not plain:
        raise NotAMeasure("the value is empty", f"write it like {example}")
    return plain


def _spell_fraction(char: str) -> str:
    parts = unicodedata.decomposition(char).split()
    if not parts or parts[0] != "<fraction>":
        return char
    return " " + "".join(chr(int(part, 16)) for part in parts[1:])


def split_number(plain: str) -> tuple[str, str]:
    """A tidied text parted into its number and the rest, which is a unit if all is well.

    >>> split_number('1-1/8"')
    ('1-1/8', '"')
    """
    end = next((i for i, char in enumerate(plain) if char not in _NUMERIC), len(plain))
    return plain[:end].strip(), plain[end:].strip()


def read_number(number: str, unit: str = "") -> Fraction:
    """The exact value of a tidied number; `unit` is only used to say what to write instead.

    A comma before exactly three digits can part thousands or decimals, so it is refused unless a zero
    stands before it: 0,125 has one reading.

    >>> read_number("1-1/8"), read_number("2,5"), read_number("0.09")
    (Fraction(9, 8), Fraction(5, 2), Fraction(9, 100))

    Raises:
        NotAMeasure: the number is negative, ambiguous, too exact, or no number at all.
    """
    written = f"{number} {unit}".strip()
    if sum(char.isdigit() for char in number) > MOST_DIGITS:
        raise NotAMeasure(f"{show(written)} has more digits than can be measured", "write fewer digits")
    if number.startswith("-"):
        remedy = f"write {written[1:].strip()}" if len(number) > 1 else "write a number"
        raise NotAMeasure(f"{written} is negative", remedy)
    _refuse_grouping(number, unit)
    fraction = _FRACTION.fullmatch(number)
    if fraction:
        return _mixed(written, unit, fraction)
    decimal = _DECIMAL.fullmatch(number)
    if decimal and number:
        return Fraction(f"{decimal['whole'] or 0}.{decimal['rest'] or 0}")
    if _RANGE.fullmatch(number):
        raise NotAMeasure(f"{written} is a range", "write one value")
    raise NotAMeasure(f"{written} is not one number", "write one number such as 21, 2.5, 7/8 or 1 1/8")


def _mixed(written: str, unit: str, match: re.Match[str]) -> Fraction:
    over, under = int(match["over"]), int(match["under"])
    if under == 0:
        raise NotAMeasure(f"{written} divides by zero", "write another number below the stroke")
    if match["whole"] is None:
        return Fraction(over, under)
    value = int(match["whole"]) + Fraction(over, under)
    if over >= under:
        whole, rest = divmod(value, 1)
        plain = f"{whole} {rest} {unit}" if rest else f"{whole} {unit}"
        raise NotAMeasure(f"{written} has a fraction of one or more", f"write {plain.strip()}")
    return value


def _refuse_grouping(number: str, unit: str) -> None:
    """Refuse thousands that are parted by commas, points or blanks."""
    match = _GROUPED.fullmatch(number)
    if not match:
        return
    sign, written = match["sign"], f"{number} {unit}".strip()
    if number.count(".") == 1 and not {",", " "} & set(number):
        return
    joined = number.replace(sign, "")
    if sign == "," and number.count(",") == 1 and "." not in number:
        point = number.replace(",", ".").rstrip("0").rstrip(".")
        choice = f"write {point} {unit}".strip() + " or " + f"{joined} {unit}".strip()
        raise NotAMeasure(f"{written} can be read in two ways", choice)
    plain = f"{joined.replace(',', '.')} {unit}".strip()
    raise NotAMeasure(f"{written} has a mark between its thousands", f"write {plain}")


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of measure.

    `what` is its name with the article; `words` maps each unit, the usual one first, to its spellings;
    `example` shows how it is written; `fraction_unit` is the unit that fractions are likely to be in.
    """

    what: str
    words: Mapping[str, str]
    example: str
    fraction_unit: str = ""

    @property
    def noun(self) -> str:
        """The name without the article."""
        return self.what.partition(" ")[2]

    @property
    def spellings(self) -> dict[str, str]:
        """Each spelling with the unit it stands for."""
        return {word: unit for unit, words in self.words.items() for word in words.split()}

    @property
    def usual(self) -> str:
        """The unit most makers will mean."""
        return next(iter(self.words))


def read_quantity(text: str, kind: Kind) -> tuple[Fraction, str]:
    """The exact value of a measure, and its unit by the name the kind gives it.

    >>> read_quantity("600 DPI", Kind("a resolution", {"dpi": "dpi ppi"}, "600 dpi"))
    (Fraction(600, 1), 'dpi')

    Raises:
        NotAMeasure: there is no number, no unit, another kind's unit, or a number that cannot be meant.
    """
    plain = tidy(text, kind.example)
    number, unit = split_number(plain)
    if not any(char.isdigit() for char in number):
        raise _no_number(plain, kind)
    if not unit:
        raise _no_unit(number, kind)
    known = kind.spellings.get(unit.casefold())
    if known is None:
        raise _wrong_unit(number, unit, kind)
    return read_number(number, unit), known


def _no_number(plain: str, kind: Kind) -> NotAMeasure:
    if plain[0] in "+±":
        return NotAMeasure(f"{show(plain)} has a sign", f"write {show(plain[1:].strip()) or kind.example}")
    return NotAMeasure(f"{show(plain)!r} is not {kind.what}", f"write it like {kind.example}")


def _no_unit(number: str, kind: Kind) -> NotAMeasure:
    read_number(number)  # a number that is wrong in itself is the first thing to say
    unit = kind.fraction_unit if "/" in number and kind.fraction_unit else kind.usual
    return NotAMeasure(f"{number} has no unit", f"write {number} {unit}")


def _wrong_unit(number: str, unit: str, kind: Kind) -> NotAMeasure:
    spellings = kind.spellings
    if re.match(r"[eE][+-]?[0-9]", unit):
        return NotAMeasure(f"{show(number + unit)} has an exponent", "write the number out in full")
    first, *rest = re.split(r"(?<=['\"]) ?| ", unit)
    if first.casefold() in spellings and any(char.isdigit() for word in rest for char in word):
        return NotAMeasure(f"{show(f'{number} {unit}')} holds more than one measure", f"write it like {kind.example}")
    near = near_match(unit[:20], spellings)
    meant = near and next((known for known in spellings if _one_letter_off(known, unit)), near)
    units = " or ".join(kind.words) if len(kind.words) < 3 else ", ".join(kind.words)
    remedy = f"write {show(number)} {spellings[meant]}" if meant else f"write it in {units}"
    return NotAMeasure(f"{show(unit)!r} is not a unit of {kind.noun}", remedy)


def _one_letter_off(known: str, written: str) -> bool:
    """Whether one letter was mistyped: mn for mm."""
    return len(known) == len(written) > 1 and sum(a != b for a, b in zip(known, written, strict=True)) == 1


def counted(number: int, what: str, many: str = "") -> str:
    """So many of something.

    >>> counted(1, "strip"), counted(2, "box"), counted(3, "leaf", "leaves")
    ('1 strip', '2 boxes', '3 leaves')
    """
    usual = f"{what}es" if what.endswith(("x", "ch", "sh", "ss")) else f"{what}s"
    return f"{number} {what if number == 1 else many or usual}"
