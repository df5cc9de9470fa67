"""A plan is written a piece at a time, and is the text that it would be as a whole."""

from __future__ import annotations

import json
from collections.abc import Iterator

from hypothesis import given
from hypothesis import strategies as st

from bookmaker.writers.plan_json import dump, in_pieces

PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.text('ab\n"\\é:'),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text("ab\n", max_size=2), inner, max_size=3),
    max_leaves=12,
)


def streamed(value: object) -> object:
    """The same with the lists of its dictionaries as iterators, as deep as these lie in one another."""
    if isinstance(value, dict):
        return {key: streamed(held) for key, held in value.items()}
    return iter(value) if isinstance(value, list) else value


@given(st.dictionaries(st.text("ab\n", max_size=2), PLAIN, max_size=4))
def test_iterators_are_written_as_the_lists_they_give(report: dict[str, object]) -> None:
    whole = json.dumps(report, ensure_ascii=False, indent=1) + "\n"
    assert dump({key: streamed(held) for key, held in report.items()}) == whole


def test_of_a_long_list_no_more_is_held_than_one_item() -> None:
    asked: list[int] = []

    def sheets() -> Iterator[int]:
        for number in range(3):
            asked.append(number)
            yield number

    pieces = in_pieces({"sheets": sheets()})
    while "0" not in next(pieces):
        pass
    assert asked == [0]
