"""Where in the manual a key of the shelf file, or a message, is told of: rows of its tables, each with an anchor."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

from .chapters import anchor_of, bare, chapters

__all__ = ["MESSAGES", "SAYS", "key_place", "message_place", "row_anchor"]

MESSAGES = "messages"
"""The chapter that tells of messages."""

SAYS = "the message says"
"""The head of its table."""

TABLE = re.compile(r"^ *\| (key of [^|]+?|the message says) \|.*\n *\|[-| :]+\n((?: *\|.*\n?)+)", re.MULTILINE)
"""A table of keys or of messages: what its first column is called, and its rows."""

ROW = re.compile(r"^ *\| (.+?) \|", re.MULTILINE)


@dataclass(frozen=True)
class _Table:
    """What the first column of a table is called, and what stands in it."""

    head: str
    firsts: tuple[str, ...]


def row_anchor(head: str, first: str) -> str:
    """What links call a row of a table, by the head of its first column and by what stands there.

    >>> row_anchor("key of a drawn design", "palette")
    'key-of-a-drawn-design-palette'
    """
    return anchor_of(" ".join(f"{head} {first}".replace("…", " ").split()))


def key_place(key: str, beside: Collection[str]) -> str:
    """The anchor of the row about a key of a group that has these keys, its own among them.

    Of several tables with the key it is in the one that has most in common with the group. Of a key that stands in
    none, the anchor is that of the chapter made of all keys.

    >>> key_place("height", {"height", "width"})
    'key-of-size-and-life_size-height'
    """
    keys = set(beside)
    tables = [table for table in _tables() if key in table.firsts and table.head != SAYS]

    def in_common(table: _Table) -> float:
        return len(keys & {*table.firsts}) / len(keys | {*table.firsts})

    return row_anchor(max(tables, key=in_common).head, key) if tables else "keys"


@lru_cache(maxsize=4096)
def message_place(message: str) -> str | None:
    """The anchor of the row about a message, … standing for any words; None if the manual has none about it.

    Of several rows it is the one that says most.

    >>> message_place("block.pages: 47 is odd, but a leaf has two pages")
    'the-message-says-is-odd-but-a-leaf-has-two-pages'
    """
    found = (anchor for pattern, anchor in _sayings() if pattern.search(message))
    return next(found, None)


@cache
def _sayings() -> tuple[tuple[re.Pattern[str], str], ...]:
    """What tells the message of each row, and its anchor, those that say most first."""
    firsts = [first for table in _tables() if table.head == SAYS for first in table.firsts]
    firsts.sort(key=lambda first: -len(re.sub(r"[… ]", "", first)))
    parted = ((re.split(r" *… *", first), first) for first in firsts)
    return tuple((re.compile(".*".join(map(re.escape, parts))), row_anchor(SAYS, first)) for parts, first in parted)


@cache
def _tables() -> tuple[_Table, ...]:
    return tuple(_read(chapters()))


def _read(texts: Mapping[str, str]) -> Iterator[_Table]:
    for text in texts.values():
        for head, rows in TABLE.findall(text):
            yield _Table(head, tuple(bare(first) for first in ROW.findall(rows)))
