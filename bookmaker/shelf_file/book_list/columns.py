"""The first line of a table: which key of a book each column is, and what is wrong with its names."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from ...ground.problems import Problem, near_match
from ...ground.quantities import show
from .cells import SEPARATORS, Row
from .table import Table

__all__ = ["SHORT_NAMES", "Column", "column_name", "find_columns", "known_names"]

SHORT_NAMES = {
    "pages": "block.pages",
    "thickness": "block.thickness",
    "height": "size.height",
    "width": "size.width",
    "style": "design.style",
    "palette": "design.palette",
    "colour": "design.colour",
    "ink": "design.ink",
}
"""Columns that may leave out the group their key belongs to."""

NO_COLUMNS = {"row": "each line is a book of its own, and one with volumes is a set of so many"}
"""Keys of a book that no cell can hold, and what a table has instead."""


NEAR_COLUMN = 0.75
"""How like a name must be to that of a column: words of other languages are like some other key by chance."""

IN_OTHER_LANGUAGES = {
    "title": "titel titre título titulo titolo tytuł название",
    "author": "autor autorin verfasser auteur autore schrijver forfatter författare автор",
    "pages": "seiten seitenzahl páginas paginas pagine sidor sider stron strony страниц",
    "height": "höhe hoehe hauteur altura alto altezza hoogte höjd høyde wysokość высота",
    "width": "breite largeur anchura ancho larghezza breedte bredd bredde szerokość ширина",
    "thickness": "dicke épaisseur epaisseur grosor spessore dikte tjocklek tykkelse grubość толщина",
    "colour": "farbe color couleur colore kleur färg farge kolor цвет",
    "series": "reihe serie série collana reeks serien seria серия",
    "volume": "band tome tomo deel tom том",
    "date": "datum jahr année annee año anno jaar år rok год",
}
"""Names of columns in German, French, Spanish, Italian, Dutch, Scandinavian, Polish and Russian lists, from memory."""

TRANSLATED = {word: key for key, words in IN_OTHER_LANGUAGES.items() for word in words.split()}


@dataclass(frozen=True, slots=True)
class Column:
    """A column: which cell of each row it is, counted from 1, its name as written, and its key with dots."""

    number: int
    name: str
    key: str


def known_names(keys: Mapping[str, bool]) -> dict[str, str]:
    """Every name a column may have, in small letters, with its key; `keys` says which are groups."""
    plain = {key: key for key, is_group in keys.items() if not is_group and key not in NO_COLUMNS}
    return {**plain, **SHORT_NAMES}


def column_name(key: str) -> str:
    """A key as a column names it.

    >>> column_name("block.pages"), column_name("design.device")
    ('pages', 'design.device')
    """
    return next((short for short, whole in SHORT_NAMES.items() if whole == key), key)


def find_columns(table: Table, header: Row, rows: Sequence[Row], keys: Mapping[str, bool]) -> list[Column | Problem]:
    """The columns, each with its key, or with what is wrong with it; without those that are empty from top to foot."""
    names = known_names(keys)
    if len(header.cells) == 1 and header.cells[0].casefold() not in names and "|" in header.cells[0]:
        remedy = f"save the table with one of {', '.join(SEPARATORS.values())} between cells"
        return [Problem("a | does not separate cells here", remedy, place=table.place(header.line, 1))]
    if not _is_header(header, names, keys):
        return [_no_header(table, header)]
    found = list(_columns(table, header, rows, names, keys))
    return [*found, *_without_title(table, header, found, names, keys)]


def _is_header(header: Row, names: Mapping[str, str], keys: Mapping[str, bool]) -> bool:
    """Whether a line has names in it, if only misspelt ones, or is the first book of a table without names."""
    known = sum(name.casefold() in names for name in header.cells)
    meant = sum(bool(_meant(name, names, keys)) for name in header.cells)
    return known > 0 or 2 * meant > len(header.cells)


def _columns(
    table: Table, header: Row, rows: Sequence[Row], names: Mapping[str, str], keys: Mapping[str, bool]
) -> Iterator[Column | Problem]:
    seen: dict[str, int] = {}
    for number, name in enumerate(header.cells, start=1):
        place = table.place(header.line, number)
        key = names.get(name.casefold())
        if not name:
            filled = next((row for row in rows if row.cell(number)), None)
            if filled:
                said = f"line {filled.line} has {show(filled.cell(number))!r} in it"
                yield Problem(f"column {number} has no name, but {said}", "name it, or delete it", place=place)
        elif key is None:
            yield Problem(f"no column is called {show(name)!r}", _remedy(name, names, keys), place=place)
        elif key in seen:
            told = f"column {number} says the same as column {seen[key]}: {column_name(key)}"
            yield Problem(told, "delete one of them", place=place)
        else:
            seen[key] = number
            yield Column(number, name, key)


def _meant(name: str, names: Mapping[str, str], keys: Mapping[str, bool]) -> str:
    """The column that a name was probably meant to be, if it is not the key of a group."""
    if not name or name.casefold() in keys:
        return ""
    translated = TRANSLATED.get(name.casefold(), "")
    alike = (other for other in names if other.count(".") == name.count("."))
    return translated if translated in names else near_match(name, alike, NEAR_COLUMN)


def _remedy(name: str, names: Mapping[str, str], keys: Mapping[str, bool]) -> str:
    plain = name.casefold()
    if plain in NO_COLUMNS:
        return f"leave it out: {NO_COLUMNS[plain]}"
    if keys.get(plain):
        within = [key for key in names.values() if key.startswith(f"{plain}.")]
        examples = " or ".join(dict.fromkeys(column_name(key) for key in within[:3]))
        return f"{plain} is a group of keys: name the one you mean, such as {examples}"
    meant = _meant(name, names, keys)
    if meant:
        return f"did you mean {meant}?"
    return "name it after a key of a book, such as author, pages, space or design.device, or delete it"


def _no_header(table: Table, header: Row) -> Problem:
    cells = ", ".join(show(cell) for cell in header.cells[:3])
    told = f"this line names no column that is known here: {cells}"
    return Problem(told, "begin the table with a line of names, one of them title", place=table.place(header.line, 1))


def _without_title(
    table: Table, header: Row, found: Sequence[Column | Problem], names: Mapping[str, str], keys: Mapping[str, bool]
) -> Iterator[Problem]:
    """A problem if no column has the titles, nor looks as if it were meant to."""
    if any(isinstance(column, Column) and column.key == "title" for column in found):
        return
    unknown = [name for name in header.cells if name.casefold() not in names]
    if "title" not in [_meant(name, names, keys) for name in unknown]:
        told = f"there is no column 'title' among {', '.join(show(name) for name in header.cells if name)}"
        yield Problem(told, "name the columns in the first line, one of them title", place=table.place(header.line, 1))
