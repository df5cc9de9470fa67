"""Rectangles into rectangles; knows nothing of books.

`pack_rows` packs simply, row after row. `nest` searches for fewer bins and is never worse. `nest_by_group` keeps
groups on bins of their own where it can. `pack_strip` is the same search on an endless strip, for which there are
published cases with proved optima. Read `beam` for how the search works, and `improve` for the loop around it.
"""

from .by_group import nest_by_group
from .cuts import Cut
from .items import ROUNDING, Bin, DoesNotFit, Item, Placed
from .nest import NEST_EFFORT, Nesting, nest
from .rows import pack_rows
from .strip import STRIP_EFFORT, Strip, pack_strip

__all__ = [
    "NEST_EFFORT",
    "ROUNDING",
    "STRIP_EFFORT",
    "Bin",
    "Cut",
    "DoesNotFit",
    "Item",
    "Nesting",
    "Placed",
    "Strip",
    "nest",
    "nest_by_group",
    "pack_rows",
    "pack_strip",
]
