"""Markdown as passages: headings, paragraphs, verses, quotations, lists, tables, notes, breaks and plates.

What CommonMark calls a hard line break makes a verse of its paragraph. Tables are those of GitHub Flavored
Markdown. Notes stand at the end of their chapter, or all at the end of the text.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from ...ground.problems import Problem
from ..lines.fount import KEPT_BLANK, Style
from .indents import TAB, Typed, typed_indents, verse_indents
from .inline import Inline, Stretch, words_of
from .notes import Notes, read_notes
from .passage import Passage, Role
from .ranks import OTHER, RUNNING_TEXT, Rank, ranks_of
from .running_titles import RUNNING_TITLE, read_running_titles, stray_title
from .speech import BULLET, DASHED, with_speech
from .unread import unread

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.token import Token

__all__ = ["emphasised", "passages_of"]

STANDING_IN = frozenset({"blockquote_open", "bullet_list_open", "ordered_list_open"})

SIDES = {"text-align:left": "l", "text-align:center": "c", "text-align:right": "r"}
"""How the reader says that a column is aligned."""


def passages_of(
    text: str, name: str, *, end_notes: bool = False, spoken: bool = False
) -> tuple[list[Passage], list[Problem]]:
    """The passages of a Markdown text, and what was left out of it; with `end_notes` all notes stand at its end.

    In languages where that is custom, items after hyphens may be `spoken`.
    """
    from markdown_it import MarkdownIt  # most shelves have plain texts

    reader = read_running_titles(read_notes(MarkdownIt("commonmark").enable("table")))
    tokens = reader.parse(text)
    typed = typed_indents(text, tokens)
    if typed.text != text:
        tokens = reader.parse(typed.text)
    inline = Inline(Notes.of(tokens))
    walk = _Walk(reader, inline, _ranks(tokens), text.split("\n"), typed, end_notes)
    for token in tokens:
        walk.take(token)
    walk.end_chapter()
    return list(with_speech(walk.passages, spoken=spoken)), [
        *inline.said(name),
        *(stray_title(name, line) for line in walk.strays[:1]),
        *unread(tokens, name),
        *typed.said(name),
    ]


def _ranks(tokens: Sequence[Token]) -> list[int]:
    """The rank of each heading that stands in no list and no quotation."""
    outer = [token for token in tokens if token.level == 0 and token.nesting > 0]
    kinds = [
        int(token.tag[1:]) if token.type == "heading_open" else RUNNING_TEXT if token.tag == "p" else OTHER
        for token in outer
    ]
    return list(ranks_of(kinds)[0].values())


@dataclass
class _Table:
    """A table as far as it is read; `line` is where it begins in the file."""

    line: int
    rows: list[list[str]] = field(default_factory=list)
    sides: str = ""

    def passage(self, inset: int) -> Passage:
        """The whole of it."""
        text = "\n".join("\t".join(row) for row in self.rows)
        return Passage(text, Role.TABLE, inset=inset, mark=self.sides, line=self.line)


def emphasised(text: str) -> list[str]:
    """Lines that are no Markdown but for the asterisks of their emphasis, as a fount knows them.

    What would leave nothing stands as it was written.

    >>> emphasised("for *all\\nwho* wait"), emphasised("\\\\")
    (['for \\x01all', '\\x01who wait'], ['\\\\'])
    """
    from markdown_it import MarkdownIt

    broken = "\\\n".join(line.rstrip("\\") for line in text.split("\n"))
    [token] = MarkdownIt("zero").enable(["emphasis", "escape"]).parseInline(broken)
    stretches, _ = Inline(Notes()).stretches(token.children or (), 1)
    lines = [" ".join(words_of(part)) for part in _split(stretches, "\n")]
    return lines if any(lines) else text.split("\n")


@dataclass
class _Walk:
    """Goes through the tokens in order, and keeps what it stands in."""

    reader: MarkdownIt
    inline: Inline
    ranks: list[int]
    source: list[str]
    typed: Typed
    end_notes: bool
    passages: list[Passage] = field(default_factory=list)
    lists: list[int | str] = field(default_factory=list)
    items: list[int] = field(default_factory=list)
    quotes: int = 0
    mark: str = ""
    level: int = 0
    note: str = ""
    first: int = 1
    table: _Table | None = None
    apart: bool = False
    headed: bool = False
    strays: list[int] = field(default_factory=list)

    def take(self, token: Token) -> None:
        """Take the next token."""
        if token.nesting > 0 and token.level == 0 and self.passages:
            self.apart = self.passages[-1].inset > 0 and token.type in STANDING_IN
        match token.type:
            case "heading_open" | "heading_close":
                if token.nesting > 0:
                    outer = not token.level + len(self.note)
                    self.headed = outer and self.ranks.pop(0) <= Rank.CHAPTER
                    if self.headed and not self.end_notes:
                        self.end_chapter()
                self.level = int(token.tag[1:]) if token.nesting > 0 else 0
            case "blockquote_open" | "blockquote_close":
                self.quotes += token.nesting
            case "hr":
                self.passages.append(Passage("", Role.BREAK))
            case "fence" | "code_block":
                self._verbatim(token.content)
            case "html_block":
                self.inline.html.append(self._line(token))
            case "inline":
                self._inline(token)
            case str(kind) if kind == RUNNING_TITLE:
                self._running_title(token)
            case _:
                self._list(token)
                self._table(token)

    def end_chapter(self) -> None:
        """Add the notes that the chapter refers to; those to which they refer themselves come after them."""
        for figure, (text, line) in self.inline.notes.of_chapter():
            self.note = self.mark = f"{figure}."
            self.first = line
            for token in self.reader.parse(text):
                self.take(token)
        self.note, self.mark, self.first = "", "", 1

    def _running_title(self, token: Token) -> None:
        if self.headed and self.passages[-1].role is Role.HEADING and token.content:
            self.passages[-1] = self.passages[-1]._replace(short=token.content)
        else:
            self.strays.append(self._line(token))

    def _line(self, token: Token) -> int:
        """The line of the file where a token begins."""
        return self.first + (token.map or [0])[0]

    def _table(self, token: Token) -> None:
        match token.type:
            case "table_open":
                self.table = _Table(self._line(token))
            case "tr_open" if self.table:
                self.table.rows.append([])
            case "th_open" if self.table:
                self.table.sides += SIDES.get(str(token.attrGet("style")), "l")
            case "table_close" if self.table:
                self.passages.append(self.table.passage(self.quotes + len(self.lists)))
                self.table = None

    def _list(self, token: Token) -> None:
        match token.type:
            case "bullet_list_open":
                self.lists.append(DASHED if token.markup == "-" else BULLET)
            case "ordered_list_open":
                start = token.attrGet("start")
                self.lists.append(1 if start is None else int(start))
            case "bullet_list_close" | "ordered_list_close":
                self.lists.pop()
            case "list_item_open":
                self.mark = self._next_mark()
                self.items.append(self.quotes)
            case "list_item_close":
                self.mark = ""
                self.items.pop()

    def _next_mark(self) -> str:
        number = self.lists[-1]
        if isinstance(number, str):
            return number
        self.lists[-1] = number + 1
        return f"{number}."

    def _add(self, text: str, role: Role) -> None:
        if text:
            mark, self.mark = self.mark, ""
            if role is Role.BODY and (mark or self.note or self.items):
                within = mark or (self.items and self.items[-1] == self.quotes)
                role = Role.NOTE if self.note and not self.lists else Role.ITEM if within else role
            apart, self.apart = self.apart, False
            self.passages.append(Passage(text, role, self.level, self.quotes + len(self.lists), mark, apart=apart))

    def _verbatim(self, text: str) -> None:
        """Lines as they are, each of them one word that may be parted at its blanks; a blank line parts them."""
        for stanza in re.split(r"\n(?:[ \t]*\n)+", text.expandtabs(TAB).strip("\n")):
            lines = (line.rstrip().replace(" ", KEPT_BLANK) for line in stanza.split("\n"))
            self._add("\n".join(Style.TYPEWRITER + line for line in lines if line), Role.VERSE)

    def _inline(self, token: Token) -> None:
        children, line = token.children or [], self._line(token)
        place = "" if self.note else self.typed.placed.get(line - 1, "")
        if place:
            for child in children:
                child.type = "hardbreak" if child.type == "softbreak" else child.type
        stretches, plates = self.inline.stretches(children, line)
        if self.table:
            self.table.rows[-1].append(" ".join(words_of(stretches)))
            stretches = []
        lines = [" ".join(words_of(part)) for part in _split(stretches, "\n")]
        text = "\n".join(filter(None, lines))
        if self.level:
            self._add(text.replace("\n", " "), Role.HEADING)
        elif place:
            self.passages.append(Passage(text, Role.PLACED, mark=place))
        elif "\n" in text:
            begun = self.source[line - 1 :] if not (self.note or self.lists) else []
            indents = verse_indents(children, begun)
            verses = (indent + verse for indent, verse in zip(indents, lines, strict=True) if verse)
            self._add("\n".join(verses), Role.VERSE)
        else:
            self._add(text, Role.BODY)
        self.passages += plates


def _split(stretches: Sequence[Stretch], at: str) -> Iterator[list[Stretch]]:
    """The stretches between two of them that are `at`."""
    part: list[Stretch] = []
    for style, text in stretches:
        if text == at:
            yield part
            part = []
        else:
            part.append((style, text))
    yield part
