"""What an edit asks for hangs on what it changes, and not on how many other things the shelf has."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Hashable
from pathlib import Path

import pytest

from bookmaker.ground.kept import Kept
from bookmaker.ground.kept.last_time import LastTime
from bookmaker.workshop import Workshop

HEAD = """\
shelf: Many
stocks: {page: {caliper: 90 um, grain: long}, cover: {caliper: 160 um, grain: long}}
spaces: {board: {width: 300 mm, height: 30 mm, depth: 25 mm}}
defaults:
  size: {height: 21 mm, width: 15 mm}
  block: {kind: accordion, stock: page, pages: 16}
  cover: {kind: wrap, stock: cover}
  design: {style: plain, colour: "#335544"}
  space: board
books:
"""


def shelf_of(books: int) -> str:
    return HEAD + "".join(
        f"  - title: Table {number} of {books}\n    date: '{1800 + number}'\n" for number in range(books)
    )


@pytest.fixture
def made(monkeypatch: pytest.MonkeyPatch) -> Counter[str]:
    """How often something is made because nothing of the kind was kept, by what it is."""
    count: Counter[str] = Counter()
    asked, got = LastTime._get, Kept.get

    def counted(what: str, make: Callable[[], object]) -> Callable[[], object]:
        def making() -> object:
            count[what] += 1
            return make()

        return making

    def ask(self: LastTime, name: Hashable, of: tuple[object, ...], make: Callable[[], object]) -> object:
        return asked(self, name, of, counted(str(name[0] if isinstance(name, tuple) else name), make))

    def get(self: Kept[object], key: Hashable, make: Callable[[], object]) -> object:
        return got(self, key, counted("kept value", make))

    monkeypatch.setattr(LastTime, "_get", ask)
    monkeypatch.setattr(Kept, "get", get)
    return count


@pytest.mark.parametrize(
    ("old", "new"),
    [("'1804'", "'1904'"), ("date: '1804'", "block: {pages: 24}"), ("Table 4 of", "A Table of")],
)
def test_an_edit_makes_as_much_anew_on_a_short_shelf_as_on_a_long_one(
    tmp_path: Path, made: Counter[str], old: str, new: str
) -> None:
    counts = []
    for books in (12, 36):
        path = tmp_path / f"{books}.yaml"
        path.write_text(shelf_of(books), encoding="utf-8")
        workshop = Workshop()
        before = workshop.check(path)
        path.write_text(shelf_of(books).replace(old, new, 1), encoding="utf-8")
        made.clear()
        after = workshop.check(path)
        assert sum(before.drafts.get(id) is not draft for id, draft in after.drafts.items()) == 1
        counts.append(dict(made))
    assert counts[0] == counts[1]
    assert all(count <= 3 for what, count in counts[0].items()), counts[0]
