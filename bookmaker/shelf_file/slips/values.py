"""Values whose own signs mean something to YAML: what is wrong with each, and the line with the value in quotes."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...ground.problems import Problem
from .marks import Slip, as_note, in_quotes, quoted, written_from

__all__ = ["TEXTS", "mistyped_values", "wrong_sign"]

TEXTS = ("title", "author", "text", "subtitle", "shelf")
"""Keys whose values are words, which a comma or a colon does not end for their maker."""

QUOTES = ("'", '"')

KEY = re.compile(r"(?:^ *(?:- +)*|[{,] *)(?P<key>[\w-]+(?: [\w-]+)*): +(?=\S)")
"""A key with its colon and blank, up to its value."""

ITEM = re.compile(r" *(?:- +)+(?=\S)")
"""The dash of an item, up to what it holds."""

WRONG_SIGNS = {
    "!": "names a kind of value",
    "&": "gives the value a name",
    "*": "repeats what an & has named",
    "@": "is kept for later",
    "`": "is kept for later",
    "%": "is kept for later",
    "?": "begins a key",
    "|": "announces lines of text below",
    ">": "announces lines of text below",
    ",": "ends a value",
    "]": "ends a list",
    "}": "ends a group",
}
"""Signs that no plain text can begin with, and what they do."""


def mistyped_values(source: str, at: int, *, texts: bool) -> Iterator[Slip]:
    """Values of the line that may be meant as text: those of keys that hold words or in quotes, or the others."""
    begun = [(found.end(), found["key"]) for found in KEY.finditer(source)]
    if not begun and (item := ITEM.match(source)):
        begun = [(item.end(), "")]
    for column, key in begun:
        value = written_from(source, column)
        if texts != (key in TEXTS or value[:1] in QUOTES):
            continue
        if found := _mistyped(value, key):
            text, problem = found
            meant = source[:column] + quoted(text) + source[column + len(value) :]
            yield Slip(at, column, meant, problem)


def _mistyped(value: str, key: str) -> tuple[str, Problem] | None:
    """The text that was meant with a value, and what is wrong with it as it stands; None if it may stand so."""
    mark, rest = value[:1], value[1:]
    if mark in QUOTES:
        return _closed_early(value, mark) if mark in rest else _not_closed(mark, rest)
    if mark in ("[", "{") and (key not in TEXTS or re.search(r": |[|>]-?$", rest)):
        return None
    if mark == "#" or " #" in value:
        kept, _, lost = value.partition("#")
        return value.strip("\"'"), as_note(kept.strip(), f"#{lost}", in_braces=False)
    problem = wrong_sign(value) if mark in WRONG_SIGNS else _wrong_text(value)
    return (value, problem) if problem and (rest or mark not in "|>") else None


def _wrong_text(value: str) -> Problem | None:
    """What is said of other texts that cannot stand without quotes."""
    for form, what in (
        (r"^[\[{]", "a text cannot begin with a bracket, which begins a list or a group"),
        (r"^-(?: |$)", "a text that begins with a dash is read as a list"),
        (r":(?: |$)", "a colon with a blank after it ends a key"),
        (r"[],{}[]", "a comma or a bracket ends a value between braces"),
    ):
        if re.search(form, value):
            return Problem(what, in_quotes(value))
    return None


def wrong_sign(value: str) -> Problem:
    """What is said of a text that begins with a sign which means something to YAML."""
    sign = value[0]
    on_next = ", or begin it on the next line, further in" if sign in "|>" else ""
    return Problem(f"a text cannot begin with {sign}, which {WRONG_SIGNS[sign]}", in_quotes(value) + on_next)


def _not_closed(mark: str, rest: str) -> tuple[str, Problem]:
    if mark == '"':
        what = "the quotation mark at the beginning is not closed"
        return rest, Problem(what, f"write the same mark at the end: {mark}{rest}{mark}")
    text = mark + rest
    remedy = f"{in_quotes(text)}; or, if it is no apostrophe, write the same mark at the end"
    return text, Problem("the ' at the beginning is a quotation mark, and it is not closed", remedy)


def _closed_early(value: str, mark: str) -> tuple[str, Problem] | None:
    """What is wrong if the text between the first mark and its like is not all."""
    closed = re.match(r"'(?:[^']|'')*'|\"(?:[^\"\\]|\\.)*\"", value)
    if closed and closed.end() == len(value):
        return None
    inner = value[1:-1]
    if not value.endswith(mark) or re.fullmatch(rf"[^{mark}]*\S{mark} .*? {mark}\S[^{mark}]*", inner):
        words = "the quotation mark after the first words ends the text"
        return value, Problem(words, in_quotes(value))
    if mark == "'":
        words = "the apostrophe ends the text, for single quotes stand around it"
        return inner, Problem(words, in_quotes(inner))
    return inner, Problem("there are quotation marks within quotation marks", in_quotes(inner))
