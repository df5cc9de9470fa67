"""A shelf with a slipcase, for the tests of slipcases."""

from __future__ import annotations

__all__ = ["shelf"]

SHELF = """\
shelf: The Salt Office
stocks:
  laid: {caliper: LAID um, glue: 15 um, grain: long}
  card: {caliper: CARD um, grain: long}
spaces:
  upper: {width: 60 mm, height: 27 mm, depth: 22 mm}
  lower: {width: 60 mm, height: 29 mm, depth: 22 mm}
defaults:
  size: {height: 21 mm, width: 15 mm}
  block: {kind: accordion, stock: laid, pages: 48}
  cover: {kind: wrap, stock: card}
  space: upper
books:
  - title: Tide Tables
  - title: Brine
    jacket: {stock: laid}
  - title: Brine
    block: {measured_thickness: 4.2 mm}
    assembly_tolerance: 0.2 mm
  - title: Pans and Rakes
    space: lower
slipcases:
  salt: {books: [Tide Tables, 2, 3], stock: card}
"""


def shelf(laid: float = 75, card_um: float = 200) -> str:
    """The shelf file, with these calipers of its papers in µm."""
    return SHELF.replace("LAID", f"{laid}").replace("CARD", f"{card_um}")
