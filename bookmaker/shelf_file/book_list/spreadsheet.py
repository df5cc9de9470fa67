"""The first sheet of a spreadsheet as rows of text: Office Open XML (ISO/IEC 29500) and OpenDocument (ISO/IEC 26300).

Both are XML in a zip archive. What a cell shows is not kept there, but its value is: a number as it was reckoned, a
date by its day, yes and no for truth. Of a formula its last value is read.
"""

from __future__ import annotations

import io
import re
import zipfile
import zlib
from collections.abc import Iterator
from datetime import date, timedelta
from xml.etree.ElementTree import Element, ParseError, iterparse

__all__ = ["NoSpreadsheet", "sheet_rows"]

LARGEST_PART = 15_000_000
"""Bytes of XML; a sheet of 5000 books has about two million."""

MOST_ROWS, MOST_CELLS = 20_000, 300
"""More rows, and more cells in one, than any list of books has; what is repeated beyond stands for empty paper."""

SHARED = "xl/sharedStrings.xml"
"""Where the texts of all sheets are kept."""

DAY_NOUGHT = date(1899, 12, 30)
"""Days are counted from here in Office Open XML, which takes 1900 for a leap year (ISO/IEC 29500-1, 18.17.4.1)."""

DATES = frozenset({*range(14, 23), *range(27, 37), *range(45, 48), *range(50, 59)})
"""Numbers of the built-in formats of dates and times (ISO/IEC 29500-1, 18.8.30)."""

OF_A_DATE = re.compile(r"[ymd]", re.IGNORECASE)
NO_LETTERS = re.compile(r'"[^"]*"|\[[^\]]*\]|\\.')
"""What in a format is no sign of one: text in quotes, colours and conditions, escaped signs."""


DAMAGES = (
    zipfile.BadZipFile, zlib.error, ParseError, LookupError, ValueError, OverflowError, EOFError, NotImplementedError,
    RuntimeError,
)  # fmt: skip
"""What reading an archive or its XML may raise; a password is a RuntimeError."""


class NoSpreadsheet(ValueError):  # noqa: N818 - it reads as a sentence where it is caught
    """An archive that is no spreadsheet that can be read; the text says what it is."""


def sheet_rows(data: bytes) -> list[list[str]]:
    """The rows of the first sheet; empty ones between others stand for their lines.

    Raises:
        NoSpreadsheet: it is no such file, damaged, or too large.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            names = set(archive.namelist())
            if "xl/workbook.xml" in names:
                return _trimmed(_of_office(archive))
            if "content.xml" in names:
                return _trimmed(_of_open_document(archive))
    except NoSpreadsheet:
        raise
    except DAMAGES:
        raise NoSpreadsheet("is a spreadsheet that is damaged") from None
    raise NoSpreadsheet("is an archive, but no spreadsheet")


def _trimmed(rows: Iterator[list[str]]) -> list[list[str]]:
    """The rows without the empty ones at the end, nor empty cells at their ends."""
    found: list[list[str]] = []
    for row in rows:
        while row and not row[-1]:
            row.pop()
        found.append(row)
        if len(found) > MOST_ROWS:
            raise NoSpreadsheet(f"has more than {MOST_ROWS} rows")
    while found and not found[-1]:
        found.pop()
    return found


def _elements(archive: zipfile.ZipFile, name: str, wanted: str) -> Iterator[Element]:
    """The elements of a name in a part of the archive, one after the other; each is forgotten once it was seen."""
    if archive.getinfo(name).file_size > LARGEST_PART:
        raise NoSpreadsheet("unfolds to more than any list of books has")
    with archive.open(name) as part:
        data = part.read(LARGEST_PART + 1)
    # no spreadsheet declares entities, which could unfold without end
    if len(data) > LARGEST_PART or b"<!" in data.replace(b"<!--", b"").replace(b"<![CDATA[", b"") or b"\0" in data[:99]:
        raise NoSpreadsheet("unfolds to more than any list of books has")
    for _, element in iterparse(io.BytesIO(data), ("end",)):
        if _name(element) == wanted:
            yield element
            element.clear()


def _name(element: Element) -> str:
    return element.tag.rpartition("}")[2]


def _attribute(element: Element, name: str) -> str:
    """An attribute by its name, whatever its namespace."""
    return next((value for key, value in element.items() if key.rpartition("}")[2] == name), "")


def _number(text: str) -> str:
    """A number as a maker would write it: the shortest that is the same.

    >>> _number("21.300000000000001"), _number("48")
    ('21.3', '48')
    """
    value = float(text)
    return str(int(value)) if value.is_integer() and abs(value) < 1e15 else repr(value)


def _one_line(text: str) -> str:
    return " ".join(text.split())


def _texts(element: Element, name: str = "t") -> str:
    """All text of an element in its parts of a name, without what tells how to say it."""
    return "".join(part.text or "" for part in element.iter() if _name(part) == name and part.text)


def _of_office(archive: zipfile.ZipFile) -> Iterator[list[str]]:
    names = archive.namelist()
    shared = [_texts(one) for one in _elements(archive, SHARED, "si")] if SHARED in names else []
    dates = _date_styles(archive) if "xl/styles.xml" in names else frozenset()
    line = 0
    for row in _elements(archive, _first_sheet(archive), "row"):
        number = int(row.get("r") or line + 1)
        if number > MOST_ROWS:
            raise NoSpreadsheet(f"has more than {MOST_ROWS} rows")
        yield from ([] for _ in range(number - line - 1))
        line = number
        cells: list[str] = []
        for cell in row:
            column = _column(cell.get("r") or "") or len(cells) + 1
            if column <= MOST_CELLS:
                cells += [""] * (column - 1 - len(cells))
                cells.append(_one_line(_office_value(cell, shared, dates)))
        yield cells


def _first_sheet(archive: zipfile.ZipFile) -> str:
    """The name of the part that holds the first sheet."""
    first = next(_elements(archive, "xl/workbook.xml", "sheet"), None)
    wanted = "" if first is None else _attribute(first, "id")
    for relation in _elements(archive, "xl/_rels/workbook.xml.rels", "Relationship"):
        if relation.get("Id") == wanted:
            target = relation.get("Target") or ""
            return target.lstrip("/") if target.startswith("/") else f"xl/{target}"
    raise NoSpreadsheet("has no sheet")


def _column(place: str) -> int:
    """The number of a column, from 1, by its letters; 0 without any.

    >>> _column("A1"), _column("AB12")
    (1, 28)
    """
    number = 0
    for letter in re.sub(r"[^A-Z]", "", place):
        number = number * 26 + ord(letter) - ord("A") + 1
    return number


def _date_styles(archive: zipfile.ZipFile) -> frozenset[int]:
    """The styles of cells that show dates."""
    own = {
        int(one.get("numFmtId") or 0)
        for one in _elements(archive, "xl/styles.xml", "numFmt")
        if OF_A_DATE.search(NO_LETTERS.sub("", one.get("formatCode") or ""))
    }
    for styles in _elements(archive, "xl/styles.xml", "cellXfs"):
        formats = [int(style.get("numFmtId") or 0) for style in styles]
        return frozenset(at for at, one in enumerate(formats) if one in DATES or one in own)
    return frozenset()


def _office_value(cell: Element, shared: list[str], dates: frozenset[int]) -> str:
    sort, value = cell.get("t") or "n", _texts(cell, "v")
    if sort == "inlineStr":
        return _texts(cell)
    if not value or sort in ("str", "e", "d"):
        return value
    if sort == "s":
        return shared[int(value)]
    if sort == "b":
        return "yes" if value == "1" else "no"
    if int(cell.get("s") or 0) in dates:
        return (DAY_NOUGHT + timedelta(days=int(float(value)))).isoformat()
    return _number(value)


def _of_open_document(archive: zipfile.ZipFile) -> Iterator[list[str]]:
    table = next(_elements(archive, "content.xml", "table"), None)
    if table is None:
        raise NoSpreadsheet("has no sheet")
    for row in (one for one in table.iter() if _name(one) == "table-row"):
        cells: list[str] = []
        for cell in row:
            if _name(cell) in ("table-cell", "covered-table-cell"):
                text = _one_line(_open_document_value(cell))
                cells += [text] * min(int(_attribute(cell, "number-columns-repeated") or 1), MOST_CELLS - len(cells))
        times = int(_attribute(row, "number-rows-repeated") or 1)
        yield from ([*cells] for _ in range(times if any(cells) else min(times, MOST_ROWS // 4)))


def _open_document_value(cell: Element) -> str:
    sort = _attribute(cell, "value-type")
    if sort in ("float", "percentage", "currency"):
        return _number(_attribute(cell, "value"))
    if sort == "date":
        return _attribute(cell, "date-value").partition("T")[0]
    if sort == "boolean":
        return "yes" if _attribute(cell, "boolean-value") == "true" else "no"
    lines = ("".join(one.itertext()) for one in cell if _name(one) == "p")
    return " ".join(lines)
