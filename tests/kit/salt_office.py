"""A shelf with a slipcase, for the tests of slipcases."""

from __future__ import annotations

from pathlib import Path

from bookmaker.workshop import Checked, check

__all__ = ["checked", "errors", "shelf"]


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
  block: {kind: concertina, stock: laid, pages: 48}
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
    return SHELF.replace("LAID", f"{laid}").replace("CARD", f"{card_um}")


def checked(folder: Path, text: str) -> Checked:
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "shelf.yaml").write_text(text, encoding="utf-8")
    return check(folder / "shelf.yaml")


def errors(found: Checked) -> list[str]:
    """What is wrong, without warnings and notes."""
    return [str(problem) for problem in found.problems if problem.severity == "error"]
