"""Set lines: what comes of a paragraph, wherever it will stand."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import chain
from typing import NamedTuple

__all__ = ["SetLine", "SetLines", "joined"]


class SetLine(NamedTuple):
    """Words parted by single spaces, `x` mm from the left of the type area, each space `gap` mm wider than usual.

    `done` is how many words of its passage are wholly set by its end; `tracking` mm follow every glyph but the last;
    `more` are cells of a table further to the right.
    """

    words: str
    x: float
    gap: float
    done: int
    tracking: float = 0.0
    more: tuple[SetLine, ...] = ()


class SetLines(NamedTuple):
    """The lines of a paragraph, and what is remarkable about them.

    `wide` are the words that were parted between letters, `short` the lines that do not reach the margin though they
    should.
    """

    lines: tuple[SetLine, ...]
    wide: tuple[str, ...] = ()
    short: tuple[str, ...] = ()


def joined(parts: Iterable[SetLines]) -> SetLines:
    """Several paragraphs, such as the verses of a stanza, as one whose words are counted from its beginning."""
    parts, placed, done = tuple(parts), list[SetLine](), 0
    for part in parts:
        placed += (line._replace(done=done + line.done) for line in part.lines)
        done = placed[-1].done if placed else 0
    return SetLines(tuple(placed), *(tuple(chain(*some)) for some in zip(*(part[1:] for part in parts), strict=True)))
