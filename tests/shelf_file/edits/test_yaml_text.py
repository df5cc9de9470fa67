"""Edits of YAML texts: they read as was asked, and nothing else changes, whatever the text looks like."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from itertools import takewhile

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from ruamel.yaml import YAML
from ruamel.yaml.nodes import MappingNode, Node, SequenceNode

from bookmaker.ground.problems import FieldPath, Problem
from bookmaker.shelf_file.edits.edit import Copy, Edit, Insert, Move, Remove, Rename, Reorder, SetValue
from bookmaker.shelf_file.edits.manner import Manner
from bookmaker.shelf_file.edits.outcome import outcome, value_at
from bookmaker.shelf_file.edits.refusal import EditRefused
from bookmaker.shelf_file.edits.yaml_text import edit_yaml
from bookmaker.shelf_file.subjects import named_in
from bookmaker.shelf_file.yaml_tree import Plain, parse_tree
from tests.kit.yaml_texts import DEMO, SHOWN, SOME_OF_THE_DEMO, UGLY

TEXTS = {**UGLY, "demo": SOME_OF_THE_DEMO, **{f"shown {number}": text for number, text in enumerate(SHOWN)}}

SHARED = re.compile(r"repeats with \*|is repeated on line")
NO_LINE = re.compile(r"no line where|no place between|has notes, and")
ODD = {
    # blank lines belong to the text that keeps them: it cannot leave them, nor take those of others
    "block scalars": "kept",
    # a * may come to stand above its &
    "anchors": "*",
}


def edited(text: str, *edits: Edit) -> str:
    made = edit_yaml(text, edits)
    assert isinstance(made, str), made
    return made


def plain(text: str) -> Plain:
    return parse_tree(text, "t.yaml").plain()


def paths(value: Plain, path: FieldPath = ()) -> Iterator[FieldPath]:
    yield path
    for key, below in value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ():
        yield from paths(below, (*path, key))


NEW: tuple[Plain, ...] = (
    "x", "S, R", "a: b", "#fff", "- y", "two\nlines", "two\nlines\n", "", None, "no", "it's", 'say "x"', " t ",
    "\tt", "é\u2028z", {"u: v": "w"}, "~", "null", "&a", "*b", "!c", "%d", "@e", "...", "---", "?", "g:", ": h", "i #j",
    [], {}, ["a", "b"], {"k": "v"}, {"k": {"l": ["m", {"n": "o"}]}}, [{"p": "q"}, {"r": "s\nt"}], {"": None}
)  # fmt: skip


@st.composite
def edits(draw: st.DrawFn, whole: Plain) -> Edit:
    everywhere = list(paths(whole))
    lists = [path for path in everywhere if isinstance(value_at(whole, path), list)]
    groups = [path for path in everywhere if isinstance(value_at(whole, path), dict)]
    path = draw(st.sampled_from(everywhere[1:]))
    new = draw(st.sampled_from(NEW))
    sorts: list[Edit] = [SetValue(path, new), Remove(path, draw(st.booleans()))]
    if groups:
        key = draw(st.sampled_from((("new",), ("a: b",), ("new", "below"))))
        sorts.append(SetValue((*draw(st.sampled_from(groups)), *key), new))
    if lists:
        around = draw(st.sampled_from(lists))
        sorts.append(Insert((*around, draw(st.integers(0, size(whole, around)))), new))
        sorts.append(Reorder(around, tuple(draw(st.permutations(range(size(whole, around)))))))
    is_item = isinstance(path[-1], int)
    around = draw(st.sampled_from([path[:-1], *(lists if is_item else groups)]))
    to = (*around, draw(st.integers(0, max(size(whole, around) - (around == path[:-1]), 0))))
    sorts += [Move(path, to), Copy(path, to if is_item else (*around, "copied"))]
    sorts += [] if is_item else [Rename(path, draw(st.sampled_from(("nn", "a: b", "#x", "yes"))))]
    return draw(st.sampled_from(sorts))


def size(whole: Plain, path: FieldPath) -> int:
    value = value_at(whole, path)
    return len(value) if isinstance(value, list | dict) else 0


@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
@given(st.data())
def test_an_edited_text_reads_as_was_asked(line_end: str, data: st.DataObject) -> None:
    name = data.draw(st.sampled_from(sorted(TEXTS)))
    text = TEXTS[name].replace("\n", line_end)
    before = plain(text)
    edit = data.draw(edits(before))
    made = edit_yaml(text, [edit])
    try:
        wanted = outcome(before, edit)
    except EditRefused as refusal:
        assert made == named_in(refusal.problem, parse_tree(text, "the file"))
        return
    if isinstance(made, Problem):
        assert made.remedy
        assert SHARED.search(made.message) or NO_LINE.search(made.message) or ODD.get(name, "§") in text, (edit, made)
        return
    assert plain(made) == wanted
    if isinstance(edit, Rename | Move):
        around = (edit.to if isinstance(edit, Move) else edit.path)[:-1]
        assert list(value_at(plain(made), around) or ()) == list(value_at(wanted, around) or ())
    assert Counter(re.findall(r"\r\n|\r|\n", made)).keys() <= {line_end}


# --- nothing else changes ---------------------------------------------------------------------------------------------

MARKS = " \t\r\n-,[]{}:\"'&!*?"
JOINTS = re.compile(rf"(?:[{re.escape(MARKS)}]|#[^\r\n]*)*")
"""What joins an entry to its neighbours: blanks, line ends, marks, notes."""


def span(text: str, path: FieldPath) -> tuple[int, int]:
    """Where an entry stands, told by the nodes of another reader: its key and its value."""
    node: Node = YAML(typ="rt", pure=True).compose(text)
    start = node.start_mark.index
    for part in path:
        if isinstance(node, MappingNode):
            key, node = next(pair for pair in node.value if pair[0].value == part)
            start = key.start_mark.index
        else:
            assert isinstance(node, SequenceNode)
            node = node.value[part]
            start = node.start_mark.index
    return start, node.end_mark.index


def with_joints(text: str, first: int, last: int) -> tuple[int, int]:
    """A span, and all around it that joins it to its neighbours."""
    while True:
        before = len(text[:first].rstrip(MARKS))
        line = max(text.rfind(end, 0, before) for end in "\r\n") + 1
        note = re.search(r"(?:\A|\s)#", text[line:before])
        if not note:
            break
        first = line + note.start()
    behind = JOINTS.match(text, last)
    return before, behind.end() if behind else last


CHANGED_ALONE = {name: text for name, text in TEXTS.items() if name not in {"anchors", "tabs", "block scalars"}}


@given(st.data())
def test_bytes_outside_the_entry_are_the_old_ones(data: st.DataObject) -> None:
    text = CHANGED_ALONE[data.draw(st.sampled_from(sorted(CHANGED_ALONE)))]
    before = plain(text)
    path = data.draw(st.sampled_from(list(paths(before))[1:]))
    new = data.draw(st.sampled_from(NEW))
    edit = data.draw(st.sampled_from((SetValue(path, new), Remove(path))))
    made = edited(text, edit)
    sole = isinstance(edit, Remove) and size(before, path[:-1]) == 1  # then the group or list becomes an empty one
    first, last = with_joints(text, *span(text, path[:-1] if sole else path))
    assert made.startswith(text[:first])
    assert made.endswith(text[last:])
    assert len(made) >= first + len(text) - last


@given(st.data())
def test_an_insertion_leaves_all_of_the_old_text(data: st.DataObject) -> None:
    text = CHANGED_ALONE[data.draw(st.sampled_from(sorted(CHANGED_ALONE)))]
    before = plain(text)
    lists = [path for path in paths(before) if size(before, path) and isinstance(value_at(before, path), list)]
    groups = [path for path in paths(before) if size(before, path) and isinstance(value_at(before, path), dict)]
    new = data.draw(st.sampled_from(NEW))
    around = data.draw(st.sampled_from(lists + groups))
    at = data.draw(st.integers(0, size(before, around)))
    made = edited(text, Insert((*around, at), new) if around in lists else SetValue((*around, "new key"), new))
    rest = iter(made)
    assert all(sign in rest for sign in text), "the old text is what is left when the new signs are taken out"


@given(st.data())
def test_a_text_without_edits_and_a_value_that_is_there_change_nothing(data: st.DataObject) -> None:
    text = TEXTS[data.draw(st.sampled_from(sorted(TEXTS)))]
    before = plain(text)
    path = data.draw(st.sampled_from(list(paths(before))))
    assert edited(text) == text
    assert edit_yaml(text, [SetValue(path, value_at(before, path))]) == text


WITHOUT_HEADER = SOME_OF_THE_DEMO.split("\n", 2)[2]
"""The notes that begin the demo are those of the whole file."""

# --- notes stay with their entries ------------------------------------------------------------------------------------


def notes(text: str) -> Counter[tuple[str, str]]:
    """Every note with what it stands beside: what is before it on its line, or the line below it as far in."""
    lines = text.splitlines()
    found: Counter[tuple[str, str]] = Counter()
    for line, below in zip(lines, [*lines[1:], ""], strict=True):
        code, sign, note = line.partition("#") if re.search(r"(?:^|\s)#(?!\w*\")", line) else (line, "", "")
        if sign:
            alike = len(code) == len(below) - len(below.lstrip(" "))
            code = "-" if code.strip() == "-" else code.strip(" -,]}")
            found[code.partition(":")[0] or (below.strip(" -") if alike else ""), note] += 1
    return found


@settings(max_examples=50)
@given(st.data())
def test_notes_go_with_the_entries_that_are_moved(data: st.DataObject) -> None:
    text = data.draw(
        st.sampled_from((WITHOUT_HEADER, UGLY["notes everywhere"], UGLY["spaces"], UGLY["odd indentation"]))
    )
    before = plain(text)
    lists = [path for path in paths(before) if isinstance(value_at(before, path), list) and size(before, path) > 1]
    if lists and data.draw(st.booleans()):
        around = data.draw(st.sampled_from(lists))
        made = edited(text, Reorder(around, tuple(data.draw(st.permutations(range(size(before, around)))))))
    else:
        # the first key of an item stands beside its dash, below the notes of the item
        moving = [path for path in paths(before) if path and size(before, path[:-1]) > 1]
        path = data.draw(
            st.sampled_from([path for path in moving if not isinstance((0, *path)[-2], int) or not path[1:]])
        )
        made = edited(text, Move(path, (*path[:-1], data.draw(st.integers(0, size(before, path[:-1]) - 1)))))
    assert notes(made) == notes(text)


@settings(max_examples=30)
@given(st.data())
def test_notes_of_an_entry_that_is_removed_go_and_all_others_stay(data: st.DataObject) -> None:
    text = data.draw(st.sampled_from((WITHOUT_HEADER, UGLY["notes everywhere"])))
    before = plain(text)
    path = data.draw(st.sampled_from([path for path in paths(before) if path and size(before, path[:-1]) > 1]))
    made = edited(text, Remove(path))
    assert Counter(note for _, note in notes(made).elements()) <= Counter(note for _, note in notes(text).elements())
    assert alike(text, made) + alike(text[::-1], made[::-1]) >= len(made), "a removal removes one piece"


def alike(one: str, other: str) -> int:
    """How far two texts begin alike."""
    return sum(1 for _ in takewhile(lambda pair: pair[0] == pair[1], zip(one, other, strict=False)))


# --- and back again ---------------------------------------------------------------------------------------------------


@settings(max_examples=50)
@given(st.data())
def test_what_was_inserted_and_removed_leaves_the_old_bytes(data: st.DataObject) -> None:
    """Where blank lines part either all entries of a list or group or none of them."""
    text = data.draw(st.sampled_from((SOME_OF_THE_DEMO, *SHOWN, UGLY["no end"])))
    before = plain(text)
    lists = [path for path in paths(before) if isinstance(value_at(before, path), list) and size(before, path)]
    groups = [path for path in paths(before) if isinstance(value_at(before, path), dict) and size(before, path)]
    around = data.draw(st.sampled_from(lists + groups))
    new = data.draw(st.sampled_from(NEW))
    if around in groups:
        path: FieldPath = (*around, "new key")
        made = edited(text, SetValue(path, new))
    else:
        path = (*around, data.draw(st.integers(0, size(before, around))))
        made = edited(text, Insert(path, new))
    assert edited(made, Remove(path)) == text


@settings(max_examples=10)
@given(st.permutations(range(40)))
@example(list(range(40)))
def test_an_order_and_its_reverse_leave_the_old_bytes(order: list[int]) -> None:
    count = size(plain(DEMO), ("books",))
    order = [number for number in order if number < count] + list(range(40, count))
    back = tuple(order.index(number) for number in range(count))
    assert edited(DEMO, Reorder(("books",), tuple(order)), Reorder(("books",), back)) == DEMO


@settings(max_examples=50)
@given(st.data())
def test_a_plain_value_set_and_set_back_leaves_the_old_bytes(data: st.DataObject) -> None:
    text = data.draw(st.sampled_from((SOME_OF_THE_DEMO, *SHOWN)))
    before = plain(text)
    texts = [path for path in paths(before) if isinstance(value_at(before, path), str)]
    path = data.draw(st.sampled_from(texts))
    new = data.draw(st.sampled_from([value for value in NEW if isinstance(value, str)]))
    start, end = span(text, path)
    made = edited(text, SetValue(path, new))
    old = value_at(before, path)
    again = edited(made, SetValue(path, old))
    assert again == text or '"' in text[start:end] or "'" in text[start:end], "only needless quotes are lost"


# --- as a maker would write it ----------------------------------------------------------------------------------------

SHELF = """\
books:
  - title: Fog   # thick
    size: {height: 21 mm, width: 12 mm}
  - title: Salt
"""


@pytest.mark.parametrize(
    ("edit", "old", "new"),
    [
        (SetValue(("books", 0, "title"), "Salt: a tale"), "title: Fog", 'title: "Salt: a tale"'),
        (SetValue(("books", 0, "title"), "1984"), "title: Fog", "title: 1984"),
        (SetValue(("books", 0, "title"), "-title"), "title: Fog", "title: -title"),
        (SetValue(("books", 0, "title"), "- title"), "title: Fog", 'title: "- title"'),
        (SetValue(("books", 0, "title"), 'The "End"'), "title: Fog", 'title: The "End"'),
        (SetValue(("books", 0, "title"), '"The" End'), "title: Fog", "title: '\"The\" End'"),
        (SetValue(("books", 0, "title"), "one\ntwo"), "title: Fog   # thick",
         "title: |-   # thick\n      one\n      two"),
        (SetValue(("books", 0, "size", "width"), "15, mm"), "12 mm", '"15, mm"'),
        (SetValue(("books", 0, "size", "depth"), "1"), "12 mm}", "12 mm, depth: 1}"),
        (SetValue(("books", 1, "size", "height"), "1 mm"), "title: Salt\n", "title: Salt\n    size: {height: 1 mm}\n"),
        (SetValue(("books", 1, "design"), {"colour": "#22384a", "ink": "#fff"}), "title: Salt\n",
         'title: Salt\n    design: {colour: "#22384a", ink: "#fff"}\n'),
        (SetValue(("spaces", "upper"), {"width": "9 mm"}), "title: Salt\n",
         "title: Salt\nspaces:\n  upper: {width: 9 mm}\n"),
        (Insert(("books", 2), {"title": "Rope", "size": {"height": "1"}}), "title: Salt\n",
         "title: Salt\n  - title: Rope\n    size: {height: 1}\n"),
        (Remove(("books", 0, "size")), "    size: {height: 21 mm, width: 12 mm}\n", ""),
        (Remove(("books", 0, "size", "height")), "height: 21 mm, ", ""),
        (Remove(("books", 0, "title")), "title: Fog   # thick\n    size", "size"),
        (Rename(("books", 0, "size"), "life_size"), "size:", "life_size:"),
        (SetValue(("books", 0, "size"), {"height": "21 mm", "width": "13 mm"}), "12 mm", "13 mm"),
        (SetValue(("books",), [{"title": "Salt"}]),
         "  - title: Fog   # thick\n    size: {height: 21 mm, width: 12 mm}\n  - title: Salt\n", "  - title: Salt\n"),
    ],
)  # fmt: skip
def test_values_are_written_as_a_maker_would(edit: Edit, old: str, new: str) -> None:
    assert SHELF.count(old) == 1
    assert edited(SHELF, edit) == SHELF.replace(old, new)


def test_keys_come_in_the_order_of_the_models_and_words_never_look_like_numbers() -> None:
    order = Manner(lambda path: ("title", "author", "space", "size") if path[:1] == ("books",) else (), lambda _: True)
    text = edit_yaml("books:\n- title: Fog\n  size: 1\n", [SetValue(("books", 0, "space"), "no")], order)
    assert text == 'books:\n- title: Fog\n  space: "no"\n  size: 1\n'
    text = edit_yaml("books:\n- size: 1\n", [SetValue(("books", 0, "author"), "1984")], order)
    assert text == 'books:\n- author: "1984"\n  size: 1\n'


def test_needless_quotes_are_kept_and_needed_ones_go_with_their_need() -> None:
    assert edited("a: 'b'\n", SetValue(("a",), "c")) == "a: 'c'\n"
    assert edited('a: "#b"\n', SetValue(("a",), "c")) == "a: c\n"
    assert edited('a: "b"   #note\n', SetValue(("a",), "c")) == 'a: "c"   #note\n'


def test_what_is_moved_before_the_only_line_keeps_the_ends_of_the_file() -> None:
    moved = edit_yaml("a: 1\rb:\r  - x", [Move(("b",), (0,))])
    assert moved == "b:\r  - x\ra: 1"


def test_many_edits_are_one_after_the_other_and_all_or_none() -> None:
    several = [
        SetValue(("books", 1, "block", "pages"), "8"),
        SetValue(("books", 1, "block", "stock"), "laid"),
        Move(("books", 1), ("books", 0)),
        SetValue(("books", 0, "block", "pages"), "9"),
        Remove(("books", 1, "size"), whole_groups=True),
        Copy(("books", 0), ("books", 1)),
    ]
    made = "books:\n" + 2 * "  - title: Salt\n    block: {pages: 9, stock: laid}\n" + "  - title: Fog   # thick\n"
    assert edited(SHELF, *several) == made
    refused = edit_yaml(SHELF, [*several, Remove(("books", 7))])
    assert isinstance(refused, Problem)
    assert refused.message == "book 8 is not written here"


@pytest.mark.parametrize(
    ("edit", "message"),
    [
        (SetValue(("books", 2, "title"), "x"), "One repeats with *first what stands on line 4"),
        (SetValue(("books", 0, "title"), "x"), "One is repeated on line 9 with *first"),
        (Remove(("books", 0)), "One is repeated on line 9 with *first"),
        (SetValue(("spaces", "a"), "y"), "spaces.a is repeated on line 11 with *s"),
    ],
)
def test_what_is_shared_is_not_changed(edit: Edit, message: str) -> None:
    refused = edit_yaml(UGLY["anchors"], [edit])
    assert isinstance(refused, Problem)
    assert refused.message == message
    assert "write it out" in refused.remedy


def test_what_repeats_something_may_be_given_a_value_of_its_own() -> None:
    text = UGLY["anchors"]
    assert edited(text, SetValue(("spaces", "b"), "y")) == text.replace("b: *s", "b: y")


@pytest.mark.parametrize("text", ["a: 1\n---\nb: 2\n", "a: [1\n", "a: 1\na: 2\n", ""])
def test_what_is_no_shelf_is_refused_in_the_words_of_the_reader(text: str) -> None:
    assert isinstance(edit_yaml(text, [SetValue(("a",), "x")]), Problem)


@pytest.mark.parametrize(
    "edit", [SetValue(("a",), "x\x1b"), SetValue(("a", "\x85"), "x"), Insert(("b", 0), {"x": ["\0"]})]
)
def test_what_no_file_can_hold_is_refused(edit: Edit) -> None:
    refused = edit_yaml("a:\nb: []\n", [edit])
    assert isinstance(refused, Problem)
    assert refused.message.startswith("the text holds the control character U+00")
