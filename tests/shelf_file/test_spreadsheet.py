"""Lists in spreadsheets are read like those saved from them, and what is no such thing is refused."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bookmaker.ground.problems import ShelfFileError
from bookmaker.shelf.reading import read_shelf
from bookmaker.shelf_file.book_list.spreadsheet import NoSpreadsheet, sheet_rows
from tests.kit.spreadsheets import archive, office, open_document

SHELF = """\
shelf: Listed
stocks: {page: {caliper: 80 um}, card: {caliper: 160 um}}
defaults:
  size: {height: 20 mm, width: 14 mm}
  block: {kind: accordion, stock: page, pages: 40}
  cover: {kind: wrap, stock: card}
books: from NAME
"""


TOO_MUCH = "unfolds to more than any list of books has"


def text(value: str) -> str:
    return f'<table:table-cell office:value-type="string"><text:p>{value}</text:p></table:table-cell>'


OFFICE = office(
    [
        '<c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c><c r="D1" t="inlineStr"><is><t>author</t></is></c>',
        '<c r="A2" t="s"><v>2</v></c><c r="B2"><v>48</v></c><c r="D2" t="str"><f>A1</f><v>A. Fell</v></c>',
        '<c r="A3"><v>1984</v></c><c r="B3"><v>16.0</v></c>',
    ],
    ["title", "pages", "Salt, Rope"],
)
OPEN = open_document(
    [
        f"<table:table-row>{text('title')}{text('pages')}<table:table-cell/>{text('author')}"
        '<table:table-cell table:number-columns-repeated="16000"/></table:table-row>',
        f"<table:table-row>{text('Salt, <text:span>Rope</text:span>')}"
        '<table:table-cell office:value-type="float" office:value="48"/><table:table-cell/>'
        f"{text('A. Fell')}</table:table-row>",
        '<table:table-row><table:table-cell office:value-type="float" office:value="1984"/>'
        '<table:table-cell office:value-type="float" office:value="16"/></table:table-row>',
        '<table:table-row table:number-rows-repeated="1048570">'
        '<table:table-cell table:number-columns-repeated="16384"/></table:table-row>',
    ]
)


@pytest.mark.parametrize(("name", "data"), [("books.xlsx", OFFICE), ("books.ods", OPEN)])
def test_a_list_in_a_spreadsheet_is_read(name: str, data: bytes, tmp_path: Path) -> None:
    (tmp_path / name).write_bytes(data)
    (tmp_path / "shelf.yaml").write_text(SHELF.replace("NAME", name), encoding="utf-8")
    books = read_shelf(tmp_path / "shelf.yaml").spec.books
    assert [(book.title, book.author) for book in books] == [("Salt, Rope", "A. Fell"), ("1984", None)]
    assert sheet_rows(data)[1:] == [["Salt, Rope", "48", "", "A. Fell"], ["1984", "16"]]


def test_faults_lead_back_to_their_rows_and_cells(tmp_path: Path) -> None:
    data = office(
        ['<c t="str"><v>title</v></c><c t="str"><v>pages</v></c>', "",
         '<c t="str"><v>Fog</v></c><c s="1"><v>46054</v></c>',
         '<c t="str"><v>Salt</v></c><c t="e"><v>#REF!</v></c>'],
        formats=(0, 164),
    )  # fmt: skip
    (tmp_path / "books.xlsx").write_bytes(data)
    (tmp_path / "shelf.yaml").write_text(SHELF.replace("NAME", "books.xlsx"), encoding="utf-8")
    with pytest.raises(ShelfFileError) as refused:
        read_shelf(tmp_path / "shelf.yaml")
    assert [str(problem.place) for problem in refused.value.problems] == ["books.xlsx:4:2"]
    assert refused.value.problems[0].message == "pages is #REF!, a formula that came to nothing"


def test_values_as_a_maker_would_write_them() -> None:
    cells = ('<c><v>21.300000000000001</v></c><c t="b"><v>1</v></c><c t="b"><v>0</v></c><c s="1"><v>46054</v></c>'
             '<c s="2"><v>46054</v></c><c s="3"><v>2.5</v></c>'
             '<c t="inlineStr"><is><r><t>a </t></r><r><t>b</t></r></is></c>')  # fmt: skip
    assert sheet_rows(office([cells], formats=(0, 14, 164, 165))) == [
        ["21.3", "yes", "no", "2026-02-01", "2026-02-01", "2.5", "a b"]
    ]
    row = ('<table:table-row><table:table-cell office:value-type="date" office:date-value="2026-02-01T00:00:00"/>'
           '<table:table-cell office:value-type="boolean" office:boolean-value="true"/>'
           '<table:table-cell office:value-type="percentage" office:value="0.03"/></table:table-row>')  # fmt: skip
    assert sheet_rows(open_document([row])) == [["2026-02-01", "yes", "0.03"]]


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (archive({"a.txt": "x"}), "is an archive, but no spreadsheet"),
        (OFFICE[:200], "is a spreadsheet that is damaged"),
        (archive({"content.xml": "<a>"}), "is a spreadsheet that is damaged"),
        (archive({"content.xml": "<a/>"}), "has no sheet"),
        (archive({"content.xml": '<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>'}), TOO_MUCH),
        (archive({"content.xml": "<a>" + " " * 20_000_000 + "</a>"}), TOO_MUCH),
        (open_document([f'<table:table-row table:number-rows-repeated="99999999">{text("x")}</table:table-row>']),
         "has more than 20000 rows"),
        (office(['<c r="A1" t="s"><v>9</v></c>']), "is a spreadsheet that is damaged"),
    ],
)  # fmt: skip
def test_what_is_no_list_is_refused(data: bytes, said: str) -> None:
    with pytest.raises(NoSpreadsheet) as refused:
        sheet_rows(data)
    assert str(refused.value) == said


@given(st.sampled_from((OFFICE, OPEN)), st.data())
def test_damaged_archives_are_refused_or_read(whole: bytes, data: st.DataObject) -> None:
    at = data.draw(st.integers(0, len(whole) - 1))
    damaged = whole[:at] + data.draw(st.binary(min_size=1, max_size=4)) + whole[at + data.draw(st.integers(0, 4)) :]
    try:
        sheet_rows(damaged)
    except NoSpreadsheet as refusal:
        assert str(refusal)


@given(st.sampled_from((OFFICE, OPEN)), st.data())
def test_damaged_xml_is_refused_or_read(whole: bytes, data: st.DataObject) -> None:
    with zipfile.ZipFile(io.BytesIO(whole)) as made:
        parts = {name: made.read(name).decode() for name in made.namelist()}
    name = data.draw(st.sampled_from(sorted(parts)))
    at = data.draw(st.integers(0, len(parts[name])))
    parts[name] = (
        parts[name][:at] + data.draw(st.sampled_from(("", "<", '"', "-", "9e99", "&x;"))) + parts[name][at + 1 :]
    )
    try:
        sheet_rows(archive(parts))
    except NoSpreadsheet as refusal:
        assert str(refusal)
