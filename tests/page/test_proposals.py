"""Changes of the whole shelf: seen first, written as they were seen, refused where the file is another by then."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

import bookmaker
from bookmaker.ground.problems import BookmakerError
from bookmaker.page.jobs import Accept, Answer, Asked, Look, Propose, Undo
from bookmaker.page.work.desk import Desk
from bookmaker.page.work.exchange import exchanged

TEXT = """\
# notes stay
shelf: The Net Loft
stocks:
  page paper: {caliper: 90 um, glue: spray}
  cover paper: {caliper: 160 um}
spaces:
  upper board: {width: 60 mm, height: 27 mm, depth: 22 mm}
  lower board: {width: 40 mm, height: 27 mm, depth: 22 mm}
defaults:
  size: {height: 20 mm, width: 14 mm}
  block: {kind: accordion, stock: page paper, pages: 32}
  cover: {kind: wrap, stock: cover paper}
books:
  - {title: Cork, space: upper board}   # the first
  - {title: Anchor, space: upper board}
  - {title: Bell, space: upper board, size: {height: 23 mm, width: 15 mm}}
"""


class Bench:
    """A shelf on a desk."""

    def __init__(self, folder: Path, text: str = TEXT) -> None:
        self.path = folder / "shelf.yaml"
        self.path.write_text(text, encoding="utf-8")
        self.overtaken = False
        self.desk = Desk(self.path, lambda _: None, lambda: self.overtaken)
        self.desk.do(Asked(1, Look()))

    def text(self) -> str:
        """What the file holds."""
        return self.path.read_text(encoding="utf-8")

    def propose(self, **wanted: object) -> dict[str, Any]:
        """What is proposed; the file is as it was."""
        before = self.text()
        found: dict[str, Any] = json.loads(self.desk.do(Asked(2, Propose(json.dumps(wanted).encode()))).body)
        assert self.text() == before
        return found

    def accept(self, found: dict[str, Any]) -> Answer:
        """The proposal, written."""
        return self.desk.do(Asked(3, Accept(found["key"])))


def order(shown: dict[str, Any], space: str) -> list[str]:
    """What stands in a space from the left."""
    found = next(one for one in shown["spaces"] if one["name"] == space)
    return [shown["things"][one["thing"]]["name"] for one in found["shown"]]


def test_an_order_is_seen_then_written_then_taken_back(tmp_path: Path) -> None:
    bench = Bench(tmp_path)
    found = bench.propose(what="arrange", by="title")
    assert order(found["shelf"], "upper board") == ["Anchor", "Bell", "Cork"]
    assert any("Cork" in line for line in found["lines"])
    done = bench.accept(found)
    assert [one.title for one in bookmaker.check(tmp_path / "shelf.yaml").plan.spec.books] == ["Anchor", "Bell", "Cork"]
    assert "title: Cork, space: upper board}   # the first" in bench.text()
    bench.desk.do(Asked(4, Undo(done.changed)))
    assert bench.text() == TEXT


def test_a_space_is_filled_with_invented_books_which_are_then_written_out(tmp_path: Path) -> None:
    bench = Bench(tmp_path)
    found = bench.propose(what="fill", space="lower board", count=5, subjects=["sea"], mood="an attic")
    assert len(order(found["shelf"], "lower board")) == 5
    assert all(line.startswith("+") for line in found["lines"])
    bench.accept(found)
    assert bench.text().startswith(TEXT)
    titles = [one.name for one in bookmaker.check(bench.path).plan.plans.values()][3:]
    written = bench.propose(what="freeze")
    assert written["words"][0].startswith("5 invented books")
    bench.accept(written)
    assert "invented" not in bench.text() and all(title in bench.text() for title in titles)
    assert bench.propose(what="freeze")["words"] == ["No books are invented: nothing would change."]


def test_looks_are_kept(tmp_path: Path) -> None:
    bench = Bench(tmp_path)
    found = bench.propose(what="keep")
    assert len(found["lines"]) == 6 and [line for line in found["lines"] if line.startswith("+")] != []
    bench.accept(found)
    assert bench.text().count("look: ") == 3


def test_what_was_seen_is_written_or_nothing(tmp_path: Path) -> None:
    bench = Bench(tmp_path)
    found = bench.propose(what="keep")
    other = TEXT.replace("Anchor", "Buoy")
    bench.path.write_text(other, encoding="utf-8")
    with pytest.raises(BookmakerError, match="changed since"):
        bench.accept(found)
    assert bench.text() == other
    with pytest.raises(BookmakerError, match="no longer at hand"):
        bench.accept(found)


def test_a_proposal_is_given_up_when_the_shelf_changes(tmp_path: Path) -> None:
    bench = Bench(tmp_path)
    bench.overtaken = True
    with pytest.raises(BookmakerError, match="changed meanwhile"):
        bench.propose(what="arrange")


@pytest.mark.parametrize(
    "wanted",
    [
        {},
        {"what": "burn"},
        {"what": "arrange", "by": "weight of ink"},
        {"what": "arrange", "colour": -1},
        {"what": "fill", "space": "nowhere"},
        {"what": "fill", "space": "lower board", "subjects": ["velvet"]},
        {"what": "fill", "space": "lower board", "cover": "velvet"},
        {"what": "freeze", "path": "/etc/passwd"},
    ],
)
def test_what_cannot_be_proposed(tmp_path: Path, wanted: dict[str, object]) -> None:
    with pytest.raises(BookmakerError):
        Bench(tmp_path).propose(**wanted)


def test_of_several_files_all_are_exchanged_or_none(tmp_path: Path) -> None:
    bench = Bench(tmp_path)
    done = bench.accept(bench.propose(what="keep"))
    table = tmp_path / "more.csv"
    table.write_text("title\nFog\n", encoding="utf-8")
    kept, (one,) = bench.text(), done.changed
    stale = type(one)(table, "0" * 64, b"title\nSalt\n", b"")
    with pytest.raises(BookmakerError, match="changed since"):
        exchanged((stale, one))
    assert bench.text() == kept and table.read_text(encoding="utf-8") == "title\nFog\n"
