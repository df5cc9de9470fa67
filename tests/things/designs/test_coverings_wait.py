"""Coverings are made when they are drawn, not before: a check of many books draws none of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random

import pytest

from bookmaker.ground.art import Filled
from bookmaker.ground.drawing import Art
from bookmaker.things.book.designs.design import DrawnDesign
from bookmaker.things.book.designs.styles.cloth import Cloth
from bookmaker.things.book.designs.styles.look import Dressing
from tests.kit.flats import flat_of
from tests.kit.recording import record
from tests.kit.styles import dressed, every_style


@every_style
def test_what_is_drawn_twice_looks_the_same(model: type[DrawnDesign]) -> None:
    """Chance has its say once, for the second drawing as for the first."""
    art = dressed(model, flat_of()).art
    assert record(art).marks == record(art).marks


def test_a_covering_waits_until_it_is_drawn_and_is_made_once(monkeypatch: pytest.MonkeyPatch) -> None:
    made = []

    def covering(dressing: Dressing, _: Random) -> Iterator[Art]:
        made.append(dressing)
        yield Filled.box(dressing.faces.whole, dressing.ground)

    monkeypatch.setattr(Cloth, "look", replace(Cloth.look, covering=covering))
    art = dressed(Cloth, flat_of()).art
    assert not made
    assert record(art).marks
    record(art)
    assert len(made) == 1
