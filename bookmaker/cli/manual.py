"""The manual in the terminal, and as a page to keep."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from ..ground.output import put_file
from ..ground.problems import CommandError, Problem, near_match
from ..ground.visible import one_line
from ..shelf.schema import shelf_schema
from ..writers.manual.chapters import Section, bare, chapters, fold, sections_of
from ..writers.manual.keys import Key, every_key, keys_chapter
from ..writers.manual.page import manual_page
from ..writers.manual.topics import Topic, look_up, names_told_of, passages
from .markdown import printed, wrapped
from .terminal import room, say

__all__ = ["show_manual"]

USUAL_WIDTH, WIDEST = 80, 100

NEAR = 0.75
"""How like a word must be to one of the manual to be taken for a slip of it."""

MOST_SECTIONS, MOST_PASSAGES, MOST_ELSEWHERE = 3, 4, 8


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
        say("\n".join(printed(texts["contents"], width)))
        return
    sections = [section for name, text in texts.items() for section in sections_of(name, text)]
    keys = tuple(every_key(shelf_schema()))
    topic = look_up(word, sections, keys, texts["glossary"])
    if topic.empty:
        meant = near_match(word, names_told_of(sections, keys, texts["glossary"]), NEAR)
        remedy = f"did you mean {meant}?" if meant else "run bookmaker manual to see the chapters, or try another word"
        raise CommandError((Problem(f"the manual does not have {one_line(word)}", remedy),))
    say("\n".join(_told(topic, word, width)).strip("\n"))


def _told(topic: Topic, word: str, width: int) -> Iterator[str]:
    for meaning in topic.meanings:
        yield from wrapped(bare(meaning), width)
    for key in topic.keys:
        yield from ("", *wrapped(_of_key(key), width, "  "))
    for section in topic.sections[:MOST_SECTIONS]:
        yield from ("", _headed(section), "", *printed(section.text, width))
    others = [*topic.sections[MOST_SECTIONS:], *topic.elsewhere]
    if not topic.sections:
        yield from _passages(others[:MOST_SECTIONS], word, width)
    yield from _see_also(others, width)


def _headed(section: Section) -> str:
    return f"{section.heading} (chapter {section.chapter})"


def _passages(sections: Sequence[Section], word: str, width: int) -> Iterator[str]:
    """What sections say where they have a word that none of them is about."""
    for section in sections:
        found = passages(section.text, word)[:MOST_PASSAGES]
        if found:
            yield from ("", _headed(section), "", *printed("\n\n".join(found).replace("|\n\n|", "|\n|"), width))


def _see_also(sections: Sequence[Section], width: int) -> Iterator[str]:
    """Where else to read, each place as it can be typed."""
    places = [*dict.fromkeys(_place(section) for section in sections)]
    if places:
        yield from ("", *wrapped("See also (type bookmaker manual and one of these):", width))
        yield from (line for place in places[:MOST_ELSEWHERE] for line in wrapped(f"  {place}", width, "    "))
    if len(places) > MOST_ELSEWHERE:
        yield f"  and {len(places) - MOST_ELSEWHERE} more"


def _place(section: Section) -> str:
    """A chapter, or a section of it, in words that a shell takes as they stand."""
    return section.chapter if section.level == 1 else f"{section.chapter} {fold(section.heading)}"


def _of_key(key: Key) -> str:
    otherwise = f"; if left out: {key.otherwise}" if key.otherwise != "–" else ""
    such = f"; you may write {bare(key.example)}" if key.example != "–" else ""
    return f"{key.name}, a key of {key.group}: {bare(key.meaning)}{such}{otherwise}"
