"""The table of contents: what begins where, with dots that lead to the page numbers."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import partial
from typing import Literal

from pydantic import Field

from .....ground.problems import Problem, Severity
from .....ground.typefaces import Typeface
from .....ground.units import from_pt
from .....shelf_file.fields.measures import TypeSize
from .....shelf_file.fields.words import Flag, Title
from .....typesetting.book_type import Family
from .....typesetting.chosen_faces import family_for, missing_glyphs
from .....typesetting.display import DisplayType, bound, broken, largest
from .....typesetting.lines.fount import Style, as_read
from .....typesetting.lines.hyphens import Parting, known_language, partings
from .....typesetting.manuscripts.markdown import emphasised
from .....typesetting.page import SMALLEST_BESIDE, Heading, Inside, PageFrame, numbered
from ..prose.sizes import type_too_large, type_too_small
from .contents_table import BESIDE_DOTS, DOT_PITCH, LEADING, TITLE_ROWS, TITLE_SIZE, ContentsLine, Table
from .few_lines import flat_emphasis, typed_line_ends
from .lettered import LetteredPart
from .phrases import phrases_in, spoken

__all__ = ["Contents"]

USUAL = from_pt(2.2)
"""Size of type in mm, where the book has no text."""

LEADER = 2 * BESIDE_DOTS + 2 * DOT_PITCH
"""Ems between words and numbers in which there is always room for two dots."""

FIGURES = "00"
"""Room for the page numbers: for two figures, or three if there are so many pages."""

SMALLEST = 0.8
"""A table with a word wider than its lines, however it is parted, becomes smaller, but not under this share of its
size: then words are parted wherever the line ends."""

HANGING = 0.8
"""Indent of the second and later lines of one heading, in ems."""

DEEPER = 1.2
"""Indent of what belongs to a part, in ems."""

SET_OFF = 0.5
"""Lines left free over a part of which something is listed, and over what comes after all of it."""


class Contents(LetteredPart):
    """What begins on the pages that follow; in the whole book, if the table stands at its end."""

    kind: Literal["contents"] = "contents"
    title: Title | None = Field(None, description="what stands over it")
    size: TypeSize | None = Field(None, description="size of type, such as 2.2 pt; that of the text, if left out")
    numbers: Flag = Field(True, description="page numbers, yes or no")
    lists_the_others = True
    has_size = True

    def extent(self, typefaces: Family | None, frame: PageFrame) -> int:
        """The pages that the lines need; one if nothing is listed."""
        return len(_table(self, typefaces, frame).pages)

    def compose(self, typefaces: Family | None, frame: PageFrame) -> Inside:
        """The table on its pages; lines that find no room are reported."""
        largest = _largest(frame)
        if self.size and self.size > largest + 1e-9:
            problem = type_too_large("the table of contents", self.size, largest, frame)
            return Inside(frame.with_blanks(), (problem,))
        table = _table(self, typefaces, frame)
        made = table.pages
        shown = [*made, *[[]] * frame.pages][: frame.pages]
        pages = tuple(table.page(number, rows) for number, rows in enumerate(shown, start=1))
        lost = sum(map(len, made[frame.pages :]))
        over = _words_over(self, typefaces, frame)
        words = as_read(over) + _text(frame)
        problems = (
            *_problems(table, lost),
            *flat_emphasis("table of contents", [over], family_for(typefaces, frame, words)),
            *typed_line_ends(over, "title"),
            *missing_glyphs("table of contents", table.typeface, words),
            *type_too_small(
                "the table of contents", table.typeface, table.size, frame, "write shorter names", ("size",)
            ),
        )
        return Inside(numbered(pages, frame, table.typeface) if self.numbers else pages, problems)


def _listed(frame: PageFrame) -> tuple[Heading, ...]:
    """What follows, or everything if nothing does."""
    return tuple(heading for heading in frame.contents if heading.page > frame.first) or frame.contents


def _table(entry: Contents, source: Family | None, frame: PageFrame) -> Table:
    """The table in the largest type, up to its own size, in which every word has room on its line."""
    over = _words_over(entry, source, frame)
    family = family_for(source, frame, as_read(over) + _text(frame))
    face = family[Style.ROMAN]
    right_to_left, width = frame.right_to_left, frame.type_area(1).width
    asked = _size(entry, frame)
    least = asked * SMALLEST
    size = max(
        least, largest(asked, lambda size: _reach(_rows(face, size, frame)) <= _room(face, size, frame) + 1e-9, least)
    )
    said = frame.printed(over, *family.values())
    title = broken(face, said, size * TITLE_SIZE, width, 1, right_to_left=right_to_left, family=family)
    return Table(face, size, title, tuple(_rows(face, size, frame, anywhere=size <= least)), frame)


def _size(entry: Contents, frame: PageFrame) -> float:
    """The size it is to have, in mm: by itself that of the text, as far as a page has room for the title and a line."""
    if entry.size:
        return entry.size
    usual = max(frame.text_size, SMALLEST_BESIDE) if frame.text_size else USUAL
    return min(usual, _largest(frame))


def _largest(frame: PageFrame) -> float:
    return frame.type_area(1).height / (LEADING * (1 + TITLE_ROWS))


def _reach(rows: Iterable[ContentsLine]) -> float:
    """How far the longest row reaches, in mm."""
    return max((row.indent + row.words.width for row in rows), default=0.0)


def _room(face: Typeface, size: float, frame: PageFrame) -> float:
    """How far the lines reach, in mm: to where dots and numbers begin, but over half the width at least."""
    figures = max([FIGURES, *(str(heading.page) for heading in _listed(frame))], key=len)
    width = frame.type_area(1).width
    return max(width - (face.shape("0" * len(figures)).width + LEADER) * size, width / 2)


def _rows(face: Typeface, size: float, frame: PageFrame, *, anywhere: bool = False) -> Iterator[ContentsLine]:
    type, language = DisplayType(face, frame.right_to_left), _language(frame)
    room = _room(face, size, frame) / size
    listed = _listed(frame)
    depths = [heading.depth for heading in listed]
    for heading, above, below in zip(listed, [0, *depths], [*depths[1:], 0], strict=False):
        inner = DEEPER * heading.depth
        measure, turned = room - inner, room - inner - HANGING
        whole = bound(frame.printed(heading.text, face).split(), partial(type.fits, turned))
        words = [part for word in whole for part in _parted(word, type.width, turned, language, anywhere)]
        lines = type.lines(words, measure, turned)
        # a part keeps with the first of what is in it, and is set off, as is what comes after that
        heads, set_off = below > heading.depth, SET_OFF if below > heading.depth or above > heading.depth else 0.0
        for number, line in enumerate(lines, start=1):
            last = number == len(lines)
            yield ContentsLine(
                type.line(line, size),
                (inner + (HANGING if number > 1 else 0.0)) * size,
                heading.page if last and heading.numbered else None,
                before=set_off if number == 1 else 0.0,
                stays=not last or heads,
            )


def _language(frame: PageFrame) -> str | None:
    """The language whose patterns part its words."""
    return known_language(frame.type.language if frame.type else spoken("en", frame.book.title))


def _parted(
    word: str, width: Callable[[str], float], room: float, language: str | None, anywhere: bool
) -> Iterator[str]:
    """A word too wide for a line, in ems, in parts that each fill one: after its dashes, else by hyphens."""
    while width(word) > room:
        ways = partings(word, language)
        if anywhere and not any(width(word[: way.at] + "-" * way.hyphened) <= room for way in ways):
            ways = [Parting(at, 0.0, flagged=True, hyphened=True) for at in range(2, len(word) - 1)]
        fit = [way for way in ways if width(word[: way.at] + "-" * way.hyphened) <= room]
        if not fit:
            break
        best = max(fit, key=lambda way: (not way.hyphened, way.at))
        yield word[: best.at] + "-" * best.hyphened
        word = word[best.at :]
    yield word


def _words_over(entry: Contents, source: Family | None, frame: PageFrame) -> str:
    """The title of the table: the maker's, or that of the language of the book, if there is one that can be set."""
    if entry.title:
        return emphasised(entry.title)[0]
    said = phrases_in(frame.type.language if frame.type else spoken("en", frame.book.title))
    if not said or family_for(source, frame, said.contents)[Style.ROMAN].missing(said.contents):
        return ""
    return said.contents


def _text(frame: PageFrame) -> str:
    return "".join(heading.text for heading in _listed(frame))


def _problems(table: Table, lost: int) -> Iterator[Problem]:
    if not table.rows:
        yield Problem(
            "the table of contents has nothing to list",
            "add listed_as: with a name to the parts that it shall list",
            Severity.WARNING,
        )
    if lost > 0:
        which = "1 line" if lost == 1 else f"{lost} lines"
        yield Problem(
            f"{which} of the table of contents have no room",
            "leave its pages out, for as many as it needs, or write a smaller size",
            field=("pages",),
        )
