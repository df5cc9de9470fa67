"""The edge strip of a dummy block against published formulas."""

from __future__ import annotations

from math import isclose

from bookmaker.ground.geometry import Size
from bookmaker.paper.printer_entry import PrinterEntry
from bookmaker.paper.stock import make_stock
from bookmaker.paper.stock_entry import StockEntry
from bookmaker.things.book.blocks.dummy import Dummy


def test_flat_length_by_the_bend_allowance() -> None:
    """*Machinery's Handbook* (Industrial Press, New York; formula from memory),
    sheet metal bends: flat length = inside legs + A·π/180·(R + K·c) for each bend.

    Around a page of 15 × 21 mm with paper of 0.1 mm the inside legs are 14.9, 20.8 and 14.9 mm; two scored right
    angles (R = 0, K = ½) add 0.07854 mm each: 50.7571 mm, with the folds at 14.9393 and 35.8178 mm.
    """
    entry = Dummy.model_validate({"thickness": "4 mm", "edges": "lines", "edge_stock": "laid"})
    laid = make_stock("laid", StockEntry.model_validate({"caliper": "100 um", "glue": "30 um"}), PrinterEntry())
    block = entry.plan(Size(15, 21), {"laid": laid}, right_to_left=False)
    [flat] = block.flats
    assert isclose(flat.size.width, 50.7571, abs_tol=5e-5)
    assert [round(fold.start.x, 4) for fold in flat.folds] == [14.9393, 35.8178]
    [part] = block.cut_list
    assert (round(part.height, 4), round(part.width, 4)) == (20.74, 14.87)
