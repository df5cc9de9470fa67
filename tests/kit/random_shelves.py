"""Random shelves that can be made, each by its number: printers, papers, bindings, boxes and spaces thrown together.

A test asks for `NUMBERS`: few of them, unless the environment says how many, as in SHELVES=300 pytest tests/laws.
"""

from __future__ import annotations

import math
import os
import random
from collections.abc import Iterator
from pathlib import Path
from typing import Any, NamedTuple

__all__ = ["NUMBERS", "RandomShelf", "random_shelf"]

NUMBERS = range(int(os.environ.get("SHELVES", "6")))
"""The shelves that a test tries."""


class RandomShelf(NamedTuple):
    """One that was made: the shelf file, its plan.json, and the folder of the output."""

    text: str
    plan: dict[str, Any]
    out: Path


WORDS = ("Salt", "Tide", "Lantern", "Weir", "Orchard", "Kiln", "Ferry", "Heron", "Loom", "Quarry", "Moth", "Anvil")
INSIDES = ("blank", "ruled", "squared", "ledger paper", "music")
STYLES = ("plain", "cloth", "leather", "paper boards", "paperback")


def random_shelf(number: int) -> str:
    """The shelf with this number as a text; the same number always gives the same."""
    chance = random.Random(f"shelf {number}")
    titles = chance.sample([f"{a} {b}" for a in WORDS for b in WORDS if a != b], chance.randint(1, 5))
    boxed = titles[-1] if len(titles) > 2 and chance.random() < 0.4 else ""
    lines = [
        f"shelf: Shelf {number}",
        _printer(chance),
        "stocks:",
        *_stocks(chance),
        "spaces:",
        *(f"  {name}: {_space(chance)}" for name in ("upper", "lower")),
        "  long: {width: 400 mm, height: 60 mm, depth: 60 mm}",
        "books:",
        *(line for title in titles for line in _book(chance, title, boxed)),
    ]
    if boxed:
        lines += ["slipcases:", f"  box: {{books: [{boxed}], stock: card, space: long}}"]
    return "\n".join(lines) + "\n"


def _mm(value: float) -> str:
    return f"{value:.2f} mm"


def _printer(chance: random.Random) -> str:
    margins = ", ".join(f"{side}: {_mm(chance.uniform(3, 15))}" for side in ("left", "right", "top", "bottom"))
    keys = [f"sheet: {chance.choice(('A4', 'A4', 'letter', 'A3'))}", f"margins: {{{margins}}}"]
    keys.append(f"turn: {chance.choice(('long edge', 'short edge'))}")
    if chance.random() < 0.7:
        offset = {key: chance.uniform(-3, 3) for key in ("right", "up")} | {"skew": chance.uniform(-0.4, 0.4)}
        keys.append(f"reverse_offset: {{{', '.join(f'{key}: {_mm(value)}' for key, value in offset.items())}}}")
    if chance.random() < 0.6:
        across, up, lean = chance.uniform(149, 151), chance.uniform(149, 151), chance.uniform(-0.004, 0.004)
        keys.append(f"rules: {{across: {_mm(across)}, up: {_mm(up)}}}")
        width, height = across / 1.5, up / 1.5
        rising = math.sqrt(width**2 + height**2 + 2 * width * height * lean)
        falling = math.sqrt(width**2 + height**2 - 2 * width * height * lean)
        keys.append(f"diagonals: {{rising: {_mm(rising)}, falling: {_mm(falling)}}}")
    if chance.random() < 0.2:
        keys.append("cutting_machine: yes")
    if chance.random() < 0.3:
        keys.append("sheet_order: by book")
    return f"units: millimetres\nprinter: {{{', '.join(keys)}}}"


def _stocks(chance: random.Random) -> Iterator[str]:
    glue = chance.choice(("spray", "paste", "PVA", "double-sided film", "20 um"))
    grain = chance.choice(("long", "long", "unknown"))
    caliper = chance.uniform(60, 110)
    paper = chance.choice(
        (f"caliper: {caliper:.0f} um", f"pile: 20 sheets = {caliper / 50:.2f} mm", "grammage: 80 g/m2, bulk: 1.2 cm3/g")
    )
    yield f"  page: {{{paper}, glue: {glue}, grain: {grain}}}"
    film = chance.choice(("", ", film: 50 um"))
    yield f"  card: {{caliper: {chance.uniform(150, 230):.0f} um, grain: {grain}{film}, glue: {glue}}}"
    yield f"  cloth: {{caliper: {chance.uniform(90, 180):.0f} um, grain: {grain}, glue: PVA}}"
    yield f"  board: {{caliper: {chance.uniform(0.6, 1.2):.2f} mm, grain: {grain}, tolerance: 5 %}}"


def _space(chance: random.Random) -> str:
    width, height, depth = chance.uniform(20, 90), chance.uniform(24, 40), chance.uniform(16, 30)
    return f"{{width: {_mm(width)}, height: {_mm(height)}, depth: {_mm(depth)}}}"


def _book(chance: random.Random, title: str, boxed: str) -> Iterator[str]:
    height, width = chance.uniform(17, 30), chance.uniform(11, 20)
    yield f"  - title: {title}"
    yield f"    size: {{height: {_mm(height)}, width: {_mm(width)}}}"
    if chance.random() < 0.2:
        yield "    direction: right-to-left"
    solid = chance.random() < 0.2
    fills = solid and title != boxed and chance.random() < 0.5
    pages = chance.choice((96, 144) if title == boxed else (8, 16, 24, 32, 48, 96, 144))
    yield f"    block: {_solid(chance, fills) if solid else _block(chance, pages)}"
    yield f"    cover: {_cover(chance, thin=pages < 48 or solid)}"
    if chance.random() < 0.25:
        yield "    jacket: {stock: page}"
    if not solid:
        yield f"    inside: {{kind: {chance.choice(INSIDES)}}}"
    yield f"    design: {{style: {chance.choice(STYLES)}}}"
    if fills:
        yield "    space: long"
    elif title != boxed and chance.random() < 0.9:
        yield f"    space: {chance.choice(('upper', 'lower', 'long'))}"
        if chance.random() < 0.3:
            yield "    stack: heap"


def _solid(chance: random.Random, fills: bool) -> str:
    edges = chance.choice(("", ", edges: gilt, edge_stock: page", ", edges: lines, edge_stock: page"))
    thickness = "fill, at_most: 12 mm" if fills else _mm(chance.uniform(3, 9))
    return f"{{kind: dummy, thickness: {thickness}{edges}}}"


def _block(chance: random.Random, pages: int) -> str:
    one_side = chance.random() < 0.3
    keys = [f"pages: {pages}", "stock: page"]
    kind = chance.choice(("accordion", "leaves", "sections"))
    if kind == "accordion":
        keys.append(f"flyleaves: {chance.choice((0, 2))}")
        keys.append(f"joint: {chance.choice(('back to back', 'hinge tab'))}")
    else:
        keys.append(f"printing: {'one side' if one_side else 'both sides'}")
    if kind == "leaves":
        keys.append(f"trim: {_mm(chance.choice((0, 1.5)))}")
    if kind == "sections":
        keys.append(f"fold: {chance.choice(('folio', 'quarto', 'octavo')) if not one_side else 'folio'}")
        keys.append(f"sewing: {chance.choice(('all along', 'two on')) if pages > 32 else 'all along'}")
    if chance.random() < 0.2:
        keys.append(f"measured_thickness: {_mm(pages * chance.uniform(0.05, 0.1))}")
    return f"{{kind: {kind}, {', '.join(keys)}}}"


def _cover(chance: random.Random, thin: bool) -> str:
    if chance.random() < 0.5:
        turn_in = chance.choice((0, 4))
        at_head = chance.choice((0, 3))
        return f"{{kind: wrap, stock: card, turn_in: {turn_in} mm, head_turn_in: {at_head} mm}}"
    binding = chance.choice(("full", "full", "quarter", "half"))
    keys = [f"binding: {binding}", "boards: board", "stock: cloth"]
    if binding != "full":
        keys.append("spine_stock: cloth")
    keys.append(f"stiffener: {'sections and boards' if thin else chance.choice(('sections and boards', 'sections'))}")
    if chance.random() < 0.6:
        keys.append("endpapers: page")
    return f"{{kind: case, {', '.join(keys)}}}"
