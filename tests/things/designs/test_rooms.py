"""Rooms: forty books from one word, in the shares and of the years that such a room had."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from pathlib import Path
from typing import get_args

import pytest

from bookmaker import check
from bookmaker.things.book.designs.design import DrawnDesign, Words
from bookmaker.things.book.designs.letters.eras import in_use, year_in
from bookmaker.things.book.designs.styles.room import ROOMS, RoomDesign, RoomName
from tests.kit.by_kind import books_of
from tests.kit.flats import flat_of
from tests.kit.styles import NO_FILES

every_room = pytest.mark.parametrize("room", get_args(RoomName))

SHELF = """\
shelf: Rooms
stocks:
  covers: {caliper: 120 um}
  pages: {caliper: 58 um}
defaults:
  size: {height: 20 mm, width: 14 mm}
  block: {kind: accordion, stock: pages, pages: 20}
  cover: {kind: wrap, stock: covers}
  design: {style: room, room: ROOM}
books:
"""


def entry_of(room: str) -> RoomDesign:
    return RoomDesign.model_validate({"style": "room", "room": room})


def words_of(entry: RoomDesign, look: int) -> Words:
    words = Words(f"Title {look}", "A. Fell", look=look)
    return replace(words, period=entry.period_for(words))


@every_room
def test_a_room_has_its_styles_and_palettes_in_their_shares(room: str) -> None:
    """Of 2000 books the share of each is right within four standard deviations of a draw: sqrt(p(1 - p) / n)."""
    entry, count = entry_of(room), 2000
    settled = [entry.settled(words_of(entry, look)) for look in range(count)]
    for asked, found in (
        (ROOMS[entry.room].styles, Counter(map(type, settled))),
        (ROOMS[entry.room].palettes, Counter(one.palette for one in settled if isinstance(one, DrawnDesign))),
    ):
        assert set(found) == set(asked)  # type: ignore[comparison-overlap]
        for kind, weight in asked.items():  # type: ignore[attr-defined]
            share = weight / sum(asked.values())  # type: ignore[attr-defined]
            assert abs(found[kind] / count - share) < 4 * (share * (1 - share) / count) ** 0.5


@every_room
def test_forty_books_are_of_several_styles_and_ages(room: str) -> None:
    entry = entry_of(room)
    for shelf in range(10):
        words = [words_of(entry, 40 * shelf + book) for book in range(40)]
        styles = Counter(type(entry.settled(said)) for said in words)
        assert len(styles) >= 3
        assert styles.most_common(1)[0][1] <= 32
        years = [int(said.period) for said in words]
        assert max(years) <= ROOMS[entry.room].year
        assert max(years) - min(years) > 20


@every_room
def test_no_book_of_a_room_is_lettered_in_typefaces_of_a_later_time(room: str) -> None:
    entry = entry_of(room)
    for look in range(1, 30):
        words = words_of(entry, look)
        titling = entry.dress(entry.load(NO_FILES), flat_of(), words).titling
        year = year_in(words.period)
        assert titling
        assert year
        assert in_use(titling.face, year) or titling.face == "old style"


def test_a_book_with_a_date_is_of_that_year() -> None:
    assert Words("Salt", date="1922", period="1900").dated == "1922"
    assert Words("Salt", period="1900").dated == "1900"


def checked(folder: Path, room: str, books: str) -> list[str]:
    """The styles of the books, as `check` lists them."""
    (folder / "shelf.yaml").write_text(SHELF.replace("ROOM", room) + books, encoding="utf-8")
    return [book.style for book in books_of(check(folder / "shelf.yaml").plan)]


def test_check_says_what_each_book_took_and_one_more_changes_none(tmp_path: Path) -> None:
    books = [f"  - {{title: Book {number}}}\n" for number in range(12)]
    alone = checked(tmp_path, "study", "".join(books))
    assert "room" not in alone
    assert len(set(alone)) >= 3
    assert checked(tmp_path, "study", "  - title: Another\n" + "".join(books))[1:] == alone


def test_a_set_is_alike_and_a_style_of_its_own_stays(tmp_path: Path) -> None:
    sets = "".join(f"  - {{title: Annals, volume: '{number}'}}\n" for number in range(1, 6))
    *volumes, own = checked(tmp_path, "parlour", sets + "  - {title: Log, design: {style: pamphlet}}\n")
    assert len(set(volumes)) == 1
    assert own == "pamphlet"
