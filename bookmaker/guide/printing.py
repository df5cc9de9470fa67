"""The sheets to print: each once, with what is done to the whole of it before anything is cut out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..ground.told import print_mm
from ..sheets.layout import Sheet
from ..shelf.plan import ShelfPlan
from ..things.prints import SheetOfFile
from ..things.wording import as_list, numbers, thick
from .items import Heading, Item, Paragraph
from .tables import columns, table

__all__ = ["printing_items"]

HEAD = ("file", "sheet", "print", "then", "for")
COLUMNS = columns(0.04, 0.21, 0.27, 0.59, 0.7, 1.0, texts=5)


def printing_items(sheets: Sequence[SheetOfFile], plan: ShelfPlan) -> Iterator[Item]:
    """All sheets in a table to tick, and how each is done."""
    if not sheets:
        return
    yield Heading("Sheets to print, each once")
    for number, step in enumerate(_steps([sheet for _, _, sheet in sheets]), start=1):
        yield Paragraph(f"{number}. {step}", strong=True)
    yield from table(COLUMNS, HEAD, [_row(file, page, sheet, plan) for file, page, sheet in sheets], ticked=True)


def _steps(sheets: Sequence[Sheet]) -> Iterator[str]:
    """What is done to every sheet, in order."""
    yield "Print a sheet at 100 % when its turn comes: everything that lies on it is printed with it."
    yield f"Measure the test line at its foot. If it is more than {print_mm(0.5, 1)} off, do not cut."
    if any(sheet.two_sided for sheet in sheets):
        yield "Print the two pages of a sheet on its front and its back. Held against the light, their end marks meet."
    if any(sheet.filmed for sheet in sheets):
        yield "Lay the clear film over the whole sheet, when the print is dry, where the table says so."
    yield (
        "Score or prick all folds on a sheet, as the steps of their books say, before you cut anything out of it. The "
        "marks beside a part go with the first cut."
    )
    yield "Write its number or its name on the back of every part as you cut it out. Its label stays on the waste."


def _row(file: str, page: int, sheet: Sheet, plan: ShelfPlan) -> tuple[str, ...]:
    how = f"page {page}"
    if sheet.two_sided:
        how = f"pages {page} and {page + 1}, flipped on the {sheet.stock.printer.turn}"
    on = f", on {sheet.stock.printed_on}" if sheet.stock.printed_on else ""
    film = f"film, {thick(sheet.stock.film)}" if sheet.filmed else ""
    return file, str(sheet.number), f"{how}{on}", film, _owners(sheet, plan)


def _owners(sheet: Sheet, plan: ShelfPlan) -> str:
    """Whose parts lie on a sheet: books by their numbers, other things by their names."""
    owners = dict.fromkeys(placement.piece.owner for placement in sheet.placements)
    counted = [number for owner in owners if (number := plan.number_of(owner))]
    named = [plan.printed(owner) for owner in owners if plan.number_of(owner) is None]
    return as_list([*([numbers(counted)] if counted else []), *named])
