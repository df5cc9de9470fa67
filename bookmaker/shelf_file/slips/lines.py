"""Lines that are not built as YAML wants them: dashes, colons, commas, brackets, blanks before the first word."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import chain

from ...ground.problems import Problem
from .marks import OPENED, Slip, written_from

__all__ = ["NOTHING", "mistyped_lines"]

NOTHING = re.compile(r"\s*(?:#.*)?$")
"""A line that holds no value."""

DASH = re.compile(r"(?P<before> *)(?:-(?=\w+:(?: |$))|(?P<other>[–—−•*]) *)")
"""The dash of an item that has no blank after it, or a sign like it."""

NO_COLON = re.compile(r"(?P<before> *(?:- +)?)(?P<key>[A-Za-z]\w*)(?: ?(?P<sign>[:：=;])\s*| +|$)(?P<value>.*)")
"""A key that has no colon with a blank after it."""

KEY_LINE = re.compile(r"(?P<indent> *)(?P<dash>(?:- +)?)(?P<key>\w+):(?: |$)")

EMPTY_KEY = re.compile(r" *(?:- +)?\w[\w ]*: *$")

NO_COMMA = re.compile(r"(?<=[^\s,:\[{-])(?P<sign>[;.]?) +(?P<key>[a-z_]+): ")
"""A key within braces that nothing parts from the value before it."""

NO_BLANK = re.compile(r"(?<=[{,] )(?P<key>[a-z_]+)(?P<sign>:| )(?=[{\[\"'])")
"""A key within braces right before a group or a text, without a colon or without a blank."""

NO_BRACE = re.compile(r"\b[a-z_]+: +(?=(?P<key>[a-z_]+): )")
"""A key whose value begins with a key of its own."""

ROUND = re.compile(r"(?<=: )[({](?=\w+: )[^(){}]*[)}]")
"""Keys between brackets."""

DOUBLED = re.compile(r", *(?=,)|[}\]](?=[}\]]|,? *$)")
"""Signs of which one may be too many: a comma before a comma, a bracket before a bracket or at the end."""

ODD_BLANK = re.compile(r"[^\S \r\n]")

CLOSES = {"{": "}", "[": "]"}

QUOTED = re.compile(r"(?<=[\[{,:-] )(?:'(?:[^']|'')*'|\"(?:[^\"\\]|\\.)*\")")

NEAR = 3
"""By so many blanks a line may be out of its column; by one, where that is the left edge."""


def mistyped_lines(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """What may be wrong with the build of a line, from 0, that stands under others of its item."""
    source = lines[at]
    one = (rule(source) for rule in (_dash, _blank, _colon, _round_brackets))
    several = (rule(source) for rule in (_not_opened, _parted, _doubled))
    yield from _line_above(lines, at)
    yield from _first_item(lines, at)
    for found in chain(filter(None, one), *several, _not_closed(lines, at), _moved(lines, at)):
        yield Slip(at, *found)


Found = tuple[int, str, Problem]
"""The column of a slip, the line as it was meant, and what is wrong."""


def _dash(source: str) -> Found | None:
    found = DASH.match(source)
    if not found:
        return None
    before, rest = found["before"], source[found.end() :]
    key = rest.partition(":")[0]
    what = f"the dash before {key} has no blank after it"
    if found["other"]:
        what = f"a {found['other']} stands before {key} in place of the plain dash -"
    remedy = f"write - {key}: with a blank after the dash" if ":" in rest else "write - with a blank after it"
    return len(before), f"{before}- {rest}", Problem(what, remedy)


def _blank(source: str) -> Found | None:
    found = ODD_BLANK.search(source)
    if not found or found[0] == "\t":
        return None
    what = "a blank of another kind stands here, as web pages and word processors have them"
    return found.start(), ODD_BLANK.sub(" ", source), Problem(what, "write an ordinary blank in its place")


def _colon(source: str) -> Found | None:
    found = NO_COLON.match(source)
    if not found or KEY_LINE.match(source):
        return None
    before, key, sign, value = found.group("before", "key", "sign", "value")
    meant = f"{key}: {value}".rstrip()
    return len(before), before + meant, _without_colon(key, sign, meant)


def _without_colon(key: str, sign: str, meant: str) -> Problem:
    """What is said of a key that has another sign than a colon with a blank after it."""
    what = f"a {sign} stands after {key} in place of a colon" if sign else f"the key {key} has no colon after it"
    if sign == ":":
        what = f"the colon after {key} has no blank after it"
    return Problem(what, f"write {meant}")


def _round_brackets(source: str) -> Found | None:
    """Round brackets around keys, or at one end of them."""
    groups = (found for found in ROUND.finditer(source) if {"(", ")"} & {found[0][0], found[0][-1]})
    if found := next(groups, None):
        begin, end = found.span()
        meant = f"{source[:begin]}{{{source[begin + 1 : end - 1]}}}{source[end:]}"
        at = begin if source[begin] == "(" else end - 1
        return at, meant, Problem("a group of keys stands between { and }", "write { and } in place of ( and )")
    return None


def _not_opened(source: str) -> Iterator[Found]:
    """A group of keys that begins without its brace, or has none at all."""
    for found in NO_BRACE.finditer(source):
        at, key = found.end(), found["key"]
        value = written_from(source, at)
        begun, rest = f"{source[:at]}{{", source[at + len(value) :]
        yield at, begun + source[at:], Problem(f"the {{ before {key} is missing", f"write {{{key}:")
        remedy = f"write {source[found.start() : at]}{{{value}}}"
        yield at, f"{begun}{value}}}{rest}", Problem("keys on the line of their group stand between { and }", remedy)


def _doubled(source: str) -> Iterator[Found]:
    for found in DOUBLED.finditer(source):
        sign = found[0].strip()
        yield (
            found.start(),
            source[: found.start()] + source[found.end() :],
            Problem(f"there is one {sign} too many", "leave it out"),
        )


def _parted(source: str) -> Iterator[Found]:
    """Keys within braces that are not parted from what stands before or after them."""
    for found in NO_COMMA.finditer(source):
        key, sign = found["key"], found["sign"]
        what = f"a {sign} stands before {key} in place of a comma" if sign else f"a comma is missing before {key}"
        meant = f"{source[: found.start()]}, {source[found.start('key') :]}"
        yield found.start("key"), meant, Problem(what, f"write , {key}: with a comma before it")
    for found in NO_BLANK.finditer(source):
        key, rest = found["key"], source[found.end() :]
        meant = f"{source[: found.start()]}{key}: {rest}"
        yield found.start(), meant, _without_colon(key, found["sign"].strip(), f"{key}: {rest[:1]}…")


def _blind(source: str) -> str:
    """The line with what is in quotes blotted out."""
    return QUOTED.sub(lambda text: "·" * len(text[0]), source)


def _still_open(lines: Sequence[str], at: int) -> list[tuple[int, int, str]]:
    """The brackets that are open at the end of a line: their lines, columns and signs."""
    opened: list[tuple[int, int, str]] = []
    for number, source in enumerate(lines[: at + 1]):
        blind = _blind(source)
        begins = {found.end() - 1 for found in OPENED.finditer(blind)}
        for column, sign in enumerate(blind):
            if sign in CLOSES and (opened or column in begins):
                opened.append((number, column, sign))
            elif opened and sign == CLOSES[opened[-1][2]]:
                opened.pop()
    return opened


def _not_closed(lines: Sequence[str], at: int) -> Iterator[Found]:
    """The line with all that is open closed at its end, where the next one no longer belongs to it."""
    opened = _still_open(lines, at)
    if not opened:
        return
    number, column, sign = opened[0]
    after = next((source for source in lines[at + 1 :] if not NOTHING.match(source)), "")
    if _columns(after)[0] <= _columns(lines[number])[0]:
        kept = lines[at].rstrip(" ,)")
        closing = "".join(CLOSES[each] for _, _, each in reversed(opened))
        first = re.match(r"\w*", lines[number][column + 1 :])
        what = f"the {sign} before {first[0]} is not closed" if first and first[0] else f"a {sign} is not closed"
        within = "" if number == at else ", or where a group within it ends"
        yield len(kept), kept + closing, Problem(what, f"write {closing} at the end of this line{within}")


def _columns(source: str) -> tuple[int, ...]:
    """Where a line, and what stands behind its dash, begin."""
    found = KEY_LINE.match(source) or re.match(r"(?P<indent> *)(?P<dash>(?:- +)?)", source)
    assert found  # the second one finds nothing at least
    indent = len(found["indent"])
    return (indent, indent + len(found["dash"])) if found["dash"] else (indent,)


def _line_above(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """The line above, where it does not begin as this one shows that it was meant to."""
    if not at:
        return
    first, here = lines[at - 1], _columns(lines[at])[0]
    found = KEY_LINE.match(first)
    if not found:
        return
    if found["dash"]:
        moved = _begun_in(first, here - len(found["dash"]))
    elif at < 2 or not EMPTY_KEY.match(lines[at - 2]):
        return
    elif _columns(lines[at - 2])[-1] == len(found["indent"]):
        moved = _begun_in(first, here)
    else:
        moved = _with_dash(first, here - len("- "))
    yield from (Slip(at - 1, *each) for each in moved)


def _first_item(lines: Sequence[str], at: int) -> Iterator[Slip]:
    """The first line under the key of a list, where it has no dash and this one has."""
    first = next((number for number in range(1, at) if not NOTHING.match(lines[number])), at)
    if first < at and EMPTY_KEY.match(lines[0]) and len(columns := _columns(lines[at])) > 1:
        yield from (Slip(first, *each) for each in _with_dash(lines[first], columns[0]))


def _with_dash(source: str, column: int) -> Iterator[Found]:
    found = KEY_LINE.match(source)
    if found and not found["dash"]:
        key, indent = found["key"], len(found["indent"])
        meant = f"{' ' * column}- {source[indent:]}"
        yield indent, meant, Problem(f"the dash before {key} is missing", f"write - {key}:")


def _moved(lines: Sequence[str], at: int) -> Iterator[Found]:
    """The line begun in a column in which lines above it begin; with a dash, where that is what is missing."""
    found = KEY_LINE.match(lines[at])
    if not found:
        return
    dashes = [columns[0] for source in reversed(lines[:at]) if len(columns := _columns(source)) > 1]
    indent = len(found["indent"])
    if indent in dashes and not found["dash"]:
        yield from _with_dash(lines[at], indent)
    above = [_columns(source)[-1] for source in reversed(lines[:at]) if KEY_LINE.match(source)]
    for column in dict.fromkeys(dashes if found["dash"] else above):
        if abs(column - indent) <= (NEAR if column else 1):
            yield from _begun_in(lines[at], column)


def _begun_in(source: str, column: int) -> Iterator[Found]:
    kept = source.lstrip(" ")
    indent = len(source) - len(kept)
    if column not in (indent, -1, -2):
        remedy = f"write {column} blanks before it" if column else "begin it at the left edge"
        what = "this line does not stand under the lines of its group"
        yield indent, " " * column + kept, Problem(what, remedy)
