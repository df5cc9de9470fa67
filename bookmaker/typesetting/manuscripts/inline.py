"""What stands inside the paragraphs of a Markdown text: stretches in their styles, figures of notes, pictures.

Nothing is fetched: pictures must lie beside the text. HTML is left out, and said.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING
from urllib.parse import unquote

from ...ground.problems import Problem, Severity
from ..lines.fount import Style
from ..lines.ideographs import joins_lines
from .notes import REFERENCE, Notes
from .passage import Passage, Role

if TYPE_CHECKING:
    from markdown_it.token import Token

__all__ = ["Inline", "Stretch", "words_of"]

REMOTE = re.compile(r"[a-z][a-z0-9+.-]*:|//", re.IGNORECASE)
"""Addresses that do not name a file beside the text."""

BLANKS = re.compile(r"[^\S\u00a0\u2007\u202f]+")
"""What parts words: not a blank that keeps them together."""

STYLES = {
    (False, False): Style.ROMAN,
    (True, False): Style.ITALIC,
    (False, True): Style.BOLD,
    (True, True): Style.BOLD_ITALIC,
}
"""By emphasis and strong emphasis."""

SOFT_BREAK = "\v"
"""Where a line ends as it was typed, as long as nobody knows what stands on both sides."""

Stretch = tuple[Style, str]
"""Text in one style; a line that the author ended is a stretch of its own, a line feed."""


@dataclass
class Inline:
    """Reads paragraphs, and keeps what was left out of them: HTML, pictures, the addresses of links."""

    notes: Notes
    html: list[int] = field(default_factory=list)
    remote: list[tuple[str, int]] = field(default_factory=list)
    nameless: list[int] = field(default_factory=list)
    links: int = 0

    def stretches(self, tokens: Sequence[Token], line: int) -> tuple[list[Stretch], list[Passage]]:
        """Stretches of text, each in one style, and the pictures between them; `line` is where they begin."""
        stretches: list[Stretch] = []
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
                    stretches.append((style, token.content.replace("\n", " ")))
                case "code_inline":
                    stretches.append((Style.TYPEWRITER, token.content))
                case "softbreak":
                    line += 1
                    stretches.append((style, SOFT_BREAK))
                case "hardbreak":
                    line += 1
                    stretches.append((style, "\n"))
                case str(kind) if kind == REFERENCE:
                    _refer(stretches, self.notes.figure(token.meta["name"], line))
                case "html_inline":
                    self.html.append(line)
                case "link_open":
                    self.links += 1
                case "image":
                    self._picture(token, plates, line)
        return _softly_joined(stretches), plates

    def said(self, name: str) -> Iterator[Problem]:
        """What was left out."""
        if self.html:
            yield _left_out(f"{name} has raw HTML in {_lines(self.html)}, left out")
        if self.nameless:
            remedy = "write ![](wreck.png), with the name of a file beside the text"
            yield _left_out(f"{name} names no file for the picture in {_lines(self.nameless)}, left out", remedy)
        if self.remote:
            yield _remote(name, dict(reversed(self.remote)))
        yield from self.notes.said(name)
        if self.links:
            some = "1 link" if self.links == 1 else f"{self.links} links"
            yield Problem(f"{name} has {some}, set without addresses", severity=Severity.NOTE, field=("file",))

    def _picture(self, token: Token, plates: list[Passage], line: int) -> None:
        source = unquote(str(token.attrGet("src") or ""))  # the reader writes it as an address
        if not source:
            self.nameless.append(line)
        elif REMOTE.match(source):
            self.remote.append((source, line))
        else:
            title = str(token.attrGet("title") or "")
            described, _ = self.stretches(token.children or (), line)
            caption = " ".join(title.split() or words_of(described))
            plates.append(Passage(caption, Role.PLATE, mark=source, line=line))


def words_of(stretches: Sequence[Stretch]) -> list[str]:
    """Words as a fount knows them: each with the signs of its styles."""
    words, word, style = list[str](), "", Style.ROMAN
    for wanted, text in stretches:
        begun, *others = BLANKS.split(text)
        if begun:
            word += begun if wanted is style else wanted + begun
            style = wanted
        if others:
            sign = "" if wanted is Style.ROMAN else wanted
            *between, last = others
            words += [word] if word else []
            words += [sign + whole for whole in between]
            word, style = (sign + last, wanted) if last else ("", Style.ROMAN)
    return [*words, word] if word else words


def _softly_joined(stretches: list[Stretch]) -> list[Stretch]:
    """Lines joined by blanks, but for scripts that have none."""
    for place, (style, text) in enumerate(stretches):
        if text == SOFT_BREAK:
            before, after = ((stretches[at : at + 1] or [(style, "")])[0][1] for at in (max(0, place - 1), place + 1))
            stretches[place] = (style, "" if joins_lines(before[-1:], after[:1]) else " ")
    return stretches


def _refer(stretches: list[Stretch], figure: str) -> None:
    """Add the figure of a note, close to the word before it."""
    if stretches and figure:
        style, text = stretches[-1]
        stretches[-1] = (style, text.rstrip(" " + SOFT_BREAK))
    if figure:
        stretches.append((Style.SUPERIOR, figure))


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
