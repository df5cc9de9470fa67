"""Random shelves of every kind of book for the tests of the guide, and the guide read back by book."""

from __future__ import annotations

import re
from pathlib import Path
from random import Random
from typing import Any

from pypdf import PdfReader

__all__ = ["chapters", "flattened", "guide_shelf", "said", "shelf_head", "spelled", "words_of"]


def shelf_head(sheet: str = "A4") -> str:
    units = "units: millimetres\n" if sheet == "letter" else ""
    return f"""\
shelf: The Salt Office
{units}printer: {{sheet: {sheet}}}
stocks:
  laid: {{caliper: 75 um, glue: spray, grain: long}}
  bond: {{caliper: 80 um, glue: paste, grain: long}}
  card: {{caliper: 160 um, film: 50 um, grain: long}}
  cloth: {{caliper: 150 um, grain: long}}
  board: {{caliper: 0.8 mm, grain: long}}
spaces:
  upper: {{width: 130 mm, height: 30 mm, depth: 24 mm}}
"""


def guide_shelf(seed: int) -> str:
    """Seven books, every kind of block and cover among them, two of them boxed; each Volume n is book n."""
    chance = Random(seed)
    blocks = [_block(kind, chance) for kind in ("accordion", "leaves", "sections", "dummy")]
    blocks += [_block(chance.choice(("accordion", "leaves", "sections", "dummy")), chance) for _ in range(3)]
    covers = [_cover(kind, chance) for kind in ("wrap", "case")]
    covers += [_cover(chance.choice(("wrap", "case")), chance) for _ in range(5)]
    chance.shuffle(covers)
    books = [
        f"""\
  - title: Volume {number}
    size: {{height: {chance.randrange(170, 230) / 10} mm, width: {chance.randrange(120, 150) / 10} mm}}
    direction: {chance.choice(("left-to-right", "right-to-left"))}
    space: upper
    block: {block}
    cover: {cover}
{chance.choice(("", "    jacket: {stock: bond, flap: 5 mm}" + chr(10)))}"""
        for number, (block, cover) in enumerate(zip(blocks, covers, strict=True), start=1)
    ]
    box = "slipcases:\n  pair: {books: [1, 2], stock: card, clearance: 1 mm, thumb_cut: yes}\n"
    return shelf_head(("A4", "letter", "A5")[seed % 3]) + "books:\n" + "".join(books) + box


def _block(kind: str, chance: Random) -> str:
    measured = chance.choice(("", ", measured_thickness: 4.37 mm"))
    match kind:
        case "accordion":
            pages, flyleaves = 2 * chance.randrange(4, 30), chance.choice((0, 2))
            joint = chance.choice(("back to back", "hinge tab"))
            keys = f"stock: laid, pages: {pages}, flyleaves: {flyleaves}, joint: {joint}"
        case "leaves":
            printing, trim = chance.choice(("both sides", "one side")), chance.choice((0, 1))
            keys = f"stock: bond, pages: {2 * chance.randrange(4, 60)}, printing: {printing}, trim: {trim} mm"
        case "sections":
            more = chance.choice(
                (
                    "pages: 64, fold: octavo",
                    "pages: 48, fold: quarto, sewing: two on",
                    "pages: 50",
                    "pages: 24, fastening: stapled",
                    "pages: 32, printing: one side, fastening: glued",
                )
            )
            keys = f"stock: bond, {more}"
        case _:
            edges = chance.choice(("edges: none", "edges: lines, edge_stock: bond"))
            keys = f"thickness: {chance.randrange(30, 60) / 10} mm, {edges}"
    return f"{{kind: {kind}, {keys}{measured}}}"


def _cover(kind: str, chance: Random) -> str:
    if kind == "wrap":
        turn_in, head = chance.choice((0, 4)), chance.choice((0, 3))
        return f"{{kind: wrap, stock: card, turn_in: {turn_in} mm, head_turn_in: {head} mm, square: 0.2 mm}}"
    binding = chance.choice(("full", "quarter, spine_stock: cloth", "half, spine_stock: cloth"))
    more = chance.choice(("", ", endpapers: bond", ", templates: bond", ", stiffener: none"))
    return f"{{kind: case, stock: card, boards: board, binding: {binding}{more}}}"


def flattened(text: str) -> str:
    """The text on one line, every blank a plain one."""
    return " ".join(text.split())


def chapters(file: Path) -> tuple[str, dict[str, str], dict[str, int]]:
    """The first pages of a guide, and by book or slipcase its text and the page on which it begins."""
    pages = [page.extract_text() for page in PdfReader(file).pages]
    parts: dict[str, list[str]] = {"": []}
    starts: dict[str, int] = {}
    at = ""
    for number, page in enumerate(pages, start=1):
        for part in re.split(r"^(?=\d+\. Volume \d+$|Slipcase: \w+$)", page.replace("\r", ""), flags=re.MULTILINE):
            found = re.match(r"\d+\. (Volume \d+)|Slipcase: (\w+)", part)
            if found:
                at = found[1] or found[2]
                starts[at] = number
            parts.setdefault(at, []).append(part)
    texts = {name: flattened(" ".join(part)) for name, part in parts.items()}
    return texts.pop(""), texts, starts


def words_of(guide: Path) -> str:
    """All that a guide says, on one line."""
    return flattened(" ".join(page.extract_text() for page in PdfReader(guide).pages))


def spelled(numbers: str) -> list[int]:
    """Numbers as the guide lists them, one by one.

    >>> spelled("1 to 3, 5 and 8")
    [1, 2, 3, 5, 8]
    """
    found: list[int] = []
    for part in re.findall(r"\d+ to \d+|\d+", numbers):
        first, *last = map(int, part.split(" to "))
        found += range(first, (last or [first])[0] + 1)
    return found


def said(length: Any, digits: int) -> str:
    """A pattern of a number rounded to so many digits; plan.json rounds to four, so a tie may go either way."""
    ways = {f"{float(length) + off:.{digits}f}" for off in (-1e-4, 0.0, 1e-4)}
    return "(?:" + "|".join(map(re.escape, sorted(ways))) + ")"
