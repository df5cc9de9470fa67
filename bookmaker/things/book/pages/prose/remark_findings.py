"""What the compositor remarked, as messages to the maker: one for each kind, and what would help."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from .....ground.problems import Problem, Severity
from .....ground.quantities import counted
from .....ground.told import print_mm, rounded_up
from .....ground.units import from_pt, to_pt
from .....paper.eyesight import FEWEST_DOTS
from .....typesetting.galleys.remarks import Remarks, Verse
from .....typesetting.galleys.setting import Setting
from .....typesetting.lines.fount import as_read
from .....typesetting.lines.tracking import tracking_at
from .....typesetting.manuscripts.passage import INDENT_SIGN
from .....typesetting.page import PageFrame
from .sizes import type_too_small

__all__ = ["quoted", "remark_findings"]

MOST_SHOWN = 40
"""So many letters of a text are shown."""

FEWEST_TURNED = 1 / 10
"""Where fewer of the lines of verse are turned over it is not told."""

MOST_WIDER = 2.0
"""A page is not advised to be wider by a greater factor: that would be another book."""


def remark_findings(
    remarks: Remarks, name: str, setting: Setting, frame: PageFrame, *, fitted: bool
) -> Iterator[Problem]:
    """All there is to say of a text by its name; type that is `fitted` becomes larger on a larger page."""
    yield from _small_captions(remarks, name, setting, frame)
    yield from _long_headings(remarks, name, setting)
    yield from _broken_words(remarks, name)
    yield from _turned_verses(remarks, name, setting, frame, fitted=fitted)
    yield from _turned_placed(remarks, name)
    yield from _plain_openings(remarks, name)
    yield from _unfit_tables(remarks, name)
    yield from _short_lines(remarks, name)


def quoted(text: str) -> str:
    """A text as its reader sees it, between quotation marks; the end of a long one is left out.

    >>> quoted("\\x01oil\\x00\\xa0& wick")
    "'oil & wick'"
    """
    words = " ".join(as_read(text.replace(INDENT_SIGN, "")).split())
    shown = words if len(words) <= MOST_SHOWN else words[:MOST_SHOWN].rstrip() + "\u2026"
    return f"'{shown}'"


def _turned_verses(
    remarks: Remarks, name: str, setting: Setting, frame: PageFrame, *, fitted: bool
) -> Iterator[Problem]:
    turned = list(filter(None, remarks.verses))
    if len(turned) > FEWEST_TURNED * len(remarks.verses):
        which = counted(len(remarks.verses), "line of verse is", "lines of verse are")
        yield _note(
            f"{len(turned)} of {which} too wide for the page in {name}, and broken into two",
            _room_for_verse(turned, setting, frame, fitted=fitted),
        )


def _room_for_verse(turned: Sequence[Verse], setting: Setting, frame: PageFrame, *, fitted: bool) -> str:
    """What to write for all lines of verse to fit; nothing if neither type nor page can do it."""
    area = frame.type_area(1)
    widest = max(verse.width for verse in turned)
    points = math.floor(to_pt(area.width / widest) * 20) / 20
    while points > 0 and from_pt(points) * _widest_at(from_pt(points), turned, setting) > area.width:
        points = round(points - 0.05, 2)
    legible = FEWEST_DOTS * frame.dot / setting.typeface.x_height
    needed = widest * setting.size
    # by ninths the margins grow with the page
    page = needed + frame.width - area.width if frame.margins else needed * frame.width / area.width
    ways = [f"write size: {points:g} pt"] if from_pt(points) >= legible else []
    if page <= MOST_WIDER * frame.width and not fitted:
        ways.append(
            f"{'' if ways else 'choose '}a page {print_mm(rounded_up(page), 1)} {'high' if frame.standing else 'wide'}"
        )
    return f"{', or '.join(ways)}, for the longest to fit" if ways else ""


def _widest_at(size: float, turned: Iterable[Verse], setting: Setting) -> float:
    """How wide the widest verse is in smaller type, in ems: its letters stand further apart there."""
    further = tracking_at(size) - tracking_at(setting.size)
    return max(verse.width + further * verse.signs for verse in turned)


def _turned_placed(remarks: Remarks, name: str) -> Iterator[Problem]:
    placed = remarks.placed
    if placed:
        are = "is" if len(placed) == 1 else "are"
        yield _note(
            f"{counted(len(placed), 'line')} for the middle or the right of {name} {are} too wide for the page, "
            f"and broken into two, the first {quoted(placed[0])}",
            "break such lines by hand, or write a smaller size",
        )


def _plain_openings(remarks: Remarks, name: str) -> Iterator[Problem]:
    plain = remarks.plain
    if plain:
        begin = "begins" if len(plain) == 1 else "begin"
        yield _note(
            f"{counted(len(plain), 'chapter')} of {name} {begin} without a drop capital; the first text, "
            f"{quoted(plain[0].text)}, {plain[0].why.value}",
            "write another beginning, drop_capital: with fewer lines, or no",
            "drop_capital",
        )


def _small_captions(remarks: Remarks, name: str, setting: Setting, frame: PageFrame) -> Iterator[Problem]:
    if not remarks.captions:
        return
    size = remarks.captions[0]
    remedy = f"write shorter captions in {name}"
    told = list(type_too_small("the captions", setting.typeface, size, frame, remedy, ("file",)))
    yield from told or [
        _note(
            f"the captions of {name} are set in {to_pt(size):.2g} pt type, for the longest to leave half the room "
            "to its picture",
            remedy,
        )
    ]


def _long_headings(remarks: Remarks, name: str, setting: Setting) -> Iterator[Problem]:
    long = remarks.long
    if long:
        which = f"the heading {quoted(long[0])} of {name} is"
        if len(long) > 1:
            which = f"{len(long)} headings of {name}, the first {quoted(long[0])}, are"
        yield _warning(
            f"{which} longer than a page, which has {counted(setting.lines_per_page, 'line')}, and divided",
            "write shorter headings, or a smaller size",
        )


def _broken_words(remarks: Remarks, name: str) -> Iterator[Problem]:
    wide = set(remarks.wide)
    if wide:
        first = as_read(remarks.wide[0])[:10]
        yield _note(
            f"{counted(len(wide), 'word is', 'words are')} wider than the lines of {name} and broken between letters; "
            f"the first begins {quoted(first)}",
            "write a smaller size, or part such words by hand with soft hyphens",
        )


def _unfit_tables(remarks: Remarks, name: str) -> Iterator[Problem]:
    unfit = remarks.unfit
    if unfit:
        count = len(unfit)
        which = f"the table in line {unfit[0]} of {name} has no room for its columns, so"
        if count > 1:
            which = f"{count} tables of {name} have no room for their columns, the first in line {unfit[0]}:"
        yield _warning(
            f"{which} each row is set on lines of its own",
            "write a smaller size, fewer columns, or shorter words in them",
        )


def _short_lines(remarks: Remarks, name: str) -> Iterator[Problem]:
    short = remarks.short
    if short:
        end = "ends" if len(short) == 1 else "end"
        yield _note(
            f"{counted(len(short), 'line')} of {name} cannot be filled and {end} short of the margin, "
            f"the first one {quoted(short[0])}",
            "write a smaller size, another wording, or justified: no",
        )


def _note(message: str, remedy: str, key: str = "file") -> Problem:
    return Problem(message, remedy, Severity.NOTE, field=(key,))


def _warning(message: str, remedy: str) -> Problem:
    return Problem(message, remedy, Severity.WARNING, field=("file",))
