"""Layers that a cover adds: paper with the films over its print."""

from __future__ import annotations

from collections.abc import Iterator

from ....paper.stock import Stock
from ....paper.thickness import Layer

__all__ = ["sheets_of"]


def sheets_of(what: str, stock: Stock, count: int = 2) -> Iterator[Layer]:
    """Sheets of a stock, one on each side of the book unless it says otherwise, and the films over them."""
    yield Layer(what, count, stock.caliper, stock.name)
    if stock.film:
        yield Layer(f"film over {what.partition(',')[0]}", count, stock.film)
