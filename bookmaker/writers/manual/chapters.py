"""The chapters of the manual, Markdown files inside the package, and the sections they have."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

__all__ = ["FOLDER", "Section", "anchor_of", "bare", "chapters", "fold", "sections_of"]

FOLDER = Path(__file__).parents[2] / "manual"

FENCE = re.compile(r"^ *```.*?^ *```$", re.MULTILINE | re.DOTALL)

HEADING = re.compile(r"^(#+) (.+)\n", re.MULTILINE)

LINK = re.compile(r"\[([^]]+)\]\([^)]+\)")

SIGN = re.compile(r"`([^`]*)`|\\([^\w\s])|\*+")
"""Code, a sign that is meant as it stands, or the asterisks of emphasis."""


@dataclass(frozen=True)
class Section:
    """What stands under one heading of a chapter, in Markdown."""

    chapter: str
    heading: str
    level: int
    text: str


def chapters() -> dict[str, str]:
    """The text of every chapter by its name, in the order of the table of contents, which comes first."""
    contents = (FOLDER / "contents.md").read_text(encoding="utf-8")
    names = re.findall(r"^- \[[^]]+\]\((\S+)\.md\)", contents, re.MULTILINE)
    return {"contents": contents} | {name: (FOLDER / f"{name}.md").read_text(encoding="utf-8") for name in names}


def sections_of(chapter: str, text: str) -> Iterator[Section]:
    """A chapter cut at its headings; a `#` in an example is none."""
    hidden = FENCE.sub(lambda example: "`" * len(example[0]), text)
    heads = list(HEADING.finditer(hidden))
    ends = [*(head.start() for head in heads[1:]), len(text)]
    for head, end in zip(heads, ends, strict=True):
        yield Section(chapter, head[2], len(head[1]), text[head.end() : end].strip("\n"))


def anchor_of(heading: str) -> str:
    """What links call a heading.

    >>> anchor_of("Block: the accordion")
    'block-the-accordion'
    """
    return re.sub(r"[^\w\- ]", "", heading.lower()).replace(" ", "-")


def bare(text: str) -> str:
    """Markdown without its signs: a link is what it says, code stands bare.

    >>> bare(r"write \\*…\\* for *italic*, see [pages](pages.md#text), `a*b`")
    'write *…* for italic, see pages, a*b'
    """
    return SIGN.sub(lambda sign: sign[1] or sign[2] or "", LINK.sub(r"\1", text)).replace("\\|", "|")


def fold(word: str) -> str:
    """A word as it is compared: small, without marks, whether it is written as a key or as text.

    >>> fold("Turn-in"), fold("turn_in")
    ('turn in', 'turn in')
    """
    return re.sub(r"[\W_]+", " ", word.lower()).strip()
