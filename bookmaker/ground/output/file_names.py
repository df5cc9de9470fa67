"""Names of files that any system can write."""

from __future__ import annotations

import re
from collections.abc import Sequence

__all__ = ["file_names"]

DEVICES = re.compile(r"con|prn|aux|nul|com[0-9]|lpt[0-9]")
"""Names that Windows keeps for devices, whatever follows after a point (its documentation on naming files)."""


def file_names(stocks: Sequence[str], taken: Sequence[str] = ()) -> list[str]:
    """A PDF name for each stock, fit for any file system and no two alike, nor like one that is taken.

    >>> file_names(["Page paper", "page-paper", "Ж", "NUL"])
    ['page-paper.pdf', 'page-paper-2.pdf', 'stock.pdf', 'stock-nul.pdf']
    """
    names = list(taken)
    for stock in stocks:
        stem = re.sub(r"[^a-z0-9]+", "-", stock.lower()).strip("-")[:60] or "stock"
        stem = f"stock-{stem}" if DEVICES.fullmatch(stem) else stem
        number = sum(name == f"{stem}.pdf" or re.fullmatch(rf"{stem}-\d+\.pdf", name) is not None for name in names) + 1
        names.append(f"{stem}.pdf" if number == 1 else f"{stem}-{number}.pdf")
    return names[len(taken) :]
