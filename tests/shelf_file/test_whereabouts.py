"""Where a measured thickness is written: done as it is said, it is read from there, whatever form the book has."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from bookmaker import check
from bookmaker.ground.problems import FieldPath
from bookmaker.shelf_file.whereabouts import whereabouts
from bookmaker.workshop import Checked
from tests.kit.by_kind import books_of

SHELF = """\
shelf: The Salt Office
stocks:
  laid: {caliper: 75 um, glue: 15 um, grain: long}
  card: {caliper: 160 um, grain: long}
defaults:
  size: {height: 21 mm, width: 15 mm}
  block: {kind: accordion, stock: laid, pages: 22}
  cover: {kind: wrap, stock: card}
books:
  - title: Brine
  - title: Pans
    block: {pages: 26}
  - from titles.csv
  - title: Annals
    volumes: 3
  - author: A. Fell
    block: {pages: 30}
    row:
      - Weirs
      - {title: Sluices}
  - title: Logs
    volumes: 2
    row:
      - {}
      - {author: A. Fell}
"""

TABLE = "title,volumes\nRope,\nTar,2\n"

BLOCK = "block: {measured_thickness: … mm}"

SAID = {
    "Brine": f"shelf.yaml, line 10: {BLOCK}",
    "Pans": "shelf.yaml, line 11, in its block: measured_thickness: … mm",
    "Rope": "titles.csv, line 2: column block.measured_thickness",
    "Tar I": "titles.csv, line 3: a line for each volume, with the columns volume and block.measured_thickness",
    "Tar II": "titles.csv, line 3: a line for each volume, with the columns volume and block.measured_thickness",
    **{
        name: f"shelf.yaml, line 15: beside volumes a row of 3 items, number {n} of them {{{BLOCK}}}, the others {{}}"
        for n, name in enumerate(("Annals I", "Annals II", "Annals III"), start=1)
    },
    "Weirs": f"shelf.yaml, line 19: {{title: …, {BLOCK}}}",
    "Sluices": f"shelf.yaml, line 20: {BLOCK}",
    "Logs I": f"shelf.yaml, line 24: {BLOCK}",
    "Logs II": f"shelf.yaml, line 25: {BLOCK}",
}

MEASURED = "{measured_thickness: 2.5 mm}"
DONE = (
    ("  - title: Brine\n", f"  - title: Brine\n    block: {MEASURED}\n"),
    ("{pages: 26}", "{pages: 26, measured_thickness: 2.5 mm}"),
    ("    volumes: 3\n", f"    volumes: 3\n    row: [{{}}, {{block: {MEASURED}}}, {{}}]\n"),
    ("- Weirs", f"- {{title: Weirs, block: {MEASURED}}}"),
    ("{title: Sluices}", f"{{title: Sluices, block: {MEASURED}}}"),
    ("- {}\n", f"- {{block: {MEASURED}}}\n"),
)
"""The shelf file before and after what was said is done, for one book of each form."""

TABLE_DONE = "title,volume,block.measured_thickness\nRope,,2.5 mm\nTar,I\nTar,II,2.5 mm\n"


def written(folder: Path, shelf: str, table: str) -> Path:
    (folder / "titles.csv").write_text(table, encoding="utf-8")
    (folder / "shelf.yaml").write_text(shelf, encoding="utf-8")
    return folder / "shelf.yaml"


def fields_of(found: Checked) -> Mapping[str, FieldPath]:
    return found.plan.register.fields


def test_the_place_of_every_form_of_book_is_said(tmp_path: Path) -> None:
    found = check(written(tmp_path, SHELF, TABLE))
    places = {book.name: whereabouts(found.shelf, fields_of(found)[book.id]) for book in books_of(found.plan)}
    assert {name: place.length_of("block", "measured_thickness") for name, place in places.items()} == SAID
    brine = places["Brine"]
    assert brine.length_of("measured_thickness") == "shelf.yaml, line 10: measured_thickness: … mm"


def test_what_is_said_can_be_done(tmp_path: Path) -> None:
    shelf = SHELF
    for before, after in DONE:
        assert shelf.count(before) == 1
        shelf = shelf.replace(before, after)
    books = books_of(check(written(tmp_path, shelf, TABLE_DONE)).plan)
    measured = [book.name for book in books if book.block.bare.measured == 2.5]
    assert measured == ["Brine", "Pans", "Rope", "Tar II", "Annals II", "Weirs", "Sluices", "Logs I"]
    assert [book.name for book in books] == list(SAID)
