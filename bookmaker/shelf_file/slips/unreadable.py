"""Where a text stops being YAML: what was mistyped there or above, in the words of makers.

The reader of YAML notices a slip late, often lines below. So lines are looked over from there upwards for what may be
mistyped in them; what is told is the first with which, once it is mended, the text reads on.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from ruamel.yaml.error import MarkedYAMLError, YAMLError

from ...ground.problems import Place, Problem, ShelfFileError
from ..yaml_nodes import read_nodes
from .lines import NOTHING, mistyped_lines
from .marks import Slip
from .values import mistyped_values

__all__ = ["syntax_error"]

NOT_CLOSED = "while scanning a quoted scalar found unexpected end of stream"
"""What is said of a quotation mark that nothing closes, or only one that stands where it cannot."""

OWN_LINES = 'put the keys of this group on lines of their own, or write "…\\n…" in double quotes'
"""For text of several lines that begins within braces."""

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

MOST_LINES = 60
"""So many lines above the end of reading are looked over."""

ITEM = re.compile(r"( *)- ")

SECTION = re.compile(r"[^\s#-]")
"""How a line of the whole text begins."""


def syntax_error(trouble: MarkedYAMLError, lines: Sequence[str], place: Callable[[int, int], Place]) -> ShelfFileError:
    """What is wrong where a text stopped being YAML; `place` tells places by line and column, from 0."""
    said = " ".join(str(part) for part in (trouble.context, trouble.problem) if part)
    opened = trouble.context_mark if NOT_CLOSED in said else None  # read on to the end of the text
    mark = opened or trouble.problem_mark or trouble.context_mark
    if mark and (slip := _proven(lines, mark.line)):
        return ShelfFileError((slip.problem.at(place(slip.at, slip.column)),))
    usual = f"this line is not YAML ({said})", "indent keys of one group alike, and put text with : or # in quotes"
    what, remedy = next((words for sign, words in SLIPS.items() if sign in said), usual)
    return ShelfFileError((Problem(what, remedy, place=place(mark.line, mark.column) if mark else place(0, 0)),))


def _proven(lines: Sequence[str], ended: int) -> Slip | None:
    """The slip nearest above the line where reading ended with which, mended, the text reads past that line."""
    numbers = _around(lines, ended)
    part = [lines[number] for number in numbers]
    there = numbers.index(ended) if ended in numbers else len(numbers)
    for past in (there + 1, there):  # the line below may hold a slip of its own
        for at in range(min(there, len(part) - 1), -1, -1):
            for slip in _slips(part, at):
                if _reads_past(past, [*part[: slip.at], slip.meant, *part[slip.at + 1 :]]):
                    return replace(slip, at=numbers[slip.at])
    return None


def _around(lines: Sequence[str], ended: int) -> Sequence[int]:
    """The lines that matter where reading ended: of the item above, the key it stands under, and one line more."""
    first = max(ended - MOST_LINES, 0)
    section = next((at for at in range(ended - 1, -1, -1) if SECTION.match(lines[at])), 0)
    dashes = {
        at: len(found[1]) for at in range(ended - 1, max(first, section) - 1, -1) if (found := ITEM.match(lines[at]))
    }
    outer = min(dashes.values(), default=0)
    begin = next((at for at, dash in dashes.items() if dash == outer), section)
    return sorted({section, *range(max(begin, first), min(ended + 2, len(lines)))})


def _slips(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """What may be mistyped in a line; what is written as a text may hold all signs, so that is tried first."""
    if not NOTHING.match(lines[at]):
        yield from mistyped_values(lines[at], at, texts=True)
        yield from mistyped_lines(lines, at)
        yield from mistyped_values(lines[at], at, texts=False)


def _reads_past(line: int, lines: Sequence[str]) -> bool:
    """Whether the lines are YAML, or stop being it only behind one of them."""
    try:
        read_nodes("".join(f"{line}\n" for line in lines))
    except MarkedYAMLError as trouble:
        mark = trouble.problem_mark or trouble.context_mark
        return NOT_CLOSED not in str(trouble) and mark is not None and mark.line > line
    except (YAMLError, RecursionError, ValueError):
        return False
    return True
