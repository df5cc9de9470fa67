"""Notes in Markdown: `[^1]` in the text, and `[^1]: ` before what the note says, wherever that stands.

CommonMark knows no notes. Their names are for the author's eyes; their figures are counted, chapter by chapter.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import islice
from typing import TYPE_CHECKING, NamedTuple

from ...ground.problems import Problem, Severity

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.rules_block import StateBlock
    from markdown_it.rules_inline import StateInline
    from markdown_it.token import Token

__all__ = ["REFERENCE", "Notes", "read_notes"]

DEFINITION = re.compile(r"\[\^([^\]\[\s]+)\]:[ \t]*")
REFERRED = re.compile(r"\[\^([^\]\[\s]+)\]")

NOTE, REFERENCE = "note", "note_reference"
"""Types of token: what a note says, and where it is referred to."""

INDENT = 4
"""Columns by which the later paragraphs of a note are set in."""


class _Note(NamedTuple):
    """What a note says, in Markdown, and the line of the file where it begins, from 1."""

    text: str
    line: int


@dataclass
class Notes:
    """The notes of a text, counted in each chapter in the order in which they are referred to."""

    written: dict[str, _Note] = field(default_factory=dict)
    names: list[str] = field(default_factory=list)
    figures: dict[str, int] = field(default_factory=dict)
    used: set[str] = field(default_factory=set)
    lost: dict[str, int] = field(default_factory=dict)

    @classmethod
    def of(cls, tokens: Sequence[Token]) -> Notes:
        """The notes among the tokens of a text; of two of the same name the first counts."""
        notes = cls()
        for token in tokens:
            if token.type == NOTE:
                notes.written.setdefault(token.meta["name"], _Note(token.content, (token.map or [0])[0] + 1))
        return notes

    def of_chapter(self) -> Iterator[tuple[int, _Note]]:
        """The notes of the chapter that ends, those too that are only referred to meanwhile."""
        for figure, name in enumerate(self.names, start=1):
            yield figure, self.written[name]
        self.names.clear()
        self.figures.clear()

    def figure(self, name: str, line: int) -> str:
        """The figure of a note that is referred to in some line of the file; nothing if there is no such note."""
        if name not in self.written:
            self.lost.setdefault(name, line)
            return ""
        if name not in self.figures:
            self.used.add(name)
            self.names.append(name)
            self.figures[name] = len(self.names)
        return str(self.figures[name])

    def said(self, name: str) -> Iterator[Problem]:
        """What was left out of the file of that name, with its line."""
        unused = {note: line for note, (_, line) in self.written.items() if note not in self.used}
        for note, line in islice(self.lost.items(), 1):
            some = len(self.lost)
            which = "a note that is" if some == 1 else f"{some} notes that are"
            first = "" if some == 1 else "the first is "
            yield _left_out(
                f"{name} refers to {which} not there, and no figure is set: {first}[^{note}] in line {line}",
                f"write [^{note}]: and what it says in a paragraph of its own, or \\[^{note}] for the signs themselves",
            )
        for note, line in islice(unused.items(), 1):
            which, first = ("a note", "") if len(unused) == 1 else (f"{len(unused)} notes", "the first is ")
            yield _left_out(
                f"{name} has {which} that nothing refers to, left out: {first}[^{note}] in line {line}",
                f"write [^{note}] where it belongs",
            )


def _left_out(message: str, remedy: str) -> Problem:
    return Problem(message, remedy, Severity.WARNING, field=("file",))


def read_notes(markdown: MarkdownIt) -> MarkdownIt:
    """The same reader, which now knows notes too."""
    markdown.block.ruler.before("reference", NOTE, _definition, {"alt": ["paragraph", "reference"]})
    markdown.inline.ruler.before("link", REFERENCE, _reference)
    return markdown


def _reference(state: StateInline, silent: bool) -> bool:
    found = REFERRED.match(state.src, state.pos, state.posMax)
    if not found:
        return False
    if not silent:
        token = state.push(REFERENCE, "", 0)
        token.content, token.meta = found[0], {"name": found[1]}
    state.pos = found.end()
    return True


def _definition(state: StateBlock, start: int, end: int, silent: bool) -> bool:
    found = DEFINITION.match(state.src, state.bMarks[start] + state.tShift[start], state.eMarks[start])
    if not found or state.is_code_block(start):
        return False
    if silent:
        return True
    last = _last_line(state, start, end)
    token = state.push(NOTE, "", 0)
    token.meta, token.map, token.hidden = {"name": found[1]}, [start, last], True
    later = state.getLines(start + 1, last, state.blkIndent + INDENT, False) if last > start + 1 else ""
    token.content = f"{state.src[found.end() : state.eMarks[start]]}\n{later}"
    state.line = last
    return True


def _last_line(state: StateBlock, start: int, end: int) -> int:
    """The line before which a note ends: at a blank one, if what follows is not set in, or where a block begins."""
    others = list(state.md.block.ruler.getRules("paragraph"))
    line = start + 1
    while line < end:
        following = next((place for place in range(line, end) if not state.isEmpty(place)), end)
        if following == end:
            break
        set_in = state.sCount[following] - state.blkIndent >= INDENT
        if not set_in and (following > line or any(rule(state, following, end, True) for rule in others)):
            break
        line = following + 1
    return line
