"""What is kept: made once for a key, within bounds, the youngest longest."""

from __future__ import annotations

from dataclasses import dataclass

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.kept import Kept, digest


@dataclass(frozen=True)
class Page:
    width: float
    name: str


def test_a_result_is_made_once() -> None:
    kept, made = Kept[str](10), list[str]()

    def make() -> str:
        made.append("fog")
        return "fog"

    assert [kept.get("a", make), kept.get("a", make), kept.get("b", make)] == ["fog"] * 3
    assert len(made) == 2


def test_an_error_keeps_nothing() -> None:
    kept = Kept[float](10)
    with pytest.raises(ZeroDivisionError):
        kept.get("a", lambda: 1 / 0)
    assert kept.get("a", lambda: 2.0) == 2.0


@given(asked=st.lists(st.integers(1, 12), max_size=60), most=st.integers(1, 30))
def test_it_weighs_no_more_than_it_may_and_holds_the_youngest(asked: list[int], most: int) -> None:
    """A model of the same: a list with the youngest last, from whose head what is too much is taken."""
    kept, model = Kept[int](most, float), list[int]()
    for number in asked:
        kept.get(str(number), lambda: number)  # noqa: B023 (called at once)
        model = [*(other for other in model if other != number), number]
        while sum(model) > most and len(model) > 1:
            del model[0]
        assert len(kept) == len(model)
        unmade = [kept.get(str(one), lambda: -1) for one in model]
        assert unmade == model


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (("ab", "c"), ("a", "bc")),
        ((1,), (1.0,)),
        ((None,), ("None",)),
        ((Page(1.0, "a"),), (Page(1.0, "b"),)),
        ((0.1 + 0.2,), (0.3,)),
        ((("a",), "b"), ("a", ("b",))),
        (("\ud800",), ("\ud801",)),
    ],
)
def test_what_differs_has_keys_of_its_own(one: tuple[object, ...], other: tuple[object, ...]) -> None:
    assert digest(*one) != digest(*other)
    assert digest(*one) == digest(*one)
