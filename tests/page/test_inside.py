"""What the pages show, changed part by part: the smallest change of the text, whatever form it has."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

import bookmaker
from bookmaker.ground.problems import BookmakerError
from bookmaker.page.jobs import Asked, Change, Look, Tell
from bookmaker.page.work.desk import Desk

HEAD = """\
shelf: The Net Loft
stocks: {page paper: {caliper: 90 um}, cover paper: {caliper: 160 um}}
defaults:
  size: {height: 20 mm, width: 14 mm}
  block: {kind: accordion, stock: page paper, pages: 32}
  cover: {kind: wrap, stock: cover paper}
"""

ALONE = "books:\n  - title: Rope\n    inside: {kind: ruled, spacing: 1.5 mm}   # a note\n"

SEVERAL = """\
books:
  - title: Rope
    inside:
      - {kind: title page, subtitle: A Walk}   # the first
      # it goes on
      - {kind: text, file: rope.txt, margins: {inner: 2 mm, outer: 2 mm, top: 2 mm, bottom: 2 mm}}
      - kind: blank
"""

BY_DEFAULT = "  inside: {kind: dummy text, size: 2.2 pt}\nbooks:\n  - title: Rope\n"


class Bench:
    """A shelf on a desk, and what is done with the inside of its book."""

    def __init__(self, folder: Path, text: str) -> None:
        self.path = folder / "shelf.yaml"
        self.text = HEAD + text
        self.path.write_text(self.text, encoding="utf-8")
        (folder / "rope.txt").write_text("A rope is many threads.\n" * 9, encoding="utf-8")
        self.desk = Desk(self.path, lambda _: None, lambda: False)
        self.desk.do(Asked(1, Look()))

    def told(self) -> dict[str, Any]:
        """What is told of the inside."""
        found: dict[str, Any] = json.loads(self.desk.do(Asked(2, Tell("rope"))).body)["inside"]
        return found

    def write(self, *parts: dict[str, Any], was: str | None = None) -> str:
        """The text after the parts are written so."""
        seen = {"inside": was} if was is not None else {}
        wanted = {"thing": "rope", "inside": list(parts), "was": seen}
        self.desk.do(Asked(3, Change(json.dumps(wanted).encode())))
        bookmaker.check(self.path)
        return self.path.read_text(encoding="utf-8").removeprefix(HEAD)


def test_a_key_of_a_part_that_stands_alone(tmp_path: Path) -> None:
    bench = Bench(tmp_path, ALONE)
    seen = bench.told()["seen"]
    text = bench.write({"was": 0, "set": {"spacing": "1.8 mm"}}, was=seen)
    assert text == ALONE.replace("1.5 mm", "1.8 mm")
    with pytest.raises(BookmakerError, match="changed meanwhile"):
        bench.write({"was": 0, "set": {"spacing": "2 mm"}}, was=seen)


def test_another_kind_takes_the_keys_out_that_it_does_not_know(tmp_path: Path) -> None:
    text = Bench(tmp_path, ALONE).write({"was": 0, "set": {"kind": "blank"}})
    assert text == ALONE.replace("{kind: ruled, spacing: 1.5 mm}", "{kind: blank}")


def test_a_part_added_makes_a_list(tmp_path: Path) -> None:
    bench = Bench(tmp_path, ALONE)
    bench.write({"was": 0}, {"set": {"kind": "colophon"}})
    assert [part["kind"] for part in bench.told()["parts"]] == ["ruled", "colophon"]
    assert [field["written"] for field in bench.told()["parts"][0]["fields"] if "spacing" in field["key"]] == ["1.5 mm"]


def test_in_a_list_only_what_differs_is_written(tmp_path: Path) -> None:
    bench = Bench(tmp_path, SEVERAL)
    assert bench.told()["parts"][1]["others"] == ["margins"]
    text = bench.write({"was": 0, "set": {"subtitle": "A Climb"}}, {"was": 1}, {"was": 2})
    assert text == SEVERAL.replace("A Walk", "A Climb")
    text = bench.write({"was": 0}, {"was": 1})
    assert text == SEVERAL.replace("A Walk", "A Climb").replace("      - kind: blank\n", "")
    bench.write({"was": 1}, {"was": 0})
    assert [part["kind"] for part in bench.told()["parts"]] == ["text", "title page"]


def test_what_comes_from_the_defaults_is_written_where_it_differs(tmp_path: Path) -> None:
    bench = Bench(tmp_path, BY_DEFAULT)
    text = bench.write({"was": 0, "set": {"size": "2.4 pt"}})
    assert text.startswith(BY_DEFAULT) and "2.4 pt" in text.removeprefix(BY_DEFAULT)
    bench = Bench(tmp_path, BY_DEFAULT)
    text = bench.write({"set": {"kind": "title page"}}, {"was": 0})
    assert text.startswith(BY_DEFAULT)
    assert [part["kind"] for part in bench.told()["parts"]] == ["title page", "dummy text"]
    assert "2.2 pt" not in text.removeprefix(BY_DEFAULT)


def test_what_the_file_would_refuse_is_refused(tmp_path: Path) -> None:
    bench = Bench(tmp_path, SEVERAL)
    for parts in ([{"set": {"kind": "velvet"}}], [{"was": 9, "set": {}}], [{"was": 0, "set": {"pages": "many"}}]):
        with pytest.raises(BookmakerError):
            bench.write(*parts)
        assert bench.path.read_text(encoding="utf-8") == bench.text
