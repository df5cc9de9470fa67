"""YAML as text with places: what stands where, and nothing guessed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.problems import FieldPath, ShelfFileError
from bookmaker.shelf_file.yaml_tree import Plain, parse_tree

TEXT = """\
title: 1984
list:
  - no
  - {deep: 2001-02-03, "quoted": ''}
none: ~
empty:
block: |
  one
  two
"""


def test_every_scalar_stays_the_text_that_was_written() -> None:
    assert parse_tree(TEXT, "t.yaml").plain() == {
        "title": "1984",
        "list": ["no", {"deep": "2001-02-03", "quoted": ""}],
        "none": None,
        "empty": None,
        "block": "one\ntwo\n",
    }


@pytest.mark.parametrize(
    ("path", "line", "column"),
    [
        (("title",), 1, 8),
        (("list",), 3, 3),
        (("list", 0), 3, 5),
        (("list", 1), 4, 5),
        (("list", 1, "deep"), 4, 12),
        (("list", 1, "absent"), 4, 5),
        (("list", 7), 3, 3),
        (("list", 1, "deep", "deeper"), 4, 12),
        (("absent",), 1, 1),
        ((), 1, 1),
    ],
)
def test_the_place_of_a_field_or_of_what_is_around_it(path: FieldPath, line: int, column: int) -> None:
    place = parse_tree(TEXT, "t.yaml").place_of(path)
    assert (place.file, place.line, place.column) == ("t.yaml", line, column)
    assert place.source == TEXT.splitlines()[line - 1]


def test_the_place_of_a_key() -> None:
    tree = parse_tree(TEXT, "t.yaml")
    for path, at in (
        (("none",), "t.yaml:5:1"),
        (("list", 1, "quoted"), "t.yaml:4:24"),
        (("list", 0), "t.yaml:3:5"),
        (("a", "b"), "t.yaml:1:1"),
    ):
        assert str(tree.key_place_of(path)) == at


def test_what_is_written() -> None:
    tree = parse_tree(TEXT, "t.yaml")
    assert tree.holds(("list", 1, "deep"))
    assert tree.holds(("empty",))
    assert not tree.holds(("list", 2))
    assert not tree.holds(("title", "x"))
    assert len(set(tree.places())) == 16


def test_aliases_repeat_what_was_named_and_names_may_be_given_again() -> None:
    tree = parse_tree("a: &x {b: 1}\nc: *x\nd: &x 2\ne: *x\n", "t.yaml")
    assert tree.plain() == {"a": {"b": "1"}, "c": {"b": "1"}, "d": "2", "e": "2"}


def test_all_keys_that_stand_twice_are_told_at_once() -> None:
    with pytest.raises(ShelfFileError) as caught:
        parse_tree("a: 1\nb: {c: 1, c: 2}\na: 3\n", "t.yaml")
    assert str(caught.value).splitlines() == [
        "t.yaml:2:11: the key 'c' stands here a second time; it is on line 2 already; keep one of the two",
        "t.yaml:3:1: the key 'a' stands here a second time; it is on line 1 already; keep one of the two",
    ]


WORDS = st.text("abcXYZ 0189.:-#'\"{}[]&*!|>%@é", max_size=12)
VALUES = st.recursive(
    WORDS, lambda inner: st.lists(inner, max_size=3) | st.dictionaries(WORDS, inner, max_size=3), max_leaves=12
)


def written(value: Plain) -> str:
    """The value in flow style, every text in single quotes."""
    if isinstance(value, list):
        return "[" + ", ".join(map(written, value)) + "]"
    if isinstance(value, dict):
        return "{" + ", ".join(f"{written(key)}: {written(item)}" for key, item in value.items()) + "}"
    return "'" + str(value).replace("'", "''") + "'"


@given(VALUES)
def test_what_is_written_is_read(value: Plain) -> None:
    assert parse_tree(written(value), "t.yaml").plain() == value


def test_a_folded_text_is_read_as_the_lines_it_becomes() -> None:
    text = "a: >\n  one\n  two\n\n  three\nb: >-\n  four\n  five\n"
    assert parse_tree(text, "t.yaml").plain() == {"a": "one two\nthree\n", "b": "four five"}


def test_places_count_lines_as_yaml_does() -> None:
    tree = parse_tree("a: \u2028one\x85two\r\nb: three\rc: four\n", "t.yaml")
    assert [(place.line, place.source) for place in tree.keys.values()] == [
        (1, "a: \u2028one\x85two"),
        (2, "b: three"),
        (3, "c: four"),
    ]
