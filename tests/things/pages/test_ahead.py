"""Texts set by several processes: the same bytes as by one, and only where it pays."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from bookmaker import workshop as pipeline
from bookmaker.shelf.plan import terms_of
from bookmaker.shelf.reading import read_shelf
from bookmaker.shelf.register import register_of
from bookmaker.things.book import ahead, family
from bookmaker.things.book.pages.prose.loaded_text import LoadedText
from bookmaker.things.book.plan import Book
from bookmaker.things.families import FAMILIES
from bookmaker.things.thing import Terms

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


def read_books(shelf: Path) -> list[Book]:
    """The books of a shelf with what their files hold."""
    register = register_of(read_shelf(shelf).spec, FAMILIES).read(shelf.parent, [])
    return [thing for thing in register.things.values() if isinstance(thing, Book)]


def test_two_processes_give_the_bytes_of_one(shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(ahead, "_processors", lambda: 2)
    used: list[bool] = []

    def forced(books: Sequence[Book], terms: Terms) -> bool:
        used.append(ahead.set_texts_ahead(books, terms, least_words=1))
        return used[-1]

    one = made(shelf, "one")
    monkeypatch.setattr(family, "set_texts_ahead", forced)
    assert made(shelf, "two") == one
    assert used == [True]


def test_what_was_set_ahead_is_not_set_again(shelf: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(ahead, "_processors", lambda: 2)
    books = read_books(shelf)
    assert ahead.set_texts_ahead(books, terms_of(read_shelf(shelf).spec, []), least_words=1)
    texts = [book.sources.inside.long_text for book in books]
    assert [type(text) for text in texts] == [LoadedText, LoadedText, LoadedText, type(None)]
    assert all(text.source.proofs.made for text in texts[:3])
    assert texts[1].source.proofs.fitted


@pytest.mark.parametrize(("processors", "least"), [(1, 1), (2, ahead.LEAST_WORDS)])
def test_one_process_does_it_where_more_do_not_pay(
    shelf: Path, monkeypatch: pytest.MonkeyPatch, processors: int, least: int
) -> None:
    monkeypatch.setattr(ahead, "_processors", lambda: processors)
    books = read_books(shelf)
    assert not ahead.set_texts_ahead(books, terms_of(read_shelf(shelf).spec, []), least_words=least)
    texts = [book.sources.inside.long_text for book in books]
    assert not any(text.source.proofs.made for text in texts if text)
