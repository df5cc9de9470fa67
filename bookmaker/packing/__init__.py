"""Rectangles into rectangles; knows nothing of books."""

from .items import Bin, DoesNotFit, Item, Placed
from .rows import pack_rows

__all__ = ["Bin", "DoesNotFit", "Item", "Placed", "pack_rows"]
