"""`check --explain`: the breakdown adds up, and a measured block stands beside the computed one."""

from __future__ import annotations

from pathlib import Path

import pytest

from bookmaker import check
from bookmaker.cli.grid import BOLD, PLAIN
from bookmaker.cli.tables import breakdown_table
from tests.kit.by_kind import books_of
from tests.kit.command_line import bookmaker

SHELF = """\
shelf: "[Worked] case"
stocks:
  page: {caliper: 75 um, glue: 15 um, grain: long}
  "cover [card]": {caliper: 160 um, film: 50 um, grain: long}
books:
  - title: "A [bold]Keeper's[/bold] Log"
    size: {height: 21 mm, width: 15 mm}
    block: {kind: accordion, stock: page, pages: 48EXTRA}
    cover: {kind: wrap, stock: "cover [card]", turn_in: 5 mm}
"""


def explained(folder: Path, extra: str = "") -> str:
    path = folder / "shelf.yaml"
    path.write_text(SHELF.replace("EXTRA", extra), encoding="utf-8")
    book = books_of(check(path).plan)[0]
    return "\n".join(breakdown_table(book, f"1 {book.name}").lines()).replace(BOLD, "").replace(PLAIN, "")


def rows(text: str) -> dict[str, list[str]]:
    found = [[part.strip() for part in line.split("  ") if part.strip()] for line in text.splitlines()]
    return {row[0]: row[1:] for row in found if row}


def test_the_layers_add_up_to_the_book(tmp_path: Path) -> None:
    found = rows(explained(tmp_path))
    assert found["panels"] == ["50", "0.075", "3.750", "page"]
    assert found["block as computed"] == ["4.110"]
    assert found["glue films under the pastedowns"] == ["2", "0.015", "0.030"]
    assert found["cover paper"] == ["2", "0.160", "0.320", "cover [card]"]
    assert found["turn-ins of the cover"] == ["2", "0.160", "0.320", "cover [card]"]
    assert found["glue films under the turn-ins"] == ["2", "0.030", "0.060"]
    assert found["film over cover paper"] == ["2", "0.050", "0.100"]
    assert found["film over turn-ins of the cover"] == ["2", "0.050", "0.100"]
    assert found["finished book"] == ["5.040"]
    assert found["spine on the flat cover, fold to fold"] == ["4.305"]


def test_a_measured_block_is_shown_against_the_computed_one(tmp_path: Path) -> None:
    found = rows(explained(tmp_path, ", measured_thickness: 4.32 mm"))
    assert found["block as measured"] == ["4.320"]
    assert found["measured less computed"] == ["+0.210"]
    assert found["finished book"] == ["5.250"]


def test_brackets_in_titles_are_not_markup(tmp_path: Path) -> None:
    assert "A [bold]Keeper's[/bold] Log" in explained(tmp_path)


@pytest.mark.parametrize("wanted", ["1", "a [bold]keeper's[/bold] log"])
def test_a_book_goes_by_number_or_title(tmp_path: Path, wanted: str) -> None:
    path = tmp_path / "shelf.yaml"
    path.write_text(SHELF.replace("EXTRA", ""), encoding="utf-8")
    assert "block as computed" in bookmaker("check", str(path), "--explain", wanted).out
