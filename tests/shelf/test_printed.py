"""What was printed is remembered: what differs is told with its reason, and only that is printed again."""

from __future__ import annotations

import json
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from bookmaker import check
from bookmaker.ground.drawing import Canvas
from bookmaker.sheets.fingerprints import Fingerprints
from bookmaker.shelf.printed.records import Printed, records_of
from bookmaker.things.book.designs.dressed import Dressed
from bookmaker.writers.plan_json import dump
from tests.kit.command_line import Said, bookmaker

SHELF = """\
shelf: Twice
stocks: {page: {caliper: 80 um}, card: {caliper: 160 um}}
spaces: {left: {width: 200 mm, height: 40 mm, depth: 25 mm}}
defaults:
  size: {height: 22 mm, width: 15 mm}
  cover: {kind: wrap, stock: card}
  design: {style: cloth}
  space: left
books:
  - {id: salt, title: Salt Roads, block: {kind: accordion, stock: page, pages: 16}}
  - {title: Fog Signals, look: 7, block: {kind: accordion, stock: page, pages: 16}}
  - {title: Ropes and Knots, block: {kind: accordion, stock: page, pages: 16}}
  - {title: Bees, block: {kind: dummy, thickness: 5 mm}}
"""


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    path = tmp_path / "shelf.yaml"
    path.write_text(SHELF, encoding="utf-8")
    assert made(path).code == 0
    return path


def made(shelf: Path, *options: str) -> Said:
    return bookmaker("make", str(shelf), "--into", str(shelf.parent / "out"), *options)


def plan(shelf: Path) -> Any:
    return json.loads((shelf.parent / "out" / "plan.json").read_text(encoding="utf-8"))


def on_sheets(shelf: Path) -> list[str]:
    return sorted(piece["id"] for sheet in plan(shelf)["sheets"] for piece in sheet["pieces"])


def edit(shelf: Path, old: str, new: str) -> None:
    text = shelf.read_text(encoding="utf-8")
    assert old in text
    shelf.write_text(text.replace(old, new), encoding="utf-8")


def test_a_shelf_where_nothing_changed_says_so(shelf: Path) -> None:
    before = plan(shelf)
    assert "nothing of what is printed has changed" in made(shelf).out
    assert plan(shelf) == before
    said = made(shelf, "--changed")
    assert (said.code, said.out.strip().endswith("was made: nothing to print")) == (0, True)
    assert plan(shelf) == before, "the folder stays as it was"


def test_a_corrected_title_costs_one_cover(shelf: Path) -> None:
    edit(shelf, "Salt Roads", "Salt Ways")
    said = made(shelf, "--changed")
    assert "Salt Ways: cover differs: title (Salt Roads, now Salt Ways)" in said.out
    assert on_sheets(shelf) == ["salt-wrap-1"]
    assert [paper["sheets"] for paper in plan(shelf)["paper"]] == [1]
    assert "nothing to print" in made(shelf, "--changed").out, "it is printed now, and the rest was before"


def test_a_title_is_recognised_by_its_look(shelf: Path) -> None:
    edit(shelf, "Fog Signals", "Signals in Thick Weather")
    said = made(shelf, "--changed")
    assert "Signals in Thick Weather: cover differs: title" in said.out
    assert "no more" not in said.out
    assert on_sheets(shelf) == ["signals-in-thick-weather-wrap-1"]


def test_a_look_that_went_with_its_title_can_be_had_back(shelf: Path) -> None:
    edit(shelf, "Ropes and Knots", "Ropes and Knobs")
    said = made(shelf, "--changed").out
    told = next(line for line in said.splitlines() if "another look" in line)
    assert "or id: ropes-and-knots" in told
    edit(
        shelf, "title: Ropes and Knobs", f"look: {told.split('write look: ')[1].split(',')[0]}, title: Ropes and Knobs"
    )
    assert "look" in made(shelf, "--changed").out


@pytest.mark.parametrize(
    ("old", "new", "why", "pieces"),
    [
        ("thickness: 5 mm", "thickness: 6 mm", "thickness (5.38 mm, now 6.38 mm)", ["bees-wrap-1"]),
        ("card: {caliper: 160 um}", "card: {caliper: 170 um}", "thickness", None),
        ("Salt Roads,", "Salt Roads, author: I. Holm,", "author (none, now I. Holm)", ["salt-wrap-1"]),
        ("look: 7", "look: 8", "look (7, now 8)", ["fog-signals-wrap-1"]),
        ("160 um}", "160 um, printer: {name: lab}}", "the printer that it goes through", None),
    ],
)  # fmt: skip
def test_the_reason_is_told(shelf: Path, old: str, new: str, why: str, pieces: list[str] | None) -> None:
    edit(shelf, old, new)
    assert why in made(shelf, "--changed").out
    covers = ["bees-wrap-1", "fog-signals-wrap-1", "ropes-and-knots-wrap-1", "salt-wrap-1"]
    assert on_sheets(shelf) == (covers if pieces is None else pieces)


def test_another_order_changes_nothing_but_places(shelf: Path) -> None:
    first, second = SHELF.splitlines()[-4:-2]
    edit(shelf, f"{first}\n{second}", f"{second}\n{first}")
    said = made(shelf).out
    assert "differ" not in said
    assert "only lie elsewhere" in said
    assert "nothing to print" in made(shelf, "--changed").out


def test_what_other_runs_printed_is_remembered(shelf: Path) -> None:
    edit(shelf, "Salt Roads", "Salt Ways")
    edit(shelf, "thickness: 5 mm", "thickness: 6 mm")
    made(shelf, "--only", "Bees")
    assert on_sheets(shelf) == ["bees-wrap-1"]
    made(shelf, "--changed")
    assert on_sheets(shelf) == ["salt-wrap-1"], "the other cover is still as it was printed first"


def test_what_was_never_printed_is_new(tmp_path: Path) -> None:
    path = tmp_path / "shelf.yaml"
    path.write_text(SHELF, encoding="utf-8")
    made(path, "--only", "salt")
    assert "Bees: cover differs: it is new" in made(path, "--changed").out
    assert "salt-wrap-1" not in on_sheets(path)


def test_what_is_ticked_off_is_not_asked_for_again(shelf: Path) -> None:
    edit(shelf, "title: Bees,", "title: Bees, done: [printed, cut],")
    made(shelf)
    assert "bees-wrap-1" not in on_sheets(shelf)
    assert "cutting-list.pdf" not in plan(shelf)["files"]
    edit(shelf, "thickness: 5 mm", "thickness: 6 mm")
    said = made(shelf, "--changed").out
    assert "Bees is ticked off as printed, but would differ now: thickness" in said
    assert "nothing to print" in said
    made(shelf, "--again", "Bees")
    assert on_sheets(shelf) == ["bees-wrap-1"]


def test_a_tick_that_is_none_is_refused(shelf: Path) -> None:
    edit(shelf, "title: Bees,", "title: Bees, done: varnished,")
    refused = made(shelf)
    assert refused.code == 2
    assert "write some of printed, cut, measured" in refused.err


def test_choices_that_exclude_each_other_are_refused(shelf: Path) -> None:
    refused = made(shelf, "--changed", "--again", "Bees")
    assert "--changed and --again cannot be used together" in refused.err


def test_records_come_back_as_they_were_written(shelf: Path) -> None:
    checked = check(shelf)
    pieces = [piece for draft in checked.drafts.values() for piece in draft.pieces]
    now = records_of(checked.plan, pieces, Fingerprints())
    assert Printed.read(json.loads(dump({"printed": now.report()}))) == now
    assert Printed.read({}) == Printed.read({"printed": {"pieces": [{"id": 3}]}}) == Printed()


@pytest.mark.parametrize(("options", "times"), [((), 1), (("--layers", "lines"), 1), (("--changed",), 2)])
def test_a_cover_is_printed_and_fingerprinted_in_one_go(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, options: tuple[str, ...], times: int
) -> None:
    """It is long to draw: once, and once more only if it must be known first whether it is to be printed.

    The small pictures of covers in the guide are left out: they are drawn apart, and for 200 things at most.
    """
    monkeypatch.setattr("bookmaker.writers.thumbnails.MOST", 0)
    path = tmp_path / "shelf.yaml"
    path.write_text(SHELF, encoding="utf-8")
    drawn: list[int] = []
    draw = Dressed.draw

    def counted(cover: Dressed, canvas: Canvas) -> None:
        drawn.append(cover.words.seed)
        draw(cover, canvas)

    monkeypatch.setattr(Dressed, "draw", counted)
    assert made(path, *options).code == 0
    assert Counter(drawn) == dict.fromkeys(drawn, times)
    assert len({*drawn}) == 4
