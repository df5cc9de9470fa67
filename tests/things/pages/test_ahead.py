"""Texts set by several processes: the same bytes as by one, and only where it pays."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import workshop as pipeline
from bookmaker.shelf import ahead
from bookmaker.shelf.reading import read_shelf
from bookmaker.shelf.sources import read_sources
from bookmaker.things.book.pages.prose.loaded_text import LoadedText

pytestmark = pytest.mark.filterwarnings("ignore:.*fork.*:DeprecationWarning")

SHELF = """\
shelf: Two at a Time
stocks:
  page: {caliper: 75 um, grain: long}
  cover: {caliper: 160 um}
defaults:
  size: {height: 21 mm, width: 15 mm}
  cover: {kind: wrap, stock: cover}
books:
  - title: Fog
    block: {kind: concertina, stock: page}
    inside: {kind: text, file: fog.md, drop_capital: 2, running_heads: yes}
  - title: Rain
    block: {kind: concertina, stock: page, pages: 20}
    inside: {kind: text, file: rain.txt, size: fit}
  - title: Hail
    block: {kind: concertina, stock: page, pages: 4}
    inside: {kind: text, file: rain.txt, size: 2.4 pt, face: old style}
  - title: Sky
    block: {kind: concertina, stock: page, pages: 20}
"""


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    sentence = "The keeper trims the lamp *at dusk* and writes down the wind, the sea and the state of the sky."
    (tmp_path / "fog.md").write_text("\n\n".join(["# Fog", *[sentence] * 30, "# More", *[sentence] * 30]))
    (tmp_path / "rain.txt").write_text("\n\n".join([sentence.replace("*", "")] * 40))
    (tmp_path / "shelf.yaml").write_text(SHELF)
    return tmp_path / "shelf.yaml"


def made(shelf: Path, name: str) -> dict[str, bytes]:
    pipeline.make(shelf, shelf.parent / name)
    return {file.name: file.read_bytes() for file in sorted((shelf.parent / name).iterdir())}


def test_two_processes_give_the_bytes_of_one(shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(ahead, "_processors", lambda: 2)
    used: list[bool] = []

    def forced(spec: object, insides: object) -> bool:
        used.append(ahead.set_texts_ahead(spec, insides, least_words=1))  # type: ignore[arg-type]
        return used[-1]

    one = made(shelf, "one")
    monkeypatch.setattr(pipeline, "set_texts_ahead", forced)
    assert made(shelf, "two") == one
    assert used == [True]


def test_what_was_set_ahead_is_not_set_again(shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(ahead, "_processors", lambda: 2)
    read = read_shelf(shelf)
    insides = [inside for inside, _, _ in read_sources(read, []).books]
    assert ahead.set_texts_ahead(read.spec, insides, least_words=1)
    texts = [inside.long_text for inside in insides]
    assert [type(text) for text in texts] == [LoadedText, LoadedText, LoadedText, type(None)]
    assert all(text.source.proofs.made for text in texts[:3])
    assert texts[1].source.proofs.fitted


@pytest.mark.parametrize(("processors", "least"), [(1, 1), (2, ahead.LEAST_WORDS)])
def test_one_process_does_it_where_more_do_not_pay(
    shelf: Path, monkeypatch: pytest.MonkeyPatch, processors: int, least: int
) -> None:
    monkeypatch.setattr(ahead, "_processors", lambda: processors)
    read = read_shelf(shelf)
    insides = [inside for inside, _, _ in read_sources(read, []).books]
    assert not ahead.set_texts_ahead(read.spec, insides, least_words=least)
    assert not any(inside.long_text.source.proofs.made for inside in insides if inside.long_text)
