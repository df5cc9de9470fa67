"""Plain text as passages: paragraphs are separated by blank lines, line ends inside them are spaces."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..lines.ideographs import joins_lines
from .indents import placing, usual_column
from .passage import Passage, Role

__all__ = ["plain_passages"]

NO_BREAK_SPACES = "\u00a0\u2007\u202f"
"""White space at which no line may end."""

BOUND_WORD = re.compile(rf"[\S{NO_BREAK_SPACES}]+")

INDENTED = re.compile(r"^(?: {8}|\t\t)", re.MULTILINE)
"""Lines that may be for the middle of the page, or its right."""

PAUSE = re.compile(r"([*_#-])(?: ?\1){2,}")
"""What plain text has between two scenes."""


def _paragraphs(text: str) -> Iterator[str]:
    """Each paragraph with its words parted by single spaces."""
    # str.split is fast, but parts words at no-break spaces too
    words_of = _bound_words if any(space in text for space in NO_BREAK_SPACES) else str.split
    words: list[str] = []
    for line in (*text.split("\n"), ""):
        found = words_of(line)
        if found and words and joins_lines(words[-1][-1], found[0][0]):
            words[-1] += found[0]
            words += found[1:]
        elif found:
            words += found
        elif words:
            yield " ".join(words)
            words = []


def plain_passages(text: str) -> Iterator[Passage]:
    """Paragraphs, pauses, and lines for the middle or the right, as far as these are indented."""
    if not INDENTED.search(text):
        yield from map(_plain, _paragraphs(text))
        return
    blocks = [block.split("\n") for block in re.split(r"\n(?:[ \t]*\n)+", text.strip("\n")) if block.strip()]
    usual = usual_column(blocks)
    for lines in blocks:
        place = placing(lines, usual)
        if place:
            yield Passage("\n".join(" ".join(_bound_words(line)) for line in lines), Role.PLACED, mark=place)
        else:
            yield from map(_plain, _paragraphs("\n".join(lines)))


def _plain(paragraph: str) -> Passage:
    return Passage("", Role.BREAK) if PAUSE.fullmatch(paragraph) else Passage(paragraph)


def _bound_words(line: str) -> list[str]:
    return [word for word in BOUND_WORD.findall(line) if not word.isspace()]
