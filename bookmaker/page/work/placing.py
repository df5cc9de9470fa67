"""Where each thing may be put: what holds it fast, and the list that it cannot leave."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ...ground.problems import FieldPath
from ...shelf.entries import ShelfSpec
from ...shelf_file.edits.origins import Origin, origins_of
from ...shelf_file.edits.written import read_written
from ...shelf_file.reading import ShelfFile
from ...shelf_file.source_text import TABLES, source_text
from ...workshop import Checked

__all__ = ["ANYWHERE", "Placing", "list_of", "origins", "placings"]

BOOKS = "books"


@dataclass(frozen=True, slots=True)
class Placing:
    """Why a thing cannot be moved, if so; the row or table that it stays in, if any; whether it is the first of it."""

    fixed: str = ""
    list: str = ""
    first: bool = True


ANYWHERE = Placing()


def placings(checked: Checked) -> Mapping[str, Placing]:
    """How each thing may be moved on the page."""
    shelf, register = checked.shelf, checked.plan.register
    written = origins(shelf)
    found: dict[str, Placing] = {}
    for id, field in register.fields.items():
        if field[0] != BOOKS:
            found[id] = Placing(f"a {register.things[id].family.noun} is changed in the file")
            continue
        number = int(field[1])
        origin = written[number]
        first = number == 0 or list_of(written[number - 1]) != list_of(origin)
        found[id] = Placing(_why_fixed(origin, shelf), list_of(origin), first)
    for one in checked.plan.plans.values():
        found |= {id: Placing(f"it stands in {one.name}") for id in one.held}
    return found


def origins(shelf: ShelfFile[ShelfSpec]) -> list[Origin]:
    """Where each book is written, in the order of the shelf."""
    return origins_of(shelf.tree, read_written(source_text(shelf.path), shelf.path.name))


def list_of(origin: Origin) -> str:
    """What the row or table is called that a book stays in; nothing for one that is an entry of its own."""
    where: FieldPath = (origin.file, *origin.around)
    return "" if origin.around == (BOOKS,) and origin.alone else "/".join(map(str, (*where, origin.entry)))


def _why_fixed(origin: Origin, shelf: ShelfFile[ShelfSpec]) -> str:
    if not origin.alone:
        return "this volume is written only as one of its set"
    if origin.file != shelf.path.name and not origin.file.casefold().endswith(TABLES):
        return f"{origin.file} is a spreadsheet: it is changed in its own program"
    return ""
