"""What is often mistyped in YAML, told in the words of makers."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from ruamel.yaml.error import MarkedYAMLError

from ..ground.problems import Place, Problem, ShelfFileError

__all__ = ["AFTER_COMMA", "COMMA_ENDS", "cut_short", "syntax_error"]

AFTER_COMMA = re.compile(r"\d+ ?(?:mm|cm|in|um|µm|pt|mil)$")
"""What is left of a length behind its decimal comma."""

COMMA_ENDS = "between braces a comma ends a value"

OWN_LINES = 'put the keys of this group on lines of their own, or write "…\\n…" in double quotes'
"""For text of several lines that begins within braces."""

DASH = re.compile(r"( *)-(\w+):(?: |$)")
"""An item of a list whose dash has become a part of the key."""

QUOTED_PARTS = re.compile(r': ("[^"\n,{}]*[^"\n,{}\s]" [^"\n,{}]*"[^"\n,{}]+")$')
"""A text that is not in quotes itself but begins and ends with parts that are."""

QUOTES_WITHIN = re.compile(r': "([^"\n,{}]*"[^"\n,{}]+"[^"\n,{}]*)"$')
"""A text in double quotes that has more of them within."""

APOSTROPHE = re.compile(r": '([^'\n,{}]*'[^'\n,{}\]]+)'$")
"""A text in single quotes that has an apostrophe within."""

COLON_WITHIN = re.compile(r"\b(?:title|author|text): ([^\"'\n{}]+: [^\"\n{}]+)$")
"""A text with a colon and a blank in it."""

ITEM_OR_TEXT = re.compile(r": (- [^\n]+)$")
"""A text that begins like an item of a list."""

SLIPS = {
    "expected ',' or '}'": ("a { is not closed, or a comma is missing", "put commas between the keys and } at the end"),
    "expected ',' or ']'": ("a [ is not closed, or a comma is missing", "put commas between items and ] at the end"),
    "expected <block end>": (
        "this line does not stand under the lines of its group",
        "indent all keys of one group by the same number of spaces",
    ),
    "unknown escape character": (
        "a \\ in double quotes is the beginning of a sign",
        "write / in paths, put the text in single quotes, or write \\\\ for each \\",
    ),
    "found character '\\t'": ("the line is indented with a tab", "indent with spaces"),
    "found character '|'": ("a | cannot stand between { and } or [ and ]", OWN_LINES),
    "found character '>'": ("a > cannot stand between { and } or [ and ]", OWN_LINES),
    "while scanning a block scalar": (
        "text after | or > begins on the next line",
        "begin the text on the next line, further in, or put it in quotes",
    ),
    "found character": ("a word begins with a sign that means something to YAML", "put the text in quotes"),
    "mapping values are not allowed": (
        "a colon stands where no key can",
        "put text that holds a colon in quotes, and indent all keys of one group alike",
    ),
    "could not find expected ':'": ("a key has no colon after it", "write key: value"),
    "found undefined alias": ("a * repeats something that no & has named", "put text that begins with * in quotes"),
    "expected a single document": ("--- begins a second shelf", "keep one shelf in a file"),
    "expected the node content": ("a value is missing", "write a value after the colon"),
    "while scanning a quoted scalar": ("a quotation mark is not closed", "put the same mark at the end of the text"),
}
"""Usual slips, told by a part of what the YAML reader says, in the words of makers."""

CUT_SHORT = re.compile(r"\s+(#\S.*)")
"""A # right before a word: meant as part of the value, as in a colour or a number, for a note has a blank there."""


def syntax_error(trouble: MarkedYAMLError, place: Callable[[int, int], Place]) -> ShelfFileError:
    """What is wrong where a text stopped being YAML; `place` tells places by line and column, from 0."""
    mark = trouble.problem_mark or trouble.context_mark
    said = " ".join(str(part) for part in (trouble.context, trouble.problem) if part)
    where = place(mark.line, mark.column) if mark else place(0, 0)
    if mark and "flow" in said:
        lines = [place(line, 0) for line in range(mark.line, -1, -1)]
        if lost := next(filter(None, map(_cut_short_in, lines)), None):
            return ShelfFileError((lost,))
    usual = f"this line is not YAML ({said})", "indent keys of one group alike, and put text with : or # in quotes"
    what, remedy = next((words for sign, words in SLIPS.items() if sign in said), usual)
    if mark and (slip := _typed_slip(place, mark.line)):
        return ShelfFileError((slip,))
    return ShelfFileError((Problem(what, remedy, place=where),))


def _typed_slip(place: Callable[[int, int], Place], line: int) -> Problem | None:
    """What is often mistyped on the line where reading ended, or on the one before."""
    for at in (line, line - 1) if line else (line,):
        where = place(at, 0)
        if dash := DASH.match(where.source):
            column = len(dash[1]) + 1
            remedy = f"write - {dash[2]}: with a blank after the dash"
            return Problem(
                f"the dash before {dash[2]} has no blank after it", remedy, place=replace(where, column=column)
            )
        for slip, what, in_quotes in (
            (QUOTED_PARTS, "the quotation mark after the first words ends the text", _in_single_quotes),
            (QUOTES_WITHIN, "there are quotation marks within quotation marks", _in_single_quotes),
            (APOSTROPHE, "the apostrophe ends the text, for single quotes stand around it", _in_double_quotes),
            (COLON_WITHIN, "a colon with a blank after it ends a key", _in_double_quotes),
            (ITEM_OR_TEXT, "a text that begins with a dash is read as a list", _in_double_quotes),
        ):
            if found := slip.search(where.source):
                place_of_it = replace(where, column=found.start(1))
                return Problem(what, f"put the whole text in {in_quotes(found[1])}", place=place_of_it)
    return None


def _in_single_quotes(text: str) -> str:
    r"""What to write of a text with quotation marks in it: an apostrophe is doubled there.

    >>> _in_single_quotes('Don\'t "stop"')
    'single quotes, with each apostrophe twice: \'Don\'\'t "stop"\''
    """
    doubled = text.replace("'", "''")
    return f"single quotes{', with each apostrophe twice' if doubled != text else ''}: '{doubled}'"


def _in_double_quotes(text: str) -> str:
    return f'double quotes: "{text}"'


def cut_short(value: str, end: Place) -> Problem | None:
    """What is wrong where a value ends and a # without a blank after it turns the rest of it into a note."""
    lost = CUT_SHORT.match(end.source, end.column - 1)
    if not lost:
        return None
    meant = re.split(r"[],}]" if set("{[") & set(end.source) else r"\s+# ", lost[1])[0].strip()
    what = f"from {lost[1].split()[0]} on this is a note to yourself, "
    what += f"only {value!r} is left" if value else "no value is left"
    remedy = f'put the value in quotes, as "{f"{value} {meant}".strip()}"; a note has a blank after the #'
    return Problem(what, remedy, place=replace(end, column=lost.start(1) + 1))


def _cut_short_in(line: Place) -> Problem | None:
    """The same for a line that could not be read because of it: its first value that begins with a #."""
    begun = re.search(r"[:,[{](?=\s+#\S)", line.source)
    return cut_short("", replace(line, column=begun.end() + 1)) if begun else None
