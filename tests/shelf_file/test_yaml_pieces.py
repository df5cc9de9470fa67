"""A text read in pieces is the text read whole: the same nodes in the same places, and the same refusals."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from ruamel.yaml.error import YAMLError

from bookmaker.ground.problems import Problem, ShelfFileError
from bookmaker.shelf_file import yaml_pieces
from bookmaker.shelf_file.yaml_nodes import Node, read_nodes
from bookmaker.shelf_file.yaml_pieces import in_pieces
from bookmaker.shelf_file.yaml_tree import Tree, parse_nodes, parse_tree
from tests.kit.yaml_texts import DEMO, SHOWN, UGLY

MANY = "books:\n" + "".join(f"  - title: Book {number}\n    pages: {number}\n" for number in range(12)) + "more: yes\n"
TRAPS = {
    "quotes over items": MANY.replace("Book 3", '"Book 3').replace("Book 5", 'Book 5"'),
    "braces over items": MANY.replace("pages: 3", "pages: {a: 1").replace("pages: 6", "pages: 6}"),
    "text of lines": MANY.replace("pages: 4\n", "note: |\n      one\n\n      two\n\n"),
    "text that keeps its lines": MANY.replace("pages: 11\n", "note: |+\n      one\n\n\n"),
    "notes between": MANY.replace("  - title: Book 7", "# far left\n      # far right\n  - title: Book 7"),
    "a name": MANY.replace("pages: 2", "pages: &two 2").replace("pages: 9", "pages: *two"),
    "a name in one item": MANY.replace("pages: 2", "pages: {a: &two 2, b: *two}"),
    "a name before": "defaults: &all {pages: 2}\n" + MANY.replace("pages: 9", "block: *all"),
    "a name used later": MANY.replace("pages: 2", "pages: &two 2") + "later: *two\n",
    "a tag": MANY.replace("pages: 2", "pages: !!str 2"),
    "lists in lists": MANY.replace("pages: 5\n", "parts:\n    - a\n    - b\n"),
    "a list on its key's column": MANY.replace("  - ", "- ").replace("    pages", "  pages"),
    "a stray line": MANY.replace("    pages: 8\n", " pages: 8\n"),
    "a stranger among items": MANY.replace("  - title: Book 8\n", "  title: Book 8\n"),
    "old Macintosh": MANY.replace("\n", "\r"),
    "Windows": MANY.replace("\n", "\r\n"),
    "no end": MANY.removesuffix("more: yes\n").rstrip("\n"),
    "a note before a key": MANY.replace("title: Book 0", "# here\n    title: Book 0"),
    "a note before a value": MANY.replace("pages: 3", "pages:  # 3"),
    "wide dashes": MANY.replace("- title: Book 0\n    pages", "-   title: Book 0\n      pages"),
    "empty items": MANY.replace("- title: Book 4\n    pages: 4\n", "- \n"),
    "a key twice": MANY + "books: 3\n",
    "two documents": MANY + "---\na: 1\n",
    "folded plain text": MANY.replace("Book 6\n", "Book 6\n      goes on\n"),
    "stars in words": MANY.replace("Book 1\n", "Book * one & two!\n"),
}
TEXTS = {"demo": DEMO, **{f"shown {number}": text for number, text in enumerate(SHOWN)}, **UGLY, **TRAPS}


def read_in_pieces(text: str) -> Node | None:
    """What is read by a program that parts a text where it can."""
    pieced = in_pieces(text)
    return pieced.whole if pieced else read_nodes(text)


def told(read: object, text: str) -> Node | str | None:
    """The nodes of a text, or in which words it is refused."""
    try:
        return read_nodes(text) if read is read_nodes else read_in_pieces(text)
    except (YAMLError, ValueError) as trouble:
        return str(trouble)


def tree_of(read: Callable[[str, str], Tree], text: str) -> Tree | Sequence[Problem]:
    """The tree of a text with all its places, or what is wrong with it and where."""
    try:
        return read(text, "t.yaml")
    except ShelfFileError as refusal:
        return refusal.problems


def whole_tree(text: str, file: str) -> Tree:
    return parse_nodes(text, file)[1]


@pytest.mark.parametrize("name", TEXTS)
def test_pieces_are_the_whole(name: str) -> None:
    assert told(read_in_pieces, TEXTS[name]) == told(read_nodes, TEXTS[name])
    assert tree_of(parse_tree, TEXTS[name]) == tree_of(whole_tree, TEXTS[name])


@given(st.sampled_from(sorted(TRAPS)), st.integers(0, 10**9))
@example("a key twice", 55477730)
@settings(max_examples=150, deadline=None)
def test_pieces_are_the_whole_whatever_is_typed(name: str, seed: int) -> None:
    chance, text = Random(seed), TRAPS[name]
    for _ in range(chance.randint(1, 3)):
        at = chance.randrange(len(text))
        typed = chance.choice(['"', "'", "{", "]", "- ", "#", ": ", "\n", "\n\n", "  ", "|\n", "&a ", "*a", "\t", ">"])
        text = text[:at] + typed + text[at + chance.choice([0, 0, 1, 4]) :]
    assert told(read_in_pieces, text) == told(read_nodes, text)
    assert tree_of(parse_tree, text) == tree_of(whole_tree, text)


def test_only_the_item_that_changed_is_read_again(monkeypatch: pytest.MonkeyPatch) -> None:
    read: list[str] = []
    monkeypatch.setattr(yaml_pieces, "read_nodes", lambda text: read.append(text) or read_nodes(text))
    yaml_pieces._item.cache_clear()
    yaml_pieces._read.cache_clear()
    in_pieces(MANY)
    assert len(read) == 13
    read.clear()
    changed = MANY.replace("Book 5", "Book Five")
    assert read_in_pieces(changed) == read_nodes(changed)
    assert read == ["  - title: Book Five\n    pages: 5\n"]


def test_the_demo_is_read_in_pieces_notes_and_all(monkeypatch: pytest.MonkeyPatch) -> None:
    read_in_pieces(DEMO)
    read: list[str] = []
    monkeypatch.setattr(yaml_pieces, "read_nodes", lambda text: read.append(text) or read_nodes(text))
    changed = DEMO.replace("Salt Verses", "Salt Songs", 1)
    assert changed != DEMO and read_in_pieces(changed) == read_nodes(changed)
    assert len(read) == 1
