"""Markdown as passages: headings, paragraphs, verses, quotations, lists, breaks and plates.

What CommonMark calls a hard line break makes a verse of its paragraph. Nothing is fetched: pictures must lie
beside the text. HTML is left out, and said.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from urllib.parse import unquote

from markdown_it import MarkdownIt
from markdown_it.token import Token

from ..errors import Problem, Severity
from .fount import Style
from .passage import Passage, Role

__all__ = ["emphasised", "passages_of"]

BULLET = "\u2022"

REMOTE = re.compile(r"[a-z][a-z0-9+.-]*:|//", re.IGNORECASE)
"""Addresses that do not name a file beside the text."""

STYLES = {
    (False, False): Style.ROMAN,
    (True, False): Style.ITALIC,
    (False, True): Style.BOLD,
    (True, True): Style.BOLD_ITALIC,
}
"""By emphasis and strong emphasis."""


def passages_of(text: str, name: str) -> tuple[list[Passage], list[Problem]]:
    """The passages of a Markdown text, and what was left out of it."""
    walk = _Walk()
    for token in MarkdownIt("commonmark").parse(text):
        walk.take(token)
    return walk.passages, list(walk.said(name))


def emphasised(text: str) -> list[str]:
    """Lines that are no Markdown but for the asterisks of their emphasis, as a fount knows them.

    >>> emphasised("for *all\\nwho* wait")
    ['for \\x01all', '\\x01who wait']
    """
    broken = "\\\n".join(line.rstrip("\\") for line in text.split("\n"))
    [token] = MarkdownIt("zero").enable(["emphasis", "escape"]).parseInline(broken)
    signs, _ = _Walk()._signs(token.children or (), 1)
    return [" ".join(_words(part)) for part in _split(signs, "\n")]


@dataclass
class _Walk:
    """Goes through the tokens in order, and keeps what it stands in."""

    passages: list[Passage] = field(default_factory=list)
    html: list[int] = field(default_factory=list)
    remote: list[tuple[str, int]] = field(default_factory=list)
    nameless: list[int] = field(default_factory=list)
    links: int = 0
    lists: list[int | None] = field(default_factory=list)
    quotes: int = 0
    mark: str = ""
    level: int = 0

    def take(self, token: Token) -> None:
        """Take the next token."""
        match token.type:
            case "heading_open" | "heading_close":
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
            case "list_item_close":
                self.mark = ""

    def said(self, name: str) -> Iterator[Problem]:
        """What was left out."""
        if self.html:
            yield _left_out(f"{name} has raw HTML in {_lines(self.html)}, left out")
        if self.nameless:
            remedy = "write ![](wreck.png), with the name of a file beside the text"
            yield _left_out(f"{name} names no file for the picture in {_lines(self.nameless)}, left out", remedy)
        if self.remote:
            yield _remote(name, dict(reversed(self.remote)))
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
            role = Role.ITEM if mark and role is Role.BODY else role
            self.passages.append(Passage(text, role, self.level, self.quotes + len(self.lists), mark))

    def _verbatim(self, text: str) -> None:
        lines = [" ".join(Style.TYPEWRITER + word for word in line.split()) for line in text.split("\n")]
        self._add("\n".join(line for line in lines if line), Role.VERSE)

    def _inline(self, token: Token) -> None:
        line = (token.map or [0])[0] + 1
        signs, plates = self._signs(token.children or (), line)
        lines = [" ".join(_words(part)) for part in _split(signs, "\n")]
        lines = [part for part in lines if part]
        if self.level:
            self._add(" ".join(lines), Role.HEADING)
        else:
            self._add("\n".join(lines), Role.VERSE if len(lines) > 1 else Role.BODY)
        self.passages += plates

    def _signs(self, tokens: Sequence[Token], line: int) -> tuple[list[tuple[Style, str]], list[Passage]]:
        """Stretches of text, each in one style, and the pictures between them; `line` is that of the first token."""
        signs: list[tuple[Style, str]] = []
        plates: list[Passage] = []
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
                    line += 1
                    signs.append((style, " "))
                case "hardbreak":
                    line += 1
                    signs.append((style, "\n"))
                case "html_inline":
                    self.html.append(line)
                case "link_open":
                    self.links += 1
                case "image":
                    self._picture(token, plates, line)
        return signs, plates

    def _picture(self, token: Token, plates: list[Passage], line: int) -> None:
        source = unquote(str(token.attrGet("src") or ""))  # the reader writes it as an address
        if not source:
            self.nameless.append(line)
        elif REMOTE.match(source):
            self.remote.append((source, line))
        else:
            title = " ".join(str(token.attrGet("title") or "").split())
            plates.append(Passage(title, Role.PLATE, mark=source, line=line))


def _lines(lines: Sequence[int]) -> str:
    """Lines of a text as a message names them.

    >>> _lines([3]), _lines([3, 3, 8])
    ('line 3', '2 lines, the first is line 3')
    """
    different = len(set(lines))
    return f"line {lines[0]}" if different == 1 else f"{different} lines, the first is line {min(lines)}"


def _remote(name: str, lines: Mapping[str, int]) -> Problem:
    """Pictures that lie elsewhere, by their addresses, each with the first line that names it."""
    first = min(lines, key=lambda address: lines[address])
    one = f"{first[:60]} in line {lines[first]}"
    if len(lines) == 1:
        remedy = "save it beside the text and write its name"
        return _left_out(f"{name} names the picture {one}, left out: nothing is fetched", remedy)
    said = f"{name} names {len(lines)} pictures that do not lie beside it, left out: nothing is fetched"
    return _left_out(f"{said}; the first is {one}", "save them beside the text and write their names")


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
