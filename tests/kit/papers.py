"""Stocks as a shelf file gives them."""

from __future__ import annotations

from bookmaker.paper.papers import find_format
from bookmaker.paper.printer_entry import PrinterEntry
from bookmaker.paper.stock import Stock, make_stock
from bookmaker.paper.stock_entry import StockEntry

__all__ = ["CALIPER", "GLUE", "paper"]

CALIPER, GLUE = 0.08, 0.02
"""Of a paper of which nothing else is said, in mm."""


def paper(caliper: float | str = CALIPER, *, name: str = "page", sheet: str = "A4", **more: str) -> Stock:
    """A paper with its grain along the sheet, glued with 0.02 mm; a caliper without a unit is in mm."""
    thick = caliper if isinstance(caliper, str) else f"{caliper:.6f} mm"
    entry = StockEntry.model_validate({"caliper": thick, "glue": f"{GLUE} mm", "grain": "long", **more})
    return make_stock(name, entry, PrinterEntry(sheet=find_format(sheet)))
