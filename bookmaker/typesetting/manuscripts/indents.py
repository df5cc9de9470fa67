"""Indents as authors type them, with blanks or tabs: of paragraphs, of verses, of lines in the middle or at the right.

What stands eight columns or more from the left, in few short lines, belongs to the middle of the page; sixteen
columns or more, to its right. One of these lines may be long, if their author plainly ended the others. In Markdown
what stands four columns from the left is text to be kept as it is, but many indent paragraphs so: what reads like
prose is taken for such.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

from ...ground.problems import Problem, Severity
from .passage import INDENT_SIGN

if TYPE_CHECKING:
    from markdown_it.token import Token

__all__ = ["CENTRED", "RIGHT", "TAB", "Typed", "placing", "typed_indents", "usual_column", "verse_indents"]

CENTRED, RIGHT = "c", "r"

MIDDLE_FROM, RIGHT_FROM = 8, 16
"""Columns from the left."""

TAB = 4
"""Columns that a tab stands for."""

MOST_LINES, LONGEST, OVERLONG = 6, 60, 120
"""More lines are a paragraph, and so are longer ones: so many characters, or twice as many at the right."""

FULL = 45
"""Lines of prose that goes on are at least so many characters long."""

FEWEST_WORDS = 4

CODE = re.compile(r"[{}<>=|$\[\]]|\S {2,}\S|__|//|\(\)")
"""What prose has not: signs of programmers, and columns parted by blanks."""

ENDS = tuple(".!?…:;,—–-\"'”’»)*_")
"""What a paragraph ends with."""

HARD_BREAK = re.compile(r"(?:\\| {2,})$")

MARKUP = re.compile(r"^(?:(?=(?:[-+*>]|#{1,6})(?:\s|$))|(\d{1,9})(?=[.)](?:\s|$)))")
"""Where a line that is moved to the left would begin to mean something else."""


QUOTED = re.compile(r"(?: {0,3}> ?)+")
"""What stands before a line of a quotation."""

SPACES = {"\u2003": 2, "\u2002": 1, "\u2001": 2, "\u2000": 1}
"""Spaces of a given width, in half ems."""


class Typed(NamedTuple):
    """A Markdown text without the indents of its paragraphs; its lines count as before.

    `placed` are the lines, from 0, where something for the middle or the right begins, `indented` the first
    lines of indented paragraphs, `kept` those of what is kept as it is, though it may be prose.
    """

    text: str
    placed: dict[int, str]
    indented: tuple[int, ...]
    kept: tuple[int, ...] = ()

    def said(self, name: str) -> Iterator[Problem]:
        """A note on paragraphs that could have been meant otherwise."""
        over_and_under = "write ``` on lines of its own over and under what shall be kept as it is, in typewriter"
        ways = (
            ("paragraphs", self.indented, "they are set as prose", over_and_under),
            ("lines", self.kept, "they are kept as they are, in typewriter", "write prose without these blanks"),
        )
        for what, places, how, remedy in ways:
            if places:
                where = f"the first in line {places[0] + 1}; {how}"
                said = f"{name} has {what} that begin with four blanks or more, {where}"
                yield Problem(said, remedy, Severity.NOTE, field=("file",))


def column(line: str) -> int:
    """How many columns from the left a line begins.

    >>> column("  \\tfog"), column("\\tfog"), column("  fog")
    (4, 4, 2)
    """
    head = line[: len(line) - len(line.lstrip(" \t"))]
    return len(head.expandtabs(TAB))


def verse_indents(children: Sequence[Token], source: Sequence[str]) -> list[str]:
    """How far each line of a stanza is set in, in signs of half an em: one for each blank, two for each em space.

    `source` are the lines of its file, from its first one.
    """
    found, row, begins, wide = list[str](), 0, True, 0
    columns = [column(QUOTED.sub("", line, count=1)) for line in source[: 1 + len(children)]] or [0] * len(children)
    here = columns[0] if columns else 0
    for child in children:
        if child.type in {"hardbreak", "softbreak"}:
            row += 1
        if child.type == "hardbreak":
            found.append(INDENT_SIGN * (here + wide))
            here, begins, wide = columns[row] if row < len(columns) else 0, True, 0
        elif begins and child.content:
            spaces = child.content[: len(child.content) - len(child.content.lstrip())]
            begins, wide = False, sum(SPACES.get(sign, 0) for sign in spaces)
    return [*found, INDENT_SIGN * (here + wide)]


def placing(lines: Sequence[str], usual: int) -> str:
    """Where the lines of a paragraph belong: in the middle, at the right, or "" for neither.

    `usual` is how far the paragraphs of the text are indented.
    """
    least = min(map(column, lines))
    if len(lines) > MOST_LINES or _is_long(lines) or least <= usual or least < MIDDLE_FROM:
        return ""
    return RIGHT if least >= RIGHT_FROM else CENTRED


def _is_long(lines: Sequence[str]) -> bool:
    """Whether lines are as long as those of a paragraph, and no single ones that are turned over."""
    *others, last = (len(line.strip()) for line in lines)
    longest = max(last, *others, 0)
    if longest <= LONGEST:
        return False
    ended = min(others) < FULL if others else min(map(column, lines)) >= RIGHT_FROM
    return longest > OVERLONG or not ended


def usual_column(paragraphs: Sequence[Sequence[str]]) -> int:
    """How far those paragraphs begin from the left that are surely such: where most of them do."""
    columns = Counter(column(lines[0]) for lines in paragraphs if len(lines) > MOST_LINES or _is_long(lines))
    return max(columns, key=lambda place: (columns[place], place), default=0)


def typed_indents(text: str, tokens: Sequence[Token]) -> Typed:
    """What Markdown takes for text to be kept as it is, and its author for prose."""
    lines = text.split("\n")
    blocks = [token.map for token in tokens if token.type == "code_block" and token.level == 0 and token.map]
    groups = [group for start, end in blocks for group in _groups(lines, start, end)]
    usual = usual_column([lines[start:end] for start, end in groups])
    placed: dict[int, str] = {}
    indented, kept = list[int](), list[int]()
    for start, end in groups:
        group, goes_on = lines[start:end], end < len(lines) and bool(lines[end].strip())
        place = "" if goes_on or CODE.search("".join(map(str.strip, group))) else placing(group, usual)
        if place:
            placed[start] = place
        elif _reads_like_prose(group, goes_on=goes_on):
            indented.append(start)
        else:
            kept += [start] if _has_sentences(group) else []
            continue
        lines[start:end] = [MARKUP.sub(r"\1\\", line.lstrip(" \t")) for line in group]
    return Typed("\n".join(lines) if placed or indented else text, placed, tuple(indented), tuple(kept))


def _has_sentences(lines: Sequence[str]) -> bool:
    text = " ".join(map(str.strip, lines))
    return not CODE.search(text) and any(map(str.islower, text)) and len(text.split()) >= FEWEST_WORDS


def _groups(lines: Sequence[str], start: int, end: int) -> Iterator[tuple[int, int]]:
    """The stretches between blank lines."""
    begins: int | None = None
    for place in range(start, end + 1):
        blank = place == end or not lines[place].strip()
        if blank and begins is not None:
            yield begins, place
            begins = None
        elif not blank and begins is None:
            begins = place


def _reads_like_prose(lines: Sequence[str], *, goes_on: bool) -> bool:
    text = " ".join(HARD_BREAK.sub("", line).strip() for line in lines)
    if CODE.search(text) or not any(map(str.islower, text)):
        return False
    *others, last = lines
    if goes_on or (others and all(map(HARD_BREAK.search, others))):
        return True
    full = all(len(line.strip()) >= FULL for line in others)
    return full and text.endswith(ENDS) and len(text.split()) >= FEWEST_WORDS and not last.isupper()
