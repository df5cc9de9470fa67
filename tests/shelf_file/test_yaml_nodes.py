"""Nodes of a YAML text: each covers what it says, from its first sign to its last."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from ruamel.yaml.error import YAMLError

from bookmaker.shelf_file.yaml_nodes import GroupNode, Lines, ListNode, Node, RepeatNode, ScalarNode, read_nodes

TEXT = """\
# a shelf
two lines: Salt
  and Rope   # yes
"quoted"\t:\t'it''s' \t # tabs
flow: {a: [b, "c"], d: , e}   # note
lists:
- - one
  -   &name
    two
-
- *name
literal: |   # a note, no text
  one

  two

kept: |+
  three

# a note
folded: >-
  four
   \t
last: {pair: [a: b]}
"""


def spans(node: Node) -> Iterator[tuple[int, int]]:
    yield node.start, node.end
    if isinstance(node, ListNode):
        for item in node.items:
            yield from spans(item)
    if isinstance(node, GroupNode):
        for key, value in node.entries:
            yield from spans(key)
            yield from spans(value)


def test_nodes_cover_what_they_say() -> None:
    for line_end in ("\n", "\r\n", "\r"):
        written = TEXT.replace("\n", line_end)
        whole = read_nodes(written)
        assert whole is not None
        covered = [written[start:end].replace(line_end, "\n") for start, end in spans(whole)]
        assert covered[1:] == [
            "two lines", "Salt\n  and Rope", '"quoted"', "'it''s'", "flow", '{a: [b, "c"], d: , e}', "a", '[b, "c"]',
            "b", '"c"', "d", "", "e", "", "lists", "- - one\n  -   &name\n    two\n-\n- *name",
            "- one\n  -   &name\n    two", "one", "&name\n    two", "", "*name", "literal",
            "|   # a note, no text\n  one\n\n  two", "kept", "|+\n  three\n", "folded", ">-\n  four\n   \t",
            "last", "{pair: [a: b]}", "pair", "[a: b]", "a: b", "a", "b",
        ]  # fmt: skip
        assert covered[0] == TEXT.removeprefix("# a shelf\n").removesuffix("\n")


def test_what_a_star_repeats_is_the_node_with_its_name() -> None:
    whole = read_nodes("a: &x 1\nb: *x\nc: &x 2\nd: *x\n")
    assert isinstance(whole, GroupNode)
    meant = [value.meant for _, value in whole.entries if isinstance(value, RepeatNode)]
    assert [node.text for node in meant if isinstance(node, ScalarNode)] == ["1", "2"]


@pytest.mark.parametrize("text", ["", "# only a note\n", "\n\n", "---\n# nothing\n"])
def test_a_text_without_a_value(text: str) -> None:
    whole = read_nodes(text)
    assert whole is None or (isinstance(whole, ScalarNode) and whole.is_nothing)


@pytest.mark.parametrize("text", ["a: 1\n---\nb: 2\n", "a: *x\n", "a: [1\n", "a: b: c\n"])
def test_what_is_not_one_text_in_yaml(text: str) -> None:
    with pytest.raises(YAMLError):
        read_nodes(text)


def test_lines_are_found_by_offsets() -> None:
    lines = Lines("ab\r\nc\rd\n\ne")
    assert [lines.number(offset) for offset in (0, 2, 4, 5, 6, 8, 9, 10)] == [
        (0, 0), (0, 2), (1, 0), (1, 1), (2, 0), (3, 0), (4, 0), (4, 1),
    ]  # fmt: skip
    assert [lines.line(number) for number in range(6)] == ["ab", "c", "d", "", "e", ""]


@pytest.mark.parametrize("text", ["\ta: 1\n", "a:\n\tb: 1\n", "a:\n  b: 1\n \tc: 2\n", "- a\n\t- b\n"])
def test_tabs_do_not_indent(text: str) -> None:
    with pytest.raises(YAMLError):
        read_nodes(text)
