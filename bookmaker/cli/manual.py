"""The manual in the terminal, and as a page to keep."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator
from pathlib import Path

from ..ground.output import put_file
from ..ground.problems import CommandError, Problem
from ..ground.visible import one_line
from ..shelf.schema import shelf_schema
from ..writers.manual.chapters import Section, chapters, sections_of
from ..writers.manual.keys import Key, every_key, keys_chapter
from ..writers.manual.page import manual_page
from ..writers.manual.topics import Topic, look_up
from .terminal import room, say

__all__ = ["show_manual"]

USUAL_WIDTH, WIDEST = 80, 100

MOST_SECTIONS, MOST_ELSEWHERE = 3, 12


def show_manual(word: str, into: Path | None) -> None:
    """Write all of it into a file, or say what it says about a word; without a word, what there is to read.

    Raises:
        CommandError: the manual does not have the word.
        OutputError: the file cannot be written.
    """
    texts = chapters()
    if into is not None:
        put_file(into, manual_page(texts | {"keys": keys_chapter(shelf_schema())}).encode())
        say(f"wrote {one_line(into)}; open it in a browser")
        return
    width = min(room() or USUAL_WIDTH, WIDEST)
    if not word:
        say("\n".join(_printed(texts["contents"], width)))
        return
    sections = [section for name, text in texts.items() for section in sections_of(name, text)]
    topic = look_up(word, sections, every_key(shelf_schema()), texts["glossary"])
    if topic.empty:
        remedy = "run bookmaker manual to see the chapters, or try another word"
        raise CommandError((Problem(f"the manual does not have {one_line(word)}", remedy),))
    say("\n".join(_told(topic, width)))


def _told(topic: Topic, width: int) -> Iterator[str]:
    for meaning in topic.meanings:
        yield from _wrapped(_plain(meaning), width)
    for key in topic.keys:
        yield from ("", *_wrapped(_of_key(key), width, "  "))
    for section in topic.sections[:MOST_SECTIONS]:
        yield from ("", f"{section.heading} (chapter {section.chapter})", "", *_printed(section.text, width))
    others = [*topic.sections[MOST_SECTIONS:], *topic.elsewhere]
    if others:
        shown = ", ".join(dict.fromkeys(_place(section) for section in others[:MOST_ELSEWHERE]))
        more = f" and {len(others) - MOST_ELSEWHERE} more" if len(others) > MOST_ELSEWHERE else ""
        yield from ("", *_wrapped(f"See also: {shown}{more}", width, "  "))


def _place(section: Section) -> str:
    return f"{section.chapter}: {section.heading}" if section.level > 1 else section.chapter


def _of_key(key: Key) -> str:
    otherwise = f"; if left out: {key.otherwise}" if key.otherwise != "–" else ""
    such = f"; you may write {_plain(key.example)}" if key.example != "–" else ""
    return f"{key.name}, a key of {key.group}: {_plain(key.meaning)}{such}{otherwise}"


def _printed(text: str, width: int) -> Iterator[str]:
    """Markdown as lines of a terminal: examples stay as they are, rows of tables become paragraphs."""
    kept = ""
    for line in text.splitlines():
        if re.match(r" *```", line):
            kept = "" if kept else "  "
        elif kept:
            yield kept + line
        elif line.startswith("|"):
            yield from _row(line, width)
        elif found := re.match(r" *(?:[-*]|\d+\.) ", line):
            yield from _wrapped(_plain(line), width, " " * len(found[0]))
        elif not line.startswith("!["):
            yield from _wrapped(_plain(line.lstrip("# ")), width)


def _row(line: str, width: int) -> Iterator[str]:
    """A row of a table; the row of lines under its heads is left out."""
    cells = [_plain(cell.strip()) for cell in line.strip("|").split(" | ")]
    if not re.fullmatch(r"[-|: ]+", line):
        first, *others = cells
        yield from _wrapped(
            ": ".join((first.strip(), "; ".join(cell for cell in others if cell.strip(" –")))), width, "    "
        )


def _plain(text: str) -> str:
    """Without the signs of Markdown: a link is what it says, and code stands bare."""
    text = re.sub(r"\[([^]]+)\]\([^)]+\)", r"\1", text)
    return re.sub(r"\*\*|`", "", text).replace("\\|", "|")


def _wrapped(text: str, width: int, indent: str = "") -> list[str]:
    return textwrap.wrap(text, width, subsequent_indent=indent, break_on_hyphens=False) or [""]
