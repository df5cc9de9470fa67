"""When typefaces came into use, so that a cover is lettered as books of its age were.

Old-style romans are as old as printing in roman; Caslon's were cut from 1722 on, Bodoni's and Didot's in the 1780s;
the Clarendon was registered in 1845 and was the first bold face to go with a text; the typewriter was sold from 1874
on; Johnston's sans is of 1916, the geometric ones follow Futura, 1927. Blackletter titles were in fashion again in the
nineteenth century, in German they never ceased (common knowledge of the trade; from memory).
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

__all__ = ["in_use", "of_its_time", "sturdy", "year_in"]

FIRST: Mapping[str, int] = {
    "caslon": 1722,
    "caslon italic": 1722,
    "didone": 1784,
    "clarendon": 1845,
    "clarendon bold": 1845,
    "typewriter": 1874,
    "inscriptional": 1890,
    "text bold": 1900,
    "humanist": 1916,
    "humanist bold": 1916,
    "geometric": 1927,
    "geometric bold": 1927,
    "sans": 1957,
    "sans bold": 1957,
}
"""The first year of each; the others have been in use all along."""

STURDY = {"didone": "caslon", "old style": "caslon", "old style italic": "caslon italic", "inscriptional": "caslon"}
"""What stands for a typeface with fine hairlines where letters are small: they would not print."""

YEAR = re.compile(r"(?<!\d)(1[4-9]\d\d|20\d\d)(?!\d)")


def year_in(text: str) -> int | None:
    """The first year that a text names.

    >>> year_in("12 September 1901"), year_in("1820-24"), year_in("No. 7")
    (1901, 1820, None)
    """
    found = YEAR.search(text)
    return int(found[1]) if found else None


def in_use(typeface: str, year: int) -> bool:
    """Whether books of a year could be set in a typeface, by its name here."""
    return FIRST.get(typeface, 0) <= year


def sturdy(pair: tuple[str, str], date: str) -> tuple[str, str]:
    """Typefaces for title and author that print in small letters, where books of a date could have such.

    >>> sturdy(("didone", "caslon"), "1834"), sturdy(("old style", "old style"), "1620")
    (('caslon', 'caslon'), ('old style', 'old style'))
    """
    title, author = (STURDY.get(name, name) for name in pair)
    return of_its_time([(title, author)], date, pair)[0]


def of_its_time(
    offered: Sequence[tuple[str, str]], date: str, otherwise: tuple[str, str] = ("old style", "old style")
) -> Sequence[tuple[str, str]]:
    """Those of the typefaces for title and author that a book of a date could have; all, if the date names no year.

    >>> of_its_time([("geometric", "geometric"), ("didone", "caslon")], "1834")
    [('didone', 'caslon')]
    """
    year = year_in(date)
    if year is None:
        return offered
    return [pair for pair in offered if all(in_use(name, year) for name in pair)] or [otherwise]
