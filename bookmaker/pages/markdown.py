"""Markdown as passages: headings, paragraphs, verses, quotations, lists, tables, notes, breaks and plates.

What CommonMark calls a hard line break makes a verse of its paragraph. Tables are those of GitHub Flavored
Markdown. Notes stand at the end of their chapter. Nothing is fetched: pictures must lie beside the text. HTML is
left out, and said.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from markdown_it import MarkdownIt
from markdown_it.token import Token

from ..errors import Problem, Severity
from .fount import Style
from .indents import Typed, typed_indents, verse_indents
from .notes import REFERENCE, Notes, read_notes
from .passage import Passage, Role
from .ranks import OTHER, RUNNING_TEXT, Rank, ranks_of
from .unread import unread

__all__ = ["passages_of"]

BULLET = "\u2022"

REMOTE = re.compile(r"[a-z][a-z0-9+.-]*:|//", re.IGNORECASE)
"""Addresses that do not name a file beside the text."""

STANDING_IN = frozenset({"blockquote_open", "bullet_list_open", "ordered_list_open"})

SIDES = {"text-align:left": "l", "text-align:center": "c", "text-align:right": "r"}
"""How the reader says that a column is aligned."""

STYLES = {
    (False, False): Style.ROMAN,
    (True, False): Style.ITALIC,
    (False, True): Style.BOLD,
    (True, True): Style.BOLD_ITALIC,
}
"""By emphasis and strong emphasis."""


def passages_of(text: str, name: str) -> tuple[list[Passage], list[Problem]]:
    """The passages of a Markdown text, and what was left out of it."""
    reader = read_notes(MarkdownIt("commonmark").enable("table"))
    tokens = reader.parse(text)
    typed = typed_indents(text, tokens)
    if typed.text != text:
        tokens = reader.parse(typed.text)
    walk = _Walk(reader, Notes.of(tokens), _ranks(tokens), text.split("\n"), typed)
    for token in tokens:
        walk.take(token)
    walk.end_chapter()
    return walk.passages, [*walk.said(name), *unread(tokens, name), *typed.said(name)]


def _ranks(tokens: Sequence[Token]) -> list[int]:
    """The rank of each heading that stands in no list and no quotation."""
    outer = [token for token in tokens if token.level == 0 and token.nesting > 0]
    kinds = [
        int(token.tag[1:]) if token.type == "heading_open" else RUNNING_TEXT if token.tag == "p" else OTHER
        for token in outer
    ]
    return list(ranks_of(kinds)[0].values())


@dataclass
class _Walk:
    """Goes through the tokens in order, and keeps what it stands in."""

    reader: MarkdownIt
    notes: Notes
    ranks: list[int]
    source: list[str]
    typed: Typed
    passages: list[Passage] = field(default_factory=list)
    html: list[int] = field(default_factory=list)
    remote: list[str] = field(default_factory=list)
    links: int = 0
    lists: list[int | None] = field(default_factory=list)
    items: list[int] = field(default_factory=list)
    quotes: int = 0
    mark: str = ""
    level: int = 0
    note: str = ""
    table: list[list[str]] | None = None
    sides: str = ""
    apart: bool = False
    begun: int = 0

    def take(self, token: Token) -> None:
        """Take the next token."""
        if token.nesting > 0 and token.level == 0 and self.passages:
            self.apart = self.passages[-1].inset > 0 and token.type in STANDING_IN
        match token.type:
            case "heading_open" | "heading_close":
                if token.nesting > 0 and not token.level + len(self.note) and self.ranks.pop(0) <= Rank.CHAPTER:
                    self.end_chapter()
                self.level = int(token.tag[1:]) if token.nesting > 0 else 0
            case "blockquote_open" | "blockquote_close":
                self.quotes += token.nesting
            case "hr":
                self.passages.append(Passage("", Role.BREAK))
            case "fence" | "code_block":
                self._verbatim(token.content)
            case "html_block":
                self.html.append((token.map or [0])[0] + 1)
            case "inline":
                self._inline(token)
            case _:
                self._list(token)
                self._table(token)

    def end_chapter(self) -> None:
        """Add the notes that the chapter refers to; those to which they refer themselves come after them."""
        place = 0
        while place < len(self.notes.figures):
            name, figure = list(self.notes.figures.items())[place]
            self.note = self.mark = f"{figure}."
            for token in self.reader.parse(self.notes.written[name].text):
                self.take(token)
            self.note = self.mark = ""
            place += 1
        self.notes.figures.clear()

    def _table(self, token: Token) -> None:
        match token.type:
            case "table_open":
                self.table, self.sides = [], ""
                self.begun = (token.map or [0])[0] + 1
            case "tr_open" if self.table is not None:
                self.table.append([])
            case "th_open":
                self.sides += SIDES.get(str(token.attrGet("style")), "l")
            case "table_close" if self.table:
                rows, self.table = self.table, None
                text = "\n".join("\t".join(row) for row in rows)
                inset = self.quotes + len(self.lists)
                self.passages.append(Passage(text, Role.TABLE, inset=inset, mark=self.sides, line=self.begun))

    def _list(self, token: Token) -> None:
        match token.type:
            case "bullet_list_open":
                self.lists.append(None)
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

    def said(self, name: str) -> Iterator[Problem]:
        """What was left out."""
        if self.html:
            where = f"the first is in line {self.html[0]}"
            yield _left_out(f"{name} has raw HTML, left out; {where}")
        for address in dict.fromkeys(self.remote):
            yield _left_out(
                f"{name} names the picture {address[:60]}, left out: nothing is fetched",
                "save it beside the text and write its name",
            )
        yield from self.notes.said(name)
        if self.links:
            some = "1 link" if self.links == 1 else f"{self.links} links"
            yield Problem(f"{name} has {some}, set without addresses", severity=Severity.NOTE, field=("file",))

    def _next_mark(self) -> str:
        number = self.lists[-1]
        if number is None:
            return BULLET
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
        lines = [" ".join(Style.TYPEWRITER + word for word in line.split()) for line in text.split("\n")]
        self._add("\n".join(line for line in lines if line), Role.VERSE)

    def _inline(self, token: Token) -> None:
        line = (token.map or [0])[0] + 1
        place = "" if self.note else self.typed.placed.get(line - 1, "")
        signs, plates = self._signs(token.children or (), line, ends="\n" if place else " ")
        if self.table:
            self.table[-1].append(" ".join(_words(signs)))
            signs = []
        lines = [" ".join(_words(part)) for part in _split(signs, "\n")]
        text = "\n".join(filter(None, lines))
        if self.level:
            self._add(text.replace("\n", " "), Role.HEADING)
        elif place:
            self.passages.append(Passage(text, Role.PLACED, mark=place))
        elif "\n" in text:
            begun = self.source[line - 1 :] if not (self.note or self.lists) else []
            indents = verse_indents(token.children or (), begun)
            verses = (indent + verse for indent, verse in zip(indents, lines, strict=True) if verse)
            self._add("\n".join(verses), Role.VERSE)
        else:
            self._add(text, Role.BODY)
        for source, caption in plates:
            self.passages.append(Passage(caption, Role.PLATE, mark=source))

    def _signs(
        self, tokens: Sequence[Token], line: int, ends: str = " "
    ) -> tuple[list[tuple[Style, str]], list[tuple[str, str]]]:
        """Stretches of text, each in one style, and the pictures between them; `ends` stands for ends of lines."""
        signs: list[tuple[Style, str]] = []
        plates: list[tuple[str, str]] = []
        emphasis = strong = 0
        for token in tokens:
            style = STYLES[emphasis > 0, strong > 0]
            match token.type:
                case "em_open" | "em_close":
                    emphasis += token.nesting
                case "strong_open" | "strong_close":
                    strong += token.nesting
                case "text":
                    signs.append((style, token.content.replace("\n", " ")))
                case "code_inline":
                    signs.append((Style.TYPEWRITER, token.content))
                case "softbreak":
                    signs.append((style, ends))
                case "hardbreak":
                    signs.append((style, "\n"))
                case str(kind) if kind == REFERENCE:
                    _refer(signs, self.notes.figure(token.meta["name"], line))
                case "html_inline":
                    self.html.append(line)
                case "link_open":
                    self.links += 1
                case "image":
                    self._picture(token, plates)
        return signs, plates

    def _picture(self, token: Token, plates: list[tuple[str, str]]) -> None:
        source = str(token.attrGet("src") or "")
        if REMOTE.match(source):
            self.remote.append(source)
        else:
            title = str(token.attrGet("title") or "")
            described, _ = self._signs(token.children or (), 0)
            plates.append((source, " ".join(title.split() or _words(described))))


def _refer(signs: list[tuple[Style, str]], figure: str) -> None:
    """Add the figure of a note, close to the word before it."""
    if signs and figure:
        style, text = signs[-1]
        signs[-1] = (style, text.rstrip(" "))
    if figure:
        signs.append((Style.SUPERIOR, figure))


def _left_out(message: str, remedy: str = "") -> Problem:
    return Problem(message, remedy, Severity.WARNING, field=("file",))


def _split(signs: Sequence[tuple[Style, str]], at: str) -> Iterator[list[tuple[Style, str]]]:
    """The stretches between two signs that are `at`."""
    part: list[tuple[Style, str]] = []
    for style, text in signs:
        if text == at:
            yield part
            part = []
        else:
            part.append((style, text))
    yield part


def _words(signs: Sequence[tuple[Style, str]]) -> Iterator[str]:
    """Words as a fount knows them: each with the signs of its styles."""
    word, style = "", Style.ROMAN
    for wanted, text in signs:
        for part in re.split(r"([^\S\u00a0\u2007\u202f]+)", text):
            if part and part.isspace() and part.strip("\u00a0\u2007\u202f"):
                if word:
                    yield word
                word, style = "", Style.ROMAN
            elif part:
                word += part if wanted is style else wanted + part
                style = wanted
    if word:
        yield word
