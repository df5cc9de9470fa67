"""Collection of garbage is held off for as long as work goes on, and no longer."""

from __future__ import annotations

import gc
from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.ground.collection import uncollected
from bookmaker.ground.problems import ShelfFileError


def test_it_goes_on_after_an_error() -> None:
    with pytest.raises(ValueError, match="fog"), uncollected():
        assert not gc.isenabled()
        raise ValueError("fog")
    assert gc.isenabled()


def test_the_outermost_block_ends_it() -> None:
    with uncollected():
        with uncollected():
            pass
        assert not gc.isenabled()
    assert gc.isenabled()


def test_who_collects_nothing_is_left_alone() -> None:
    gc.disable()
    try:
        with uncollected():
            pass
        assert not gc.isenabled()
    finally:
        gc.enable()


def test_a_shelf_is_checked_without_and_a_refusal_ends_it(tmp_path: Path) -> None:
    seen: list[bool] = []
    shelf = tmp_path / "shelf.yaml"
    shelf.write_text(
        "shelf: Fog\nstocks: {p: {caliper: 90 um}}\nbooks:\n  - {title: Fog, size: {height: 21 mm, width: "
        "15 mm}, block: {kind: accordion, pages: 4, stock: p}, cover: {kind: wrap, stock: p}}\n"
    )
    check(shelf, lambda *_: seen.append(gc.isenabled()))
    assert seen == [False]
    with pytest.raises(ShelfFileError):
        check(tmp_path / "none.yaml")
    assert gc.isenabled()
