"""Signs that mean something to YAML within a text: quotation marks, #, and the comma between braces."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from ...ground.problems import Place, Problem

__all__ = ["AFTER_COMMA", "COMMA_ENDS", "Slip", "as_note", "cut_short", "in_quotes", "quoted", "written_from"]

AFTER_COMMA = re.compile(r"\d+ ?(?:mm|cm|in|um|µm|pt|mil)$")
"""What is left of a length behind its decimal comma."""

COMMA_ENDS = "between braces a comma ends a value"

CUT_SHORT = re.compile(r"\s+(#\S.*)")
"""A # right before a word: meant as part of the value, as in a colour or a number, for a note has a blank there."""

NEXT_KEY = r", *[a-z_]+:(?: |$)"
END_OF_GROUPS = r"[\]}]*,? *$"
BETWEEN_BRACES = re.compile(rf".*?(?= *(?:{NEXT_KEY}|{END_OF_GROUPS}))")
"""A value up to the next key of its group, or to the end of the group or of the line."""

ON_ITS_LINE = re.compile(r".*?(?= *(?: # .*)?$)")
"""A value up to a note or the end of the line."""

OPENED = re.compile(r"(?:[:-] +|^ *)[\[{]")
"""A group between braces, or a list, that begins before a value."""


@dataclass(frozen=True, slots=True)
class Slip:
    """What may be mistyped on line `at`, from 0, in a column from 0, and the line as it was probably meant."""

    at: int
    column: int
    meant: str
    problem: Problem


def written_from(source: str, column: int) -> str:
    """The text of a value that begins in a column of its line, marks and all.

    >>> written_from("  - title: 'Tis  # mine", 11), written_from("{title: &Sons, pages: 4}", 8)
    ("'Tis", '&Sons')
    """
    form = BETWEEN_BRACES if OPENED.search(source[:column]) else ON_ITS_LINE
    found = form.match(source, column)
    return found[0] if found else ""


def quoted(text: str) -> str:
    r"""A text between quotation marks that keep all signs in it.

    >>> quoted("Don't"), quoted('Don\'t "stop"')
    ('"Don\'t"', '\'Don\'\'t "stop"\'')
    """
    if '"' in text or "\\" in text:
        return "'" + text.replace("'", "''") + "'"
    return f'"{text}"'


def in_quotes(text: str) -> str:
    """What to write of a text whose signs mean something: an apostrophe is doubled between single quotes.

    >>> in_quotes('A "Short" Walk')
    'put the whole text in single quotes: \\'A "Short" Walk\\''
    """
    safe = quoted(text)
    if safe.startswith('"'):
        return f"put the whole text in double quotes: {safe}"
    doubled = ", with each apostrophe twice" if "'" in text else ""
    return f"put the whole text in single quotes{doubled}: {safe}"


def as_note(value: str, lost: str, *, in_braces: bool) -> Problem:
    """What is wrong where a value ends because a # turns the rest of it into a note."""
    meant = re.split(r"[],}]" if in_braces else r"\s+# ", lost)[0].strip()
    whole = f"{value} {meant}".strip().strip("\"'")
    what = f"from {lost.split(maxsplit=1)[0]} on this is a note to yourself, "
    what += f"only {value!r} is left" if value else "no value is left"
    return Problem(what, f"put the value in quotes, as {quoted(whole)}; a note has a blank after the #")


def cut_short(value: str, end: Place) -> Problem | None:
    """What is wrong where a value ends and a # without a blank after it turns the rest of it into a note."""
    lost = CUT_SHORT.match(end.source, end.column - 1)
    if not lost:
        return None
    problem = as_note(value, lost[1], in_braces=bool(set("{[") & set(end.source)))
    return problem.at(replace(end, column=lost.start(1) + 1))
