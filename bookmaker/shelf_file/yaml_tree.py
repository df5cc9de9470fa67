"""YAML as a tree of plain text with the place of every value.

Only the structure of YAML is used, never its guesses about types: a title of ``1984``, ``no`` or
``2001-02-03`` stays the text that was written.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace

from ruamel.yaml.error import MarkedYAMLError, YAMLError

from ..ground.problems import FieldPath, Place, Problem, ShelfFileError
from .yaml_nodes import GroupNode, Lines, ListNode, Node, RepeatNode, ScalarNode
from .yaml_pieces import read_in_pieces

__all__ = ["HIDDEN", "Plain", "Tree", "parse_nodes", "parse_tree"]

Plain = str | None | list["Plain"] | dict[str, "Plain"]
"""A value without its places."""

MOST_VALUES = 200_000
"""More values than any shelf has: aliases that multiply are stopped here."""

DEEPEST = 30
"""Deeper nesting than any shelf has."""

HIDDEN = ("Cc", "Cs")
"""Unicode categories of control characters and of halves of characters."""

OWN_LINES = 'put the keys of this group on lines of their own, or write "…\\n…" in double quotes'
"""For text of several lines that begins within braces."""

DASH = re.compile(r"( *)-(\w+):(?: |$)")
"""An item of a list whose dash has become a part of the key."""

QUOTES_WITHIN = re.compile(r': "([^"\n\',{}]*"[^"\n\',{}]+"[^"\n\',{}]*)"$')
"""A text in double quotes that has more of them within."""

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
        "after a | or a > lines of text begin, and none of it stands beside the sign",
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


@dataclass(frozen=True, slots=True)
class Tree:
    """A value and its place: text, None, a list of trees, or a mapping to trees.

    `keys` holds the places of a mapping's keys.
    """

    value: str | list[Tree] | dict[str, Tree] | None
    place: Place
    keys: dict[str, Place] = field(default_factory=dict)

    def plain(self) -> Plain:
        """The value alone."""
        if isinstance(self.value, list):
            return [item.plain() for item in self.value]
        if isinstance(self.value, dict):
            return {key: item.plain() for key, item in self.value.items()}
        return self.value

    def child(self, part: str | int) -> Tree | None:
        """The value under a key or an index, if there is one."""
        if isinstance(self.value, dict) and isinstance(part, str):
            return self.value.get(part)
        if isinstance(self.value, list) and isinstance(part, int) and part < len(self.value):
            return self.value[part]
        return None

    def places(self) -> Iterator[Place]:
        """The places of the value, of its keys, and of everything in it."""
        yield self.place
        yield from self.keys.values()
        below = self.value.values() if isinstance(self.value, dict) else self.value
        for tree in below if below and not isinstance(below, str) else ():
            yield from tree.places()

    def below(self, path: FieldPath) -> Tree | None:
        """What is written in a field, if anything is."""
        node: Tree | None = self
        for part in path:
            node = node.child(part) if node else None
        return node

    def holds(self, path: FieldPath) -> bool:
        """Whether the field is written, by its value or at least by its key."""
        return self.below(path) is not None

    def key_place_of(self, path: FieldPath) -> Place:
        """The place of a field's key; of the field, where it has none."""
        around: Tree | None = self
        for part in path[:-1]:
            around = around.child(part) if around else None
        return (around.keys if around else {}).get(str(path[-1])) or self.place_of(path)

    def place_of(self, path: FieldPath) -> Place:
        """The place of a field, or of the nearest thing around it that is written in the file."""
        node, place = self, self.place
        for part in path:
            below = node.child(part)
            if below is None:
                return node.keys.get(str(part), place)
            node, place = below, below.place
        return place


def parse_tree(text: str, file: str) -> Tree:
    """Read YAML text.

    Raises:
        ShelfFileError: the text is not YAML, a key stands twice, or aliases multiply beyond measure.
    """
    return parse_nodes(text, file)[1]


def parse_nodes(text: str, file: str) -> tuple[Node, Tree]:
    """The same with the nodes that the tree was made of.

    Raises:
        ShelfFileError: the text is not YAML, a key stands twice, or aliases multiply beyond measure.
    """
    reader = _Reader(file, Lines(text))
    try:
        node = read_in_pieces(text)
    except MarkedYAMLError as trouble:
        raise _syntax_error(trouble, reader.place) from None
    except RecursionError:
        raise ShelfFileError((_too_much(Place(file)),)) from None
    except (YAMLError, ValueError) as trouble:
        raise ShelfFileError(
            (
                Problem(
                    f"this is not YAML: {_first_line(trouble)}",
                    "save the shelf as plain text",
                    place=Place(file),
                ),
            )
        ) from None
    if node is None:
        raise ShelfFileError(
            (
                Problem(
                    "the file is empty",
                    "describe a shelf; 'bookmaker new DIR' writes one to start from",
                    place=Place(file),
                ),
            )
        )
    tree = reader.tree(node)
    if reader.problems:
        raise ShelfFileError(reader.problems)
    return node, tree


def _too_much(place: Place) -> Problem:
    what = "aliases or nested lists make more values than any shelf has"
    return Problem(what, "write the values out, without & and *", place=place)


def _first_line(trouble: Exception) -> str:
    return (str(trouble).splitlines() or [type(trouble).__name__])[0][:120]


def _syntax_error(trouble: MarkedYAMLError, place: Callable[[int, int], Place]) -> ShelfFileError:
    mark = trouble.problem_mark or trouble.context_mark
    said = " ".join(str(part) for part in (trouble.context, trouble.problem) if part)
    where = place(mark.line, mark.column) if mark else place(0, 0)
    if mark and "flow" in said:
        lines = [place(line, 0) for line in range(mark.line, -1, -1)]
        if cut_short := next(filter(None, map(_cut_short_in, lines)), None):
            return ShelfFileError((cut_short,))
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
        if marks := QUOTES_WITHIN.search(where.source):
            remedy = f"put the whole text in single quotes: '{marks[1]}'"
            return Problem("there are quotation marks within quotation marks", remedy,
                           place=replace(where, column=marks.start(1)))  # fmt: skip
    return None


def _cut_short(value: str, end: Place) -> Problem | None:
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
    return _cut_short("", replace(line, column=begun.end() + 1)) if begun else None


class _Reader:
    """Turns YAML nodes into trees, collecting what is wrong on the way."""

    def __init__(self, file: str, lines: Lines) -> None:
        self.file = file
        self.lines = lines
        self.problems: list[Problem] = []
        self.seen = 0

    def place(self, line: int, column: int) -> Place:
        return Place(self.file, line + 1, column + 1, self.lines.line(line))

    def at(self, offset: int) -> Place:
        return self.place(*self.lines.number(offset))

    def tree(self, written: Node, depth: int = 0) -> Tree:
        node = written.meant if isinstance(written, RepeatNode) else written
        self.seen += 1
        place = self.at((node or written).start)
        if node is None or self.seen > MOST_VALUES or depth > DEEPEST:
            raise ShelfFileError((_too_much(place),))
        if isinstance(node, ListNode):
            return Tree([self.tree(item, depth + 1) for item in node.items], place)
        if isinstance(node, GroupNode):
            return self._group(node, place, depth)
        assert isinstance(node, ScalarNode)
        self._refuse_hidden(node.text, place)
        if node.text:
            self._refuse_cut_short(node, node.style)
        return Tree(None if node.is_nothing else node.text, place)

    def _refuse_hidden(self, text: str, place: Place) -> None:
        """Escapes in quotes can spell signs that would command a terminal, or that no file can hold."""
        hidden = next((sign for sign in text if unicodedata.category(sign) in HIDDEN and sign not in "\n\t"), "")
        if hidden:
            message = f"the text holds the control character U+{ord(hidden):04X}"
            self.problems.append(Problem(message, "write visible letters only", place=place))

    def _refuse_cut_short(self, last: ScalarNode, style: str, *, colon: int = 0) -> None:
        """A # may turn into a note what was meant as the value, or its end; `colon` is the length of one after it."""
        if not style and (cut_short := _cut_short("" if colon else last.text, self.at(last.end + colon))):
            self.problems.append(cut_short)

    def _group(self, node: GroupNode, place: Place, depth: int) -> Tree:
        values: dict[str, Tree] = {}
        keys: dict[str, Place] = {}
        for key, value, at in self._pairs(node):
            if key in values:
                first = keys[key].line
                message = f"the key {key!r} stands here a second time; it is on line {first} already"
                self.problems.append(Problem(message, "keep one of the two", place=at))
            values[key], keys[key] = self.tree(value, depth + 1), at
        return Tree(values, place, keys)

    def _pairs(self, node: GroupNode) -> Iterator[tuple[str, Node, Place]]:
        for key, value in node.entries:
            at = self.at(key.start)
            named = key.meant if isinstance(key, RepeatNode) else key
            if isinstance(named, ScalarNode):
                self._refuse_hidden(named.text, at)
                if isinstance(value, ScalarNode) and not value.text:
                    self._refuse_cut_short(replace(named, end=key.end), value.style, colon=1)
                yield named.text, value, at
            else:
                self.problems.append(
                    Problem("a key is a word here, not a list or a group", "write key: value", place=at)
                )
