"""Defaults: laid under every book, key by key; the book's own word wins."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker import check
from bookmaker.shelf_file.defaults import with_defaults
from bookmaker.shelf_file.yaml_tree import Plain, parse_tree
from tests.kit.shelves import ONE_BOOK, merged


@pytest.mark.parametrize(
    ("defaults", "book", "result"),
    [
        ("{space: a}", "{title: T}", {"title": "T", "space": "a"}),
        ("{space: a}", "{space: b}", {"space": "b"}),
        ("{block: {stock: s, pages: 8}}", "{block: {pages: 6}}", {"block": {"stock": "s", "pages": "6"}}),
        ("{block: {stock: s}}", "{block: x}", {"block": "x"}),
        ("{a: {b: {c: 1, d: 2}}}", "{a: {b: {c: 3}}}", {"a": {"b": {"c": "3", "d": "2"}}}),
        ("{list: [1, 2]}", "{list: [3]}", {"list": ["3"]}),
        # a group of one kind lends nothing to another kind
        ("{cover: {kind: wrap, turn_in: 5}}", "{cover: {kind: case}}", {"cover": {"kind": "case"}}),
        ("{cover: {turn_in: 5}}", "{cover: {kind: case}}", {"cover": {"kind": "case", "turn_in": "5"}}),
        # a list of groups lends the one of the book's kind, or its first
        (
            "{cover: [{kind: wrap, a: 1}, {kind: case, b: 2}]}",
            "{cover: {kind: case, c: 3}}",
            {"cover": {"kind": "case", "b": "2", "c": "3"}},
        ),
        (
            "{cover: [{kind: wrap, a: 1}, {kind: case}]}",
            "{title: T}",
            {"title": "T", "cover": {"kind": "wrap", "a": "1"}},
        ),
        ("{cover: [{kind: wrap, a: 1}]}", "{cover: {kind: case}}", {"cover": {"kind": "case"}}),
        # a size of either sort replaces the other
        ("{size: {height: 1}}", "{life_size: {height: 2}}", {"life_size": {"height": "2"}}),
        ("{life_size: {height: 1}}", "{size: {height: 2}}", {"size": {"height": "2"}}),
    ],
)
def test_what_a_book_becomes(defaults: str, book: str, result: Plain) -> None:
    assert merged(defaults, book) == result


@pytest.mark.parametrize("text", ["[a]", "defaults: 3\nbooks: []", "books: []", "defaults: [a]\nbooks: []", "x"])
def test_what_has_another_shape_is_left_alone(text: str) -> None:
    tree = parse_tree(text, "t.yaml")
    assert with_defaults(tree) is tree


def test_books_that_are_no_list_stay_for_the_check_to_refuse() -> None:
    tree = with_defaults(parse_tree("defaults: {space: a}\nbooks: many\n", "t.yaml"))
    assert tree.plain() == {"books": "many"}


GROUPS = st.dictionaries(
    st.sampled_from("abc"), st.sampled_from("12") | st.dictionaries(st.sampled_from("de"), st.sampled_from("34"))
)


def written(group: object) -> str:
    return str(group).replace("'", "") if group else "{}"


@given(GROUPS, GROUPS)
def test_every_word_of_the_book_stands_and_every_other_default_too(defaults: Plain, book: Plain) -> None:
    assert isinstance(defaults, dict)
    assert isinstance(book, dict)
    result = merged(written(defaults), written(book))
    assert isinstance(result, dict)
    assert set(result) == set(defaults) | set(book)
    for key, value in result.items():
        lent, own = defaults.get(key), book.get(key, defaults.get(key))
        both = isinstance(lent, dict) and isinstance(own, dict)
        assert value == ({**lent, **own} if both else own)  # type: ignore[dict-item]


@given(GROUPS)
def test_a_book_that_says_all_that_the_defaults_say_is_unchanged(book: Plain) -> None:
    assert merged(written(book), written(book)) == book


def test_what_goes_wrong_in_a_book_with_a_default_is_shown_at_the_book(tmp_path: Path) -> None:
    """The text is a default, but it is this book's pages that it does not fill."""
    (tmp_path / "salt.yaml").write_text(
        ONE_BOOK.replace("books:", "defaults: {inside: {kind: text, file: tide.txt, size: 2 pt}}\nbooks:"),
        encoding="utf-8",
    )
    (tmp_path / "tide.txt").write_text("Low water.", encoding="utf-8")
    problems = check(tmp_path / "salt.yaml").problems
    assert [problem.field[:3] for problem in problems] == [("books", 0, "inside")] * len(problems)
    assert {str(problem.place) for problem in problems} == {"salt.yaml:9:5"}
